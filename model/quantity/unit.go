package quantity

import "math"

// Unit is one way of writing a quantity. The zero Unit is no unit at all; a
// bare number has the unit [Bare].
type Unit uint16

// The units, each with the dimension it belongs to. Gallons are US liquid
// gallons, barrels hold 42 of them, and sacks are 94 lb of powder.
const (
	Bare Unit = iota + 1 // a number without a unit

	// Shares.
	Percent
	Fraction

	// Pump strokes.
	Stroke
	StrokePerMinute

	// Turns of the string.
	TurnPerMinute

	// Lengths and diameters.
	Metre
	Foot
	Inch
	Millimetre
	Centimetre
	Kilometre
	InchOver32 // thirty-seconds of an inch: nozzles

	// Areas.
	SquareInch
	SquareMillimetre
	SquareCentimetre
	SquareFoot
	SquareMetre

	// Volumes.
	CubicMetre
	Barrel
	Litre
	Gallon
	CubicFoot

	// Volumes per length.
	BarrelPerFoot
	LitrePerMetre
	CubicMetrePerMetre
	BarrelPerMetre
	CubicFootPerFoot
	GallonPerFoot

	// Masses.
	Tonne
	Kilogram
	Pound
	Kilopound
	Sack

	// Masses per length.
	PoundPerFoot
	KilogramPerMetre

	// Densities and equivalent mud weights.
	PoundPerGallon
	SpecificGravity // relative to 1000 kg/m³, as the trade uses it
	KilogramPerCubicMetre
	PoundPerCubicFoot
	GramPerCubicCentimetre
	KilogramPerLitre

	// Pressures and stresses.
	PSI
	Bar
	Kilopascal
	Megapascal
	Pascal
	KSI
	Atmosphere
	KilogramForcePerSquareCentimetre

	// Pressures per length.
	PSIPerFoot
	BarPerMetre
	KilopascalPerMetre
	PascalPerMetre
	BarPer100Metre
	PSIPerMetre

	// Forces.
	TonneForce
	KilopoundForce
	Kilonewton
	PoundForce
	Decanewton
	Newton
	KilogramForce
	Meganewton

	// Torques.
	FootPoundForce
	KilonewtonMetre
	NewtonMetre
	KilofootPoundForce
	DecanewtonMetre

	// Volumes per time.
	GallonPerMinute
	LitrePerMinute
	BarrelPerMinute
	CubicMetrePerMinute
	LitrePerSecond
	CubicMetrePerHour
	BarrelPerHour
	CubicMetrePerSecond

	// Velocities and rates of penetration.
	MetrePerHour
	FootPerHour
	MetrePerMinute
	FootPerMinute
	MetrePerSecond
	FootPerSecond

	// Durations.
	Hour
	Minute
	Second
	Day

	// Temperatures.
	Celsius
	Fahrenheit
	Kelvin

	// Differences of temperatures, which know no zero point.
	CelsiusRise
	FahrenheitRise
	KelvinRise

	// Temperatures per length.
	CelsiusPer100Metre
	FahrenheitPer100Foot
	CelsiusPerKilometre
	KelvinPerMetre

	// Dynamic viscosities.
	Centipoise
	MillipascalSecond
	PascalSecond

	// Yield points and gel strengths.
	PoundForcePer100SquareFoot
	YieldPascal // the pascal, where it measures a yield point

	// Angles.
	Degree
	Radian

	// Angles per length.
	DegreePer30Metre
	DegreePer100Foot
	DegreePer10Metre
	RadianPerMetre

	// Volumes per pump stroke.
	BarrelPerStroke
	LitrePerStroke
	GallonPerStroke
	CubicMetrePerStroke

	// Volumes per mass of dry powder.
	CubicFootPerSack
	GallonPerSack
	LitrePer100Kilogram
	LitrePerKilogram
	CubicMetrePerTonne
	CubicMetrePerKilogram

	// Powers.
	Horsepower
	Kilowatt
	Watt
	Megawatt

	// Powers per area.
	HorsepowerPerSquareInch
	WattPerSquareMillimetre
	WattPerSquareMetre

	// Consistencies of a power law; n is its index.
	PascalSecondN
	PoundForceSecondNPer100SquareFoot
	MillipascalSecondN

	// Readings of a viscometer.
	DialDegree

	// Masses per time.
	TonnePerHour
	PoundPerMinute
	KilogramPerMinute

	// Masses of one thing in a volume of fluid.
	PoundInBarrel
	KilogramInCubicMetre

	unitCount = int(iota + 1)
)

// Units returns every unit that a kind accepts, the usual ones first. The
// slice is the caller's own; it is nil for a value that is no kind.
func Units(k Kind) []Unit {
	dim := k.dimension()
	if dim == noDimension {
		return nil
	}
	var fitting []Unit
	for i := range unitTable {
		if unitTable[i].dim == dim {
			fitting = append(fitting, Unit(i))
		}
	}
	return fitting
}

// Fits reports whether a quantity of kind k can be written in the unit.
func (u Unit) Fits(k Kind) bool {
	dim := u.row().dim
	return dim != noDimension && dim == k.dimension()
}

// Symbol returns the unit as a screen shows it. It is plain ASCII except for
// the degree sign of temperatures, and empty for [Bare] and for no unit.
func (u Unit) Symbol() string {
	row := u.row()
	if row.screen != "" {
		return row.screen
	}
	return row.symbol
}

// ASCII returns the unit as a file holds it, in plain ASCII: "degC" where
// [Unit.Symbol] has "°C", and the same elsewhere. [ParseUnit] reads both.
func (u Unit) ASCII() string { return u.row().symbol }

// FromSI returns an SI magnitude as a number in this unit. It is within three
// roundings of the exact result, which is enough to show; [Value.Text] is
// exact. It returns NaN if u is no unit.
func (u Unit) FromSI(si float64) float64 {
	row := u.row()
	return si/row.scale() - float64(row.zero)/100
}

// ToSI returns the SI magnitude of x in this unit, within three roundings of
// the exact result; [Of] and [Parse] are exact. It returns NaN if u is no
// unit.
func (u Unit) ToSI(x float64) float64 {
	row := u.row()
	return (x + float64(row.zero)/100) * row.scale()
}

// ScaleFromSI returns an SI difference as a difference in this unit. It
// differs from [Unit.FromSI] for temperatures only: a rise of 5 K is one of
// 9 °F, wherever it begins.
func (u Unit) ScaleFromSI(dsi float64) float64 { return dsi / u.row().scale() }

// row returns the unit's line of the table, the empty first line if u is no
// unit.
func (u Unit) row() *unitRow {
	if int(u) >= unitCount {
		u = 0
	}
	return &unitTable[u]
}

// scale returns the SI magnitude of one unit, NaN for the empty row (0/0).
func (r *unitRow) scale() float64 {
	scale := float64(r.num) / float64(r.den)
	if r.pi {
		scale *= math.Pi
	}
	return scale
}
