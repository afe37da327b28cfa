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
	WaterShare  float64 // of brine, salt counted
	Salt        water.Salt
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
	if m.brine, ok = water.Brine(r.Salt, r.SaltShare, r.Temperature, 0); !ok {
		return Mud{}, fmt.Errorf("no brine has %.1f %% of that salt by mass; at most %.1f %% dissolves", 100*r.SaltShare, 100*r.Salt.Saturation())
	}
	if r.OilShare > 0 {
		if m.oil, ok = r.Oil.Density(r.Temperature, 0); !ok {
			return Mud{}, errors.New("the mud has oil but its base is water; choose the oil")
		}
	}
	if !(r.OilShare >= 0 && r.WaterShare >= 0 && r.OilShare+r.WaterShare <= 1) {
		return Mud{}, fmt.Errorf("oil %.1f %% and water %.1f %% are more than the mud", 100*r.OilShare, 100*r.WaterShare)
	}
	share := m.Solids()
	left := r.Density - r.OilShare*m.oil - r.WaterShare*m.brine
	if share < unweighedSolids {
		if math.Abs(left-share*lightestSolids) > 0.02*r.Density {
			return Mud{}, errors.New("oil and water alone do not weigh what the mud does; give them less of it")
		}
		return m, nil
	}
	m.solids = left / share
	if !(m.solids >= lightestSolids && m.solids <= heaviestSolids) {
		return Mud{}, fmt.Errorf("the solids would weigh %.2f kg/L; look at the shares of oil and water", m.solids/1000)
	}
	return m, nil
}

// Complete returns the recipe with the share of water that makes its solids weigh what is
// given in kg/m³, and false where there is none: the balance of mass over oil, brine and
// solids.
func (r Recipe) Complete(solids float64) (Recipe, bool) {
	brine, ok := water.Brine(r.Salt, r.SaltShare, r.Temperature, 0)
	oil := 0.0
	if ok && r.OilShare > 0 {
		oil, ok = r.Oil.Density(r.Temperature, 0)
	}
	r.WaterShare = (r.OilShare*oil + (1-r.OilShare)*solids - r.Density) / (solids - brine)
	return r, ok && solids > brine && r.WaterShare >= 0 && r.OilShare+r.WaterShare <= 1
}

// Solids returns the share of solids in the volume at the reference.
func (m Mud) Solids() float64 { return 1 - m.recipe.OilShare - m.recipe.WaterShare }

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
	brine, ok := water.Brine(r.Salt, r.SaltShare, temperature, pressure)
	if !ok {
		return math.NaN()
	}
	return r.Density / (volume + r.WaterShare*(m.brine/brine-1))
}

// HeatCapacity returns what a kilogram of the mud takes up per kelvin, J/(kg K): its parts
// by mass, water 4180, less in brine by its salt, oil 2000, solids 600 (barite 450, clay
// and cuttings 800). Handbook values, from memory; enough for the temperature of a mud.
func (m Mud) HeatCapacity() float64 {
	const fresh, salt, oil, solids = 4180, 900, 2000, 600
	r := &m.recipe
	brine := (1-r.SaltShare)*fresh + r.SaltShare*salt
	wet, oily := r.WaterShare*m.brine/r.Density, r.OilShare*m.oil/r.Density
	return wet*brine + oily*oil + math.Max(0, 1-wet-oily)*solids
}
