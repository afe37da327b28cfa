package thermal

import "math"

// Film returns the resistance in m K/W of a metre of a round wall of a diameter in metres
// to a fluid that passes heat to it with a coefficient in W/(m² K).
func Film(coefficient, diameter float64) float64 { return 1 / (coefficient * math.Pi * diameter) }

// Shell returns the resistance in m K/W of a metre of a round layer, such as the foam on a
// riser, from its conductivity in W/(m K) and its two diameters.
func Shell(conductivity, inner, outer float64) float64 {
	return math.Log(outer/inner) / (2 * math.Pi * conductivity)
}

// Rock returns the resistance in m K/W that a metre of rock round a hole of a diameter in
// metres has after a time in seconds of drawing or giving heat: it grows as the rock near
// the hole takes the mud's temperature. Conductivity in W/(m K), diffusivity in m²/s.
//
// Source: A. R. Hasan and C. S. Kabir, Aspects of wellbore heat transfer during two-phase
// flow, SPE Production and Facilities, August 1994 (from memory): dimensionless
// temperature 1.1281 √t (1 - 0.3 √t) up to t = 1.5, beyond it (0.4063 + ln t / 2) (1 +
// 0.6/t), with t = diffusivity × time / radius².
func Rock(conductivity, diffusivity, diameter, seconds float64) float64 {
	t := 4 * diffusivity * seconds / (diameter * diameter)
	if t <= 1.5 {
		root := math.Sqrt(t)
		return 1.1281 * root * (1 - 0.3*root) / (2 * math.Pi * conductivity)
	}
	return (0.4063 + math.Log(t)/2) * (1 + 0.6/t) / (2 * math.Pi * conductivity)
}
