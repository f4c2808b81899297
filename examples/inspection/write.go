package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// writeFolder makes the folder whole beside its place and moves it there: a
// report is never half there, and nothing that was there is touched.
func writeFolder(folder string, files []file) (err error) {
	if _, err := os.Stat(folder); err == nil {
		return fmt.Errorf("%s is there already: name a new folder", folder)
	}
	if err := os.MkdirAll(filepath.Dir(folder), 0o755); err != nil {
		return err
	}
	making, err := os.MkdirTemp(filepath.Dir(folder), ".inspection-")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(making))
		}
	}()
	for _, f := range files {
		if err := os.WriteFile(filepath.Join(making, f.name), f.data, 0o644); err != nil {
			return err
		}
	}
	if err := os.Chmod(making, 0o755); err != nil {
		return err
	}
	return os.Rename(making, folder)
}
