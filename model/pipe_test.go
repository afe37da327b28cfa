package model_test

import (
	"math"
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	inch = 0.0254
	lbft = 0.45359237 / 0.3048
	ksi  = 6894757.293168361
)

func inches(x float64) quantity.Value { return quantity.Of(x, quantity.Inch) }

// want compares what is known of a pipe, in inches, lb/ft and ksi; zero is not compared.
func want(t *testing.T, what string, p model.Pipe, id, drift, widest, mass, yield float64) {
	t.Helper()
	for _, c := range []struct {
		name      string
		got, want float64
		within    float64
	}{{"ID", p.ID / inch, id, 0.001}, {"drift", p.Drift / inch, drift, 0.001}, {"widest", p.Widest / inch, widest, 0.001},
		{"mass", p.LinearMass / lbft, mass, 0.01}, {"yield", p.Yield / ksi, yield, 0.1}} {
		if c.want != 0 && math.Abs(c.got-c.want) > c.within {
			t.Errorf("%s: %s = %g, want %g", what, c.name, c.got, c.want)
		}
	}
}

// Sizes, bores, drifts and couplings are those of API Spec 5CT as the trade's casing tables print them; special drifts
// are those that mills offer, as in the teaching cases.
func TestCasingTakesWhatIsBlankFromTheCatalogue(t *testing.T) {
	part := func(size, weight float64, grade, class string) model.CasingPart {
		return model.CasingPart{Size: inches(size), Weight: quantity.Of(weight, quantity.PoundPerFoot), Grade: grade, DriftClass: class}
	}
	for _, c := range []struct {
		part                      model.CasingPart
		id, drift, widest, lb, ks float64
	}{
		{part(9.625, 53.5, "P110", model.APIDrift), 8.535, 8.379, 10.625, 53.5, 110},
		{part(9.625, 53.5, "P110", model.SpecialDrift), 8.535, 8.5, 10.625, 53.5, 110},
		{part(13.375, 72, "P110", model.APIDrift), 12.347, 12.191, 14.375, 72, 110},
		{part(13.375, 72, "P110", model.SpecialDrift), 12.347, 12.25, 14.375, 72, 110},
		{part(7, 32, "P110", model.APIDrift), 6.094, 5.969, 7.656, 32, 110},
		{part(20, 133, "K55", model.APIDrift), 18.73, 18.542, 21, 133, 55},
		{part(13.625, 88.2, "P110", model.APIDrift), 12.375, 12.219, 0, 88.2, 110},
		{part(13.625, 88.2, "P110", model.SpecialDrift), 12.375, 12.25, 0, 88.2, 110},
		// A grade that the catalogue does not know keeps the dimensions and takes the yield from its name.
		{part(9.625, 53.5, "XT140", model.APIDrift), 8.535, 8.379, 10.625, 53.5, 140},
		{part(9.625, 53.5, "", model.APIDrift), 8.535, 8.379, 10.625, 53.5, 0},
		{part(9.625, 53.5, "p-110", model.APIDrift), 8.535, 8.379, 10.625, 53.5, 110},
		// No special drift in the catalogue: the API drift is what is guaranteed.
		{part(20, 133, "K55", model.SpecialDrift), 18.73, 18.542, 21, 133, 55},
	} {
		want(t, c.part.Size.Text()+" "+c.part.Grade+" "+c.part.DriftClass, c.part.Pipe(), c.id, c.drift, c.widest, c.lb, c.ks)
	}
	unknown := part(9.625, 53.5, "mild", model.APIDrift)
	if got := unknown.Pipe().Yield; got != 0 {
		t.Errorf("a grade without a number has yield %g", got)
	}
}

func TestOwnPropertiesWin(t *testing.T) {
	part := model.CasingPart{Size: inches(9.625), Weight: quantity.Of(53.5, quantity.PoundPerFoot), Grade: "P110", DriftClass: model.SpecialDrift,
		ID: inches(8.6), Drift: inches(8.52), ConnectorOD: inches(10.2), LinearMass: quantity.Of(55, quantity.PoundPerFoot),
		Yield: quantity.Of(125*ksi, quantity.Pascal)}
	want(t, "own", part.Pipe(), 8.6, 8.52, 10.2, 55, 125)
	part.ConnectorOD = inches(9) // no connector is slimmer than its pipe
	if got := part.Pipe().Widest; math.Abs(got-9.625*inch) > 1e-9 {
		t.Errorf("widest = %g in", got/inch)
	}
}

