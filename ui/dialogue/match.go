package dialogue

import "strings"

// match says how well typed words name something.
type match uint8

// The matches.
const (
	noMatch match = iota
	begins        // each word begins the word of the name that stands in its place
	exact
)

// spoken returns the words of a name in small letters, without the signs between them.
func spoken(name string) []string {
	return strings.Fields(strings.NewReplacer(",", " ", ":", " ", ".", " ", "-", " ").Replace(strings.ToLower(name)))
}

// matches compares what was typed with a name.
func matches(typed, name string) match { return compare(spoken(typed), spoken(name)) }

func compare(typed, name []string) match {
	if len(typed) == 0 || len(typed) > len(name) {
		return noMatch
	}
	whole := len(typed) == len(name)
	for i, w := range typed {
		if !strings.HasPrefix(name[i], w) {
			return noMatch
		}
		whole = whole && w == name[i]
	}
	if whole {
		return exact
	}
	return begins
}

// pick returns those of several things that a text names: those that it names in full, else those whose words it begins.
func pick[T any](typed string, all []T, names func(T) []string) (found []T) {
	best := begins
	for _, it := range all {
		how := noMatch
		for _, name := range names(it) {
			how = max(how, matches(typed, name))
		}
		if how > best {
			best, found = how, nil
		}
		if how == best {
			found = append(found, it)
		}
	}
	return found
}
