package state

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
)

// The 13-5/8 in casing of the demo well Ottermast-2, cemented to 850 m inside the
// 18-5/8 in casing. All figures of the well are the demo's; everything expected is
// worked out here in plain arithmetic from diameters in inches.

const (
	shoe    = 2150.0
	collar  = 2124.60
	tallied = 365.65 // top of casing, at the landing shoulder
	oldShoe = 950.0
	hole    = 2155.0
)

// the fluids of the job
const (
	mud = iota
	spacer
	lead
	tail
	heavy // in the rathole
)

// square returns pi/4 (o² - i²) in m² of diameters in inches.
func square(o, i float64) float64 { return math.Pi / 4 * (o*o - i*i) * 0.0254 * 0.0254 }

// bent is the demo's trajectory: vertical to 1100 m, 2.5° per 30 m to 32° at 1484 m,
// straight from there.
func bent(md float64) float64 {
	radius := 30 / (2.5 * math.Pi / 180)
	switch {
	case md <= 1100:
		return md
	case md <= 1484:
		return 1100 + radius*math.Sin((md-1100)/radius)
	}
	return 1100 + radius*math.Sin(384/radius) + (md-1484)*math.Cos(32*math.Pi/180)
}

// ottermast is the well before the job with an open hole of (1+excess) times the
// gauge annulus.
func ottermast(t testing.TB, excess float64) *Well {
	t.Helper()
	open := math.Sqrt(13.625*13.625+(1+excess)*(17.5*17.5-13.625*13.625)) * inch
	// Rheology: the mud's is the demo's (18 cP, 22 lb/100ft²), the others are usual.
	cement := func(name string, density float64) Fluid {
		return Fluid{name, friction.Bingham(density, 0.05, 8)}
	}
	w, err := New(Layout{
		Bore: bore.Profile{
			{Top: 0, Bottom: 352.3, Diameter: 19.5 * inch, Label: "riser"},
			{Top: 352.3, Bottom: 364.8, Diameter: 18.75 * inch, Label: "stack"},
			{Top: 364.8, Bottom: oldShoe, Diameter: 17.755 * inch, Label: "18-5/8 in casing"},
			{Top: oldShoe, Bottom: hole, Diameter: open, Label: "open hole"},
		},
		String: []bore.Body{
			{Top: -10, Bottom: tallied, OD: 5.875 * inch, ID: 5.153 * inch, Label: "landing string"},
			{Top: tallied, Bottom: shoe, OD: 13.625 * inch, ID: 12.375 * inch, Label: "13-5/8 in casing"},
		},
		Float:    true,
		Return:   ToRig(mud),
		TVD:      bent,
		Friction: friction.BinghamSlot{},
	}, []Fluid{
		{"mud", friction.Bingham(1250, 0.018, 22*0.4788026)},
		{"spacer", friction.Bingham(1380, 0.025, 8)},
		cement("lead", 1500), cement("tail", 1900), cement("heavy mud", 1450),
	}, mud)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Spot(Pocket, shoe, hole, heavy); err != nil {
		t.Fatal(err)
	}
	return w
}

// ordered returns the volumes of lead and tail in m³, with 30 % on the open hole:
// lead from 1950 m to 850 m, tail from 2150 m to 1950 m and the shoe track.
func ordered() (leadVolume, tailVolume float64) {
	cased, gauge := square(17.755, 13.625), square(17.5, 13.625)
	return 100*cased + 1000*gauge*1.3, 200*gauge*1.3 + (shoe-collar)*square(12.375, 0)
}

