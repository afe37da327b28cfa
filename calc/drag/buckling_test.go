package drag_test

import (
	"math"
	"testing"

	"borewalk/calc/drag"
)

// A 5 in drill pipe in a 12 1/4 in hole, about: 5 in × 4.276 in, E 30 million psi.
func drillPipe() drag.Pipe {
	const inch = 0.0254
	od, id := 5*inch, 4.276*inch
	return drag.Pipe{Stiffness: 30e6 * 6894.757293168361 * math.Pi / 64 * (math.Pow(od, 4) - math.Pow(id, 4)), Weight: 250, Clearance: (12.25 - 6.625) / 2 * inch}
}

// TestTheWaveTakesLeastWork: pipe in a slant that lies in a wave of k rad/m bears E I k² of compression for its bending and
// q/(r k²) for climbing the wall; the least of the sum over k is Dawson and Paslay's limit. Found here by trying lengths.
func TestTheWaveTakesLeastWork(t *testing.T) {
	p := drillPipe()
	for _, inc := range []float64{10, 32, 60, 90} {
		q := p.Weight * math.Sin(inc*degree)
		least := math.Inf(1)
		for k := 0.001; k < 2; k *= 1.0005 {
			least = min(least, p.Stiffness*k*k+q/(p.Clearance*k*k))
		}
		wave, helix := p.Limit(q)
		if !near(wave, least, 1e-6) {
			t.Errorf("%g degrees: wave at %g N, least work at %g N", inc, wave, least)
		}
		if !near(helix, math.Sqrt2*wave, 1e-12) {
			t.Errorf("%g degrees: helix at %g N, wave at %g N", inc, helix, wave)
		}
	}
}

// TestAnUprightStringBucklesWhereItsBeamDoes solves the beam that Lubinski solved: hinged at the lower end, bent by the
// compression there, straightened by the weight above. Lengths are (E I / w)^(1/3); the compression at which the stiffness
// ceases to be positive is found by halving.
func TestAnUprightStringBucklesWhereItsBeamDoes(t *testing.T) {
	const lubinski = 7.94 // the length that he solved, in such lengths
	low, high := 1.0, 4.0
	for range 40 {
		if middle := (low + high) / 2; standsStraight(middle, lubinski, 400) {
			low = middle
		} else {
			high = middle
		}
	}
	wave, helix := drag.Pipe{Stiffness: 1, Weight: 1}.Limit(0)
	if math.Abs(wave-low) > 0.003 {
		t.Errorf("wave at %g, the beam buckles at %g", wave, low)
	}
	if helix <= wave {
		t.Errorf("helix at %g before the wave at %g", helix, wave)
	}
}

// standsStraight reports whether the stiffness of a hinged beam of length l in n pieces is positive under the compression f
// at its lower end: the middle of the beam as finite differences, its five diagonals taken apart as L D Lᵀ.
func standsStraight(f, l float64, n int) bool {
	h := l / float64(n)
	tension := func(x float64) float64 { return x - f } // x up from the lower end
	m := n - 1
	d0, d1, d2 := make([]float64, m), make([]float64, m), make([]float64, m)
	for i := range m {
		x := float64(i+1) * h
		bending := 6.0
		if i == 0 || i == m-1 {
			bending = 5 // the end is hinged
		}
		d0[i] = bending/(h*h*h) + (tension(x-h/2)+tension(x+h/2))/h
		d1[i] = -4/(h*h*h) - tension(x+h/2)/h
		d2[i] = 1 / (h * h * h)
	}
	l1, l2, d := make([]float64, m), make([]float64, m), make([]float64, m)
	for i := range m {
		d[i] = d0[i]
		if i > 0 {
			d[i] -= l1[i-1] * l1[i-1] * d[i-1]
		}
		if i > 1 {
			d[i] -= l2[i-2] * l2[i-2] * d[i-2]
		}
		if d[i] <= 0 {
			return false
		}
		l1[i] = d1[i]
		if i > 0 {
			l1[i] -= l1[i-1] * l2[i-1] * d[i-1]
		}
		l1[i] /= d[i]
		l2[i] = d2[i] / d[i]
	}
	return true
}

func TestLimitsOfWhatIsNoPipe(t *testing.T) {
	for _, p := range []drag.Pipe{{}, {Weight: 300, Clearance: 0.05}} {
		if wave, helix := p.Limit(100); wave != 0 || helix != 0 {
			t.Errorf("%+v: %g and %g N", p, wave, helix)
		}
	}
	p := drillPipe()
	p.Clearance = 0
	if wave, _ := p.Limit(100); math.IsInf(wave, 0) || math.IsNaN(wave) {
		t.Errorf("without clearance %g N", wave)
	}
}

// TestWhatHoldsPipeDown: the weight across the hole, less where a drop lifts compressed pipe off the low side.
func TestWhatHoldsPipeDown(t *testing.T) {
	down := bend(50*degree, 40*degree, 500, 300, 0.2) // the hole drops
	at := made(t, down).Loads(nil, lowered(drag.SlackingOff(), -60e3))[0].Lower
	if got, want := drag.Holding(300, 40*degree, at), 300*math.Sin(40*degree)-60e3/500.0; !near(got, want, 1e-9) {
		t.Errorf("in a drop %g N/m, want %g", got, want)
	}
	up := bend(40*degree, 50*degree, 500, 300, 0.2)
	at = made(t, up).Loads(nil, lowered(drag.SlackingOff(), -60e3))[0].Lower
	if got, want := drag.Holding(300, 50*degree, at), 300*math.Sin(50*degree); !near(got, want, 1e-9) {
		t.Errorf("in a build %g N/m, want %g", got, want)
	}
}
