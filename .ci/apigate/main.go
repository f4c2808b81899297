// Apigate compares the exported interface of a module's packages with the one
// they had at the last release, and fails when a program that compiled then may
// not compile now.
//
//	apigate [-dir checkout] [-v]
//
// The last release is the greatest tag of the form v1.2.3 that the checked-out
// commit contains. Every package of the module at that tag is compared but those
// that nobody can import (main packages, internal ones) and the examples. Where
// there is no such tag yet, it compares with nothing, says so, and passes.
//
// # The rule
//
// Before v1 an incompatible change is allowed if it is announced: the section
// Unreleased of CHANGELOG.md must have a line of the form
//
//   - Incompatible: tolerance/feeler: Plan takes the blade set first.
//
// for each package that changed so, named by its path below the module (the
// package at the module's root by its last element). Such a release needs a new
// minor version. From v1 on nothing incompatible passes, announced or not, since
// it needs a new major version and with it another module path.
//
// # Limits
//
// What a change is, and whether it is compatible, is for
// golang.org/x/exp/apidiff to say: it compares what compiles, on this machine's
// operating system and processor. A function that gives another answer is for
// the tests to find.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "apigate:", err)
		}
		os.Exit(1)
	}
}

func run(args []string, out, errs io.Writer) error {
	flags := flag.NewFlagSet("apigate", flag.ContinueOnError)
	flags.SetOutput(errs)
	dir := flags.String("dir", ".", "the checkout to compare with its last release")
	verbose := flags.Bool("v", false, "print compatible changes too")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("unexpected argument %q", flags.Arg(0))
	}

	tag, err := lastRelease(*dir)
	if err != nil {
		return err
	}
	if tag == "" {
		fmt.Fprintln(out, "no v* tag yet: compared with nothing")
		return nil
	}
	then, err := atTag(*dir, tag)
	if err != nil {
		return err
	}
	now, err := load(*dir)
	if err != nil {
		return err
	}
	announced, err := announcements(*dir)
	if err != nil {
		return err
	}
	return compare(then, now, announced, tag, *verbose, out)
}
