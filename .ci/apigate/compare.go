package main

import (
	"fmt"
	"io"
	"maps"
	"slices"

	"golang.org/x/exp/apidiff"
	"golang.org/x/mod/semver"
)

// compare prints how the packages differ, and returns an error unless what is
// incompatible is allowed.
func compare(then, now *module, announced map[string]bool, tag string, verbose bool, out io.Writer) error {
	if then.path != now.path {
		return fmt.Errorf("the module is now %s: it was %s at %s", now.path, then.path, tag)
	}
	fmt.Fprintf(out, "compared with %s\n", tag)
	var incompatible, unannounced []string
	for _, name := range slices.Sorted(maps.Keys(then.packages)) {
		if !comparePackage(then, now, name, verbose, out) {
			continue
		}
		incompatible = append(incompatible, name)
		if !announced[name] {
			unannounced = append(unannounced, name)
		}
	}
	if verbose {
		for _, name := range slices.Sorted(maps.Keys(now.packages)) {
			if then.packages[name] == nil {
				fmt.Fprintf(out, "%s: compatible: the package is new\n", name)
			}
		}
	}

	if len(incompatible) > 0 && semver.Compare(tag, "v1.0.0") >= 0 {
		return fmt.Errorf("incompatible with %s, which needs a new major version: %q", tag, incompatible)
	}
	if len(unannounced) > 0 {
		return fmt.Errorf("incompatible with %s, and CHANGELOG.md has no line \"- Incompatible: package: what changed\" in its section Unreleased for: %q", tag, unannounced)
	}
	if len(incompatible) > 0 {
		fmt.Fprintf(out, "announced, so the next release needs a new minor version: %q\n", incompatible)
	}
	return nil
}

// comparePackage prints the changes of one package, and reports whether any is
// incompatible.
func comparePackage(then, now *module, name string, verbose bool, out io.Writer) (incompatible bool) {
	if now.packages[name] == nil {
		fmt.Fprintf(out, "%s: incompatible: the package is gone\n", name)
		return true
	}
	for _, c := range apidiff.Changes(then.packages[name], now.packages[name]).Changes {
		switch {
		case !c.Compatible:
			incompatible = true
			fmt.Fprintf(out, "%s: incompatible: %s\n", name, c.Message)
		case verbose:
			fmt.Fprintf(out, "%s: compatible: %s\n", name, c.Message)
		}
	}
	return incompatible
}
