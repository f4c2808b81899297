package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

const width = 78

// mm writes a bracket rounded outward.
func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 3) }

// side is an angle before or after top dead centre.
func side(a units.Angle) string {
	if a < 0 {
		return a.Abs().Text(units.InDegrees, 1) + " before"
	}
	return a.Text(units.InDegrees, 1) + " after"
}

func (e *engine) page() string {
	var b strings.Builder
	say := func(format string, args ...any) {
		b.WriteString(recipe.Wrap(fmt.Sprintf(format, args...), width, "  ", "    "))
	}
	fmt.Fprintf(&b, "Piston to valve: %s\n", e.Engine)
	for i := range e.valves {
		v := &e.valves[i]
		r := v.report
		fmt.Fprintf(&b, "\n%s\n\n", v.Where)
		where := "with the valve shut, at top dead centre"
		if !r.Shut {
			where = side(r.At) + " top dead centre"
		}
		say("least clearance %s, %s", mm(r.Least), where)
		say("its lower end has every error on the dangerous side and is rounded down; %s were taken off for heat and stretch, as given", v.Allowance)
		if !r.Shut {
			move, off := "advance", r.PerDegreeMM
			if off < 0 {
				move, off = "retard", -off
			}
			say("there the piston is %s down and the valve %s open; a degree of %s takes %.3f mm", r.Fall.Text(units.InMillimetres, 3), r.Lift.Text(units.InMillimetres, 3), move, off)
		}
		if f := r.Judgment; !f.Spec.IsZero() {
			f.Where = ""
			say("%s", strings.TrimPrefix(f.Text(units.InMillimetres, 3), ": "))
		}
		v.roomPage(say)
		v.pocketPage(say)
		say("Next: %s", r.Next)
	}
	b.WriteString("\n" + recipe.Wrap("Turn by hand, plugs out, and stop where it stops. The engine maker's manual governs; this is arithmetic on what was given.", width, "", ""))
	return b.String()
}

func (v *valve) roomPage(say func(string, ...any)) {
	switch {
	case v.why != "":
		say("no room to move the camshaft was found: %s", v.why)
	case v.room == nil:
	case v.room.Free:
		say("the camshaft may be moved as far as it will: %s is left all the way", v.Wanted)
	case v.room.Left < 0:
		say("the camshaft must be moved by %s, against the %s, for %s to be left", roundOut(v.room.Left.Abs()), v.room.Move, v.Wanted)
	default:
		left, _ := v.room.Left.Round(units.InDegrees, 1, units.Down)
		say("%s by at most %s before less than %s is left", v.room.Move, left.Text(units.InDegrees, 1), v.Wanted)
	}
}

// roundOut writes what is needed at least, rounded up.
func roundOut(a units.Angle) string {
	a, _ = a.Round(units.InDegrees, 1, units.Up)
	return a.Text(units.InDegrees, 1)
}

func (v *valve) pocketPage(say func(string, ...any)) {
	if v.Pocket == nil {
		return
	}
	radial := valvetrain.PocketClearance(v.Pocket.Diameter, v.Pocket.Head, v.Pocket.Beside)
	_, most := ends(v.Inclination)
	shift := valvetrain.PocketShift(tolerance.Float(v.report.Fall.Float(units.InMillimetres)), tolerance.Float(most.Radians()))
	say("radial clearance in the pocket %s at dead centre; where it is least the pocket has moved %.3f mm sideways, off it on one side", mm(radial), math.Ceil(float64(shift)*1000)/1000)
}

func ends[Q units.Quantity](i tolerance.Interval[Q]) (lo, hi Q) {
	lo, _ = i.Lower()
	hi, _ = i.Upper()
	return lo, hi
}

// working writes out each valve's clearance where it is least, with the ends of
// the readings that are on the dangerous side.
func (e *engine) working() (string, error) {
	var b strings.Builder
	for i := range e.valves {
		v := &e.valves[i]
		given := func(words, symbol string, l units.Length) working.RealTerm {
			return working.GivenReal(words, symbol, l.Float(units.InMillimetres), "mm")
		}
		drop, _ := ends(v.Drop)
		flattest, steepest := ends(v.Inclination)
		formula, psi := valvetrain.PistonToValve[working.RealTerm], steepest
		if v.FlatCrown {
			formula, psi = valvetrain.PistonToValveFlat[working.RealTerm], flattest
		}
		angle := working.GivenReal("valve to the bore", "α", psi.Float(units.InDegrees), "°")
		c := formula(given("drop", "c₀", drop), given("piston's fall", "x", v.report.Fall), given("lift", "L", v.report.Lift),
			angle.Mul(angle.Const(math.Pi/180)).Named("valve to the bore in radians", "ψ", "rad"))
		if v.Allowance != 0 {
			c = c.Named("clearance", "c", "mm").Sub(given("allowance", "a", v.Allowance)).Named("clearance left", "c′", "mm")
		} else {
			c = c.Named("clearance", "c", "mm")
		}
		s, err := working.SolveReal(c, working.RealStyle{Places: 3, Bare: true})
		if err != nil {
			return "", err
		}
		b.WriteString("\n" + v.Where + "\n\n" + s.Text())
	}
	return b.String(), nil
}
