package drag_test

import (
	"math"
	"testing"

	"borewalk/calc/centring"
	"borewalk/calc/drag"
	"borewalk/model/handbook"
)

const degree = math.Pi / 180

// straight returns one straight element.
func straight(length, inclination, weight, friction float64) []drag.Element {
	way := drag.Direction{Inclination: inclination}
	return []drag.Element{{Length: length, Upper: way, Lower: way, Weight: weight, Radius: 0.09, Friction: friction}}
}

// bend returns one arc in the vertical plane.
func bend(upper, lower, radius, weight, friction float64) []drag.Element {
	return []drag.Element{{Length: radius * math.Abs(lower-upper), Upper: drag.Direction{Inclination: upper}, Lower: drag.Direction{Inclination: lower},
		Weight: weight, Radius: 0.09, Friction: friction}}
}

func made(t testing.TB, elements []drag.Element) drag.String {
	t.Helper()
	s, err := drag.New(elements)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func tension(t testing.TB, elements []drag.Element, op drag.Operation) float64 {
	t.Helper()
	got, _ := made(t, elements).Top(op)
	return got
}

// lowered is an operation with a load in N that hangs on the lower end.
func lowered(op drag.Operation, load float64) drag.Operation {
	op.BitWeight = -load
	return op
}

func TestPublishedExamples(t *testing.T) {
	known := handbook.Load[struct {
		Turn []struct {
			Source, Where, Note string
			Seen                bool
			Load                float64 `toml:"load_lbf"`
			Friction, Turns     float64
			Held                float64 `toml:"held_lbf"`
			Within              float64 `toml:"within_percent"`
		}
		Slant []struct {
			Source, Where, Note string
			Seen                bool
			Weight              float64 `toml:"weight_lbf"`
			Friction, Sine      float64
			PickUp              float64 `toml:"pick_up_lbf"`
			SlackOff            float64 `toml:"slack_off_lbf"`
			Within              float64 `toml:"within_percent"`
		}
	}](t, "testdata/published.toml")
	if len(known.Turn) == 0 || len(known.Slant) == 0 {
		t.Fatal("no examples")
	}
	for _, c := range known.Turn {
		quarter := math.Pi / 4 // the drum in twelve eighths of a turn, level, so that weightless pipe bends round it
		var round []drag.Element
		for k := range int(c.Turns * 8) {
			round = append(round, drag.Element{Length: 1, Friction: c.Friction,
				Upper: drag.Direction{Inclination: math.Pi / 2, Azimuth: math.Mod(float64(k)*quarter, 2*math.Pi)},
				Lower: drag.Direction{Inclination: math.Pi / 2, Azimuth: math.Mod(float64(k+1)*quarter, 2*math.Pi)}})
		}
		if got := tension(t, round, lowered(drag.SlackingOff(), c.Load)); !handbook.Within(got, c.Held, c.Within) {
			t.Errorf("%s: held with %g lbf, want %g", c.Source, got, c.Held)
		}
	}
	for _, c := range known.Slant {
		block := straight(1, math.Asin(c.Sine), c.Weight, c.Friction)
		if got := tension(t, block, drag.PickingUp()); !handbook.Within(got, c.PickUp, c.Within) {
			t.Errorf("%s: pulled up with %g lbf, want %g", c.Source, got, c.PickUp)
		}
		if got := tension(t, block, drag.SlackingOff()); !handbook.Within(got, c.SlackOff, c.Within) {
			t.Errorf("%s: let down with %g lbf, want %g", c.Source, got, c.SlackOff)
		}
	}
}

// TestAnUprightStringWeighsWhatItWeighs: without a slant nothing presses on the wall.
func TestAnUprightStringWeighsWhatItWeighs(t *testing.T) {
	s := made(t, straight(3000, 0, 300, 0.4))
	for _, op := range []drag.Operation{drag.PickingUp(), drag.SlackingOff(), drag.Rotating()} {
		if got, torque := s.Top(op); !near(got, 900e3, 1e-12) || torque != 0 {
			t.Errorf("%+v: %g N and %g N m, want 900000 and none", op, got, torque)
		}
	}
	if got, torque := s.Top(drag.Drilling(100e3, 5e3)); !near(got, 800e3, 1e-12) || torque != 5e3 {
		t.Errorf("drilling: %g N and %g N m, want 800000 and 5000", got, torque)
	}
}

// TestAStraightSlant: w L (cos I + mu sin I), and the torque mu W sin I r.
func TestAStraightSlant(t *testing.T) {
	const length, w, mu = 1200.0, 250.0, 0.27
	for _, inc := range []float64{5, 32, 60, 90, 110} {
		sin, cos := math.Sincos(inc * degree)
		s := made(t, straight(length, inc*degree, w, mu))
		for _, c := range []struct {
			op   drag.Operation
			want float64
		}{{drag.PickingUp(), w * length * (cos + mu*sin)}, {drag.SlackingOff(), w * length * (cos - mu*sin)}, {drag.Rotating(), w * length * cos}} {
			if got, _ := s.Top(c.op); math.Abs(got-c.want) > 1e-9*w*length {
				t.Errorf("%g degrees, %+v: %g N, want %g", inc, c.op, got, c.want)
			}
		}
		if _, torque := s.Top(drag.Rotating()); !near(torque, mu*w*length*sin*0.09, 1e-12) {
			t.Errorf("%g degrees: torque %g N m, want %g", inc, torque, mu*w*length*sin*0.09)
		}
	}
}

// TestAWeightlessBend is the capstan: T2 = T1 exp(mu angle), whatever the radius, in an arc as round a kink.
func TestAWeightlessBend(t *testing.T) {
	const load, mu = 400e3, 0.3
	for _, angle := range []float64{0.5, 5, 32, 90, 150} {
		arc := bend(0, angle*degree, 500, 0, mu)
		kink := bend(0, angle*degree, 0, 0, mu)
		for name, elements := range map[string][]drag.Element{"arc": arc, "kink": kink} {
			if got, want := tension(t, elements, lowered(drag.PickingUp(), load)), load*math.Exp(mu*angle*degree); !near(got, want, 1e-9) {
				t.Errorf("%s of %g degrees, pulled: %g N, want %g", name, angle, got, want)
			}
			if got, want := tension(t, elements, lowered(drag.SlackingOff(), load)), load*math.Exp(-mu*angle*degree); !near(got, want, 1e-9) {
				t.Errorf("%s of %g degrees, let down: %g N, want %g", name, angle, got, want)
			}
			// In compression the other way round: to push it down takes more at the top.
			if got, want := tension(t, elements, lowered(drag.SlackingOff(), -load)), -load*math.Exp(mu*angle*degree); !near(got, want, 1e-9) {
				t.Errorf("%s of %g degrees, pushed: %g N, want %g", name, angle, got, want)
			}
			if _, torque := made(t, elements).Top(lowered(drag.Rotating(), load)); !near(torque, mu*load*angle*degree*0.09, 1e-9) {
				t.Errorf("%s of %g degrees: torque %g N m, want %g", name, angle, torque, mu*load*angle*degree*0.09)
			}
		}
	}
}

// built returns the tension at the upper end of a build of constant curvature in the vertical plane, by the closed form.
//
// With inclination I for place, radius R, and m = +- mu, the balance of forces where the string lies on the low side is
// dT/dI - m T = -w R (cos I + m sin I), and with m for -m where it hangs on the high side. It has the solution
//
//	T = w R (2 m cos I - (1 - m²) sin I) / (1 + m²) + C exp(m I)
//
// C from the lower end. Derived anew; the same as in M. C. Sheppard, C. Wick and T. Burgess 1987 and in B. S. Aadnoy,
// Modern Well Design (from memory).
func built(lower float64, upperInc, lowerInc, w, radius, m float64) float64 {
	part := func(inc float64) float64 {
		return w * radius * (2*m*math.Cos(inc) - (1-m*m)*math.Sin(inc)) / (1 + m*m)
	}
	return part(upperInc) + (lower-part(lowerInc))*math.Exp(m*(upperInc-lowerInc))
}

func TestABuildWithWeight(t *testing.T) {
	const w, radius, mu = 300.0, 687.5, 0.3 // 2.5 degrees per 30 m
	upper, lower := 5*degree, 60*degree
	for _, c := range []struct {
		name string
		load float64
		op   drag.Operation
		m    float64
	}{
		{"hangs on the high side, pulled", 900e3, drag.PickingUp(), -mu},
		{"hangs on the high side, let down", 900e3, drag.SlackingOff(), mu},
		{"compressed on the low side, let down", -400e3, drag.SlackingOff(), -mu},
		{"compressed on the low side, pulled", -400e3, drag.PickingUp(), mu},
		{"high side, turned", 900e3, drag.Rotating(), 0},
	} {
		if got, want := tension(t, bend(upper, lower, radius, w, mu), lowered(c.op, c.load)), built(c.load, upper, lower, w, radius, c.m); !near(got, want, 1e-8) {
			t.Errorf("%s: %.6f N, want %.6f", c.name, got, want)
		}
	}
}

// TestATurnInSpaceAgreesWithAPlainSum: a build that turns, added up in twenty thousand straight pieces by Johancsik's own
// formula with inclination and azimuth, which shares nothing with the package but the physics.
func TestATurnInSpaceAgreesWithAPlainSum(t *testing.T) {
	upper, lower := drag.Direction{Inclination: 10 * degree, Azimuth: 20 * degree}, drag.Direction{Inclination: 55 * degree, Azimuth: 110 * degree}
	const length, w, mu, load, radius = 900.0, 280.0, 0.25, 350e3, 0.09
	elements := []drag.Element{{Length: length, Upper: upper, Lower: lower, Weight: w, Radius: radius, Friction: mu}}
	for name, op := range map[string]drag.Operation{"pulled": drag.PickingUp(), "let down": drag.SlackingOff(), "turned": drag.Rotating()} {
		got, torque := made(t, elements).Top(lowered(op, load))
		want, turning := plainSum(upper, lower, length, w, mu, radius, load, op, 20000)
		if !near(got, want, 2e-6) {
			t.Errorf("%s: %.3f N, the sum %.3f", name, got, want)
		}
		if !near(torque, turning, 2e-6) && turning > 0 {
			t.Errorf("%s: %.4f N m, the sum %.4f", name, torque, turning)
		}
	}
}

// plainSum adds up an arc in pieces, from the lower end, with the middle of each piece for its direction and its tension.
func plainSum(upper, lower drag.Direction, length, w, mu, r, load float64, op drag.Operation, n int) (tension, torque float64) {
	unit := func(d drag.Direction) [3]float64 {
		return [3]float64{math.Cos(d.Inclination), math.Sin(d.Inclination) * math.Cos(d.Azimuth), math.Sin(d.Inclination) * math.Sin(d.Azimuth)}
	}
	a, b := unit(lower), unit(upper)
	turn := math.Acos(a[0]*b[0] + a[1]*b[1] + a[2]*b[2])
	at := func(share float64) drag.Direction {
		var v [3]float64
		for k := range v {
			v[k] = (math.Sin((1-share)*turn)*a[k] + math.Sin(share*turn)*b[k]) / math.Sin(turn)
		}
		return drag.Direction{Inclination: math.Acos(v[0]), Azimuth: math.Atan2(v[2], v[1])}
	}
	tension = load
	ds := length / float64(n)
	for k := range n {
		low, up := at(float64(k)/float64(n)), at(float64(k+1)/float64(n))
		inc := (low.Inclination + up.Inclination) / 2
		middle := tension
		var side float64
		for range 3 { // the tension in the middle of the piece hangs on the side force and the other way round
			side = math.Hypot(middle*(low.Azimuth-up.Azimuth)*math.Sin(inc), middle*(low.Inclination-up.Inclination)-w*ds*math.Sin(inc))
			middle = tension + (w*ds*math.Cos(inc)+op.Axial*mu*side)/2
		}
		tension += w*ds*math.Cos(inc) + op.Axial*mu*side
		torque += op.Turning * mu * side * r
	}
	return tension, torque
}

// TestTheSideForceIsTheFormulas holds it against the same formula as it is written for centralisers.
func TestTheSideForceIsTheFormulas(t *testing.T) {
	upper, lower := drag.Direction{Inclination: 0.4, Azimuth: 1}, drag.Direction{Inclination: 0.42, Azimuth: 1.03}
	e := []drag.Element{{Length: 30, Upper: upper, Lower: lower, Weight: 320, Radius: 0.09, Friction: 0}}
	load := made(t, e).Loads(nil, lowered(drag.Rotating(), 500e3))[0]
	middle := (load.Upper.Side + load.Lower.Side) / 2
	want := centring.Side(320, (load.Upper.Tension+load.Lower.Tension)/2, 0.41, 0.02/30, 0.03/30)
	if !near(middle, want, 1e-3) {
		t.Errorf("side force %g N/m, want %g", middle, want)
	}
	if load.Side < load.Upper.Side || load.Side < load.Lower.Side || load.SideAt < 0 || load.SideAt > 30 {
		t.Errorf("greatest %+v", load)
	}
}

// TestABendInOneElementIsTheBendInMany: the steps are fine enough, also where the string changes from one side of the hole
// to the other.
func TestABendInOneElementIsTheBendInMany(t *testing.T) {
	for _, load := range []float64{-200e3, 0, 60e3, 500e3} {
		for _, op := range []drag.Operation{drag.PickingUp(), drag.SlackingOff(), drag.Rotating()} {
			one := tension(t, bend(0, 70*degree, 700, 300, 0.3), lowered(op, load))
			var many []drag.Element
			for k := range 700 {
				many = append(many, bend(float64(k)*degree/10, float64(k+1)*degree/10, 700, 300, 0.3)...)
			}
			if got := tension(t, many, lowered(op, load)); math.Abs(got-one) > 10 { // N, in the step in which it changes sides
				t.Errorf("load %g, %+v: %g N in one, %g in many", load, op, one, got)
			}
		}
	}
}

func TestLoadsAreThoseOfTheTop(t *testing.T) {
	elements := append(append(straight(800, 0, 350, 0.2), bend(0, 32*degree, 700, 350, 0.2)...), straight(1500, 32*degree, 350, 0.3)...)
	s := made(t, elements)
	for _, op := range []drag.Operation{drag.PickingUp(), drag.SlackingOff(), drag.Rotating(), drag.Drilling(100e3, 4e3), drag.Sliding(60e3)} {
		loads := s.Loads(nil, op)
		tension, torque := s.Top(op)
		if loads[0].Upper.Tension != tension || loads[0].Torque != torque || loads[2].Lower.Tension != -op.BitWeight {
			t.Errorf("%+v: loads %+v, top %g N and %g N m", op, loads, tension, torque)
		}
		for k := 1; k < len(loads); k++ {
			if loads[k-1].Lower.Tension != loads[k].Upper.Tension {
				t.Errorf("%+v: a step of tension at element %d", op, k+1)
			}
		}
	}
}

func TestTheFrictionThatGivesALoadIsFound(t *testing.T) {
	elements := append(append(straight(800, 0, 350, 0.2), bend(0, 32*degree, 700, 350, 0.2)...), straight(1500, 32*degree, 350, 0.37)...)
	s := made(t, elements)
	for _, op := range []drag.Operation{drag.PickingUp(), drag.SlackingOff()} {
		load, _ := s.Top(op)
		if got, ok := s.MatchTension(op, 2, 3, load); !ok || math.Abs(got-0.37) > 1e-4 {
			t.Errorf("%+v: %g, %v; want 0.37", op, got, ok)
		}
	}
	_, torque := s.Top(drag.Rotating())
	if got, ok := s.MatchTorque(drag.Rotating(), 2, 3, torque); !ok || math.Abs(got-0.37) > 1e-4 {
		t.Errorf("torque: %g, %v; want 0.37", got, ok)
	}
	if got, ok := s.MatchTension(drag.PickingUp(), 2, 3, 1e9); ok {
		t.Errorf("no friction gives a million kN, but %g does", got)
	}
	if got, ok := s.MatchTension(drag.Rotating(), 2, 3, 1e6); ok {
		t.Errorf("turning does not hang on friction, but %g is found", got)
	}
	if got, ok := s.MatchTension(drag.PickingUp(), 0, 1, 1e6); ok {
		t.Errorf("upright pipe does not rub, but %g is found", got)
	}
}

func TestWhatCannotBeIsRefused(t *testing.T) {
	fine := straight(10, 0.1, 300, 0.2)[0]
	for name, spoil := range map[string]func(*drag.Element){
		"no number":       func(e *drag.Element) { e.Weight = math.NaN() },
		"infinite":        func(e *drag.Element) { e.Length = math.Inf(1) },
		"negative length": func(e *drag.Element) { e.Length = -1 },
		"inclination":     func(e *drag.Element) { e.Upper.Inclination = 4 },
		"radius":          func(e *drag.Element) { e.Radius = -0.1 },
		"friction":        func(e *drag.Element) { e.Friction = -0.1 },
		"half a turn":     func(e *drag.Element) { e.Upper.Inclination, e.Lower.Inclination = 0, math.Pi },
	} {
		bad := fine
		spoil(&bad)
		if _, err := drag.New([]drag.Element{fine, bad}); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if s, err := drag.New(nil); err != nil {
		t.Error(err)
	} else if got, torque := s.Top(drag.PickingUp()); got != 0 || torque != 0 {
		t.Errorf("nothing weighs %g N and takes %g N m", got, torque)
	}
}

// near compares relatively.
func near(got, want, within float64) bool { return math.Abs(got-want) <= within*math.Abs(want) }
