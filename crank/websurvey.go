package crank

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A WebThrow is what the gauge between the webs of one throw showed, an opening
// above zero, in the order of turning. Where the rod is in the way at the bottom,
// Bottom stays zero and the two readings beside it are given.
type WebThrow struct {
	Where     string            // "throw 4"
	Top       tolerance.Bracket // crankpin at top dead centre
	Port      tolerance.Bracket // to the left as one stands
	Bottom    tolerance.Bracket // at bottom dead centre, where it could be read
	Starboard tolerance.Bracket // to the right
	Before    tolerance.Bracket // short of the bottom, and
	After     tolerance.Bracket // past it, as far
	// Beside is how far from the bottom those two are; above 0° and up to 60°.
	Beside units.Angle
	// Drift is the reading back at the first position less the first reading
	// there; the zero Bracket where it wasn't taken.
	Drift tolerance.Bracket
}

// A WebSurvey is the web deflection of a large shaft, all throws in order. Read
// it with the engine at one temperature, all bearings and the load as the manual
// says, the gauge in its centre marks and untouched between readings.
//
// A shaft being turned crushes: shut off starting air, lock the turning gear's
// controls to the reader, warn whoever is at the propeller or the driven
// machine, and keep out while it moves.
type WebSurvey struct {
	Throws     []WebThrow     // in order along the shaft
	Vertical   tolerance.Spec // of the vertical deflection, its sign dropped
	Horizontal tolerance.Spec // of the horizontal one, its sign dropped
	Swing      tolerance.Spec // of the greatest difference over a turn
	Closure    tolerance.Spec // of what the readings of a turn may disagree by, and of the drift
}

// A WebFound is what follows for one throw. Deflections keep their sign; the
// findings are on their sizes.
type WebFound struct {
	Where      string              `json:"where"`      // "throw 4"
	Vertical   tolerance.Bracket   `json:"vertical"`   // top less bottom; above zero it sags
	Horizontal tolerance.Bracket   `json:"horizontal"` // port less starboard
	Swing      tolerance.Bracket   `json:"swing"`      // over a whole turn
	Findings   []tolerance.Finding `json:"findings"`   // vertical, horizontal, swing, closure, drift
}

// A WebReport is what follows for a shaft.
type WebReport struct {
	Throws  []WebFound         `json:"throws"`  // in the order given
	Worst   tolerance.Standing `json:"worst"`   // of what was judged by limits
	WorstAt string             `json:"worstAt"` // measure and throw
	Next    string             `json:"next"`    // what to do
}

// Inspect judges a survey. It fails with an [InputError] where a throw has no
// reading at a position, or readings both at and beside the bottom.
func (s WebSurvey) Inspect() (WebReport, error) {
	var r WebReport
	if len(s.Throws) == 0 || len(s.Throws) > mostJournals {
		return r, &InputError{"throws", fmt.Sprint(len(s.Throws)), "from 1 to 100"}
	}
	for _, t := range s.Throws {
		if err := t.check(); err != nil {
			return WebReport{}, err
		}
		f, err := s.throw(&r, t)
		if err != nil {
			return WebReport{}, err
		}
		r.Throws = append(r.Throws, f)
	}
	switch {
	case r.WorstAt == "":
		r.Next = "no limits were given: compare with the engine maker's manual and the readings taken when the engine was lined up"
	case runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand):
		r.Next = r.WorstAt + " is out of limits: read it again, then look for a worn or low bearing and slack holding-down bolts by the engine maker's manual; one throw alone doesn't tell the cause"
	case r.Worst == tolerance.CantTell:
		r.Next = r.WorstAt + " can't be told yet, which is not a pass: read it again more finely"
	default:
		r.Next = within(r.Worst) + "; keep the readings, to compare the next ones with"
	}
	return r, nil
}

