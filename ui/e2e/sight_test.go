//go:build !windows

package e2e_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"borewalk/ui/ptytest"
)

// look is one screen of a walk through the program: what is typed to get there, and what tells that it is there.
type look struct{ keys, shows string }

// looks are pages and overlays in an order in which each follows from the one before.
var looks = []look{
	{"]]", "section 3 of 5"},
	{ptytest.Down, "Returns to"},
	{"\t\t", "[MUD]"},
	{ptytest.Down + "1.3 psi", "psi is a unit of pressure"},
	{ptytest.Esc, "given up"},
	{"+", "not saved"},
	{"u", "undid"},
	{"v", "w working"},
	{"v", "left right pictures"},
	{"v", "MUD"},
	{"f", "Findings"},
	{"q", "tab page"},
	{"?", "Help"},
	{"q", "tab page"},
	{"\t\t\t", "[CEMENT]"},
	{"P", "Pumped"},
	{"q", "tab page"},
	{"\t", "[CONTROL]"},
	{"E", "emergency disconnect"},
	{"q", "tab page"},
	{"W", "n p step"},
	{"q", "tab page"},
	{"T", "Trials of section 3"},
	{"q", "tab page"},
	{"H", "HANDOVER"},
	{"q", "tab page"},
	{"C", "What changed"},
	{"q", "tab page"},
	{"S", "ctrl u empties"},
	{ptytest.CtrlC, "tab page"},
}

// walkAround goes through the looks, and calls see at each.
func walkAround(t *testing.T, s *ptytest.Session, see func(look)) {
	t.Helper()
	s.Wait("? help")
	for _, l := range looks {
		s.Type(l.keys)
		s.Wait(l.shows)
		see(l)
	}
	s.Type("q")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
}

var colouring = regexp.MustCompile(`\x1b\[([0-9;]*)m`)

// TestEveryTerminalShowsItAll: pages and overlays in colour, without, in ASCII, small and large. Colours are the basic ones, as accents on
// the terminal's own background: no background is set, nothing is blue, bright, white or bold.
func TestEveryTerminalShowsItAll(t *testing.T) {
	for _, test := range []struct {
		name          string
		environment   []string
		arguments     []string
		colour, ascii bool
	}{
		{"256 colours", nil, nil, true, false},
		{"16 colours", []string{"TERM=xterm-16color"}, nil, true, false},
		{"console", []string{"TERM=linux"}, nil, true, false},
		{"NO_COLOR", []string{"NO_COLOR=1"}, nil, false, false},
		{"screen", []string{"TERM=screen"}, nil, false, false},
		{"vt100", []string{"TERM=vt100", "LANG=C"}, nil, false, true},
		{"no colour by flag", nil, []string{"-no-colour"}, false, false},
		{"ASCII by flag", nil, []string{"-ascii"}, true, true},
		{"ASCII by locale", []string{"LANG=C"}, nil, true, true},
	} {
		for _, size := range [][2]int{{80, 24}, {140, 40}} {
			t.Run(test.name, func(t *testing.T) {
				t.Parallel()
				s := begin(t, size[0], size[1], test.environment, test.arguments...)
				walkAround(t, s, func(l look) {
					screen := s.Screen()
					if at := strings.IndexFunc(screen, func(r rune) bool { return r > 126 }); test.ascii && at >= 0 {
						t.Errorf("after %q not ASCII: %q\n%s", l.keys, []rune(screen[at:])[0], screen)
					}
				})
				used := map[string]bool{}
				for _, match := range colouring.FindAllStringSubmatch(string(s.Output()), -1) {
					for _, code := range strings.Split(match[1], ";") {
						used[code] = true
					}
				}
				for _, code := range []string{"", "0", "4", "7", "31", "32", "33", "35", "36"} {
					delete(used, code)
				}
				if len(used) > 0 {
					t.Errorf("looks that are not wanted: %v", used)
				}
				if got := strings.Contains(string(s.Output()), "\x1b[36m"); got != test.colour {
					t.Errorf("colour %v, want %v", got, test.colour)
				}
				for _, mouse := range []string{"?1000h", "?1002h", "?1003h", "?1006h"} {
					if strings.Contains(string(s.Output()), mouse) {
						t.Errorf("the mouse is taken from the terminal by %q", mouse)
					}
				}
			})
		}
	}
}

