package cleaning

import "math"

const gravity = 9.80665 // m/s2, exact (3rd CGPM, 1901)

// Units in which the correlations were published, in SI.
const (
	inch           = 0.0254
	foot           = 0.3048
	centipoise     = 1e-3
	poundPerGallon = 0.45359237 / (231 * inch * inch * inch)

	poundPer100SquareFoot = 0.45359237 * gravity / (100 * foot * foot)
)

// A Cutting is a particle in the mud.
type Cutting struct {
	Diameter   float64 // Diameter is that of the sphere of the same volume, m.
	Density    float64 // Density of the rock, kg/m³.
	Sphericity float64 // Sphericity is the surface of that sphere over the particle's, 0.8 for a crushed grain; 1 for a sphere.
}

// heavier returns the cutting's density over the fluid's, less 1: what makes it fall. It is zero for one that floats, and for
// entries that make no sense.
func (c Cutting) heavier(fluid float64) float64 {
	if !(fluid > 0) || !(c.Diameter > 0) || !(c.Density > fluid) || math.IsInf(c.Density, 0) {
		return 0
	}
	return c.Density/fluid - 1
}

// Chien returns the slip velocity in m/s of a cutting in a fluid of a density in kg/m³ and an effective viscosity in Pa·s:
//
//	v = 0.0075 r [sqrt(36800 d (rs/rf - 1) / r² + 1) - 1]     r = viscosity / (rf d)
//
// in ft/s, cP, ppg and in. It goes from slow fall, where viscosity rules, to fast fall, where the particle's front does, with a
// drag that fits flat cuttings. Source: S. F. Chien, Annular velocity for rotary drilling operations, 1971 (from memory); the
// same formula with the plastic viscosity in Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover,
// slip velocity, method 1.
func Chien(c Cutting, density, viscosity float64) float64 {
	heavier := c.heavier(density)
	if heavier == 0 || !(viscosity > 0) {
		return 0
	}
	d := c.Diameter / inch
	r := viscosity / centipoise / (density / poundPerGallon * d)
	// (sqrt(1 + x) - 1) written so that a small x keeps its digits
	x := 36800 * d * heavier / (r * r)
	return 0.0075 * foot * r * x / (math.Sqrt(1+x) + 1)
}

// Effective returns the viscosity in Pa·s that a falling cutting feels in a mud with a yield point in Pa that rises at a velocity in
// m/s: that of the mud as the cutting's own size shears it,
//
//	mu = PV + 5 YP d / v
//
// in cP, lbf/100ft², in and ft/s. It is the plastic viscosity where the mud stands. Source: S. F. Chien, 1971, as in Bourgoyne,
// Chenevert, Millheim and Young, Applied Drilling Engineering (1986), chapter 4, from memory.
func Effective(plastic, yield float64, c Cutting, velocity float64) float64 {
	const five = 5 * centipoise * foot / (inch * poundPer100SquareFoot)
	if !(velocity > 0) || !(yield > 0) || !(c.Diameter > 0) {
		return plastic
	}
	return plastic + five*yield*c.Diameter/velocity
}

// Moore returns the slip velocity in m/s of a cutting in a fluid of a density in kg/m³ with an apparent viscosity in Pa·s, that of
// the power-law mud in the annulus: the slowest of three laws, for slow fall, for fast fall, and between,
//
//	v² = 4/3 g d / f (rs/rf - 1)     f = 40 / Re, 22 / sqrt(Re), 1.5     Re = rf v d / viscosity
//
// Source: P. L. Moore, Drilling Practices Manual, 1974, as in Bourgoyne and others, Applied Drilling Engineering, chapter 4, from
// memory. The laws are changed where they meet, at Reynolds numbers of 3.3 and 215; the book changes them at 3 and 300.
func Moore(c Cutting, density, viscosity float64) float64 {
	heavier := c.heavier(density)
	if heavier == 0 || !(viscosity > 0) {
		return 0
	}
	pull := 4.0 / 3 * gravity * c.Diameter * heavier // v² f
	thin := density * c.Diameter / viscosity         // Re / v
	slow, between, fast := pull*thin/40, math.Cbrt(pull*pull*thin/(22*22)), math.Sqrt(pull/1.5)
	return min(slow, between, fast)
}

// InGap returns the apparent viscosity in Pa·s of a power-law mud, stress k rate^n in Pa, that flows at a velocity in m/s through
// an annulus taken as a slot of a gap in m: stress over shear rate at the wall of the Newtonian flow,
//
//	mu = k (12 v / gap)^(n-1) ((2n + 1) / 3n)^n
//
// Source: Bourgoyne and others, Applied Drilling Engineering, chapter 4, from memory.
func InGap(n, k, velocity, gap float64) float64 {
	if !(n > 0) || !(k > 0) || !(velocity > 0) || !(gap > 0) {
		return 0
	}
	return k * math.Pow(12*velocity/gap, n-1) * math.Pow((2*n+1)/(3*n), n)
}

// Drag returns the slip velocity in m/s of a cutting at which its weight in the fluid equals the drag of the curve of
// Fang and others for its sphericity:
//
//	v² = 4/3 g d / f (rs/rf - 1)     log f = a + b log Re + c (log Re)²     Re = rf v d / viscosity
//
// with base-10 logarithms and a, b, c cubic in the sphericity. The curve was drawn for Reynolds numbers of about 1 to some
// thousands. To the left of where its slope is that of Stokes' law it goes on with that slope, which gives a slower fall than
// Stokes' own 24 / Re would; to the right of its lowest point it goes on level. Source: Fang and others, 2008,
// as in Guo and Liu, Applied Drilling Circulation Systems (2011), table 2.4; coefficients from memory, confirmed by the
// table's a, b and c. The book's 1.89 sqrt(d (rs - 7.48 rf) / (7.48 rf f)) is the same formula.
func Drag(c Cutting, density, viscosity float64) float64 {
	heavier := c.heavier(density)
	if heavier == 0 || !(viscosity > 0) || !(c.Sphericity > 0) {
		return 0
	}
	// f Re² does not hold the velocity: what the grain and the fluid say of it gives the Reynolds number straight away.
	known := math.Log10(4.0 / 3 * gravity * math.Pow(c.Diameter, 3) * density * density * heavier / (viscosity * viscosity))
	k := curveOf(c.Sphericity)
	x := known - (k.at(k.steep) + k.steep)
	if x > k.steep {
		half := (k.b + 2) / 2
		x = (math.Sqrt(half*half-k.c*(k.a-known)) - half) / k.c
	}
	if x > k.level {
		x = (known - k.at(k.level)) / 2
	}
	return math.Pow(10, x) * viscosity / (density * c.Diameter)
}

// curve is the drag curve for a sphericity: its coefficients, and the logarithms of the Reynolds numbers between which the
// parabola counts.
type curve struct{ a, b, c, steep, level float64 }

func curveOf(s float64) curve {
	s = min(s, 1)
	k := curve{
		a: 2.2954 - 2.2626*s + 4.4395*s*s - 2.9825*s*s*s,
		b: -0.4193 - 1.9014*s + 3.3416*s*s - 2.0409*s*s*s,
		c: 0.1117 + 0.0553*s - 0.1468*s*s + 0.1145*s*s*s,
	}
	k.steep, k.level = (-1-k.b)/(2*k.c), -k.b/(2*k.c)
	return k
}

// at returns the logarithm of the drag coefficient on the parabola.
func (k curve) at(x float64) float64 { return k.a + k.b*x + k.c*x*x }
