package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// tripKeys are how the keys of the figures begin that stand on a trip sheet.
func tripKeys() []string {
	return []string{"trip.", "swab.out.", "swab.in.", "swab.limit.", "swab.gel"}
}

// tripCard makes the trip sheet of a section; why says what keeps it from being made.
func (p *printer) tripCard(i int) (c card, why string) {
	trip, err := calc.TripSheetOf(p.plan, i)
	if err != nil {
		return card{}, err.Error()
	}
	c = card{section: i, tallest: true, title: "Trip sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	for _, f := range p.result.Sheet(i).Figures {
		if f.OK && slices.ContainsFunc(tripKeys(), func(key string) bool { return strings.HasPrefix(f.Key, key) }) {
			c.tables = addFigure(c.tables, f, "")
		}
	}
	c.tables = append(c.tables, tripFills(&trip))
	c.notes = []part{{title: "How to read it", remarks: p.tripRemarks(&trip)}, p.tripFindings(i), {title: "Cautions", remarks: append([]string{
		"Trip tank: lined up and watched by a named person from the first stand to the last, out and in. Each fill is compared with this sheet and with the last trip's before the next is pulled.",
		"Flow check off bottom, at the shoe, before the BHA comes into the stack, and whenever in doubt. A hole that takes too little has let something in: stop, flow check, and go back to bottom if that is in doubt.",
		"A hole that takes about right may still be swabbed at the bit: the first stands off bottom and the last ones below the shoe are pulled no faster than the speeds given, slower where it drags.",
		"With the BHA across the stack it may not be possible to shear: what is done on a flow then is agreed before.",
	}, p.cautionsOn(i, tripKinds(&trip))...)}}
	return c, ""
}

// tripFills lists fill after fill from TD up, with room for what is seen.
func tripFills(trip *calc.TripSheet) table {
	t := table{title: "Pulling out, fill by fill", rowHead: "stands", tall: true,
		columns: []heading{{"bit at", quantity.Length}, {"fill", quantity.Volume}, {"total", quantity.Volume}, {"strokes", quantity.Strokes}, {"hook", quantity.Force}},
		byHand:  []string{"tank", "took", "in all", "off by"}}
	for k := range trip.Rows {
		r := &trip.Rows[k]
		strokes := r.Strokes
		if trip.Strokes != "" {
			strokes = nothing()
		}
		name := strconv.FormatFloat(r.Stands, 'f', 1, 64)
		switch {
		case r.AtStack:
			name += " BHA at stack"
		case r.InShoe:
			name += " in shoe"
		}
		t.rows = append(t.rows, line{name: name, values: []float64{r.Bit, r.Fill, r.Total, strokes, r.Hook}, of: r.Part})
	}
	return t
}

// tripKinds are the kinds of figures that a trip sheet prints.
func tripKinds(trip *calc.TripSheet) map[quantity.Kind]bool {
	return map[quantity.Kind]bool{quantity.Length: true, quantity.Volume: true, quantity.Pressure: true, quantity.EMW: true, quantity.Force: true, quantity.Strokes: trip.Strokes == ""}
}

// tripRemarks says what the columns are and what they leave out.
func (p *printer) tripRemarks(trip *calc.TripSheet) []string {
	way := "dry behind the slug: the steel alone leaves the hole. Until the slug has settled, and if the pipe comes wet, the wet figures hold"
	if trip.Wet {
		way = "wet: what is in the bore leaves with the pipe and is lost unless it is caught. Pipe that comes dry takes the dry figures"
	}
	limit, _ := p.plan.Limit(model.Rules()[model.RuleUSTripFill])
	stands, _ := p.plan.Limit(model.Rules()[model.RuleUSTripStands])
	remarks := []string{
		"From TD up, a line for each fill. stands: pulled since TD. fill: what the hole takes for the line. total: what it has taken since TD. " +
			"tank, took, in all and off by are filled in by hand: reading of the trip tank, what it gave, the sum of that, and what it is off this sheet.",
		"The string is taken to come " + way + ". Bit and opener are left out, tool joints count by weight.",
		"most stands: pulled without filling until the pressure in the hole has dropped by " + quantity.FormatUnit(limit.SI, quantity.Pressure, p.System.Unit(quantity.Pressure)) +
			", and not capped by the " + strconv.FormatFloat(stands.SI, 'g', 3, 64) + " stands of drill pipe between fills: the lesser holds. level falls: in the riser, when a fill is left out.",
		"Run back in, the same volumes come back: read it from below.",
	}
	if trip.Strokes != "" {
		remarks = append(remarks, "No strokes: "+trip.Strokes+".")
	} else {
		remarks = append(remarks, "strokes: of the first kind of pump, at the efficiency entered.")
	}
	return remarks
}

// tripFindings are the findings on the trip beyond limits met.
func (p *printer) tripFindings(i int) part {
	keys := []string{"us_trip_fill", "us_trip_stands", "trip_tank", "pulling_speed", "trip_in_speed", "gel_break", "trip_margin"}
	return p.beyondMet("Findings on the trip", i, func(f calc.Finding) bool { return slices.Contains(keys, f.Key) })
}
