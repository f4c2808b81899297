package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SpringShimFor is the shim under a spring that brings its height to the wanted
// one: installed height as measured, less the wanted. Below zero the spring
// stands too low, and no shim helps.
func SpringShimFor[N tolerance.Number[N]](installed, wanted N) N { return installed.Sub(wanted) }

// InstalledWithShim is the installed height once a shim is under the spring: the
// inverse of [SpringShimFor].
func InstalledWithShim[N tolerance.Number[N]](installed, shim N) N { return installed.Sub(shim) }

// A SpringShim is a spring shim (spacer) in stock.
type SpringShim struct {
	Name      string            `json:"name"`      // "0.5 mm"
	Thickness tolerance.Bracket `json:"thickness"` // as measured, above 0
}

// A SpringShimChoice is what to lay under a spring.
type SpringShimChoice struct {
	Wanted tolerance.Bracket `json:"wanted"`         // the shims that bring the middle of the height into the band, together
	Pieces []int             `json:"pieces"`         // places in the stock, in its order; empty where none is needed
	Height tolerance.Bracket `json:"height"`         // with them
	Ok     bool              `json:"ok"`             // the whole of Height is in the band
	Next   string            `json:"next,omitempty"` // what to do where it isn't
	Load   LoadBracket       `json:"load,omitzero"`  // with them, where readings were given
}

// A SpringShimNeed is a spring that stands too high, or bears too little.
type SpringShimNeed struct {
	Installed tolerance.Bracket // height without shims, from the spring's seat to the retainer
	Height    tolerance.Band    // wanted; empty where Load is given
	// Load is the wanted seat load, and Readings two of the spring's own that tell
	// its height for it.
	Load     tolerance.BandOf[units.Force]
	Readings [2]SpringReading // of the spring, at two heights; not asked where Height is given
	Most     int              // shims on one another, 1 to 4; manuals allow two at most
}

// ChooseSpringShims finds the fewest shims, of a stock of which each may be used
// more than once, that bring the whole bracket of the height into the wanted
// band, and of these the ones that bring its middle nearest to the band's. With
// a wanted load the height is that of the load, by [SpringHeightFrom], and the
// band so narrow that every load in it is in the wanted one.
//
// Shims take height from the open spring as well: check its coil-bind margin
// with what is found. It fails with an [InputError] where a size can't be, or
// where the band asks nothing or for both height and load.
func ChooseSpringShims(need SpringShimNeed, stock []SpringShim) (SpringShimChoice, error) {
	judge, err := need.check(stock)
	if err != nil {
		return SpringShimChoice{}, err
	}
	var best SpringShimChoice
	var bestOff units.Length
	pieces := make([]int, 0, need.Most)
	for count := 0; count <= need.Most && !best.Ok; count++ {
		var lay func(from int, height tolerance.Bracket) error
		lay = func(from int, height tolerance.Bracket) error {
			if len(pieces) == count {
				ok, off, load, err := judge(height)
				if err != nil || !ok || best.Ok && off >= bestOff {
					return err
				}
				bestOff = off
				best = SpringShimChoice{Pieces: append([]int{}, pieces...), Height: height, Ok: true, Load: load}
				return nil
			}
			for i := from; i < len(stock); i++ {
				pieces = append(pieces, i)
				err := lay(i, InstalledWithShim(height, stock[i].Thickness))
				pieces = pieces[:len(pieces)-1]
				if err != nil {
					return err
				}
			}
			return nil
		}
		if err := lay(0, need.Installed); err != nil {
			return SpringShimChoice{}, err
		}
	}
	best.Wanted = need.wanted()
	if !best.Ok {
		best.Height, best.Pieces = need.Installed, nil
		best.Next = "no shims in stock bring the whole of the height into the band"
		if w := best.Wanted; !w.IsZero() {
			best.Next += fmt.Sprintf(": it takes %s in all", w)
			if _, hi := inputEnds(w); hi <= 0 {
				best.Next = "the spring stands too low for any shim: take a shorter path to its height, such as a lower spring seat, as the engine maker's manual allows"
			}
		}
	}
	return best, nil
}

// heights is the band of heights wanted, by the load where that is given.
func (n SpringShimNeed) heights() (tolerance.Bracket, bool) {
	if !n.Height.IsZero() {
		return n.Height.Interval(), true
	}
	lo, loEnd := n.Load.Lower()
	hi, hiEnd := n.Load.Upper()
	if loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		return tolerance.Bracket{}, false
	}
	tall, err1 := SpringHeightFrom(n.Readings[0], n.Readings[1], tolerance.Exactly(lo))
	short, err2 := SpringHeightFrom(n.Readings[0], n.Readings[1], tolerance.Exactly(hi))
	if err1 != nil || err2 != nil {
		return tolerance.Bracket{}, false
	}
	// The greatest height that bears enough for certain, the least that doesn't
	// bear too much.
	most, _ := inputEnds(tall)
	_, least := inputEnds(short)
	if least > most {
		return tolerance.Bracket{}, false
	}
	return inputSpan(least, most), true
}

// wanted is the shims that bring the middle of the height into the band.
func (n SpringShimNeed) wanted() tolerance.Bracket {
	h, ok := n.heights()
	m, okM := n.Installed.Middle()
	_, loEnd := h.Lower()
	_, hiEnd := h.Upper()
	if !ok || !okM || loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		return tolerance.Bracket{}
	}
	return SpringShimFor(tolerance.Exactly(m), h)
}

// judge says whether a height serves, and how far off the middle it is.
type springJudge func(height tolerance.Bracket) (ok bool, off units.Length, load LoadBracket, err error)

func (n SpringShimNeed) check(stock []SpringShim) (springJudge, error) {
	if err := inputBracket("installed height", n.Installed, units.Picometre); err != nil {
		return nil, err
	}
	if n.Most < 1 || n.Most > 4 {
		return nil, &InputError{"shims on one another", fmt.Sprint(n.Most), "from 1 to 4"}
	}
	if len(stock) > 40 {
		return nil, &InputError{"shims in stock", fmt.Sprint(len(stock)), "at most 40 sizes"}
	}
	for i, s := range stock {
		name := inputText(s.Name)
		if name == "" {
			name = fmt.Sprint("shim ", i+1)
		}
		if err := inputBracket(name, s.Thickness, units.Picometre); err != nil {
			return nil, err
		}
	}
	byLoad := !n.Load.IsZero()
	switch {
	case byLoad == !n.Height.IsZero():
		return nil, &InputError{"what is wanted", n.Height.String() + "; " + n.Load.String(), "either a height or a load"}
	case !n.Height.InRange() || !n.Load.InRange():
		return nil, &InputError{"what is wanted", "out of range", "a band within range"}
	}
	if byLoad {
		if _, err := SpringRateBetween(n.Readings[0], n.Readings[1]); err != nil {
			return nil, err
		}
	}
	wanted, both := n.heights()
	middle, okMiddle := wanted.Middle()
	return func(height tolerance.Bracket) (bool, units.Length, LoadBracket, error) {
		if lo, _ := inputEnds(height); lo <= 0 {
			return false, 0, LoadBracket{}, nil
		}
		m, _ := height.Middle()
		off := units.Length(0)
		if both && okMiddle {
			off = m.Sub(middle).Abs()
		}
		if !byLoad {
			return n.Height.Judge(height) == tolerance.Within, off, LoadBracket{}, nil
		}
		load, err := SpringLoadFrom(n.Readings[0], n.Readings[1], height)
		if err != nil {
			return false, 0, LoadBracket{}, err
		}
		return n.Load.Judge(load) == tolerance.Within, off, load, nil
	}, nil
}
