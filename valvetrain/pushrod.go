package valvetrain

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// CheckingRodLength is the length of an adjustable checking rod that has been
// screwed out by so many turns from its closed length: closed + pitch × turns.
// With the turns below zero it has been screwed in. Where its length can be
// measured over the ends, measure it: the thread's slack is not in the turns.
func CheckingRodLength[N tolerance.Number[N]](closed, pitch N, turns tolerance.Ratio) N {
	if !turns.Valid() {
		turns = tolerance.Ratio{Num: 1}
	}
	return closed.Add(pitch.Scale(turns.Num, turns.Den))
}

// PushrodForClearance is the pushrod that brings the valve clearance to the wanted
// one: rod + (measured − wanted)/ratio, the ratio being the rocker's, the valve's
// movement over the pushrod's.
//
// Why: the rod longer by one unit lowers the valve's end of the rocker by ratio.
// Rod may be the checking rod, set with no clearance left: then measured is 0.
func PushrodForClearance[N tolerance.Number[N]](rod, measured, wanted N, ratio tolerance.Ratio) N {
	return rod.Add(measured.Sub(wanted).Scale(clearanceOver(ratio)))
}

// ClearanceWithPushrod is the clearance that another pushrod would give: measured +
// (rod − pushrod) × ratio, the inverse of [PushrodForClearance].
func ClearanceWithPushrod[N tolerance.Number[N]](measured, rod, pushrod N, ratio tolerance.Ratio) N {
	return measured.Add(rod.Sub(pushrod).Scale(clearanceTimes(ratio)))
}

// PushrodForPivot is the pushrod once the rocker's pivot has been raised along the
// valve's axis, the valve's end of the rocker staying where it is: rod + rise ×
// (1 + 1/ratio). Below zero the pivot has been lowered. [PivotRatio] says why.
func PushrodForPivot[N tolerance.Number[N]](rod, rise N, ratio tolerance.Ratio) N {
	return rod.Add(rise).Add(rise.Scale(clearanceOver(ratio)))
}

// PushrodPivotRise is how far a longer pushrod lets the pivot be raised: the
// difference × ratio/(1 + ratio), the inverse of [PushrodForPivot].
func PushrodPivotRise[N tolerance.Number[N]](rod, pushrod N, ratio tolerance.Ratio) N {
	if ratio.Sign() <= 0 || ratio.Num > math.MaxInt64-ratio.Den {
		ratio = tolerance.Ratio{}
	}
	return pushrod.Sub(rod).Scale(ratio.Num, ratio.Num+ratio.Den)
}

// PushrodBallCap is how far a ball end of some diameter stands out of a gauge hole
// that it sits in: D/2 − √(D² − g²)/2. All in one unit; the hole is not larger than
// the ball. A length over the gauge holes is the length over the ball ends less the
// cap of either end.
//
// Why: the hole's rim is a circle on the ball, g/2 from its axis and so
// √(D² − g²)/2 from its centre. Written as g²/(2(D + √(D² − g²))), which loses no
// digits.
func PushrodBallCap[R tolerance.Real[R]](ball, hole R) R {
	two := ball.Const(2)
	root := ball.Sub(hole).Mul(ball.Add(hole)).Sqrt()
	return hole.Mul(hole).Quo(two.Mul(ball.Add(root)))
}

// A Pushrod is what a checking rod tells of the rod that a valve needs.
type Pushrod struct {
	Where    string            // "exhaust 3"
	Checking tolerance.Bracket // length of the checking rod as set, or of the rod that is in
	// Measured is what was found with it: the valve clearance, or, with Preload
	// set, how far the plunger of a hydraulic follower stood pressed in.
	Measured tolerance.Bracket
	Wanted   tolerance.Band  // of the clearance or the preload, by the manual; with both ends
	Ratio    tolerance.Ratio // of the rocker, the valve's movement over the pushrod's; zero for 1
	Preload  bool            // whether Measured and Wanted are of a plunger's preload
}

// A PushrodChoice is a pushrod from stock.
type PushrodChoice struct {
	Needed tolerance.Bracket `json:"needed,omitzero"` // every rod that brings the whole of the reading into the band; zero where none does
	Ideal  tolerance.Bracket `json:"ideal"`           // the rod that would bring it to the band's middle
	Size   int               `json:"size"`            // place in the stock of the best that does; -1 for none
	After  tolerance.Bracket `json:"after,omitzero"`  // clearance or preload with it
	Ok     bool              `json:"ok"`              // whether one does
	Next   string            `json:"next"`            // what to do
}

