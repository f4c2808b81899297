// Stackup answers: what may come of these tolerances together, how much may
// one of them take, and which one matters most?
//
// Method: sizes that follow one another leave a closing size, each with its
// sensitivity. The worst case adds every tolerance up and is certain. The
// root-sum-square says where the closing size of many engines lies if each
// part is picked at random from its lot; simulation says it without taking the
// scatters for normal.
//
// Source: root-sum-square and standard deviations as in JCGM 100 (GUM) 5.1 and
// 4.3; simulation as in JCGM 101. The engine in chain.json is invented.
//
// For: shop software, instructors.
//
// Caution: for the one engine on the stand the worst case counts, or measured
// sizes in place of limits. The engine maker's manual governs.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

//go:embed chain.json
var demo []byte

// stack is the file: a question, what is wanted, and the links.
type stack struct {
	Schema   int              `json:"schema"`
	Question string           `json:"question"`
	Wanted   tolerance.Band   `json:"wanted,omitzero"`
	Links    []tolerance.Link `json:"links"`
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("stackup", "What may come of these tolerances together, and how much may one of them take?\n\n"+
		"Without flags it works an invented engine's squish. Write your own as in\n"+
		"examples/stackup/chain.json: for each size its limits, its sensitivity (1 where it adds,\n"+
		"-1 where it takes) and how it scatters (normal with so many sigmas, rectangular, triangular).", errs)
	source := flags.Input("chain.json", demo, "the `FILE` with the chain; - for standard input")
	sigmas := flags.Float64("sigmas", 3, "the root-sum-square at so many standard deviations, `K`")
	trials := flags.Int("trials", 100000, "so many simulated engines, `N`; 0 for none")
	seed := flags.Uint64("seed", 1, "the `SEED` of the simulation: the same gives the same answer")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	var s stack
	err = document.DecodeNamed(name, data, &s)
	switch {
	case err == nil && s.Schema != 1:
		err = fmt.Errorf("%s: schema: this reads schema 1, not %d", name, s.Schema)
	case err == nil && (*trials < 0 || *trials > 10_000_000):
		err = fmt.Errorf("-trials: 0 to 10 000 000, not %d", *trials)
	}
	if err != nil {
		return flags.Fail(err)
	}
	page, err := answer(s, *sigmas, *trials, *seed)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

func answer(s stack, sigmas float64, trials int, seed uint64) (string, error) {
	var b strings.Builder
	c := tolerance.Chain{Links: s.Links}
	worst, err := c.WorstCase()
	if err != nil {
		return "", err
	}
	many, err := c.RootSumSquare(sigmas)
	if err != nil {
		return "", err
	}
	judge := func(i tolerance.Bracket) string {
		switch {
		case s.Wanted.IsZero():
			return ""
		case s.Wanted.Judge(i) == tolerance.Undecided:
			return ": reaches outside the wanted " + s.Wanted.String()
		}
		return ": " + s.Wanted.Judge(i).String() + " the wanted " + s.Wanted.String()
	}
	b.WriteString(recipe.Wrap(s.Question, 78, "", "  "))
	fmt.Fprintf(&b, "\nworst case         %s%s\n", worst.Text(units.InMillimetres, 3), judge(worst))
	fmt.Fprintf(&b, "root-sum-square    %s at %g standard deviations%s\n", many.Within.Text(units.InMillimetres, 3), sigmas, judge(many.Within))
	if trials > 0 {
		sample, err := uncertainty.SimulateChain(uncertainty.Trials(seed, trials), c)
		if err != nil {
			return "", err
		}
		shortest, err := sample.Shortest(0.9973)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "%-18s %s holds 99.73 %%%s\n", fmt.Sprint(sample.Len(), " simulated"), shortest.Text(units.InMillimetres, 3), judge(shortest))
		if !s.Wanted.IsZero() {
			part, err := sample.Conformance(s.Wanted)
			if err != nil {
				return "", err
			}
			// Rounded down: 100 % is said of all of them alone.
			fmt.Fprintf(&b, "                   %.2f %% of them are within the wanted %v\n", math.Floor(1e4*part)/100, s.Wanted)
		}
	}
	return b.String() + "\n" + shares(s, c), nil
}

// shares says who takes how much, and how much each might.
func shares(s stack, c tolerance.Chain) string {
	var b strings.Builder
	straight, err1 := c.WorstCaseShares()
	squares, err2 := c.VarianceShares()
	if err1 != nil || err2 != nil {
		return "" // nothing has a tolerance
	}
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "link\tlimits\tof the worst case\tof the variance\tmay be, the others as they are\n")
	for i, l := range c.Links {
		room := "–"
		if !s.Wanted.IsZero() {
			if band, err := c.RoomWorstCase(i, s.Wanted); err == nil {
				room = band.Text(units.InMillimetres, 3)
			} else {
				room = "no band would do"
			}
		}
		fmt.Fprintf(w, "%s\t%s\t%.0f %%\t%.0f %%\t%s\n", l.Name, l.Band.Text(units.InMillimetres, 3), 100*straight[i], 100*squares[i], room)
	}
	w.Flush()
	return b.String()
}
