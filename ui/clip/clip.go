// Package clip hands text to whoever works at the terminal: to the terminal's clipboard, by a sequence that most terminals know and
// none confirms, and to a file, which can always be looked at.
//
// [Text] says from which plan a text was copied, [Sequence] makes what is written to the terminal, [Keep] writes the file.
package clip

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/aymanbagabas/go-osc52/v2"

	"borewalk/model"
	"borewalk/model/statefolder"
)

// Standing is what is said under whatever is copied.
const Standing = "Planning aid: verify by independent calculation."

// Text sets lines as they are copied: plain, each in its place, with the plan and the hour that they are from.
func Text(lines []string, plan *model.Plan, when time.Time) string {
	name := plan.Well.Name
	if name == "" {
		name = "unnamed well"
	}
	if plan.Well.Revision != "" {
		name += ", revision " + plan.Well.Revision
	}
	from := fmt.Sprintf("From %s, plan hash %s, copied %s.", name, model.Hash(plan)[:8], when.Format("2006-01-02 15:04 -07:00"))
	var b strings.Builder
	for _, l := range append(append([]string(nil), lines...), from, Standing) {
		b.WriteString(model.Clean(l) + "\n")
	}
	return b.String()
}

// longest is the longest text that is sent, in bytes. Terminals take sequences of about 100000 bytes and drop longer ones without a
// word (common practice, from memory); three bytes of text are four of a sequence.
const longest = 74994 / 4 * 3

// ErrTooLong says that a text is longer than terminals take.
var ErrTooLong = errors.New("too long for a terminal's clipboard")

// Sequence returns what sets the terminal's clipboard when it is written to it (OSC 52), wrapped so that tmux or GNU screen, which
// env tells of, passes it on. The error is ErrTooLong.
//
// tmux passes on either a wrapped sequence or a bare one, as it is set, so that it gets both.
func Sequence(text string, env func(string) string) (string, error) {
	if len(text) > longest {
		return "", fmt.Errorf("%w: %d bytes, and they take %d", ErrTooLong, len(text), longest)
	}
	s := osc52.New(text)
	switch multiplexer(env) {
	case "tmux":
		return s.String() + s.Tmux().String(), nil
	case "screen":
		return s.Screen().String(), nil
	}
	return s.String(), nil
}

// multiplexer returns what stands between the program and its terminal: tmux, screen or nothing.
func multiplexer(env func(string) string) string {
	term := env("TERM")
	switch {
	case env("TMUX") != "" || strings.HasPrefix(term, "tmux"):
		return "tmux"
	case env("STY") != "" || strings.HasPrefix(term, "screen"):
		return "screen"
	}
	return ""
}

// Keep writes a text to a file and returns its path: in the state folder, always the same file, else in the folder for temporary
// files, a new one. Only its owner may read it. The error says why there is neither.
func Keep(text string, env func(string) string, goos string) (string, error) {
	folder, err := statefolder.Path(env, goos)
	if err == nil {
		if err = os.MkdirAll(folder, 0o700); err == nil {
			path := filepath.Join(folder, "copied.txt")
			if err = replace(path, text); err == nil {
				return path, nil
			}
		}
	}
	path, again := fresh(os.TempDir(), text)
	if again != nil {
		return "", fmt.Errorf("not written to a file: %w; %w", err, again)
	}
	return path, nil
}

// replace writes a file as a whole: who reads it meanwhile has the old one.
func replace(path, text string) error {
	next, err := fresh(filepath.Dir(path), text)
	if err != nil {
		return err
	}
	if err := os.Rename(next, path); err != nil {
		return errors.Join(err, os.Remove(next))
	}
	return nil
}

// fresh writes a file of a name that is not taken, so that nobody who shares the folder can have laid one there.
func fresh(folder, text string) (string, error) {
	f, err := os.CreateTemp(folder, "borewalk-copied-*.txt")
	if err != nil {
		return "", err
	}
	_, err = f.WriteString(text)
	if err := errors.Join(err, f.Close()); err != nil {
		return "", errors.Join(err, os.Remove(f.Name()))
	}
	return f.Name(), nil
}
