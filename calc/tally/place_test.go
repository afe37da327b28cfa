package tally

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// host is a placement with couplings 12 m apart and the shoe at 1000 m.
func host() Placement {
	return Placement{
		Couplings: []float64{900, 912, 924, 888}, Parts: []Part{{"packer", 3, 4}, {"slips", 5, 5}}, Distance: 2,
		HostShoe: 1000, LeastLap: 90, MostLap: 105, Wanted: 905,
	}
}

func TestPlace(t *testing.T) {
	// Tops from 895 to 910. The coupling at 900 forbids 894 to 899 for the packer and
	// 893 to 897 for the slips; 912 forbids 906 to 911 and 905 to 909. Plain arithmetic.
	got, err := Place(host())
	if err != nil || !slices.Equal(got.Allowed, []Stretch{{899, 905}}) || got.Range != (Stretch{895, 910}) {
		t.Errorf("%+v, %v, want 899 to 905 m", got, err)
	}
	bans := []Ban{{Stretch{893, 897}, 900, 1}, {Stretch{894, 899}, 900, 0}, {Stretch{905, 909}, 912, 1}, {Stretch{906, 911}, 912, 0}}
	if !slices.Equal(got.Bans, bans) {
		t.Errorf("bans %+v, want %+v", got.Bans, bans)
	}
	if !got.Found || got.Nearest != 905 || got.Lap != 95 {
		t.Errorf("nearest %v m, lap %v m, want 905, which is allowed, and 95", got.Nearest, got.Lap)
	}
	p := host()
	p.Wanted = 908
	if got, _ := Place(p); got.Nearest != 905 {
		t.Errorf("nearest to 908 m is %v, want 905", got.Nearest)
	}
	p.LeastLap, p.MostLap = 92, 94
	if got, err := Place(p); err != nil || got.Found || len(got.Allowed) != 0 || got.Lap != 0 {
		t.Errorf("between two couplings' bans: %+v, %v, want no place", got, err)
	}
	p.LeastLap, p.MostLap = 97, 97
	if got, _ := Place(p); !slices.Equal(got.Allowed, []Stretch{{903, 903}}) {
		t.Errorf("a range of one depth: %+v, want 903", got)
	}
	p = Placement{Couplings: []float64{500}, Parts: []Part{{"slips", 0, 0}}, Distance: 2, HostShoe: 600, LeastLap: 50, MostLap: 150, Wanted: 500}
	if got, _ := Place(p); got.Nearest != 498 || len(got.Allowed) != 2 {
		t.Errorf("of two places equally near: %+v, want the upper, 498", got)
	}
	p.Couplings = []float64{500, 504}
	if got, _ := Place(p); !slices.Equal(got.Allowed, []Stretch{{450, 498}, {502, 502}, {506, 550}}) {
		t.Errorf("between two bans that meet: %+v, want the point 502 too", got.Allowed)
	}
	p.Distance = 0
	if got, _ := Place(p); got.Nearest != 500 || len(got.Bans) != 0 {
		t.Errorf("with no distance to keep: %+v, want 500", got)
	}
	p.Couplings = nil
	if got, _ := Place(p); len(got.Allowed) != 1 || got.Allowed[0] != got.Range {
		t.Errorf("without couplings: %+v, want the whole range", got)
	}
	if c, err := Clearances(p, 500); err != nil || c != nil {
		t.Errorf("clearances without couplings: %+v, %v", c, err)
	}
}

func TestClearances(t *testing.T) {
	got, err := Clearances(host(), 906)
	want := []Clearance{{0, 909, 910, 912, 2, true}, {1, 911, 911, 912, 1, false}}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("%+v, %v, want %+v", got, err, want)
	}
	if got, _ := Clearances(host(), 908.5); got[0].Distance != -0.5 || got[0].Kept {
		t.Errorf("packer across a coupling: %+v, want 0.5 m into it", got[0])
	}
}

func TestPlacementsThatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		edit func(*Placement)
		want string
	}{
		{func(p *Placement) { p.HostShoe = nan }, "host shoe"},
		{func(p *Placement) { p.Wanted = nan }, "wanted liner top"},
		{func(p *Placement) { p.LeastLap = 120 }, "lap from 120 to 105 m"},
		{func(p *Placement) { p.LeastLap = -1 }, "lap from -1"},
		{func(p *Placement) { p.MostLap = nan }, "lap"},
		{func(p *Placement) { p.MostLap = math.Inf(1) }, "lap"},
		{func(p *Placement) { p.Distance = nan }, "distance"},
		{func(p *Placement) { p.Distance = -2 }, "distance from couplings -2 m"},
		{func(p *Placement) { p.Couplings[1] = nan }, "coupling 2"},
		{func(p *Placement) { p.Couplings = make([]float64, mostRows+1) }, "couplings"},
		{func(p *Placement) { p.Parts[1].From = 6 }, `part 2, "slips": from 6 to 5 m`},
		{func(p *Placement) { p.Parts[0].To = nan }, "part 1"},
	} {
		p := host()
		c.edit(&p)
		for _, err := range []error{errOf(Place(p)), errOf(Clearances(p, 905))} {
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("says %v, want %q", err, c.want)
			}
		}
	}
	if _, err := Clearances(host(), nan); err == nil {
		t.Error("a liner top that is no number was taken")
	}
}

func errOf[T any](_ T, err error) error { return err }

// Every point of an allowed stretch keeps the distance, every other point of the
// range does not, and each ban is forbidden where it says.
func TestAllowedIsWhatKeepsTheDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Placement{Distance: rapid.Float64Range(0, 4).Draw(t, "distance"), HostShoe: 1000, MostLap: rapid.Float64Range(20, 120).Draw(t, "most lap")}
		p.LeastLap = p.MostLap - rapid.Float64Range(0, 20).Draw(t, "range")
		p.Wanted = rapid.Float64Range(850, 1000).Draw(t, "wanted")
		at := 850.0
		for at < 1000 {
			at += rapid.Float64Range(1, 15).Draw(t, "joint")
			p.Couplings = append(p.Couplings, at)
		}
		for range rapid.IntRange(0, 3).Draw(t, "parts") {
			from := rapid.Float64Range(0, 15).Draw(t, "from")
			p.Parts = append(p.Parts, Part{"", from, from + rapid.Float64Range(0, 2).Draw(t, "length")})
		}
		got, err := Place(p)
		if err != nil {
			t.Fatal(err)
		}
		// distance returns how far the part that is nearest to a coupling is from it.
		distance := func(top float64) float64 {
			d := math.Inf(1)
			for _, part := range p.Parts {
				for _, c := range p.Couplings {
					d = min(d, max(top+part.From-c, c-top-part.To))
				}
			}
			return d
		}
		const rounding = 1e-9
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		last := got.Range.Top
		forbidden := func(from, to float64) {
			if at := from + share*(to-from); at > from+rounding && at < to-rounding && distance(at) >= p.Distance {
				t.Fatalf("%v m keeps %v m and is not allowed: %+v", at, distance(at), got.Allowed)
			}
		}
		for _, s := range got.Allowed {
			if s.Bottom < s.Top || s.Top < last {
				t.Fatalf("stretches out of order: %+v", got.Allowed)
			}
			for _, at := range []float64{s.Top, s.Top + share*(s.Bottom-s.Top), s.Bottom} {
				if distance(at) < p.Distance-rounding {
					t.Fatalf("%v m keeps only %v m: %+v", at, distance(at), got.Allowed)
				}
				if math.Abs(at-p.Wanted) < math.Abs(got.Nearest-p.Wanted)-rounding {
					t.Fatalf("%v m is nearer to %v m than %v", at, p.Wanted, got.Nearest)
				}
			}
			forbidden(last, s.Top)
			last = s.Bottom
		}
		forbidden(last, got.Range.Bottom)
		if got.Found != (len(got.Allowed) > 0) {
			t.Fatalf("found %v in %+v", got.Found, got.Allowed)
		}
		if got.Found && distance(got.Nearest) < p.Distance-rounding {
			t.Fatalf("nearest %v m keeps only %v m", got.Nearest, distance(got.Nearest))
		}
		for _, b := range got.Bans {
			part := p.Parts[b.Part]
			for _, top := range []float64{b.Top, b.Bottom} {
				if d := max(top+part.From-b.Coupling, b.Coupling-top-part.To); math.Abs(d-p.Distance) > rounding {
					t.Fatalf("ban %+v ends %v m from its coupling", b, d)
				}
			}
		}
		c, err := Clearances(p, got.Nearest)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range c {
			if got.Found && !c.Kept {
				t.Fatalf("at %v m the clearance is %+v", got.Nearest, c)
			}
		}
	})
}
