package seats

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
)

// A drawn well: the curves as tables, so that they can be changed.
type drawn struct {
	depths                    []float64
	pore, fracture, stability []float64 // stability is 0 above and below its rows
	sea                       bool
}

// drawWell draws a prognosis of 3 to 12 rows from a seabed down, with or without stability and sea.
func drawWell(t *rapid.T) (d drawn) {
	tvd := rapid.Float64Range(100, 1500).Draw(t, "seabed")
	pore := 1025 * (tvd - 20) / tvd
	n := rapid.IntRange(3, 12).Draw(t, "rows")
	room := rapid.Float64Range(20, 300).Draw(t, "room")
	first, last := n, 0
	if rapid.Bool().Draw(t, "has stability") {
		first = rapid.IntRange(1, n-2).Draw(t, "first")
		last = rapid.IntRange(first+1, n-1).Draw(t, "last")
	}
	for i := range n {
		d.depths, d.pore, d.fracture = append(d.depths, tvd), append(d.pore, pore), append(d.fracture, pore+room)
		d.stability = append(d.stability, 0)
		if i >= first && i <= last {
			d.stability[i] = pore + room*rapid.Float64Range(0, 0.8).Draw(t, "stable")
		}
		step := rapid.Float64Range(50, 700).Draw(t, "step")
		tvd += step
		pore += step * rapid.Float64Range(-0.05, 0.25).Draw(t, "growth")
		room = max(10, room+step*rapid.Float64Range(-0.1, 0.2).Draw(t, "opening"))
	}
	d.sea = rapid.Bool().Draw(t, "sea")
	return d
}

func (d *drawn) curve(t *rapid.T, values []float64) column.Curve {
	var rows []column.Row
	for i, v := range values {
		if v > 0 {
			rows = append(rows, column.Row{TVD: d.depths[i], Value: v})
		}
	}
	curve, err := column.NewCurve(rows)
	if err != nil {
		t.Fatal(err)
	}
	return curve
}

func (d *drawn) window(t *rapid.T) Window {
	top, bottom := d.depths[0], d.depths[len(d.depths)-1]
	w := Window{Pore: d.curve(t, d.pore).At, Fracture: d.curve(t, d.fracture).At, Depths: d.depths, Top: top, Bottom: bottom}
	for _, s := range d.stability {
		if s > 0 {
			w.Stability = d.curve(t, d.stability).At
			break
		}
	}
	if d.sea {
		w.Riserless = func(tvd float64) (float64, bool) { return 1025 * (tvd - 20) / tvd, true }
	}
	return w
}

func drawMargins(t *rapid.T) (m Margins) {
	m = Margins{Trip: rapid.Float64Range(0, 40).Draw(t, "trip"), Fracture: rapid.Float64Range(0, 40).Draw(t, "fracture"), Riserless: -5}
	if rapid.Bool().Draw(t, "has kick") {
		m.Kick = rapid.Float64Range(1, 40).Draw(t, "kick")
	}
	if rapid.Bool().Draw(t, "sticks") {
		m.Differential = rapid.Float64Range(3e6, 30e6).Draw(t, "differential")
	}
	return m
}

// needed returns what a depth needs, read from the curves.
func needed(w Window, m Margins, tvd float64) float64 {
	pore, _ := w.Pore(tvd)
	need := pore + m.Trip
	if w.Stability != nil {
		if stable, ok := w.Stability(tvd); ok {
			need = max(need, stable)
		}
	}
	return need
}

// stood returns what a depth stands in a hole that ends at a bottom: in pressures, from the curves.
func stood(w Window, m Margins, tvd, bottom float64) float64 {
	pore, _ := w.Pore(tvd)
	fracture, _ := w.Fracture(tvd)
	shutIn := m.Kick * column.G * bottom // Pa on top of the mud, everywhere
	most := (column.PressureOf(fracture-m.Fracture, tvd) - shutIn) / (column.G * tvd)
	if m.Differential > 0 {
		most = min(most, (column.PressureOf(pore, tvd)+m.Differential)/(column.G*tvd))
	}
	return most
}

// gridded returns the least and the most mud of a hole, looked at on a fine grid and at the rows.
func gridded(w Window, m Margins, shoe, bottom float64) (least, most float64) {
	least, most = math.Inf(-1), math.Inf(1)
	look := func(tvd float64) {
		least, most = max(least, needed(w, m, tvd)), min(most, stood(w, m, tvd, bottom))
	}
	const looks = 500
	for k := range looks + 1 {
		look(min(bottom, shoe+(bottom-shoe)*float64(k)/looks))
	}
	for _, tvd := range w.Depths {
		if tvd > shoe && tvd < bottom {
			look(tvd)
		}
	}
	return least, most
}

