package catalogue

import (
	"math"
	"os"
	"strings"
	"testing"
)

// openTestTable opens a CSV file of testdata.
func openTestTable(t *testing.T, file string, columns ...string) *table {
	t.Helper()
	text, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	return openTable(file, string(text), columns...)
}

// near reports whether two figures differ by no more than a tolerance, with a
// little room for the arithmetic of units.
func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance+1e-9*(1+math.Abs(want))
}

// TestAllTablesLoad reads every embedded file, which panics on a bad one.
func TestAllTablesLoad(t *testing.T) {
	for _, c := range []struct {
		what      string
		got, want int
	}{
		{"casing rows", len(casingRows()), 376},
		{"drill pipe rows", len(drillPipes()), 86},
		{"heavy-weight rows", len(heavyWeights()), 7},
		{"collar rows", len(collars()), 150},
		{"bit rows", len(bits()), 38},
		{"risers", len(Risers()), 6},
		{"lines", len(Lines()), 9},
		{"stack bores", len(StackBores()), 1},
		{"source rows", len(sourceNotes()), 26},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d, want %d", c.what, c.got, c.want)
		}
	}
}

func TestTableFaults(t *testing.T) {
	read := func(text string) error {
		tab := openTable("x.csv", text, "name", "size", "kind")
		for tab.next() {
			tab.word("name")
			tab.amount("size", inch)
			tab.choice("kind", "a", "b")
		}
		return tab.err
	}
	if err := read("name,size,kind\nx,1.5,a\n"); err != nil {
		t.Errorf("a sound table: %v", err)
	}
	for _, c := range []struct{ what, text, want string }{
		{"no text", "", "no heading line"},
		{"other heading", "name,kind,size\n", "heading is"},
		{"short row", "name,size,kind\nx,1\n", "wrong number of fields"},
		{"stray quote", "name,size,kind\nx\",1,a\n", "bare \""},
		{"no name", "name,size,kind\n,1,a\n", `line 2, column "name"`},
		{"no number", "name,size,kind\nx,1,a\nx,1/2,a\n", `line 3, column "size": "1/2", want a number above zero`},
		{"not a number", "name,size,kind\nx,NaN,a\n", `column "size"`},
		{"endless", "name,size,kind\nx,Inf,a\n", `column "size"`},
		{"nought", "name,size,kind\nx,0,a\n", `column "size"`},
		{"negative", "name,size,kind\nx,-1,a\n", `column "size"`},
		{"other kind", "name,size,kind\nx,1,c\n", `want one of ["a" "b"]`},
	} {
		err := read(c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.what, err, c.want)
		}
	}
}

func TestTableUnknownColumn(t *testing.T) {
	tab := openTable("x.csv", "name\nx\n", "name")
	tab.next()
	if tab.text("size"); tab.err == nil {
		t.Error("text of a column that is not there: no error")
	}
}

// A file that does not parse stops the program with a named fault.
func TestBadFilePanics(t *testing.T) {
	for _, file := range []string{"bits.csv", "missing.csv"} {
		func() {
			defer func() {
				fault, _ := recover().(string)
				if !strings.HasPrefix(fault, "catalogue: internal error: ") {
					t.Errorf("%s: panic %q, want an internal error", file, fault)
				}
			}()
			loadOnce(file, parseCasing)()
		}()
	}
}

// FuzzParse feeds any text to the readers: they answer with rows of sound
// numbers or with an error.
func FuzzParse(f *testing.F) {
	for _, file := range []string{"casing.csv", "bits.csv", "collars.csv"} {
		text, err := data.ReadFile("data/" + file)
		if err != nil {
			f.Fatal(err)
		}
		lines := strings.SplitAfter(string(text), "\n")
		f.Add(strings.Join(lines[:3], ""))
	}
	f.Fuzz(func(t *testing.T, text string) {
		sound := func(values ...float64) {
			for _, v := range values {
				if !(v >= 0) || math.IsInf(v, 0) {
					t.Errorf("a value of %g from %q", v, text)
				}
			}
		}
		if rows, err := parseCasing("fuzz", text); err == nil {
			for _, c := range rows {
				sound(c.OD, c.Wall, c.ID, c.Drift, c.NominalWeight, c.Yield, c.Collapse, c.Burst, c.BodyYield)
			}
		}
		if rows, err := parseBit("fuzz", text); err == nil {
			for _, b := range rows {
				sound(b.Size, b.Oversize, b.Undersize)
			}
		}
		if rows, err := parseCollar("fuzz", text); err == nil {
			for _, c := range rows {
				sound(c.OD, c.ID, c.Weight, c.Capacity, c.Displacement)
			}
		}
	})
}
