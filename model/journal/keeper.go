package journal

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"
	"time"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/planfile"
	"borewalk/model/process"
)

// Draft is the state of a plan that is to be kept.
type Draft struct {
	Path, Title string         // the file that the plan is saved to; without one, what it is called
	File        *planfile.File // a copy, which becomes the keeper's
	Rows        []model.LogRow // what the log gets with the next save
	Who         string         // works here; may be blank
	When        time.Time
	Typing      model.Path // of the entry being typed; empty for none
	Typed       string
}

// rest is how long a keeper rests between two writes, so that a held key does not keep the disk busy and a core warm. It is well below the second
// within which a change is to be kept.
const rest = 500 * time.Millisecond

// Keeper keeps the latest draft in a journal, beside the program: nobody waits for the disk. Its methods may be called from anywhere;
// those of a nil keeper do nothing.
type Keeper struct {
	state  string
	caught func(fault any, stack []byte)

	mu      sync.Mutex
	wanted  *Draft // nil when nothing is unsaved
	asked   int    // counts what was wanted
	done    int    // the last that was seen to
	failed  bool
	begun   bool
	adopted string
	changed chan struct{} // closed, and replaced, when done has changed

	wake    chan struct{}
	hurry   chan struct{} // cuts a rest short
	trouble chan error

	// Of the goroutine alone:
	at    string // the journal as it lies there; empty for none
	about string // the file of the plan that it is about
	own   bool   // it was written here
	also  string // a journal that was written here before another was adopted, and goes with that; empty for none
}

// NewKeeper returns a keeper that may use the state folder given; empty for none. caught is told of a panic in the keeper, which is a
// fault of the program, and of where.
func NewKeeper(state string, caught func(fault any, stack []byte)) *Keeper {
	return &Keeper{state: state, caught: caught, changed: make(chan struct{}), wake: make(chan struct{}, 1), hurry: make(chan struct{}, 1), trouble: make(chan error, 1)}
}

// Keep has a draft kept in place of the one before. It returns at once.
func (k *Keeper) Keep(d Draft) { k.want(&d) }

// Forget has the journal removed: nothing is unsaved, or it is given up. It returns at once.
func (k *Keeper) Forget() { k.want(nil) }

// Adopt takes charge of a journal that was found, and recovered from: it is removed once what is kept next lies beside it. Nothing is
// written into it, since who wrote it may still run on another host, and another program here may have recovered from it too.
func (k *Keeper) Adopt(f *Found) {
	if k == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.adopted = f.At
}

// Trouble gives the reason, in one line, when changes can no longer be kept, and nil when they can again.
func (k *Keeper) Trouble() <-chan error {
	if k == nil {
		return nil
	}
	return k.trouble
}

// How long a save, which takes about as long itself, and the end of the program wait for the disk.
const (
	saveWait = time.Second
	lastWait = 3 * time.Second
)

// CatchUp lets the keeper catch up before a save. If the program is killed between the two, the journal holds no less than the file, and
// the next start does not offer what was older.
func (k *Keeper) CatchUp() { k.Flush(saveWait) }

// Finish is called last: what was not saved is given up where the program was left on purpose, and otherwise kept to its end. It returns
// whether something is kept, and whether something could not be.
func (k *Keeper) Finish(left bool) (kept, lost bool) {
	if left {
		k.Forget()
	}
	flushed := k.Flush(lastWait)
	if left {
		return false, false
	}
	unsaved, written := k.Kept()
	return unsaved && written && flushed, unsaved && !(written && flushed)
}

// Flush waits until all that was asked for is done, for the time given at most, and reports whether it is.
func (k *Keeper) Flush(most time.Duration) bool {
	if k == nil {
		return true
	}
	limit := time.After(most)
	for {
		k.mu.Lock()
		ready, changed := k.done == k.asked, k.changed
		k.mu.Unlock()
		if ready {
			return true
		}
		select {
		case k.hurry <- struct{}{}:
		default: // it hurries
		}
		select {
		case <-changed:
		case <-limit:
			return false
		}
	}
}

