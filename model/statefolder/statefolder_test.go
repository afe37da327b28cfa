package statefolder_test

import (
	"strings"
	"testing"

	"borewalk/model/statefolder"
)

func TestPath(t *testing.T) {
	tests := []struct {
		name, goos string
		env        map[string]string
		want       string // or, of an error, what to set
		fails      bool
	}{
		{"told", "linux", map[string]string{"XDG_STATE_HOME": "/var/state", "HOME": "/home/a"}, "/var/state/borewalk", false},
		{"home", "linux", map[string]string{"HOME": "/home/a"}, "/home/a/.local/state/borewalk", false},
		{"not absolute", "linux", map[string]string{"XDG_STATE_HOME": "state", "HOME": "/home/a"}, "/home/a/.local/state/borewalk", false},
		{"apple", "darwin", map[string]string{"HOME": "/Users/a"}, "/Users/a/.local/state/borewalk", false},
		{"windows", "windows", map[string]string{"LocalAppData": `C:\Users\a\AppData\Local`, "HOME": "/home/a"}, `C:\Users\a\AppData\Local\borewalk`, false},
		{"no home", "linux", nil, "set HOME", true},
		{"a home that is no place", "linux", map[string]string{"HOME": "a"}, "set HOME", true},
		{"windows without", "windows", map[string]string{"HOME": "/home/a"}, "set LocalAppData", true},
	}
	for _, test := range tests {
		got, err := statefolder.Path(func(name string) string { return test.env[name] }, test.goos)
		switch {
		case test.fails && (err == nil || !strings.Contains(err.Error(), test.want)):
			t.Errorf("%s: error %v, want %q", test.name, err, test.want)
		case !test.fails && (err != nil || got != test.want):
			t.Errorf("%s: %q, %v, want %q", test.name, got, err, test.want)
		}
	}
}
