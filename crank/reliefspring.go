package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A ReliefSpring is a relief valve's spring as measured, with its limits. Its
// load is read on a spring tester at the manual's height. A spring under load
// can jump: wear eye protection, and take the valve's plug out slowly.
type ReliefSpring struct {
	Where      string                          `json:"where,omitempty"`     // "main oil pump"
	Free       tolerance.Bracket               `json:"free"`                // free length
	FreeLimits tolerance.Spec                  `json:"freeLimits,omitzero"` // of the free length
	Height     units.Length                    `json:"height"`              // at which the load was read
	Load       tolerance.Interval[units.Force] `json:"load"`                // as read at that height
	LoadLimits tolerance.SpecOf[units.Force]   `json:"loadLimits,omitzero"` // of that load
	// Installed and Seat, where both are given, say at which pressure the valve
	// opens: the spring's height with the valve shut, and the diameter that the
	// oil acts on then.
	Installed      tolerance.Bracket                `json:"installed,omitzero"`
	Seat           tolerance.Bracket                `json:"seat,omitzero"`           // the diameter that the oil acts on with the valve shut
	PressureLimits tolerance.SpecOf[units.Pressure] `json:"pressureLimits,omitzero"` // of the pressure at which the valve opens
}

// A ReliefReport is what follows for a spring.
type ReliefReport struct {
	Free      tolerance.Finding                    `json:"free"`               // of the free length
	Load      tolerance.FindingOf[units.Force]     `json:"load"`               // of the load at the height
	Rate      tolerance.Interval[units.SpringRate] `json:"rate"`               // from free length and load
	Installed tolerance.Interval[units.Force]      `json:"installed,omitzero"` // the load with the valve shut
	Opens     tolerance.Interval[units.Pressure]   `json:"opens,omitzero"`     // where the valve opens
	Pressure  tolerance.FindingOf[units.Pressure]  `json:"pressure,omitzero"`  // of that, where it is known
	Standing  tolerance.Standing                   `json:"standing"`           // the worst of those with limits; without any, can't tell
	Next      string                               `json:"next"`               // what to do next, in words
}

// Assess judges free length and load, and where the seat is given the opening
// pressure. It fails with an [InputError] for sizes and loads that aren't above
// zero and known on both sides, a height that isn't below the free length, and a
// spring that is loose when it is installed; and as [tolerance.Assess] does.
func (s ReliefSpring) Assess() (ReliefReport, error) {
	if err := s.check(); err != nil {
		return ReliefReport{}, err
	}
	var r ReliefReport
	var err error
	if r.Free, err = tolerance.Assess("free length", s.Where, s.FreeLimits, s.Free); err != nil {
		return ReliefReport{}, err
	}
	if r.Load, err = tolerance.Assess("load at "+s.Height.String(), s.Where, s.LoadLimits, s.Load); err != nil {
		return ReliefReport{}, err
	}
	var standings []tolerance.Standing
	if !s.FreeLimits.IsZero() {
		standings = append(standings, r.Free.Standing)
	}
	if !s.LoadLimits.IsZero() {
		standings = append(standings, r.Load.Standing)
	}
	height := tolerance.Exactly(s.Height)
	r.Rate = reliefCorners[units.SpringRate](units.NewtonPerMillimetre, s, height, func(load, free, _ tolerance.Float) tolerance.Float {
		return ReliefRate(load, free, tolerance.Float(s.Height.Float(units.InMillimetres)))
	})
	if !r.Rate.InRange() {
		return ReliefReport{}, &InputError{"height", s.Height.String(), "so far below the free length, " + s.Free.String() + ", that the rate is below 450 N/mm"}
	}
	if !s.Seat.IsZero() {
		r.Installed = reliefCorners[units.Force](units.Newton, s, s.Installed, func(load, free, installed tolerance.Float) tolerance.Float {
			return ReliefLoad(ReliefRate(load, free, tolerance.Float(s.Height.Float(units.InMillimetres))), free, installed)
		})
		if r.Opens, err = ReliefOpens(r.Installed, s.Seat); err != nil {
			return ReliefReport{}, err
		}
		if r.Pressure, err = tolerance.Assess("opening pressure", s.Where, s.PressureLimits, r.Opens); err != nil {
			return ReliefReport{}, err
		}
		if !s.PressureLimits.IsZero() {
			standings = append(standings, r.Pressure.Standing)
		}
	}
	r.Standing, r.Next = reliefNext(standings)
	return r, nil
}

