package cylinder

import (
	"fmt"
	"math"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A StockShim is a shim that may be had, as many as are wanted.
type StockShim struct {
	Name      string            `json:"name"`      // "0.05"
	Thickness tolerance.Bracket `json:"thickness"` // as measured, or what its maker allows
}

// A ShimPick is what to put under one liner, and what comes of it.
type ShimPick struct {
	Where string `json:"where"` // the liner's
	// Shims are the names of the shims, thinnest first; none for no shim.
	Shims []string `json:"shims"`
	// Total is their thickness together.
	Total    tolerance.Bracket `json:"total"`
	Least    tolerance.Bracket `json:"least"`    // protrusion of its least place; below zero it stands below the face
	Greatest tolerance.Bracket `json:"greatest"` // protrusion of its greatest place
}

// A ShimChoice is what to put under all liners. Ok reports whether it brings
// every place of every liner into its band, and every step within its limit,
// for certain; else Blocked says what stands in the way and Next what to do.
type ShimChoice struct {
	Picks []ShimPick          `json:"picks"` // liner by liner; none where Blocked says why
	Steps []tolerance.Bracket `json:"steps"` // between each liner and the next, 0 or more: one fewer than the picks
	Ok    bool                `json:"ok"`
	// Needed is, liner by liner, what shim thicknesses bring all its places
	// into the band for certain; the zero Bracket where no thickness does, as
	// where the liner varies by more than the band is wide.
	Needed  []tolerance.Bracket `json:"needed"`
	Blocked string              `json:"blocked,omitempty"`
	Next    string              `json:"next"`
}

const mostStacks = 2000

// stack is one way to fill the room under a flange.
type stack struct {
	names []string
	total tolerance.Bracket
}

// ChooseShims picks for every liner none of the shims in stock, one, or up to
// most on one another, so that every protrusion comes into the band and every
// step between neighbours within its limit. Of the ways that do, it is one
// with the least greatest distance of a liner's middle from the middle of the
// band (from a limit, where there is only one), and of those one with the
// least sum of distances: exactly, since liners in a row can be chosen one
// after another. The manual says whether shims may be laid on one another;
// commonly one alone may.
//
// The band is the new-part one, and where there is none the wear limit's.
func (w WetLiners) ChooseShims(stock []StockShim, most int) (ShimChoice, error) {
	if err := w.check(); err != nil {
		return ShimChoice{}, err
	}
	band := governingBand(w.Protrusion)
	if band.IsZero() {
		return ShimChoice{}, linerError("protrusion limits", "none", "a band to bring the liners into")
	}
	stacks, err := shimStacks(stock, most)
	if err != nil {
		return ShimChoice{}, err
	}
	s := shimSearch{w: w, band: band, step: governingBand(w.Step), stacks: stacks}
	return s.choose(), nil
}

func governingBand(s tolerance.Spec) tolerance.Band {
	if s.New.IsZero() {
		return s.Wear
	}
	return s.New
}

// shimStacks lists every stack of up to most shims, none first.
func shimStacks(stock []StockShim, most int) ([]stack, error) {
	if most < 0 || most > 4 {
		return nil, linerError("shims on one another", fmt.Sprint(most), "from 0 to 4")
	}
	for _, s := range stock {
		if err := linerSize("shim "+s.Name, s.Thickness); err != nil {
			return nil, err
		}
		if lo, _ := s.Thickness.Lower(); lo > mostProtrusion {
			return nil, linerError("shim "+s.Name, s.Thickness.String(), "at most 10 mm: is it in the right unit?")
		}
	}
	stacks := []stack{{nil, tolerance.Exactly(units.Length(0))}}
	type open struct {
		stack
		from int
	}
	last := []open{{stacks[0], 0}}
	for range most {
		var next []open
		for _, l := range last {
			for i := l.from; i < len(stock); i++ {
				names := append(append([]string(nil), l.names...), stock[i].Name)
				next = append(next, open{stack{names, l.total.Add(stock[i].Thickness)}, i})
			}
			if len(stacks)+len(next) > mostStacks {
				return nil, linerError("shims in stock", fmt.Sprint(len(stock)), fmt.Sprintf("few enough for %d ways to lay them", mostStacks))
			}
		}
		for _, n := range next {
			stacks = append(stacks, n.stack)
		}
		last = next
	}
	return stacks, nil
}

// neededShims are the thicknesses t with p − old + t inside the band for
// every p and old: piece by piece, the least place up to the band's least and
// the greatest up to its greatest.
func neededShims(l WetLiner, band tolerance.Band) tolerance.Bracket {
	least, greatest := tolerance.Extremes(l.Places...)
	zero := tolerance.Exactly(units.Length(0))
	least, greatest = ProtrusionWithShim(least, l.shim(), zero), ProtrusionWithShim(greatest, l.shim(), zero)
	lo, loEnd := band.Lower()
	hi, hiEnd := band.Upper()
	if v, end := least.Lower(); loEnd != tolerance.Absent {
		if end == tolerance.Absent {
			return tolerance.Bracket{}
		}
		if lo = lo.Sub(v); end == tolerance.Open {
			loEnd = tolerance.Closed
		}
	}
	if v, end := greatest.Upper(); hiEnd != tolerance.Absent {
		if end == tolerance.Absent {
			return tolerance.Bracket{}
		}
		if hi = hi.Sub(v); end == tolerance.Open {
			hiEnd = tolerance.Closed
		}
	}
	n, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	if err != nil {
		return tolerance.Bracket{}
	}
	return n
}

// away is how far the middle of a bracket of protrusions lies from the band's.
func away(least, greatest tolerance.Bracket, band tolerance.Band) float64 {
	middle := func(i tolerance.Bracket) float64 {
		lo, le := i.Lower()
		hi, he := i.Upper()
		switch {
		case le == tolerance.Absent:
			return float64(hi)
		case he == tolerance.Absent:
			return float64(lo)
		}
		return (float64(lo) + float64(hi)) / 2
	}
	return math.Abs((middle(least)+middle(greatest))/2 - middle(band.Interval()))
}

func (c ShimChoice) name(i int) string {
	if len(c.Picks[i].Shims) == 0 {
		return "no shim"
	}
	return strings.Join(c.Picks[i].Shims, " and ")
}

// String lists the picks in words.
func (c ShimChoice) String() string {
	var b strings.Builder
	for i, p := range c.Picks {
		if i > 0 {
			b.WriteString("; ")
		}
		fmt.Fprintf(&b, "%s: %s", p.Where, c.name(i))
	}
	return b.String()
}
