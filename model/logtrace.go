package model

import (
	"slices"
	"strconv"
	"strings"
)

// LoggedFor returns the rows of a log that are about an entry, or a row of a list, that has the path at the end of them: the latest
// first, under whatever path it had then, for rows that were added and removed above it have moved it.
func LoggedFor(rows []LogRow, path Path) (list []LogRow) {
	at := string(path)
	for _, r := range slices.Backward(rows) {
		if r.Path == at {
			list = append(list, r)
		}
		if r.What != LogAdd && r.What != LogRemove {
			continue
		}
		was, born := movedBack(at, &r)
		if born {
			return list
		}
		at = was
	}
	return list
}

// movedBack returns the path that an entry had before a row was added or removed; born says that it came to be with that row.
func movedBack(path string, r *LogRow) (was string, born bool) {
	cut := strings.LastIndexByte(r.Path, '[')
	if cut < 0 || !strings.HasPrefix(path, r.Path[:cut+1]) {
		return path, false
	}
	number, rest, _ := strings.Cut(path[cut+1:], "]")
	moved, err := strconv.Atoi(strings.TrimSuffix(r.Path[cut+1:], "]"))
	index, fault := strconv.Atoi(number)
	if err != nil || fault != nil {
		return path, false
	}
	switch {
	case r.What == LogAdd && index == moved:
		return path, true
	case r.What == LogAdd && index > moved:
		index--
	case r.What == LogRemove && index >= moved:
		index++
	}
	return r.Path[:cut+1] + strconv.Itoa(index) + "]" + rest, false
}

// Whys returns the reasons that rows give, the earliest first, each once.
func Whys(rows []LogRow) string {
	var whys []string
	for _, r := range slices.Backward(rows) {
		if r.Why != "" && !slices.Contains(whys, r.Why) {
			whys = append(whys, r.Why)
		}
	}
	return strings.Join(whys, "; ")
}

// LogLine is a line of a log as people read it: one row, or one that was added or removed with all that was in it.
type LogLine struct {
	First, Last int // rows of the log
	Row         int // the one that stands for them
}

// LogLines gathers rows of a log to lines, the earliest first.
func LogLines(rows []LogRow) (lines []LogLine) {
	inside := func(r, of *LogRow) bool {
		return r.When == of.When && (strings.HasPrefix(r.Path, of.Path+".") || strings.HasPrefix(r.Path, of.Path+"["))
	}
	for i := 0; i < len(rows); i++ {
		line := LogLine{First: i, Last: i, Row: i}
		switch rows[i].What {
		case LogAdd:
			for line.Last+1 < len(rows) && rows[line.Last+1].What != LogRemove && inside(&rows[line.Last+1], &rows[i]) {
				line.Last++
			}
		case LogRemove:
			for n := len(lines); n > 0 && rows[lines[n-1].Row].What != LogAdd && inside(&rows[lines[n-1].Row], &rows[i]); n-- {
				line.First, lines = lines[n-1].First, lines[:n-1]
			}
		}
		lines = append(lines, line)
		i = line.Last
	}
	return lines
}
