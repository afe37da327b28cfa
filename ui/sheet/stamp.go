package sheet

import (
	"fmt"
	"strings"

	"borewalk/model"
	"borewalk/ui/canvas"
)

// stamp is what the head of every page bears: whose plan it is, and from which one it was printed.
type stamp struct{ well, revision, hash, printed string }

func (p *printer) stamp() stamp {
	return stamp{well: p.wellName(), revision: dash(p.plan.Well.Revision), hash: dash(p.shortHash()), printed: p.printedText()}
}

// each replaces every text of the stamp.
func (s stamp) each(change func(string) string) stamp {
	return stamp{change(s.well), change(s.revision), change(s.hash), change(s.printed)}
}

// shortHash is how much of the hash stands on a paper: enough to tell two plans apart by eye.
func (p *printer) shortHash() string {
	const letters = 8
	hash := []rune(p.Hash)
	return string(hash[:min(len(hash), letters)])
}

// printedText says when the paper was printed; empty where nobody told.
func (p *printer) printedText() string {
	if p.Printed.IsZero() {
		return ""
	}
	return p.Printed.Format("2006-01-02 15:04 -07:00")
}

// printed says when the paper was printed, if that is known.
func (p *printer) printed() []pair {
	if p.Printed.IsZero() {
		return nil
	}
	return []pair{{"Printed", p.printedText()}}
}

// pageOf says which page one is.
func pageOf(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) }

// line sets the stamp as the one line at the head of a page of text; names that are too long are cut.
func (s stamp) line(n, of int) string {
	const revision = 12 // columns for a revision, at most
	words := []string{"rev " + canvas.Clip(s.revision, revision), s.hash}
	if s.printed != "" {
		words = append(words, s.printed)
	}
	rest := ", " + strings.Join(append(words, pageOf(n, of)), ", ")
	return canvas.Squeeze(model.Clean(s.well), pageWidth-canvas.Width(rest)) + rest
}
