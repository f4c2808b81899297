package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// chainLinksMost is more than any chain has.
const chainLinksMost = 10_000

// A DriveChain is a chain measured for wear.
type DriveChain struct {
	Where  string            // "camshaft chain"
	Pitch  units.Length      // of the chain when new, pin to pin
	Links  int               // of the run that was measured, from 1
	Length tolerance.Bracket // of that run, pin to pin, pulled straight
	// Limit is the manual's greatest elongation, as a part of the length when new:
	// 1/100 for one per cent. None is built in; zero where the manual gives none.
	Limit tolerance.Ratio
	// Span is the straight distance of the free run between its points of contact,
	// and Deflection how far its middle can be pressed aside from its line. Both
	// may be zero: not measured.
	Span             tolerance.Bracket
	Deflection       tolerance.Bracket // from its line; half of the movement to both sides
	DeflectionLimits tolerance.Spec    // the manual's, or empty
	Teeth            int               // of the driven sprocket; 0 where the lag isn't wanted
	Pulling          int               // links of the pulling run between the sprockets; 0 where the lag isn't wanted
}

// A DriveChainReport is how worn a chain is.
type DriveChainReport struct {
	Length     tolerance.Finding `json:"length"`     // of the run, against the length at the limit
	LengthNew  units.Length      `json:"lengthNew"`  // of the run, from its links and pitch
	Least      float64           `json:"least"`      // elongation in per cent, at the least
	Greatest   float64           `json:"greatest"`   // and at the greatest
	Deflection tolerance.Finding `json:"deflection"` // of the free run; empty where it wasn't measured
	Slack      tolerance.Bracket `json:"slack"`      // in the free run; zero where it wasn't measured
	// Lag is how far the driven sprocket lags for the growth of its pulling run, in
	// its own degrees, from the least to the greatest; both 0 where not asked.
	Lag  [2]float64 `json:"lag"`
	Next string     `json:"next"` // what to do
}

// Inspect judges a chain by its length. Below zero, the elongation is none that
// wear can give: links, pitch or reading are wrong, and the report says so. It
// fails with an [InputError] where a reading can't be.
//
// A toothed belt isn't measured like this: its tension, and when it is renewed,
// are the engine maker's manual's alone.
func (c DriveChain) Inspect() (DriveChainReport, error) {
	if err := c.check(); err != nil {
		return DriveChainReport{}, err
	}
	r := DriveChainReport{LengthNew: c.Pitch.Scale(int64(c.Links), 1)}
	var spec tolerance.Spec
	if c.Limit.Valid() {
		limit := units.ScaleRound(r.LengthNew, c.Limit.Num, c.Limit.Den, units.Down)
		spec.Wear = tolerance.AtMost(r.LengthNew + limit)
	}
	var err error
	if r.Length, err = inputAssess(fmt.Sprintf("length of %d links", c.Links), c.Where, spec, c.Length); err != nil {
		return DriveChainReport{}, err
	}
	type f = tolerance.Float
	mm := func(l units.Length) f { return f(l.Float(units.InMillimetres)) }
	lo, hi := inputEnds(c.Length)
	percent := func(l units.Length) float64 {
		return float64(ChainElongation(mm(l), mm(c.Pitch), f(c.Links)))
	}
	r.Least, r.Greatest = percent(lo), percent(hi)
	if !c.Deflection.IsZero() {
		if r.Deflection, err = inputAssess("deflection of the free run", c.Where, c.DeflectionLimits, c.Deflection); err != nil {
			return DriveChainReport{}, err
		}
		// More deflection over a shorter run is more slack.
		sLo, sHi := inputEnds(c.Span)
		dLo, dHi := inputEnds(c.Deflection)
		least, err1 := units.Nearest(float64(ChainSlack(mm(sHi), mm(dLo))), units.InMillimetres)
		most, err2 := units.Nearest(float64(ChainSlack(mm(sLo), mm(dHi))), units.InMillimetres)
		if err1 != nil || err2 != nil {
			return DriveChainReport{}, &InputError{"deflection of the free run", c.Deflection.String(), "of a chain"} // not reached: both are checked
		}
		r.Slack = inputSpan(max(least-units.Picometre, 0), most+units.Picometre)
	}
	if c.Teeth > 0 && c.Pulling > 0 {
		for i, l := range [2]units.Length{lo, hi} {
			growth := mm(ChainStretch(l, c.Pitch, c.Links)) * f(c.Pulling) / f(c.Links)
			r.Lag[i] = float64(ChainRetard(growth, f(c.Teeth), mm(c.Pitch)))
		}
	}
	r.Next = c.next(r)
	return r, nil
}

func (c DriveChain) next(r DriveChainReport) string {
	switch {
	case r.Greatest < 0:
		return "shorter than new: count the links and check the pitch and the reading again"
	case r.Length.Standing == tolerance.PastWearLimit || r.Deflection.Standing >= tolerance.OutsideNewBand:
		return "renew the chain, and look at the sprockets, guides and tensioner: a worn chain wears its sprockets to its own pitch"
	case c.Limit.Valid() && r.Length.Standing == tolerance.CantTell:
		return r.Length.Settle + "; over more links the same error of reading counts for less"
	case !c.DeflectionLimits.IsZero() && r.Deflection.Standing == tolerance.CantTell && r.Deflection.Settle != "":
		return r.Deflection.Settle
	case !c.Limit.Valid():
		return "look up the greatest elongation in the engine maker's manual; none is built in here"
	}
	return "none by this test; try it at several places round the chain"
}

func (c DriveChain) check() error {
	if err := chainPitch(c.Pitch); err != nil {
		return err
	}
	if c.Links < 1 || c.Links > chainLinksMost || int64(c.Links) > int64(inputLargest/c.Pitch) {
		return &InputError{"links of the run", fmt.Sprint(c.Links), "from 1 to 10000, and not longer than 10 m"}
	}
	if err := inputBracket("length of the run", c.Length, units.Picometre); err != nil {
		return err
	}
	run := c.Pitch.Scale(int64(c.Links), 1)
	if lo, hi := inputEnds(c.Length); lo < run-run/10 || hi > run+run/10 {
		return &InputError{"length of the run", c.Length.String(), "within a tenth of " + fmt.Sprint(c.Links) + " links of " + c.Pitch.String() + ", " + run.String()}
	}
	if c.Limit != (tolerance.Ratio{}) && (c.Limit.Sign() <= 0 || c.Limit.Num > c.Limit.Den/10) {
		return &InputError{"greatest elongation", c.Limit.String(), "above 0 and at most a tenth: 1/100 for one per cent"}
	}
	if c.Teeth < 0 || c.Teeth > 1000 || c.Pulling < 0 || c.Pulling > chainLinksMost {
		return &InputError{"teeth and links of the pulling run", fmt.Sprint(c.Teeth, " and ", c.Pulling), "from 0 to 1000 and to 10000"}
	}
	if c.Deflection.IsZero() {
		return nil
	}
	return firstError(
		func() error { return inputBracket("deflection of the free run", c.Deflection, 0) },
		func() error { return inputBracket("free run", c.Span, units.Millimetre) },
	)
}
