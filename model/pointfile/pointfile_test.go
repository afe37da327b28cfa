package pointfile_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model/pointfile"
	"borewalk/model/quantity"
)

// read reads a list in m3 and bar where nothing else is said.
func read(text string) (pointfile.Test, error) {
	return pointfile.Read("points.csv", []byte(text), quantity.System{})
}

// written writes readings as a test expects them, in m3 and bar, with how many are left out.
func written(test pointfile.Test) string {
	var list []string
	for _, p := range test.Points {
		list = append(list, fmt.Sprintf("%.4f %.3f", p.Volume.SI, p.Pressure.SI/1e5))
	}
	if test.LeftOut > 0 {
		list = append(list, fmt.Sprintf("%d left out", test.LeftOut))
	}
	return strings.Join(list, "; ")
}

func TestReadsWhatSheetsGive(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"commas", "0,0\n0.05,12\n0.1,24.5\n", "0.0000 0.000; 0.0500 12.000; 0.1000 24.500"},
		{"semicolons and decimal commas", "0,05;12\n0,1;24,5\n", "0.0500 12.000; 0.1000 24.500"},
		{"tabs", "0.05\t12\t\n0.1\t24,5\n", "0.0500 12.000; 0.1000 24.500"},
		{"a heading", "Volume,Pressure\n0.05,12\n", "0.0500 12.000"},
		{"a heading with its units", "volume (bbl), pressure (psi)\n0.25,100\n", "0.0397 6.895"},
		{"one unit in the heading", "Pumped [L];Pump pressure\n50;12\n", "0.0500 12.000"},
		{"units with digits", "V (ft3),p (kg/cm2)\n10,1\n", "0.2832 0.981"},
		{"units below a stroke", "V/m3\tp/kPa\n0.05\t1200\n", "0.0500 12.000"},
		{"gauge pressures", "bbl,psig\n0.25,100\n", "0.0397 6.895"},
		{"units in the cells", "0.25 bbl,100 psi\n0.05,12 bar\n", "0.0397 6.895; 0.0500 12.000"},
		{"byte order mark, CRLF, blanks, remarks", "\ufeff# test at the shoe\r\n 0.05 , 12 ,, \r\n\r\n,,\r\n0.1,24\r\n", "0.0500 12.000; 0.1000 24.000"},
		{"columns the other way round", "pressure,volume\n12,0.05\n", "0.0500 12.000"},
		{"units the other way round", "bar\tm3\n12\t0.05\n", "0.0500 12.000"},
		{"a time", "time;volume;pressure\n10:32;0,05;12\n10:33:00;0,1;24,5\n", "0.0500 12.000; 0.1000 24.500"},
		{"a time with units", "Time (min),Pressure (psi),Volume pumped (bbl)\n0,100,0.25\n", "0.0397 6.895"},
		{"a time by its unit", "m3,bar,min\n0.05,12,1\n", "0.0500 12.000"},
		{"a time blank", "m3,bar,time\n0.05,12,10:32\n0.1,24,\n", "0.0500 12.000; 0.1000 24.000"},
		{"a time of pumping", "time pumped (min),Vol. (L),Press. (bar)\n1,50,12\n", "0.0500 12.000"},
		{"rates and remarks", "volume (L),rate (bbl/min),pressure (bar),remark\n50,0.5,12,air\n100,0.5,24\n", "0.0500 12.000; 0.1000 24.000"},
		{"the pump stopped", "0.05,12\n0.1,24\n0.1,20\n0.1,19\n", "0.0500 12.000; 0.1000 24.000; 2 left out"},
		{"pressure that stands and then falls", "0.05,12\n0.1,24\n0.1,24\n0.1,19\n0.1,19.5\n", "0.0500 12.000; 0.1000 24.000; 3 left out"},
		{"bled back", "time,volume,pressure\n0,0.1,24\n1,0.1,20\n2,0.06,3\n3,0.05,0\n", "0.1000 24.000; 3 left out"},
	} {
		points, err := read(c.text)
		if got := written(points); err != nil || got != c.want {
			t.Errorf("%s: %q, %v, want %q", c.name, got, err, c.want)
		}
	}
}

