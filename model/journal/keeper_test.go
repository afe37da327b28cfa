package journal

import (
	"path/filepath"
	"testing"
	"time"

	"borewalk/model"
)

// A panic while a draft is written is told to the program, which goes on.
func TestAPanicInTheKeeperIsReported(t *testing.T) {
	var fault any
	k := NewKeeper(t.TempDir(), func(f any, stack []byte) { fault = f })
	kept(t, k, Draft{}) // without a file to write
	if err := <-k.Trouble(); err == nil || fault == nil {
		t.Errorf("trouble %v, fault %v", err, fault)
	}
	file := opened(t, filepath.Join(t.TempDir(), "well.toml"))
	kept(t, k, drafted("", file, new(model.History)))
	if err := <-k.Trouble(); err != nil {
		t.Error(err)
	}
}

// A journal that was adopted takes the place of what was kept here before: neither is left, whether the keeper had the time to remove
// the one before or not.
func TestAdoptingLeavesNoJournalBehind(t *testing.T) {
	for _, save := range []bool{true, false} {
		dir := t.TempDir()
		path := filepath.Join(dir, "well.toml")
		file := opened(t, path)
		var h model.History
		gap(t, file, &h, "31 m")
		one, two := NewKeeper("", panics(t)), NewKeeper("", panics(t))
		kept(t, one, drafted(path, file, &h))
		left(t, dir)
		found, _ := Find(path, "")
		kept(t, two, drafted(path, file, &h))
		two.Forget()
		two.Adopt(found[0])
		want := 1
		if two.Keep(drafted(path, file, &h)); save {
			two.Forget()
			want = 0
		}
		if !two.Flush(10 * time.Second) {
			t.Fatal("not done")
		}
		if list, _ := filepath.Glob(filepath.Join(dir, ".*"+ending)); len(list) != want {
			t.Errorf("saved %v: there lie %v", save, list)
		}
	}
}

// BenchmarkHandOver is what the event loop does for each edit; BenchmarkWrite what is done beside it, but for the disk.
func BenchmarkHandOver(b *testing.B) {
	file := opened(b, filepath.Join(b.TempDir(), "well.toml"))
	var h model.History
	gap(b, file, &h, "31 m")
	for b.Loop() {
		drafted("", file, &h)
	}
}

func BenchmarkWrite(b *testing.B) {
	file := opened(b, filepath.Join(b.TempDir(), "well.toml"))
	var h model.History
	gap(b, file, &h, "31 m")
	for b.Loop() {
		d := drafted("", file, &h)
		if _, err := d.text(); err != nil {
			b.Fatal(err)
		}
	}
}
