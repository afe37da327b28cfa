package tomldoc

import (
	"bytes"
	"fmt"
	"testing"
)

// survey writes a plan with n survey stations.
func survey(n int) []byte {
	var b bytes.Buffer
	b.WriteString("borewalk = 1\n\n[well]\nname = \"Ottermast-2\"\n")
	for i := range n {
		fmt.Fprintf(&b, "\n[[survey]]\nmd = \"%d m\"\ninc = \"%d.5 deg\"\nazi = \"12 deg\"\n", 30*i, i%90)
	}
	return b.Bytes()
}

func surveySchema() schema {
	return schema{
		values: []string{"borewalk"},
		tables: []schema{{name: "well", values: []string{"name"}}},
		lists:  []schema{{name: "survey", values: []string{"md", "inc", "azi"}}},
	}
}

func BenchmarkParse(b *testing.B) {
	src := survey(100_000)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("plan.toml", src); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRewrite(b *testing.B) {
	d, err := Parse("plan.toml", survey(100_000))
	if err != nil {
		b.Fatal(err)
	}
	w := wantOf(d.Root(), surveySchema())
	rows := w.Lists[0].Rows
	rows[10], rows[20] = rows[20], rows[10]
	rows[30].Values[0].Text = `"1 ft"`
	b.ReportAllocs()
	for b.Loop() {
		if _, err := d.Rewrite(w); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParsePlan(b *testing.B) {
	src := survey(20)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("plan.toml", src); err != nil {
			b.Fatal(err)
		}
	}
}
