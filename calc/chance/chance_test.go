package chance_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"borewalk/calc/chance"
)

// draws returns so many draws of one distribution.
func draws(t chance.Triangle, trials int, seed uint64) []float64 {
	return chance.Run(seed, 0, chance.Blocks(trials), 1, func() chance.Trial {
		return func(d *chance.Draw, out []float64) { out[0] = d.Triangle(t) }
	})[0]
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %g, expected %g within %g", what, got, want, within)
	}
}

// shapes are distributions of all kinds, the one-sided ones among them.
func shapes() []chance.Triangle {
	return []chance.Triangle{{2, 3, 7}, {-1, 0, 1}, {0, 0, 4}, {0, 4, 4}, {-5, -4.9, 20}, {1e-3, 2e-3, 2.5e-3}}
}

func TestTriangleIsTheOneOfGonum(t *testing.T) {
	for _, shape := range shapes() {
		other := distuv.NewTriangle(shape.Low, shape.High, shape.Likely, nil)
		width := shape.High - shape.Low
		near(t, fmt.Sprint("mean of ", shape), shape.Mean(), other.Mean(), 1e-14*width+1e-15)
		near(t, fmt.Sprint("variance of ", shape), shape.Variance(), other.Variance(), 1e-12*width*width)
		for k := 0; k <= 100; k++ {
			share := float64(k) / 100
			near(t, fmt.Sprintf("quantile %g of %v", share, shape), shape.Quantile(share), other.Quantile(share), 1e-12*width)
		}
	}
}

// TestTriangleByHand: (0, 1, 2) stays below q²/2 with its lower half, so a tenth lies below the root of 0.2.
func TestTriangleByHand(t *testing.T) {
	shape := chance.Triangle{Low: 0, Likely: 1, High: 2}
	near(t, "P10", shape.Quantile(0.1), math.Sqrt(0.2), 1e-15)
	near(t, "P50", shape.Quantile(0.5), 1, 1e-15)
	near(t, "P90", shape.Quantile(0.9), 2-math.Sqrt(0.2), 1e-15)
	near(t, "mean", shape.Mean(), 1, 0)
	near(t, "variance", shape.Variance(), 1.0/6, 1e-16)
}

func TestValid(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for shape, valid := range map[chance.Triangle]bool{
		{1, 2, 3}: true, {1, 1, 1}: true, {2, 1, 3}: false, {1, 4, 3}: false, {-inf, 0, 1}: false, {0, 1, inf}: false, {0, nan, 1}: false,
	} {
		if shape.Valid() != valid {
			t.Errorf("%v: %v", shape, !valid)
		}
	}
}

// TestQuantileLaws: from end to end, never back, and its own inverse in the distribution function.
func TestQuantileLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ends := []float64{rapid.Float64Range(-1e6, 1e6).Draw(t, "a"), rapid.Float64Range(-1e6, 1e6).Draw(t, "b"), rapid.Float64Range(-1e6, 1e6).Draw(t, "c")}
		slices.Sort(ends)
		shape := chance.Triangle{Low: ends[0], Likely: ends[1], High: ends[2]}
		p, q := rapid.Float64Range(0, 1).Draw(t, "p"), rapid.Float64Range(0, 1).Draw(t, "q")
		rounding := 1e-9 * (1 + math.Abs(ends[0]) + math.Abs(ends[2]))
		if x, y := shape.Quantile(min(p, q)), shape.Quantile(max(p, q)); x > y+rounding || x < ends[0]-rounding || y > ends[2]+rounding {
			t.Fatalf("%v: %g at %g, %g at %g", shape, x, min(p, q), y, max(p, q))
		}
		if math.Abs(shape.Quantile(0)-ends[0]) > rounding || math.Abs(shape.Quantile(1)-ends[2]) > rounding {
			t.Fatalf("%v: from %g to %g", shape, shape.Quantile(0), shape.Quantile(1))
		}
	})
}

func TestAConstantIsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(-1e9, 1e9).Draw(t, "value")
		shape := chance.Constant(value)
		s := chance.SpreadOf(draws(shape, 100, rapid.Uint64().Draw(t, "seed")))
		if s.P10 != value || s.P50 != value || s.P90 != value || s.Mean != value || shape.Mean() != value || shape.Variance() != 0 || !shape.IsConstant() {
			t.Fatalf("%g: %+v", value, s)
		}
	})
}

const trials = 40000

// TestDrawsSpreadAsTheirDistribution compares quantiles, mean and variance of draws with the closed form, within five times the error
// to be expected of so many: that of a quantile is sqrt(p (1 - p) / n) over the density there.
func TestDrawsSpreadAsTheirDistribution(t *testing.T) {
	for _, shape := range shapes() {
		values := draws(shape, trials, 7)
		n := float64(len(values))
		s := chance.SpreadOf(values)
		near(t, fmt.Sprint("mean of ", shape), s.Mean, shape.Mean(), 5*math.Sqrt(shape.Variance()/n))
		other := distuv.NewTriangle(shape.Low, shape.High, shape.Likely, nil)
		for p, got := range map[float64]float64{0.1: s.P10, 0.5: s.P50, 0.9: s.P90} {
			at := shape.Quantile(p)
			near(t, fmt.Sprintf("P%g of %v", 100*p, shape), got, at, 5*math.Sqrt(p*(1-p)/n)/other.Prob(at))
		}
	}
}