// TestALightBackgroundIsSentTheSame: what the environment says of the terminal's background changes no byte of a walk, and nobody is asked
// for it. The looks are seen on both, since no background is set and text has the terminal's own colour.
func TestALightBackgroundIsSentTheSame(t *testing.T) {
	t.Parallel()
	walk := func(background string) (sent []string) {
		s := begin(t, 80, 24, []string{"COLORFGBG=" + background})
		s.Wait("? help")
		for _, l := range []look{{"", "? help"}, {"]]", "section 3 of 5"}, {ptytest.Down + ptytest.Down, "Hole size, opened"}, {"1", "[1|]"}, {"x", "unknown unit"}, {ptytest.Esc, "given up"}, {"f", "Findings"}} {
			s.Type(l.keys)
			s.Wait(l.shows)
			s.Settle(200 * time.Millisecond)
			sent = append(sent, s.Screen())
		}
		if asked := s.Queries(); len(asked) > 0 {
			t.Errorf("asks the terminal %q", asked)
		}
		return append(sent, strings.Join(looksOf(s), " "), string(s.FirstOutput()))
	}
	if dark, light := walk("15;0"), walk("0;15"); !slices.Equal(dark, light) {
		t.Errorf("on a dark background\n%q\non a light one\n%q", dark, light)
	}
}

// looksOf returns the looks that a session set, each once, in order.
func looksOf(s *ptytest.Session) (looks []string) {
	for _, match := range colouring.FindAllStringSubmatch(string(s.Output()), -1) {
		looks = append(looks, match[1])
	}
	slices.Sort(looks)
	return slices.Compact(looks)
}

// TestWidthsAreTheSameInEveryLocale: where Chinese, Japanese or Korean is written, lines, signs and what is typed stand as elsewhere.
func TestWidthsAreTheSameInEveryLocale(t *testing.T) {
	t.Parallel()
	typed := append(slices.Clone(looks), look{"N" + ptytest.Down, "New plan"}, look{ptytest.CtrlC, "tab page"},
		look{"S" + ptytest.CtrlU + "½°·Ø×─│█ well" + ptytest.Left + ptytest.Left + "x", "wex|ll"})
	walk := func(locale string, see func(i int, s *ptytest.Session)) {
		s := begin(t, 80, 24, []string{"LANG=" + locale})
		s.Wait("? help")
		for i, l := range typed {
			s.Type(l.keys)
			s.Wait(l.shows)
			see(i, s)
		}
	}
	var want []string
	walk("C.UTF-8", func(_ int, s *ptytest.Session) {
		s.Settle(100 * time.Millisecond)
		want = append(want, s.Screen())
	})
	for _, locale := range []string{"ja_JP.UTF-8", "zh_CN.UTF-8", "ko_KR.UTF-8"} {
		walk(locale, func(i int, s *ptytest.Session) {
			s.WaitFor("the screen that C.UTF-8 has:\n"+want[i], func(screen string) bool { return screen == want[i] })
		})
	}
}

// TestPastedTextIsOneEditAndNoCommand through the terminal.
func TestPastedTextIsOneEditAndNoCommand(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	s.Type("]]")
	s.Wait("section 3 of 5")
	focus(t, s, "Total depth of the bit, along hole")
	s.Type(ptytest.Paste("2085 m"))
	s.Wait("Hole TD: 2155.0 m to 2085.0 m")
	s.Type("u")
	s.WaitGone("not saved")
	s.Type(ptytest.Paste("q\n2100\td"))
	s.Wait("pasted text refused")
	s.Type("q")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
}

// TestATerminalWithoutASizeIsDrawnOnAtOnce as one of 80 columns and 24 lines.
func TestATerminalWithoutASizeIsDrawnOnAtOnce(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{Path: program, NoSize: true, Dir: t.TempDir()})
	s.Wait("? help")
	if lines := strings.Split(strings.TrimRight(s.Screen(), "\n"), "\n"); len(lines) != 24 {
		t.Errorf("%d lines", len(lines))
	}
	s.Type("q")
	s.ExitCode()
}

// TestThreeKeysShowWhatItIsFor: the first screen says what the program is and what to press; the findings, the entry behind the worst, and a
// step of it, make figures and the finding move.
func TestThreeKeysShowWhatItIsFor(t *testing.T) {
	s := begin(t, 80, 24, nil)
	for _, text := range []string{"borewalk plans subsea wells", "demo is a copy", "arrows choose", "? all keys", "f findings"} {
		s.Wait(text)
	}
	s.Type("f")
	s.Wait("Step in stiffness")
	s.Type(ptytest.Enter)
	s.Wait("[STRING]")
	s.Type("+")
	s.Wait("OD: 9 1/2 in to 9 5/8 in")
	s.Wait("+0.235")
	s.Wait("not saved")
	s.Type("u")
	s.WaitGone("not saved")
	s.Type("q")
	s.ExitCode()
}
