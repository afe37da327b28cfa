package model

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// Path returns the entry's address as people write it, rows counted from one: "section[3].casing[1].weight".
func (r Ref) Path() Path {
	var b strings.Builder
	r.Group.write(&b, r.Place)
	b.WriteByte('.')
	b.WriteString(r.Field.Key)
	return Path(b.String())
}

func (g *Group) write(b *strings.Builder, at Place) {
	if g.Parent != nil {
		g.Parent.write(b, at)
		b.WriteByte('.')
	}
	b.WriteString(g.Name)
	if g.List {
		b.WriteByte('[')
		b.WriteString(strconv.Itoa(g.Index(at) + 1))
		b.WriteByte(']')
	}
}

// RowPath returns the address of a row of the list, or of a single table: "section[3].casing[1]".
func (g *Group) RowPath(at Place) Path {
	var b strings.Builder
	g.write(&b, at)
	return Path(b.String())
}

// Path is the address of an entry or of a row as text: group names and keys joined by points, rows in brackets from 1.
type Path string

// PathOf builds the path of a field of a section: PathOf(2, "td") is "section[3].td".
func PathOf(section int, key string) Path {
	return Path("section[" + strconv.Itoa(section+1) + "]." + key)
}

// Find returns the entry that a path means, and whether the plan has it.
func Find(plan *Plan, path Path) (Ref, bool) {
	group, at, key, ok := follow(path)
	if !ok || group == nil || key == "" {
		return Ref{}, false
	}
	f := group.Field(key)
	return Ref{Group: group, Field: f, Place: at}, f != nil && group.Has(plan, at)
}

// FindList returns the list that a path means, such as "section[2].casing" or "rig.pump", with the place of its first row,
// and whether the plan has the row that the list stands in.
func FindList(plan *Plan, path Path) (*Group, Place, bool) {
	parent, at, name, ok := follow(path)
	if !ok || name == "" {
		return nil, Place{}, false
	}
	lists := Groups()
	if parent != nil {
		if !parent.Has(plan, at) {
			return nil, Place{}, false
		}
		lists = parent.Lists
	}
	k := slices.IndexFunc(lists, func(g *Group) bool { return g.List && g.Name == name })
	if k < 0 {
		return nil, Place{}, false
	}
	return lists[k], lists[k].At(at, 0), true
}

// FindRow returns the list and the place that the path of a row means, and whether the plan has that row or it is the one that
// would come behind the last.
func FindRow(plan *Plan, path Path) (*Group, Place, bool) {
	g, at, _, ok := follow(path + ".")
	if !ok || g == nil || !g.List || g.Nested() && !g.Parent.Has(plan, Place{Outer: at.Outer}) {
		return nil, Place{}, false
	}
	i := g.Index(at)
	return g, at, i >= 0 && i <= g.Len(plan, at)
}

// follow goes down a path to its last step and returns the group and the row that the step stands in, and the step.
func follow(path Path) (group *Group, at Place, last string, ok bool) {
	steps := strings.Split(string(path), ".")
	groups := Groups()
	for _, step := range steps[:len(steps)-1] {
		name, number, _ := strings.Cut(strings.TrimSuffix(step, "]"), "[")
		k := slices.IndexFunc(groups, func(g *Group) bool { return g.Name == name })
		if k < 0 {
			return nil, Place{}, "", false
		}
		group, groups = groups[k], groups[k].Lists
		if group.List {
			n, err := strconv.Atoi(number)
			if err != nil {
				return nil, Place{}, "", false
			}
			at = group.At(at, n-1)
		}
	}
	return group, at, steps[len(steps)-1], true
}

// Words returns the entry's address in words, for a person: "section 3, string part 2: ID".
func (r Ref) Words() string {
	rows := r.Group.rowWords(r.Place)
	if rows == "" {
		return r.Field.Name
	}
	return rows + ": " + r.Field.Name
}

// rowWords says in words in which rows of lists a place lies; nothing for a table that stands in none.
func (g *Group) rowWords(at Place) string {
	var rows []string
	for ; g != nil; g = g.Parent {
		if g.List {
			rows = append(rows, strings.ToLower(g.Title)+" "+strconv.Itoa(g.Index(at)+1))
		}
	}
	slices.Reverse(rows)
	return strings.Join(rows, ", ")
}

// Brief is Words with the name for a narrow screen: "section 3, string part 2: ID".
func (r Ref) Brief() string {
	return strings.TrimPrefix(r.Group.rowWords(r.Place)+": "+r.Field.Label, ": ")
}

// PathWords returns the address of an entry or of a row in words, whether the plan has it or not; what is no address stays as it is.
func PathWords(plan *Plan, path Path) string {
	if ref, _ := Find(plan, path); ref.Field != nil {
		return ref.Words()
	}
	if g, at, _, ok := follow(path + "."); ok && g != nil {
		return cmp.Or(g.rowWords(at), g.Title)
	}
	return Clean(string(path))
}
