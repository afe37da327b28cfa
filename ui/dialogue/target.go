package dialogue

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/tomldoc"
	"borewalk/ui/wording"
)

// entryNamed returns the entry that a number of the last list, a path, or a label of the page means, or why there is none.
func (s *Session) entryNamed(text string) (ref model.Ref, why string) {
	if text == "" {
		return ref, "say which entry: its number, label or path"
	}
	if n, ok := number(strings.TrimSuffix(text, ".")); ok {
		it, why := s.item(n)
		if why == "" && it.ref == nil {
			why = fmt.Sprintf("%d is no entry; say entries for the numbers of entries", n)
		}
		if why != "" {
			return ref, why
		}
		return *it.ref, ""
	}
	if strings.ContainsAny(text, ".[") {
		return s.entryAt(model.Path(text))
	}
	switch found := pick(text, s.pageEntries(), entryNames); len(found) {
	case 0:
		return ref, fmt.Sprintf("%q is no entry of this page", text)
	case 1:
		return found[0], ""
	default:
		return ref, s.several(text, found)
	}
}

// entryAt returns the entry that a path means, or what is wrong with the path.
func (s *Session) entryAt(path model.Path) (ref model.Ref, why string) {
	ref, ok := model.Find(s.plan, path)
	switch {
	case ok:
		return ref, ""
	case ref.Group == nil:
		return ref, fmt.Sprintf("there is no %s", path)
	case ref.Field == nil:
		cut := strings.LastIndex(string(path), ".")
		var keys []string
		for _, f := range ref.Group.Fields {
			keys = append(keys, f.Key)
		}
		why = fmt.Sprintf("there is no %s", path)
		if near, found := tomldoc.Nearest(string(path[cut+1:]), keys); found {
			why += fmt.Sprintf("; the nearest is %s.%s", path[:cut], near)
		}
		return ref, why
	}
	return ref, fmt.Sprintf("the plan has no row for %s", path)
}

// several says which entries of the page a text may mean.
func (s *Session) several(text string, refs []model.Ref) string {
	var names []string
	for i, ref := range s.pageEntries() {
		for _, r := range refs {
			if r == ref {
				names = append(names, fmt.Sprintf("%d %s", i+1, inPage(ref)))
			}
		}
	}
	if len(names) > usualPart {
		names = append(names[:usualPart], "and more")
	}
	s.nameEntries()
	return fmt.Sprintf("%q may be %s; say the number", text, strings.Join(names, ", "))
}

// label is what an entry is called in a list: its label, or for limits and units, which the screen has in the trade's shortest words, the
// name.
func label(ref model.Ref) string {
	for _, table := range []string{"Own limit: ", "Unit of "} {
		if name, ok := strings.CutPrefix(ref.Field.Name, table); ok {
			return name
		}
	}
	return ref.Field.Label
}

// inPage names an entry as the page has it: with its row or its table, without its section.
func inPage(ref model.Ref) string {
	name := strings.TrimSuffix(ref.Brief(), ref.Field.Label) + label(ref)
	if rest, ok := strings.CutPrefix(name, fmt.Sprintf("section %d", ref.Place.Outer+1)); ok && wording.InSection(ref) {
		name = strings.TrimLeft(rest, ",: ")
	}
	if !ref.Group.List && ref.Group.Parent != nil {
		name = ref.Group.Title + ": " + name
	}
	return name
}

// entryNames returns what an entry is called on its page.
func entryNames(ref model.Ref) []string {
	return []string{ref.Field.Label, label(ref), ref.Field.Name, inPage(ref)}
}

// obeyPath follows a line that begins with a path, and reports whether it does.
func (s *Session) obeyPath(path, value string) bool {
	ref, why := s.entryAt(model.Path(path))
	switch {
	case why == "" && value == "":
		s.sayEntry(ref)
	case why == "":
		s.put(ref, strings.TrimSpace(strings.TrimPrefix(value, "=")))
	case ref.Group == nil:
		return false
	default:
		s.refuse(why)
	}
	return true
}

// obeyLabel follows a line that begins with the label of an entry of the page, said in full or by the beginnings of its words, and
// reports whether it does. What stands behind the label is the value. Where sure is wished, the beginning of a single word is not enough.
func (s *Session) obeyLabel(line string, sure bool) bool {
	found, words := s.labelled(line)
	typed := strings.Fields(line)
	label, value := strings.Join(typed[:words], " "), strings.Join(typed[words:], " ")
	switch {
	case len(found) == 0 || sure && words == 1 && !named(label, found[0]):
		return false
	case len(found) > 1:
		s.refuse(s.several(label, found))
	case value == "":
		s.sayEntry(found[0])
	default:
		s.put(found[0], value)
	}
	return true
}

// labelled returns the entries of the page that a line names with as many of its first words as it can, and how many those are.
func (s *Session) labelled(line string) (found []model.Ref, words int) {
	refs := s.pageEntries()
	typed := strings.Fields(line)
	for words = min(len(typed), longestLabel); words > 0; words-- {
		if found = pick(strings.Join(typed[:words], " "), refs, entryNames); len(found) > 0 {
			break
		}
	}
	return found, words
}

// named reports whether a text is in full what an entry is called.
func named(text string, ref model.Ref) bool {
	for _, name := range entryNames(ref) {
		if matches(text, name) == exact {
			return true
		}
	}
	return false
}

// figuresNamed returns the lines of figures of the page that a text names, and their sheet; of more than one those that hold all words.
func (s *Session) figuresNamed(text string) (found [][]calc.Figure, sheet int) {
	var lines [][]calc.Figure
	for _, l := range wording.FigureLines(s.result.Sheet(s.sheet()), s.topic) {
		if len(l.Figures) > 0 {
			lines = append(lines, l.Figures)
		}
	}
	found = pick(text, lines, func(l []calc.Figure) []string { return []string{l[0].Name, l[0].Group + " " + l[0].Name, l[0].Key} })
	return found, s.sheet()
}

// longestLabel is how many words of a line may name an entry, more than any label has.
const longestLabel = 12
