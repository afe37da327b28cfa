package listfile

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"borewalk/model/quantity"
)

// pups is a sort of list for the tests.
func pups() *Sort {
	return &Sort{Name: "list of pups", Thing: "pup", Columns: "length", Size: 2 << 10, Things: 3, Heads: func(cells []string) bool { return cells[0] == "Length" }}
}

func TestReadsLines(t *testing.T) {
	for _, c := range []struct {
		name, text string
		comma      rune
		heading    string
		want       string
	}{
		{"commas", "1,2\n3,4\n", ',', "", "1:1|2 2:3|4"},
		{"semicolons before all", "1,2;3\t4\n", ';', "", "1:1,2|3\t4"},
		{"tabs before commas", "1,2\t3\n", '\t', "", "1:1,2|3"},
		{"blank columns between tabs", "\t3\n", '\t', "", "1:|3"},
		{"a heading", "Length,No\n1,2\n", ',', "1:Length|No", "2:1|2"},
		{"a heading in the second line", "1\nLength\n", ',', "", "1:1 2:Length"},
		{"blank and padded lines, remarks", "\n# a\n,,\n1,, \n#b\n2\n", ',', "", "4:1 6:2"},
		{"quotes", "\"1,5\",\"a \"\"b\"\"\"\n", ',', "", `1:1,5|a "b"`},
		{"byte order mark and CRLF", "\ufeff1\r\n2\r\n", ',', "", "1:1 2:2"},
	} {
		list, err := pups().Read("pups.csv", []byte(c.text))
		heading := ""
		if list.Heading != nil {
			heading = written(*list.Heading)
		}
		if got := written(list.Rows...); err != nil || got != c.want || heading != c.heading || list.Comma != c.comma {
			t.Errorf("%s: %q below %q by %q, %v", c.name, got, heading, list.Comma, err)
		}
	}
}

func written(rows ...Row) string {
	var list []string
	for _, r := range rows {
		list = append(list, fmt.Sprintf("%d:%s", r.Line, strings.Join(r.Cells, "|")))
	}
	return strings.Join(list, " ")
}

func TestRefusesWhatIsNoList(t *testing.T) {
	for text, want := range map[string]string{
		"":                           "pups.csv: there is no pup in it; write one a line: length",
		"Length\n":                   "pups.csv: there is no pup in it; write one a line: length",
		"1\n2\n#\n3\n4\n":            "pups.csv:5: more than 3 pups; check the file",
		"\xff":                       "pups.csv: is not UTF-8 text; save the sheet as CSV, UTF-8",
		strings.Repeat("#", 2<<10+1): "pups.csv: more than 2 kB; a list of pups is shorter",
	} {
		list, err := pups().Read("pups.csv", []byte(text))
		if err == nil || err.Error() != want || !reflect.DeepEqual(list, List{}) {
			t.Errorf("%.20q: %v, %v, want %s", text, list, err, want)
		}
	}
}

func TestFaultsSayWhere(t *testing.T) {
	list, err := pups().Read("pups.csv", []byte("\n1\n"))
	if err != nil {
		t.Fatal(err)
	}
	cause := errors.New("too long")
	for want, got := range map[string]error{"pups.csv:2: too long": list.Rows[0].Fault(cause), "pups.csv: too long": list.Fault(cause)} {
		if got.Error() != want || !errors.Is(got, cause) {
			t.Errorf("%v, want %s", got, want)
		}
	}
}

func TestHeadings(t *testing.T) {
	length, volume, pressure := UnitsOf(quantity.TallyLength), UnitsOf(quantity.Volume), UnitsOf(quantity.Pressure)
	const shown = quantity.Kilometre // which no heading names
	for _, c := range []struct {
		units   Units
		heading string
		want    quantity.Unit
		fault   string
	}{
		{length, "Length", shown, ""}, {length, "", shown, ""}, {length, "length (ft)", quantity.Foot, ""}, {length, "m", quantity.Metre, ""},
		{length, "Length, in", quantity.Inch, ""}, {length, "length in m", quantity.Metre, ""}, {length, "L/ft", quantity.Foot, ""}, {length, "Length\nft", quantity.Foot, ""},
		{length, "made up [ m ]", quantity.Metre, ""}, {length, "Length (m", quantity.Metre, ""}, {length, "length m (made up)", quantity.Metre, ""},
		{length, "length (m) or ft", 0, "names m and ft"}, {length, "length (made up)", 0, `unknown unit "made up"`}, {length, "length (ft/in)", 0, `unknown unit "ft/in"`},
		{length, "length (yd)", 0, `unknown unit "yd"`}, {length, "length ()", 0, "unit missing"}, {length, "weight, kg", shown, ""}, {length, "weight, tonnes", 0, "t is a unit of mass"},
		{volume, "volume (m3)", quantity.CubicMetre, ""}, {volume, "pumped, cubic metres", 0, "m is a unit of length"}, {volume, "pumped (cubic metres)", quantity.CubicMetre, ""},
		{volume, "V/m³", quantity.CubicMetre, ""}, {volume, "rate, bbl/min", 0, "bbl/min is a unit of flow rate"},
		{pressure, "p (kg/cm2)", quantity.KilogramForcePerSquareCentimetre, ""}, {pressure, "p/kg/cm2", quantity.KilogramForcePerSquareCentimetre, ""},
		{pressure, "p (MPa)", quantity.Megapascal, ""}, {pressure, "p mPa", 0, "takes milli for mega"}, {pressure, strings.Repeat("long", 20), shown, ""},
	} {
		got, err := c.units.Named(c.heading, shown)
		if c.fault != "" {
			if err == nil || !strings.Contains(err.Error(), c.fault) || !strings.HasPrefix(err.Error(), "heading ") {
				t.Errorf("%q: %s, %v, want %s", c.heading, got.ASCII(), err, c.fault)
			}
		} else if err != nil || got != c.want {
			t.Errorf("%q: %s, %v, want %s", c.heading, got.ASCII(), err, c.want.ASCII())
		}
		if !c.units.Heads(c.heading) {
			t.Errorf("%q is no heading", c.heading)
		}
	}
	for _, cell := range []string{"5", "5 m3", "m3 5", "1/2", "3.5bbl", "volume 1 (m3)", "m3/min"} {
		if volume.Heads(cell) {
			t.Errorf("%q is a heading", cell)
		}
	}
}

func TestShort(t *testing.T) {
	long := strings.Repeat("ä", 30)
	for text, want := range map[string]string{"": "", "short": "short", long: strings.Repeat("ä", 20) + "...", "a" + long: "a" + strings.Repeat("ä", 19) + "..."} {
		if got := Short(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
