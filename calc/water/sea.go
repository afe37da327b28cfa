package water

import "math"

// The domain of the equation of state of seawater: practical salinities, degrees
// Celsius, bars above the atmosphere.
const (
	saltiest       = 42
	coldest        = -2
	warmest        = 40
	deepestSeaBars = 1000
)

// Sea returns the density of seawater in kg/m³ of a practical salinity at a
// temperature in K and a gauge pressure in Pa. It reports false beyond salinities
// of 0 to 42, -2 to 40 °C and 0 to 1000 bar.
//
// Source: the international equation of state of seawater 1980 (EOS-80), UNESCO
// Technical Papers in Marine Science 36 (1981) and 44 (1983); standard error there
// 9e-3 kg/m³ over the whole range, 3.6e-3 at one atmosphere. The equation is in
// temperatures of the scale of 1968, t68 = 1.00024 t90.
func Sea(salinity, temperature, pressure float64) (float64, bool) {
	t := (temperature - zeroCelsius) * 1.00024
	bar := pressure / 1e5
	if !(salinity >= 0 && salinity <= saltiest && t >= coldest*1.00025 && t <= warmest*1.00025 && bar >= 0 && bar <= deepestSeaBars) {
		return 0, false
	}
	return atAtmosphere(salinity, t) / (1 - bar/bulkModulus(salinity, t, bar)), true
}

// atAtmosphere returns the density at one atmosphere in kg/m³, by t68 in °C.
func atAtmosphere(s, t float64) float64 {
	pure := 999.842594 + t*(6.793952e-2+t*(-9.095290e-3+t*(1.001685e-4+t*(-1.120083e-6+t*6.536332e-9))))
	return pure + s*(8.24493e-1+t*(-4.0899e-3+t*(7.6438e-5+t*(-8.2467e-7+t*5.3875e-9)))) +
		s*math.Sqrt(s)*(-5.72466e-3+t*(1.0227e-4-t*1.6546e-6)) + s*s*4.8314e-4
}

// bulkModulus returns the secant bulk modulus in bar, by t68 in °C and bars above
// the atmosphere.
func bulkModulus(s, t, bar float64) float64 {
	root := s * math.Sqrt(s)
	k := 19652.21 + t*(148.4206+t*(-2.327105+t*(1.360477e-2-t*5.155288e-5))) +
		s*(54.6746+t*(-0.603459+t*(1.09987e-2-t*6.1670e-5))) + root*(7.944e-2+t*(1.6483e-2-t*5.3009e-4))
	a := 3.239908 + t*(1.43713e-3+t*(1.16092e-4-t*5.77905e-7)) + s*(2.2838e-3+t*(-1.0981e-5-t*1.6078e-6)) + root*1.91075e-4
	b := 8.50935e-5 + t*(-6.12293e-6+t*5.2787e-8) + s*(-9.9348e-7+t*(2.0816e-8+t*9.1697e-10))
	return k + bar*(a+bar*b)
}
