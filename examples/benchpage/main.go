// Benchpage answers: how does the library run in a browser at the bench, without
// a network?
//
// Method: the calculators in package calc are compiled to WebAssembly; one page
// of plain HTML, made from the same calculators, hands them its fields. With
// -out the page is written to a folder that any file server can serve.
//
// Source: WebAssembly and its loader as the Go distribution ships them; the
// arithmetic is the library's.
//
// For: shop software, hobbyists.
//
// Caution: a page can't see which blade was bent or which bore was dirty.
// Undecided is not a pass, and the engine maker's manual governs.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/examples/benchpage/calc"
	"github.com/tenthou/tenthou/internal/recipe"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("benchpage", "How does the library run in a browser at the bench, without a network?\n\n"+
		"Without flags: what the page's calculators answer to their examples. With -out: the page\n"+
		"itself, to be served by any file server. It needs the Go tools, from this module's root.", errs)
	folder := flags.String("out", "", "write the page to this `FOLDER`")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if *folder != "" {
		if err := write(*folder); err != nil {
			return flags.Fail(err)
		}
		fmt.Fprintf(out, "written to %s: index.html, page.css, page.js, tenthou.wasm, wasm_exec.js\n", *folder)
		return recipe.Answered
	}
	for i, c := range calc.All() {
		if i > 0 {
			fmt.Fprintln(out)
		}
		a := c.Work(nil)
		fmt.Fprintf(out, "%s\n", c.Question)
		for _, f := range c.Fields {
			fmt.Fprintf(out, "  %s: %s\n", f.Label, f.Value)
		}
		fmt.Fprintf(out, "  = %s%s\n", a.Says, a.Error)
		for _, l := range a.Lines {
			fmt.Fprint(out, recipe.Wrap(l, 96, "    ", "    "))
		}
		fmt.Fprint(out, recipe.Wrap("Mind: "+c.Caution, 96, "  ! ", "    "))
	}
	return recipe.Answered
}
