package ui

import (
	"fmt"
	"slices"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/plot"
)

// charts are those of one page, kept until the plan or the page changes.
type charts struct {
	known   bool
	topic   model.Topic
	section int
	list    []calc.Chart
	bars    []calc.Bar
	single  []calc.Chart // the same, with the kinds of quantity of each by themselves as well
	own     *stringPictures
}

// workCharts works the charts and bars of the page out when they are first drawn, not with each evaluation.
func (p *Planner) workCharts() {
	if c := &p.charts; !c.known || c.topic != p.topic || c.section != p.section {
		*c = charts{known: true, topic: p.topic, section: p.section, list: p.options.Charts(p.plan, p.section, p.topic),
			bars: p.options.Bars(p.plan, p.section, p.topic)}
		for _, chart := range c.list {
			c.single = append(append(c.single, chart), byKind(chart)...)
		}
	}
}

// barsHere returns the bars of the page.
func (p *Planner) barsHere() []calc.Bar {
	p.workCharts()
	return p.charts.bars
}

// chartsHere returns the charts of the page. In a low window, where the panels of a chart are flat, each follows by itself.
func (p *Planner) chartsHere() []calc.Chart {
	p.workCharts()
	if p.flat() {
		return p.charts.single
	}
	return p.charts.list
}

// flat reports whether the window is so low that the panels of a chart show little.
func (p *Planner) flat() bool {
	const high = 24
	return p.rows() < high
}

// byKind returns a chart for each kind of quantity of one that has several and does not run down.
func byKind(chart calc.Chart) (list []calc.Chart) {
	if chart.Down {
		return nil
	}
	for _, c := range chart.Curves {
		at := slices.IndexFunc(list, func(one calc.Chart) bool { return one.Curves[0].Kind == c.Kind })
		if at < 0 {
			one := chart
			one.Title, one.Curves = chart.Title+": "+c.Kind.String(), nil
			at, list = len(list), append(list, one)
		}
		list[at].Curves = append(list[at].Curves, c)
	}
	if len(list) < 2 {
		return nil
	}
	return list
}

// pictures returns how many pictures the third view of the page has: its bars and own drawings, its charts, and the pressure
// window.
func (p *Planner) pictures() int { return p.drawings() + len(p.chartsHere()) + 1 }

// drawings returns how many pictures of the page are no charts; they come before these, the bars first.
func (p *Planner) drawings() int { return len(p.barsHere()) + p.ownPictures() }

// windowAt returns which of the pictures is the pressure window: the last, but where the mud is planned the first.
func (p *Planner) windowAt() int {
	if p.topic == model.TopicMud {
		return 0
	}
	return p.pictures() - 1
}

// pictureAt returns the picture that is shown, from 0.
func (p *Planner) pictureAt() int { return max(0, min(p.chartAt[p.topic], p.pictures()-1)) }

// turnPicture shows another picture of the page.
func (p *Planner) turnPicture(by int) { p.chartAt[p.topic] = p.pictureAt() + by }

// drawPicture draws the picture of the page that is shown.
func (p *Planner) drawPicture(r canvas.Region) {
	n, at := p.pictures(), p.pictureAt()
	page := pageOf(at, n)
	if p.amongPictures() {
		page = "left right  " + page
	}
	bars, own, window := p.barsHere(), p.drawings(), p.windowAt()
	chart := at - own
	if at > window {
		chart--
	}
	switch {
	case at == window:
		p.drawWindow(r, page)
	case at < len(bars):
		plot.DrawBar(r, bars[at], p.barOptions(bars[at], page))
	case at < own:
		p.drawOwn(r, at-len(bars), page)
	default:
		plot.DrawChart(r, p.chartsHere()[chart], p.chartOptions(page))
	}
}

// pageOf says which picture of how many one is, from 0; nothing where there is only one.
func pageOf(at, n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf("%d of %d", at+1, n)
}

// chartOptions says how a chart is drawn in the units shown.
func (p *Planner) chartOptions(page string) plot.ChartOptions {
	return plot.ChartOptions{
		Glyphs: p.glyphs, Page: page,
		Unit: func(k quantity.Kind) string { return p.system.Unit(k).Symbol() },
		Ticks: func(low, high float64, n int, k quantity.Kind) []plot.Tick {
			return plot.RoundTicks(low, high, n, p.system.Unit(k))
		},
		Value: p.amount, Place: p.depthLabel,
	}
}

// barOptions says how a bar is drawn in the units shown.
func (p *Planner) barOptions(b calc.Bar, page string) plot.BarOptions {
	o := p.chartOptions(page)
	return plot.BarOptions{Glyphs: p.glyphs, Page: page, Unit: o.Unit(b.Kind), Value: p.amount, Ticks: o.Ticks}
}

// right goes to the figures, in the table to further columns, or in the third view to the next picture.
func (p *Planner) right() {
	switch {
	case p.amongPictures():
		p.turnPicture(1)
	case p.amongColumns():
		p.moveColumns(1)
	default:
		p.figures = true
	}
}

// left goes to the fields, in the table to the columns before, or in the third view to the picture before.
func (p *Planner) left() {
	switch {
	case p.amongPictures() && !p.figures:
		p.turnPicture(-1)
	case p.amongColumns() && p.column > 0:
		p.moveColumns(-1)
	default:
		p.figures = false
	}
}

// amongColumns reports whether left and right move the columns of the table.
func (p *Planner) amongColumns() bool { return p.view == viewTable && p.figures }

// amongPictures reports whether left and right walk through pictures.
func (p *Planner) amongPictures() bool { return p.view == viewPicture && p.pictures() > 1 }

func (p *Planner) noRight() string {
	switch {
	case p.amongPictures():
		if p.pictureAt() == p.pictures()-1 {
			return "this is the last picture of the page"
		}
	case p.amongColumns():
		if p.column >= p.furtherColumns() {
			return "there is no further column"
		}
	case p.figures:
		return "the figures have the focus already"
	case len(p.figureLines()) == 0:
		return noFigures
	}
	return ""
}

func (p *Planner) noLeft() string {
	switch {
	case p.figures:
	case !p.amongPictures():
		return "the fields have the focus already"
	case p.pictureAt() == 0:
		return "this is the first picture of the page"
	}
	return ""
}
