package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

const width = 78

func deg(a units.Angle) string { return a.Text(units.InDegrees, 1) }

func degs(i tolerance.Interval[units.Angle]) string { return i.Text(units.InDegrees, 1) }

// near and far are a valve's events about top and bottom dead centre.
func (v *valve) near() tolerance.Interval[units.Angle] {
	if v.which == valvetrain.ExhaustValve {
		return v.check.Closes.Read
	}
	return v.check.Opens.Read
}

func (e *engine) page() string {
	var b strings.Builder
	say := func(format string, args ...any) {
		b.WriteString(recipe.Wrap(fmt.Sprintf(format, args...), width, "  ", "    "))
	}
	fmt.Fprintf(&b, "Cam timing: %s\nEvents at %s, degrees of the crankshaft\n", e.Engine, e.At)
	for i := range e.valves {
		v := &e.valves[i]
		dead := [2]string{"top", "bottom"}
		centre := "after"
		if v.which == valvetrain.ExhaustValve {
			dead, centre = [2]string{"bottom", "top"}, "before"
		}
		fmt.Fprintf(&b, "\n%s\n\n", v.which)
		say("opens %s before %s, closes %s after %s dead centre", degs(v.check.Opens.Read), dead[0], degs(v.check.Closes.Read), dead[1])
		say("duration %s, centre (mid-open) %s %s top dead centre", degs(v.report.Duration), degs(v.report.Centre), centre)
		for _, f := range []tolerance.FindingOf[units.Angle]{v.report.Opens, v.report.Closes} {
			if !f.Spec.IsZero() {
				f.Where = ""
				say("%s", strings.TrimPrefix(f.Text(units.InDegrees, 1), ": "))
			}
		}
		if v.Table != nil {
			v.curvePage(e, say)
		}
		say("Next: %s", v.report.Next)
	}
	in, ex := &e.valves[0], &e.valves[1]
	b.WriteString("\ntogether\n\n")
	say("overlap %s (below zero both are shut)", degs(valvetrain.TimingOverlap(in.near(), ex.near())))
	say("separation of the lobes %s of the camshaft", degs(valvetrain.LobeSeparation(in.report.Centre, ex.report.Centre)))
	say("advance %s of the crankshaft (below zero retarded)", degs(valvetrain.TimingAdvance(in.report.Centre, ex.report.Centre)))
	if in.report.Tooth != 0 {
		say("one tooth of the crankshaft's gear is %s", deg(in.report.Tooth))
	}
	b.WriteString("\n" + recipe.Wrap("Turn by hand, plugs out, one way only; stop where it stops. The engine maker's manual governs; this is arithmetic on what was given.", width, "", ""))
	return b.String()
}

// curvePage says what a table of lifts tells.
func (v *valve) curvePage(e *engine, say func(string, ...any)) {
	a := v.analysis
	say("greatest lift %s at %s from top dead centre, %s", a.Peak.Lift.Dual(3, 4), deg(a.Peak.Angle), a.Side)
	if _, after, err := v.curve.MidOpen(e.At.Lift); err == nil {
		where := "after"
		if after < 0 {
			where = "before"
		}
		say("that is %s %s mid-open", deg(after.Abs()), where)
	}
	say("area under the curve %.1f mm·° (%s between points)", a.AreaMMDeg, a.Way)
	smoothing := "of the curve itself, not smoothed"
	if a.Smoothing != 0 {
		smoothing = fmt.Sprintf("smoothed over %s either side", deg(a.Smoothing))
	}
	say("velocity %.4f mm/° at %s, %.4f mm/° at %s; acceleration from %.5f to %.5f mm/°², %s", a.Opening.Value, deg(a.Opening.Angle),
		a.Closing.Value, deg(a.Closing.Angle), a.Downward.Value, a.Upward.Value, smoothing)
	if e.RPM > 0 {
		n := tolerance.Float(e.RPM)
		say("at %g r/min that is %.2f m/s, and %.0f to %.0f m/s²", e.RPM, float64(valvetrain.FollowerSpeed(tolerance.Float(a.Opening.Value), n)),
			float64(valvetrain.FollowerAcceleration(tolerance.Float(a.Downward.Value), n)), float64(valvetrain.FollowerAcceleration(tolerance.Float(a.Upward.Value), n)))
	}
}

// middle is that of a reading, to a hundredth of a degree.
func middle(i tolerance.Interval[units.Angle]) units.Angle {
	m, _ := i.Middle()
	m, _ = m.Round(units.InDegrees, 2, units.NearestEven)
	return m
}

// working writes out durations, centres, overlap, separation and advance, with
// the middles of the readings.
func (e *engine) working() (string, error) {
	half := working.Exactly(units.Turn / 2)
	var centres, nears [2]working.TermOf[units.Angle]
	var terms []working.TermOf[units.Angle]
	for i := range e.valves {
		v := &e.valves[i]
		opens, closes := middle(v.check.Opens.Read), middle(v.check.Closes.Read)
		mark := []string{"ᵢ", "ₑ"}[i]
		o, c := working.Given(v.which.String()+" opens", "o"+mark, opens), working.Given(v.which.String()+" closes", "c"+mark, closes)
		near, far := o, c
		if v.which == valvetrain.ExhaustValve {
			near, far = c, o
		}
		nears[i] = near
		centres[i] = valvetrain.TimingCentre(near, far, half).Named(v.which.String()+" centre", "m"+mark)
		terms = append(terms, valvetrain.TimingDuration(near, far, half).Named(v.which.String()+" duration", "d"+mark))
	}
	terms = append(terms, valvetrain.TimingOverlap(nears[0], nears[1]).Named("overlap", "v"),
		valvetrain.LobeSeparation(centres[0], centres[1]).Named("separation, degrees of the camshaft", "S"),
		valvetrain.TimingAdvance(centres[0], centres[1]).Named("advance", "A"))
	var b strings.Builder
	for _, t := range terms {
		s, err := working.Solve(t, units.Style[units.Angle]{Unit: units.InDegrees, Places: 2})
		if err != nil {
			return "", err
		}
		b.WriteString("\n" + s.Text())
	}
	return b.String(), nil
}
