package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// needs returns the gap that a blank entry makes.
func needs(v quantity.Value, path model.Path, what string) gap {
	if v.IsSet() {
		return gap{}
	}
	return gap{path, what + " is blank"}
}

// lacks is needs for an entry of a section, whose path is only written down when it is wanted.
func lacks(v quantity.Value, section int, key, what string) gap {
	if v.IsSet() {
		return gap{}
	}
	return gap{model.PathOf(section, key), what + " is blank"}
}

// listGap says what is missing in a list of section i of which no row may be left out: one that is not whole might be the one that counts.
func (e *evaluation) listGap(list *model.Group, i int) gap {
	at := model.Place{Outer: i}
	for k := range list.Len(e.plan, at) {
		for _, f := range list.Fields {
			if ref := (model.Ref{Group: list, Field: f, Place: list.At(at, k)}); f.Required && !ref.Get(e.plan).IsSet() {
				return gap{ref.Path(), f.Name + " is blank"}
			}
		}
	}
	return gap{}
}

// usual returns an entry, or what a blank one means.
func usual(v quantity.Value, otherwise float64) float64 {
	if v.IsSet() {
		return v.SI
	}
	return otherwise
}
