package water

// The domain of region 1: K and absolute Pa. The formula begins at the freezing
// point; the two degrees below it, which a cold seabed may ask for, it continues
// smoothly, as liquid that is not frozen.
const (
	freshColdest = zeroCelsius - 2
	freshHottest = 623.15
	freshMost    = 100e6
)

// Fresh returns the density of fresh water in kg/m³ at a temperature in K and a
// gauge pressure in Pa. It reports false beyond -2 to 350 °C and 0 to 99.9 MPa.
// That the water is liquid, not steam, is the caller's to know: it is at every
// pressure up to 99 °C.
//
// Source: IAPWS-IF97, region 1, equation 7 and table 2: v = R T / p* × the
// derivative of the dimensionless Gibbs energy by pressure.
func Fresh(temperature, pressure float64) (float64, bool) {
	absolute := pressure + Atmosphere
	if !(temperature >= freshColdest && temperature <= freshHottest && pressure >= 0 && absolute <= freshMost) {
		return 0, false
	}
	const (
		gas  = 461.526 // J/(kg K)
		unit = 16.53e6 // Pa
	)
	return unit / (gas * temperature * gibbsByPressure(absolute/unit, 1386/temperature)), true
}

// gibbsByPressure returns the derivative of the dimensionless Gibbs energy of region 1
// by the reduced pressure.
func gibbsByPressure(pi, tau float64) (sum float64) {
	a, b := 7.1-pi, tau-1.222
	for _, r := range [...]struct {
		i, j int
		n    float64
	}{
		{1, -9, 0.28319080123804e-3}, {1, -7, -0.60706301565874e-3}, {1, -1, -0.18990068218419e-1}, {1, 0, -0.32529748770505e-1},
		{1, 1, -0.21841717175414e-1}, {1, 3, -0.52838357969930e-4}, {2, -3, -0.47184321073267e-3}, {2, 0, -0.30001780793026e-3},
		{2, 1, 0.47661393906987e-4}, {2, 3, -0.44141845330846e-5}, {2, 17, -0.72694996297594e-15}, {3, -4, -0.31679644845054e-4},
		{3, 0, -0.28270797985312e-5}, {3, 6, -0.85205128120103e-9}, {4, -5, -0.22425281908000e-5}, {4, -2, -0.65171222895601e-6},
		{4, 10, -0.14341729937924e-12}, {5, -8, -0.40516996860117e-6}, {8, -11, -0.12734301741641e-8}, {8, -6, -0.17424871230634e-9},
		{21, -29, -0.68762131295531e-18}, {23, -31, 0.14478307828521e-19}, {29, -38, 0.26335781662795e-22},
		{30, -39, -0.11947622640071e-22}, {31, -40, 0.18228094581404e-23}, {32, -41, -0.93537087268458e-25},
	} {
		sum -= r.n * float64(r.i) * power(a, r.i-1) * power(b, r.j)
	}
	return sum
}

// power returns x to a whole power.
func power(x float64, n int) float64 {
	if n < 0 {
		x, n = 1/x, -n
	}
	result := 1.0
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			result *= x
		}
		x *= x
	}
	return result
}
