package model

import (
	"strconv"
	"strings"

	"borewalk/model/catalogue"
)

// Pipe is what is known of a length of pipe once its blank entries are filled from the catalogue: diameters in m, mass
// per length in kg/m, yield strength in Pa. Zero means not known.
type Pipe struct {
	OD, ID     float64
	Drift      float64 // guaranteed bore
	Widest     float64 // connector or tool joint OD; the body's where that is not known
	Bare       bool    // the connector's OD is not known
	NoSpecial  bool    // a special drift is asked for and is not known: Drift is the API's, or the bore
	LinearMass float64 // with connectors or tool joints
	Yield      float64
	Source     string // where the catalogue has it from; empty when it is all the plan's own
}

// Pipe returns what is known of a casing part.
func (c *CasingPart) Pipe() Pipe {
	p := Pipe{OD: c.Size.SI, LinearMass: c.Weight.SI, Yield: gradeYield(c.Grade)}
	row, ok := catalogue.FindCasing(c.Size.SI, c.Weight.SI, c.Grade)
	if !ok {
		row, ok = anyGrade(c)
	} else if row.Yield > 0 {
		p.Yield = row.Yield
	}
	if ok {
		p.ID, p.Drift, p.Widest, p.Source = row.ID, row.Drift, row.CouplingOD, row.Source
		if c.DriftClass == SpecialDrift && row.SpecialDrift > 0 {
			p.Drift = row.SpecialDrift
		}
	}
	if c.ID.SI > 0 && p.Drift > 0 {
		p.Drift -= p.ID - c.ID.SI // an own bore keeps the catalogue's difference between ID and drift
	}
	override(&p.ID, c.ID.SI)
	override(&p.Drift, c.Drift.SI)
	override(&p.Widest, c.ConnectorOD.SI)
	override(&p.LinearMass, c.LinearMass.SI)
	override(&p.Yield, c.Yield.SI)
	p.Bare = p.Widest == 0 && p.OD > 0
	p.NoSpecial = c.DriftClass == SpecialDrift && row.SpecialDrift == 0 && !c.Drift.IsSet()
	if p.Widest < p.OD {
		p.Widest = p.OD
	}
	if p.Drift <= 0 {
		p.Drift = p.ID
	}
	return p
}

// anyGrade finds pipe of the part's size and weight in whatever grade: the dimensions do not depend on it.
func anyGrade(c *CasingPart) (catalogue.Casing, bool) {
	for _, w := range catalogue.CasingWeights(c.Size.SI) {
		for _, row := range catalogue.CasingGrades(c.Size.SI, w) {
			if found, ok := catalogue.FindCasing(c.Size.SI, c.Weight.SI, row.Grade); ok {
				return found, true
			}
		}
	}
	return catalogue.Casing{}, false
}

// gradeYield reads the yield strength out of a grade's name: API 5CT and 5L grades carry it in ksi.
func gradeYield(grade string) float64 {
	const ksi = 6894757.293168361 // 1000 lbf/in2 in Pa
	digits := strings.TrimLeft(catalogue.NormalGrade(grade), "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
	n, err := strconv.Atoi(digits)
	if err != nil || n < 20 || n > 200 {
		return 0
	}
	return float64(n) * ksi
}

func override(p *float64, own float64) {
	if own > 0 {
		*p = own
	}
}

// Pipe returns what is known of a drill-string part. Drill pipe whose adjusted weight is not published counts with its
// name weight, and a tool without a weight with none. The drift is the bore of the tool joints, where that is known.
func (c *StringPart) Pipe() Pipe {
	p := Pipe{OD: c.Size.SI, ID: c.ID.SI, Yield: gradeYield(c.Grade)}
	switch c.Item {
	case ItemPipe:
		if row, ok := catalogue.FindDrillPipe(c.Size.SI, c.Weight.SI, c.Grade); ok {
			p.ID, p.Widest, p.Drift, p.Source, p.Yield = row.ID, row.ToolJointOD, row.ToolJointID, row.Source, row.Yield
			p.LinearMass = row.AdjustedWeight
		}
		p.LinearMass = max(p.LinearMass, c.Weight.SI)
	case ItemHeavy:
		row, ok := catalogue.FindHeavyWeightBore(c.Size.SI, c.ID.SI)
		if !ok {
			row, ok = catalogue.FindHeavyWeight(c.Size.SI)
		}
		if ok {
			p.ID, p.Widest, p.Drift, p.LinearMass, p.Source = row.ID, row.ToolJointOD, row.ToolJointID, row.Weight, row.Source
		}
	case ItemCollar:
		if row, ok := catalogue.FindCollar(c.Size.SI, c.ID.SI); ok {
			p.ID, p.LinearMass, p.Source = row.ID, row.Weight, row.Source
		}
	}
	override(&p.ID, c.ID.SI)
	override(&p.Widest, c.JointOD.SI)
	override(&p.Drift, c.JointID.SI)
	override(&p.LinearMass, c.LinearMass.SI)
	if p.Widest < p.OD {
		p.Widest = p.OD
	}
	if p.Drift <= 0 || p.Drift > p.ID {
		p.Drift = p.ID
	}
	return p
}

// Cuts reports whether the part is a bit or an opener: it has the hole's size, so it is no body that fluid flows past.
func (c *StringPart) Cuts() bool { return c.Item == ItemBit || c.Item == ItemOpener }