// does reports whether the riserless fluid does at a depth, with so much forgiven.
func does(w Window, m Margins, tvd, forgiven float64) bool {
	fluid, _ := w.Riserless(tvd)
	fracture, _ := w.Fracture(tvd)
	bare := m
	bare.Trip = 0
	return fluid >= needed(w, bare, tvd)+m.Riserless-forgiven && fluid <= fracture+forgiven
}

const rounding = 1e-6 // kg/m³, of what was worked out in another way

// checkHole holds a hole against the grid.
func checkHole(t *rapid.T, w Window, m Margins, h Hole) {
	if h.Riserless {
		for k := range 501 {
			if tvd := min(h.Bottom, h.Shoe+(h.Bottom-h.Shoe)*float64(k)/500); !does(w, m, tvd, rounding) {
				t.Fatalf("%+v: the fluid does not do at %g m", h, tvd)
			}
		}
		return
	}
	if again, err := Between(w, m, h.Shoe, h.Bottom); err != nil || again.Stop.Reason != Free || again.Least != h.Least || again.Most != h.Most {
		t.Fatalf("%+v, looked at again %+v, %v", h, again, err)
	}
	least, most := gridded(w, m, h.Shoe, h.Bottom)
	if least > most+rounding {
		t.Fatalf("%+v: needs %g and stands %g", h, least, most)
	}
	// Rows and ends are on the grid: only sticking can be tighter between, where its line has its turn.
	if !close(h.Least.Mud, least, rounding) || h.Most.Mud > most+rounding || h.Most.Mud < most-1 || h.Most.By != ByDifferential && !close(h.Most.Mud, most, rounding) {
		t.Fatalf("%+v: needs %g and stands %g on the grid", h, least, most)
	}
	for _, b := range []Bound{h.Least, h.Most} {
		if want := byHand(m, b, h.Bottom); !close(b.Mud, want, rounding) || b.TVD < h.Shoe || b.TVD > h.Bottom {
			t.Fatalf("%+v in %+v: by hand %g", b, h, want)
		}
	}
}

// byHand works a bound out of what it says it is made of.
func byHand(m Margins, b Bound, bottom float64) float64 {
	switch b.By {
	case ByPore:
		return b.Value + m.Trip
	case ByStability:
		return b.Value
	case ByFracture:
		return b.Value - m.Fracture
	case ByKick:
		return b.Value - m.Fracture - m.Kick*bottom/b.TVD
	case ByDifferential:
		return b.Value + m.Differential/(9.80665*b.TVD)
	}
	return math.NaN()
}

// checkChain holds all holes of a proposal against the grid, and sees that they follow each other from a depth on.
func checkChain(t *rapid.T, w Window, m Margins, from float64, p Proposal) {
	for i, h := range p.Holes {
		checkHole(t, w, m, h)
		if i > 0 && (h.Shoe != p.Holes[i-1].Bottom || h.Riserless) {
			t.Fatalf("%+v after %+v", h, p.Holes[i-1])
		}
		if !(h.Bottom > h.Shoe) {
			t.Fatalf("%+v", h)
		}
	}
	if p.Whole != (p.Stop.Reason == Free) || p.Whole && (len(p.Holes) == 0 || p.Holes[0].Shoe != from || p.Holes[len(p.Holes)-1].Bottom != w.Bottom) {
		t.Fatalf("%+v", p)
	}
	if s := p.Stop; s.Reason == Closed && !(s.Needs.Mud > s.Stands.Mud) {
		t.Fatalf("%+v", s)
	}
}

// TestEveryHoleChecksOut: on a grid, from the curves, in pressures.
func TestEveryHoleChecksOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		w := d.window(t)
		checkChain(t, w, m, w.Top, must(t)(BottomUp(w, m)))
		checkChain(t, w, m, w.Top, must(t)(TopDown(w, m, w.Top)))
		from := w.Top + (w.Bottom-w.Top)*rapid.Float64Range(0, 0.99).Draw(t, "from")
		checkChain(t, w, m, from, must(t)(TopDown(w, m, from)))
	})
}

