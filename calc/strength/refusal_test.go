package strength

import (
	"math"
	"strings"
	"testing"
)

func TestBadPipes(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := l80()
	cases := []struct {
		pipe Pipe
		want string
	}{
		{Pipe{}, "outside"}, {Pipe{nan, good.Wall, good.Yield}, "outside"}, {Pipe{-1, good.Wall, good.Yield}, "outside"},
		{Pipe{inf, good.Wall, good.Yield}, "outside"}, {Pipe{9.625, 0.472, good.Yield}, "check its unit"},
		{Pipe{good.OD, 0, good.Yield}, "wall"}, {Pipe{good.OD, nan, good.Yield}, "wall"}, {Pipe{good.OD, -0.01, good.Yield}, "wall"},
		{Pipe{good.OD, good.OD / 2, good.Yield}, "leaves a bore"}, {Pipe{good.OD, 1e-5, good.Yield}, "wall"}, {Pipe{good.OD, inf, good.Yield}, "wall"},
		{Pipe{good.OD, good.Wall, 80e3}, "yield"}, {Pipe{good.OD, good.Wall, nan}, "yield"}, {Pipe{good.OD, good.Wall, inf}, "yield"},
	}
	for _, c := range cases {
		says := func(what string, err error) {
			t.Helper()
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%s of %+v says %v, want %q", what, c.pipe, err, c.want)
			}
		}
		_, err := Collapse(c.pipe)
		says("Collapse", err)
		_, err = EquivalentExternal(c.pipe, 1, 1)
		says("EquivalentExternal", err)
		_, err = InternalYield(c.pipe, 1)
		says("InternalYield", err)
		_, err = OpenEndYield(c.pipe, 1)
		says("OpenEndYield", err)
		_, err = CappedEndYield(c.pipe, 1)
		says("CappedEndYield", err)
		_, err = BodyYield(c.pipe)
		says("BodyYield", err)
		_, err = Worn(c.pipe, 0)
		says("Worn", err)
		_, err = Triaxial(c.pipe, 1, standing())
		says("Triaxial", err)
		_, err = NewCasing(c.pipe).Ratings(standing())
		says("Ratings", err)
		if _, ok := BendingPull(c.pipe, 0); ok {
			t.Errorf("BendingPull of %+v", c.pipe)
		}
		if _, ok := Ballooning(c.pipe, 1, 1, 1); ok {
			t.Errorf("Ballooning of %+v", c.pipe)
		}
	}
}

func TestBadCasings(t *testing.T) {
	nan := math.NaN()
	cases := []struct {
		change func(*Casing)
		want   string
	}{
		{func(c *Casing) { c.Lost = -0.1 }, "wear of -0.1"},
		{func(c *Casing) { c.Lost = 1 }, "wear of 1"},
		{func(c *Casing) { c.Lost = nan }, "wear"},
		{func(c *Casing) { c.Lost = 0.99 }, "wear leaves no wall"},
		{func(c *Casing) { c.BurstShare = 0 }, "burst wall share"},
		{func(c *Casing) { c.BurstShare = 1.01 }, "burst wall share"},
		{func(c *Casing) { c.TriaxialShare = nan }, "triaxial wall share"},
		{func(c *Casing) { c.Derating.PerKelvin = -1 }, "per kelvin"},
		{func(c *Casing) { c.Derating.PerKelvin = nan }, "per kelvin"},
		{func(c *Casing) { c.Derating.From = 21 }, "temperature 21 K"},
		{func(c *Casing) { c.Derating.PerKelvin = 0.01 }, "leaves nothing"},
		{func(c *Casing) { c.Derating.PerKelvin = 0.004 }, "the ratings hold"},
		{func(c *Casing) { c.Connection = Connection{} }, "connection burst share 0"},
		{func(c *Casing) { c.Connection.Collapse = nan }, "connection collapse share"},
		{func(c *Casing) { c.Connection.Tension = 85 }, "connection tension share 85"},
		{func(c *Casing) { c.Connection.Compression = -1 }, "connection compression share"},
	}
	hot := standing()
	hot.Temperature = 500
	for _, c := range cases {
		casing := NewCasing(l80())
		c.change(&casing)
		if _, err := casing.Ratings(hot); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Ratings says %v, want %q", err, c.want)
		}
	}
}

