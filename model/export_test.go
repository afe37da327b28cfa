package model

import (
	"maps"
	"slices"
)

// BoundedLists returns the lists whose bound is not the usual one.
func BoundedLists() []string { return slices.Collect(maps.Keys(mostRows)) }
