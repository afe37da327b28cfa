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

// usual returns an entry, or what a blank one means.
func usual(v quantity.Value, otherwise float64) float64 {
	if v.IsSet() {
		return v.SI
	}
	return otherwise
}
