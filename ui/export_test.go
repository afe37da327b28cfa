package ui

// KeysOfPages returns the keys of each binding of the pages as they arrive, for tests.
func KeysOfPages() (keys [][]string) {
	for _, b := range bindings() {
		keys = append(keys, b.Keys())
	}
	return keys
}
