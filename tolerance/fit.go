package tolerance

import "github.com/tenthou/tenthou/units"

// Clearance is the room of a shaft in its hole: hole less shaft. Below zero
// it is an interference, and the shaft has to be pressed in.
func Clearance[N Number[N]](hole, shaft N) N { return hole.Sub(shaft) }

// HoleSize is the size of the hole in which a shaft has a clearance. With
// brackets it holds every hole that can be it; which holes will give a wanted
// clearance for certain is another question: see [HoleBand].
func HoleSize[N Number[N]](shaft, clearance N) N { return shaft.Add(clearance) }

// ShaftSize is the size of the shaft that has a clearance in a hole. With
// brackets it holds every shaft that can be it; which shafts will give a
// wanted clearance for certain is another question: see [ShaftBand].
func ShaftSize[N Number[N]](hole, clearance N) N { return hole.Sub(clearance) }

// A FitOf is a hole and the shaft that goes in it: what may be made
// ([FitBands]), or two parts that were measured ([FitSizes]). Hole and shaft
// stand for any inner and outer feature, such as a groove and its ring. It is
// plain data; the zero value knows nothing.
type FitOf[Q units.Quantity] struct {
	Hole     Interval[Q] `json:"hole"`              // all sizes that it may have
	Shaft    Interval[Q] `json:"shaft"`             // all sizes that it may have
	Measured bool        `json:"measured,omitzero"` // two parts, not all that may be made
}

// A Fit is a fit of lengths.
type Fit = FitOf[units.Length]

// FitBands is the fit of all holes that one band allows with all shafts that
// another allows. It fails with a [FitError] where a band asks nothing or is
// out of range.
func FitBands[Q units.Quantity](hole, shaft BandOf[Q]) (FitOf[Q], error) {
	return newFit(FitOf[Q]{Hole: hole.limits, Shaft: shaft.limits}, ErrNoLimit, "a band with at least one limit")
}

// FitSizes is the fit of one hole with one shaft, of each of which a bracket
// was measured. It fails with a [FitError] where nothing was measured or a
// bracket is out of range.
func FitSizes[Q units.Quantity](hole, shaft Interval[Q]) (FitOf[Q], error) {
	return newFit(FitOf[Q]{Hole: hole, Shaft: shaft, Measured: true}, ErrNoReading, "a bracket with at least one end")
}

func newFit[Q units.Quantity](f FitOf[Q], none error, want string) (FitOf[Q], error) {
	for i, part := range [...]Interval[Q]{f.Hole, f.Shaft} {
		name := [...]string{"hole", "shaft"}[i]
		if part.IsZero() {
			return FitOf[Q]{}, &FitError{Part: name, Kind: none, Want: want}
		}
		if !part.InRange() {
			return FitOf[Q]{}, &FitError{Part: name, Kind: ErrRange, Want: "sizes within the range of their type"}
		}
	}
	if !f.Clearance().InRange() {
		return FitOf[Q]{}, &FitError{Part: "clearance", Kind: ErrRange, Want: "a difference within the range of its type; of temperatures there is none"}
	}
	return f, nil
}

// Clearance holds the clearance of every hole with every shaft, exactly.
// Below zero it is an interference.
func (f FitOf[Q]) Clearance() Interval[Q] { return Clearance(f.Hole, f.Shaft) }

// Least is the least clearance. Below zero it is the greatest interference.
// ok is false where a missing size leaves it open.
func (f FitOf[Q]) Least() (least Q, ok bool) {
	v, end := f.Clearance().Lower()
	return v, end != Absent
}

// Greatest is the greatest clearance. Below zero it is the least
// interference. ok is false where a missing size leaves it open.
func (f FitOf[Q]) Greatest() (greatest Q, ok bool) {
	v, end := f.Clearance().Upper()
	return v, end != Absent
}

// Mean is halfway between the least and the greatest clearance, rounded to
// the nearest quantum, ties to even. ok is false where either is open.
func (f FitOf[Q]) Mean() (mean Q, ok bool) { return f.Clearance().Middle() }

// Judge says how the clearances lie to a wanted band. Of two measured parts
// Undecided means that the readings don't tell. Of two bands it means that
// some pairs would be within and some not: measure and pair them, or have
// bands made that fit for certain ([HoleBand], [ShaftBand]).
func (f FitOf[Q]) Judge(wanted BandOf[Q]) Verdict { return wanted.Judge(f.Clearance()) }

// Outside is how far the clearances reach beyond a wanted band, at its least
// and at its greatest; zero where they don't. ok is false where they have no
// end on a side that the band limits.
func (f FitOf[Q]) Outside(wanted BandOf[Q]) (below, above Q, ok bool) {
	c, w := f.Clearance(), wanted.limits
	if !c.InRange() || !w.InRange() {
		return 0, 0, false
	}
	if w.loEnd != Absent {
		if c.loEnd == Absent {
			return 0, 0, false
		}
		below = max(0, checkedSub(w.lo, c.lo))
	}
	if w.hiEnd != Absent {
		if c.hiEnd == Absent {
			return 0, 0, false
		}
		above = max(0, checkedSub(c.hi, w.hi))
	}
	return below, above, true
}

// String is the clearance or interference in words, exactly: "clearance
// 0.005–0.038 mm", "interference 0.018–0.059 mm", "from 0.018 mm interference
// to 0.023 mm clearance".
func (f FitOf[Q]) String() string {
	c := f.Clearance()
	if !c.InRange() {
		return "clearance out of range"
	}
	switch f.Kind() {
	case ClearanceFit:
		return "clearance " + amount(c)
	case InterferenceFit:
		return "interference " + amount(c.neg())
	}
	if c.loEnd == Absent || c.hiEnd == Absent {
		return "clearance " + c.String()
	}
	return "from " + text(-c.lo) + " interference to " + text(c.hi) + " clearance"
}

// amount writes one value, or what an interval allows.
func amount[Q units.Quantity](i Interval[Q]) string {
	if i.IsExact() {
		return i.String()
	}
	return BandFrom(i).String()
}
