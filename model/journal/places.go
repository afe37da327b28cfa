package journal

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/process"
)

const ending = ".journal"

// place is where journals about a plan may lie: a folder, and what their names begin with.
type place struct {
	folder, stem string
	private      bool // in the program's own folder, which is made where it is not there
}

// places returns where journals about a plan may lie, the best first: beside its file, and in the state folder. There they are named
// for the whole path, in short. A plan without a file, and a program without a state folder, have but one of them.
func places(plan, state string) (list []place) {
	stem := "unnamed"
	if plan != "" {
		plan = real(plan)
		stem = hash([]byte(plan))[:16]
		list = append(list, place{folder: filepath.Dir(plan), stem: "." + filepath.Base(plan)})
	}
	if state != "" {
		list = append(list, place{folder: state, stem: stem, private: true})
	}
	return list
}

// real returns the whole path of a file, through symbolic links as far as there is something.
func real(path string) string {
	if whole, err := filepath.Abs(path); err == nil {
		path = whole
	}
	if target, err := filepath.EvalSymlinks(path); err == nil {
		return target
	}
	return path
}

// free returns the name of a journal of this process that is not there yet: one of the same number may have left one.
func (p place) free() (string, error) {
	tag := process.Own().Tag()
	for n := range 100 {
		name := filepath.Join(p.folder, p.stem+"."+tag+strings.Repeat("x", n)+ending)
		if _, err := os.Lstat(name); errors.Is(err, os.ErrNotExist) {
			return name, nil
		} else if err != nil {
			return "", err
		}
	}
	return "", errors.New("it is full of journals left behind")
}

var tag = regexp.MustCompile(`^[0-9a-f]{8}-[0-9]+x*$`)

// journals returns the journals about a plan that lie in a place.
func (p place) journals() (paths []string) {
	entries, _ := os.ReadDir(p.folder) // what cannot be listed has nothing to find
	for _, entry := range entries {
		middle, ok := strings.CutPrefix(entry.Name(), p.stem+".")
		middle, ends := strings.CutSuffix(middle, ending)
		if ok && ends && tag.MatchString(middle) {
			paths = append(paths, filepath.Join(p.folder, entry.Name()))
		}
	}
	return paths
}

// ClearLitter removes what processes that were killed left of saves of a plan and of journals about it.
func ClearLitter(plan, state string) {
	if plan != "" {
		planfile.ClearLitter(real(plan))
	}
	for _, place := range places(plan, state) {
		planfile.ClearLitter(filepath.Join(place.folder, place.stem))
	}
}

// Damaged is a journal that cannot be read.
type Damaged struct {
	At  string
	Why error // names it
}

// Find returns the journals about a plan, given by its file or empty for one without, the latest written first, that processes left
// which have ended; and those that cannot be read. state is the state folder, empty for none.
func Find(plan, state string) (found []*Found, damaged []Damaged) {
	for _, place := range places(plan, state) {
		for _, path := range place.journals() {
			f, err := Read(path)
			switch {
			case errors.Is(err, os.ErrNotExist): // its process has just removed it
			case err != nil:
				damaged = append(damaged, Damaged{path, err})
			case !f.Process.Runs():
				found = append(found, f)
			}
		}
	}
	slices.SortStableFunc(found, func(a, b *Found) int { return strings.Compare(b.Written, a.Written) })
	return found, damaged
}

// Discard removes a journal.
func (f *Found) Discard() error { return os.Remove(f.At) }

// SetAside gives a damaged journal another name, under which no start finds it again, and returns that.
func (d Damaged) SetAside() (string, error) {
	aside := d.At + ".damaged"
	if _, err := os.Lstat(aside); err == nil {
		return "", errors.New("another one lies there already")
	}
	return aside, os.Rename(d.At, aside)
}

// Begin finds what earlier runs left of a plan when it is opened to be worked on, and tidies: it clears the litter of killed saves,
// removes journals that hold no more than the file does, and gives damaged ones another name. The notices say what could not be read, a
// line each.
func Begin(plan, state string, now *model.Plan) (left []*Found, notices []string) {
	ClearLitter(plan, state)
	found, damaged := Find(plan, state)
	for _, f := range found {
		if !f.More(now) && f.Discard() == nil {
			continue
		}
		left = append(left, f)
	}
	for _, d := range damaged {
		line := "Changes that were not saved cannot be read: " + d.Why.Error()
		if !errors.Is(d.Why, ErrNewer) {
			if aside, err := d.SetAside(); err == nil {
				line += "; they are kept in " + aside
			}
		}
		notices = append(notices, model.Clean(line))
	}
	return left, notices
}
