package quantity

import "fmt"

// Fault is why a text was refused. The errors of this package say what is
// wrong in that very text and how to write it; errors.Is tells their cause.
type Fault string

// The reasons for refusing a text.
const (
	ErrEmpty     Fault = "no value entered"
	ErrTooLong   Fault = "text too long"
	ErrNumber    Fault = "not a number"
	ErrNotFinite Fault = "not a finite number"
	ErrAmbiguous Fault = "number can be read in two ways"
	ErrDigits    Fault = "too many digits"
	ErrNoUnit    Fault = "unit missing"
	ErrUnit      Fault = "unknown unit"
	ErrKind      Fault = "unit of another kind"
	ErrWhole     Fault = "not a whole number"
)

// Error returns the reason in a few words.
func (f Fault) Error() string { return string(f) }

// refusal is a fault with the explanation for the person who typed the text.
type refusal struct {
	fault  Fault
	reason string
}

// refuse makes the error for one text.
func refuse(fault Fault, format string, args ...any) error {
	return &refusal{fault, fmt.Sprintf(format, args...)}
}

// Error returns one line: what is wrong and how to write it.
func (r *refusal) Error() string { return r.reason }

// Unwrap returns the [Fault].
func (r *refusal) Unwrap() error { return r.fault }