// throw judges one throw.
func (s WebSurvey) throw(r *WebReport, t WebThrow) (WebFound, error) {
	bottom := t.bottom()
	f := WebFound{Where: t.Where, Vertical: WebVertical(t.Top, bottom), Horizontal: WebHorizontal(t.Port, t.Starboard)}
	if t.Beside > 0 { // the top counts once in it
		f.Vertical = webScaled(WebVertical(t.Top, WebBottom(t.Before, t.After)), 2/(1+math.Cos(t.Beside.Radians())))
	}
	f.Swing = webHypot(f.Vertical, f.Horizontal)
	var failed error
	keep := func(measure string, spec tolerance.Spec, at tolerance.Bracket) {
		found, err := tolerance.Assess(measure, t.Where, spec, at)
		if err != nil && failed == nil {
			failed = err
		}
		f.Findings = append(f.Findings, found)
		if !spec.IsZero() && (r.WorstAt == "" || runOutRank(found.Standing) > runOutRank(r.Worst)) {
			r.Worst, r.WorstAt = found.Standing, measure+", "+t.Where
		}
	}
	keep("vertical deflection", s.Vertical, f.Vertical.Abs())
	keep("horizontal deflection", s.Horizontal, f.Horizontal.Abs())
	keep("greatest difference over a turn", s.Swing, f.Swing)
	keep("disagreement of the readings", s.Closure, WebClosure(t.Top, t.Port, bottom, t.Starboard).Abs())
	if !t.Drift.IsZero() {
		keep("drift back at the start", s.Closure, t.Drift.Abs())
	}
	return f, failed
}

// bottom is the reading at the bottom, or what it would be by those beside it:
// mean − (top − mean)·(1 − cos δ)/(1 + cos δ).
func (t WebThrow) bottom() tolerance.Bracket {
	if t.Beside == 0 {
		return t.Bottom
	}
	mean, c := WebBottom(t.Before, t.After), math.Cos(t.Beside.Radians())
	return mean.Sub(webScaled(t.Top.Sub(mean), (1-c)/(1+c)))
}

func (t WebThrow) check() error {
	beside := !t.Before.IsZero() || !t.After.IsZero() || t.Beside != 0
	switch {
	case beside && !t.Bottom.IsZero():
		return &InputError{t.Where + ", bottom", "both at it and beside it", "read at the bottom, or on both sides of it"}
	case beside && (t.Beside <= 0 || t.Beside > 60*units.Degree):
		return &InputError{t.Where + ", angle beside the bottom", t.Beside.String(), "above 0° and at most 60°"}
	}
	for _, x := range []struct {
		name string
		b    tolerance.Bracket
		need bool
	}{
		{"top", t.Top, true}, {"port", t.Port, true}, {"starboard", t.Starboard, true}, {"bottom", t.Bottom, !beside},
		{"before the bottom", t.Before, beside}, {"after the bottom", t.After, beside}, {"drift", t.Drift, false},
	} {
		if x.need && x.b.IsZero() {
			return &InputError{t.Where + ", " + x.name, "not read", "read"}
		}
		if err := dialBracket(t.Where+", "+x.name, x.b); err != nil {
			return err
		}
	}
	return nil
}

// webScaled is a bracket times a factor above zero, outward.
func webScaled(b tolerance.Bracket, by float64) tolerance.Bracket {
	lo, _ := b.Lower()
	hi, _ := b.Upper()
	return webOutward(float64(lo)*by, float64(hi)*by)
}

// webHypot is the bracket of √(a² + b²), outward; where one of them is nothing,
// the other.
func webHypot(a, b tolerance.Bracket) tolerance.Bracket {
	a, b = a.Abs(), b.Abs()
	switch none := tolerance.Exactly(units.Length(0)); none {
	case a:
		return b
	case b:
		return a
	}
	al, _ := a.Lower()
	ah, _ := a.Upper()
	bl, _ := b.Lower()
	bh, _ := b.Upper()
	return webOutward(math.Hypot(float64(al), float64(bl)), math.Hypot(float64(ah), float64(bh)))
}

// webOutward covers lo to hi, whose error is some 1e-15 of them.
func webOutward(lo, hi float64) tolerance.Bracket {
	const ulps = 0x1p-50
	least := units.Length(math.Floor(lo - math.Abs(lo)*ulps))
	most := units.Length(math.Ceil(hi + math.Abs(hi)*ulps))
	i, _ := tolerance.NewInterval(least, tolerance.Closed, most, tolerance.Closed) // in order
	return i
}
