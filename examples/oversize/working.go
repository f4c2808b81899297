package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	solve "github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out one bore: the least size from its diameter or its most
// worn wall, and what a moved bar would make of two opposite walls. The formulas
// are the library's own, called with terms.
func working(e engine, j cylinder.OversizeJob, c cylinder.OversizeChoice, number string, p printer) (string, error) {
	which := -1
	for i, b := range e.Bores {
		if strconv.Itoa(b.Cylinder) == number {
			which = i
		}
	}
	if which < 0 {
		return "", fmt.Errorf("the file has no cylinder %.64q", number)
	}
	bore, need := &j.Bores[which], c.Bores[which].Need
	var b strings.Builder
	fmt.Fprintf(&b, "Cylinder %s, at the most that its readings allow; bar: %v\n", number, j.Plan.Centring)
	write := func(title string, t solve.Term) error {
		done, err := solve.Solve(t, units.Style[units.Length]{Unit: p.unit, Places: p.places})
		if err == nil {
			fmt.Fprintf(&b, "\n%s\n\n%s", title, done.Text())
		}
		return err
	}
	finished := solve.Given("size last finished to", "f", bore.Finished)
	cut, hone := solve.Given("cut per side", "c", j.Plan.Cut), solve.Given("honing stock", "h", j.Plan.Honing)
	if need.ByDiameters {
		most, _ := bore.Greatest.Upper()
		least, greatest := cylinder.LeastSizeByDiameters(finished, solve.Given("greatest diameter", "d", most), cut, hone)
		if err := write("Both walls worn alike, or the bar moved:", least.Named("least size", "D")); err != nil {
			return "", err
		}
		if err := write("All of the wear on one wall, the bar on the original axis:", greatest.Named("least size", "D")); err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "\nDo next: %s.\n", need.Settle)
		return b.String(), nil
	}
	worst, opposite := pair(bore)
	w1 := solve.Given("wear of the most worn wall", "w", worst)
	if err := write("On the original axis:", cylinder.LeastSizeOnAxis(finished, w1, cut, hone).Named("least size", "D")); err != nil {
		return "", err
	}
	if opposite != nil {
		w2 := solve.Given("wear of the wall opposite", "v", *opposite)
		if err := write("With the bar moved between these two walls:", cylinder.LeastSizeMoved(finished, w1, w2, cut, hone).Named("least size", "D")); err != nil {
			return "", err
		}
		if err := write("which moves it by", cylinder.BoreShift(w1, w2).Named("shift", "s")); err != nil {
			return "", err
		}
	}
	fmt.Fprintf(&b, "\nOver all walls at once it takes %s to %s %s, with the bar %s along and %s across from the original axis.\n",
		p.least(need.Size), p.most(need.Size), p.unit.Symbol(), p.text(need.Centre.X, units.NearestEven), p.text(need.Centre.Y, units.NearestEven))
	return b.String(), nil
}

// pair is the greatest wear of any wall, and that of the wall opposite if it was
// dialled, at any level.
func pair(b *cylinder.WornBore) (worst units.Length, opposite *units.Length) {
	most := func(i tolerance.Bracket) units.Length { v, _ := i.Upper(); return v }
	at := 0
	for i := range b.Walls {
		if most(b.Walls[i].Wear) > most(b.Walls[at].Wear) {
			at = i
		}
	}
	const turn = 360 * units.Degree
	for i := range b.Walls {
		if (b.Walls[i].Heading-b.Walls[at].Heading-turn/2)%turn == 0 {
			if v := most(b.Walls[i].Wear); opposite == nil || v > *opposite {
				opposite = &v
			}
		}
	}
	return most(b.Walls[at].Wear), opposite
}
