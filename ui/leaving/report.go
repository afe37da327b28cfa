package leaving

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"borewalk/model"
)

// Reporter writes faults down for who mends the program: the version, and where it was. Of the plan there is nothing but its name.
type Reporter struct {
	Folder  string // of the program's state; empty for none
	Version string
	Plan    string
	Now     func() time.Time
}

// Write writes a fault to a file and returns what to say of it: the file's path, or the report itself where none can be written.
func (r Reporter) Write(fault *Fault) string {
	text := r.text(fault)
	path, err := r.put(text)
	if err != nil {
		return "A fault of the program, of which no report could be written: " + err.Error() + "\n" + text
	}
	return "A fault of the program; the report is " + path
}

// put writes a report to a file of its own in the state folder and returns its path.
func (r Reporter) put(text string) (string, error) {
	if r.Folder == "" {
		return "", errors.New("there is no folder for the state of the program")
	}
	if err := os.MkdirAll(r.Folder, 0o700); err != nil {
		return "", err
	}
	path := filepath.Join(r.Folder, fmt.Sprintf("fault-%s-%d.txt", r.Now().UTC().Format("20060102T150405"), os.Getpid()))
	return path, os.WriteFile(path, []byte(text), 0o600)
}

// text is what a report says.
func (r Reporter) text(fault *Fault) string {
	var b strings.Builder
	fmt.Fprintf(&b, "borewalk %s, %s, %s/%s\n", r.Version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
	fmt.Fprintf(&b, "%s, plan %s\n\n", r.Now().UTC().Format(time.RFC3339), model.Clean(filepath.Base(r.Plan)))
	fmt.Fprintf(&b, "panic: %s\n\n%s", model.Clean(fmt.Sprint(fault.What)), fault.Stack)
	return b.String()
}
