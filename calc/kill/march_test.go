package kill

import (
	"math"
	"testing"

	"borewalk/calc/friction"
	"borewalk/calc/gas"
)

// A marcher works out the same well another way: in slices of half a metre from the bit upwards, first as much mud as has
// been pumped, then gas until its mass is used up, then mud. It knows no parcels, no steps and no state.
type marcher struct {
	j            *Job
	mass, inside float64
}

const slice = 0.5 // m; every depth of the well is a multiple

// hole returns the area in m² beside a depth, and the friction of a fluid there in Pa/m at a flow in all.
func (r marcher) hole(md float64, f friction.Fluid, flow float64) (area, loss float64) {
	l := &r.j.Layout
	if md < l.Return.MD {
		lines, rub := float64(max(l.Return.Lines, 1)), l.Return.Rub
		if rub == 0 {
			rub = 1
		}
		span, _ := l.Return.Line.At(md)
		area = lines * math.Pi / 4 * span.Diameter * span.Diameter
		if flow > 0 && l.Friction != nil {
			loss = rub * l.Friction.Pipe(f, flow/lines, span.Diameter)
		}
		return area, loss
	}
	span, _ := l.Bore.At(md)
	for _, b := range l.String {
		if md >= b.Top && md < b.Bottom {
			area = math.Pi / 4 * (span.Diameter*span.Diameter - b.OD*b.OD)
			if flow > 0 && l.Friction != nil {
				loss = l.Friction.Annulus(f, flow, span.Diameter, b.OD)
			}
		}
	}
	return area, loss
}

// density returns that of the gas.
func (r marcher) density(t *testing.T, md, pressure float64) float64 {
	t.Helper()
	k := &r.j.Kick
	at := gas.State{Pressure: pressure + 101325, Temperature: k.Temperature(md)}
	if md < r.j.Layout.Return.MD {
		at.Temperature = k.LineTemperature(md)
	}
	density, err := k.Gas.Density(at)
	if err != nil {
		t.Fatal(err)
	}
	return density
}

// weigh returns the mass of the kick from its volume when the well is shut in.
func (r marcher) weigh(t *testing.T, foot float64) (mass float64) {
	pressure, left := foot, r.j.Kick.Volume
	end := r.j.Layout.String[len(r.j.Layout.String)-1].Bottom
	for i := 0; left > 0; i++ {
		md := end - slice*(float64(i)+0.5)
		area, _ := r.hole(md, friction.Fluid{}, 0)
		density := r.density(t, md, pressure)
		volume := min(area*slice, left)
		mass += density * volume
		left -= volume
		pressure -= density * gravity * r.rise(md)
	}
	return mass
}

// rise returns the true vertical height in m of a slice.
func (r marcher) rise(md float64) float64 {
	return r.j.Layout.TVD(md+slice/2) - r.j.Layout.TVD(md-slice/2)
}

// A reading is what the march finds.
type reading struct {
	choke, volume, mass float64
	at                  []float64
}

// march walks up from the bit with a volume pumped.
func (r marcher) march(t *testing.T, foot, pumped float64) reading {
	t.Helper()
	j := r.j
	old, kill := j.Mud, j.KillMud
	heavy := 0.0 // m³ of kill mud in the annulus
	if j.OneCirculation {
		heavy = max(pumped-r.inside, 0)
	}
	end := j.Layout.String[len(j.Layout.String)-1].Bottom
	read := reading{at: make([]float64, len(j.Places))}
	pressure, below, left := foot, pumped, r.mass
	for i := range int(math.Round(end / slice)) {
		md := end - slice*(float64(i)+0.5)
		area, _ := r.hole(md, old, 0)
		dp, room := 0.0, area*slice
		fill := func(f friction.Fluid, volume float64) {
			_, loss := r.hole(md, f, j.Flow)
			share := volume / (area * slice)
			dp += share * (loss*slice + f.Density*gravity*r.rise(md))
			room -= volume
		}
		mud := min(below, room)
		below -= mud
		dense := min(heavy, mud)
		heavy -= dense
		fill(kill, dense)
		fill(old, mud-dense)
		if room > 0 && left > 0 {
			light := r.density(t, md, pressure)
			volume := min(room, left/light)
			left -= volume * light
			read.volume += volume
			fill(friction.Newton(light, 2e-5), volume)
		}
		fill(old, room)
		for k, place := range j.Places {
			if math.Abs(md+slice/2-place) < slice/4 {
				read.at[k] = pressure
			}
		}
		pressure -= dp
	}
	read.choke, read.mass = pressure, r.mass-left
	return read
}

// TestAgainstTheMarch in one circulation and in two, with one line and with two.
func TestAgainstTheMarch(t *testing.T) {
	for _, c := range []struct {
		parcels     int
		one         bool
		lines       int
		rub, within float64
	}{{0, false, 1, 1, 0.002}, {0, true, 2, 1.2, 0.002}, {60, true, 1, 1.2, 0.0005}} {
		j := subsea(t)
		j.Parcels, j.OneCirculation, j.Layout.Return.Lines, j.Layout.Return.Rub = c.parcels, c.one, c.lines, c.rub
		j.Overbalance, j.Steps = 3e6, 30 // so that the choke holds all the time
		s, list := run(t, j)
		j.KillMud.Density = s.KillDensity
		r := marcher{j: &j, inside: 3900*square(4.276, 0) + 150*square(3, 0) + 150*square(2.8125, 0)}
		r.mass = r.weigh(t, j.Kick.Formation)
		about(t, "mass of the kick", s.Mass, r.mass, 0.001*r.mass)
		worst := 0.0
		off := func(what string, m Moment, got, want, of float64) {
			worst = max(worst, math.Abs(got-want)/of)
			if !(math.Abs(got-want) <= c.within*of) {
				t.Errorf("%+v, %.3f m³ pumped: %s %v, by the march %v", c, m.Pumped, what, got, want)
			}
		}
		for _, m := range list {
			if m.Stage != First || m.Pumped > s.GasOut {
				continue
			}
			want := r.march(t, j.Kick.Formation+j.Overbalance, m.Pumped)
			off("choke", m, m.Choke, want.choke, s.Choke.Value)
			off("gas", m, m.GasVolume, want.volume, s.Gas.Value)
			off("mass", m, m.MassIn, want.mass, s.Mass)
			for i := range j.Places {
				off("place", m, m.At[i], want.at[i], want.at[i])
			}
			if m.Mark == GasAtChoke {
				off("highest choke", m, s.Choke.Value, want.choke, want.choke)
			}
		}
		t.Logf("%+v: at most %.3f %% off", c, 100*worst)
	}
}
