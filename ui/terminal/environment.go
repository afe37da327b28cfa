// Package terminal is what the program knows of the terminal that it runs in: how many colours may be used and whether
// only ASCII may be drawn (Look), how large it is when it does not say (Size), how wide its characters are
// (NarrowAmbiguous), its keys (Stdin), mended where an escape sequence arrives in pieces, and its screen (Output), which is sent
// what differs from one picture to the next.
//
// Nothing here asks the terminal; everything is read from the environment. What is drawn lies elsewhere.
package terminal

import (
	"fmt"
	"strings"
)

// Environment is what the environment variables say about the terminal. Flags of the program may override it.
type Environment struct {
	// Colours is the number of colours that may be used: 16, or 0 for none at all, not even bold and reverse.
	Colours int
	// ASCII is true when only ASCII characters may be drawn.
	ASCII bool
	// ColourReason names the variable that decided about colours, for the page that explains the settings.
	ColourReason string
	// LetterReason names the variable that decided about ASCII.
	LetterReason string
}

// Look reads the environment through env (os.Getenv in the program); goos is the operating system as runtime.GOOS spells
// it.
func Look(env func(string) string, goos string) Environment {
	var e Environment
	e.Colours, e.ColourReason = colours(env, goos)
	e.ASCII, e.LetterReason = onlyASCII(env, goos)
	return e
}

// colours decides by NO_COLOR (any value but an empty one forbids colour; no-color.org) and by TERM.
func colours(env func(string) string, goos string) (int, string) {
	if v := env("NO_COLOR"); v != "" {
		return 0, fmt.Sprintf("NO_COLOR=%q", v)
	}
	term := env("TERM")
	switch {
	case term == "" && goos == "windows":
		return 16, "the Windows console"
	case term == "":
		return 0, "TERM is not set"
	case monochrome(term):
		return 0, fmt.Sprintf("TERM=%q", term)
	}
	return 16, fmt.Sprintf("TERM=%q", term)
}

// monochrome reports whether a terminal of this name is taken to have no colour. The names are those of the terminfo
// database, from memory: the DEC terminals before the VT525 had none; plain "screen" may run on any of them, and GNU
// screen on a terminal with colours is called "screen-256color" or "screen.xterm" and the like.
func monochrome(term string) bool {
	switch term {
	case "dumb", "unknown", "network", "dialup", "screen":
		return true
	}
	if strings.HasSuffix(term, "-mono") || strings.HasSuffix(term, "-m") {
		return true
	}
	return strings.HasPrefix(term, "vt") && !strings.Contains(term, "color") && !strings.HasPrefix(term, "vt525")
}

// Places reports whether a terminal of a name can place its cursor, so that a full screen can be drawn on it. The names of those that
// cannot are those of the terminfo database, from memory.
func Places(term string) bool {
	switch term {
	case "dumb", "unknown", "network", "dialup", "printer", "lpr":
		return false
	}
	return true
}

// onlyASCII decides by the locale: the first of LC_ALL, LC_CTYPE and LANG that is not empty counts (POSIX.1-2017, 8.2),
// and none means the "C" locale. The Windows console is written to in Unicode whatever the code page.
func onlyASCII(env func(string) string, goos string) (bool, string) {
	if goos == "windows" {
		return false, "the Windows console"
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := env(name); v != "" {
			return !unicodeLocale(v), fmt.Sprintf("%s=%q", name, v)
		}
	}
	return true, "no locale is set"
}

// unicodeLocale reports whether a locale such as "nb_NO.UTF-8@nynorsk" writes UTF-8. macOS uses plain "UTF-8" too.
func unicodeLocale(locale string) bool {
	charset, _, _ := strings.Cut(locale, "@")
	if _, after, found := strings.Cut(charset, "."); found {
		charset = after
	}
	charset = strings.ReplaceAll(charset, "-", "")
	return strings.EqualFold(charset, "utf8")
}
