package killsheet

import (
	"fmt"
	"math"
)

// Powers of the rate with which a pressure loss of turbulent mud goes.
const (
	Square    = 2    // Square is what kill sheets use to carry a slow pressure to another rate: common practice, from memory.
	Turbulent = 1.86 // Turbulent is the power in the hydraulics of slide rules, and of [ChokeLine.Loss]: common practice, from memory.
)

// Initial returns the standpipe pressure in Pa at which a kill begins: SIDPP, the overbalance that is held, and the slow
// circulating pressure with the mud in the hole. The slow pressure is that through the riser; the choke line's loss is taken off
// at the choke ([BringUp]). Source: Lapeyrouse, chapter 4 (from memory).
func Initial(sidpp, overbalance, slow float64) (float64, error) {
	const topic = "initial circulating pressure"
	if err := check(topic, some("SIDPP", sidpp, "Pa"), some("overbalance", overbalance, "Pa"),
		positive("slow pressure", slow, "Pa")); err != nil {
		return 0, err
	}
	return outcome(topic, sidpp+overbalance+slow)
}

// Final returns the standpipe pressure in Pa once kill mud is at the bit: the slow pressure times kill over mud density.
// Source: as for [Initial].
func Final(slow, kill, mud float64) (float64, error) { return AtDensity(slow, mud, kill) }

// AtDensity returns what a turbulent pressure loss in Pa becomes with a fluid of another density in kg/m³ at the same rate: loss
// × to/from. Thickness does not come in. Source: common practice; Lapeyrouse, chapter 4 (from memory).
func AtDensity(loss, from, to float64) (float64, error) {
	const topic = "pressure loss at another density"
	if err := check(topic, some("loss", loss, "Pa"), positive("density before", from, "kg/m³"),
		positive("density after", to, "kg/m³")); err != nil {
		return 0, err
	}
	return outcome(topic, loss*(to/from))
}

// AtRate returns what a pressure loss in Pa becomes at another rate, in any unit of rate, that of pump strokes too: loss ×
// (to/from)^power, [Square] or [Turbulent]. A slow pressure that was measured is better than one that is carried over. Source:
// common practice, from memory.
func AtRate(loss, from, to, power float64) (float64, error) {
	const topic = "pressure loss at another rate"
	if err := check(topic, some("loss", loss, "Pa"), positive("rate before", from, "m³/s"), some("rate after", to, "m³/s"),
		positive("power of the rate", power, "")); err != nil {
		return 0, err
	}
	return outcome(topic, loss*math.Pow(to/from, power))
}

// A RateChange is what the standpipe says of a rate to which the pump was brought in the middle of a kill, in Pa.
type RateChange struct {
	Static   float64 // Static is what the drill pipe would still show with the pump off.
	Friction float64 // Friction is the slow pressure at the new rate with what the string holds then.
	Final    float64 // Final is the final circulating pressure at the new rate.
}

// ChangeRate works out a [RateChange]. Before it the standpipe stood at scheduled, of which friction was the slow pressure at the
// old rate; with the casing pressure held steady it came to standpipe at the new one. The string then holds a mean density
// inString; kill is that of the kill mud, both in kg/m³. It is an error if no friction is left. Source: the worked example of
// Drilling for Gas, change in circulating rate.
func ChangeRate(scheduled, friction, standpipe, inString, kill float64) (RateChange, error) {
	const topic = "change of rate"
	if err := check(topic, some("scheduled pressure", scheduled, "Pa"), some("friction at the old rate", friction, "Pa"),
		some("standpipe pressure", standpipe, "Pa"), positive("mean density in the string", inString, "kg/m³"),
		positive("kill mud", kill, "kg/m³")); err != nil {
		return RateChange{}, err
	}
	r := RateChange{Static: scheduled - friction}
	if r.Static < 0 {
		return RateChange{}, fmt.Errorf("%s: friction of %.0f Pa in a scheduled pressure of %.0f Pa; read both at the old rate",
			topic, friction, scheduled)
	}
	if r.Friction = standpipe - r.Static; !(r.Friction > 0) {
		return RateChange{}, fmt.Errorf("%s: a standpipe pressure of %.0f Pa is all static, %.0f Pa; read it at the new rate",
			topic, standpipe, r.Static)
	}
	var err error
	r.Final, err = Final(r.Friction, kill, inString)
	return r, err
}
