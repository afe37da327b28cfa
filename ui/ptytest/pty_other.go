//go:build !unix

package ptytest

import (
	"errors"
	"os"
	"os/exec"
)

func begin(*exec.Cmd, int, int) (*os.File, error) { return nil, errors.ErrUnsupported }

func setSize(*os.File, int, int) error { return errors.ErrUnsupported }

func modesOf(*os.File) (string, error) { return "", errors.ErrUnsupported }
