package wording

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/model/process"
)

// Unsaved says what a journal holds beyond the file that was opened, in how many entries they differ, and how it came to be, a sentence each.
func Unsaved(f *journal.Found, file *planfile.File, differ int) (sentences []string) {
	what := "the plan"
	if f.Plan == "" {
		what = cmp.Or(f.Title, "a plan without a file")
	}
	sentences = append(sentences, fmt.Sprintf("The program ended with changes to %s that were not saved: %s UTC, by %s, on %s.",
		what, cmp.Or(f.When(), "at no known time"), cmp.Or(f.Who, "somebody not named"), hostOf(f)))
	text := CountOf(differ, "entry differs", "entries differ") + " from the file"
	if f.Plan == "" {
		text = CountOf(differ, "entry differs", "entries differ") + " from the plan that is open"
	}
	text = Upper(text)
	if f.Typing != "" {
		text += "; " + Typed(f) + " was being typed"
	}
	sentences = append(sentences, text+".")
	switch {
	case f.Plan == "":
	case f.Same(file.Text()):
		sentences = append(sentences, "The file is as it was when the changes were begun.")
	default:
		sentences = append(sentences, "The file was changed since the changes were begun: look at the difference first. A save will ask before it replaces what others wrote.")
	}
	return sentences
}

// hostOf says where the program ran that wrote a journal.
func hostOf(f *journal.Found) string {
	if f.Process.Life() != process.Elsewhere {
		return "this computer"
	}
	return cmp.Or(model.Clean(f.Process.Host), "another computer") + ", where it may still run"
}

// Typed names the entry that was being typed when a journal was written, with what was typed of it.
func Typed(f *journal.Found) string {
	name := model.Clean(string(f.Typing))
	if ref, ok := model.Find(f.File.Plan, f.Typing); ok {
		name = ref.Words()
	}
	return name + " [" + f.Typed + "]"
}

// CountOf counts things: "no entry differs", "1 entry differs", "2 entries differ".
func CountOf(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + one
	case 1:
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Upper begins a sentence.
func Upper(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// What is said where a journal holds no other entries than the file, and of the keeper of a journal.
const (
	NoEntryDiffers = "No entry differs: it is marks and reasons in the log that are not saved, or an entry that was being typed."
	KeptAgain      = "changes are kept against a crash again"
)