func TestSaysWhatIsWrongAndWhere(t *testing.T) {
	var many strings.Builder
	for k := range pointfile.MaxPoints + 1 {
		fmt.Fprintf(&many, "%d L,1\n", k)
	}
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", "points.csv: there is no reading in it; write one a line: volume and pressure"},
		{"a heading alone", "volume,pressure\n", "there is no reading in it"},
		{"no number", "0.05,12\n0.1,high\n", `points.csv:2: pressure "high":`},
		{"no volume", ",12\n", "points.csv:1: the volume is blank"},
		{"no pressure", "0.05;12\n0.1; ;x\n", "points.csv:2: 3 columns without headings; head them, such as time, volume, pressure"},
		{"a blank pressure", "0.05,12\n0.1,\n", "points.csv:2: one column; write volume and pressure"},
		{"a title", "At the shoe\n0.05,12\n", "points.csv:1: one column; write volume and pressure, and # before a remark"},
		{"decimal commas between commas", "0,05,12\n", "3 columns without headings; head them, such as time, volume, pressure; separate them by semicolons if the comma is decimal"},
		{"a volume twice", "0.05,12\n#\n0.05,12\n", "points.csv:3: volume 0.05 m3 does not rise over the 0.05 m3 of line 1, and the pressure does not fall"},
		{"a volume twice on the way", "0.05,12\n0.05,11\n0.1,24\n", "points.csv:3: volume 0.1 m3 rises again after the pump had stopped in line 2"},
		{"a pressure that rises after the pump stopped", "0.05,12\n0.05,11\n0.05,13\n", "points.csv:3: volume 0.05 m3 does not rise over the 0.05 m3 of line 1"},
		{"a volume that falls", "10 L,12\n0.009,14\n", "points.csv:2: volume 0.009 m3 does not rise over the 10 L of line 1"},
		{"another unit", "50,12\n250,40\n", `points.csv:2: volume "250": 250 m3 is outside the range; allowed is 0 m3 to 200 m3`},
		{"a pressure below none", "0.05,-3\n", `points.csv:1: pressure "-3": -3 bar is outside the range; allowed is 0 bar to 1500 bar`},
		{"a unit of another kind", "0.05,12 sg\n", `points.csv:1: pressure "12 sg"`},
		{"two readings", "0.05;1,200\n", `points.csv:1: pressure "1,200":`},
		{"three columns without headings", "0;0.05;12\n1;0.1;24\n", "points.csv:1: 3 columns without headings"},
		{"more columns than headings", "time,volume,pressure\n1,0,05,12\n", "points.csv:2: 4 columns below 3 headings; separate them by semicolons"},
		{"a time alone beside pressure", "time,pressure\n1,12\n", `points.csv:1: no heading says which column is the volume; head one "volume"`},
		{"strokes beside time", "time,strokes,bar\n1,40,12\n", `head one "volume"`},
		{"two pressures", "m3,pump pressure,casing pressure\n0.05,12,11\n", `headings "pump pressure" and "casing pressure": both say pressure`},
		{"a pressure blank below headings", "time,m3,bar\n1,0.05\n", "points.csv:2: the pressure is blank"},
		{"absolute pressures beside time", "time,m3,pressure (psia)\n1,0.05,100\n", "psia counts from a vacuum"},
		{"strokes", "strokes,bar\n12,5\n", `points.csv:1: heading "strokes"`},
		{"millipascals", "m3,p in mPa\n0.05,12\n", `points.csv:1: heading "p in mPa"`},
		{"absolute pressures", "m3,psia\n0.05,100\n", "psia counts from a vacuum"},
		{"absolute pressures in words", "m3,bar abs.\n0.05,100\n", "give gauge pressures"},
		{"units nobody knows", "V (hl),p (bar)\n0.5,12\n", `points.csv:1: heading "V (hl)": unknown unit "hl"`},
		{"two units", "V (m3),psi or bar\n0.5,12\n", `heading "psi or bar" names psi and bar`},
		{"not text", "0.05,\xff12\n", "is not UTF-8"},
		{"too large", strings.Repeat("#", pointfile.MaxSize+1), "points.csv: more than 64 kB; a list of readings is shorter"},
		{"too many", many.String(), "points.csv:501: more than 500 readings"},
		{"control characters", "0.05,\x1b[2J\n", `pressure "\x1b[2J"`},
	} {
		points, err := read(c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.ContainsAny(err.Error(), "\n\x1b") {
			t.Errorf("%s: %v, %v, want an error with %q on one line", c.name, points, err, c.want)
		}
	}
}

