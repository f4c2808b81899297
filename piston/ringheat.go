package piston

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RingHeat is a ring in its bore, both to become warm: the gap closes, and
// ends that touch buckle the ring, score the bore and break lands.
//
// All answers lie on the dangerous side: a gap that is left is rounded down, a
// temperature that may be reached down, a gap that is needed up. The model is
// that of [RingGapHot], taken between the edges of the ring's face, which
// touch first. What it leaves out, such as a bore that is hotter above than
// below and a ring hotter at its back than at its face, is far more than the
// rounding: leave room.
type RingHeat struct {
	Bore tolerance.Bracket `json:"bore"` // mean diameter at the smallest place that the ring travels to, at MeasuredAt
	Gap  tolerance.Bracket `json:"gap"`  // end gap at that place, at MeasuredAt
	// Thickness is the ring's radial thickness. Where it is zero, not
	// measured, a twentieth of the bore stands for it, more than usual rings
	// have (common practice), which errs to the safe side.
	Thickness  units.Length      `json:"thickness,omitzero"`
	MeasuredAt units.Temperature `json:"measuredAt"` // of both; the zero value is 0 °C, units.Reference 20 °C
	BoreMetal  Metal             `json:"boreMetal"`  // of block or liner
	RingMetal  Metal             `json:"ringMetal"`  // of the ring
}

// ringEnds are what a RingHeat comes to once it is checked.
type ringEnds struct {
	bore      [2]units.Length
	least     units.Length // gap
	most      units.Length
	open      bool // no greatest gap
	thickness units.Length
}

func (h *RingHeat) check() (e ringEnds, err error) {
	if e.bore, err = ringBore("bore", h.Bore); err != nil {
		return e, err
	}
	if err := ringGapRead("end gap", h.Gap, h.Bore); err != nil {
		return e, err
	}
	if e.thickness, err = ringThickness(h.Thickness, e.bore); err != nil {
		return e, err
	}
	if err := h.BoreMetal.check("bore"); err != nil {
		return e, err
	}
	if err := h.RingMetal.check("ring"); err != nil {
		return e, err
	}
	e.least, _ = h.Gap.Lower()
	var end tolerance.End
	e.most, end = h.Gap.Upper()
	e.open = end == tolerance.Absent
	return e, nil
}

func (h *RingHeat) growths(bore, ring tolerance.Interval[units.Temperature]) (b, r span, err error) {
	br, err := rise("bore temperature", bore, h.MeasuredAt)
	if err != nil {
		return b, r, err
	}
	rr, err := rise("ring temperature", ring, h.MeasuredAt)
	return h.BoreMetal.growth(br), h.RingMetal.growth(rr), err
}

// faceHot is the hot gap in mm between the edges of the face, by growths.
func (e *ringEnds) faceHot(gap, bore units.Length, b, r float64) float64 {
	type f = tolerance.Float
	middle := float64(e.middle(gap, bore))
	return float64(RingGapHot(f(middle), millimetres(bore), f(r), 1, f(b), 1)) * e.faceFactor(bore, b, r)
}

// middle is what the ring's middle line has to close, in mm, for the edges of
// its face to touch: RingClosingToButt without its rounding.
func (e *ringEnds) middle(gap, bore units.Length) tolerance.Float {
	g, d, t := millimetres(gap), millimetres(bore), millimetres(e.thickness)
	return g * (d - t) / d
}

// faceFactor is what the gap between the face's edges is of that on the middle
// line, hot.
func (e *ringEnds) faceFactor(bore units.Length, b, r float64) float64 {
	d, t := float64(millimetres(bore))*(1+b), float64(millimetres(e.thickness))*(1+r)
	return d / (d - t)
}

// GapAt holds the end gap between the edges of the ring's face, with bore and
// ring at their temperatures, for all that the readings, the coefficients and
// the temperatures leave open. At zero or below the ends touch. Its ends are to
// 2 pm, outward.
//
// It fails with an [InputError] where a size, coefficient or temperature can't
// be.
func (h *RingHeat) GapAt(bore, ring tolerance.Interval[units.Temperature]) (tolerance.Bracket, error) {
	e, err := h.check()
	if err != nil {
		return tolerance.Bracket{}, err
	}
	b, r, err := h.growths(bore, ring)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	// It grows with the gap and the bore's growth, falls with the ring's, and
	// with the bore's size goes one way all along.
	least := min(e.faceHot(e.least, e.bore[0], b.lo, r.hi), e.faceHot(e.least, e.bore[1], b.lo, r.hi))
	lo := picometres(math.Floor(1e9*least) - 1)
	if e.open {
		return tolerance.NewInterval(lo, tolerance.Closed, 0, tolerance.Absent)
	}
	most := max(e.faceHot(e.most, e.bore[0], b.hi, r.lo), e.faceHot(e.most, e.bore[1], b.hi, r.lo))
	return tolerance.NewInterval(lo, tolerance.Closed, picometres(math.Ceil(1e9*most)+1), tolerance.Closed)
}

// ButtsAt is the lowest temperature of the ring at which its ends may touch,
// with the bore at its own. It is to 2e-9 K, downward. Errors as for
// [RingHeat.GapAt].
func (h *RingHeat) ButtsAt(bore tolerance.Interval[units.Temperature]) (units.Temperature, error) {
	e, err := h.check()
	if err != nil {
		return 0, err
	}
	br, err := rise("bore temperature", bore, h.MeasuredAt)
	if err != nil {
		return 0, err
	}
	type f = tolerance.Float
	b, x := h.BoreMetal.growth(br).lo, math.Inf(1)
	for _, d := range e.bore {
		grown := RingButtingRise(e.middle(e.least, d), millimetres(d), 1, f(b), 1)
		x = min(x, h.RingMetal.riseOf(float64(grown)).lo)
	}
	return after("ring's rise", h.MeasuredAt, x-slack)
}

// ColdFor is the end gap, where it is measured, that for certain leaves a
// wanted one when hot: rounded up to the picometre, and 1 pm more. Of 0 it is
// the gap at which the ends may only just touch. What Gap holds doesn't matter
// for it, so long as it can be; below zero, the bore outgrows the ring. Errors
// as for [RingHeat.GapAt].
func (h *RingHeat) ColdFor(hot units.Length, bore, ring tolerance.Interval[units.Temperature]) (units.Length, error) {
	e, err := h.check()
	if err != nil {
		return 0, err
	}
	if hot < 0 || hot > e.bore[0]/10 {
		return 0, &InputError{"hot gap", hot.String(), "0 mm or more, and a small part of the bore"}
	}
	b, r, err := h.growths(bore, ring)
	if err != nil {
		return 0, err
	}
	type f = tolerance.Float
	x := math.Inf(-1)
	for _, d := range e.bore {
		middle := RingGapForHeat(millimetres(hot)/f(e.faceFactor(d, b.lo, r.hi)), millimetres(d), f(r.hi), 1, f(b.lo), 1)
		x = max(x, float64(middle*millimetres(d)/(millimetres(d)-millimetres(e.thickness))))
	}
	return picometres(math.Ceil(1e9*x) + 1), nil
}
