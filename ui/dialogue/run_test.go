package dialogue_test

import (
	"errors"
	"io"
	"os"
	"strings"
	"testing"

	"borewalk/plans"
	"borewalk/ui/dialogue"
)

// typist is a keyboard: each read gives the next line or, for an empty one, an end of input, as ctrl+d does.
type typist struct {
	lines []string
	fails error
}

func (k *typist) Read(p []byte) (int, error) {
	if len(k.lines) == 0 {
		if k.fails != nil {
			return 0, k.fails
		}
		return 0, io.EOF
	}
	next := k.lines[0]
	k.lines = k.lines[1:]
	if next == "" {
		return 0, io.EOF
	}
	return copy(p, next), nil
}

func TestHowADialogueEnds(t *testing.T) {
	const edit = "section[3].td = 2160 m\n"
	for _, test := range []struct {
		name     string
		keyboard bool
		lines    []string
		fails    error
		lost     bool
		want     string
	}{
		{"nothing done, the input ends", false, []string{"where\n"}, nil, false, "> \n"},
		{"nothing done, ctrl+d", true, []string{""}, nil, false, "> \n"},
		{"left", true, []string{"quit\n"}, nil, false, "> "},
		{"a script ends with work not saved", false, []string{edit}, nil, true, "changes not saved and lost: 1\nlost: section 3: Total depth of the bit, along hole: 2155 m to 2160 m\n"},
		{"undone", false, []string{edit, "undo\n"}, nil, false, "> \n"},
		{"the last line has no end", false, []string{"section[3].td = 2160 m"}, nil, true, "lost: section 3"},
		{"ctrl+d with work not saved asks", true, []string{edit, "", "3\n", "undo\n", "quit\n"}, nil, false, "still here"},
		{"ctrl+d twice", true, []string{edit, "", ""}, nil, true, "lost: section 3"},
		{"thrown away on purpose", true, []string{edit, "quit\n", "2\n"}, nil, false, "2. quit and lose the changes"},
		{"an end within a question", false, []string{edit, "save\n"}, nil, true, "lost: section 3"},
		{"the terminal is gone", true, []string{edit}, errors.New("input/output error"), true, "lost: section 3"},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := open(t, plans.Default, dialogue.Options{Title: "demo", Script: !test.keyboard})
			err := d.Run(&typist{test.lines, test.fails}, dialogue.Signals{}).Err
			if !errors.Is(err, test.fails) || d.Lost() != test.lost || !strings.Contains(d.out.String(), test.want) {
				t.Errorf("%v, lost %v:\n%s", err, d.Lost(), d.out.String())
			}
		})
	}
}

// TestAnInterrupt asks before something is lost, and gives up a question.
func TestAnInterrupt(t *testing.T) {
	lines, typing := io.Pipe()
	interrupts := make(chan os.Signal)
	edited := make(chan bool)
	d := open(t, plans.Default, dialogue.Options{Title: "demo", Accepted: func() { edited <- true }})
	done := make(chan error)
	go func() { done <- d.Run(lines, dialogue.Signals{Dialogue: interrupts}).Err }()
	typing.Write([]byte("section[3].td = 2160 m\n"))
	<-edited
	interrupts <- os.Interrupt // asks
	interrupts <- os.Interrupt // and not again
	interrupts <- os.Interrupt
	typing.Write([]byte("2\n"))
	if err := <-done; err != nil || d.Lost() {
		t.Error(err, d.Lost())
	}
	got := d.out.String()
	if strings.Count(got, "changes that are not saved") != 2 || !strings.Contains(got, "given up; nothing was changed") {
		t.Error(got)
	}
}

// TestALineIsRepeatedWhereNobodyTypes, without what could drive a terminal, and one too long does no harm.
func TestALineIsRepeatedWhereNobodyTypes(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{Script: true})
	input := "where\n\x1b[2Jwhere\n" + strings.Repeat("x", 100000) + "\nsection 2\n"
	if end := d.Run(strings.NewReader(input), dialogue.Signals{}); end.Err != nil {
		t.Fatal(end.Err)
	}
	got := d.out.String()
	said(t, got)
	for _, want := range []string{"> where\n", "> [2Jwhere\n", "> section 2\nsection 2 of 5"} {
		if !strings.Contains(strings.ReplaceAll(got, ">  ", "> "), want) {
			t.Errorf("no %q in\n%.3000s", want, got)
		}
	}
	if d.Refused() != 2 {
		t.Errorf("%d lines refused", d.Refused())
	}
}