// cementUp plays the job by volume, in pieces of the given size at most, and returns
// what was pumped behind the top plug until it bumped.
func cementUp(t testing.TB, w *Well, piece float64) (displaced float64) {
	t.Helper()
	pump := func(volume float64, fluid int) {
		for volume > 0 {
			pumped, err := w.Pump(min(piece, volume), fluid)
			if err != nil {
				t.Fatal(err)
			}
			volume -= pumped
		}
	}
	drop := func(name string, holds bool) {
		if err := w.Drop(Plug{Name: name, Seat: collar, Holds: holds}); err != nil {
			t.Fatal(err)
		}
	}
	leadVolume, tailVolume := ordered()
	pump(16, spacer)
	drop("bottom plug", false)
	pump(leadVolume, lead)
	pump(tailVolume, tail)
	drop("top plug", true)
	for !w.Bumped() {
		pumped, err := w.Pump(piece, mud)
		if displaced += pumped; err != nil || displaced > 10000 {
			t.Fatalf("no bump after %v m³: %v", displaced, err)
		}
	}
	return displaced
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

func TestCementJobAtBump(t *testing.T) {
	leadVolume, tailVolume := ordered()
	near(t, "lead ordered", leadVolume, 86.0, 0.05) // the demo's own figures
	near(t, "tail ordered", tailVolume, 17.9, 0.05)
	cased, gauge, casing := square(17.755, 13.625), square(17.5, 13.625), square(12.375, 0)
	for _, c := range []struct {
		name                    string
		excess, piece           float64
		topOfLead, leadWithin   float64 // m, as stated for the demo
		topOfTail, topOfLeadNow float64 // m, plain arithmetic
	}{
		{"hole 30 % over gauge", 0.3, 0.25, 850, 1e-6, 1950, 850},
		{"hole 30 % over gauge, in one go", 0.3, 1000, 850, 1e-6, 1950, 850},
		// All tail but the shoe track's stands in gauge hole; what the hole does not
		// take of the rest goes up into the casing. Stated to a metre.
		{"hole in gauge", 0, 1.7, 514, 1, shoe - 200*1.3, oldShoe - (100 + 1200*gauge*0.3/cased)},
	} {
		w := ottermast(t, c.excess)
		displaced := cementUp(t, w, c.piece)
		near(t, c.name+": displacement", displaced, tallied*square(5.153, 0)+(collar-tallied)*casing, 1e-6)
		near(t, c.name+": displacement", displaced, 141.4, 0.05)
		top, _ := w.Top(Annulus, lead)
		near(t, c.name+": top of lead", top, c.topOfLead, c.leadWithin)
		near(t, c.name+": top of lead", top, c.topOfLeadNow, 1e-6)
		top, _ = w.Top(Annulus, tail)
		near(t, c.name+": top of tail", top, c.topOfTail, 1e-6)
		top, _ = w.Top(Annulus, spacer)
		near(t, c.name+": top of spacer", top, above(c.topOfLeadNow, 16), 1e-6)
		top, _ = w.Top(Inside, tail)
		near(t, c.name+": top of tail in the shoe track", top, collar, 1e-6)
		near(t, c.name+": rathole", w.Volume(Pocket, heavy), w.Capacity(Pocket), 1e-9)
		near(t, c.name+": returns", w.Account(mud).Returned, 16+leadVolume+tailVolume+displaced, 1e-6)
		for _, p := range w.AppendPlugs(nil) {
			if !p.Landed || p.MD != collar {
				t.Errorf("%s: %s at %v, want it landed at %v", c.name, p.Name, p.MD, collar)
			}
		}
		if pumped, err := w.Pump(1, mud); pumped != 0 || err != nil {
			t.Errorf("%s: after the bump Pump = %v, %v, want nothing", c.name, pumped, err)
		}
	}
}

// above returns the depth in m to which a volume reaches above a depth in the
// annulus between the casings, the stack and the riser.
func above(from, volume float64) float64 {
	for _, part := range []struct{ top, area float64 }{
		{tallied, square(17.755, 13.625)}, {364.8, square(17.755, 5.875)},
		{352.3, square(18.75, 5.875)}, {0, square(19.5, 5.875)},
	} {
		if room := (from - part.top) * part.area; volume > room {
			volume, from = volume-room, part.top
			continue
		}
		return from - volume/part.area
	}
	return 0
}

func TestCementJobPressures(t *testing.T) {
	w := ottermast(t, 0.3)
	cementUp(t, w, 0.5)
	spacerTop := 850 - 16/square(17.755, 13.625)
	atShoe := 9.80665 * (1250*spacerTop + 1380*(850-spacerTop) + 1500*(950-850))
	// True vertical depths of 1950, 2124.6, 2150 and 2155 m, by hand.
	build := 30 * 180 / (2.5 * math.Pi) * math.Sin(32*math.Pi/180)
	slant := math.Cos(32 * math.Pi / 180)
	at1950, atCollar := 1100+build+466*slant, 1100+build+640.6*slant
	at2150, at2155 := 1100+build+666*slant, 1100+build+671*slant
	atEnd := atShoe + 9.80665*(1500*(at1950-950)+1900*(at2150-at1950))
	near(t, "18-5/8 in shoe", pressure(t, w, Annulus, oldShoe), atShoe, 1)
	near(t, "13-5/8 in shoe", pressure(t, w, Annulus, shoe), atEnd, 1)
	near(t, "13-5/8 in shoe, inside", pressure(t, w, Inside, shoe), atEnd, 1)
	near(t, "total depth", pressure(t, w, Pocket, hole), atEnd+9.80665*1450*(at2155-at2150), 1)
	near(t, "half way down the lead", pressure(t, w, Annulus, 1000), atShoe+9.80665*1500*50, 1)
	inside := 9.80665 * (1250*atCollar + 1900*(at2150-atCollar))
	near(t, "differential", w.Differential(), atEnd-inside, 1)
	near(t, "pump", w.PumpPressure(), atEnd-inside, 1)
	emw, ok := w.EMW(Annulus, oldShoe)
	if !ok {
		t.Fatal("no equivalent density at the shoe")
	}
	near(t, "equivalent density at the shoe", emw, atShoe/(9.80665*950), 1e-6)
}

// The demo's own reckoning gives 1.445 sg at the new shoe, which is what the columns
// give at the bump, and a least margin of 0.110 sg to its fracture curve, 1.4777 sg
// at 950 m. Its friction is said to be good to some tens of per cent: 40 are allowed.
func TestCementJobAgainstTheDemo(t *testing.T) {
	w := ottermast(t, 0.3)
	var highest float64
	playJob(t, w, 0.5, func(Step) {
		emw, _ := w.EMW(Annulus, oldShoe)
		highest = max(highest, emw)
	})
	static, _ := w.EMW(Annulus, shoe)
	near(t, "at the new shoe at rest", static, 1445, 1)
	atRest, _ := w.EMW(Annulus, oldShoe)
	want := 1477.7 - 110
	near(t, "highest at the old shoe", highest, want, 0.4*(want-atRest))
}

// playJob plays the job in time, each stage in steps of the given volume, and looks
// at every step. Rates are the demo's: 950 l/min mixing, 2400 l/min displacing.
func playJob(t testing.TB, w *Well, volume float64, look func(Step)) (displaced float64) {
	t.Helper()
	advance := func(rate, volume float64, fluid int) Step {
		s, err := w.Advance(volume/rate, rate, fluid)
		if err != nil {
			t.Fatal(err)
		}
		look(s)
		return s
	}
	stage := func(total, rate float64, fluid int) {
		n := math.Ceil(total / volume)
		for range int(n) {
			advance(rate, total/n, fluid)
		}
	}
	leadVolume, tailVolume := ordered()
	const mixing, displacing = 0.950 / 60, 2.400 / 60
	stage(16, mixing, spacer)
	if err := w.Drop(Plug{Name: "bottom plug", Seat: collar}); err != nil {
		t.Fatal(err)
	}
	stage(leadVolume, mixing, lead)
	stage(tailVolume, mixing, tail)
	if err := w.Drop(Plug{Name: "top plug", Seat: collar, Holds: true}); err != nil {
		t.Fatal(err)
	}
	for range 10000 {
		s := advance(displacing, volume, mud)
		displaced += s.Pumped
		if s.Bumped && s.Level == 0 {
			return displaced
		}
	}
	t.Fatal("the plug never bumped")
	return 0
}
