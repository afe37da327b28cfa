package killsheet

import (
	"fmt"

	"borewalk/calc/column"
)

// InfluxDensity returns the density in kg/m³ of an influx from the shut-in pressures in Pa and its true vertical height in m:
// mud - (SICP - SIDPP)/(g h). The string holds clean mud, and the annulus the same above the influx. It is an error where that
// makes less than nothing, or more than mud. Source: Bourgoyne, Millheim, Chenevert and Young, Applied Drilling Engineering,
// chapter 4 (from memory); the balance of the two columns.
func InfluxDensity(mud, sidpp, sicp, height float64) (float64, error) {
	const topic = "density of the influx"
	if err := check(topic, positive("mud", mud, "kg/m³"), some("SIDPP", sidpp, "Pa"), some("SICP", sicp, "Pa"),
		positive("height", height, "m")); err != nil {
		return 0, err
	}
	if sicp < sidpp {
		return 0, fmt.Errorf("%s: SICP of %.0f Pa is below SIDPP of %.0f Pa; check gauges, cuttings in the annulus and influx in the string",
			topic, sicp, sidpp)
	}
	density := mud - (sicp-sidpp)/(column.G*height)
	if density < 0 {
		return 0, fmt.Errorf("%s: SICP is above SIDPP by more than %.1f m of mud weigh; check gain, hole size and gauges",
			topic, height)
	}
	return outcome(topic, density)
}

// Kind is what an influx is by its density.
type Kind int

// The kinds. What came in is rarely one thing, and a gain is rarely measured well: the kind is a first guess.
const (
	UnknownKind Kind = iota
	Gas
	GasWithLiquid
	Oil
	OilWithWater
	Water
)

// String names the kind.
func (k Kind) String() string {
	switch k {
	case Gas:
		return "gas"
	case GasWithLiquid:
		return "gas with oil or water"
	case Oil:
		return "oil, or gas with water"
	case OilWithWater:
		return "oil with water"
	case Water:
		return "water"
	}
	return "unknown"
}

// KindOf returns the kind of an influx of a density in kg/m³: in the trade's bands 1 to 3 lb/gal is gas, 4 to 6 oil or several
// things together, 7 and above water, and what lies between is both. No density, or one below nothing, is unknown. Source: common
// practice, from memory.
func KindOf(density float64) Kind {
	at := density / poundPerGallon
	switch {
	case !(at >= 0) || !finite(at):
		return UnknownKind
	case at <= 3:
		return Gas
	case at < 4:
		return GasWithLiquid
	case at <= 6:
		return Oil
	case at < 7:
		return OilWithWater
	}
	return Water
}
