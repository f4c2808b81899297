package crank

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An UnbalanceReading is what the balancing machine shows in one plane.
type UnbalanceReading struct {
	Where     string       `json:"where,omitempty"`   // "front counterweight"
	At        units.Length `json:"at"`                // the plane's place along the shaft
	AmountGMM float64      `json:"amountGMM"`         // 0 or more
	ErrorGMM  float64      `json:"errorGMM"`          // of the amount, as a vector in any direction; 0 where it isn't known
	Angle     units.Angle  `json:"angle,omitzero"`    // of the heavy place, from one mark on the shaft
	NoAngle   bool         `json:"noAngle,omitempty"` // the machine gave no angle: any is reckoned with
}

// An UnbalanceRotor is a shaft with what is measured of its unbalance. Places
// are along it, from one datum. A crankshaft that needs bobweights carries them,
// and its mass is with them and with what else was spun with it.
type UnbalanceRotor struct {
	Mass       units.Mass   `json:"mass"`       // of the rotor as spun
	RPM        float64      `json:"rpm"`        // the highest it runs at in the engine, not the machine's
	GradeMMPS  float64      `json:"gradeMMPS"`  // balance quality grade: 6.3 for G 6.3
	BearingA   units.Length `json:"bearingA"`   // the first bearing plane
	BearingB   units.Length `json:"bearingB"`   // the other
	MassCentre units.Length `json:"massCentre"` // the rotor's; it may lie outside the bearings
	// Limit7030 keeps each bearing plane's share within 0.3 and 0.7 of the
	// whole, as the standard is said to recommend where the mass centre lies
	// near one bearing (from memory, and public texts; ask the standard).
	Limit7030 bool               `json:"limit7030,omitempty"`
	Readings  []UnbalanceReading `json:"readings,omitempty"` // what the machine shows, in one plane, two or more
}

// An UnbalancePlane is one bearing plane judged.
type UnbalancePlane struct {
	AllowedGMM  float64           `json:"allowedGMM"`  // the share of this plane in what is permissible, g·mm
	LeastGMM    float64           `json:"leastGMM"`    // the least that the readings allow
	GreatestGMM float64           `json:"greatestGMM"` // the greatest
	Angle       units.Angle       `json:"angle"`       // of the heavy place, where the readings have angles
	Verdict     tolerance.Verdict `json:"verdict"`     // undecided is not a pass
}

// An UnbalanceReport is what follows for a rotor.
type UnbalanceReport struct {
	AllowedGMM     float64           `json:"allowedGMM"`     // for the whole rotor
	EccentricityUM float64           `json:"eccentricityUM"` // of its mass centre, permissible
	A              UnbalancePlane    `json:"a"`              // at bearing A
	B              UnbalancePlane    `json:"b"`              // at bearing B
	Verdict        tolerance.Verdict `json:"verdict"`        // of both planes
	Next           string            `json:"next"`           // what to do next, in words
}

// unbalanceRounding is more than the relative error of the sums here: what is
// nearer to the limit than that isn't passed.
const unbalanceRounding = 1e-12

// Assess judges the readings against the permissible residual unbalance of the
// grade. That is split to the bearing planes by the lever about the mass
// centre, which may lie outside them, and the readings, whatever planes they
// were taken in, are brought there as vectors, so that unbalances which cancel
// or which make a couple count as they act. It fails with an [InputError].
func (r UnbalanceRotor) Assess() (UnbalanceReport, error) {
	if err := r.check(); err != nil {
		return UnbalanceReport{}, err
	}
	f := func(x float64) tolerance.Float { return tolerance.Float(x) }
	mass := r.Mass.Float(units.InKilograms)
	rep := UnbalanceReport{
		AllowedGMM:     float64(UnbalanceAllowedGMM(f(r.GradeMMPS), f(mass), f(r.RPM))),
		EccentricityUM: float64(UnbalanceEccentricityUM(f(r.GradeMMPS), f(r.RPM))),
	}
	rep.A = r.plane(rep.AllowedGMM, r.BearingA, r.BearingB)
	rep.B = r.plane(rep.AllowedGMM, r.BearingB, r.BearingA)
	rep.Verdict, rep.Next = unbalanceNext(len(r.Readings), rep.A.Verdict, rep.B.Verdict)
	return rep, nil
}

