package quiet_test

import (
	"fmt"
	"os"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/ptytest"
	_ "borewalk/ui/quiet"
)

// TestMain lets the test run itself as the program whose start is looked at. That program has bubbletea in it.
func TestMain(m *testing.M) {
	if os.Getenv("QUIET_TEST_PROGRAM") != "" {
		fmt.Println(tea.KeyEnter)
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// TestNothingAsked starts a program on a terminal whose name promises that it can answer, and that never does. Without
// this package the query comes first, and what the program prints 5 seconds later.
func TestNothingAsked(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{Path: os.Args[0], Env: []string{"QUIET_TEST_PROGRAM=1"}})
	if got, want := string(s.FirstOutput()), "enter\r\n"; got != want {
		t.Errorf("first output = %q, want %q", got, want)
	}
	if got := s.Queries(); len(got) > 0 {
		t.Errorf("the terminal was asked for %q", got)
	}
	if got := s.ExitCode(); got != 0 {
		t.Errorf("exit code = %d, want 0", got)
	}
}
