package piston

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SkirtHeat is a piston in its bore, both to become warm.
//
// All answers lie on the dangerous side: a clearance that is left is rounded
// down, a temperature that may be reached down, a clearance that is needed up.
// The model is that of [SkirtHotClearance]; what it leaves out, such as a skirt
// hotter above than below, is far more than the rounding.
type SkirtHeat struct {
	Bore       tolerance.Bracket `json:"bore"`       // where the skirt runs, at MeasuredAt
	Clearance  tolerance.Bracket `json:"clearance"`  // on the diameter, at MeasuredAt
	MeasuredAt units.Temperature `json:"measuredAt"` // of both; the zero value is 0 °C, units.Reference 20 °C
	BoreMetal  Metal             `json:"boreMetal"`  // of block or liner
	SkirtMetal Metal             `json:"skirtMetal"` // of the piston
}

// check refuses what can't be and gives the ends of bore and clearance in mm.
func (h *SkirtHeat) check() (bore, clearance span, err error) {
	if _, ok := positive(h.Bore); !ok {
		return bore, clearance, size("bore", h.Bore)
	}
	lo, loEnd := h.Clearance.Lower()
	b0, _ := h.Bore.Lower()
	b1, bEnd := h.Bore.Upper()
	hi, hiEnd := h.Clearance.Upper()
	switch {
	case bEnd == tolerance.Absent:
		return bore, clearance, &InputError{"bore", h.Bore.String(), "measured: it has no greatest value"}
	case b0 == 0:
		return bore, clearance, &InputError{"bore", h.Bore.String(), "above 0 mm"}
	case loEnd == tolerance.Absent || !h.Clearance.InRange():
		return bore, clearance, &InputError{"clearance", h.Clearance.String(), "measured: it has no least value"}
	case hiEnd != tolerance.Absent && hi < 0:
		return bore, clearance, &InputError{"clearance", h.Clearance.String(), "0 mm or more: below zero it is an interference, and the piston does not go in"}
	case lo < -b0/10 || lo > b0/10 || hiEnd != tolerance.Absent && hi > b0/5:
		return bore, clearance, &InputError{"clearance", h.Clearance.String(), "a small part of the bore, " + h.Bore.String() + ": is all in its right unit?"}
	}
	if err := h.BoreMetal.check("bore"); err != nil {
		return bore, clearance, err
	}
	if err := h.SkirtMetal.check("skirt"); err != nil {
		return bore, clearance, err
	}
	clearance = span{lo.Float(units.InMillimetres), math.Inf(1)}
	if hiEnd != tolerance.Absent {
		clearance.hi = hi.Float(units.InMillimetres)
	}
	return span{b0.Float(units.InMillimetres), b1.Float(units.InMillimetres)}, clearance, nil
}

// ClearanceAt holds the clearance on the diameter of bore and skirt at their
// temperatures, for all that the readings, the coefficients and the temperatures
// leave open. Below zero the piston has closed up: it seizes. Its ends are to
// 2 pm, outward.
//
// It fails with an [InputError] where a size, coefficient or temperature can't
// be.
func (h *SkirtHeat) ClearanceAt(bore, skirt tolerance.Interval[units.Temperature]) (tolerance.Bracket, error) {
	d, c, err := h.check()
	if err != nil {
		return tolerance.Bracket{}, err
	}
	b, p, err := h.growths(bore, skirt)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	// It grows with the clearance and the bore's growth and falls with the
	// skirt's; with the bore's size it may do either.
	at := func(c, b, p float64) (least, most float64) {
		x, y := hotClearance(c, d.lo, b, p), hotClearance(c, d.hi, b, p)
		return min(x, y), max(x, y)
	}
	least, _ := at(c.lo, b.lo, p.hi)
	lo := picometres(math.Floor(1e9*least) - 1)
	if math.IsInf(c.hi, 1) {
		return tolerance.NewInterval(lo, tolerance.Closed, 0, tolerance.Absent)
	}
	_, most := at(c.hi, b.hi, p.lo)
	return tolerance.NewInterval(lo, tolerance.Closed, picometres(math.Ceil(1e9*most)+1), tolerance.Closed)
}