// plane judges what acts in the plane at a.
func (r UnbalanceRotor) plane(allowed float64, a, b units.Length) UnbalancePlane {
	mm := func(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }
	part := func(u float64, at units.Length) float64 {
		return float64(UnbalanceAt(tolerance.Float(u), mm(at), mm(a), mm(b)))
	}
	share := math.Abs(part(1, r.MassCentre))
	if r.Limit7030 {
		share = min(max(share, 0.3), 0.7)
	}
	p := UnbalancePlane{AllowedGMM: allowed * share}
	var x, y, doubt float64
	var loose []float64 // amounts in no known direction
	for _, u := range r.Readings {
		amount := part(u.AmountGMM, u.At)
		doubt += math.Abs(part(u.ErrorGMM, u.At))
		if u.NoAngle {
			loose = append(loose, math.Abs(amount))
			continue
		}
		sin, cos := math.Sincos((u.Angle % units.Turn).Radians())
		x, y = x+amount*cos, y+amount*sin
	}
	// Vectors of known lengths and unknown directions reach from what the
	// longest has over all others, or nothing, to the sum of all.
	known := math.Hypot(x, y)
	sum, longest := known, known
	for _, l := range loose {
		sum, longest = sum+l, max(longest, l)
	}
	p.LeastGMM = max(2*longest-sum-doubt, 0)
	p.GreatestGMM = sum + doubt
	if known > 0 {
		turn := math.Atan2(y, x)
		if turn < 0 {
			turn += 2 * math.Pi
		}
		p.Angle = sliderAngle(tolerance.Float(turn))
	}
	switch {
	case len(r.Readings) == 0:
	case p.GreatestGMM*(1+unbalanceRounding) <= p.AllowedGMM:
		p.Verdict = tolerance.Within
	case p.LeastGMM > p.AllowedGMM*(1+unbalanceRounding):
		p.Verdict = tolerance.Above
	}
	return p
}

func unbalanceNext(readings int, a, b tolerance.Verdict) (tolerance.Verdict, string) {
	switch {
	case readings == 0:
		return tolerance.Undecided, "spin the shaft and read its unbalance in two planes"
	case a == tolerance.Above || b == tolerance.Above:
		return tolerance.Above, "correct it: drill on the heavy side, less than reckoned, and spin the shaft again"
	case a == tolerance.Within && b == tolerance.Within:
		return tolerance.Within, "within the grade"
	}
	return tolerance.Undecided, "not a pass: the machine's error, or an angle it did not give, reaches over what is allowed; read it with a finer setting, turn the shaft half round in its drive and read again"
}

func (r UnbalanceRotor) check() error {
	switch {
	case r.Mass <= 0 || r.Mass > 2000*units.Kilogram:
		return &InputError{"rotor's mass", r.Mass.String(), "above 0 g and at most 2 t"}
	case !(r.GradeMMPS > 0 && r.GradeMMPS <= 10_000):
		return &InputError{"balance quality grade", sliderText(r.GradeMMPS, "mm/s"), "above 0 mm/s, such as 6.3"}
	case r.BearingA == r.BearingB:
		return &InputError{"bearing B", r.BearingB.String(), "at another place than bearing A"}
	}
	if err := sliderSpeed("speed", r.RPM); err != nil {
		return err
	}
	for _, p := range []struct {
		field string
		at    units.Length
	}{{"bearing A", r.BearingA}, {"bearing B", r.BearingB}, {"mass centre", r.MassCentre}} {
		if p.at.Abs() > 100*units.Metre {
			return &InputError{p.field, p.at.String(), "within 100 m of the datum"}
		}
	}
	for i, u := range r.Readings {
		name := func() string { return bobweightName(u.Where, "plane "+strconv.Itoa(i+1)) }
		switch {
		case !(u.AmountGMM >= 0 && u.AmountGMM < 1e12):
			return &InputError{"unbalance of " + name(), sliderText(u.AmountGMM, "g·mm"), "0 g·mm or more: the other side is an angle of 180°"}
		case !(u.ErrorGMM >= 0 && u.ErrorGMM < 1e12):
			return &InputError{"error of " + name(), sliderText(u.ErrorGMM, "g·mm"), "0 g·mm or more"}
		case u.At.Abs() > 100*units.Metre:
			return &InputError{"place of " + name(), u.At.String(), "within 100 m of the datum"}
		case !u.Angle.InRange():
			return &InputError{"angle of " + name(), u.Angle.String(), "within range"}
		}
	}
	if n := len(r.Readings); n > 100 {
		return &InputError{"number of planes", strconv.Itoa(n), "at most 100"}
	}
	return nil
}
