package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// NeighbourLimits are what a manual allows between journals next to each other,
// all as run-out (total indicator reading). Any may be missing. The right-angle
// rules are the manuals' own: US Army TM 9-2815-202-34, p. 4-157, allows .003 in
// for the sum of opposite high points and for the difference of those on one
// side, and at right angles a sum of .004 in "or" .002 in on each, of which the
// first and the second don't say the same.
type NeighbourLimits struct {
	Along     tolerance.Spec // of the sum where high points are opposite, of the difference where on one side
	RightSum  tolerance.Spec // of the sum where they are at right angles
	RightEach tolerance.Spec // of each where they are at right angles
	Vector    tolerance.Spec // of the vector difference, whatever the angle; zero: that of Along
}

// A NeighbourCase is how the high points of two journals lie. The manuals name
// three cases; which of them an angle between them belongs to they don't say,
// and it is the nearest here: on one side up to 45°, opposite from 135°.
type NeighbourCase uint8

// The cases.
const (
	SameSide    NeighbourCase = iota // high points up to 45° apart
	RightAngles                      // from 45° to 135°
	Opposite                         // from 135° on
)

// String is the case in words.
func (c NeighbourCase) String() string {
	switch c {
	case RightAngles:
		return "at right angles"
	case Opposite:
		return "opposite"
	}
	return "on one side"
}

// MarshalText writes what String gives.
func (c NeighbourCase) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// A NeighbourTest is a rule of a manual's applied to two neighbours in one case.
type NeighbourTest struct {
	Case    NeighbourCase     `json:"case"`    // how the high points lie
	Finding tolerance.Finding `json:"finding"` // of the sum, the difference or each
}

// A RunOutNeighbour compares a journal with the next.
type RunOutNeighbour struct {
	First   string      `json:"first"`   // "main 2"
	Second  string      `json:"second"`  // "main 3"
	Between units.Angle `json:"between"` // from one high point to the other, 0° to 180°
	// Vector is the length of the difference of the two run-outs as vectors,
	// which is what a bearing between them feels, whatever the angle.
	Vector tolerance.Finding `json:"vector"`
	// Manual are the manual's tests for the case, or the cases, that the angle
	// may belong to. Where both are there the manual governs.
	Manual []NeighbourTest `json:"manual"`
	// Standing is that of the manual's tests: the worst where there is one case,
	// can't tell where two cases differ.
	Standing tolerance.Standing `json:"standing"`
	// Differ reports that the vectors and the manual's tests don't agree.
	Differ bool `json:"differ"`
}

// Sums of run-outs for the manual's rules.

// NeighbourSum is what a manual adds up where high points are opposite or at
// right angles.
func NeighbourSum[N tolerance.Number[N]](a, b N) N { return a.Add(b) }

// NeighbourDifference is what a manual takes where high points are on one side.
func NeighbourDifference[N tolerance.Number[N]](a, b N) N { return a.Sub(b).Abs() }

// CompareNeighbours judges two journals next to each other by their run-outs as
// vectors and by the manual's rules. The vectors are seen from the same line.
func (l NeighbourLimits) CompareNeighbours(first string, a RunOutVector, second string, b RunOutVector) (RunOutNeighbour, error) {
	n := RunOutNeighbour{First: first, Second: second}
	where := first + " and " + second
	spec := l.Vector
	if spec.IsZero() {
		spec = l.Along
	}
	var err error
	if n.Vector, err = tolerance.Assess("vector difference of run-outs", where, spec, a.Sub(b).RunOut()); err != nil {
		return n, err
	}
	least, between, most := a.angleBetween(b)
	n.Between = between
	for c := caseOf(least); c <= caseOf(most); c++ {
		if err := l.test(&n, c, where, a.RunOut(), b.RunOut()); err != nil {
			return n, err
		}
	}
	n.Standing = n.stand()
	n.Differ = n.Standing != n.Vector.Standing && n.Standing != tolerance.CantTell && n.Vector.Standing != tolerance.CantTell
	return n, nil
}

func caseOf(a units.Angle) NeighbourCase {
	switch {
	case a < 45*units.Degree:
		return SameSide
	case a < 135*units.Degree:
		return RightAngles
	}
	return Opposite
}

// test adds the manual's tests for a case.
func (l NeighbourLimits) test(n *RunOutNeighbour, c NeighbourCase, where string, a, b tolerance.Bracket) error {
	keep := func(measure string, spec tolerance.Spec, stations ...tolerance.Bracket) error {
		f, err := tolerance.Assess(measure, where, spec, stations...)
		n.Manual = append(n.Manual, NeighbourTest{c, f})
		return err
	}
	switch c {
	case SameSide:
		return keep("difference of run-outs", l.Along, NeighbourDifference(a, b))
	case Opposite:
		return keep("sum of run-outs", l.Along, NeighbourSum(a, b))
	}
	if err := keep("sum of run-outs", l.RightSum, NeighbourSum(a, b)); err != nil {
		return err
	}
	return keep("run-out of each", l.RightEach, a, b)
}

// stand is what the manual's tests come to. Those without limits don't count; a
// case without any can't be told.
func (n RunOutNeighbour) stand() tolerance.Standing {
	var worst [Opposite + 1]tolerance.Standing
	var met, judged [Opposite + 1]bool
	for _, t := range n.Manual {
		met[t.Case] = true
		if s := t.Finding.Standing; !t.Finding.Spec.IsZero() && (!judged[t.Case] || runOutRank(s) > runOutRank(worst[t.Case])) {
			worst[t.Case], judged[t.Case] = s, true
		}
	}
	standing, first := tolerance.CantTell, true
	for c, is := range met {
		switch {
		case !is:
		case first:
			standing, first = worst[c], false
		case standing != worst[c]:
			return tolerance.CantTell
		}
	}
	return standing
}

// neighbours compares each main with the next.
func (s RunOutSurvey) neighbours(r *RunOutReport) error {
	last := -1
	for i, j := range s.Journals {
		if j.Apart {
			continue
		}
		if last >= 0 {
			a, b := r.Journals[last], r.Journals[i]
			n, err := s.Neighbours.CompareNeighbours(a.Where, a.Relative, b.Where, b.Relative)
			if err != nil {
				return err
			}
			r.Neighbours = append(r.Neighbours, n)
			for _, t := range n.Manual {
				f := t.Finding
				f.Standing = n.Standing
				r.keep(f, t.Finding.Spec)
			}
			r.keep(n.Vector, n.Vector.Spec)
		}
		last = i
	}
	return nil
}
