package main

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"
)

// optionGroups are the options in the order in which they are asked for; those of no group stand under the last heading.
var optionGroups = []struct {
	title string
	names []string
}{
	{"Opening a plan", []string{"demo", "new", "section", "units", "name"}},
	{"The screen", []string{"ascii", "no-colour"}},
	{"Printing without a screen", []string{"print", "paper", "check", "since", "against"}},
	{"Further", nil},
}

// usage writes what the command line takes, within 78 columns.
func usage(f *flag.FlagSet, out io.Writer) {
	fmt.Fprint(out, `borewalk [options] [PLAN.toml]

Plans a subsea well one hole section at a time, full screen. Without a plan it
opens a demo well, as a copy to try things on; ? shows every key.
A planning aid: verify by independent calculation; competent persons and local
codes rule.

  borewalk                      the demo
  borewalk well.toml            a plan of your own
  borewalk -new                 begin a plan from a few questions
  borewalk -check well.toml     what was found, without a screen
`)
	grouped := map[string]bool{}
	for _, g := range optionGroups {
		for _, name := range g.names {
			grouped[name] = true
		}
	}
	for _, g := range optionGroups {
		fmt.Fprintf(out, "\n%s:\n", g.title)
		f.VisitAll(func(option *flag.Flag) {
			if g.names == nil && !grouped[option.Name] {
				g.names = append(g.names, option.Name)
			}
		})
		for _, name := range slices.Clip(g.names) {
			if option := f.Lookup(name); option != nil {
				writeOption(out, option)
			}
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