func (h *SkirtHeat) growths(bore, skirt tolerance.Interval[units.Temperature]) (b, p span, err error) {
	br, err := rise("bore temperature", bore, h.MeasuredAt)
	if err != nil {
		return b, p, err
	}
	sr, err := rise("skirt temperature", skirt, h.MeasuredAt)
	return h.BoreMetal.growth(br), h.SkirtMetal.growth(sr), err
}

// hotClearance is SkirtHotClearance by growths.
func hotClearance(c, bore, b, p float64) float64 {
	type f = tolerance.Float
	return float64(SkirtHotClearance(f(c), f(bore), f(b), 1, f(p), 1))
}

// SkirtMost is the temperature that the skirt may have, at the most, and keep a
// clearance for certain in the bore at its own. With a hot clearance of 0 it is
// where the piston may seize. It is to 2e-9 K, downward.
func (h *SkirtHeat) SkirtMost(hot units.Length, bore tolerance.Interval[units.Temperature]) (units.Temperature, error) {
	d, c, err := h.check()
	if err != nil {
		return 0, err
	}
	if err := h.wanted(hot); err != nil {
		return 0, err
	}
	br, err := rise("bore temperature", bore, h.MeasuredAt)
	if err != nil {
		return 0, err
	}
	type f = tolerance.Float
	b, x := h.BoreMetal.growth(br).lo, math.Inf(1)
	for _, d := range [2]float64{d.lo, d.hi} {
		grown := float64(SkirtRiseFor(millimetres(hot), f(c.lo), f(d), f(b), 1, 1))
		x = min(x, h.SkirtMetal.riseOf(grown).lo)
	}
	return after("skirt's rise", h.MeasuredAt, x-slack)
}

// TogetherMost is the temperature that bore and skirt may both have, at the
// most, and keep a clearance for certain; ok is false where warming together
// never closes it so far. It is to 2e-9 K, downward.
func (h *SkirtHeat) TogetherMost(hot units.Length) (t units.Temperature, ok bool, err error) {
	d, c, err := h.check()
	if err != nil {
		return 0, false, err
	}
	if err := h.wanted(hot); err != nil {
		return 0, false, err
	}
	if lo, _ := h.Clearance.Lower(); lo < hot {
		return 0, false, &InputError{"hot clearance", hot.String(), "at most what there may be when cold, " + h.Clearance.String()}
	}
	type f = tolerance.Float
	m, k := h.SkirtMetal.PerK+h.SkirtMetal.PerKError, h.BoreMetal.PerK-h.BoreMetal.PerKError
	x := math.Inf(1)
	for _, d := range [2]float64{d.lo, d.hi} {
		r := SkirtRiseTogether(millimetres(hot), f(c.lo), f(d), f(k), f(m))
		if closes := d*(m-k)-c.lo*m > 0; closes && r.InRange() {
			x = min(x, float64(r))
		}
	}
	if math.IsInf(x, 1) {
		return 0, false, nil
	}
	t, err = after("rise", h.MeasuredAt, x-slack)
	return t, err == nil, err
}

// ColdFor is the clearance, where both are measured, that for certain leaves a
// wanted one when hot: rounded up to the picometre, and 1 pm more. What
// [SkirtHeat.Clearance] holds doesn't matter for it, so long as it can be.
func (h *SkirtHeat) ColdFor(hot units.Length, bore, skirt tolerance.Interval[units.Temperature]) (units.Length, error) {
	d, _, err := h.check()
	if err != nil {
		return 0, err
	}
	if err := h.wanted(hot); err != nil {
		return 0, err
	}
	b, p, err := h.growths(bore, skirt)
	if err != nil {
		return 0, err
	}
	type f = tolerance.Float
	x := math.Inf(-1)
	for _, d := range [2]float64{d.lo, d.hi} {
		x = max(x, float64(SkirtColdClearance(millimetres(hot), f(d), f(b.lo), 1, f(p.hi), 1)))
	}
	return picometres(math.Ceil(1e9*x) + 1), nil
}

// wanted refuses a hot clearance that nobody wants.
func (h *SkirtHeat) wanted(hot units.Length) error {
	if b, _ := h.Bore.Lower(); hot < 0 || hot > b/10 {
		return &InputError{"hot clearance", hot.String(), "0 mm or more, and a small part of the bore"}
	}
	return nil
}
