//go:build race && !windows

package e2e_test

func init() { build = append(build, "-race") }
