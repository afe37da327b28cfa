package cleaning

import (
	"math"
	"testing"

	"borewalk/model/handbook"
)

const (
	gallon = 231 * inch * inch * inch
	gpm    = gallon / 60
)

type example struct {
	ID, Source, Where, Note string
	Seen                    bool
	TolerancePct            float64 `toml:"tolerance_pct"`
	Given, Expected         map[string]float64
}

func TestPublishedHoleCleaning(t *testing.T) {
	data := handbook.Load[struct{ Example []example }](t, "testdata/cleaning.toml")
	if len(data.Example) != 4 {
		t.Fatalf("%d examples", len(data.Example))
	}
	for _, ex := range data.Example {
		g := ex.Given
		grain := Cutting{Diameter: g["cutting_in"] * inch, Density: g["rock_ppg"] * poundPerGallon, Sphericity: g["sphericity"]}
		mud, viscosity := g["density_ppg"]*poundPerGallon, g["viscosity_cp"]*centipoise
		hole := math.Pi / 4 * g["hole_in"] * g["hole_in"] * inch * inch
		velocity := g["flow_gpm"] * gpm / (hole - math.Pi/4*g["pipe_in"]*g["pipe_in"]*inch*inch)
		got := map[string]float64{}
		switch ex.ID {
		case "drag-curve":
			k := curveOf(grain.Sphericity)
			got["a"], got["b"], got["c"] = k.a, k.b, k.c
			v := Drag(grain, mud, viscosity)
			got["reynolds"] = mud * v * grain.Diameter / viscosity
			got["drag"] = drag(grain.Sphericity, got["reynolds"])
			got["drag_slip_ft_per_s"] = v / foot
		case "effective-viscosity-slip":
			slip := Chien(grain, mud, viscosity)
			got["velocity_ft_per_min"] = velocity / foot * 60
			got["chien_slip_ft_per_min"] = slip / foot * 60
			got["net_ft_per_min"] = velocity * Transport(velocity, slip) / foot * 60
		case "carrying-index":
			yield := g["yield_lb_per_100ft2"] * 0.45359237 * gravity / (100 * foot * foot)
			got["carrying_index"] = CarryingIndex(viscosity, yield, g["velocity_ft_per_min"]*foot/60, mud)
		case "controlled-drilling":
			share := (g["density_out_ppg"] - g["density_ppg"]) / (g["rock_ppg"] - g["density_ppg"])
			got["fastest_rop_ft_per_h"] = FastestROP(share, g["flow_gpm"]*gpm, 1, hole) / foot * 3600
		default:
			t.Errorf("%s: nobody works it out", ex.ID)
		}
		for name, want := range ex.Expected {
			if value, ok := got[name]; !ok || !handbook.Within(value, want, ex.TolerancePct) {
				t.Errorf("%s: %s = %v, printed %v (%s)", ex.ID, name, value, want, ex.Source)
			}
		}
	}
}
