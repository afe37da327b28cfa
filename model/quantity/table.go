package quantity

// unitRow is one line of the table of units. A number x in the unit has the
// SI magnitude (x + zero/100) · num/den, times pi if pi is set.
type unitRow struct {
	dim      dimension
	symbol   string // ASCII, as files hold it
	screen   string // as screens show it, if that is not ASCII
	num, den int64
	zero     int64 // hundredths of the unit from the absolute zero to this unit's zero
	pi       bool
	digits   digits
	step     float64 // what one press of + or - moves, see Step

	// spellings lists what is accepted, each in the form that normal returns,
	// folded to lower case, separated by spaces.
	spellings string
	// trap is the one way of writing a spelling that means something else,
	// such as mPa, a thousand-millionth of MPa. It is refused.
	trap string
}

// digits says how many decimals the trade writes: fine, and coarse once the
// number reaches below. With no below it is fine everywhere.
//
// The choices follow what instruments resolve and reports print. Mud balances
// read to 0.1 ppg or 0.01 sg, and equivalent weights are argued over one digit
// finer. Pit gauges give a tenth of a barrel; a barrel is enough of a thousand.
// Gauges give 1 psi and 1 bar, small bar readings a tenth. Three significant
// figures are kept for slurry yields, mix water and capacities, because they
// are multiplied by large numbers. Trade lore, from memory; a quantity that a
// person entered keeps the digits it was entered with, see FormatValue.
type digits struct {
	fine   int8
	coarse int8
	below  float64
}

