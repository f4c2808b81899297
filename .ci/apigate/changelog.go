package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// announcements are the packages for which the changelog in dir announces an
// incompatible change since the last release.
func announcements(dir string) (map[string]bool, error) {
	text, err := os.ReadFile(filepath.Join(dir, "CHANGELOG.md"))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return announced(string(text)), nil
}

// announced reads the lines "- Incompatible: package: what changed" of the
// section Unreleased. A line that says nothing of what changed doesn't count.
func announced(changelog string) map[string]bool {
	found := make(map[string]bool)
	unreleased := false
	for line := range strings.Lines(changelog) {
		line = strings.TrimSpace(line)
		if title, ok := strings.CutPrefix(line, "## "); ok {
			unreleased = strings.EqualFold(strings.Trim(title, "[] "), "unreleased")
			continue
		}
		rest, ok := strings.CutPrefix(line, "- Incompatible:")
		if !unreleased || !ok {
			continue
		}
		name, what, ok := strings.Cut(rest, ":")
		if ok && strings.TrimSpace(what) != "" {
			found[strings.Trim(name, " `")] = true
		}
	}
	return found
}