// With is the clearance or preload with another pushrod.
func (p Pushrod) With(rod tolerance.Bracket) tolerance.Bracket {
	if p.Preload {
		return p.Measured.Add(rod.Sub(p.Checking))
	}
	return ClearanceWithPushrod(p.Measured, p.Checking, rod, ratioOrOne(p.Ratio))
}

// pushrodLongest is more than any pushrod measures.
const pushrodLongest = units.Metre

// Choose takes from stock the pushrod whose whole bracket of clearance or preload
// lands in the band, nearest to its middle; of two as near, the shorter, which
// leaves a valve its clearance (common practice). The stock may be in any order.
// It fails with an [InputError] where a reading or a size can't be.
func (p Pushrod) Choose(stock []ShimPiece) (PushrodChoice, error) {
	if err := p.check(stock); err != nil {
		return PushrodChoice{}, err
	}
	ratio := ratioOrOne(p.Ratio)
	least, _ := p.Wanted.Lower()
	most, _ := p.Wanted.Upper()
	middle, _ := p.Wanted.Interval().Middle()
	c := PushrodChoice{Size: -1, Ideal: PushrodForClearance(p.Checking, p.Measured, tolerance.Exactly(middle), ratio)}
	// A clearance shrinks with the rod, a preload grows: it is a clearance seen
	// from the other side.
	if p.Preload {
		c.Ideal = PushrodForPreload(p.Checking, p.Measured, tolerance.Exactly(middle))
		nought := tolerance.Exactly(units.Length(0))
		if w, ok := clearanceWindow(p.Measured, nought.Sub(p.Checking), p.Wanted, tolerance.Whole(1)); ok {
			c.Needed = nought.Sub(w)
		}
	} else if w, ok := clearanceWindow(p.Measured, p.Checking, p.Wanted, ratio); ok {
		c.Needed = w
	}
	best := units.Length(0)
	for i, s := range stock {
		after := p.With(s.Thickness)
		if p.Wanted.Judge(after) != tolerance.Within {
			continue
		}
		off := (shimTwiceMiddle(after) - least - most).Abs()
		if c.Size < 0 || off < best || off == best && shimTwiceMiddle(s.Thickness) < shimTwiceMiddle(stock[c.Size].Thickness) {
			c.Size, best, c.After, c.Ok = i, off, after, true
		}
	}
	switch {
	case c.Ok:
		c.Next = "fit " + inputText(stock[c.Size].Name) + ", measure again, and see that the contact on the valve's tip is where it should be"
	case c.Needed.IsZero():
		c.Next = "the readings leave more room than the band has: measure the rod and the clearance more finely"
	default:
		c.Next = "none in stock is wholly in " + c.Needed.String() + ": have one made, or set by the screw where there is one"
	}
	return c, nil
}

func (p Pushrod) check(stock []ShimPiece) error {
	if err := inputBracket("checking rod", p.Checking, units.Picometre); err != nil {
		return err
	}
	field := "clearance with the checking rod"
	if p.Preload {
		field = "preload with the checking rod"
	}
	if err := inputBracket(field, p.Measured, -clearanceLargest); err != nil {
		return err
	}
	if _, hi := inputEnds(p.Measured); hi > clearanceLargest {
		return &InputError{field, p.Measured.String(), "at most 10 mm"}
	}
	if err := clearanceBand(p.Wanted); err != nil {
		return err
	}
	if len(stock) > seriesMost {
		return &InputError{"pushrods in stock", fmt.Sprint(len(stock)), "at most 512"}
	}
	for i, s := range append([]ShimPiece{{"checking rod", p.Checking}}, stock...) {
		name := s.Name
		if name == "" {
			name = fmt.Sprint("pushrod ", i)
		}
		if err := inputBracket(inputText(name), s.Thickness, units.Picometre); err != nil {
			return err
		}
		if _, hi := inputEnds(s.Thickness); hi > pushrodLongest {
			return &InputError{inputText(name), s.Thickness.String(), "at most 1 m"}
		}
	}
	return clearanceRatio("rocker ratio", ratioOrOne(p.Ratio))
}
