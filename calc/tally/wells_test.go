package tally

import (
	"math"
	"testing"

	"borewalk/model/handbook"
)

const foot = 0.3048

// invented is a string of testdata/tallies.toml, its figures in metres.
type invented struct {
	top, shoe, floatCollar, landingCollar float64
	host                                  string
	keep                                  []Part // from the top of the string
	items                                 []Item
	tolerance                             float64
}

// wells reads the strings of the invented wells.
func wells(t testing.TB) map[string]invented {
	t.Helper()
	file := handbook.Load[struct {
		Source    string
		Seen      bool
		Tolerance float64
		String    []struct {
			Name, Unit, Host string
			Top, Shoe        float64
			FloatCollar      float64 `toml:"float_collar"`
			LandingCollar    float64 `toml:"landing_collar"`
			Keep, Items      [][]any
		}
	}](t, "testdata/tallies.toml")
	kinds := map[string]Kind{"shoe": Shoe, "track": TrackJoint, "float collar": FloatCollar, "landing collar": LandingCollar,
		"joint": Joint, "pup": Pup, "hanger": Hanger}
	all := map[string]invented{}
	for _, s := range file.String {
		unit := 1.0
		if s.Unit == "ft" {
			unit = foot
		}
		w := invented{top: s.Top * unit, shoe: s.Shoe * unit, floatCollar: s.FloatCollar * unit, landingCollar: s.LandingCollar * unit,
			host: s.Host, tolerance: file.Tolerance}
		for _, k := range s.Keep {
			below := k[1].(float64)*unit - w.top
			w.keep = append(w.keep, Part{k[0].(string), below, below})
		}
		for _, i := range s.Items {
			kind, ok := kinds[i[0].(string)]
			if !ok {
				t.Fatalf("%s: no such item %v", s.Name, i)
			}
			w.items = append(w.items, Item{Kind: kind, Count: int(i[1].(int64)), Length: i[2].(float64) * unit})
		}
		all[s.Name] = w
	}
	if len(all) != 9 {
		t.Fatalf("%d strings, want 9", len(all))
	}
	return all
}

func TestTheInventedWellsClose(t *testing.T) {
	for name, w := range wells(t) {
		l, err := Run(w.items, w.top)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		sum := 0.0
		for _, i := range w.items {
			sum += float64(i.Count) * i.Length
		}
		if math.Abs(l.Shoe-w.shoe) > w.tolerance || math.Abs(sum-(w.shoe-w.top)) > w.tolerance {
			t.Errorf("%s: shoe at %v m, lengths %v m, want %v and %v", name, l.Shoe, sum, w.shoe, w.shoe-w.top)
		}
		if p, ok := l.Lowest(FloatCollar); !ok || math.Abs(p.Top-w.floatCollar) > w.tolerance {
			t.Errorf("%s: float collar at %v m, want %v", name, p.Top, w.floatCollar)
		}
		if p, ok := l.Lowest(LandingCollar); w.landingCollar > 0 && (!ok || math.Abs(p.Top-w.landingCollar) > w.tolerance) {
			t.Errorf("%s: landing collar at %v m, want %v", name, p.Top, w.landingCollar)
		}
	}
}