func TestOpen(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "points.csv")
	if err := os.WriteFile(path, []byte("0.25,100\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if points, err := pointfile.Open(path, quantity.NewSystem(quantity.Field, nil)); err != nil || written(points) != "0.0397 6.895" {
		t.Errorf("%v, %v", points, err)
	}
	for path, want := range map[string]string{filepath.Join(dir, "none.csv"): "there is no such file", dir: "is a folder; name the list of readings"} {
		if _, err := pointfile.Open(path, quantity.System{}); err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// TestWhatIsWrittenReadsBack: whatever separates the columns, whichever the decimal sign, and wherever the units stand.
func TestWhatIsWrittenReadsBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		form := rapid.SampledFrom([]struct{ comma, point string }{{",", "."}, {";", ","}, {";", "."}, {"\t", ","}}).Draw(rt, "form")
		volume := rapid.SampledFrom([]quantity.Unit{quantity.CubicMetre, quantity.Barrel, quantity.Litre}).Draw(rt, "volume unit")
		pressure := rapid.SampledFrom([]quantity.Unit{quantity.Bar, quantity.PSI, quantity.Kilopascal}).Draw(rt, "pressure unit")
		shown := quantity.NewSystem(quantity.SI, nil)
		var text strings.Builder
		if rapid.Bool().Draw(rt, "heading") {
			text.WriteString("Volume (" + volume.ASCII() + ")" + form.comma + "Pressure (" + pressure.ASCII() + ")\n")
		} else {
			shown = shown.With(quantity.Volume, volume).With(quantity.Pressure, pressure)
		}
		var want []pointfile.Point
		hundredths := 0
		for range rapid.IntRange(1, 60).Draw(rt, "readings") {
			hundredths += rapid.IntRange(1, 60).Draw(rt, "more")
			cells := [2]string{}
			var values [2]quantity.Value
			for k, n := range []int{hundredths, rapid.IntRange(0, 150000).Draw(rt, "pressure")} {
				cells[k] = fmt.Sprintf("%d%s%02d", n/100, form.point, n%100)
				v, err := quantity.Parse(cells[k], []quantity.Kind{quantity.Volume, quantity.Pressure}[k], []quantity.Unit{volume, pressure}[k])
				if err != nil {
					rt.Fatal(err)
				}
				values[k] = v
			}
			want = append(want, pointfile.Point{Volume: values[0], Pressure: values[1]})
			text.WriteString(cells[0] + form.comma + cells[1] + "\n")
		}
		got, err := pointfile.Read("list", []byte(text.String()), shown)
		if err != nil || !reflect.DeepEqual(got, pointfile.Test{Points: want}) {
			rt.Errorf("read %+v, %v\nwant %+v\nfrom %q", got, err, want, text.String())
		}
	})
}

// FuzzRead holds what is read to the bounds of a reading, and the error to one line that cannot drive a terminal.
func FuzzRead(f *testing.F) {
	for _, text := range []string{"0,0\n0.05,12\n", "volume (bbl);pressure (psig)\n0,25;100\n", "V/m3\tp/kg/cm2\n1\t2\t\n", "\"0,1,12", "#\n,,,\n", "\ufeff1,2", "psia,mPa\n", "time;volume;pressure\n10:32;0,1;5\n10:33;0,1;4\n",
		"\xff\xfe1\x00", "1\x00,\x002\x00", "1,2\r3,4\r", "1,2.0\r\n3,4.5", "a,b (\x1b[2J\u202e)\n1,2.5\n", "1;NaN\n", "1;1e308 m\n", "1;inf\n", "\"\"\"\"\"", "(((((,[[[[[\n1,2.5\n"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		test, err := pointfile.Read("list", src, quantity.System{})
		points := test.Points
		if err != nil {
			if len(points) > 0 || test.LeftOut > 0 || strings.ContainsFunc(err.Error(), func(r rune) bool { return r < ' ' || r == 0x7f }) {
				t.Errorf("%d readings, %q", len(points), err)
			}
			return
		}
		if len(points) == 0 || test.LeftOut < 0 || len(points)+test.LeftOut > pointfile.MaxPoints {
			t.Errorf("%d readings and %d left out", len(points), test.LeftOut)
		}
		for k, p := range points {
			if !(p.Volume.SI >= 0 && p.Volume.SI <= 200) || !(p.Pressure.SI >= 0 && p.Pressure.SI <= 1500e5) || k > 0 && !(p.Volume.SI > points[k-1].Volume.SI) {
				t.Errorf("reading %d: %+v", k+1, p)
			}
		}
	})
}
