package slurry

import "fmt"

// nought is a share in kg/kg or m³/t too small to be meant: what rounding leaves
// where the slurry has the wanted density already.
const nought = 1e-12

// WithWaterFor returns the recipe with the mix water set so that the slurry gets
// the wanted density in kg/m³. From rho = (M + w rho_w)/(V + w) follows
// w = (M - rho V)/(rho - rho_w), where M and V are mass and absolute volume of all
// that is not free water, the extra water of the powders included.
//
// It is an error if no amount of water gives that density: it must lie between
// that of the water and that of everything else together. The laboratory, not the
// density, decides whether so much water can be held or so little be mixed.
func (r Recipe) WithWaterFor(density float64) (Recipe, error) {
	r.Water = 0
	if err := r.check(); err != nil {
		return Recipe{}, err
	}
	if !positive(density) {
		return Recipe{}, fmt.Errorf("slurry: wanted density %g kg/m³; give one above zero", density)
	}
	rest := r.content()
	water := (rest.mass - density*rest.volume) / (density - r.WaterDensity)
	if water < 0 && water > -nought/1000 {
		water = 0
	}
	if !notNegative(water) {
		return Recipe{}, fmt.Errorf("slurry: %.0f kg/m³ cannot be reached with water of %.0f kg/m³; without free water the slurry has %.0f kg/m³, wish for something between",
			density, r.WaterDensity, rest.mass/rest.volume)
	}
	r.Water = water
	return r, r.check()
}

// WithPowderFor returns the recipe with the share of one powder, counted from 0,
// set so that the slurry gets the wanted density in kg/m³: hematite or barite for a
// heavy slurry, a light filler for a light one. Each kilogram of the powder brings
// its extra water along, so with M and V of all the rest, a = 1 + water rho_w and
// b = 1/rho_p + water the share is (rho V - M)/(a - rho b).
//
// It is an error if no share gives that density: the powder wetted with its extra
// water must lie beyond the wanted density, the slurry without it on the other
// side. Source: mass and volume balance, as Lapeyrouse, chapter 2, weighted cement
// (from memory).
func (r Recipe) WithPowderFor(row int, density float64) (Recipe, error) {
	if row < 0 || row >= len(r.Powders) {
		return Recipe{}, fmt.Errorf("slurry: no powder %d among %d; name one of the recipe", row+1, len(r.Powders))
	}
	r.Powders = append([]Powder(nil), r.Powders...)
	powder := &r.Powders[row]
	powder.Share = 0
	if err := r.check(); err != nil {
		return Recipe{}, err
	}
	if !positive(density) {
		return Recipe{}, fmt.Errorf("slurry: wanted density %g kg/m³; give one above zero", density)
	}
	rest := r.content()
	mass, volume := 1+powder.Water*r.WaterDensity, 1/powder.Density+powder.Water
	share := (density*rest.volume - rest.mass) / (mass - density*volume)
	if share < 0 && share > -nought {
		share = 0
	}
	if !notNegative(share) {
		return Recipe{}, fmt.Errorf("slurry: %.0f kg/m³ cannot be reached with powder %d%s; without it the slurry has %.0f kg/m³, wetted it has %.0f, wish for something between",
			density, row+1, named(powder.Label), rest.mass/rest.volume, mass/volume)
	}
	powder.Share = share
	return r, r.check()
}