// Given the joints that were run and five spare ones, and the pups that were used
// and others, the shoe comes to stand where it was planned.
func TestTheInventedWellsAreFoundAgain(t *testing.T) {
	for name, w := range wells(t) {
		c := Closing{Shoulder: w.top, Wanted: w.shoe, Shallowest: w.shoe - 1, Deepest: w.shoe + 0.5}
		joints, pups := 0, 0
		for _, i := range w.items {
			switch i.Kind {
			case Joint:
				joints = i.Count
				c.Joints = Average(i.Count+5, i.Length)
			case Pup:
				pups = i.Count
				c.Pups = []DeckPup{{"", 1.5, 2}, {"planned", i.Length, i.Count}, {"", 5.01, 1}}
			case Hanger:
				c.Above = append(c.Above, i)
			default:
				c.Below = append(c.Below, i)
			}
		}
		got, err := Close(c)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if math.Abs(got.Error) > 1e-6 || !got.Accepted || len(got.Run) != joints || got.Pups[1] != pups || got.PupsUsed != pups || got.OnDeck != 5 {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// The couplings around the Ottermast liner's hanger are those of the 9-7/8 in as
// run, at 3086.1 and 3098.2 m; slips and packer keep two metres off, and with the
// hanger 6 m lower the slips are 0.3 m from one. Invented, computed independently.
func TestLinerHangersOfTheInventedWells(t *testing.T) {
	all := wells(t)
	hung := 0
	for name, w := range all {
		if w.host == "" {
			continue
		}
		hung++
		host, err := Run(all[w.host].items, all[w.host].top)
		if err != nil {
			t.Fatal(err)
		}
		lap := host.Shoe - w.top
		p := Placement{Couplings: host.Couplings(), Parts: w.keep, Distance: KeepOff, HostShoe: host.Shoe, LeastLap: lap - 10, MostLap: lap + 10, Wanted: w.top}
		placed, err := Place(p)
		if err != nil || !placed.Found || math.Abs(placed.Nearest-w.top) > 1e-9 || math.Abs(placed.Lap-lap) > 1e-9 {
			t.Errorf("%s: %+v, %v, want %v m allowed", name, placed, err, w.top)
		}
	}
	if hung != 3 {
		t.Errorf("%d liners, want 3", hung)
	}

	w := all["Ottermast-2, 7 in liner"]
	host, _ := Run(all[w.host].items, all[w.host].top)
	couplings := host.Couplings()
	for _, want := range []float64{3086.1, 3098.2} {
		if at, ok := nearestOf(couplings, want); !ok || math.Abs(at-want) > 0.05 {
			t.Errorf("host coupling at %v m, want %v", at, want)
		}
	}
	p := Placement{Couplings: couplings, Parts: w.keep, Distance: KeepOff, HostShoe: host.Shoe, LeastLap: 100, MostLap: 200, Wanted: w.top + 6}
	c, err := Clearances(p, w.top+6)
	if err != nil || len(c) != 2 || math.Abs(c[1].Distance-0.3) > 0.05 || c[1].Kept || math.Abs(c[1].Coupling-3098.2) > 0.05 {
		t.Errorf("clearances 6 m lower: %+v, %v, want the slips 0.3 m from 3098.2", c, err)
	}
	placed, err := Place(p)
	if err != nil || math.Abs(placed.Nearest-w.top-6) < 0.1 {
		t.Errorf("6 m lower is allowed: %+v, %v", placed, err)
	}
	// Packer 4.5 m and slips 6.5 m below the top, couplings 12.12 m apart and the one at
	// 3098.20: the slips end the stretch at 3098.20-2-6.5, the packer begins it at
	// 3086.08+2-4.5; below it begins again at 3098.20+2-4.5.
	for _, s := range placed.Allowed {
		if s.Top < w.top && s.Bottom > w.top {
			if math.Abs(s.Top-3083.58) > 1e-6 || math.Abs(s.Bottom-3089.70) > 1e-6 {
				t.Errorf("allowed around the top: %+v, want 3083.58 to 3089.70", s)
			}
		}
	}
	if math.Abs(placed.Nearest-3089.70) > 1e-6 {
		t.Errorf("nearest to %v m is %v, want 3089.70", w.top+6, placed.Nearest)
	}
}

// nearestOf returns the depth of some that is nearest to another.
func nearestOf(depths []float64, to float64) (float64, bool) {
	best := math.Inf(1)
	for _, d := range depths {
		if math.Abs(d-to) < math.Abs(best-to) {
			best = d
		}
	}
	return best, !math.IsInf(best, 0)
}
