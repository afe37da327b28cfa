package slurry

import (
	"math"
	"strings"
	"testing"
)

func complains(t *testing.T, err error, want string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("error %v, want one that holds %q", err, want)
	}
}

// lead is a lead slurry with bentonite, a liquid and sea water.
func lead() Recipe {
	return Recipe{
		CementDensity: CementDensity, Water: 4.6e-4, WaterDensity: 1025,
		Powders: []Powder{{"bentonite", 0.02, BentoniteDensity, BentoniteWater}},
		Liquids: []Liquid{{"retarder", 1e-5, 1150}},
	}
}

func TestRecipeFaultsAreNamed(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cases := []struct {
		spoil func(*Recipe)
		want  string
	}{
		{func(r *Recipe) { r.CementDensity = 0 }, "cement density 0"},
		{func(r *Recipe) { r.WaterDensity = nan }, "mix water density"},
		{func(r *Recipe) { r.Water = -1 }, "mix water -1"},
		{func(r *Recipe) { r.Water = inf }, "mix water +Inf"},
		{func(r *Recipe) { r.Powders[0].Share = nan }, `powder 1 "bentonite": NaN kg per kg`},
		{func(r *Recipe) { r.Powders[0].Density = 0 }, `powder 1 "bentonite": density 0`},
		{func(r *Recipe) { r.Powders[0].Water = -1 }, `powder 1 "bentonite": extra water -1`},
		{func(r *Recipe) { r.Liquids[0].Dose = -1 }, `liquid 1 "retarder": -1 m³`},
		{func(r *Recipe) { r.Liquids[0].Density = inf }, `liquid 1 "retarder": density +Inf`},
		{func(r *Recipe) { r.Water = math.MaxFloat64 }, "beyond all numbers"},
	}
	for _, c := range cases {
		r := lead()
		c.spoil(&r)
		_, err := r.Slurry()
		complains(t, err, c.want)
		_, err = r.PerVolume()
		complains(t, err, c.want)
		_, err = r.Needs(Batch{})
		complains(t, err, c.want)
	}
}

func TestWantedDensityOutOfReach(t *testing.T) {
	r := lead()
	for _, density := range []float64{1025, 900, 3500} {
		_, err := r.WithWaterFor(density)
		complains(t, err, "cannot be reached")
	}
	for _, density := range []float64{0, math.NaN(), math.Inf(1)} {
		_, err := r.WithWaterFor(density)
		complains(t, err, "wanted density")
		_, err = r.WithPowderFor(0, density)
		complains(t, err, "wanted density")
	}
	_, err := r.WithPowderFor(1, 1600)
	complains(t, err, "no powder 2 among 1")
	_, err = r.WithPowderFor(-1, 1600)
	complains(t, err, "no powder 0")
	// Bentonite with its water thins: a heavier slurry cannot be had from it.
	_, err = r.WithPowderFor(0, 2100)
	complains(t, err, `"bentonite"`)
	r.CementDensity = 0
	_, err = r.WithWaterFor(1600)
	complains(t, err, "cement density")
	_, err = r.WithPowderFor(0, 1600)
	complains(t, err, "cement density")
}

// A sheet in field units: class G, 15.8 ppg, 1.15 ft³/sk, 5.0 gal/sk of fresh water.
func TestSheetCheck(t *testing.T) {
	good := Slurry{Density: 15.8 * ppg, Yield: 1.15 * cubicPerSack, MixFluid: 5 * gallonPerSack, FluidDensity: 8.33 * ppg, Dry: 1}
	// (94 + 5 x 8.33)/(1.15 x 7.48052) = 15.769 ppg, by hand
	if got, ok := good.ImpliedDensity(); !ok || math.Abs(got/ppg-15.769) > 0.001 {
		t.Errorf("ImpliedDensity = %v ppg, %v, want 15.769", got/ppg, ok)
	}
	if err := good.Check(0.005); err != nil {
		t.Errorf("a good sheet: %v", err)
	}
	cases := []struct {
		spoil func(*Slurry)
		want  string
	}{
		{func(s *Slurry) { s.Yield = 1.32 * cubicPerSack }, "ask which figure is right"},
		{func(s *Slurry) { s.Density = 14.8 * ppg }, "ask which figure is right"},
		{func(s *Slurry) { s.MixFluid = 9 * gallonPerSack }, "not more than its mix fluid"},
		{func(s *Slurry) { s.Dry = 1.35 }, "ask which figure is right"},
		{func(s *Slurry) { s.Dry = 0 }, "give all of them"},
		{func(s *Slurry) { s.FluidDensity = math.NaN() }, "give all of them"},
		{func(s *Slurry) { s.Yield = 0 }, "give all of them"},
		{func(s *Slurry) { s.Density = math.Inf(1) }, "density +Inf"},
	}
	for _, c := range cases {
		s := good
		c.spoil(&s)
		complains(t, s.Check(0.01), c.want)
	}
	complains(t, good.Check(-1), "tolerance")
}

