package main

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// given is what was written behind the flags.
type given struct {
	count, angle, above, below, throat, outer, inner string
	wantOuter, wantWidth, cleanUp, faceCut, square   string
	faceAngle, faceOuter, faceInner, head, installed string
	tip, wantTip                                     string
}

// job is what is to be worked out.
type job struct {
	plan           valvetrain.SeatPlan
	face           valvetrain.ValveFace
	faceCut, head  tolerance.Bracket
	installed, tip tolerance.Bracket
	wantTip        units.Length
}

// reader reads one flag after another, and keeps the first error.
type reader struct {
	count string
	err   error
}

func (r *reader) fail(flag string, err error) {
	if r.err == nil && err != nil {
		r.err = fmt.Errorf("-%s: %w", flag, err)
	}
}

func (r *reader) length(flag, text string) units.Length {
	l, err := units.ParseLength(text)
	r.fail(flag, err)
	return l
}

func (r *reader) bracket(flag, text string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(text)
	r.fail(flag, err)
	return b
}

func (r *reader) angle(flag, text string) valvetrain.SeatAngle {
	a, err := units.ParseAngle(text)
	r.fail(flag, err)
	switch r.count {
	case "stem":
		return valvetrain.SeatAngleFromStem(a)
	case "included":
		return valvetrain.SeatAngleIncluded(a)
	}
	return valvetrain.SeatAngleFromSquare(a)
}

func (g given) read() (j job, err error) {
	r := &reader{count: g.count}
	if g.count != "square" && g.count != "stem" && g.count != "included" {
		return j, fmt.Errorf("-count: angles count from the square plane, the stem or as included, not %.64q", g.count)
	}
	seat := valvetrain.Seat{Angle: r.angle("angle", g.angle), Outer: r.bracket("outer", g.outer), Inner: r.bracket("inner", g.inner)}
	j.plan = valvetrain.SeatPlan{Seat: seat, Above: r.angle("above", g.above), Below: r.angle("below", g.below),
		Outer: r.length("want-outer", g.wantOuter), Width: r.length("want-width", g.wantWidth), CleanUp: r.length("clean-up", g.cleanUp)}
	if g.throat != "" {
		j.plan.Throat = r.angle("throat", g.throat)
	}
	j.face = valvetrain.ValveFace{Angle: seat.Angle, Outer: r.bracket("face-outer", g.faceOuter), Inner: r.bracket("face-inner", g.faceInner)}
	if g.faceAngle != "" {
		j.face.Angle = r.angle("face-angle", g.faceAngle)
	}
	j.faceCut, j.head = r.bracket("face-cut", g.faceCut), r.bracket("head", g.head)
	if g.square != "" {
		square := r.length("face-square", g.square)
		along := valvetrain.GrindAlong(tolerance.Float(square.Float(units.InMillimetres)), tolerance.Float(j.face.Angle.Radians()))
		l, err := units.Nearest(float64(along), units.InMillimetres)
		r.fail("face-square", err)
		j.faceCut = tolerance.Exactly(l)
	}
	j.installed, j.tip, j.wantTip = r.bracket("installed", g.installed), r.bracket("tip", g.tip), r.length("want-tip", g.wantTip)
	return j, r.err
}
