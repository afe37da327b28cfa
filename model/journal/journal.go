// Package journal keeps the changes of a plan that are not saved yet, against a crash, a kill and a flat battery.
//
// A journal is a plan's file as a save would write it, with comment lines at its head that say whose it is: renamed, it can be opened
// like any other. A [Keeper] writes it, whole or not at all, a moment after each change, and removes it when nothing is unsaved any
// more; [Find] finds those that a run of the program left behind. It lies beside the plan, hidden, or in the program's state folder
// where that folder takes no file or the plan has none yet. The name says which process wrote it, so that two never share one.
package journal

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/planfile"
	"borewalk/model/process"
	"borewalk/model/tomldoc"
)

// head is what stands before the plan.
type head struct {
	Plan    string `toml:"plan"`  // the file that the plan is saved to, whole; empty for none
	Title   string `toml:"title"` // what the plan is called while it has no file
	Written string `toml:"written"`
	Who     string `toml:"who"`
	Host    string `toml:"host"`
	Pid     int    `toml:"process"`
	Born    string `toml:"process_began"`
	Machine string `toml:"machine"`
	Boot    string `toml:"boot"`
	Space   string `toml:"space"`
	Typing  string `toml:"typing"` // the path of the entry that was being typed; empty for none
	Text    string `toml:"typed"`

	FromSize int    `toml:"opened_size"`   // of the file that the plan was made from, 0 and empty for none
	FromHash string `toml:"opened_sha256"` // in hex, as the others

	Pending int    `toml:"unsaved_log_rows"` // how many rows at the end of the log no save has written
	Size    int    `toml:"size"`             // of the plan that follows, in bytes
	Hash    string `toml:"sha256"`
}

// A journal begins with the line first; each line of the head begins with mark, and the line last ends it.
const (
	named = "# Changes to a borewalk plan that were not saved, journal "
	first = named + "1. Renamed, this file can be opened as a plan.\n"
	mark  = "#| "
	last  = "#| .\n"
)

// Bounds of what is read; a head has some hundred bytes.
const (
	mostHead = 64 << 10
	mostSize = mostHead + tomldoc.MaxSize
)

// ErrNewer says that a journal was written by a newer program, for which it is left where it lies.
var ErrNewer = errors.New("it was written by a newer program; use that")

// encode puts a journal together.
func encode(h head, body []byte) ([]byte, error) {
	h.Size, h.Hash = len(body), hash(body)
	for _, text := range []*string{&h.Plan, &h.Title, &h.Who, &h.Host, &h.Text} {
		*text = strings.ToValidUTF8(*text, "?") // a file's name may be no text
	}
	var lines bytes.Buffer
	if err := toml.NewEncoder(&lines).Encode(h); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString(first)
	for line := range strings.Lines(lines.String()) {
		b.WriteString(mark + line)
	}
	b.WriteString(last)
	b.Write(body)
	return b.Bytes(), nil
}

// decode takes a journal apart. Whatever the bytes are, what it returns is whole or an error of one line.
func decode(src []byte) (h head, body []byte, err error) {
	rest, ok := bytes.CutPrefix(src, []byte(first))
	switch {
	case !ok && bytes.HasPrefix(src, []byte(named)):
		return h, nil, ErrNewer
	case !ok:
		return h, nil, errors.New("it does not begin as a journal does")
	}
	top, body, ok := bytes.Cut(rest, []byte(last))
	if !ok || len(top) > mostHead {
		return h, nil, errors.New("its head does not end")
	}
	var lines strings.Builder
	for line := range strings.Lines(string(top)) {
		text, ok := strings.CutPrefix(line, mark)
		if !ok {
			return h, nil, errors.New("its head is torn")
		}
		lines.WriteString(text)
	}
	if _, err := toml.Decode(lines.String(), &h); err != nil {
		return h, nil, errors.New("its head cannot be read")
	}
	if h.Size != len(body) || h.Hash != hash(body) {
		return h, nil, fmt.Errorf("it holds %d bytes that are not the %d that were written", len(body), h.Size)
	}
	return h, body, nil
}

// process returns the process that wrote a journal. A head may lack some of its marks: then it counts as one of another computer.
func (h *head) process() process.ID {
	return process.ID{Pid: h.Pid, Began: h.Born, Host: h.Host, Machine: h.Machine, Boot: h.Boot, Space: h.Space}
}

func hash(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// Found is a journal that a run of the program left behind.
type Found struct {
	At      string         // the journal itself
	Plan    string         // the file of the plan that it is about; empty for none
	Title   string         // what the plan was called while it had no file
	Who     string         // empty when nobody was named
	Written string         // when, as RFC 3339; as it stands there, since clocks may be wrong
	Process process.ID     // that wrote it
	File    *planfile.File // with the plan as it was then
	Pending int            // how many rows at the end of its log no save has written
	Typing  model.Path     // of the entry that was being typed; empty for none
	Typed   string         // what had been typed of it

	fromSize int
	fromHash string
}

// Read reads a journal. The error is one line that names it.
func Read(path string) (*Found, error) {
	src, err := infile.Read(path, "journal", mostSize)
	if err != nil {
		return nil, err
	}
	h, body, err := decode(src)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	file, err := planfile.Read(path, body)
	if err != nil {
		line, _, _ := strings.Cut(err.Error(), "\n")
		return nil, errors.New(line)
	}
	file.Notices = nil // what was not understood was noticed when the plan was opened
	return &Found{
		At: path, Plan: h.Plan, Title: model.Clean(h.Title), Who: model.Clean(h.Who), Written: model.Clean(h.Written),
		Process: h.process(), File: file, Pending: max(0, min(h.Pending, len(file.Plan.Log))),
		Typing: model.Path(h.Typing), Typed: model.Clean(h.Text), fromSize: h.FromSize, fromHash: h.FromHash,
	}, nil
}

// When returns when the journal was written, in UTC, as it is read: "2026-03-01 06:00". What is no time stays as it is.
func (f *Found) When() string {
	t, err := time.Parse(time.RFC3339, f.Written)
	if err != nil {
		return f.Written
	}
	return t.UTC().Format("2006-01-02 15:04")
}

// Same reports whether a text is that of the file that the plan was made from, when the journal was begun.
func (f *Found) Same(text []byte) bool {
	return f.fromSize == len(text) && f.fromHash == from(text)
}

// from is the hash of the file that a plan was made from; empty for none.
func from(text []byte) string {
	if len(text) == 0 {
		return ""
	}
	return hash(text)
}

// More reports whether the journal holds anything that a plan does not: a journal may be all in the plan's file when its process ended
// between saving and clearing up.
func (f *Found) More(plan *model.Plan) bool {
	if f.Typing != "" || len(f.File.Plan.Log) != len(plan.Log) || model.Hash(f.File.Plan) != model.Hash(plan) {
		return true
	}
	for i, row := range f.File.Plan.Log {
		if other := plan.Log[i]; row.What != other.What || row.Path != other.Path || row.New != other.New || row.Why != other.Why {
			return true
		}
	}
	return false
}
