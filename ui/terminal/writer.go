package terminal

import (
	"runtime/debug"
	"time"

	"borewalk/ui/canvas"
)

// pause is the least time between two writes. A burst of keys or a held one then shares pictures, and a single key is answered
// at once.
const pause = 8 * time.Millisecond

// writer is what the goroutine of an Output keeps to itself.
type writer struct {
	painter canvas.Painter
	now     queue // what it sends
	last    time.Time
}

// run sends what comes until the output is closed.
func (o *Output) run() {
	for {
		select {
		case <-o.wake:
			o.rest()
			o.send()
		case <-o.end:
			return
		}
	}
}

// rest lets the pause pass, of which nothing is left when nothing was written lately.
func (o *Output) rest() {
	left := pause - time.Since(o.writer.last)
	if left <= 0 {
		return
	}
	select {
	case <-time.After(left):
	case <-o.hurry:
	}
}

// send takes what is in the queue and writes it.
func (o *Output) send() {
	w := &o.writer
	o.mu.Lock()
	w.now, o.next = o.next, w.now // the other's memory is used again
	o.next = queue{control: o.next.control[:0], frame: o.next.frame}
	o.mu.Unlock()
	text := o.painted(&w.now)
	if len(text) > 0 {
		if _, err := o.File.Write(text); err != nil {
			w.painter.Forget() // some of it may have come through
		}
		w.last = time.Now()
	}
	for _, sent := range w.now.waiting {
		close(sent)
	}
}

// painted returns the bytes that the terminal is to get. When painting fails they are the control sequences alone, so that the
// terminal can be left in order.
func (o *Output) painted(q *queue) (text []byte) {
	text = q.control
	if q.forget {
		o.writer.painter.Forget()
	}
	if !q.fresh || o.isBroken() {
		return text
	}
	defer func() {
		if fault := recover(); fault != nil {
			o.fail(fault, debug.Stack())
		}
	}()
	q.control = append(q.control, o.paint(&q.frame)...)
	return q.control
}

// fail draws no more, and tells of the fault.
func (o *Output) fail(fault any, stack []byte) {
	o.mu.Lock()
	o.broken = true
	o.mu.Unlock()
	if o.Failed != nil {
		go o.Failed(fault, stack)
	}
}

func (o *Output) isBroken() bool {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.broken
}