func reliefNext(standings []tolerance.Standing) (tolerance.Standing, string) {
	if len(standings) == 0 {
		return tolerance.CantTell, "no limit is given: the engine maker's manual has them"
	}
	worst := tolerance.AsNew
	for _, s := range standings {
		worst = pumpWorse(worst, s)
	}
	switch worst {
	case tolerance.AsNew, tolerance.Usable:
		return worst, "re-use the spring"
	case tolerance.CantTell:
		return worst, "not a pass: measure again, as the findings say"
	}
	return worst, "renew the spring; never stretch it, and shim it only where the manual allows"
}

// ReliefOpens holds every pressure at which a relief valve may open, rounded
// outward: it grows with the spring's load and falls with the diameter that the
// oil acts on. It fails with an [InputError] for a load or diameter that isn't
// above zero and known on both sides, and for a pressure out of range.
func ReliefOpens(load tolerance.Interval[units.Force], diameter tolerance.Bracket) (tolerance.Interval[units.Pressure], error) {
	var none tolerance.Interval[units.Pressure]
	l0, l1, ok := sliderEnds(load)
	if !ok || l0 <= 0 {
		return none, &InputError{"spring's load", load.String(), "above 0 N, known on both sides"}
	}
	d0, d1, ok := sliderEnds(diameter)
	if !ok || d0 <= 0 {
		return none, &InputError{"diameter of the seat", diameter.String(), "above 0 mm, known on both sides"}
	}
	n := func(f units.Force) tolerance.Float { return tolerance.Float(f.Float(units.InNewtons)) }
	i := reliefSpan[units.Pressure](units.Megapascal,
		ReliefPressureMPa(n(l0), sliderMM(d1)), ReliefPressureMPa(n(l1), sliderMM(d0)), 1)
	if !i.InRange() {
		return none, &InputError{"diameter of the seat", diameter.String(), "large enough for a pressure below 17 MPa"}
	}
	return i, nil
}

// reliefCorners holds a formula of load, free length and a height over their
// brackets. It is monotone in each of them while the others stay, so that its
// extremes are at corners.
func reliefCorners[Q units.Quantity](unit Q, s ReliefSpring, height tolerance.Bracket, f func(load, free, height tolerance.Float) tolerance.Float) tolerance.Interval[Q] {
	l0, l1, _ := sliderEnds(s.Load)
	f0, f1, _ := sliderEnds(s.Free)
	h0, h1, _ := sliderEnds(height)
	least, greatest := tolerance.Float(math.Inf(1)), tolerance.Float(math.Inf(-1))
	for _, l := range []units.Force{l0, l1} {
		for _, free := range []units.Length{f0, f1} {
			for _, h := range []units.Length{h0, h1} {
				x := f(tolerance.Float(l.Float(units.InNewtons)), sliderMM(free), sliderMM(h))
				least, greatest = min(least, x), max(greatest, x)
			}
		}
	}
	// A free length little above the height is left by a difference that has
	// lost digits.
	steep := sliderMM(f0) / sliderMM(min(f0-h1, f0-s.Height))
	return reliefSpan(unit, least, greatest, 1+steep)
}

// reliefSpan is the bracket between two numbers of a unit, rounded outward past
// the roundings of a formula; out of range where they are.
func reliefSpan[Q units.Quantity](unit Q, least, greatest, steep tolerance.Float) tolerance.Interval[Q] {
	slack := float64(steep) / (1 << 47)
	lo := math.Floor(float64(least) * float64(unit) * (1 - slack))
	hi := math.Ceil(float64(greatest) * float64(unit) * (1 + slack))
	if !(lo >= 0 && hi < 1<<61) {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	i, err := tolerance.NewInterval(Q(lo), tolerance.Closed, Q(hi), tolerance.Closed)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	return i
}

func (s ReliefSpring) check() error {
	f0, _, ok := sliderEnds(s.Free)
	switch {
	case !ok || f0 <= 0:
		return &InputError{"free length", s.Free.String(), "above 0 mm, known on both sides"}
	case s.Height <= 0 || s.Height >= f0:
		return &InputError{"height", s.Height.String(), "above 0 mm and below the free length, " + s.Free.String()}
	}
	if l0, _, ok := sliderEnds(s.Load); !ok || l0 <= 0 {
		return &InputError{"spring's load", s.Load.String(), "above 0 N, known on both sides"}
	}
	if s.Installed.IsZero() != s.Seat.IsZero() {
		return &InputError{"opening pressure", "from one of them", "from both the installed height and the seat's diameter, or neither"}
	}
	if s.Seat.IsZero() {
		return nil
	}
	if h0, h1, ok := sliderEnds(s.Installed); !ok || h0 <= 0 || h1 >= f0 {
		return &InputError{"installed height", s.Installed.String(), "above 0 mm and below the free length, " + s.Free.String()}
	}
	return nil
}
