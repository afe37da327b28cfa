package quantity

import (
	"slices"
	"strings"
)

// Set is a family of units in which a crew thinks.
type Set uint8

const (
	// Metric is the usual North Sea writing: sizes of bits and tubulars in
	// inches, depths in metres, densities in sg, pressures in bar, hook load
	// in tonnes-force. Bit hydraulics stay in hp/in2 there, since bits and
	// nozzles are in inches and the published limits are given so.
	Metric Set = iota
	// Field is the oilfield's ft, ppg, psi and bbl.
	Field
	// SI keeps to SI units with the usual prefixes.
	SI

	setCount = int(iota)
)

// Sets returns every set of units.
func Sets() []Set { return []Set{Metric, Field, SI} }

// String returns the name of the set as [ParseSet] reads it, or "unknown" for
// a value that is no set.
func (s Set) String() string {
	switch s {
	case Metric:
		return "metric"
	case Field:
		return "field"
	case SI:
		return "si"
	}
	return "unknown"
}

// ParseSet reads the name of a set: metric, field or si, in any case.
func ParseSet(text string) (Set, error) {
	if len(text) > maxText {
		return Metric, refuse(ErrTooLong, "the name of a unit set has at most %d bytes, this text has %d", maxText, len(text))
	}
	name := strings.ToLower(strings.TrimSpace(text))
	i := slices.IndexFunc(Sets(), func(s Set) bool { return s.String() == name })
	if i < 0 {
		return Metric, refuse(ErrUnit, "unknown unit set %q: write metric, field or si", text)
	}
	return Sets()[i], nil
}

