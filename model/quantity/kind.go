// Package quantity holds the quantities of well planning and the units in
// which people write them.
//
// Inside the program every quantity is a float64 in SI units: metres, cubic
// metres, kilograms per cubic metre, pascals, newtons, kelvins, radians. Units
// exist only at the edge, where a person types or reads: there a quantity is
// text with its unit, such as "1262 ft", "13 5/8 in" or "1.25 sg". This
// package is that edge. Begin with [Parse], which reads such text, [Value],
// which is what was entered, [Format], which writes a computed quantity, and
// [System], which says in which unit each kind is shown.
//
// Three promises hold throughout:
//
//   - Reading is exact. A typed decimal is converted with rational numbers and
//     rounded to float64 once, so "12 in", "1 ft" and "0.3048 m" are the same
//     number, bit for bit.
//   - Nothing drifts. A [Value] keeps the unit it was entered in, and reading
//     [Value.Text] gives the same Value again. Showing it in another unit
//     does not touch it.
//   - Nothing is guessed. Text that two readers could understand differently,
//     such as "7,200", is refused, and the error says how to write it.
//
// Ranges of sensible values are no matter of this package, nor is any formula
// of engineering.
package quantity

import (
	"slices"
	"strings"
)

// Kind is what a quantity measures, in the trade's sense: the diameter of a
// casing and the length of a string are both lengths in physics, but they are
// written, stepped and rounded differently. The zero Kind is a bare number.
type Kind uint8

// The kinds of quantity, each with the SI unit in which it is held.
const (
	Number              Kind = iota // a bare number without a unit
	Length                          // a depth, height or length, m
	Diameter                        // a diameter or wall thickness, m
	Area                            // a cross section, m²
	Volume                          // a volume, m³
	Capacity                        // a volume per length of hole or pipe, m³/m
	Mass                            // a mass, kg
	LinearMass                      // a mass per length of pipe, kg/m
	Density                         // the density of a fluid or solid, kg/m³
	EMW                             // a pressure as equivalent mud weight, kg/m³
	Pressure                        // a pressure, Pa
	Gradient                        // a pressure per length, Pa/m
	Stress                          // a stress or strength of steel, Pa
	Force                           // a force such as hook load, N
	Torque                          // a torque, N·m
	Flow                            // a volume per time, m³/s
	Velocity                        // a velocity, m/s
	Time                            // a duration, s
	Temperature                     // an absolute temperature, K
	TemperatureGradient             // a temperature per length, K/m
	Viscosity                       // a dynamic viscosity, Pa·s
	YieldPoint                      // a yield point or gel strength, Pa
	Angle                           // an angle, rad
	Dogleg                          // an angle per length of hole, rad/m
	StrokeVolume                    // a volume per pump stroke, m³
	Strokes                         // a number of pump strokes
	StrokeRate                      // pump strokes per time, 1/s
	SlurryYield                     // slurry volume per mass of dry powder, m³/kg
	MixWater                        // mix fluid volume per mass of dry powder, m³/kg
	Power                           // a power, W
	PowerPerArea                    // a power per area of hole, W/m²
	Ratio                           // a share of a whole, 1 = all
	Count                           // a whole number of things
	ROP                             // a rate of penetration, m/s
	Hours                           // a duration of a job or a wait, s
	CementRate                      // a rate of slurry or of what displaces it, m³/s
	TallyLength                     // a length or depth of a pipe tally, m
	Consistency                     // the consistency K of a power law, Pa·sⁿ
	Dial                            // a reading of a viscometer, degrees of its dial
	ShearStress                     // the shear stress of a fluid that flows, Pa
	MassRate                        // a mass of powder mixed per time, kg/s
	TemperatureRise                 // a difference of temperatures, K
	JetVelocity                     // the velocity of a bit's jets, m/s
	JetForce                        // the force of a bit's jets, N
	RotarySpeed                     // turns of the string per time, rad/s
	Concentration                   // a mass of one thing in a volume of fluid, kg/m³
	Days                            // a duration of a programme, s
	LossRate                        // a rate at which the hole takes mud, m³/s

	kindCount = int(iota)
)

// dimension is what can be compared: kinds of one dimension accept the same
// units. Yield point has a dimension of its own, although it is a stress, so
// that "12 psi" is caught there; so has concentration beside density; and the counted kinds are kept apart.
type dimension uint8