// TestEveryBlockDrawsForItself: the first draws of the blocks are spread evenly as well, and next to no two are alike.
func TestEveryBlockDrawsForItself(t *testing.T) {
	const blocks, cells = 4096, 16
	values := draws(chance.Triangle{Low: 0, Likely: 1, High: 1}, blocks*chance.Block, 3) // of which the square is even
	var count [cells]float64
	seen := map[float64]bool{}
	for b := range blocks {
		first := values[b*chance.Block]
		count[int(first*first*cells)]++
		seen[first] = true
	}
	square := 0.0
	for _, c := range count {
		square += (c - blocks/cells) * (c - blocks/cells) / (blocks / cells)
	}
	if most := (distuv.ChiSquared{K: cells - 1}).Quantile(0.9999); square > most || len(seen) < blocks-2 {
		t.Errorf("chi-square %g of at most %g, %d different of %d", square, most, len(seen), blocks)
	}
}

// TestSumsAgainstClosedForm: means and variances of independent parts add up; what is lost multiplies the mean.
func TestSumsAgainstClosedForm(t *testing.T) {
	parts := shapes()
	values := summed(parts, trials)
	sums := chance.Sums(parts, chance.Constant(0), trials, 11)
	weather := chance.Triangle{Low: 0, Likely: 0.1, High: 0.4}
	lost := chance.Sums(parts, weather, trials, 11)
	var mean, variance float64
	for k, part := range parts {
		mean += part.Mean()
		variance += part.Variance()
		within := 5 * math.Sqrt(variance/float64(len(values[k])))
		near(t, fmt.Sprint("mean to ", k), sums[k].Mean, mean, within)
		near(t, fmt.Sprint("with losses to ", k), lost[k].Mean, mean*(1+weather.Mean()), 2*within+5*math.Abs(mean)*math.Sqrt(weather.Variance()/trials))
		found := 0.0
		for _, v := range values[k] {
			found += (v - sums[k].Mean) * (v - sums[k].Mean) / float64(len(values[k])-1)
		}
		// The fourth moment of a sum of such parts is no more than 3 times the square of the variance: the error of the variance follows.
		near(t, fmt.Sprint("variance to ", k), found, variance, 5*variance*math.Sqrt(2/float64(trials)))
	}
}

// summed returns the sums themselves, drawn by hand.
func summed(parts []chance.Triangle, trials int) [][]float64 {
	return chance.Run(11, 0, chance.Blocks(trials), len(parts), func() chance.Trial {
		return func(d *chance.Draw, out []float64) {
			sum := 0.0
			for k, part := range parts {
				sum += d.Triangle(part)
				out[k] = sum
			}
		}
	})
}

// TestSumOfTwoAgainstConvolution: the distribution of the sum of two, by the integral of the one's density and the other's distribution.
func TestSumOfTwoAgainstConvolution(t *testing.T) {
	shape := chance.Triangle{Low: 2, Likely: 3, High: 7}
	one := distuv.NewTriangle(shape.Low, shape.High, shape.Likely, nil)
	below := func(x float64) (sum float64) {
		const steps = 4000
		h := (shape.High - shape.Low) / steps
		for k := range steps {
			y := shape.Low + (float64(k)+0.5)*h
			sum += one.Prob(y) * one.CDF(x-y) * h
		}
		return sum
	}
	s := chance.Sums([]chance.Triangle{shape, shape}, chance.Constant(0), trials, 5)[1]
	for p, got := range map[float64]float64{0.1: s.P10, 0.5: s.P50, 0.9: s.P90} {
		near(t, fmt.Sprintf("share below P%g", 100*p), below(got), p, 5*math.Sqrt(p*(1-p)/trials))
	}
}

// TestSumOfManyIsNormal: of 200 parts the sum is normal within the error of the trials (central limit theorem).
func TestSumOfManyIsNormal(t *testing.T) {
	var parts []chance.Triangle
	var mean, variance float64
	for k := range 200 {
		part := chance.Triangle{Low: 1, Likely: 1 + float64(k%5), High: 6 + float64(k%3)}
		parts, mean, variance = append(parts, part), mean+part.Mean(), variance+part.Variance()
	}
	s := chance.Sums(parts, chance.Constant(0), 10000, 1)[len(parts)-1]
	normal := distuv.Normal{Mu: mean, Sigma: math.Sqrt(variance)}
	for p, got := range map[float64]float64{0.1: s.P10, 0.5: s.P50, 0.9: s.P90} {
		near(t, fmt.Sprintf("P%g", 100*p), got, normal.Quantile(p), 5*math.Sqrt(p*(1-p)/10000)/normal.Prob(normal.Quantile(p)))
	}
}

