package slurry

import (
	"errors"
	"fmt"
	"math"
)

// A Powder is a dry material blended with the cement.
type Powder struct {
	Label   string  // Label names it to a person.
	Share   float64 // Share is its mass in kg per kg of cement: 0.04 for 4 % by weight of cement.
	Density float64 // Density is its absolute density in kg/m³, without the air between grains.
	Water   float64 // Water is the extra mix water in m³ that each kg of it needs, 0 for none.
}

// A Liquid is a liquid additive, part of the mix fluid.
type Liquid struct {
	Label   string  // Label names it to a person.
	Dose    float64 // Dose is its volume in m³ per kg of cement.
	Density float64 // Density is its density in kg/m³.
}

// A Recipe is what is mixed with each kilogram of cement.
type Recipe struct {
	CementDensity float64  // CementDensity is the absolute density of the cement in kg/m³; see [CementDensity].
	Water         float64  // Water is the mix water in m³ per kg of cement, without what the powders need on top.
	WaterDensity  float64  // WaterDensity is the density of the mix water in kg/m³; see [FreshWater].
	Powders       []Powder // Powders are blended with the cement.
	Liquids       []Liquid // Liquids are poured into the mix water.
}

// A Slurry is the three figures of a slurry sheet and the two that tie them
// together; see [Slurry.Check].
type Slurry struct {
	Density      float64 // Density is the slurry density in kg/m³.
	Yield        float64 // Yield is the slurry volume in m³ per kg of cement.
	MixFluid     float64 // MixFluid is water and liquids together in m³ per kg of cement.
	FluidDensity float64 // FluidDensity is the density of the mix fluid in kg/m³.
	Dry          float64 // Dry is the dry blend in kg per kg of cement, the cement included: 1 for cement alone.
}

// A Part is one component of a slurry.
type Part struct {
	Label  string  // Label is that of the recipe, or "cement" or "water".
	Mass   float64 // Mass is its mass in kg.
	Volume float64 // Volume is its absolute volume in m³.
}

// Slurry returns density, yield and mix fluid of the recipe: masses over absolute
// volumes, summed over the components. An error names the component that has no
// usable value. Source: handbooks throughout, as Lapeyrouse, Formulas and
// Calculations, chapter 2 (from memory).
func (r Recipe) Slurry() (Slurry, error) {
	if err := r.check(); err != nil {
		return Slurry{}, err
	}
	c := r.content()
	s := Slurry{
		Density:  c.mass / c.volume,
		Yield:    c.volume,
		MixFluid: c.fluid,
		Dry:      c.mass - c.fluidMass,
	}
	if c.fluid > 0 {
		s.FluidDensity = c.fluidMass / c.fluid
	}
	return s, nil
}

// PerVolume returns the mass in kg and the absolute volume in m³ of each component
// in one cubic metre of slurry: cement, powders, water, liquids. The volumes sum to
// 1 and the masses to the density.
func (r Recipe) PerVolume() ([]Part, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	cement := 1 / r.content().volume
	return append(r.dry(cement), r.wet(cement)...), nil
}

// dry returns cement and powders for a mass of cement in kg.
func (r Recipe) dry(cement float64) []Part {
	parts := make([]Part, 0, 2+len(r.Powders)+len(r.Liquids))
	parts = append(parts, Part{"cement", cement, cement / r.CementDensity})
	for _, p := range r.Powders {
		parts = append(parts, Part{p.Label, cement * p.Share, cement * p.Share / p.Density})
	}
	return parts
}

// wet returns water and liquids for a mass of cement in kg.
func (r Recipe) wet(cement float64) []Part {
	water := cement * r.totalWater()
	parts := []Part{{"water", water * r.WaterDensity, water}}
	for _, l := range r.Liquids {
		parts = append(parts, Part{l.Label, cement * l.Dose * l.Density, cement * l.Dose})
	}
	return parts
}

// totalWater returns the mix water in m³ per kg of cement with what the powders
// need on top.
func (r Recipe) totalWater() float64 {
	water := r.Water
	for _, p := range r.Powders {
		water += p.Share * p.Water
	}
	return water
}

// A content is what one kilogram of cement makes, in kg and m³.
type content struct{ mass, volume, fluid, fluidMass float64 }

// content returns the sums over all components.
func (r Recipe) content() content {
	var c content
	for _, p := range r.wet(1) {
		c.fluid += p.Volume
		c.fluidMass += p.Mass
	}
	c.mass, c.volume = c.fluidMass, c.fluid
	for _, p := range r.dry(1) {
		c.mass += p.Mass
		c.volume += p.Volume
	}
	return c
}

// check reports the first component that is not usable.
func (r Recipe) check() error {
	switch {
	case !positive(r.CementDensity):
		return fmt.Errorf("slurry: cement density %g kg/m³; give the absolute density of the cement", r.CementDensity)
	case !positive(r.WaterDensity):
		return fmt.Errorf("slurry: mix water density %g kg/m³; give one above zero", r.WaterDensity)
	case !notNegative(r.Water):
		return fmt.Errorf("slurry: mix water %g m³/kg; give 0 or more", r.Water)
	}
	for i, p := range r.Powders {
		switch {
		case !notNegative(p.Share):
			return fmt.Errorf("slurry: powder %d%s: %g kg per kg of cement; give 0 or more", i+1, named(p.Label), p.Share)
		case !positive(p.Density):
			return fmt.Errorf("slurry: powder %d%s: density %g kg/m³; give its absolute density", i+1, named(p.Label), p.Density)
		case !notNegative(p.Water):
			return fmt.Errorf("slurry: powder %d%s: extra water %g m³/kg; give 0 or more", i+1, named(p.Label), p.Water)
		}
	}
	for i, l := range r.Liquids {
		switch {
		case !notNegative(l.Dose):
			return fmt.Errorf("slurry: liquid %d%s: %g m³ per kg of cement; give 0 or more", i+1, named(l.Label), l.Dose)
		case !positive(l.Density):
			return fmt.Errorf("slurry: liquid %d%s: density %g kg/m³; give one above zero", i+1, named(l.Label), l.Density)
		}
	}
	c := r.content()
	if !positive(c.mass) || !positive(c.volume) || !positive(c.mass/c.volume) || !positive(1/c.volume) {
		return errors.New("slurry: the sums grow beyond all numbers; check the units of the components")
	}
	return nil
}

// named returns a label in quotes after a space, or nothing.
func named(label string) string {
	if label == "" {
		return ""
	}
	return fmt.Sprintf(" %q", label)
}

// positive reports whether x is an ordinary number above zero.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// notNegative reports whether x is an ordinary number of zero or more.
func notNegative(x float64) bool { return x >= 0 && !math.IsInf(x, 0) }
