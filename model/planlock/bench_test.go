package planlock

import "testing"

// BenchmarkTakeAndRelease is what opening and leaving a plan cost; most of it is the disk.
func BenchmarkTakeAndRelease(b *testing.B) {
	c, plan := This(), inFolder(b)
	for b.Loop() {
		takes(b, c, plan).Release(c)
	}
}

// BenchmarkCheck is what an edit and a save ask.
func BenchmarkCheck(b *testing.B) {
	c, plan := This(), inFolder(b)
	l := takes(b, c, plan)
	for b.Loop() {
		if err := l.Check(c); err != nil {
			b.Fatal(err)
		}
	}
}
