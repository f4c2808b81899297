// Package recipe takes the boilerplate out of the recipes in examples, and
// nothing else: what a recipe teaches stays in the recipe.
//
// A recipe is a main package with one function that its golden test can call:
//
//	func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
//
//	func run(args []string, in io.Reader, out, errs io.Writer) int {
//		flags := recipe.Flags("endgap", "Is the ring's end gap within its limits?", errs)
//		gap := flags.String("gap", "0.35 mm", "the `gap` as measured")
//		if exit, done := flags.Parse(args, out); done {
//			return exit
//		}
//		g, err := units.ParseLength(*gap)
//		if err != nil {
//			return flags.Fail(err)
//		}
//		…
//		return recipe.Answered
//	}
//
// # Exit codes
//
// [Answered], 0, when the recipe has given its answer, be the verdict good or
// bad, or its help. [Refused], 1, when its input can't be used: a flag it
// doesn't have is bad input like any other. There is no third code.
//
// # Errors
//
// The answer and the help go to out, and what is wrong goes to errs, as one
// line that begins with the recipe's name. [ReadInput] gives an [*InputError]
// that names the file, and reads no more than [MaxInput] bytes.
//
// Package recipetest tests recipes.
package recipe
