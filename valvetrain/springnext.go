package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func (s Spring) next(r SpringReport) string {
	bad := func(standing tolerance.Standing) bool { return standing >= tolerance.OutsideNewBand }
	for _, f := range r.Readings {
		if bad(f.Standing) {
			return "renew the spring: its own load is outside the limits, which no shim makes good"
		}
	}
	switch {
	case bad(r.Free.Standing) || bad(r.Square.Standing):
		return "renew the spring"
	case bad(r.Bind.Standing):
		return "don't run it: take out shims, or take less lift or another spring, until the margin to coil bind is there"
	case r.Bind.Measure != "" && mayBind(r.Bind):
		return "measure the solid height: that the spring binds isn't excluded"
	case r.Bind.Standing == tolerance.CantTell && r.Bind.Measure != "" && !r.Bind.Spec.IsZero():
		return "measure the solid height, the installed height and the lift more finely: whether the margin to coil bind is there isn't told"
	case bad(r.SeatLoad.Standing) || bad(r.OpenLoad.Standing):
		return "bring the installed height to what the load asks for, with shims where it is too high, then judge the open load and the margin to coil bind again"
	case r.SeatLoad.Measure == "":
		return "measure its load at two heights: free length alone doesn't prove a spring"
	case r.SeatLoad.Standing == tolerance.CantTell && !r.SeatLoad.Spec.IsZero():
		return r.SeatLoad.Settle
	}
	return "none by these readings"
}

// mayBind says that a margin may be nothing or less.
func mayBind(margin tolerance.Finding) bool {
	lo, end := margin.Least.Lower()
	return end == tolerance.Absent || lo <= 0
}

func (s Spring) check() error {
	for _, x := range []struct {
		field string
		b     tolerance.Bracket
		least units.Length
	}{
		{"free length", s.Free, units.Picometre}, {"out of square", s.OffSquare, 0}, {"solid height", s.Solid, units.Picometre},
		{"installed height", s.Installed, units.Picometre}, {"lift", s.Lift, 0},
	} {
		if !x.b.IsZero() {
			if err := inputBracket(x.field, x.b, x.least); err != nil {
				return err
			}
		}
	}
	if len(s.ReadingLimits) != 0 && len(s.ReadingLimits) != len(s.Readings) {
		return &InputError{"limits of readings", fmt.Sprint(len(s.ReadingLimits)), fmt.Sprintf("as many as readings, %d, or none", len(s.Readings))}
	}
	for i, x := range s.Readings {
		if err := x.check(fmt.Sprint("reading ", i+1)); err != nil {
			return err
		}
	}
	if !s.Free.IsZero() && !s.Installed.IsZero() {
		_, free := inputEnds(s.Free)
		if lo, _ := inputEnds(s.Installed); lo >= free {
			return &InputError{"installed height", s.Installed.String(), "below the free length " + s.Free.String() + ": the spring would be loose"}
		}
	}
	return nil
}
