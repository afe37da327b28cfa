package killsheet

import (
	"fmt"
	"math"

	"borewalk/calc/column"
	"borewalk/calc/root"
)

// A DynamicKill is a flow from a shallow formation into top hole without a riser and without a preventer, which is killed by
// pumping so fast that friction in the annulus makes up for what the mud column lacks. The annulus is full of that mud, which is
// the state that the kill is to reach: gas still in it makes the column lighter, and the flow that reaches it larger.
type DynamicKill struct {
	Sea       Seabed
	Mud       float64                             // Mud is what is pumped, in kg/m³.
	TVD       float64                             // TVD is the depth of the formation.
	Formation float64                             // Formation is its pressure in Pa.
	Friction  func(flow float64) (float64, error) // Friction is what a flow in m³/s loses up to the seabed, in Pa; it must not fall.
	Most      float64                             // Most is the largest flow that can be pumped, in m³/s.
}

const dynamicTopic = "dynamic kill"

// check reports what makes no kill.
func (d *DynamicKill) check() error {
	if err := d.Sea.check(); err != nil {
		return err
	}
	if err := d.Sea.below(d.TVD); err != nil {
		return err
	}
	if d.Friction == nil {
		return fmt.Errorf("%s: no law of friction; give one for the annulus", dynamicTopic)
	}
	return check(dynamicTopic, positive("mud", d.Mud, "kg/m³"),
		positive("formation pressure", d.Formation, "Pa"), positive("largest flow", d.Most, "m³/s"))
}

// Over returns by how much in Pa sea, mud and friction at a flow are above the formation's pressure, below it as less than
// nothing.
func (d *DynamicKill) Over(flow float64) (float64, error) {
	if err := d.check(); err != nil {
		return 0, err
	}
	if err := check(dynamicTopic, some("flow", flow, "m³/s")); err != nil {
		return 0, err
	}
	return d.over(flow)
}

// over is [DynamicKill.Over] for a kill that was looked at.
func (d *DynamicKill) over(flow float64) (float64, error) {
	friction, err := d.Friction(flow)
	if err != nil {
		return 0, err
	}
	if err := check(dynamicTopic, some("friction", friction, "Pa")); err != nil {
		return 0, err
	}
	return outcome(dynamicTopic, d.Sea.pressure()+d.Mud*column.G*(d.TVD-d.Sea.Mudline)+friction-d.Formation)
}

// Flow returns the least flow in m³/s that holds the formation, and false where the most that can be pumped does not: the flow
// is then that. It is nothing where mud and sea hold the formation at rest. Where the friction jumps past what is needed, as a
// gel's does at the first movement, it is the flow just beyond the jump. Source: the balance of pressures at the formation;
// E. M. Blount and E. Soeiinah, Dynamic kill: controlling wild wells a new way, World Oil, October 1981 (from memory).
func (d *DynamicKill) Flow() (flow float64, enough bool, err error) {
	if err := d.check(); err != nil {
		return 0, false, err
	}
	if over, err := d.over(0); err != nil || over >= 0 {
		return 0, err == nil, err
	}
	if over, err := d.over(d.Most); err != nil || over < 0 {
		return d.Most, false, err
	}
	const near = 1.0 // Pa, far below what a gauge shows
	flow, met := root.Crossing(func(flow float64) float64 {
		over, fault := d.over(flow)
		if fault != nil {
			err = fault
			return math.NaN()
		}
		return over
	}, 0, d.Most, near)
	if err != nil {
		return 0, false, err
	}
	if !met {
		flow = min(d.Most, flow+1e-9*d.Most)
	}
	return flow, true, nil
}

// Lasts returns the time in s that a stock in m³ lasts at a flow in m³/s.
func Lasts(stock, flow float64) (float64, error) {
	const topic = "time that a stock lasts"
	if err := check(topic, some("stock", stock, "m³"), positive("flow", flow, "m³/s")); err != nil {
		return 0, err
	}
	return outcome(topic, stock/flow)
}
