package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"golang.org/x/mod/semver"
)

// lastRelease is the greatest version tag that the commit checked out in dir
// contains, or empty.
func lastRelease(dir string) (string, error) {
	tags, err := git(dir, "tag", "--list", "v*", "--merged", "HEAD")
	if err != nil {
		return "", err
	}
	last := ""
	for tag := range strings.FieldsSeq(tags) {
		if semver.Canonical(tag) == tag && semver.Compare(tag, last) > 0 {
			last = tag
		}
	}
	return last, nil
}

// atTag loads the packages as they were at the tag, from a worktree that is
// gone afterwards.
func atTag(dir, tag string) (_ *module, err error) {
	temp, err := os.MkdirTemp("", "apigate")
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(temp)) }()
	tree := filepath.Join(temp, "checkout")
	if _, err := git(dir, "worktree", "add", "--quiet", "--detach", tree, tag); err != nil {
		return nil, err
	}
	defer func() {
		_, e := git(dir, "worktree", "remove", "--force", tree)
		err = errors.Join(err, e)
	}()
	return load(tree)
}

func git(dir string, args ...string) (string, error) {
	cmd := exec.Command("git", append([]string{"-C", dir}, args...)...)
	var errs strings.Builder
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("git %s: %w: %s", strings.Join(args, " "), err, strings.TrimSpace(errs.String()))
	}
	return string(out), nil
}
