package dialogue

import (
	"errors"
	"os"

	"borewalk/model/planfile"
	"borewalk/ui/clip"
)

// Disk is where a session leaves what it is told to keep.
type Disk interface {
	Save(file *planfile.File, path string, over bool) error // the plan; over whatever another program has put there
	Exists(path string) bool                                // whether a file would be replaced
	Write(path string, content []byte) error                // a paper
	Keep(text string) (path string, err error)              // what was copied
}

// computer is the disk of the computer that the program runs on.
type computer struct {
	env  func(string) string
	goos string
}

func (c computer) Save(file *planfile.File, path string, over bool) error {
	if over {
		return file.SaveOver(path)
	}
	return file.Save(path)
}

func (c computer) Exists(path string) bool {
	_, err := os.Lstat(path)
	return !errors.Is(err, os.ErrNotExist)
}

func (c computer) Write(path string, content []byte) error { return os.WriteFile(path, content, 0o644) }

func (c computer) Keep(text string) (string, error) { return clip.Keep(text, c.env, c.goos) }
