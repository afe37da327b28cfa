package terminal

import (
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"
)

// variables reads an environment written as "A=1 B=2".
func variables(text string) func(string) string {
	return func(name string) string {
		for _, field := range strings.Fields(text) {
			if value, found := strings.CutPrefix(field, name+"="); found {
				return value
			}
		}
		return ""
	}
}

func TestColours(t *testing.T) {
	for _, c := range []struct {
		env, goos string
		want      int
		reason    string
	}{
		{"TERM=xterm-256color", "linux", 16, `TERM="xterm-256color"`},
		{"TERM=xterm", "linux", 16, `TERM="xterm"`},
		{"TERM=linux", "linux", 16, `TERM="linux"`},
		{"TERM=screen-256color", "linux", 16, `TERM="screen-256color"`},
		{"TERM=screen.xterm-256color", "linux", 16, `TERM="screen.xterm-256color"`},
		{"TERM=tmux", "linux", 16, `TERM="tmux"`},
		{"TERM=tmux-256color", "darwin", 16, `TERM="tmux-256color"`},
		{"TERM=rxvt-unicode", "linux", 16, `TERM="rxvt-unicode"`},
		{"TERM=screen", "linux", 0, `TERM="screen"`},
		{"TERM=vt100", "linux", 0, `TERM="vt100"`},
		{"TERM=vt102", "linux", 0, `TERM="vt102"`},
		{"TERM=vt220", "linux", 0, `TERM="vt220"`},
		{"TERM=vt525", "linux", 16, `TERM="vt525"`},
		{"TERM=dumb", "linux", 0, `TERM="dumb"`},
		{"TERM=xterm-mono", "linux", 0, `TERM="xterm-mono"`},
		{"TERM=ansi-m", "linux", 0, `TERM="ansi-m"`},
		{"", "linux", 0, "TERM is not set"},
		{"", "windows", 16, "the Windows console"},
		{"TERM=dumb", "windows", 0, `TERM="dumb"`},
		{"TERM=xterm-256color NO_COLOR=1", "linux", 0, `NO_COLOR="1"`},
		{"TERM=xterm-256color NO_COLOR=0", "linux", 0, `NO_COLOR="0"`},
		{"TERM=xterm-256color NO_COLOR=", "linux", 16, `TERM="xterm-256color"`},
		{"NO_COLOR=yes", "windows", 0, `NO_COLOR="yes"`},
	} {
		got := Look(variables(c.env), c.goos)
		if got.Colours != c.want || got.ColourReason != c.reason {
			t.Errorf("Look(%q, %q) = %d colours by %s, want %d by %s",
				c.env, c.goos, got.Colours, got.ColourReason, c.want, c.reason)
		}
	}
}

// TestPlaces: what has a cursor to place, and what is not known, gets the full screen.
func TestPlaces(t *testing.T) {
	for name, want := range map[string]bool{"dumb": false, "unknown": false, "dialup": false, "lpr": false, "": true, "xterm-256color": true,
		"screen": true, "vt100": true, "linux": true, "dumber": true} {
		if got := Places(name); got != want {
			t.Errorf("%q: %v, want %v", name, got, want)
		}
	}
}

func TestASCII(t *testing.T) {
	for _, c := range []struct {
		env, goos string
		want      bool
		reason    string
	}{
		{"LANG=en_GB.UTF-8", "linux", false, `LANG="en_GB.UTF-8"`},
		{"LANG=C.utf8", "linux", false, `LANG="C.utf8"`},
		{"LANG=nb_NO.UTF-8@nynorsk", "linux", false, `LANG="nb_NO.UTF-8@nynorsk"`},
		{"LC_CTYPE=UTF-8", "darwin", false, `LC_CTYPE="UTF-8"`},
		{"LANG=C", "linux", true, `LANG="C"`},
		{"LANG=POSIX", "linux", true, `LANG="POSIX"`},
		{"LANG=en_GB", "linux", true, `LANG="en_GB"`},
		{"LANG=de_DE.ISO-8859-1", "linux", true, `LANG="de_DE.ISO-8859-1"`},
		{"LANG=de_DE@euro", "linux", true, `LANG="de_DE@euro"`},
		{"", "linux", true, "no locale is set"},
		{"LANG=C", "windows", false, "the Windows console"},
		{"LANG=en_GB.UTF-8 LC_CTYPE=C", "linux", true, `LC_CTYPE="C"`},
		{"LANG=C LC_CTYPE=en_GB.UTF-8", "linux", false, `LC_CTYPE="en_GB.UTF-8"`},
		{"LANG=C LC_CTYPE=C LC_ALL=C.UTF-8", "linux", false, `LC_ALL="C.UTF-8"`},
		{"LANG=C.UTF-8 LC_ALL=", "linux", false, `LANG="C.UTF-8"`},
	} {
		got := Look(variables(c.env), c.goos)
		if got.ASCII != c.want || got.LetterReason != c.reason {
			t.Errorf("Look(%q, %q) = ASCII %v by %s, want %v by %s",
				c.env, c.goos, got.ASCII, got.LetterReason, c.want, c.reason)
		}
	}
}

func TestSize(t *testing.T) {
	for _, c := range [][4]int{{0, 0, 80, 24}, {-1, -1, 80, 24}, {132, 43, 132, 43}, {0, 30, 80, 30}, {20, 0, 20, 24}, {1, 1, 1, 1}} {
		if w, h := Size(c[0], c[1]); w != c[2] || h != c[3] {
			t.Errorf("Size(%d, %d) = %d, %d, want %d, %d", c[0], c[1], w, h, c[2], c[3])
		}
	}
}

func TestNarrowAmbiguous(t *testing.T) {
	const ambiguous = "\u2500\u2502\u2588\u2591\u00b0\u00b2\u00bd\u00b7\u00d8\u00b1\u00d7"
	defer func() { runewidth.EastAsianWidth, runewidth.DefaultCondition.EastAsianWidth = false, false }()
	runewidth.EastAsianWidth, runewidth.DefaultCondition.EastAsianWidth = true, true
	if got := runewidth.StringWidth(ambiguous); got <= 11 {
		t.Fatalf("width in an East Asian locale = %d, want more than 11", got)
	}
	NarrowAmbiguous()
	if got, want := runewidth.StringWidth(ambiguous), 11; got != want {
		t.Errorf("width = %d, want %d", got, want)
	}
	if got, want := runewidth.NewCondition().StringWidth(ambiguous), 11; got != want {
		t.Errorf("width by a new condition = %d, want %d", got, want)
	}
}
