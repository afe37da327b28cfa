package model

import (
	"crypto/sha256"
	"fmt"
)

// Hash names what a plan holds by the SHA-256 of every entry that is not blank: its path and its content, exactly and in the order in
// which fields are declared, and every row. What a person does to the file that changes no entry leaves it as it is.
func Hash(plan *Plan) string {
	sum := sha256.New()
	Walk(plan, func(g *Group, at Place) bool {
		row := Ref{Group: g, Field: new(Field), Place: at}.Path()
		fmt.Fprintf(sum, "%s\n", row) // a row that holds nothing is there all the same
		for _, f := range g.Fields {
			if text := f.FileText(Ref{Group: g, Field: f, Place: at}.Get(plan)); text != "" {
				fmt.Fprintf(sum, "%s%s = %q\n", row, f.Key, text)
			}
		}
		return true
	})
	return fmt.Sprintf("%x", sum.Sum(nil))
}