// TestNoShoeIsTooDeep: a hole from a metre above the shoe of one going up cannot be drilled, nor can one to a metre below the
// bottom of one going down; what stops it says so.
func TestNoShoeIsTooDeep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		w := d.window(t)
		broken := func(h Hole, shoe, bottom float64) {
			if least, most := gridded(w, m, max(w.Top, shoe), min(w.Bottom, bottom)); h.Stop.Reason != Closed || least <= most {
				t.Fatalf("%+v: from %g to %g m needs %g and stands %g", h, shoe, bottom, least, most)
			}
			if s := h.Stop; s.Needs.Mud < s.Stands.Mud-rounding {
				t.Fatalf("%+v", s)
			}
		}
		for _, h := range must(t)(BottomUp(w, m)).Holes {
			if h.Shoe > w.Top {
				broken(h, h.Shoe-1, h.Bottom)
			} else if h.Stop.Reason != AtTop {
				t.Fatalf("%+v", h)
			}
		}
		for _, h := range must(t)(TopDown(w, m, w.Top)).Holes {
			switch {
			case h.Bottom == w.Bottom:
				if h.Stop.Reason != AtBottom {
					t.Fatalf("%+v", h)
				}
			case !h.Riserless:
				broken(h, h.Shoe, h.Bottom+1)
			default:
				fails := false
				for k := range 100 {
					fails = fails || !does(w, m, min(w.Bottom, h.Bottom+float64(k+1)/100), 0)
				}
				if !fails || h.Stop.Reason != FluidEnds {
					t.Fatalf("%+v goes further", h)
				}
			}
		}
	})
}

// short reports whether a proposal has a hole so short that where a hole is none decides.
func (p Proposal) short() bool {
	for _, h := range p.Holes {
		if h.Bottom-h.Shoe < 20 {
			return true
		}
	}
	return false
}

// TestUpAndDownAgree: where one gets through the other does, with as many holes with mud, and each seat going down is no
// shallower than the one going up. Holes of a few metres are left out: what is shorter than the shortest is none.
func TestUpAndDownAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		w := d.window(t)
		up, down := must(t)(BottomUp(w, m)), must(t)(TopDown(w, m, w.Top))
		if up.short() || down.short() {
			t.Skip("short holes")
		}
		if up.Whole != down.Whole {
			t.Fatalf("up %v, %v; down %v, %v", depthsOf(up), up.Stop, depthsOf(down), down.Stop)
		}
		if !up.Whole {
			return
		}
		a, b := up.withMud(), down.withMud()
		if len(a) != len(b) {
			t.Fatalf("%v up, %v down", depthsOf(up), depthsOf(down))
		}
		for i := range a {
			if b[i].Shoe < a[i].Shoe-1e-3 {
				t.Fatalf("%v up, %v down", depthsOf(up), depthsOf(down))
			}
		}
	})
}

// TestWiderMargins: with more asked for, each shoe counted from the bottom is no shallower going up, each seat counted from the
// first shoe no deeper going down, and a well takes no fewer holes with mud.
func TestWiderMargins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		w := d.window(t)
		wide := m
		wide.Trip += rapid.Float64Range(0, 20).Draw(t, "more trip")
		wide.Fracture += rapid.Float64Range(0, 20).Draw(t, "more fracture")
		wide.Kick += rapid.Float64Range(0, 20).Draw(t, "more kick")
		if m.Differential > 0 {
			wide.Differential *= rapid.Float64Range(0.5, 1).Draw(t, "less differential")
		}
		up, up2 := must(t)(BottomUp(w, m)), must(t)(BottomUp(w, wide))
		down, down2 := must(t)(TopDown(w, m, w.Top)), must(t)(TopDown(w, wide, w.Top))
		if up.short() || up2.short() || down.short() || down2.short() {
			t.Skip("short holes")
		}
		a, b := up.withMud(), up2.withMud()
		for i := range min(len(a), len(b)) {
			if b[len(b)-1-i].Shoe < a[len(a)-1-i].Shoe-1e-3 {
				t.Fatalf("up %v, wider %v", depthsOf(up), depthsOf(up2))
			}
		}
		c, e := down.withMud(), down2.withMud()
		for i := range min(len(c), len(e)) {
			if e[i].Bottom > c[i].Bottom+1e-3 {
				t.Fatalf("down %v, wider %v", depthsOf(down), depthsOf(down2))
			}
		}
		if up2.Whole && (!up.Whole || len(b) < len(a)) || down2.Whole && (!down.Whole || len(e) < len(c)) {
			t.Fatalf("up %v, wider %v; down %v, wider %v", depthsOf(up), depthsOf(up2), depthsOf(down), depthsOf(down2))
		}
	})
}

