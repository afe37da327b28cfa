package tomldoc

import "strings"

// Nearest returns the one of known that key was most likely meant to be, and
// false if none is near. Near is an edit distance of at most a third of the
// key's length, but 1 to 3 edits; an edit inserts, removes or changes a letter,
// or swaps two neighbours. Case and the difference of - and _ do not count. Of
// equally near ones the first is returned.
func Nearest(key string, known []string) (string, bool) {
	const longest = 64
	k := folded(key)
	if len(k) == 0 || len(k) > longest {
		return "", false
	}
	best, bound, found := "", min(max(len(k)/3, 1), 3), false
	for _, candidate := range known {
		c := folded(candidate)
		if len(c) > longest {
			continue
		}
		d := distance(k, c, bound)
		// One letter changed for another would make any two letters near.
		if d > bound || d >= max(len(k), len(c)) {
			continue
		}
		best, bound, found = candidate, d-1, true
		if d == 0 {
			break
		}
	}
	return best, found
}

func folded(s string) []rune {
	return []rune(strings.ReplaceAll(strings.ToLower(s), "-", "_"))
}

// distance is the number of edits between a and b, or bound+1 if it is larger
// than bound (optimal string alignment, by its recurrence over prefixes).
func distance(a, b []rune, bound int) int {
	if len(a)-len(b) > bound || len(b)-len(a) > bound {
		return bound + 1
	}
	// Three rows of the table: two letters back, one back, and this one.
	back2, back1, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		back2, back1, row = back1, row, back2
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			change := back1[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, back1[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], back2[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > bound {
			return bound + 1
		}
	}
	return min(row[len(b)], bound+1)
}