// unitTable is read only. Its first row is empty: no unit. Factors are written
// with the constants of definitions.go; the power of ten squares their decimal
// fractions with each other.
var unitTable = [unitCount]unitRow{
	Bare: {dim: plain, num: 1, den: 1, digits: digits{fine: 3, coarse: 1, below: 100}, step: 0.05},

	Percent:  {dim: share, symbol: "%", num: 1, den: 100, digits: digits{fine: 1, coarse: 0, below: 10}, step: 1, spellings: "% percent pct"},
	Fraction: {dim: share, symbol: "frac", num: 1, den: 1, digits: digits{fine: 3}, step: 0.01, spellings: "frac fraction"},

	Stroke:          {dim: strokes, symbol: "stk", num: 1, den: 1, step: 10, spellings: "stk stks stroke strokes"},
	StrokePerMinute: {dim: strokeRate, symbol: "spm", num: 1, den: 60, step: 1, spellings: "spm stk/min stks/min stroke/min strokes/min"},

	TurnPerMinute: {dim: rotation, symbol: "rpm", num: 1, den: 30, pi: true, step: 5, spellings: "rpm turn/min turns/min rev/min"},

	Metre:      {dim: length, symbol: "m", num: 1, den: 1, digits: digits{fine: 2, coarse: 1, below: 10}, step: 1, spellings: "m metre metres meter meters mtr"},
	Foot:       {dim: length, symbol: "ft", num: foot, den: 1e4, digits: digits{fine: 1, coarse: 0, below: 1000}, step: 1, spellings: "ft foot feet '"},
	Inch:       {dim: length, symbol: "in", num: inch, den: 1e4, digits: digits{fine: 2}, step: 1, spellings: "in inch inches ins \" ''"},
	Millimetre: {dim: length, symbol: "mm", num: 1, den: 1e3, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "mm millimetre millimetres millimeter millimeters", trap: "Mm"},
	Centimetre: {dim: length, symbol: "cm", num: 1, den: 100, digits: digits{fine: 1}, step: 1, spellings: "cm centimetre centimetres centimeter centimeters"},
	Kilometre:  {dim: length, symbol: "km", num: 1000, den: 1, digits: digits{fine: 3}, step: 0.01, spellings: "km kilometre kilometres kilometer kilometers"},
	InchOver32: {dim: length, symbol: "in/32", num: inch, den: 32e4, step: 1, spellings: "in/32 inch/32"},

	SquareInch:       {dim: area, symbol: "in2", num: squareInch, den: 1e8, digits: digits{fine: 3}, step: 0.05, spellings: "in2 sqin inch2 squareinch squareinches"},
	SquareMillimetre: {dim: area, symbol: "mm2", num: 1, den: 1e6, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "mm2 sqmm"},
	SquareCentimetre: {dim: area, symbol: "cm2", num: 1, den: 1e4, digits: digits{fine: 2}, step: 1, spellings: "cm2 sqcm"},
	SquareFoot:       {dim: area, symbol: "ft2", num: squareFoot, den: 1e8, digits: digits{fine: 2}, step: 0.1, spellings: "ft2 sqft squarefoot squarefeet"},
	SquareMetre:      {dim: area, symbol: "m2", num: 1, den: 1, digits: digits{fine: 4}, step: 0.01, spellings: "m2 sqm"},

	CubicMetre: {dim: volume, symbol: "m3", num: 1, den: 1, digits: digits{fine: 2, coarse: 1, below: 10}, step: 1, spellings: "m3 cum cubicmetre cubicmetres cubicmeter cubicmeters"},
	Barrel:     {dim: volume, symbol: "bbl", num: barrel, den: 1e12, digits: digits{fine: 1, coarse: 0, below: 1000}, step: 1, spellings: "bbl bbls barrel barrels"},
	Litre:      {dim: volume, symbol: "L", num: 1, den: 1000, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "l ltr litre litres liter liters"},
	Gallon:     {dim: volume, symbol: "gal", num: gallon, den: 1e12, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "gal gals gallon gallons usgal"},
	CubicFoot:  {dim: volume, symbol: "ft3", num: cubicFoot, den: 1e12, digits: digits{fine: 1, coarse: 0, below: 1000}, step: 1, spellings: "ft3 cuft cubicfoot cubicfeet"},

	BarrelPerFoot:      {dim: capacity, symbol: "bbl/ft", num: barrel, den: foot * 1e8, digits: digits{fine: 5, coarse: 4, below: 0.01}, step: 0.001, spellings: "bbl/ft bbls/ft bpf"},
	LitrePerMetre:      {dim: capacity, symbol: "L/m", num: 1, den: 1000, digits: digits{fine: 2}, step: 0.1, spellings: "l/m ltr/m litre/m litres/m liter/m liters/m"},
	CubicMetrePerMetre: {dim: capacity, symbol: "m3/m", num: 1, den: 1, digits: digits{fine: 5}, step: 0.001, spellings: "m3/m"},
	BarrelPerMetre:     {dim: capacity, symbol: "bbl/m", num: barrel, den: 1e12, digits: digits{fine: 4}, step: 0.001, spellings: "bbl/m bbls/m"},
	CubicFootPerFoot:   {dim: capacity, symbol: "ft3/ft", num: cubicFoot, den: foot * 1e8, digits: digits{fine: 4}, step: 0.01, spellings: "ft3/ft cuft/ft"},
	GallonPerFoot:      {dim: capacity, symbol: "gal/ft", num: gallon, den: foot * 1e8, digits: digits{fine: 3}, step: 0.01, spellings: "gal/ft gals/ft"},

	Tonne:     {dim: mass, symbol: "t", num: 1000, den: 1, digits: digits{fine: 1}, step: 1, spellings: "t te mt tonne tonnes"},
	Kilogram:  {dim: mass, symbol: "kg", num: 1, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 100, spellings: "kg kgs kilogram kilograms kilo kilos"},
	Pound:     {dim: mass, symbol: "lb", num: pound, den: 1e8, digits: digits{fine: 1, coarse: 0, below: 100}, step: 100, spellings: "lb lbs lbm pound pounds #"},
	Kilopound: {dim: mass, symbol: "klb", num: pound, den: 1e5, digits: digits{fine: 1}, step: 1, spellings: "klb klbs klbm"},
	Sack:      {dim: mass, symbol: "sk", num: sack, den: 1e8, step: 10, spellings: "sk sks sx sack sacks"},

	PoundPerFoot:     {dim: linearMass, symbol: "lb/ft", num: pound, den: foot * 1e4, digits: digits{fine: 2, coarse: 1, below: 100}, step: 0.5, spellings: "lb/ft lbs/ft lbm/ft ppf #/ft"},
	KilogramPerMetre: {dim: linearMass, symbol: "kg/m", num: 1, den: 1, digits: digits{fine: 2, coarse: 1, below: 100}, step: 1, spellings: "kg/m kgs/m"},

	PoundPerGallon:         {dim: density, symbol: "ppg", num: pound * 1e4, den: gallon, digits: digits{fine: 2}, step: 0.1, spellings: "ppg lb/gal lbs/gal lbm/gal #/gal lb/usgal"},
	SpecificGravity:        {dim: density, symbol: "sg", num: 1000, den: 1, digits: digits{fine: 3}, step: 0.01, spellings: "sg specificgravity"},
	KilogramPerCubicMetre:  {dim: density, symbol: "kg/m3", num: 1, den: 1, step: 10, spellings: "kg/m3 kg/cum kgs/m3"},
	PoundPerCubicFoot:      {dim: density, symbol: "lb/ft3", num: pound * 1e4, den: cubicFoot, digits: digits{fine: 1}, step: 1, spellings: "lb/ft3 lbs/ft3 lbm/ft3 pcf lb/cuft lbs/cuft #/ft3 #/cuft"},
	GramPerCubicCentimetre: {dim: density, symbol: "g/cm3", num: 1000, den: 1, digits: digits{fine: 3}, step: 0.01, spellings: "g/cm3 g/cc g/ccm g/ml gr/cc"},
	KilogramPerLitre:       {dim: density, symbol: "kg/L", num: 1000, den: 1, digits: digits{fine: 3}, step: 0.01, spellings: "kg/l kgs/l"},

	PSI:                              {dim: pressure, symbol: "psi", num: poundForce, den: squareInch * 1e5, step: 10, spellings: "psi lbf/in2 lb/in2 lbs/in2"},
	Bar:                              {dim: pressure, symbol: "bar", num: 1e5, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 1, spellings: "bar bars"},
	Kilopascal:                       {dim: pressure, symbol: "kPa", num: 1000, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 100, spellings: "kpa kilopascal kilopascals kn/m2"},
	Megapascal:                       {dim: pressure, symbol: "MPa", num: 1e6, den: 1, digits: digits{fine: 2}, step: 0.1, spellings: "mpa megapascal megapascals n/mm2", trap: "mPa"},
	Pascal:                           {dim: pressure, symbol: "Pa", num: 1, den: 1, step: 1000, spellings: "pa pascal pascals n/m2"},
	KSI:                              {dim: pressure, symbol: "ksi", num: poundForce, den: squareInch * 100, digits: digits{fine: 1}, step: 0.1, spellings: "ksi kpsi"},
	Atmosphere:                       {dim: pressure, symbol: "atm", num: atmosphere, den: 1, digits: digits{fine: 2}, step: 1, spellings: "atm atmosphere atmospheres"},
	KilogramForcePerSquareCentimetre: {dim: pressure, symbol: "kgf/cm2", num: gravity, den: 10, digits: digits{fine: 1}, step: 1, spellings: "kgf/cm2 kg/cm2 ksc"},

	PSIPerFoot:         {dim: gradient, symbol: "psi/ft", num: poundForce, den: squareInch * foot * 10, digits: digits{fine: 3}, step: 0.01, spellings: "psi/ft psi/foot"},
	BarPerMetre:        {dim: gradient, symbol: "bar/m", num: 1e5, den: 1, digits: digits{fine: 4}, step: 0.001, spellings: "bar/m bar/metre bar/meter"},
	KilopascalPerMetre: {dim: gradient, symbol: "kPa/m", num: 1000, den: 1, digits: digits{fine: 2}, step: 0.1, spellings: "kpa/m"},
	PascalPerMetre:     {dim: gradient, symbol: "Pa/m", num: 1, den: 1, step: 10, spellings: "pa/m"},
	BarPer100Metre:     {dim: gradient, symbol: "bar/100m", num: 1000, den: 1, digits: digits{fine: 2}, step: 0.1, spellings: "bar/100m"},
	PSIPerMetre:        {dim: gradient, symbol: "psi/m", num: poundForce, den: squareInch * 1e5, digits: digits{fine: 3}, step: 0.01, spellings: "psi/m"},

	TonneForce:     {dim: force, symbol: "tf", num: gravity, den: 100, digits: digits{fine: 1}, step: 1, spellings: "tf t te mt tonne tonnes tonf tonnef"},
	KilopoundForce: {dim: force, symbol: "klbf", num: poundForce, den: 1e10, digits: digits{fine: 1}, step: 1, spellings: "klbf klbsf klb klbs kip kips"},
	Kilonewton:     {dim: force, symbol: "kN", num: 1000, den: 1, digits: digits{fine: 1, coarse: 0, below: 1000}, step: 10, spellings: "kn kilonewton kilonewtons"},
	PoundForce:     {dim: force, symbol: "lbf", num: poundForce, den: 1e13, step: 1000, spellings: "lbf lbsf lb lbs pound pounds #"},
	Decanewton:     {dim: force, symbol: "daN", num: 10, den: 1, step: 1000, spellings: "dan decanewton decanewtons"},
	Newton:         {dim: force, symbol: "N", num: 1, den: 1, step: 1000, spellings: "n newton newtons"},
	KilogramForce:  {dim: force, symbol: "kgf", num: gravity, den: 1e5, step: 1000, spellings: "kgf"},
	Meganewton:     {dim: force, symbol: "MN", num: 1e6, den: 1, digits: digits{fine: 3}, step: 0.01, spellings: "mn meganewton meganewtons", trap: "mN"},

	FootPoundForce:     {dim: torque, symbol: "ft-lbf", num: foot * poundForce, den: 1e17, step: 500, spellings: "ftlbf ftlb ftlbs lbfft lbft lbsft footpound footpounds"},
	KilonewtonMetre:    {dim: torque, symbol: "kN-m", num: 1000, den: 1, digits: digits{fine: 1}, step: 1, spellings: "knm"},
	NewtonMetre:        {dim: torque, symbol: "N-m", num: 1, den: 1, step: 500, spellings: "nm"},
	KilofootPoundForce: {dim: torque, symbol: "kft-lbf", num: foot * poundForce, den: 1e14, digits: digits{fine: 1}, step: 0.5, spellings: "kftlbf kftlb kftlbs klbfft klbft"},
	DecanewtonMetre:    {dim: torque, symbol: "daN-m", num: 10, den: 1, step: 50, spellings: "danm"},

	GallonPerMinute:     {dim: flow, symbol: "gpm", num: gallon, den: 60e12, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "gpm gal/min gals/min usgpm"},
	LitrePerMinute:      {dim: flow, symbol: "L/min", num: 1, den: 60e3, digits: digits{fine: 1, coarse: 0, below: 100}, step: 50, spellings: "l/min lpm ltr/min litre/min litres/min liter/min liters/min"},
	BarrelPerMinute:     {dim: flow, symbol: "bbl/min", num: barrel, den: 60e12, digits: digits{fine: 2, coarse: 1, below: 10}, step: 0.5, spellings: "bbl/min bbls/min bpm"},
	CubicMetrePerMinute: {dim: flow, symbol: "m3/min", num: 1, den: 60, digits: digits{fine: 2}, step: 0.1, spellings: "m3/min"},
	LitrePerSecond:      {dim: flow, symbol: "L/s", num: 1, den: 1000, digits: digits{fine: 1}, step: 1, spellings: "l/s l/sec lps"},
	CubicMetrePerHour:   {dim: flow, symbol: "m3/h", num: 1, den: 3600, digits: digits{fine: 1}, step: 1, spellings: "m3/h m3/hr m3/hour"},
	BarrelPerHour:       {dim: flow, symbol: "bbl/h", num: barrel, den: 3600e12, digits: digits{fine: 1}, step: 1, spellings: "bbl/h bbl/hr bbls/h bbls/hr bph"},
	CubicMetrePerSecond: {dim: flow, symbol: "m3/s", num: 1, den: 1, digits: digits{fine: 4}, step: 0.001, spellings: "m3/s m3/sec"},

	MetrePerHour:   {dim: velocity, symbol: "m/h", num: 1, den: 3600, digits: digits{fine: 1}, step: 1, spellings: "m/h m/hr m/hour"},
	FootPerHour:    {dim: velocity, symbol: "ft/h", num: foot, den: 3600e4, digits: digits{fine: 1, coarse: 0, below: 100}, step: 5, spellings: "ft/h ft/hr ft/hour fph"},
	MetrePerMinute: {dim: velocity, symbol: "m/min", num: 1, den: 60, digits: digits{fine: 1}, step: 1, spellings: "m/min"},
	FootPerMinute:  {dim: velocity, symbol: "ft/min", num: foot, den: 60e4, digits: digits{fine: 1, coarse: 0, below: 100}, step: 5, spellings: "ft/min fpm"},
	MetrePerSecond: {dim: velocity, symbol: "m/s", num: 1, den: 1, digits: digits{fine: 2}, step: 0.1, spellings: "m/s m/sec"},
	FootPerSecond:  {dim: velocity, symbol: "ft/s", num: foot, den: 1e4, digits: digits{fine: 1}, step: 0.1, spellings: "ft/s ft/sec fps"},

	Hour:   {dim: duration, symbol: "h", num: 3600, den: 1, digits: digits{fine: 2, coarse: 1, below: 10}, step: 0.5, spellings: "h hr hrs hour hours"},
	Minute: {dim: duration, symbol: "min", num: 60, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 5, spellings: "min mins minute minutes"},
	Second: {dim: duration, symbol: "s", num: 1, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "s sec secs second seconds"},
	Day:    {dim: duration, symbol: "d", num: 86400, den: 1, digits: digits{fine: 2, coarse: 1, below: 100}, step: 0.5, spellings: "d day days"},

	Celsius:    {dim: temperature, symbol: "degC", screen: "°C", num: 1, den: 1, zero: celsiusZero, digits: digits{fine: 1}, step: 1, spellings: "degc c celsius degreesc"},
	Fahrenheit: {dim: temperature, symbol: "degF", screen: "°F", num: 5, den: 9, zero: fahrenheitZero, step: 1, spellings: "degf f fahrenheit degreesf"},
	Kelvin:     {dim: temperature, symbol: "K", num: 1, den: 1, digits: digits{fine: 1}, step: 1, spellings: "k kelvin degk"},

	CelsiusRise:    {dim: temperatureRise, symbol: "degC", screen: "°C", num: 1, den: 1, digits: digits{fine: 1}, step: 1, spellings: "degc c celsius degreesc"},
	FahrenheitRise: {dim: temperatureRise, symbol: "degF", screen: "°F", num: 5, den: 9, digits: digits{fine: 1}, step: 1, spellings: "degf f fahrenheit degreesf"},
	KelvinRise:     {dim: temperatureRise, symbol: "K", num: 1, den: 1, digits: digits{fine: 1}, step: 1, spellings: "k kelvin degk"},

	CelsiusPer100Metre:   {dim: temperatureGradient, symbol: "degC/100m", screen: "°C/100m", num: 1, den: 100, digits: digits{fine: 2}, step: 0.1, spellings: "degc/100m c/100m k/100m"},
	FahrenheitPer100Foot: {dim: temperatureGradient, symbol: "degF/100ft", screen: "°F/100ft", num: 500, den: 9 * foot, digits: digits{fine: 2}, step: 0.1, spellings: "degf/100ft f/100ft"},
	CelsiusPerKilometre:  {dim: temperatureGradient, symbol: "degC/km", screen: "°C/km", num: 1, den: 1000, digits: digits{fine: 1}, step: 1, spellings: "degc/km c/km k/km"},
	KelvinPerMetre:       {dim: temperatureGradient, symbol: "K/m", num: 1, den: 1, digits: digits{fine: 4}, step: 0.001, spellings: "k/m degc/m c/m"},

	Centipoise:        {dim: viscosity, symbol: "cP", num: 1, den: 1000, digits: digits{fine: 1, coarse: 0, below: 10}, step: 1, spellings: "cp cps centipoise"},
	MillipascalSecond: {dim: viscosity, symbol: "mPa.s", num: 1, den: 1000, digits: digits{fine: 1, coarse: 0, below: 10}, step: 1, spellings: "mpas", trap: "MPas"},
	PascalSecond:      {dim: viscosity, symbol: "Pa.s", num: 1, den: 1, digits: digits{fine: 4}, step: 0.001, spellings: "pas"},

	PoundForcePer100SquareFoot: {dim: yieldPoint, symbol: "lbf/100ft2", num: poundForce, den: squareFoot * 1e7, digits: digits{fine: 1, coarse: 0, below: 10}, step: 1, spellings: "lbf/100ft2 lb/100ft2 lbs/100ft2 lbf/100sqft lb/100sqft lbs/100sqft #/100ft2"},
	YieldPascal:                {dim: yieldPoint, symbol: "Pa", num: 1, den: 1, digits: digits{fine: 1}, step: 0.5, spellings: "pa pascal pascals"},

	Degree: {dim: angle, symbol: "deg", num: 1, den: 180, pi: true, digits: digits{fine: 2}, step: 0.5, spellings: "deg degs degree degrees"},
	Radian: {dim: angle, symbol: "rad", num: 1, den: 1, digits: digits{fine: 4}, step: 0.01, spellings: "rad rads radian radians"},

	DegreePer30Metre: {dim: dogleg, symbol: "deg/30m", num: 1, den: 180 * 30, pi: true, digits: digits{fine: 2}, step: 0.1, spellings: "deg/30m degree/30m degrees/30m"},
	DegreePer100Foot: {dim: dogleg, symbol: "deg/100ft", num: 100, den: 180 * foot, pi: true, digits: digits{fine: 2}, step: 0.1, spellings: "deg/100ft degree/100ft degrees/100ft"},
	DegreePer10Metre: {dim: dogleg, symbol: "deg/10m", num: 1, den: 180 * 10, pi: true, digits: digits{fine: 2}, step: 0.1, spellings: "deg/10m degree/10m degrees/10m"},
	RadianPerMetre:   {dim: dogleg, symbol: "rad/m", num: 1, den: 1, digits: digits{fine: 6}, step: 0.0001, spellings: "rad/m"},

	BarrelPerStroke:     {dim: strokeVolume, symbol: "bbl/stk", num: barrel, den: 1e12, digits: digits{fine: 4}, step: 0.001, spellings: "bbl/stk bbls/stk bbl/stroke"},
	LitrePerStroke:      {dim: strokeVolume, symbol: "L/stk", num: 1, den: 1000, digits: digits{fine: 2}, step: 0.1, spellings: "l/stk l/stroke ltr/stk litre/stk litres/stk"},
	GallonPerStroke:     {dim: strokeVolume, symbol: "gal/stk", num: gallon, den: 1e12, digits: digits{fine: 3}, step: 0.01, spellings: "gal/stk gals/stk gal/stroke"},
	CubicMetrePerStroke: {dim: strokeVolume, symbol: "m3/stk", num: 1, den: 1, digits: digits{fine: 5}, step: 0.0001, spellings: "m3/stk m3/stroke"},

	CubicFootPerSack:      {dim: powderVolume, symbol: "ft3/sk", num: cubicFoot, den: sack * 1e4, digits: digits{fine: 2}, step: 0.01, spellings: "ft3/sk ft3/sx ft3/sack cuft/sk cuft/sx cuft/sack"},
	GallonPerSack:         {dim: powderVolume, symbol: "gal/sk", num: gallon, den: sack * 1e4, digits: digits{fine: 2}, step: 0.1, spellings: "gal/sk gal/sx gal/sack gals/sk gals/sack gps"},
	LitrePer100Kilogram:   {dim: powderVolume, symbol: "L/100kg", num: 1, den: 1e5, digits: digits{fine: 1}, step: 0.5, spellings: "l/100kg ltr/100kg litre/100kg litres/100kg"},
	LitrePerKilogram:      {dim: powderVolume, symbol: "L/kg", num: 1, den: 1000, digits: digits{fine: 3}, step: 0.005, spellings: "l/kg"},
	CubicMetrePerTonne:    {dim: powderVolume, symbol: "m3/t", num: 1, den: 1000, digits: digits{fine: 3}, step: 0.005, spellings: "m3/t m3/te m3/tonne"},
	CubicMetrePerKilogram: {dim: powderVolume, symbol: "m3/kg", num: 1, den: 1, digits: digits{fine: 6}, step: 0.000005, spellings: "m3/kg"},

	Horsepower: {dim: power, symbol: "hp", num: horsepower, den: 1e16, digits: digits{fine: 1, coarse: 0, below: 100}, step: 50, spellings: "hp hhp horsepower"},
	Kilowatt:   {dim: power, symbol: "kW", num: 1000, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 50, spellings: "kw kilowatt kilowatts"},
	Watt:       {dim: power, symbol: "W", num: 1, den: 1, step: 1000, spellings: "w watt watts"},
	Megawatt:   {dim: power, symbol: "MW", num: 1e6, den: 1, digits: digits{fine: 3}, step: 0.05, spellings: "mw megawatt megawatts", trap: "mW"},

	HorsepowerPerSquareInch: {dim: powerPerArea, symbol: "hp/in2", num: horsepower, den: squareInch * 1e8, digits: digits{fine: 2}, step: 0.1, spellings: "hp/in2 hhp/in2 hsi hp/sqin hhp/sqin"},
	WattPerSquareMillimetre: {dim: powerPerArea, symbol: "W/mm2", num: 1e6, den: 1, digits: digits{fine: 2}, step: 0.1, spellings: "w/mm2"},
	WattPerSquareMetre:      {dim: powerPerArea, symbol: "W/m2", num: 1, den: 1, step: 100000, spellings: "w/m2"},

	PascalSecondN:                     {dim: consistency, symbol: "Pa.s^n", num: 1, den: 1, digits: digits{fine: 3, coarse: 2, below: 10}, step: 0.01, spellings: "pasn"},
	PoundForceSecondNPer100SquareFoot: {dim: consistency, symbol: "lbf.s^n/100ft2", num: poundForce, den: squareFoot * 1e7, digits: digits{fine: 3, coarse: 2, below: 10}, step: 0.02, spellings: "lbfsn/100ft2 lbsn/100ft2"},
	MillipascalSecondN:                {dim: consistency, symbol: "mPa.s^n", num: 1, den: 1000, digits: digits{fine: 1, coarse: 0, below: 100}, step: 10, spellings: "mpasn eqcp cpeq", trap: "MPasn"},

	DialDegree: {dim: dial, symbol: "deg", num: 1, den: 1, digits: digits{fine: 1}, step: 0.5, spellings: "deg degs degree degrees"},

	TonnePerHour:      {dim: massRate, symbol: "t/h", num: 1000, den: 3600, digits: digits{fine: 1}, step: 1, spellings: "t/h te/h t/hr te/hr tonne/h tonnes/h tonne/hour tonnes/hour"},
	PoundPerMinute:    {dim: massRate, symbol: "lb/min", num: pound, den: 60e8, step: 50, spellings: "lb/min lbs/min lbm/min pound/min pounds/min"},
	KilogramPerMinute: {dim: massRate, symbol: "kg/min", num: 1, den: 60, step: 10, spellings: "kg/min kgs/min kilo/min kilos/min"},

	PoundInBarrel:        {dim: concentration, symbol: "lb/bbl", num: pound * 1e4, den: barrel, digits: digits{fine: 1}, step: 1, spellings: "lb/bbl lbs/bbl lbm/bbl #/bbl ppb"},
	KilogramInCubicMetre: {dim: concentration, symbol: "kg/m3", num: 1, den: 1, digits: digits{fine: 1, coarse: 0, below: 100}, step: 5, spellings: "kg/m3 kg/cum kgs/m3 g/l"},
}
