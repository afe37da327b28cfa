package tomldoc

import (
	"errors"
	"fmt"
	"strings"

	"github.com/BurntSushi/toml"

	"borewalk/model/harmless"
)

// judge decodes text, which the scanner has passed. The decoder has the last
// word on what is valid; its words are put into ours.
func judge(name, text string) (values map[string]any, err error) {
	defer func() {
		// The decoder panics where it holds its own state for impossible.
		if r := recover(); r != nil {
			values, err = nil, &Error{File: name, Msg: fmt.Sprintf("the file cannot be read (%s); write it more simply", oneLine(fmt.Sprint(r)))}
		}
	}()
	if _, err := toml.Decode(text, &values); err != nil {
		return nil, reword(name, text, err)
	}
	return values, nil
}

// reword turns an error of the decoder into one line that says what to do.
func reword(name, text string, err error) *Error {
	var at toml.ParseError
	if !errors.As(err, &at) {
		return &Error{File: name, Msg: oneLine(err.Error()) + "; write it more simply"}
	}
	off := min(max(at.Position.Start, 0), len(text))
	said := at.Message
	key := between(said, "Key '", "'")
	switch {
	case strings.Contains(said, "cannot be used as an array"):
		return failAt(name, text, off, "%s stands both as a list [[%s]] and as something else; use one of them", key, key)
	case strings.Contains(said, "already created as a hash"):
		return failAt(name, text, off, "%s is a value and cannot hold keys; rename one of them", key)
	case strings.Contains(said, "already been defined"):
		return failAt(name, text, off, "%s is set a second time; keep one of the two", key)
	}
	word := valueAt(text, off)
	switch {
	case strings.Contains(said, "underscores"):
		return failAt(name, text, off, "the number %s has an underscore in a wrong place; take it out", word)
	case strings.Contains(said, "leading zeroes"):
		return failAt(name, text, off, "the number %s begins with a zero too many; take it out, or put the value in quotes", word)
	case strings.Contains(said, "out of range"):
		return failAt(name, text, off, "the number %s is too large to be read; write a smaller one", word)
	case strings.Contains(said, "datetime"):
		return failAt(name, text, off, "%s is not a date or a time; write it as 2026-01-31, or put it in quotes", word)
	}
	if word != "" && strings.IndexByte(`"'[{`, word[0]) < 0 {
		return failAt(name, text, off, "%s is not a number, a date, true or false; put it in quotes: %s", word, Quote(word))
	}
	return failAt(name, text, off, "%s; write it more simply", oneLine(said))
}

// between returns what stands in s between the two marks, shortened, or "this
// key" if they are not there.
func between(s, before, after string) string {
	_, s, found := strings.Cut(s, before)
	if end := strings.LastIndex(s, after); found && end > 0 {
		return short(s[:end])
	}
	return "this key"
}

// valueAt returns the unquoted value around off, shortened.
func valueAt(text string, off int) string {
	const ends = " \t\r\n,[]{}=#\"'"
	from := strings.LastIndexAny(text[:off], ends) + 1
	to := len(text)
	if i := strings.IndexAny(text[off:], ends); i >= 0 {
		to = off + i
	}
	return short(text[from:to])
}

// oneLine makes a message of one line without control characters.
func oneLine(s string) string {
	return short(strings.Join(strings.Fields(harmless.Text(s)), " "))
}
