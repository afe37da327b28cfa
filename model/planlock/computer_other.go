//go:build !linux && !darwin && !windows

package planlock

func machine() string { return "" }

func boot() string { return "" }

func space() string { return "" }

// look knows of no process here that it has ended: who has the lock is asked about.
func look(int) (began string, running bool) { return "", true }
