// Package quiet keeps the program from asking the terminal anything when it starts. Import it for its effect, from
// package main and from every package that draws with bubbletea:
//
//	import _ "borewalk/ui/quiet"
//
// bubbletea v1 asks for the terminal's background colour in the initialisation of its package, that is, before main, and
// waits up to 5 seconds for the answer. Over a satellite link the answer takes a round trip; a serial line or a simple
// terminal never gives it. The question is not asked when the answer is known, so this package tells lipgloss one. Which
// one does not matter: no colour of this program depends on the background.
//
// It works because of the order in which Go initialises packages (The Go Programming Language Specification, "Program
// initialization"; fixed since Go 1.21): they are sorted by import path, and again and again the first one whose imports
// are all initialised goes next. This package needs lipgloss alone, which bubbletea needs too, and "borewalk/ui/quiet"
// sorts before "github.com/charmbracelet/bubbletea". So it must import nothing but lipgloss, and the module's name must
// sort before "github.com/c".
package quiet

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
