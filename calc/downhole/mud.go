package downhole

import (
	"errors"
	"fmt"
	"math"

	"borewalk/calc/water"
)

// Recipe is a mud at its reference: the temperature in K at which it was weighed, at one
// atmosphere. Shares are of its volume there.
type Recipe struct {
	Density     float64 // kg/m³
	Temperature float64 // K
	Oil         Oil
	OilShare    float64
	OilDensity  float64 // as weighed; zero for the base's own
	BrineShare  float64 // of water with its salt
	Brine       float64 // its density at 20 °C; not needed for fresh water
	SaltShare   float64 // of the brine's mass
}

// Mud is a mud whose composition is known. The zero Mud has no density.
type Mud struct {
	recipe     Recipe
	oil, brine float64 // densities at the reference
	solids     float64 // density of what is neither; zero where there is none
}

// The mean density that solids of a mud can have, kg/m³: from light clay to haematite,
// with what a retort's reading leaves open.
const (
	lightestSolids  = 2000
	heaviestSolids  = 5400
	unweighedSolids = 0.005 // a share of solids so small that its density says nothing
)

// New returns the mud of a recipe. The error says which share, salt or density cannot be:
// what is neither oil nor brine must have a density that solids can have.
func New(r Recipe) (Mud, error) {
	m := Mud{recipe: r}
	var ok bool
	if m.brine, ok = r.weighedBrine(); !ok {
		return Mud{}, fmt.Errorf("no brine has a density of %.0f kg/m³ and %.1f %% of salt; give both", r.Brine, 100*r.SaltShare)
	}
	if r.OilShare > 0 {
		if m.oil, ok = r.Oil.Density(r.Temperature, 0); !ok {
			return Mud{}, errors.New("the mud has oil and no law for it; choose the oil")
		}
	}
	if !(r.OilShare >= 0 && r.BrineShare >= 0 && r.OilShare+r.BrineShare <= 1) {
		return Mud{}, fmt.Errorf("oil %.1f %% and brine %.1f %% are more than the mud", 100*r.OilShare, 100*r.BrineShare)
	}
	share := m.Solids()
	left := r.Density - r.OilShare*r.weighedOil(m.oil) - r.BrineShare*m.brine
	if share < unweighedSolids {
		if math.Abs(left-share*lightestSolids) > 0.02*r.Density {
			return Mud{}, errors.New("oil and brine alone do not weigh what the mud does; give them less of it")
		}
		return m, nil
	}
	m.solids = left / share
	if !(m.solids >= lightestSolids && m.solids <= heaviestSolids) {
		return Mud{}, fmt.Errorf("the solids would weigh %.2f kg/L; look at the shares of oil and brine", m.solids/1000)
	}
	return m, nil
}

// weighedBrine returns the density of the brine as weighed.
func (r *Recipe) weighedBrine() (float64, bool) {
	return water.Brine(r.Brine, r.SaltShare, r.Temperature, 0)
}

// weighedOil returns the density of the oil as weighed: as given, or by the base's law.
func (r *Recipe) weighedOil(law float64) float64 {
	if r.OilDensity > 0 {
		return r.OilDensity
	}
	return law
}

// Complete returns the recipe with the share of brine that makes its solids weigh what is
// given in kg/m³, and false where there is none: the balance of mass over oil, brine and
// solids.
func (r Recipe) Complete(solids float64) (Recipe, bool) {
	brine, ok := r.weighedBrine()
	oil := 0.0
	if ok && r.OilShare > 0 {
		oil, ok = r.Oil.Density(r.Temperature, 0)
		oil = r.weighedOil(oil)
	}
	r.BrineShare = (r.OilShare*oil + (1-r.OilShare)*solids - r.Density) / (solids - brine)
	return r, ok && solids > brine && r.BrineShare >= 0 && r.OilShare+r.BrineShare <= 1
}

// Solids returns the share of solids in the volume at the reference.
func (m Mud) Solids() float64 { return 1 - m.recipe.OilShare - m.recipe.BrineShare }

// SolidsDensity returns their mean density in kg/m³, zero where there are hardly any.
func (m Mud) SolidsDensity() float64 { return m.solids }

// Recipe returns what the mud was made from.
func (m Mud) Recipe() Recipe { return m.recipe }

// Density returns the density of the mud in kg/m³ at a temperature in K and a gauge
// pressure in Pa, not a number beyond the domain of its oil or its water:
//
//	rho = rho0 / (1 + fo (ro0/ro - 1) + fw (rw0/rw - 1))
func (m Mud) Density(temperature, pressure float64) float64 {
	r := &m.recipe
	volume := 1.0
	if r.OilShare > 0 {
		oil, ok := r.Oil.Density(temperature, pressure)
		if !ok {
			return math.NaN()
		}
		volume += r.OilShare * (m.oil/oil - 1)
	}
	brine, ok := water.Brine(r.Brine, r.SaltShare, temperature, pressure)
	if !ok {
		return math.NaN()
	}
	return r.Density / (volume + r.BrineShare*(m.brine/brine-1))
}

// HeatCapacity returns what a kilogram of the mud takes up per kelvin, J/(kg K): its parts
// by mass, water 4180, less in brine by its salt, oil 2000, solids 600 (barite 450, clay
// and cuttings 800). Handbook values, from memory; enough for the temperature of a mud.
func (m Mud) HeatCapacity() float64 {
	const fresh, salt, oil, solids = 4180, 900, 2000, 600
	r := &m.recipe
	brine := (1-r.SaltShare)*fresh + r.SaltShare*salt
	wet, oily := r.BrineShare*m.brine/r.Density, r.OilShare*r.weighedOil(m.oil)/r.Density
	return wet*brine + oily*oil + math.Max(0, 1-wet-oily)*solids
}
