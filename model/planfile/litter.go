package planfile

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"borewalk/model/process"
)

// temporary names the file that is to replace another in its folder. It says which process made it, so that what a killed one has
// left can be told from what another is writing.
func temporary(name string, random uint32) string {
	return fmt.Sprintf(".%s.%s.%08x.tmp", name, process.Own().Tag(), random)
}

// ClearLitter removes what processes of this host that have ended left while they replaced the named
// file, or one whose name goes on from its name after a point. Those of other hosts may be at work.
func ClearLitter(path string) {
	folder, base := filepath.Split(path)
	if folder == "" {
		folder = "."
	}
	entries, _ := os.ReadDir(folder) // what cannot be listed is not cleared
	for _, entry := range entries {
		name := entry.Name()
		own := strings.HasPrefix(name, "."+base+".")
		parts := strings.Split(name, ".")
		if n := len(parts); own && n > 4 && parts[n-1] == "tmp" && len(parts[n-2]) == 8 && process.Left(parts[n-3]) {
			_ = os.Remove(filepath.Join(folder, name))
		}
	}
}
