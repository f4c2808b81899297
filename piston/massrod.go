package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// MassEndsOff is by how much the two ends of a rod, weighed apart, miss the
// whole: big end + small end − whole. Two supports of a body at rest carry its
// mass between them, whatever its shape, so that anything beyond the scales'
// error says that something else was carried too: the rod wasn't level, a
// hanger was weighed in, a support rubbed.
func MassEndsOff[N tolerance.Number[N]](whole, bigEnd, smallEnd N) N {
	return bigEnd.Add(smallEnd).Sub(whole)
}

// MassOtherEnd is one end of a rod from the whole and the other end, for a
// bench with one scale.
func MassOtherEnd[N tolerance.Number[N]](whole, end N) N {
	return whole.Sub(end)
}

// MassCentre is how far a rod's centre of mass lies from its big end's centre:
// centres × small end ÷ (big end + small end). All lengths are in one unit and
// all masses in one. It is where the rod balances on an edge, which checks the
// weighing.
func MassCentre[R tolerance.Real[R]](centres, bigEnd, smallEnd R) R {
	return centres.Mul(smallEnd).Quo(bigEnd.Add(smallEnd))
}

// MassSmallEnd is a rod's small-end mass from the whole and where it balances:
// whole × distance from the big end's centre ÷ centres. It undoes
// [MassCentre]; the big end is the rest of the whole.
func MassSmallEnd[R tolerance.Real[R]](whole, fromBigEnd, centres R) R {
	return whole.Mul(fromBigEnd).Quo(centres)
}

// MassPads is what to take off a rod's two balance pads for its ends to lose
// what they should, the pads lying so far beyond their bores' centres, outward:
//
//	big pad   = (big cut·(centres + small pad) + small cut·small pad) ÷ (centres + big pad + small pad)
//	small pad = (small cut·(centres + big pad) + big cut·big pad) ÷ (centres + big pad + small pad)
//
// A pad isn't at its bore's centre. What is taken beyond the big end's centre
// lightens the big end by more than itself and makes the small end heavier, as
// on a lever: take 10 g at 40 mm beyond the big end of a rod of 140 mm
// centres, and the big end loses 12.9 g while the small end gains 2.9 g. With
// both pads at the centres (distances 0) each loses what its end should.
//
// A result below zero can't be done by taking off. All lengths are in one unit
// and all masses in one.
func MassPads[R tolerance.Real[R]](bigCut, smallCut, centres, bigPad, smallPad R) (big, small R) {
	apart := centres.Add(bigPad).Add(smallPad)
	big = bigCut.Mul(centres.Add(smallPad)).Add(smallCut.Mul(smallPad)).Quo(apart)
	small = smallCut.Mul(centres.Add(bigPad)).Add(bigCut.Mul(bigPad)).Quo(apart)
	return big, small
}

// MassEndsCut is what a rod's ends lose by what is taken off its two pads. It
// undoes [MassPads].
func MassEndsCut[R tolerance.Real[R]](big, small, centres, bigPad, smallPad R) (bigCut, smallCut R) {
	bigCut = big.Mul(centres.Add(bigPad)).Sub(small.Mul(smallPad)).Quo(centres)
	smallCut = small.Mul(centres.Add(smallPad)).Sub(big.Mul(bigPad)).Quo(centres)
	return bigCut, smallCut
}

// A MassRod is one rod on two scales: big end on the one, small end on the
// other, level, and then whole. Bolts are in, shells and bush as they will be
// for all.
type MassRod struct {
	Where    string      `json:"where"`             // "rod 2"
	Whole    MassBracket `json:"whole"`             // the rod alone on one scale
	BigEnd   MassBracket `json:"bigEnd,omitzero"`   // on its scale; zero where there was one scale only
	SmallEnd MassBracket `json:"smallEnd,omitzero"` // on its scale; zero where there was one scale only
}

// A MassRodEnds is what follows for one rod's ends.
type MassRodEnds struct {
	Where    string      `json:"where"`        // the rod's
	BigEnd   MassBracket `json:"bigEnd"`       // all that its own scale and the other two readings allow
	SmallEnd MassBracket `json:"smallEnd"`     // the same
	Off      MassBracket `json:"off,omitzero"` // both ends less the whole; zero where only one was weighed
	Checked  bool        `json:"checked"`      // whether both ends were weighed, so that they could disagree
}

// Ends are the rod's two ends. Where both were weighed, they must make the
// whole within the scales' errors, and each reading narrows the others down;
// with one, the other is the rest of the whole, and nothing checks it.
//
// It fails with an [InputError] where a mass isn't above zero, no end was
// weighed, an end isn't lighter than the whole, or the ends don't make the
// whole.
func (m MassRod) Ends() (MassRodEnds, error) {
	r := MassRodEnds{Where: m.Where, BigEnd: m.BigEnd, SmallEnd: m.SmallEnd, Checked: !m.BigEnd.IsZero() && !m.SmallEnd.IsZero()}
	who := clipped(m.Where)
	if err := massAboveZero("the whole of", m.Where, m.Whole); err != nil {
		return MassRodEnds{}, err
	}
	if m.BigEnd.IsZero() && m.SmallEnd.IsZero() {
		return MassRodEnds{}, &InputError{"ends of " + who, "of no reading", "weighed, one at least"}
	}
	for _, end := range []struct {
		which string
		mass  MassBracket
	}{{"the big end of", m.BigEnd}, {"the small end of", m.SmallEnd}} {
		if end.mass.IsZero() {
			continue
		}
		if err := massAboveZero(end.which, m.Where, end.mass); err != nil {
			return MassRodEnds{}, err
		}
		lo, _ := end.mass.Lower()
		if whole, _ := m.Whole.Upper(); lo >= whole {
			return MassRodEnds{}, &InputError{"mass of " + end.which + " " + who, end.mass.String(), "below the whole, " + m.Whole.String()}
		}
	}
	// An end has some mass, whatever the readings leave open.
	some := tolerance.MoreThan(units.Mass(0)).Interval()
	switch {
	case m.BigEnd.IsZero():
		r.BigEnd, _ = MassOtherEnd(m.Whole, m.SmallEnd).Intersect(some)
	case m.SmallEnd.IsZero():
		r.SmallEnd, _ = MassOtherEnd(m.Whole, m.BigEnd).Intersect(some)
	}
	if !r.Checked {
		return r, nil
	}
	r.Off = MassEndsOff(m.Whole, m.BigEnd, m.SmallEnd)
	if !r.Off.Contains(0) {
		return MassRodEnds{}, &InputError{"ends of " + who, m.BigEnd.String() + " and " + m.SmallEnd.String() + " together",
			"the whole, " + m.Whole.String() + ", within the scales' errors: they differ by " + r.Off.String() + "; level the rod, weigh hangers apart, and weigh again"}
	}
	// What the other two readings say of an end holds too. They meet, since
	// zero is among what the ends are off.
	r.BigEnd, _ = m.BigEnd.Intersect(MassOtherEnd(m.Whole, m.SmallEnd))
	r.SmallEnd, _ = m.SmallEnd.Intersect(MassOtherEnd(m.Whole, m.BigEnd))
	return r, nil
}
