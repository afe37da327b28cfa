package strength

import "fmt"

// The common rule of thumb: 0.03 % per °F above 70 °F. Source: common practice, from
// memory; makers' curves differ by grade.
const (
	deratePerKelvin = 0.0003 * 1.8
	derateFrom      = (70-32)/1.8 + 273.15
)

// The temperatures in K of a well; anything beyond is another unit.
const (
	coldest = 200
	hottest = 700
)

// A Derating is how yield falls with temperature: along a straight line from a
// reference temperature.
type Derating struct {
	PerKelvin float64 // PerKelvin is the share of the yield that is lost per K, 0 for none.
	From      float64 // From is the temperature in K up to which nothing is lost.
}

// CommonDerating returns the common rule of thumb for carbon and low alloy steel,
// 0.03 % per °F above 70 °F, which is 0.054 % per K above 294 K. Source: common
// practice, from memory. Corrosion-resistant alloys lose more: ask the maker.
func CommonDerating() Derating { return Derating{PerKelvin: deratePerKelvin, From: derateFrom} }

// Check reports a rate or a temperature that cannot be.
func (d Derating) Check() error {
	if !(d.PerKelvin >= 0) || d.PerKelvin > 0.01 {
		return fmt.Errorf("yield falls by %g per kelvin; give a share from 0 to 0.01", d.PerKelvin)
	}
	return checkTemperature(d.From)
}

// Yield returns the yield in Pa that a yield in Pa at the reference has at a
// temperature in K, Y (1 - rate (T - reference)), and the yield itself below the
// reference. It returns an error where nothing would be left, for a yield not above
// zero, and outside 200 to 700 K, where something other than kelvin was meant.
func (d Derating) Yield(yield, temperature float64) (float64, error) {
	if err := d.Check(); err != nil {
		return 0, err
	}
	if err := checkTemperature(temperature); err != nil {
		return 0, err
	}
	left := 1 - d.PerKelvin*max(0, temperature-d.From)
	hot, ok := finite(yield * left)
	if !ok || !(hot > 0) {
		return 0, fmt.Errorf("yield %g MPa leaves nothing at %g K; mend the yield or its rate of fall", yield/1e6, temperature)
	}
	return hot, nil
}

func checkTemperature(kelvin float64) error {
	if !(kelvin >= coldest) || kelvin > hottest {
		return fmt.Errorf("temperature %g K; give one from %d to %d K and check its unit", kelvin, coldest, hottest)
	}
	return nil
}
