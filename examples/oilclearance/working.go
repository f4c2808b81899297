package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	solve "github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out the least and the greatest clearance of one bearing, each at
// the ends of the readings' brackets that make it so. The formulas are the library's
// own, called with terms.
func (e *engine) working(where string, p printer) (string, error) {
	which := -1
	for i := range e.Bearings {
		if e.Bearings[i].Where == where {
			which = i
		}
	}
	if which < 0 {
		return "", fmt.Errorf("there is no bearing %q", where)
	}
	o := &e.Bearings[which]
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %s\n", where, e.reports[which].Method)
	write := func(title string, t solve.Term) error {
		done, err := solve.Solve(t, units.Style[units.Length]{Unit: p.unit, Places: p.places})
		if err == nil {
			fmt.Fprintf(&b, "\n%s\n\n%s", title, done.Text())
		}
		return err
	}
	low := func(i []tolerance.Bracket) units.Length {
		l, _ := tolerance.Extremes(i...)
		v, _ := l.Lower()
		return v
	}
	high := func(i []tolerance.Bracket) units.Length {
		_, g := tolerance.Extremes(i...)
		v, _ := g.Upper()
		return v
	}
	if len(o.Bore) > 0 {
		if err := write("The least clearance:", crank.OilClearanceInstalled(solve.Given("least bore", "B", low(o.Bore)), solve.Given("greatest journal", "J", high(o.Journal))).Named("least clearance", "c")); err != nil {
			return "", err
		}
		err := write("The greatest clearance:", crank.OilClearanceInstalled(solve.Given("greatest bore", "B", high(o.Bore)), solve.Given("least journal", "J", low(o.Journal))).Named("greatest clearance", "c"))
		return b.String(), err
	}
	err := write("The least clearance:", crank.OilClearanceOfHalves(solve.Given("least housing", "H", low(o.Housing)), solve.Given("thickest upper wall", "u", high(o.Upper)),
		solve.Given("thickest lower wall", "l", high(o.Lower)), solve.Given("greatest journal", "J", high(o.Journal))).Named("least clearance", "c"))
	if err != nil {
		return "", err
	}
	err = write("The greatest clearance:", crank.OilClearanceOfHalves(solve.Given("greatest housing", "H", high(o.Housing)), solve.Given("thinnest upper wall", "u", low(o.Upper)),
		solve.Given("thinnest lower wall", "l", low(o.Lower)), solve.Given("least journal", "J", low(o.Journal))).Named("greatest clearance", "c"))
	return b.String(), err
}
