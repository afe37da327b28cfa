package kill

import (
	"math"
	"testing"

	"borewalk/calc/state"
)

// TestFewStepsSeeThePeaks: every peak of 40 steps is that of 1000 within 0.5 %, and so is when it is, whatever the way; also
// where the choke is wide open for a while.
func TestFewStepsSeeThePeaks(t *testing.T) {
	for name, change := range map[string]func(j *Job){
		"two circulations": func(*Job) {},
		"one circulation":  func(j *Job) { j.OneCirculation = true },
		"wide open":        func(j *Job) { j.Overbalance, j.Flow = 0, 0.013 },
		"large":            func(j *Job) { j.Kick.Volume = 15 },
		"small":            func(j *Job) { j.Kick.Volume = 0.5 },
		"one parcel":       func(j *Job) { j.Parcels = 1 },
		"a warm line":      func(j *Job) { j.Kick.LineTemperature = nil },
	} {
		few, many := subsea(t), subsea(t)
		few.Places = []float64{0, 500, 915, 2000, 3000, 3500, 4100, 4200}
		many.Places = few.Places
		change(&few)
		change(&many)
		many.Steps = 1000
		a, _ := run(t, few)
		b, _ := run(t, many)
		same := func(what string, x, y Peak) {
			if !(math.Abs(x.Value-y.Value) <= 0.005*math.Abs(y.Value)) {
				t.Errorf("%s, %s: %+v in 40 steps, %+v in 1000", name, what, x, y)
			}
		}
		same("choke", a.Choke, b.Choke)
		same("foot", a.Foot, b.Foot)
		same("gas", a.Gas, b.Gas)
		for i := range a.At {
			same("place", a.At[i], b.At[i])
			about(t, name+": gas at place", a.GasAtPlace[i], b.GasAtPlace[i], 1e-2)
		}
		about(t, name+": highest choke", a.Choke.Pumped, b.Choke.Pumped, 1e-2)
		about(t, name+": gas at the stack", a.GasAtStack, b.GasAtStack, 1e-2)
		about(t, name+": gas at the choke", a.GasAtChoke, b.GasAtChoke, 1e-2)
		about(t, name+": gas out", a.GasOut, b.GasOut, 1e-9)
	}
}

// TestStepsDoNotMatter: what one sees after a volume does not depend on the steps in which it was pumped.
func TestStepsDoNotMatter(t *testing.T) {
	few, many := subsea(t), subsea(t)
	few.Steps, many.Steps = 40, 400
	_, rough := run(t, few)
	_, fine := run(t, many)
	compared := 0
	for _, a := range rough {
		for _, b := range fine {
			if a.Stage != First || a.Mark != b.Mark || b.Stage != First || a.Mark != NoMark || math.Abs(a.Pumped-b.Pumped) > 1e-9 {
				continue
			}
			compared++
			about(t, "choke", a.Choke, b.Choke, 1e-5*b.Choke)
			about(t, "gas", a.GasVolume, b.GasVolume, 1e-5*b.GasVolume)
			about(t, "gone", a.MassOut, b.MassOut, 1e-3)
		}
	}
	if compared < 15 {
		t.Errorf("%d moments compared", compared)
	}
}

// at returns what a job shows after a volume in m³.
func at(t *testing.T, j Job, pumped float64) Moment {
	t.Helper()
	c, err := begin(&j, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range c.waypoints() {
		if p.pumped < pumped {
			if err := c.follow(p); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := c.follow(waypoint{pumped, NoMark}); err != nil {
		t.Fatal(err)
	}
	return c.moment
}

// TestOneCirculationOrTwo are the same until kill mud comes to the bit; the gas is past the shoe by then, so its peak is the
// same as well. From then on the choke of one circulation is never the higher one.
func TestOneCirculationOrTwo(t *testing.T) {
	two := subsea(t)
	two.Overbalance, two.Flow = 3e6, 0.006
	one := two
	one.OneCirculation = true
	first, _ := run(t, one)
	second, _ := run(t, two)
	if !(first.KillMudAtBit > 1.2*first.GasAtPlace[0]) {
		t.Fatalf("kill mud at the bit after %v m³, gas at the shoe after %v", first.KillMudAtBit, first.GasAtPlace[0])
	}
	about(t, "peak at the shoe", first.At[0].Value, second.At[0].Value, 1e-6*second.At[0].Value)
	about(t, "when", first.At[0].Pumped, second.At[0].Pumped, 1e-3)
	for share := 0.02; share < 1; share += 0.02 {
		pumped := share * first.Pumped
		a, b := at(t, one, pumped), at(t, two, pumped)
		if pumped < first.KillMudAtBit {
			about(t, "choke", a.Choke, b.Choke, 1e-5*b.Choke)
			about(t, "gas", a.GasVolume, b.GasVolume, 1e-5*b.GasVolume)
			about(t, "shoe", a.At[0], b.At[0], 1e-5*b.At[0])
		} else if a.Choke > b.Choke+100 {
			t.Errorf("after %v m³ the choke is %v in one circulation, %v in two", pumped, a.Choke, b.Choke)
		}
	}
	if !(first.Choke.Value < second.Choke.Value-1e5) {
		t.Errorf("highest choke %v in one circulation, %v in two", first.Choke.Value, second.Choke.Value)
	}
}

// TestTheWellIsThere: a moment's well has the layers that its figures were read from.
func TestTheWellIsThere(t *testing.T) {
	j := subsea(t)
	seen := false
	if _, err := Run(j, func(m *Moment) {
		if m.Mark != GasAtStack {
			return
		}
		seen = true
		layers := m.Well.AppendLayers(nil, state.Annulus)
		if len(layers) != usual+2 || layers[0].Fluid != Mud || layers[usual+1].Fluid != Mud ||
			layers[1].Fluid < FirstGas || layers[1].Top != m.GasTop {
			t.Errorf("%+v", layers)
		}
		if name := m.Well.Fluid(layers[1].Fluid).Name; name != "gas" {
			t.Errorf("the gas is called %q", name)
		}
	}); err != nil || !seen {
		t.Error(err, seen)
	}
}