// TestUnits: seats do not know units of density: with all densities, and the differential pressure, times a factor they stay.
func TestUnits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		d.sea = false
		f := rapid.Float64Range(0.5, 2).Draw(t, "factor")
		scaled := drawn{depths: d.depths}
		for i := range d.depths {
			scaled.pore, scaled.fracture, scaled.stability = append(scaled.pore, f*d.pore[i]), append(scaled.fracture, f*d.fracture[i]), append(scaled.stability, f*d.stability[i])
		}
		m2 := Margins{Trip: f * m.Trip, Fracture: f * m.Fracture, Kick: f * m.Kick, Differential: f * m.Differential}
		a, b := must(t)(BottomUp(d.window(t), m)), must(t)(BottomUp(scaled.window(t), m2))
		if a.short() || b.short() {
			t.Skip("short holes")
		}
		x, y := depthsOf(a), depthsOf(b)
		for i := range x {
			if len(x) != len(y) || !close(x[i], y[i], 1e-2) {
				t.Fatalf("%v and %v", x, y)
			}
		}
	})
}

// TestTheFurtherCondition: one that all holes keep changes nothing, and is asked only of holes that a mud does for; with one that a
// hole be no more than so many times as deep at its bottom as at its shoe, a hole a metre longer fails either that or the window.
func TestTheFurtherCondition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		w := d.window(t)
		plain := depthsOf(must(t)(BottomUp(w, m)))
		bare := m
		m.Tolerance = func(shoe, bottom, mud float64) bool {
			if least, most := gridded(w, bare, shoe, bottom); !(bottom > shoe) || !close(mud, least, rounding) || mud > most+rounding {
				t.Fatalf("asked of a hole from %g to %g m with mud of %g, which needs %g and stands %g", shoe, bottom, mud, least, most)
			}
			return true
		}
		for i, x := range depthsOf(must(t)(BottomUp(w, m))) {
			if x != plain[i] {
				t.Fatalf("%g m instead of %v", x, plain)
			}
		}
		ratio := rapid.Float64Range(1.05, 3).Draw(t, "ratio")
		m.Tolerance = func(shoe, bottom, mud float64) bool { return bottom <= ratio*shoe }
		up, down := must(t)(BottomUp(w, m)), must(t)(TopDown(w, m, w.Top))
		checkChain(t, w, m, w.Top, up)
		checkChain(t, w, m, w.Top, down)
		broken := func(h Hole, shoe, bottom float64) {
			least, most := gridded(w, m, max(w.Top, shoe), min(w.Bottom, bottom))
			if least <= most && m.Tolerance(shoe, bottom, least) {
				t.Fatalf("%+v: from %g to %g m does as well", h, shoe, bottom)
			}
		}
		for _, h := range up.Holes {
			if h.Shoe > w.Top {
				broken(h, h.Shoe-1, h.Bottom)
			}
		}
		for _, h := range down.withMud() {
			if h.Bottom < w.Bottom {
				broken(h, h.Shoe, h.Bottom+1)
			}
		}
	})
}

// TestNeverNoNumber: with some of what is put in wild, what comes out are numbers, or an error.
func TestNeverNoNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m := drawWell(t), drawMargins(t)
		w := d.window(t)
		var pore, fracture, stability, fluid float64 // more than drawn
		from, shoe, end := w.Top, w.Top, w.Bottom
		entries := []*float64{&w.Top, &w.Bottom, &m.Trip, &m.Fracture, &m.Kick, &m.Differential, &m.Riserless, &pore, &fracture, &stability, &fluid, &from, &shoe, &end}
		for range rapid.IntRange(1, 3).Draw(t, "wild ones") {
			wild := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1e11, 1e11), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), 0, 1e-300}))
			*rapid.SampledFrom(entries).Draw(t, "entry") = wild.Draw(t, "wild")
		}
		more := func(c Curve, by float64) Curve {
			return func(tvd float64) (float64, bool) {
				value := 1000.0
				if c != nil {
					value, _ = c(tvd)
				}
				return value + by, true
			}
		}
		w.Pore, w.Fracture, w.Stability, w.Riserless = more(w.Pore, pore), more(w.Fracture, fracture), more(w.Stability, stability), more(w.Riserless, fluid)
		up, _ := BottomUp(w, m)
		down, _ := TopDown(w, m, from)
		hole, _ := Between(w, m, shoe, end)
		for _, h := range append(append(up.Holes, down.Holes...), hole, Hole{Stop: up.Stop}, Hole{Stop: down.Stop}) {
			for _, b := range []Bound{h.Least, h.Most, h.Stop.Needs, h.Stop.Stands, {0, h.Shoe, h.Bottom, 0}} {
				if sum := math.Abs(b.TVD) + math.Abs(b.Value) + math.Abs(b.Mud); math.IsNaN(sum) || math.IsInf(sum, 0) {
					t.Fatalf("%+v", h)
				}
			}
		}
	})
}