const (
	noDimension dimension = iota
	plain
	share
	strokes
	strokeRate
	rotation
	length
	area
	volume
	capacity
	mass
	linearMass
	density
	pressure
	gradient
	force
	torque
	flow
	velocity
	duration
	temperature
	temperatureGradient
	temperatureRise
	viscosity
	yieldPoint
	angle
	dogleg
	strokeVolume
	powderVolume
	power
	powerPerArea
	consistency
	dial
	massRate
	concentration
)

// kindRow is one line of the table of kinds.
type kindRow struct {
	name string
	dim  dimension
}

// kindTable is read only.
var kindTable = [kindCount]kindRow{
	Number:              {"number", plain},
	Length:              {"length", length},
	Diameter:            {"diameter", length},
	Area:                {"area", area},
	Volume:              {"volume", volume},
	Capacity:            {"capacity", capacity},
	Mass:                {"mass", mass},
	LinearMass:          {"weight per length", linearMass},
	Density:             {"density", density},
	EMW:                 {"equivalent mud weight", density},
	Pressure:            {"pressure", pressure},
	Gradient:            {"pressure gradient", gradient},
	Stress:              {"stress", pressure},
	Force:               {"force", force},
	Torque:              {"torque", torque},
	Flow:                {"flow rate", flow},
	Velocity:            {"velocity", velocity},
	Time:                {"time", duration},
	Temperature:         {"temperature", temperature},
	TemperatureGradient: {"temperature gradient", temperatureGradient},
	Viscosity:           {"viscosity", viscosity},
	YieldPoint:          {"yield point", yieldPoint},
	Angle:               {"angle", angle},
	Dogleg:              {"dogleg severity", dogleg},
	StrokeVolume:        {"volume per stroke", strokeVolume},
	Strokes:             {"strokes", strokes},
	StrokeRate:          {"stroke rate", strokeRate},
	SlurryYield:         {"slurry yield", powderVolume},
	MixWater:            {"mix water", powderVolume},
	Power:               {"power", power},
	PowerPerArea:        {"power per area", powerPerArea},
	Ratio:               {"ratio", share},
	Count:               {"count", plain},
	ROP:                 {"rate of penetration", velocity},
	Hours:               {"duration", duration},
	CementRate:          {"pump rate", flow},
	TallyLength:         {"tally length", length},
	Consistency:         {"consistency", consistency},
	Dial:                {"dial reading", dial},
	ShearStress:         {"shear stress", yieldPoint},
	MassRate:            {"powder rate", massRate},
	TemperatureRise:     {"temperature rise", temperatureRise},
	JetVelocity:         {"jet velocity", velocity},
	JetForce:            {"jet force", force},
	RotarySpeed:         {"rotary speed", rotation},
	Concentration:       {"concentration", concentration},
	Days:                {"days", duration},
	LossRate:            {"loss rate", flow},
}

// Kinds returns every kind, in the order of the constants.
func Kinds() []Kind {
	all := make([]Kind, kindCount)
	for i := range all {
		all[i] = Kind(i)
	}
	return all
}

// String returns the kind's name in plain words, such as "equivalent mud
// weight", or "unknown kind" for a value that is no kind.
func (k Kind) String() string {
	if int(k) >= kindCount {
		return "unknown kind"
	}
	return kindTable[k].name
}

// dimension returns the dimension of a kind; no unit has that of an unknown
// kind.
func (k Kind) dimension() dimension {
	if int(k) >= kindCount {
		return noDimension
	}
	return kindTable[k].dim
}

// ParseKind reads the name that [Kind.String] writes. Case does not matter,
// and the words may be joined by a space, a hyphen or an underscore, so that a
// name can be a key in a file.
func ParseKind(text string) (Kind, error) {
	if len(text) > maxText {
		return Number, refuse(ErrTooLong, "a kind of quantity has at most %d bytes, this text has %d", maxText, len(text))
	}
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ' ' || r == '-' || r == '_' })
	name := strings.Join(words, " ")
	i := slices.IndexFunc(kindTable[:], func(row kindRow) bool { return row.name == name })
	if i < 0 {
		return Number, refuse(ErrKind, "no kind of quantity is called %q: write for example density, flow rate or pressure", text)
	}
	return Kind(i), nil
}