// TestAnOwnBoreDoesNotKeepTheCataloguesDrift: a wall that is not the catalogue's has not its drift either.
func TestAnOwnBoreDoesNotKeepTheCataloguesDrift(t *testing.T) {
	part := model.CasingPart{Size: inches(9.625), Weight: quantity.Of(53.5, quantity.PoundPerFoot), Grade: "P110", DriftClass: model.APIDrift, ID: inches(8.2)}
	if p := part.Pipe(); p.Drift > p.ID {
		t.Errorf("drift %g in through a bore of %g in", p.Drift/inch, p.ID/inch)
	}
}

func TestCasingThatNobodyKnows(t *testing.T) {
	part := model.CasingPart{Size: inches(11), Weight: quantity.Of(60, quantity.PoundPerFoot), Grade: "X52"}
	p := part.Pipe()
	if p.ID != 0 || p.Drift != 0 || p.Source != "" {
		t.Errorf("unknown casing: %+v", p)
	}
	want(t, "unknown", p, 0, 0, 11, 60, 52)
	part.ID = inches(10)
	want(t, "with own ID", part.Pipe(), 10, 10, 11, 60, 52)
	if p := new(model.CasingPart).Pipe(); p != (model.Pipe{}) {
		t.Errorf("blank casing: %+v", p)
	}
}

// Drill pipe as in the trade's tables: 5 in 19.5 lb/ft of ID 4.276 in, 5 1/2 in 21.9 lb/ft of 4.778 in.
func TestStringPartsTakeWhatIsBlankFromTheCatalogue(t *testing.T) {
	pipe := func(size, weight float64) model.StringPart {
		return model.StringPart{Item: model.ItemPipe, Size: inches(size), Weight: quantity.Of(weight, quantity.PoundPerFoot), Grade: "S135"}
	}
	five, fiveHalf := pipe(5, 19.5), pipe(5.5, 21.9)
	want(t, "5 in", five.Pipe(), 4.276, 2.75, 0, 0, 135) // the drift is the tool joint's
	want(t, "5 1/2 in", fiveHalf.Pipe(), 4.778, 3, 0, 0, 135)
	if p := five.Pipe(); p.LinearMass < 19.5*lbft || p.Widest <= p.OD || p.Source == "" {
		t.Errorf("5 in: %+v", p)
	}
	collar := model.StringPart{Item: model.ItemCollar, Size: inches(8), ID: inches(2.8125)}
	// 8 x 2 13/16 in collars weigh 150 lb/ft in the tables (API RP 7G).
	if p := collar.Pipe(); math.Abs(p.LinearMass/lbft-150) > 1.5 {
		t.Errorf("collar: %g lb/ft", p.LinearMass/lbft)
	}
	own := model.StringPart{Item: model.ItemTool, Size: inches(8), ID: inches(3), JointOD: inches(9), LinearMass: quantity.Of(140, quantity.PoundPerFoot)}
	want(t, "tool", own.Pipe(), 3, 3, 9, 140, 0)
	strange := pipe(7.123, 31)
	if p := strange.Pipe(); p.ID != 0 || math.Abs(p.LinearMass/lbft-31) > 0.01 {
		t.Errorf("unknown drill pipe: %+v", p)
	}
	for item, cuts := range map[string]bool{model.ItemBit: true, model.ItemOpener: true, model.ItemStabiliser: false, model.ItemTool: false, "": false} {
		part := model.StringPart{Item: item}
		if part.Cuts() != cuts {
			t.Errorf("%q cuts: %v", item, part.Cuts())
		}
	}
}

func TestEveryPipeOfTheDemosIsKnown(t *testing.T) {
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		plan := demo(t, name)
		for i, s := range plan.Sections {
			for k := range s.Casing {
				if p := s.Casing[k].Pipe(); !(0 < p.Drift && p.Drift <= p.ID && p.ID < p.OD && p.OD <= p.Widest && p.LinearMass > 0 && p.Yield > 0) {
					t.Errorf("%s section %d casing %d: %+v", name, i+1, k+1, p)
				}
			}
			for k := range s.String {
				if p := s.String[k].Pipe(); !s.String[k].Cuts() && !(0 < p.ID && p.ID < p.OD && p.OD <= p.Widest) {
					t.Errorf("%s section %d string %d: %+v", name, i+1, k+1, p)
				}
			}
		}
	}
}
