// Worksheet answers: how does an instructor get a fresh exercise sheet, with its
// answer key and the full working of every answer?
//
// Method: a seed chooses the readings, on the steps of the instruments that they
// would be read with; each answer comes from the library's own formula, called
// once with terms that remember how they were calculated, so the working can't
// disagree with the key. The same seed gives the same sheet, always.
//
// Source: the formulas' own documentation; the numbers are invented.
//
// For: instructors.
//
// Caution: a sheet teaches arithmetic. On an engine the maker's manual governs,
// and a reading has an error that a sheet leaves out.
package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/exam"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// most is how many questions a sheet may have.
const most = 200

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("worksheet", "How does an instructor get a fresh exercise sheet, with its key and full working?\n\n"+
		"The same seed gives the same sheet. -key prints the answers with their working, -json\n"+
		"the key as classmark reads it. Give the class the sheet alone.", errs)
	seed := flags.Uint64("seed", 1, "the `NUMBER` that the sheet is made from")
	count := flags.Int("questions", 8, "how `MANY` questions")
	key := flags.Bool("key", false, "print the answer key with its working")
	asJSON := flags.Bool("json", false, "print the answer key for classmark")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if *count < 1 || *count > most {
		return flags.Fail(fmt.Errorf("-questions: %d is not between 1 and %d", *count, most))
	}
	if *key && *asJSON {
		return flags.Fail(fmt.Errorf("-key and -json are two keys: ask for one"))
	}
	text, err := sheet(*seed, *count, *key, *asJSON)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}

// sheet is the questions, or the key to them. Every kind is asked in turn before
// one is asked again.
func sheet(seed uint64, count int, key, asJSON bool) (string, error) {
	r := rand.New(rand.NewPCG(seed, 0))
	var asked []question
	for len(asked) < count {
		for _, i := range r.Perm(len(kinds)) {
			if len(asked) < count {
				asked = append(asked, kinds[i](r))
			}
		}
	}
	if asJSON {
		k := exam.Key{Schema: 1, Seed: seed}
		for _, q := range asked {
			k.Questions = append(k.Questions, exam.Question{Name: q.name, Ask: q.ask, Answer: q.answer.Value(), Within: q.within, Points: q.points})
		}
		text, err := k.Text()
		return string(text), err
	}
	var b strings.Builder
	if key {
		fmt.Fprintf(&b, "Answer key, sheet %d\n", seed)
	} else {
		fmt.Fprintf(&b, "Sheet %d                    Name: ______________________\n\nGive every answer with its unit.\n", seed)
	}
	total := 0
	for i, q := range asked {
		total += q.points
		b.WriteString("\n" + recipe.Wrap(fmt.Sprintf("%d. %s (%s)", i+1, q.ask, points(q.points)), 90, "", "   "))
		if !key {
			b.WriteString("\n   Answer: ______________________\n")
			continue
		}
		s, err := working.Solve(q.answer, units.Style[units.Length]{Unit: q.unit, Places: q.places})
		if err != nil {
			return "", err
		}
		for line := range strings.Lines(s.Text()) {
			b.WriteString("   " + line)
		}
		fmt.Fprintf(&b, "   right within %s\n", q.within.Text(q.unit, units.AllPlaces))
	}
	fmt.Fprintf(&b, "\n%s in all. Undecided is not a pass; on an engine the maker's manual governs.\n", points(total))
	return b.String(), nil
}

func points(n int) string {
	if n == 1 {
		return "1 point"
	}
	return fmt.Sprintf("%d points", n)
}
