package tally

import (
	"fmt"
	"math"
	"slices"
)

// A Landing is a landing string that is to be put together: the pipe between the
// hanger and the rotary when the hanger lands.
//
// A floating rig rides the tide while the wellhead does not, so a string that has
// landed sticks up least at high tide:
//
//	stick-up = length - (depth of the shoulder at mean sea level + height of the tide)
type Landing struct {
	Fixed  []Item      // Fixed is what is above the shoulder in any case, bottom up: running tool, crossovers, a heavy first joint.
	Stands []DeckJoint // Stands, or joints, in the order in which they are to be run.
	Pups   []DeckPup   // Pups, and singles, that may be added.

	Shoulder float64 // Shoulder is the measured depth of the landing shoulder in metres at mean sea level.
	HighTide float64 // HighTide is the height of the highest tide over mean sea level in metres.
	LowTide  float64 // LowTide is the height of the lowest tide over mean sea level in metres, negative below it.

	Least     float64 // Least is the least stick-up in metres at any tide: what the slips or the cement head need.
	Most      float64 // Most is the greatest stick-up in metres at any tide.
	Wanted    float64 // Wanted is the stick-up in metres at mean sea level that would be best.
	Tolerance float64 // Tolerance is the difference in metres from there for which no pup is spent.
}

// A Landed is a landing string that has been put together.
type Landed struct {
	Stands   []int   // Stands are the stands to run, bottom up, as places in the list.
	Left     []int   // Left are the sound stands that are not needed.
	Pups     []int   // Pups is how many of each entry of the pups are used.
	PupsUsed int     // PupsUsed is how many that is together.
	Length   float64 // Length is the length in metres from the shoulder to the top of the string.
	AtMean   float64 // AtMean is the stick-up in metres at mean sea level.
	AtHigh   float64 // AtHigh is the stick-up in metres at high tide, the least.
	AtLow    float64 // AtLow is the stick-up in metres at low tide, the greatest.
	Accepted bool    // Accepted says that the stick-up stays in its window from low to high tide.
	Items    []Item  // Items is the whole landing string, bottom up; hung from minus the stick-up, [Run] gives its depths.
}

// Land chooses how many stands to run, in their order, and which pups to add. It
// prefers a stick-up that stays in its window at any tide, then the one nearest to
// the wanted stick-up, then the fewest pups. Where the tide moves more than the
// window is wide, or the pipe is too short, the nearest is returned and not
// accepted. An error names an impossible input.
func Land(l Landing) (Landed, error) {
	if err := l.check(); err != nil {
		return Landed{}, err
	}
	sums, err := pupSums(l.Pups)
	if err != nil {
		return Landed{}, err
	}
	// The window that holds at any tide, as seen at mean sea level. The wanted
	// stick-up gives way to it.
	least, most := nm(l.Least)+nm(l.HighTide), nm(l.Most)+nm(l.LowTide)
	want := nm(l.Wanted)
	if least <= most {
		want = min(max(want, least), most)
	} else {
		least, most = want, want
	}
	shoulder := nm(l.Shoulder)
	sound, lengths := soundOnes(l.Stands)
	best, _ := choose(total(l.Fixed), lengths, sums, wish{
		want: shoulder + want, least: shoulder + least, most: shoulder + most,
		limit: math.MaxInt64, tolerance: nm(l.Tolerance),
	})
	return l.landed(best, sound, want+best.err), nil
}

// landed writes a choice out that has a stick-up in nm at mean sea level.
func (l Landing) landed(best choice, sound []int, stickUp int64) Landed {
	high, low := stickUp-nm(l.HighTide), stickUp-nm(l.LowTide)
	out := Landed{
		Pups: make([]int, len(l.Pups)), PupsUsed: best.pups.pieces,
		Length: metres(nm(l.Shoulder) + stickUp),
		AtMean: metres(stickUp), AtHigh: metres(high), AtLow: metres(low),
		Accepted: high >= nm(l.Least) && low <= nm(l.Most),
		Items:    slices.Clone(l.Fixed),
		Stands:   sound[:best.reach:best.reach], Left: sound[best.reach:],
	}
	for _, i := range out.Stands {
		out.Items = stack(out.Items, Item{Label: l.Stands[i].Number, Count: 1, Length: l.Stands[i].Length})
	}
	out.Items = append(out.Items, usedPups(l.Pups, best.pups, out.Pups)...)
	return out
}

// check reports what cannot be landed.
func (l Landing) check() error {
	if err := checkDepth("landing shoulder", l.Shoulder); err != nil {
		return err
	}
	const wildest = 100 // m, more than any tide or stick-up
	for _, v := range []struct {
		what  string
		value float64
	}{{"high tide", l.HighTide}, {"low tide", l.LowTide}, {"least stick-up", l.Least}, {"greatest stick-up", l.Most}, {"wanted stick-up", l.Wanted}} {
		if math.IsNaN(v.value) || math.Abs(v.value) > wildest {
			return fmt.Errorf("%s %g m; give it in reach of the rig floor and check its unit", v.what, v.value)
		}
	}
	switch {
	case l.LowTide > l.HighTide:
		return fmt.Errorf("low tide %.2f m is above high tide %.2f m; change them over", l.LowTide, l.HighTide)
	case l.Wanted < l.Least || l.Wanted > l.Most:
		return fmt.Errorf("wanted stick-up %.2f m is not between %.2f and %.2f m; move it or them", l.Wanted, l.Least, l.Most)
	}
	if err := checkTolerance(l.Tolerance); err != nil {
		return err
	}
	if err := checkItems(l.Fixed); err != nil {
		return err
	}
	return checkDeck(l.Stands, l.Pups)
}
