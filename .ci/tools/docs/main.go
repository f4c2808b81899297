// Docs reads the library packages of the module in the current directory and
// fails when
//
//   - a package has no doc.go, or its comment there doesn't begin "Package name";
//   - an exported name has no comment, or one that doesn't begin as it should: a
//     function's or method's with its name, a type's, constant's or variable's
//     with its name or "A", "An" or "The" and its name. In a group of constants or
//     variables the group's comment, or one at the end of the line, is enough; for
//     a field or an interface's method so is a mention in the type's comment. The
//     method Error alone needs none, since every error's means the same;
//   - a package has no benchmark.
//
// It also lists the exported functions that have no Example, and with -v the
// methods. With -examples it fails for the functions.
package main

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/tenthou/tenthou/ci/tools/internal/golist"
)

func main() {
	examples := flag.Bool("examples", false, "fail where an exported function has no Example")
	verbose := flag.Bool("v", false, "list the methods that have no Example too")
	unfinished := flag.String("unfinished", "", "packages not held to it yet, with commas between")
	flag.Parse()
	if err := run(*examples, *verbose, *unfinished); err != nil {
		fmt.Fprintln(os.Stderr, "docs:", err)
		os.Exit(1)
	}
}

func run(examples, verbose bool, unfinished string) error {
	all, err := golist.Load("./...")
	if err != nil {
		return err
	}
	pkgs := golist.Library(all, unfinished)
	if len(pkgs) == 0 {
		return fmt.Errorf("there is no library package")
	}
	var faults []string
	missing := 0
	for _, p := range pkgs {
		c, err := check(p)
		if err != nil {
			return err
		}
		faults = append(faults, c.faults...)
		without, err := exampleless(p)
		if err != nil {
			return err
		}
		missing += len(without.functions)
		fmt.Printf("%-24s %4d exported names, %3d benchmarks, Examples for %d of %d functions and %d of %d methods\n",
			p.Below(), c.names, c.benchmarks,
			without.allFunctions-len(without.functions), without.allFunctions,
			without.allMethods-len(without.methods), without.allMethods)
		names := without.functions
		if verbose {
			names = slices.Concat(names, without.methods)
		}
		if len(names) > 0 {
			fmt.Printf("\tno Example for %s\n", strings.Join(names, ", "))
		}
	}
	if len(faults) > 0 {
		return fmt.Errorf("%d faults\n%s", len(faults), strings.Join(faults, "\n"))
	}
	if examples && missing > 0 {
		return fmt.Errorf("%d functions have no Example", missing)
	}
	return nil
}
