package calc

import (
	"math"
	"strconv"

	"borewalk/calc/tally"
	"borewalk/model"
	"borewalk/model/quantity"
)

// hangerPage adds how far slips and packer of a liner stand from the couplings of the string that it hangs in, and where its
// top may stand.
func (e *evaluation) hangerPage(i int, p *page) {
	c, s := &e.strings[i], &e.plan.Sections[i].Tally
	if !c.liner || (!s.Packer.IsSet() && !s.Slips.IsSet()) {
		return
	}
	var place tally.Placement
	host, missing := e.hostCouplings(i, &place)
	keys := make([]string, 0, 2)
	for _, n := range [...]struct {
		key, name string
		below     quantity.Value
	}{{"hanger.packer", "Packer", s.Packer}, {"hanger.slips", "Slips", s.Slips}} {
		if n.below.IsSet() {
			keys = append(keys, n.key)
			place.Parts = append(place.Parts, tally.Part{Name: n.name, From: n.below.SI, To: n.below.SI})
		}
	}
	var clearances []tally.Clearance
	if !missing.open() {
		var err error
		if clearances, err = tally.Clearances(place, c.top); err == nil && len(clearances) == 0 {
			missing = gap{model.PathOf(host, "tally.joint_length"), "the string around has no couplings there"}
		} else if err != nil {
			missing = gap{model.PathOf(i, "top"), "the hanger cannot be placed: " + err.Error()}
		}
	}
	if missing.open() {
		clearances = make([]tally.Clearance, len(place.Parts))
	}
	p.group = "Hanger off couplings"
	for k, part := range place.Parts {
		at := clearances[k]
		e.clearanceFigures(p, keys[k], part, at, missing)
		if !missing.open() {
			e.judge(model.RuleHangerCoupling, i, at.Distance, part.Name+" off the coupling of the string around", "section "+strconv.Itoa(host+1), at.Top, model.PathOf(i, "top"))
		}
	}
	e.freeTop(i, p, &place, missing)
}

func (e *evaluation) clearanceFigures(p *page, key string, part tally.Part, at tally.Clearance, missing gap) {
	const source = "host's tally, couplings at the ends of its pieces"
	p.put(key, part.Name, quantity.TallyLength, at.Top, missing, func(w *Working) {
		w.Formula = "depth = liner top + distance below it"
		w.in("below", "liner top", quantity.TallyLength, part.From)
		w.Source = "geometry, along hole"
	})
	p.also(key+".coupling", "coupling", quantity.TallyLength, at.Coupling, missing, func(w *Working) {
		w.Formula = "coupling of the string around that is nearest"
		w.Source = source
	})
	p.also(key+".distance", "distance", quantity.TallyLength, at.Distance, missing, func(w *Working) {
		w.Formula = "distance = between the part and the middle of the coupling"
		w.in("part", "depth", quantity.TallyLength, at.Top)
		w.in("coupling", "depth", quantity.TallyLength, at.Coupling)
		w.Source = source
		w.Note = "A coupling reaches up and down from there by half its length."
	})
}

// freeTop adds the liner top nearest to the planned one at which slips and packer keep their distance.
func (e *evaluation) freeTop(i int, p *page, place *tally.Placement, missing gap) {
	var placed tally.Placed
	var free tally.Stretch
	if !missing.open() {
		var err error
		placed, err = tally.Place(*place)
		switch {
		case err != nil:
			missing = gap{model.PathOf(i, "top"), "the hanger cannot be placed: " + err.Error()}
		case !placed.Found:
			missing = gap{model.PathOf(i, "top"), "within a joint's length no place keeps slips and packer off the couplings"}
		}
		for _, s := range placed.Allowed {
			if s.Top <= placed.Nearest && placed.Nearest <= s.Bottom && s.Bottom-s.Top >= free.Bottom-free.Top {
				free = s
			}
		}
	}
	p.group = "Liner top, free of them"
	why := func(formula string) func(*Working) {
		return func(w *Working) {
			w.Formula = formula
			w.in("planned", "liner top", quantity.TallyLength, place.Wanted)
			for _, part := range place.Parts {
				w.in("below", part.Name, quantity.TallyLength, part.From)
			}
			w.in("keep off", "distance", quantity.TallyLength, place.Distance)
			w.Source = "host's tally, couplings at the ends of its pieces"
			w.Note = "Looked for within a joint's length. Moving the top moves the shoe, unless the liner is made longer or shorter by as much."
		}
	}
	p.put("hanger.top", "Nearest", quantity.TallyLength, placed.Nearest, missing, why("the liner top nearest to the planned one that keeps every part off every coupling"))
	p.also("hanger.top.from", "from", quantity.TallyLength, free.Top, missing, why("upper end of the stretch of such tops around it"))
	p.also("hanger.top.to", "to", quantity.TallyLength, free.Bottom, missing, why("lower end of the stretch of such tops around it"))
}

// near is how far in m from a liner's top couplings are looked for: further than its hanger is long and joints are.
const near = 150

// hostCouplings fills in the couplings of the string that liner i hangs in, and returns the section of that string.
func (e *evaluation) hostCouplings(i int, place *tally.Placement) (host int, missing gap) {
	c := &e.strings[i]
	shoe, host, ok := e.lastShoe(i)
	if missing = first(c.missing, e.shoeGap(i)); missing.open() {
		return host, missing
	}
	if !ok || shoe <= c.top {
		return host, gap{model.PathOf(i, "top"), "the liner does not reach into a string above"}
	}
	t := e.tallyOf(host)
	if !t.kept {
		return host, gap{model.PathOf(host, "tally.joint_length"), "the string around has no tally: its couplings are not known"}
	}
	if t.missing.open() {
		return host, t.missing
	}
	var err error
	if place.Couplings, err = t.couplings(e.plan.Sections[host].Tally.MarkerDepth.SI, c.top-near, c.top+near); err != nil {
		return host, gap{model.PathOf(host, "tally.hanger"), "the string around cannot be hung: " + err.Error()}
	}
	keep, _ := e.plan.Limit(model.Rules()[model.RuleHangerCoupling])
	place.Distance, place.HostShoe, place.Wanted = math.Max(0, keep.SI), shoe, c.top
	lap := shoe - c.top
	place.LeastLap, place.MostLap = math.Max(0, lap-t.average), lap+t.average
	return host, gap{}
}
