package jointfile_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/jointfile"
	"borewalk/model/quantity"
)

// read reads a list with lengths in metres where nothing else is said.
func read(text string) ([]model.Joint, error) {
	return jointfile.Read("joints.csv", []byte(text), quantity.Metre)
}

// written writes joints as a test expects them: number, length in m to the millimetre, and an x for a rejected one.
func written(joints []model.Joint) string {
	var list []string
	for _, j := range joints {
		text := fmt.Sprintf("%s %.3f", j.Number, j.Length.SI)
		if j.Rejected == model.JointRejected {
			text += " x"
		}
		list = append(list, text)
	}
	return strings.Join(list, "; ")
}

func TestReadsWhatSheetsGive(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"commas", "1,12.08\n2,12.11\n", "1 12.080; 2 12.110"},
		{"semicolons and decimal commas", "1;12,08\n2;12,11;yes\n", "1 12.080; 2 12.110 x"},
		{"tabs", "A1\t12.08\t\nA2\t12.11\tX\n", "A1 12.080; A2 12.110 x"},
		{"a heading", "Joint,Length,Rejected\n1,12.08,no\n", "1 12.080"},
		{"a heading with its unit", "No;Length (ft);\n1;40\n", "1 12.192"},
		{"units in the cells", "1,39.6 ft\n2,12.11 m\n", "1 12.070; 2 12.110"},
		{"whole feet behind a comma", "1,40 ft\n", "1 12.192"},
		{"one column", "12.08\n12.11\n", " 12.080;  12.110"},
		{"one column with a heading", "length m\n12.08\n", " 12.080"},
		{"byte order mark, CRLF, blanks, remarks", "\ufeff# strapped on deck\r\n 1 , 12.08 ,, \r\n\r\n,,\r\n2,12.11\r\n", "1 12.080; 2 12.110"},
		{"quotes", "\"1\",\"12,08\"\n", "1 12.080"},
	} {
		joints, err := read(c.text)
		if got := written(joints); err != nil || got != c.want {
			t.Errorf("%s: %q, %v, want %q", c.name, got, err, c.want)
		}
	}
}

func TestSaysWhatIsWrongAndWhere(t *testing.T) {
	many := strings.Repeat("12.08\n", jointfile.MaxJoints+1)
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", "joints.csv: there is no joint in it"},
		{"a heading alone", "Joint,Length\n", "there is no joint in it"},
		{"a heading with a unit nobody knows", "No,Length (yd)\n1,12.08\n", `joints.csv:1: heading "Length (yd)": unknown unit "yd"`},
		{"another unit", "1,12.08\n2,39.6\n", `joints.csv:2: length "39.6": 39.6 m is outside the range; allowed is 2 m to 18 m`},
		{"no number", "1,12.08\n2,long\n", `joints.csv:2: length "long":`},
		{"no length", "1,12.08\n2,,yes\n", "joints.csv:2: the length is blank"},
		{"counted twice", "1,12.08\n2,12.11\n1,12.08\n", `joints.csv:3: number "1" stands in line 1 too`},
		{"rejected or not", "1,12.08,perhaps\n", `joints.csv:1: rejected "perhaps": write yes or no`},
		{"too many columns", "1,12.08,no,12.08\n", "joints.csv:1: 4 columns"},
		{"decimal commas between commas", "12,08\n12,11\n", `no length has decimals or a unit`},
		{"decimal commas behind a number", "1,12,08\n", `joints.csv:1: rejected "08"`},
		{"two readings", "1;12,080\n", `joints.csv:1: length "12,080":`},
		{"not text", "1,\xff12.08\n", "is not UTF-8"},
		{"too large", strings.Repeat("#", jointfile.MaxSize+1), "more than 256 kB"},
		{"too many", many, "joints.csv:1001: more than 1000 joints"},
		{"control characters", "1,\x1b[2J\n", `length " [2J"`},
	} {
		joints, err := read(c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.ContainsAny(err.Error(), "\n\x1b") {
			t.Errorf("%s: %v, %v, want an error with %q on one line", c.name, joints, err, c.want)
		}
	}
}

func TestOpen(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "joints.csv")
	if err := os.WriteFile(path, []byte("1,40.05\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if joints, err := jointfile.Open(path, quantity.Foot); err != nil || written(joints) != "1 12.207" {
		t.Errorf("%v, %v", joints, err)
	}
	for path, want := range map[string]string{filepath.Join(dir, "none.csv"): "there is no such file", dir: "is a folder; name the list of joints"} {
		if _, err := jointfile.Open(path, quantity.Metre); err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// TestWhatIsWrittenReadsBack: whatever separates the columns and whichever the decimal sign.
func TestWhatIsWrittenReadsBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		form := rapid.SampledFrom([]struct{ comma, point string }{{",", "."}, {";", ","}, {";", "."}, {"\t", ","}}).Draw(rt, "form")
		unit := rapid.SampledFrom([]quantity.Unit{quantity.Metre, quantity.Foot}).Draw(rt, "unit")
		var want []model.Joint
		var text strings.Builder
		for k := range rapid.IntRange(1, 60).Draw(rt, "joints") {
			hundredths := rapid.IntRange(700, 1799).Draw(rt, "length") // in m or ft
			length := fmt.Sprintf("%d%s%02d", hundredths/100, form.point, hundredths%100)
			v, err := quantity.Parse(length, quantity.TallyLength, unit)
			if err != nil {
				rt.Fatal(err)
			}
			j := model.Joint{Number: fmt.Sprint("C-", k), Length: v, Rejected: rapid.SampledFrom([]string{model.JointSound, model.JointRejected}).Draw(rt, "rejected")}
			want = append(want, j)
			text.WriteString(j.Number + form.comma + length + form.comma + j.Rejected + "\n")
		}
		got, err := jointfile.Read("list", []byte(text.String()), unit)
		if err != nil || !reflect.DeepEqual(got, want) {
			rt.Errorf("read %+v, %v\nwant %+v\nfrom %q", got, err, want, text.String())
		}
	})
}

// FuzzRead holds what is read to the bounds of a joint, and the error to one line that cannot drive a terminal.
func FuzzRead(f *testing.F) {
	for _, text := range []string{"1,12.08\n", "Joint;Length (ft)\n1;40,05;x\n", "a\t12\t\n", "\"1,12.08", "#\n,,,\n", "\ufeff12.08",
		"\xff\xfe1\x00", "1\x00,\x002\x00", "1,2\r3,4\r", "1,2.0\r\n3,4.5", "a,b (\x1b[2J\u202e)\n1,2.5\n", "1;NaN\n", "1;1e308 m\n", "1;inf\n", "\"\"\"\"\"", "(((((,[[[[[\n1,2.5\n"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		joints, err := jointfile.Read("list", src, quantity.Metre)
		if err != nil {
			if len(joints) > 0 || strings.ContainsFunc(err.Error(), func(r rune) bool { return r < ' ' || r == 0x7f }) {
				t.Errorf("%d joints, %q", len(joints), err)
			}
			return
		}
		if len(joints) == 0 || len(joints) > jointfile.MaxJoints {
			t.Errorf("%d joints", len(joints))
		}
		for _, j := range joints {
			if !(j.Length.SI >= 2 && j.Length.SI <= 18) || model.Clean(j.Number) != j.Number || (j.Rejected != model.JointSound && j.Rejected != model.JointRejected) {
				t.Errorf("joint %+v", j)
			}
		}
	})
}
