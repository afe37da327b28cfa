// Package plans holds the embedded demo plans. The wells in them are invented, as are all names; they are teaching
// cases, not designs.
package plans

import "embed"

//go:embed *.toml
var files embed.FS

// Default is the name of the demo that opens when no plan is given.
const Default = "ottermast-2"

// Names returns the names of the demo plans, the default first.
func Names() []string { return []string{Default, "saltlantern-1"} }

// Demo returns the text of the demo plan with the given name, and false when there is none.
func Demo(name string) ([]byte, bool) {
	text, err := files.ReadFile(name + ".toml")
	return text, err == nil
}
