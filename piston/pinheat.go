package piston

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A PinHeat is a gudgeon pin and a hole for it, in a piston's boss or a rod's
// small end, one or both to be warmed or chilled: to go together, or as they
// run.
//
// Heat a piston in an oven or in hot oil to the maker's temperature, never with
// a flame: an alloy piston that was overheated is soft, and doesn't show it.
// Heat a rod's small end evenly, in an oven or an induction heater, and no
// hotter than its maker allows: a steel that turns blue has lost its temper.
// Wear dry gloves, sleeves and a face shield; have the pin's way clear and a
// stop at its depth: it seizes within seconds, and one that stopped short is
// pressed out, never hammered. Press with the maker's tooling, the piston
// carried round the pin and never on its skirt, from behind a guard. Dry ice
// displaces the air and burns by cold.
//
// All answers lie on the side where the pin still goes in: a gap is rounded
// down, the hole's temperature up, the pin's down. The sizes are those of the
// parts free; a gap is not yet a pin at the middle, which needs a stop.
type PinHeat struct {
	Hole       tolerance.Bracket `json:"hole"`       // at MeasuredAt
	Pin        tolerance.Bracket `json:"pin"`        // at MeasuredAt
	MeasuredAt units.Temperature `json:"measuredAt"` // of both; the zero value is 0 °C, units.Reference 20 °C
	HoleMetal  Metal             `json:"holeMetal"`  // of piston or rod
	PinMetal   Metal             `json:"pinMetal"`   // of the pin
}

// check refuses what can't be.
func (h *PinHeat) check() error {
	if err := skirtPair("hole", h.Hole, "pin", h.Pin); err != nil {
		return err
	}
	if lo, _ := h.Hole.Lower(); lo <= 0 {
		return &InputError{"hole", h.Hole.String(), "above 0 mm"}
	}
	if lo, _ := h.Pin.Lower(); lo <= 0 {
		return &InputError{"pin", h.Pin.String(), "above 0 mm"}
	}
	if _, end := h.Pin.Upper(); end == tolerance.Absent {
		return &InputError{"pin", h.Pin.String(), "measured: it has no greatest value"}
	}
	if err := h.HoleMetal.check("hole"); err != nil {
		return err
	}
	return h.PinMetal.check("pin")
}

// ClearanceAt holds the clearance on the diameter of hole and pin at their
// temperatures, for all that the readings, the coefficients and the temperatures
// leave open; below zero an interference. Its ends are to 2 pm, outward.
//
// It fails with an [InputError] where a size, coefficient or temperature can't
// be.
func (h *PinHeat) ClearanceAt(hole, pin tolerance.Interval[units.Temperature]) (tolerance.Bracket, error) {
	if err := h.check(); err != nil {
		return tolerance.Bracket{}, err
	}
	hr, err := rise("hole temperature", hole, h.MeasuredAt)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	pr, err := rise("pin temperature", pin, h.MeasuredAt)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	a, s := h.HoleMetal.growth(hr), h.PinMetal.growth(pr)
	h0, _ := h.Hole.Lower()
	h1, hEnd := h.Hole.Upper()
	p0, _ := h.Pin.Lower()
	p1, _ := h.Pin.Upper()
	type f = tolerance.Float
	at := func(hole, pin units.Length, a, s float64) float64 {
		return 1e9 * float64(PinHotClearance(millimetres(hole-pin), millimetres(pin), f(a), 1, f(s), 1))
	}
	lo := picometres(math.Floor(at(h0, p1, a.lo, s.hi)) - 1)
	if hEnd == tolerance.Absent {
		return tolerance.NewInterval(lo, tolerance.Closed, 0, tolerance.Absent)
	}
	return tolerance.NewInterval(lo, tolerance.Closed, picometres(math.Ceil(at(h1, p0, a.hi, s.lo))+1), tolerance.Closed)
}

// pair is the least hole and the greatest pin, as clearance and pin in mm.
func (h *PinHeat) pair(gap units.Length) (clearance, pin tolerance.Float, err error) {
	if err := h.check(); err != nil {
		return 0, 0, err
	}
	hole, _ := h.Hole.Lower()
	p, _ := h.Pin.Upper()
	if gap < 0 || gap > p/10 {
		return 0, 0, &InputError{"assembly gap", gap.String(), "0 mm or more, and a small part of the pin"}
	}
	return millimetres(hole - p), millimetres(p), nil
}

// HoleLeast is the temperature that the hole must have, at the least, for the
// pin at its own to go in with a gap for certain: to 2e-9 K, upward. It may be
// below what both were measured at, where there is more clearance than that.
func (h *PinHeat) HoleLeast(gap units.Length, pin tolerance.Interval[units.Temperature]) (units.Temperature, error) {
	c, d, err := h.pair(gap)
	if err != nil {
		return 0, err
	}
	r, err := rise("pin temperature", pin, h.MeasuredAt)
	if err != nil {
		return 0, err
	}
	s := tolerance.Float(h.PinMetal.growth(r).hi)
	grown := float64(PinHoleRise(millimetres(gap), c, d, 1, s, 1))
	return after("hole's rise", h.MeasuredAt, h.HoleMetal.riseOf(grown).hi+slack)
}

// PinMost is the temperature that the pin may have, at the most, to go into the
// hole at its own with a gap for certain: to 2e-9 K, downward.
func (h *PinHeat) PinMost(gap units.Length, hole tolerance.Interval[units.Temperature]) (units.Temperature, error) {
	c, d, err := h.pair(gap)
	if err != nil {
		return 0, err
	}
	r, err := rise("hole temperature", hole, h.MeasuredAt)
	if err != nil {
		return 0, err
	}
	a := tolerance.Float(h.HoleMetal.growth(r).lo)
	grown := float64(PinRise(millimetres(gap), c, d, a, 1, 1))
	return after("pin's fall", h.MeasuredAt, h.PinMetal.riseOf(grown).lo-slack)
}
