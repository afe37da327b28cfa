//go:build !linux && !darwin && !windows

package process

func machine() string { return "" }

func boot() string { return "" }

func space() string { return "" }

// look knows of no process here that it has ended.
func look(int) (began string, running bool) { return "", true }
