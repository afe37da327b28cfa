package slurry

// Masses and densities that recipes are written with.
const (
	// Sack is the mass of a sack of cement in kg: 94 lb, one cubic foot of loose
	// cement (API; exact by definition of the pound).
	Sack = 94 * 0.45359237

	// CementDensity is the absolute density of Portland cement in kg/m³, 3.14 times
	// that of water (cement handbooks, from memory). Makes differ by some 2 %.
	CementDensity = 3140

	// FreshWater is the density of fresh water at 20 °C in kg/m³. The trade's
	// 8.33 lb/gal is the same to its last digit.
	FreshWater = 998.2
)

// Absolute densities in kg/m³ of powders often blended, as handbooks list them
// (Lapeyrouse, chapter 2, table of additives; from memory). A maker's figure goes
// before these.
const (
	BentoniteDensity = 2650
	SilicaDensity    = 2630
	BariteDensity    = 4230
	HematiteDensity  = 5020
)

// Extra mix water in m³ per kg of powder, as handbooks list it.
const (
	// BentoniteWater is 5.3 % of water by weight of cement for each per cent of
	// bentonite, so 5.3 kg for each kg, dry-blended (API Spec 10A, from memory). The
	// Lapeyrouse table has 1.3 gal/sk for 2 %, which is 5.8 kg for each kg.
	// Prehydrated in the water, bentonite does as much with a quarter of the mass.
	BentoniteWater = 5.3 / FreshWater

	// HematiteWater is 0.34 gal for 94 lb (Lapeyrouse, chapter 2, table of
	// additives; from memory).
	HematiteWater = 0.34 * 231 * 0.0254 * 0.0254 * 0.0254 / Sack

	// SilicaWater is 40 % of the mass of silica flour (common practice, from memory).
	SilicaWater = 0.4 / FreshWater
)

// A Neat is the published slurry of one API class of cement with water alone.
type Neat struct {
	Class      string  // Class is the letter of the class.
	WaterShare float64 // WaterShare is the mix water in kg per kg of cement that API Spec 10A sets for tests.
	Water      float64 // Water is the mix water in m³ per kg of cement, from the whole tenths of gal/sk that tables print.
	Density    float64 // Density is the printed density in kg/m³.
	Yield      float64 // Yield is the printed yield in m³ per kg of cement.
}

// Neats returns the published neat slurries of classes A, C, G and H: water 46, 56,
// 44 and 38 % by weight of cement (API Spec 10A), printed as 5.2, 6.3, 5.0 and
// 4.3 gal/sk with 15.6, 14.8, 15.8 and 16.4 lb/gal and 1.18, 1.32, 1.15 and
// 1.06 ft³/sk (cement tables of the handbooks; from memory but for the 46 %). For
// class H tables differ: 16.4 and 16.5 lb/gal, 1.05 and 1.06 ft³/sk.
func Neats() []Neat {
	const (
		inch     = 0.0254
		gallon   = 231 * inch * inch * inch
		foot     = 0.3048
		perSack  = gallon / Sack
		perPound = 0.45359237 / gallon
		cubic    = foot * foot * foot / Sack
	)
	return []Neat{
		{"A", 0.46, 5.2 * perSack, 15.6 * perPound, 1.18 * cubic},
		{"C", 0.56, 6.3 * perSack, 14.8 * perPound, 1.32 * cubic},
		{"G", 0.44, 5.0 * perSack, 15.8 * perPound, 1.15 * cubic},
		{"H", 0.38, 4.3 * perSack, 16.4 * perPound, 1.06 * cubic},
	}
}

// NeatOf returns the published neat slurry of a class of cement by its letter. It
// reports false for a class that is not in [Neats].
func NeatOf(class string) (Neat, bool) {
	for _, n := range Neats() {
		if n.Class == class {
			return n, true
		}
	}
	return Neat{}, false
}

// Recipe returns the recipe of the class: cement of 3.14 sg and its printed water,
// fresh. Its slurry is the printed one to within its rounding.
func (n Neat) Recipe() Recipe {
	return Recipe{CementDensity: CementDensity, Water: n.Water, WaterDensity: FreshWater}
}