// Worked by hand: 10 m³ pumped and 0.5 left in the tub at 0.75 l/kg are 14,000 kg,
// 328.35 sacks; half as much again is 492.5.
func TestBatch(t *testing.T) {
	s := Slurry{Yield: 0.00075, MixFluid: 0.00045}
	b, err := s.Batch(Job{Volume: 10, Tub: 0.5, Tank: 1.2, Reserve: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"Mixed", b.Mixed, 10.5}, {"Cement", b.Cement, 14000}, {"Sacks", b.Sacks, 329}, {"Aboard", b.Aboard, 493},
		{"MixFluid", b.MixFluid, 6.3}, {"Prepared", b.Prepared, 7.5}, {"Reserve", b.Reserve, 0.5},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s = %v, want %v", c.name, c.got, c.want)
		}
	}
	bad := []struct {
		s    Slurry
		job  Job
		want string
	}{
		{Slurry{}, Job{Volume: 1}, "yield 0"},
		{Slurry{Yield: 1, MixFluid: -1}, Job{Volume: 1}, "mix fluid -1"},
		{s, Job{Volume: math.NaN()}, "slurry volume NaN"},
		{s, Job{Tub: -1}, "in the tub -1"},
		{s, Job{Tank: math.Inf(1)}, "tank +Inf"},
		{s, Job{Reserve: -0.1}, "reserve -0.1"},
		{s, Job{Volume: math.MaxFloat64}, "beyond all numbers"},
	}
	for _, c := range bad {
		_, err := c.s.Batch(c.job)
		complains(t, err, c.want)
	}
	_, err = lead().Needs(Batch{Cement: -1})
	complains(t, err, "batch of -1 kg")
	if got, ok := s.Volume(-1); ok {
		t.Errorf("Volume(-1) = %v", got)
	}
}

func TestSacksAreWhole(t *testing.T) {
	for _, c := range []struct{ cement, want float64 }{
		{0, 0}, {-5, 0}, {math.NaN(), 0}, {1, 1}, {Sack, 1}, {3 * 0.1 * Sack * 10, 3}, {7 * Sack * (1 + 1e-12), 7}, {7.001 * Sack, 8}, {500.99 * Sack, 501},
	} {
		if got := Sacks(c.cement); got != c.want {
			t.Errorf("Sacks(%v) = %v, want %v", c.cement, got, c.want)
		}
	}
}

func TestNeeds(t *testing.T) {
	r := lead()
	s, err := r.Slurry()
	if err != nil {
		t.Fatal(err)
	}
	b, err := s.Batch(Job{Volume: 20, Tub: 0.3, Tank: 2, Reserve: 0.25})
	if err != nil {
		t.Fatal(err)
	}
	needs, err := r.Needs(b)
	if err != nil || len(needs) != 4 {
		t.Fatalf("Needs = %v, %v", needs, err)
	}
	dry := needs[0].Volume + needs[1].Volume
	fluid := needs[2].Volume + needs[3].Volume
	if math.Abs(dry+b.MixFluid-20.3) > 1e-9 {
		t.Errorf("dry %v and mix fluid %v m³, want 20.3 together", dry, b.MixFluid)
	}
	if math.Abs(fluid-b.Prepared) > 1e-9 {
		t.Errorf("water and liquid are %v m³, want %v prepared", fluid, b.Prepared)
	}
	if needs[0].Aboard != b.Aboard*Sack || math.Abs(needs[3].Aboard-1.25*needs[3].Mass) > 1e-9 {
		t.Errorf("aboard %v kg of cement and %v of retarder, want %v and %v", needs[0].Aboard, needs[3].Aboard, b.Aboard*Sack, 1.25*needs[3].Mass)
	}
	if got := needs[1].Mass / needs[0].Mass; math.Abs(got-0.02) > 1e-12 {
		t.Errorf("bentonite is %v of the cement, want 0.02", got)
	}
	if labels := needs[0].Label + needs[1].Label + needs[2].Label + needs[3].Label; labels != "cementbentonitewaterretarder" {
		t.Errorf("labels %q", labels)
	}
}

func TestWaterOfPowders(t *testing.T) {
	for _, c := range []struct {
		name              string
		got, want, within float64
	}{
		{"bentonite, gal/sk for 1 %", BentoniteWater * 0.01 / gallonPerSack, 0.6, 0.005},
		{"silica flour, % of water by weight of cement for 35 %", SilicaWater * 35 * FreshWater, 14, 1e-9},
		{"hematite, m³/kg", HematiteWater, 3.0185e-5, 1e-9},
		{"a sack in kg", Sack, 42.6377, 1e-4},
		{"fresh water, ppg", FreshWater / ppg, 8.33, 0.005},
	} {
		if math.Abs(c.got-c.want) > c.within {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestWantedDensityAlreadyThere(t *testing.T) {
	for _, water := range []float64{0, 4.6e-4} {
		r := lead()
		r.Water = water
		r.Powders = append(r.Powders, Powder{"hematite", 0, HematiteDensity, HematiteWater})
		s, err := r.Slurry()
		if err != nil {
			t.Fatal(err)
		}
		if got, err := r.WithWaterFor(s.Density); err != nil || math.Abs(got.Water-water) > 1e-15 {
			t.Errorf("water %v, %v, want %v", got.Water, err, water)
		}
		if got, err := r.WithPowderFor(1, s.Density); err != nil || got.Powders[1].Share > 1e-12 {
			t.Errorf("hematite %v, %v, want 0", got.Powders, err)
		}
	}
}
