package calc

import (
	"math"
	"strconv"

	"borewalk/model"
)

// stockUse is what a section takes of a stock, kg or m3, and of what that is made up.
type stockUse struct {
	amount  float64
	parts   []takenPart
	missing gap
}

type takenPart struct {
	name   string
	amount float64
}

func (t *stockUse) add(name string, amount float64, missing gap) {
	t.missing = first(t.missing, missing)
	if !missing.open() && amount != 0 {
		t.amount += amount
		t.parts = append(t.parts, takenPart{name, amount})
	}
}

// takenBy returns what section i has still to take of stock k, worked out once for all stocks of a section.
func (e *evaluation) takenBy(i, k int) *stockUse {
	if e.taken == nil {
		e.taken = make([][]stockUse, len(e.plan.Sections))
	}
	if e.taken[i] == nil {
		e.taken[i] = make([]stockUse, len(e.plan.Stocks))
		mud, job := e.mudSupply(i), e.cementSupply(i)
		for n := range e.plan.Stocks {
			e.taken[i][n] = e.take(i, &e.plan.Stocks[n], &mud, &job)
		}
	}
	return &e.taken[i][k]
}

// take adds up what section i has still to take of a stock: what was used before now is no longer aboard.
func (e *evaluation) take(i int, stock *model.Stock, mud *mudSupply, job *cementSupply) (t stockUse) {
	clock := e.clock()
	if i < clock.now() {
		return t
	}
	ahead := func(keys ...string) bool {
		s, ok := clock.find(i, keys...)
		return !ok || s.progress == ToCome || s.progress == GoingOn
	}
	if ahead("drill", "drill_seabed", "jet") {
		switch stock.Item {
		case model.Barite:
			t.add("mud to build", mud.build, mud.missing)
			t.add("weighting up as planned", mud.weightUp, mud.treatGap)
		case model.BaseFluid:
			t.add("mud to build", mud.base, mud.missing)
			t.add("dilution as planned", mud.dilution, mud.treatGap)
		}
	}
	if ahead("cement") {
		switch stock.Item {
		case model.DryCement:
			t.add("cement job and plugs", job.cement, job.missing)
		case model.DrillWater:
			t.add("mix fluid of cement", job.water, first(job.missing, job.waterGap))
		}
	}
	t.add("as planned for the section", e.plan.Sections[i].Use.Of(stock.Item).SI, gap{})
	if daily := stock.Daily(); daily.IsSet() {
		left, missing := clock.leftOf(i)
		t.add("by the day", daily.SI*left/days, missing)
	}
	return t
}

// leftOf returns how long section i still takes.
func (t *timeline) leftOf(i int) (left float64, missing gap) {
	missing = t.sections[i].missing
	for k := t.sections[i].from; k < t.sections[i].to; k++ {
		if s := &t.list[k]; s.progress == ToCome || s.progress == GoingOn {
			left += s.long()
			missing = first(missing, s.step.untimed())
		}
	}
	return left, missing
}

// mudSupply is what the mud of a section takes: weighting material in kg, base fluid in m3.
type mudSupply struct {
	build, base        float64 // of the mud to be built
	missing            gap
	weightUp, dilution float64 // for the density wanted
	treatGap           gap
}

// mudSupply works out what the mud of section i takes.
func (e *evaluation) mudSupply(i int) (m mudSupply) {
	s := &e.plan.Sections[i]
	holds := e.contentsOf(i)
	var build batch
	if e.sections[i].rig {
		b := e.readPits(i, &holds)
		build = e.pitBatch(i, &b)
	} else if s.SpotDensity.IsSet() || s.Riserless.StockVolume.IsSet() {
		d := e.readDumping(i)
		build = e.riserlessBatch(i, &d)
	}
	if build.Volume > 0 || build.missing.open() {
		a, missing := e.built(i, build)
		m.build, m.base = a.Mass, a.Treated
		m.missing = first(lacks(s.Recipe.Base, i, "recipe.base", "base fluid of the mud to build"), missing)
	}
	if !s.Treatment.Density.IsSet() {
		return m
	}
	t := e.treat(i, &holds)
	if wanted := s.Treatment.Density.SI; wanted >= t.mud.Density || t.missing.open() {
		a, missing := t.weighUp(wanted)
		m.weightUp, m.treatGap = a.Mass, missing
	} else {
		d, missing := e.diluted(i, &t, wanted)
		m.dilution, m.treatGap = d.Added, missing
	}
	return m
}

// cementSupply is what the cement of a section takes: dry cement in kg, fresh mix fluid in m3.
type cementSupply struct {
	cement, water float64
	missing       gap
	waterGap      gap // to tell fresh water from the sea's
}

// nearSea is how near in kg/m3 the density of a mix fluid is to the sea's for it to be sea water, which nobody has to bring: more
// than the sea's density differs from place to place.
const nearSea = 10

// cementSupply works out what the job and the plugs of section i take.
func (e *evaluation) cementSupply(i int) (c cementSupply) {
	s := &e.plan.Sections[i]
	if e.cemented(i) {
		job := e.cementOf(i)
		c.missing = job.missing
		for k := range job.slurries {
			q := &job.slurries[k]
			c.missing = first(c.missing, q.unmixed)
			c.cement += q.batch.Cement
			mix := q.row.MixDensity
			if mix.IsSet() {
				c.waterGap = first(c.waterGap, e.gaps.sea)
			}
			if !mix.IsSet() || math.Abs(mix.SI-e.seawater()) > nearSea {
				c.water += q.batch.Prepared
			}
		}
	}
	for k := range s.Plugs {
		h, missing := e.readPlug(i, k)
		path := func(key string) model.Path { return model.PathOf(i, "plug["+strconv.Itoa(k+1)+"]."+key) }
		c.missing = first(c.missing, missing, needs(s.Plugs[k].Yield, path("yield"), "yield of a plug"))
		cement := quotient(h.plug.Slurry, s.Plugs[k].Yield.SI)
		c.cement, c.water = c.cement+cement, c.water+cement*s.Plugs[k].MixFluid.SI
	}
	return c
}
