// Package usage writes what a command line takes: a text, and the options under headings, each with its help broken into lines.
package usage

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Group is a heading with the names of the options below it, in the order in which they are asked for.
type Group struct {
	Title string
	Names []string
}

// Write writes a text and the options, within 78 columns. Those that no group names stand under a heading of their own at the end.
func Write(f *flag.FlagSet, out io.Writer, text string, groups []Group) {
	fmt.Fprint(out, text)
	grouped := map[string]bool{}
	for _, g := range groups {
		for _, name := range g.Names {
			grouped[name] = true
		}
	}
	further := Group{Title: "Further"}
	f.VisitAll(func(option *flag.Flag) {
		if !grouped[option.Name] {
			further.Names = append(further.Names, option.Name)
		}
	})
	for _, g := range append(slices.Clip(groups), further) {
		fmt.Fprintf(out, "\n%s:\n", g.Title)
		for _, name := range g.Names {
			writeOption(out, f.Lookup(name))
		}
	}
}

// writeOption writes an option and what it is for, broken into lines.
func writeOption(out io.Writer, option *flag.Flag) {
	const room, column = 78, 18
	value, help := flag.UnquoteUsage(option)
	line := "  " + strings.TrimSpace("-"+option.Name+" "+strings.ToUpper(value))
	if len(line) >= column {
		line += "\n"
	}
	written := len(line)
	if strings.HasSuffix(line, "\n") {
		written = 0
	}
	fmt.Fprint(out, line)
	for _, word := range strings.Fields(help) {
		if written < column || written+1+len(word) > room {
			if written >= column {
				fmt.Fprintln(out)
				written = 0
			}
			fmt.Fprint(out, strings.Repeat(" ", column-written), word)
			written = column + len(word)
			continue
		}
		fmt.Fprint(out, " ", word)
		written += 1 + len(word)
	}
	fmt.Fprintln(out)
}