// setTable holds the unit of each kind in each set. It is read only.
var setTable = [kindCount][setCount]Unit{
	Number:              {Metric: Bare, Field: Bare, SI: Bare},
	Length:              {Metric: Metre, Field: Foot, SI: Metre},
	Diameter:            {Metric: Inch, Field: Inch, SI: Millimetre},
	Area:                {Metric: SquareInch, Field: SquareInch, SI: SquareMillimetre},
	Volume:              {Metric: CubicMetre, Field: Barrel, SI: CubicMetre},
	Capacity:            {Metric: LitrePerMetre, Field: BarrelPerFoot, SI: CubicMetrePerMetre},
	Mass:                {Metric: Tonne, Field: Pound, SI: Kilogram},
	LinearMass:          {Metric: KilogramPerMetre, Field: PoundPerFoot, SI: KilogramPerMetre},
	Density:             {Metric: SpecificGravity, Field: PoundPerGallon, SI: KilogramPerCubicMetre},
	EMW:                 {Metric: SpecificGravity, Field: PoundPerGallon, SI: KilogramPerCubicMetre},
	Pressure:            {Metric: Bar, Field: PSI, SI: Kilopascal},
	Gradient:            {Metric: BarPerMetre, Field: PSIPerFoot, SI: KilopascalPerMetre},
	Stress:              {Metric: Megapascal, Field: PSI, SI: Megapascal},
	Force:               {Metric: TonneForce, Field: KilopoundForce, SI: Kilonewton},
	Torque:              {Metric: KilonewtonMetre, Field: FootPoundForce, SI: KilonewtonMetre},
	Flow:                {Metric: LitrePerMinute, Field: GallonPerMinute, SI: LitrePerSecond},
	Velocity:            {Metric: MetrePerMinute, Field: FootPerMinute, SI: MetrePerSecond},
	Time:                {Metric: Minute, Field: Minute, SI: Minute},
	Temperature:         {Metric: Celsius, Field: Fahrenheit, SI: Celsius},
	TemperatureGradient: {Metric: CelsiusPer100Metre, Field: FahrenheitPer100Foot, SI: KelvinPerMetre},
	Viscosity:           {Metric: Centipoise, Field: Centipoise, SI: MillipascalSecond},
	YieldPoint:          {Metric: YieldPascal, Field: PoundForcePer100SquareFoot, SI: YieldPascal},
	Angle:               {Metric: Degree, Field: Degree, SI: Degree},
	Dogleg:              {Metric: DegreePer30Metre, Field: DegreePer100Foot, SI: DegreePer30Metre},
	StrokeVolume:        {Metric: LitrePerStroke, Field: BarrelPerStroke, SI: LitrePerStroke},
	Strokes:             {Metric: Stroke, Field: Stroke, SI: Stroke},
	StrokeRate:          {Metric: StrokePerMinute, Field: StrokePerMinute, SI: StrokePerMinute},
	SlurryYield:         {Metric: LitrePer100Kilogram, Field: CubicFootPerSack, SI: CubicMetrePerTonne},
	MixWater:            {Metric: LitrePer100Kilogram, Field: GallonPerSack, SI: CubicMetrePerTonne},
	Power:               {Metric: Kilowatt, Field: Horsepower, SI: Kilowatt},
	PowerPerArea:        {Metric: HorsepowerPerSquareInch, Field: HorsepowerPerSquareInch, SI: WattPerSquareMillimetre},
	Ratio:               {Metric: Percent, Field: Percent, SI: Percent},
	Count:               {Metric: Bare, Field: Bare, SI: Bare},
	ROP:                 {Metric: MetrePerHour, Field: FootPerHour, SI: MetrePerHour},
	Hours:               {Metric: Hour, Field: Hour, SI: Hour},
	CementRate:          {Metric: LitrePerMinute, Field: BarrelPerMinute, SI: LitrePerSecond},
	TallyLength:         {Metric: Metre, Field: Foot, SI: Metre},
	Consistency:         {Metric: PascalSecondN, Field: PoundForceSecondNPer100SquareFoot, SI: PascalSecondN},
	Dial:                {Metric: DialDegree, Field: DialDegree, SI: DialDegree},
	ShearStress:         {Metric: YieldPascal, Field: PoundForcePer100SquareFoot, SI: YieldPascal},
	MassRate:            {Metric: TonnePerHour, Field: PoundPerMinute, SI: TonnePerHour},
	TemperatureRise:     {Metric: CelsiusRise, Field: FahrenheitRise, SI: KelvinRise},
	JetVelocity:         {Metric: MetrePerSecond, Field: FootPerSecond, SI: MetrePerSecond},
	JetForce:            {Metric: Newton, Field: PoundForce, SI: Newton},
	RotarySpeed:         {Metric: TurnPerMinute, Field: TurnPerMinute, SI: TurnPerMinute},
	Concentration:       {Metric: KilogramInCubicMetre, Field: PoundInBarrel, SI: KilogramInCubicMetre},
	Days:                {Metric: Day, Field: Day, SI: Day},
	LossRate:            {Metric: CubicMetrePerHour, Field: BarrelPerHour, SI: CubicMetrePerHour},
}

// System is the unit in which each kind is shown: a set, with what a crew does
// differently. The zero System is the metric set. Systems are compared with ==.
type System struct {
	set   Set
	other [kindCount]Unit // zero where the set's unit is shown
}

// NewSystem returns the system of a set with other units for some kinds. A
// unit that does not fit its kind is left out, and the set's is shown.
func NewSystem(s Set, overrides map[Kind]Unit) System {
	if int(s) >= setCount {
		s = Metric
	}
	system := System{set: s}
	for k, u := range overrides {
		system = system.With(k, u)
	}
	return system
}

// With returns the system with unit u for kind k, or unchanged if u does not
// fit the kind.
func (s System) With(k Kind, u Unit) System {
	if !u.Fits(k) {
		return s
	}
	s.other[k] = u
	if u == setTable[k][s.set] {
		s.other[k] = 0
	}
	return s
}

// Set returns the set on which the system is built.
func (s System) Set() Set { return s.set }

// Overrides returns the units that differ from those of the set. The map is
// the caller's own, and empty if there are none.
func (s System) Overrides() map[Kind]Unit {
	different := map[Kind]Unit{}
	for i, u := range s.other {
		if u != 0 {
			different[Kind(i)] = u
		}
	}
	return different
}

// Unit returns the unit in which a kind is shown, 0 for a value that is no
// kind.
func (s System) Unit(k Kind) Unit {
	if int(k) >= kindCount {
		return 0
	}
	if u := s.other[k]; u != 0 {
		return u
	}
	return setTable[k][s.set]
}
