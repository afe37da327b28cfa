package calc

import (
	"fmt"

	"borewalk/calc/column"
	"borewalk/calc/trajectory"
	"borewalk/model"
)

// window holds the pressure prognosis on true vertical depth from RKB, in equivalent density from RKB.
type window struct {
	pore, fracture column.Curve
	stability      column.Curve
	hasStability   bool
	depths         []float64 // of the rows
	missing        gap
}

// WindowPoint is one depth of the prognosis: TVD from RKB in m, equivalent densities from RKB in kg/m3. Stability is
// zero where there is none.
type WindowPoint struct {
	TVD, Pore, Fracture, Stability float64
}

// nearSeabed is how far in m the first row may stand above the mudline before it is asked about: rows are rounded.
const nearSeabed = 1

// toRKB turns a depth of the prognosis or of a formation top into TVD from RKB. This is the only place where depth
// references are converted.
func (e *evaluation) toRKB(depth float64) float64 {
	switch e.plan.Prognosis.DepthFrom {
	case model.FromMSL:
		return depth + e.datum.MSL
	case model.FromMudline:
		return depth + e.datum.Mudline
	}
	return depth
}

// emwFromRKB turns an equivalent density of the prognosis at a TVD from RKB into one reckoned from RKB: the pressure is
// the same, the column is longer by the air gap.
func (e *evaluation) emwFromRKB(emw, tvd float64) float64 {
	if e.plan.Prognosis.DensityFrom == model.FromMSL && tvd > 0 {
		return emw * (tvd - e.datum.MSL) / tvd
	}
	return emw
}

func (e *evaluation) readWindow() {
	w := &e.window
	w.missing = e.gaps.mudline
	rows := e.plan.Window
	if w.missing.open() {
		return
	}
	pore := make([]column.Row, 0, len(rows))
	fracture := make([]column.Row, 0, len(rows))
	var stability []column.Row
	for i, r := range rows {
		if !r.Depth.IsSet() && !r.Pore.IsSet() && !r.Fracture.IsSet() {
			e.note(-1, Caution, gap{model.Path(fmt.Sprintf("prognosis.row[%d].depth", i+1)), fmt.Sprintf("prognosis row %d is blank and does not count", i+1)})
			continue
		}
		if g := e.rowGap(i, r); g.open() {
			w.missing = g
			e.fault(g)
			return
		}
		tvd := e.toRKB(r.Depth.SI)
		w.depths = append(w.depths, tvd)
		pore = append(pore, column.Row{TVD: tvd, Value: e.emwFromRKB(r.Pore.SI, tvd)})
		fracture = append(fracture, column.Row{TVD: tvd, Value: e.emwFromRKB(r.Fracture.SI, tvd)})
		if r.Stability.IsSet() {
			stability = append(stability, column.Row{TVD: tvd, Value: e.emwFromRKB(r.Stability.SI, tvd)})
		}
	}
	if len(w.depths) < 2 {
		w.missing = gap{"prognosis.row", "the pressure prognosis needs two rows or more"}
		return
	}
	if w.depths[0] < e.datum.Mudline-nearSeabed {
		e.note(-1, Caution, gap{"prognosis.row[1].depth", "the prognosis begins above the seabed: did it stay when the seabed moved?"})
	}
	var err error
	if w.pore, err = column.NewCurve(pore); err == nil {
		w.fracture, err = column.NewCurve(fracture)
	}
	if err != nil {
		w.missing = gap{"prognosis.row[1].depth", err.Error()}
		e.fault(w.missing)
		return
	}
	if len(stability) > 1 {
		w.stability, err = column.NewCurve(stability)
		w.hasStability = err == nil
	}
}

func (e *evaluation) rowGap(i int, r model.WindowRow) gap {
	path := func(key string) model.Path { return model.Path(fmt.Sprintf("prognosis.row[%d].%s", i+1, key)) }
	row := fmt.Sprintf("prognosis row %d", i+1)
	switch {
	case !r.Depth.IsSet():
		return gap{path("depth"), row + ": its depth is blank"}
	case !r.Pore.IsSet():
		return gap{path("pore"), row + ": its pore pressure is blank"}
	case !r.Fracture.IsSet():
		return gap{path("fracture"), row + ": its fracture pressure is blank"}
	case r.Fracture.SI < r.Pore.SI:
		return gap{path("fracture"), row + ": fracture pressure is below pore pressure"}
	case i > 0 && r.Depth.SI <= e.plan.Window[i-1].Depth.SI:
		return gap{path("depth"), row + " is not below the row before it"}
	}
	return gap{}
}

// windowPoints returns the prognosis for a plot.
func (e *evaluation) windowPoints() []WindowPoint {
	if e.window.missing.open() {
		return nil
	}
	points := make([]WindowPoint, len(e.window.depths))
	for i, tvd := range e.window.depths {
		points[i].TVD = tvd
		points[i].Pore, _ = e.window.pore.At(tvd)
		points[i].Fracture, _ = e.window.fracture.At(tvd)
		if e.window.hasStability {
			points[i].Stability, _ = e.window.stability.At(tvd)
		}
	}
	return points
}

// readPath makes the well path from the plan's trajectory.
func (e *evaluation) readPath() {
	t := e.plan.Trajectory
	e.path = trajectory.Vertical()
	var err error
	switch t.Method {
	case model.BuildAndHold:
		for _, f := range []struct {
			key string
			set bool
		}{{"kick_off", t.KickOff.IsSet()}, {"build_rate", t.BuildRate.IsSet()}, {"inclination", t.Inclination.IsSet()}} {
			if !f.set {
				e.pathGap = gap{model.Path("trajectory." + f.key), "the build-and-hold path is incomplete"}
				e.fault(e.pathGap)
				return
			}
		}
		e.path, err = trajectory.BuildAndHold(t.KickOff.SI, t.BuildRate.SI, t.Inclination.SI, t.Azimuth.SI)
	case model.SurveyList:
		stations := make([]trajectory.Station, len(e.plan.Surveys))
		for i, s := range e.plan.Surveys {
			stations[i] = trajectory.Station{MD: s.Depth.SI, Inclination: s.Inclination.SI, Azimuth: s.Azimuth.SI}
		}
		e.path, err = trajectory.New(stations)
	}
	if err != nil {
		e.pathGap = gap{"trajectory.method", err.Error()}
		e.fault(e.pathGap)
		e.path = trajectory.Vertical()
	}
}
