package terminal

import "time"

// patience is how long an unfinished sequence waits for its next byte. A terminal sends a sequence at once, so that a gap
// comes from the line between: 60 ms outlasts the gaps of a serial line and of a busy relay, and a lone Esc that comes
// 60 ms late is hardly felt.
const patience = 60 * time.Millisecond

// source is where keys come from.
type source interface {
	Read(p []byte) (int, error)
	// ready waits until Read will not block, and reports false when that took longer than the time given.
	ready(time.Duration) bool
}

// joiner reads keys so that no read ends inside one. What bubbletea v1 is given in one read it takes to be complete: of
// a ctrl+right split in two it makes typed digits.
//
// A read that ends inside a sequence goes on, byte by byte, until the sequence ends or nothing comes for the time of
// patience. Then a lone ESC is handed on, and a piece that is no key by itself is dropped, with the rest of it if that
// still comes within the time of patience. Nothing is kept for a later Read, because bubbletea waits for the file to
// become readable before it reads.
type joiner struct {
	from    source
	now     func() time.Time
	at      sequence
	orphan  bool      // the beginning of the sequence that at stands in was dropped by an earlier Read
	dropped time.Time // when
}

// Read reads at least one byte, blocking until there is one, and returns whole keys. It returns 0 bytes without an error
// when all that came was dropped. A p too short for two sequences gets the bytes as they come.
func (j *joiner) Read(p []byte) (int, error) {
	if len(p) < 2*longest {
		return j.from.Read(p)
	}
	n, err := j.from.Read(p[:len(p)-longest])
	if j.orphan && j.now().Sub(j.dropped) > patience {
		j.at, j.orphan = sequence{}, false
	}
	keys := keys{bytes: p}
	for i := range n {
		j.take(&keys, p[i])
	}
	for err == nil && j.at.unfinished() && keys.end < len(p) && j.from.ready(patience) {
		var next [1]byte
		n, failure := j.from.Read(next[:])
		if n == 0 || failure != nil {
			break // the next Read meets the failure again
		}
		j.take(&keys, next[0])
	}
	if j.at.unfinished() {
		j.giveUp(&keys)
	}
	return keys.end, err
}

// keys is the part of a buffer that is filled with keys; the last may be unfinished.
type keys struct {
	bytes []byte
	start int // of the last key
	end   int
}

// append adds a byte to the last key.
func (k *keys) append(b byte) {
	k.bytes[k.end] = b
	k.end++
}

// close ends the last key: kept or dropped.
func (k *keys) close(keep bool) {
	if !keep {
		k.end = k.start
	}
	k.start = k.end
}

// take adds a byte that was read.
func (j *joiner) take(k *keys, b byte) {
	keep := !j.orphan
	remains := j.at.remains()
	o := j.at.step(b)
	if o == broken {
		k.close(keep && !remains)
		j.orphan, keep = false, true
		o = j.at.step(b)
	}
	k.append(b)
	switch o {
	case more:
		return
	case lost:
		keep = false
	case pasted:
		if !keep { // without its beginning the paste is nothing to bubbletea
			j.at = sequence{}
		} else if k.end-k.start > len(pasteEnd) { // an Esc just before would hide the paste
			k.end = k.start + copy(k.bytes[k.start:], k.bytes[k.end-len(pasteEnd):k.end])
		}
	}
	k.close(keep)
	j.orphan = false
}

// giveUp ends a sequence whose rest does not come.
func (j *joiner) giveUp(k *keys) {
	if !j.at.remains() {
		k.close(true)
		j.at = sequence{}
		return
	}
	k.close(false)
	j.orphan, j.dropped = true, j.now()
}
