package killsheet

import (
	"testing"

	"borewalk/calc/column"
	"borewalk/model/handbook"
)

const (
	gpm  = gallon / 60
	ppg  = poundPerGallon
	hour = 3600.0
	lbf  = pound * column.G
)

type example struct {
	ID, Source, Where, Note     string
	Seen                        bool
	TolerancePct                float64 `toml:"tolerance_pct"`
	Given, Expected, Recomputed map[string]float64
}

// A work does an example with this package.
type work func(t *testing.T, g map[string]float64) map[string]float64

// works says by the id of an example how it is done.
func works() map[string]work {
	return map[string]work{
		"kill-sheet-14.1-ppg-12366-ft":       killSheet,
		"kill-sheet-9.6-ppg-10525-ft":        killSheet,
		"kill-sheet-9.6-ppg-10000-ft":        killSheet,
		"influx-of-20-bbl":                   influx,
		"influx-of-400-ft":                   influx,
		"migration-from-pressure":            migration,
		"migration-from-density":             emptyMigration,
		"choke-opening":                      opening,
		"choke-line-loss":                    chokeLine,
		"choke-line-velocity":                chokeLine,
		"choke-line-loss-at-another-density": chokeLineScaled,
		"trip-margin":                        tripMargin,
		"integrity-test":                     integrity,
		"riser-margin":                       riserMargin,
	}
}

// A reporter is the test of either kind.
type reporter interface {
	Helper()
	Fatal(args ...any)
}

// must is a result that has to come without an error.
func must[T any](x T, err error) func(t reporter) T {
	return func(t reporter) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
}

func TestPublished(t *testing.T) {
	data := handbook.Load[struct{ Example, Disputed []example }](t, "testdata/published.toml")
	if len(data.Example)+len(data.Disputed) != len(works()) {
		t.Fatalf("%d examples and %d disputed for %d works", len(data.Example), len(data.Disputed), len(works()))
	}
	for _, ex := range data.Example {
		t.Run(ex.ID, func(t *testing.T) {
			do, ok := works()[ex.ID]
			if !ok || len(ex.Expected) == 0 {
				t.Fatal("nothing done or nothing expected")
			}
			values := do(t, ex.Given)
			for name, want := range ex.Expected {
				if value, ok := values[name]; !ok || !handbook.Within(value, want, ex.TolerancePct) {
					t.Errorf("%s = %v, want %v within %v %% (%s)", name, value, want, ex.TolerancePct, ex.Source)
				}
			}
		})
	}
	for _, ex := range data.Disputed {
		t.Run(ex.ID, func(t *testing.T) {
			values := works()[ex.ID](t, ex.Given)
			if len(ex.Recomputed) == 0 {
				t.Fatal("nothing recomputed")
			}
			for name, want := range ex.Recomputed {
				if !handbook.Within(values[name], want, ex.TolerancePct) {
					t.Errorf("%s = %v, want %v: %s", name, values[name], want, ex.Note)
				}
				if handbook.Within(values[name], ex.Expected[name], ex.TolerancePct) {
					t.Errorf("%s = %v meets the wrong printed answer: %s", name, values[name], ex.Note)
				}
			}
		})
	}
}

func killSheet(t *testing.T, g map[string]float64) map[string]float64 {
	mud, slow := g["mud_ppg"]*ppg, g["slow_psi"]*psi
	kill := must(KillDensity(mud, g["sidpp_psi"]*psi, 0, g["tvd_ft"]*foot))(t)
	return map[string]float64{
		"kill_ppg": kill / ppg,
		"icp_psi":  must(Initial(g["sidpp_psi"]*psi, 0, slow))(t) / psi,
		"fcp_psi":  must(Final(slow, kill, mud))(t) / psi,
	}
}

func influx(t *testing.T, g map[string]float64) map[string]float64 {
	density := must(InfluxDensity(g["mud_ppg"]*ppg, g["sidpp_psi"]*psi, g["sicp_psi"]*psi, g["height_ft"]*foot))(t)
	if kind := KindOf(density); kind != Gas {
		t.Errorf("an influx of %.2f ppg is %v", density/ppg, kind)
	}
	return map[string]float64{"influx_ppg": density / ppg}
}

func migration(t *testing.T, g map[string]float64) map[string]float64 {
	rise, time := (g["after_psi"]-g["before_psi"])*psi, g["time_h"]*hour
	return map[string]float64{
		"migration_ft_per_h": must(MigrationRate(g["mud_ppg"]*ppg, rise, time))(t) / foot * hour,
	}
}

func emptyMigration(t *testing.T, g map[string]float64) map[string]float64 {
	v := must(EmpiricalRise(g["mud_ppg"] * ppg))(t)
	return map[string]float64{"migration_ft_per_s": v / foot, "migration_ft_per_h": v / foot * hour}
}

// opening is by equal steps of pressure: the pump is brought up as if the loss went evenly with its rate.
func opening(t *testing.T, g map[string]float64) map[string]float64 {
	const rate = 0.015
	n := int(g["steps"])
	list := must(BringUp(g["sicp_psi"]*psi, rate, n, PowerLaw(g["loss_psi"]*psi, rate, 1)))(t)
	for k := 1; k < n; k++ {
		if before, after := list[k-1].Casing-list[k].Casing, list[k].Casing-list[k+1].Casing; !handbook.Within(after, before, 1e-9) {
			t.Errorf("a step of %v Pa after one of %v", after, before)
		}
	}
	return map[string]float64{"casing_psi": list[n].Casing / psi, "step_psi": (list[0].Casing - list[1].Casing) / psi}
}

func chokeLine(t *testing.T, g map[string]float64) map[string]float64 {
	line := ChokeLine{g["length_ft"] * foot, g["line_in"] * inch}
	flow := g["flow_gpm"] * gpm
	return map[string]float64{
		"loss_psi":            must(line.Loss(g["mud_ppg"]*ppg, flow))(t) / psi,
		"velocity_ft_per_min": must(line.Velocity(flow))(t) / foot * 60,
	}
}

func chokeLineScaled(t *testing.T, g map[string]float64) map[string]float64 {
	loss := must(AtDensity(g["loss_before_psi"]*psi, g["mud_ppg"]*ppg, g["to_ppg"]*ppg))(t)
	return map[string]float64{"loss_psi": loss / psi}
}

func tripMargin(t *testing.T, g map[string]float64) map[string]float64 {
	margin := must(TripMargin(g["yield_lbf_per_100ft2"]*lbf/(100*foot*foot), g["hole_in"]*inch, g["pipe_in"]*inch))(t)
	return map[string]float64{"trip_margin_ppg": margin / ppg}
}

func integrity(t *testing.T, g map[string]float64) map[string]float64 {
	s := ShoeTest{Mud: g["mud_ppg"] * ppg, Shoe: g["shoe_ft"] * foot}
	return map[string]float64{"gauge_psi": must(s.Gauge(g["emw_ppg"]*ppg))(t) / psi}
}

func riserMargin(t *testing.T, g map[string]float64) map[string]float64 {
	sea := Seabed{AirGap: (g["riser_ft"] - g["water_ft"]) * foot, Mudline: g["riser_ft"] * foot, Sea: g["sea_ppg"] * ppg}
	tvd := g["tvd_ft"] * foot
	pore := g["formation_ppg"] * ppg * column.G * tvd
	return map[string]float64{"riser_margin_ppg": must(sea.RiserMargin(pore, tvd))(t) / ppg}
}