func TestBadLoads(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cases := []struct {
		change func(*Load)
		want   string
	}{
		{func(l *Load) { l.Inside = -1 }, "pressure inside"}, {func(l *Load) { l.Inside = nan }, "pressure inside"}, {func(l *Load) { l.Inside = inf }, "pressure inside"},
		{func(l *Load) { l.Outside = -1 }, "pressure outside"}, {func(l *Load) { l.Outside = nan }, "pressure outside"}, {func(l *Load) { l.Outside = inf }, "pressure outside"},
		{func(l *Load) { l.Axial = nan }, "axial force"}, {func(l *Load) { l.Axial = -inf }, "axial force"},
		{func(l *Load) { l.Torque = inf }, "torque"}, {func(l *Load) { l.Dogleg = -0.1 }, "dogleg"}, {func(l *Load) { l.Dogleg = nan }, "dogleg"},
		{func(l *Load) { l.Temperature = 90 }, "temperature 90 K"}, {func(l *Load) { l.Temperature = nan }, "temperature"},
	}
	for _, c := range cases {
		load := standing()
		c.change(&load)
		_, err := NewCasing(l80()).Ratings(load)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "1000.00 m") {
			t.Errorf("Ratings says %v, want %q", err, c.want)
		}
		if _, err := Triaxial(l80(), 1, load); err == nil {
			t.Errorf("Triaxial of %+v", load)
		}
	}
	for _, share := range []float64{nan, 0, 0.4, 1.1} {
		if _, err := Triaxial(l80(), share, standing()); err == nil {
			t.Errorf("Triaxial on a share of %v", share)
		}
		if _, err := InternalYield(l80(), share); err == nil {
			t.Errorf("InternalYield on a share of %v", share)
		}
	}
}

func TestBadNumbers(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	none := func(what string, v float64, ok bool) {
		t.Helper()
		if ok || v != 0 {
			t.Errorf("%s = %v, %v, want none", what, v, ok)
		}
	}
	call := func(what string, f func(a, b, c float64) (float64, bool), rows ...[3]float64) {
		t.Helper()
		for _, r := range rows {
			v, ok := f(r[0], r[1], r[2])
			none(what, v, ok)
		}
	}
	two := func(f func(a, b float64) (float64, bool)) func(a, b, c float64) (float64, bool) {
		return func(a, b, _ float64) (float64, bool) { return f(a, b) }
	}
	call("Bending", two(Bending), [3]float64{-1, 1}, [3]float64{1, -1}, [3]float64{nan, 1}, [3]float64{1, inf})
	call("Shock", two(Shock), [3]float64{-1, 1}, [3]float64{1, -1}, [3]float64{nan, 1}, [3]float64{1, inf})
	call("EndLoad", two(EndLoad), [3]float64{-1, 1}, [3]float64{1, -1}, [3]float64{nan, 1}, [3]float64{1, inf})
	call("Warming", two(Warming), [3]float64{-1, 1}, [3]float64{nan, 1}, [3]float64{1, nan})
	call("YieldInTension", two(YieldInTension), [3]float64{0, 1}, [3]float64{-1, 1}, [3]float64{nan, 1}, [3]float64{1, nan}, [3]float64{1, inf}, [3]float64{inf, 1})
	call("Overpull", Overpull, [3]float64{-1, 1, 1}, [3]float64{1, 0, 1}, [3]float64{1, 1, nan}, [3]float64{inf, 1, 1}, [3]float64{1, nan, 1})
	call("Stretch", Stretch, [3]float64{1, 1, 0}, [3]float64{1, -1, 1}, [3]float64{nan, 1, 1}, [3]float64{inf, 1, 1}, [3]float64{1, 1, nan})
	call("FreeLength", FreeLength, [3]float64{-1, 1, 1}, [3]float64{1, 0, 1}, [3]float64{1, 1, 0}, [3]float64{inf, 1, 1}, [3]float64{nan, 1, 1})
	call("Held", Held, [3]float64{1, 0, 1}, [3]float64{1, 1, 0}, [3]float64{nan, 1, 1}, [3]float64{1, 1, inf})
	for _, bad := range []float64{-1, nan, inf} {
		v, ok := BendingPull(l80(), bad)
		none("BendingPull", v, ok)
		v, ok = Ballooning(l80(), bad, 1, 1)
		none("Ballooning", v, ok)
	}
	for _, yield := range []float64{0, 15e3 * psi, 161e3 * psi, nan, inf} {
		if c, ok := CoefficientsAt(yield); ok || c != (Coefficients{}) {
			t.Errorf("CoefficientsAt(%v) = %v", yield, c)
		}
	}
	for _, stress := range []float64{nan, inf, -inf} {
		if _, err := CollapseInTension(l80(), stress); err == nil {
			t.Errorf("CollapseInTension at %v", stress)
		}
		if _, err := EquivalentExternal(l80(), stress, 0); err == nil {
			t.Errorf("EquivalentExternal of %v", stress)
		}
	}
	for _, yield := range []float64{0, -1, nan, inf} {
		if v, err := CommonDerating().Yield(yield, 300); err == nil {
			t.Errorf("Yield of %v = %v", yield, v)
		}
	}
	if v, err := CommonDerating().Yield(1e8, 20); err == nil {
		t.Errorf("Yield at 20 K = %v", v)
	}
}
