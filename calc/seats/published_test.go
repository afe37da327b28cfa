package seats

import (
	"testing"

	"borewalk/calc/column"
	"borewalk/model/handbook"
)

const (
	foot = 0.3048
	inch = 0.0254
	lb   = 0.45359237
	ppg  = lb / (231 * inch * inch * inch)
	psi  = lb * column.G / (inch * inch)
)

type example struct {
	ID, Source, Where, Note     string
	Seen                        bool
	TolerancePct                float64 `toml:"tolerance_pct"`
	Given, Expected, Recomputed map[string]float64
}

func load(t *testing.T) (sticking, disputed []example) {
	t.Helper()
	data := handbook.Load[struct{ Sticking, Disputed []example }](t, "testdata/seats.toml")
	if len(data.Sticking) != 1 || len(data.Disputed) != 1 {
		t.Fatalf("%d and %d examples, want one each", len(data.Sticking), len(data.Disputed))
	}
	return data.Sticking, data.Disputed
}

// TestPublishedSticking: the mud that an allowed differential pressure leaves over the lowest pore pressure of the hole, and the
// highest pore pressure that it still holds with the swab margin.
func TestPublishedSticking(t *testing.T) {
	sticking, _ := load(t)
	for _, ex := range sticking {
		g := ex.Given
		w := Window{Pore: flat(g["formation_emw_ppg"] * ppg), Fracture: flat(19 * ppg), Top: 100, Bottom: g["depth_ft"] * foot}
		m := Margins{Trip: g["swab_margin_ppg"] * ppg, Differential: g["allowed_differential_psi"] * psi}
		hole, err := Between(w, m, w.Top, w.Bottom)
		if err != nil || hole.Most.By != ByDifferential || hole.Most.TVD != w.Bottom {
			t.Fatalf("%s: %+v, %v", ex.ID, hole, err)
		}
		mud := hole.Most.Mud / ppg
		if !handbook.Within(mud, ex.Expected["max_mud_weight_ppg"], ex.TolerancePct) ||
			!handbook.Within(mud-m.Trip/ppg, ex.Expected["formation_limit_ppg"], ex.TolerancePct) {
			t.Errorf("%s: mud %.4f, formation %.4f ppg, want %v within %v %% (%s)", ex.ID, mud, mud-m.Trip/ppg, ex.Expected, ex.TolerancePct, ex.Source)
		}
		// A formation at that limit can just be drilled with the low one open, one that is a little more cannot.
		for over, want := range map[float64]Reason{-0.001: Free, 0.001: Closed} {
			w.Pore = through(t, w.Top, mud*ppg-m.Trip+over, w.Bottom, g["formation_emw_ppg"]*ppg)
			if hole, err := Between(w, m, w.Top, w.Bottom); err != nil || hole.Stop.Reason != want {
				t.Errorf("%s: formation %+v over the limit: %+v, %v", ex.ID, over, hole, err)
			}
		}
	}
}

// TestPublishedKickAtTheShoe: EMW at the shoe = mud + TD / shoe × kick. The most mud is the strength of the shoe less what the
// kick adds.
func TestPublishedKickAtTheShoe(t *testing.T) {
	_, disputed := load(t)
	for _, ex := range disputed {
		g := ex.Given
		w := Window{Pore: flat(10 * ppg), Fracture: flat(18.3 * ppg), Top: 100, Bottom: g["td_ft"] * foot}
		hole, err := Between(w, Margins{Kick: g["kick_size_ppg"] * ppg}, g["shoe_ft"]*foot, w.Bottom)
		if err != nil || hole.Most.By != ByKick || hole.Most.TVD != hole.Shoe {
			t.Fatalf("%s: %+v, %v", ex.ID, hole, err)
		}
		kick := (hole.Most.Value - hole.Most.Mud) / ppg
		printed, least := g["mud_weight_ppg"]+kick, g["least_mud_ppg"]+kick
		if !handbook.Within(printed, ex.Recomputed["emw_at_shoe_ppg"], 1e-6) || !handbook.Within(least, ex.Recomputed["with_least_mud_ppg"], 1e-6) {
			t.Errorf("%s: %v and %v ppg at the shoe, want %v: %s", ex.ID, printed, least, ex.Recomputed, ex.Note)
		}
		if want := ex.Expected["emw_at_shoe_ppg"]; handbook.Within(printed, want, ex.TolerancePct) || !handbook.Within(least, want, ex.TolerancePct) {
			t.Errorf("%s: %v ppg meets the printed %v, or %v does not: %s", ex.ID, printed, want, least, ex.Note)
		}
	}
}
