package planlock

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"borewalk/model/process"
)

// Owner is who has a plan open, as the lock's file says. Its texts come from outside.
type Owner struct {
	Token string // of this one opening
	process.ID
	User  string
	Name  string // as it stands in the plan's log; may be blank
	Since time.Time
}

// most is the size in bytes that a lock's file does not pass.
const most = 8192

const (
	first = "borewalk lock 1" // the format's name
	last  = "end"             // without it the file was not written to its end
)

// entry is a line of a lock's file.
type entry struct{ key, text string }

func (o *Owner) entries() []entry {
	return []entry{
		{"token", o.Token}, {"process", strconv.Itoa(o.Pid)}, {"began", o.Began}, {"host", o.Host}, {"machine", o.Machine},
		{"boot", o.Boot}, {"space", o.Space}, {"user", o.User}, {"name", o.Name}, {"since", o.Since.UTC().Format(time.RFC3339)},
	}
}

// text writes the lock's file.
func (o *Owner) text() []byte {
	var b bytes.Buffer
	fmt.Fprintln(&b, first)
	for _, e := range o.entries() {
		fmt.Fprintf(&b, "%s = %q\n", e.key, short(e.text))
	}
	fmt.Fprintln(&b, last)
	return b.Bytes()
}

// short cuts a text so that the lock's file stays small.
func short(text string) string {
	const longest = 60
	if runes := []rune(text); len(runes) > longest {
		return string(runes[:longest])
	}
	return text
}

// parse reads a lock's file. What is not whole, or of another format, is an error.
func parse(text []byte) (Owner, error) {
	var o Owner
	lines := strings.Split(string(text), "\n")
	if len(text) > most || len(lines) < 3 || lines[0] != first || lines[len(lines)-2] != last || lines[len(lines)-1] != "" {
		return o, errors.New("the lock's file is not whole")
	}
	got := map[string]string{}
	for i, line := range lines[1 : len(lines)-2] {
		key, quoted, _ := strings.Cut(line, " = ")
		text, err := strconv.Unquote(quoted)
		if err != nil {
			return o, fmt.Errorf("the lock's file, line %d: not understood", i+2)
		}
		got[key] = text
	}
	for _, e := range o.entries() {
		if _, ok := got[e.key]; !ok {
			return o, fmt.Errorf("the lock's file: %s is missing", e.key)
		}
	}
	var err error
	if o.Pid, err = strconv.Atoi(got["process"]); err != nil || o.Pid <= 0 {
		return Owner{}, errors.New("the lock's file: process is no number of one")
	}
	if o.Since, err = time.Parse(time.RFC3339, got["since"]); err != nil {
		return Owner{}, errors.New("the lock's file: since is no time")
	}
	if o.Token = got["token"]; o.Token == "" {
		return Owner{}, errors.New("the lock's file: token is blank")
	}
	o.Began, o.Host, o.Machine, o.Boot, o.Space = got["began"], got["host"], got["machine"], got["boot"], got["space"]
	o.User, o.Name = got["user"], got["name"]
	return o, nil
}