// Kept reports whether there is something unsaved, and whether it is kept as of the last write.
func (k *Keeper) Kept() (unsaved, kept bool) {
	if k == nil {
		return false, false
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.wanted != nil, k.wanted != nil && k.done == k.asked && !k.failed
}

func (k *Keeper) want(d *Draft) {
	if k == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if d == nil && !k.begun && k.adopted == "" {
		return // nothing was ever kept
	}
	k.wanted = d
	k.asked++
	if !k.begun {
		k.begun = true
		go k.work()
	}
	select {
	case k.wake <- struct{}{}:
	default: // it is awake
	}
}

// work sees to what is wanted, the latest only, and sleeps while nothing is.
func (k *Keeper) work() {
	var last time.Time
	for range k.wake {
		if left := time.Until(last.Add(rest)); left > 0 {
			select {
			case <-time.After(left):
			case <-k.hurry:
			}
		}
		k.mu.Lock()
		d, n := k.wanted, k.asked
		if k.adopted != "" {
			k.also, k.at, k.own, k.adopted = k.at, k.adopted, false, ""
		}
		k.mu.Unlock()
		err := k.see(d)
		last = time.Now()
		k.mu.Lock()
		k.done = n
		close(k.changed)
		k.changed = make(chan struct{})
		news := (err != nil) != k.failed
		k.failed = err != nil
		k.mu.Unlock()
		if news {
			select {
			case <-k.trouble: // older news that nobody has heard
			default:
			}
			k.trouble <- err
		}
	}
}

// see brings the disk in line with a draft. A panic counts as an error: the program can go on without a journal.
func (k *Keeper) see(d *Draft) (err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = errors.New("internal error in the journal")
			k.caught(fault, debug.Stack())
		}
	}()
	if d == nil {
		return k.remove()
	}
	text, err := d.text()
	if err != nil {
		return err
	}
	return k.write(d, text)
}

// text renders a draft.
func (d *Draft) text() ([]byte, error) {
	n := model.EnterRows(d.File.Plan, d.Rows, "", d.When) // who saves is known when it is saved
	body, err := d.File.Bytes()
	if err != nil {
		return nil, err
	}
	own := process.Own()
	h := head{
		Title: d.Title, Written: d.When.UTC().Format(time.RFC3339), Who: d.Who, Pid: own.Pid, Born: own.Began,
		Host: own.Host, Machine: own.Machine, Boot: own.Boot, Space: own.Space, Typing: string(d.Typing), Text: d.Typed, FromSize: len(d.File.Text()), FromHash: from(d.File.Text()), Pending: n,
	}
	if d.Path != "" {
		h.Plan, h.Title = real(d.Path), ""
	}
	return encode(h, body)
}

// write puts a journal where the last one lies, or else where it can, and removes the last one when that was elsewhere.
func (k *Keeper) write(d *Draft, text []byte) error {
	if k.own && k.at != "" && k.about == d.Path && planfile.Replace(k.at, text, 0o600) == nil {
		return nil
	}
	var failures []string
	for _, place := range places(d.Path, k.state) {
		path, err := place.put(text, d.Path)
		if err != nil {
			failures = append(failures, fmt.Sprintf("%s: %v", cmp.Or(place.folder, "."), infile.Reason(err)))
			continue
		}
		before := k.at
		k.at, k.about, k.own = path, d.Path, true
		for _, old := range []string{before, k.also} {
			if old != "" {
				_ = os.Remove(old) // where it cannot be removed it could not be written either
			}
		}
		k.also = ""
		return nil
	}
	if len(failures) == 0 {
		return errors.New("there is no folder for it: set HOME or XDG_STATE_HOME, or save the plan")
	}
	return errors.New(strings.Join(failures, "; "))
}

// put writes a new journal into a place and returns its path. Beside a plan it may be read by whoever may read that: the next shift may
// be another user.
func (p place) put(text []byte, plan string) (string, error) {
	mode := os.FileMode(0o600)
	if p.private {
		if err := os.MkdirAll(p.folder, 0o700); err != nil {
			return "", err
		}
	} else if info, err := os.Stat(plan); err == nil {
		mode = info.Mode().Perm() | 0o600
	}
	path, err := p.free()
	if err != nil {
		return "", err
	}
	return path, planfile.Replace(path, text, mode)
}

// remove takes the journal away.
func (k *Keeper) remove() error {
	if k.also != "" {
		_ = os.Remove(k.also)
		k.also = ""
	}
	if k.at == "" {
		return nil
	}
	err := os.Remove(k.at)
	if err == nil || errors.Is(err, os.ErrNotExist) {
		k.at = ""
		return nil
	}
	return fmt.Errorf("%s cannot be removed, and would be offered at the next start: %w", filepath.Base(k.at), infile.Reason(err))
}
