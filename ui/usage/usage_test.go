package usage

import (
	"flag"
	"strings"
	"testing"
)

// Every option stands once, below its heading or the last one, and no line is wider than a terminal.
func TestEveryOptionStandsOnce(t *testing.T) {
	f := flag.NewFlagSet("x", flag.ContinueOnError)
	f.Bool("short", false, "what it does")
	f.String("named", "", "a `thing` "+strings.Repeat("with many words ", 20))
	f.Int("a-very-long-name-indeed", 0, "a `number`")
	var out strings.Builder
	Write(f, &out, "x [options]\n", []Group{{Title: "First", Names: []string{"short"}}})
	text := out.String()
	for _, option := range []string{"\n  -short ", "\n  -named THING ", "\n  -a-very-long-name-indeed NUMBER\n"} {
		if strings.Count(text, option) != 1 {
			t.Errorf("%q stands %d times", option, strings.Count(text, option))
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if len(line) > 78 {
			t.Errorf("%d columns: %s", len(line), line)
		}
	}
	if first, further := strings.Index(text, "\nFirst:"), strings.Index(text, "\nFurther:"); first < 0 || further < first || strings.Index(text, "-named") < further {
		t.Errorf("the headings stand wrong:\n%s", text)
	}
}