// TestNoMatterHowManyCores: the same seed gives the same to the last bit on one core and on more, at once or in pieces; another seed
// does not.
func TestNoMatterHowManyCores(t *testing.T) {
	parts := shapes()
	on := func(cores int, seed uint64) []chance.Spread {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		return chance.Sums(parts, chance.Triangle{Low: 0, Likely: 0, High: 0.2}, 1000, seed)
	}
	if one := on(1, 9); !slices.Equal(one, on(2, 9)) || !slices.Equal(one, on(5, 9)) || slices.Equal(one, on(2, 10)) {
		t.Errorf("one core, two, five and another seed: %v %v %v %v", one, on(2, 9), on(5, 9), on(2, 10))
	}
	piece := func(from, to int) []float64 {
		return chance.Run(9, from, to, 1, func() chance.Trial {
			return func(d *chance.Draw, out []float64) { out[0] = d.Triangle(parts[0]) }
		})[0]
	}
	if !slices.Equal(piece(0, 7), slices.Concat(piece(0, 1), piece(1, 5), piece(5, 7))) {
		t.Error("pieces are not the whole")
	}
}

func TestAPanicReachesTheCaller(t *testing.T) {
	defer func() {
		if recover() != "as planned" {
			t.Error("it did not")
		}
	}()
	chance.Run(1, 0, 4, 1, func() chance.Trial { return func(*chance.Draw, []float64) { panic("as planned") } })
}

// TestPercentile: definition 7 of Hyndman and Fan, by hand.
func TestPercentile(t *testing.T) {
	for _, c := range []struct {
		values      []float64
		share, want float64
	}{
		{[]float64{1, 2, 3, 4, 5}, 0.5, 3}, {[]float64{1, 2, 3, 4}, 0.5, 2.5}, {[]float64{0, 10}, 0.1, 1}, {[]float64{0, 10}, 1, 10},
		{[]float64{4}, 0.9, 4}, {[]float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, 0.1, 2},
	} {
		near(t, fmt.Sprint(c.values, c.share), chance.Percentile(c.values, c.share), c.want, 1e-15)
	}
	if !math.IsNaN(chance.Percentile(nil, 0.5)) {
		t.Error("a percentile of nothing")
	}
}

func TestWhatIsNotKnownIsLeftOut(t *testing.T) {
	values := []float64{3, math.NaN(), 1, 2, math.NaN()}
	s := chance.SpreadOf(values)
	if s.Known != 3 || s.P50 != 2 || s.Mean != 2 || !math.IsNaN(values[1]) {
		t.Errorf("%+v", s)
	}
	if none := chance.SpreadOf([]float64{math.NaN()}); none.Known != 0 || !math.IsNaN(none.P50) || !math.IsNaN(none.Mean) {
		t.Errorf("%+v", none)
	}
	if o := chance.AtLeast(values, 2); o.Share != 0.4 { // of five trials, two hold it
		t.Errorf("%+v", o)
	}
	if o := chance.AtMost(values, 2); o.Share != 0.4 {
		t.Errorf("%+v", o)
	}
}

// TestWilson: bounds for 81 of 263 from Newcombe 1998, Two-sided confidence intervals for the single proportion, table I, method 3
// (0.2553 to 0.3662), for 15 of 148 (0.0624 to 0.1605), for 0 of 20 (0 to 0.1611) and 1 of 29 (0.0061 to 0.1718), from memory.
func TestWilson(t *testing.T) {
	for _, c := range []struct {
		held, of  int
		low, high float64
	}{{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0, 0.1611}, {1, 29, 0.0061, 0.1718}} {
		o := chance.OddsOf(c.held, c.of)
		near(t, "low", o.Low, c.low, 5e-5)
		near(t, "high", o.High, c.high, 5e-5)
	}
	if o := chance.OddsOf(0, 0); !math.IsNaN(o.Share) {
		t.Errorf("%+v", o)
	}
}

// TestWilsonHoldsTheTruth: 19 intervals in 20 hold the share that the draws have in truth. Of 2000 intervals some 1900 do; an interval
// on whole counts is off by a percent or two here and there.
func TestWilsonHoldsTheTruth(t *testing.T) {
	from := rand.New(rand.NewPCG(1, 2))
	for _, truth := range []float64{0.05, 0.3, 0.5, 0.92} {
		held := 0
		for range 2000 {
			count := 0
			for range 500 {
				if from.Float64() < truth {
					count++
				}
			}
			if o := chance.OddsOf(count, 500); o.Low <= truth && truth <= o.High {
				held++
			}
		}
		near(t, fmt.Sprint("intervals that hold ", truth), float64(held)/2000, 0.95, 0.025)
	}
}

func BenchmarkSums(b *testing.B) {
	var parts []chance.Triangle
	for k := range 200 {
		parts = append(parts, chance.Triangle{Low: 1, Likely: 2, High: 4 + float64(k%7)})
	}
	for b.Loop() {
		chance.Sums(parts, chance.Triangle{Low: 0, Likely: 0.05, High: 0.3}, 10000, 1)
	}
}
