package ui_test

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui"
)

// oddsScreen opens the odds of the third section, all trials made.
func oddsScreen(t *testing.T, width, height int, options ui.Options) *ui.Planner {
	t.Helper()
	p := screenOf(t, "ottermast-2", width, height, options, "]]")
	worked(t, p, "U")
	return p
}

func TestGoldenOdds(t *testing.T) {
	p := oddsScreen(t, 80, 24, ui.Options{})
	golden(t, "odds-80", still(p.View()))
	worked(t, p, "w")
	golden(t, "odds-told-80", still(p.View()))
	golden(t, "odds-ascii-140", still(oddsScreen(t, 140, 40, ui.Options{ASCII: true}).View()))
}

func TestOddsSayWhatStandsBehindThem(t *testing.T) {
	p := oddsScreen(t, 80, 24, ui.Options{})
	wants(t, p, "Odds of section 3 over its ranges", "P10    P50    P90   limit  odds", "odds: 1024 of 1024 trials",
		"Top of cement, along hole: likely 850.0 m; no limit of its own", "a share of trials, not of wells")
	worked(t, p, "down", "down", "down")
	wants(t, p, "Trip margin: likely 0.080 sg, at least 0.020 sg (plan) in 100 % of trials, >99", "% to 100 % of endless ones; common practice")
	worked(t, p, "end")
	wants(t, p, "Kick tolerance at TD over the least wanted")
	worked(t, p, "w")
	wants(t, p, "Washout: 0.0 to 30 %, likely 0.0 %", "Pore: the prognosis, -0.020 sg to +0.040 sg")
	worked(t, p, "end")
	wants(t, p, "in endless trials, 19 times in")
	worked(t, p, "w", "esc")
	lacks(t, p, "Odds of section")
	lacks(t, p, "not saved")
}

func TestWhereThereAreNoOdds(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "U")
	wants(t, p, "U: no entry has a range: give low and high ends on the control page, Ranges")
	press(p, "page well", "U")
	wants(t, p, "U: go to a section first")
}

// TestOddsGoOnBesideTheKeys: what is left to try is tried in the background, and dropped when the table is closed.
func TestOddsGoOnBesideTheKeys(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	_, command := p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("U")})
	if command == nil {
		t.Skip("all trials were made at once: a fast machine")
	}
	done := command()
	press(p, "down")
	wants(t, p, "Kick tolerance at TD, exact")
	press(p, "esc")
	if _, command = p.Update(done); command != nil {
		t.Error("it goes on after it was closed")
	}
	lacks(t, p, "Odds of section")
}
