package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A ShellSurvey is what was measured on the shells of one bearing. What was not
// measured is left out.
type ShellSurvey struct {
	Where string `json:"where"` // "main 3"
	// Ball is the ball that Over was read over; zero where Over are walls.
	Ball tolerance.Bracket `json:"ball,omitzero"`
	// Upper and Lower are readings over ball and wall at the crown and along it, of
	// each half.
	Upper []tolerance.Bracket `json:"upper,omitzero"`
	Lower []tolerance.Bracket `json:"lower,omitzero"` // said with Upper
	// Housing is the housing bore, which spread and nip need.
	Housing tolerance.Bracket `json:"housing,omitzero"`
	// FreeUpper and FreeLower are the widths across the open ends, free.
	FreeUpper tolerance.Bracket `json:"freeUpper,omitzero"`
	FreeLower tolerance.Bracket `json:"freeLower,omitzero"` // said with FreeUpper
	// Gap is at the cap with one bolt slack, read by blades close to the bore.
	Gap tolerance.Bracket `json:"gap,omitzero"`
}

// ShellLimits are the engine maker's. Any of them may be missing.
type ShellLimits struct {
	Wall      tolerance.Spec `json:"wall,omitzero"`      // of every place
	Variation tolerance.Spec `json:"variation,omitzero"` // of one half
	Spread    tolerance.Spec `json:"spread,omitzero"`    // wider free than the housing
	Gap       tolerance.Spec `json:"gap,omitzero"`       // with one bolt slack, of both halves together
}

// A ShellReport is what follows. A finding whose Measure is empty was not made:
// nothing was measured for it.
type ShellReport struct {
	Walls      [2]tolerance.Finding `json:"walls"`      // upper, lower
	Variations [2]tolerance.Finding `json:"variations"` // upper, lower
	Spreads    [2]tolerance.Finding `json:"spreads"`    // upper, lower
	Gap        tolerance.Finding    `json:"gap"`        // with one bolt slack
	// Interference is what the gap makes on the diameter; zero where it wasn't read.
	Interference tolerance.Bracket `json:"interference,omitzero"`
	// Loose names halves that don't hold in their housing: a free width not above
	// the bore. They are not used.
	Loose []string           `json:"loose,omitzero"`
	Worst tolerance.Standing `json:"worst"` // of all that has a limit; CantTell where one can't be told
	Next  string             `json:"next"`  // what to do
}

var shellHalves = [2]string{"upper", "lower"}

// Check works out the shells of one bearing against their limits. It fails with an
// [InputError] where nothing was measured or a reading can't be.
func (s *ShellSurvey) Check(l *ShellLimits) (ShellReport, error) {
	var r ShellReport
	if err := s.check(); err != nil {
		return r, err
	}
	worst, asked, open := tolerance.CantTell, false, false
	keep := func(into *tolerance.Finding, measure, where string, spec tolerance.Spec, stations ...tolerance.Bracket) (err error) {
		if *into, err = tolerance.Assess(measure, where, spec, stations...); err != nil || spec.IsZero() {
			return err
		}
		asked = true
		open = open || into.Standing == tolerance.CantTell
		worst = max(worst, into.Standing)
		return nil
	}
	for i, half := range shellHalves {
		where := journalField(s.Where, half+" shell")
		readings, free := s.Upper, s.FreeUpper
		if i == 1 {
			readings, free = s.Lower, s.FreeLower
		}
		if walls := s.walls(readings); len(walls) > 0 {
			if err := keep(&r.Walls[i], "shell wall", where, l.Wall, walls...); err != nil {
				return r, err
			}
			if len(walls) > 1 {
				// The ball is common to both readings, and drops out.
				if err := keep(&r.Variations[i], "variation of the wall", where, l.Variation, WallVariation(readings[0], readings[1:]...)); err != nil {
					return r, err
				}
			}
		}
		if !free.IsZero() {
			spread := FreeSpread(free, s.Housing)
			if err := keep(&r.Spreads[i], "free spread", where, l.Spread, spread); err != nil {
				return r, err
			}
			if lo, _ := journalEnds(spread); lo <= 0 {
				r.Loose = append(r.Loose, half)
			}
		}
	}
	if !s.Gap.IsZero() {
		if err := keep(&r.Gap, "gap with one bolt slack", s.Where, l.Gap, s.Gap); err != nil {
			return r, err
		}
		if !s.Housing.IsZero() {
			middle, _ := s.Housing.Middle()
			r.Interference = NipInterference(s.Gap, tolerance.Exactly(middle))
		}
	}
	if r.Worst = worst; open && worst != tolerance.PastWearLimit {
		r.Worst = tolerance.CantTell
	}
	r.Next = r.next(asked)
	return r, nil
}

func (s *ShellSurvey) walls(readings []tolerance.Bracket) []tolerance.Bracket {
	walls := make([]tolerance.Bracket, len(readings))
	for i, x := range readings {
		walls[i] = x
		if !s.Ball.IsZero() {
			walls[i] = WallByBall(x, s.Ball)
		}
	}
	return walls
}

func (r *ShellReport) next(asked bool) string {
	const never = "; never file a cap or a shell to change it"
	fails := func(f *tolerance.Finding, v tolerance.Verdict) bool {
		return f.New.Least == v || f.Wear.Least == v || f.New.Greatest == v || f.Wear.Greatest == v
	}
	switch {
	case len(r.Loose) > 0:
		return "a shell that doesn't spring into its housing is not used: it may turn with the shaft"
	case fails(&r.Gap, tolerance.Below):
		return "too little nip: the shells can move in their housing and pass no heat; look for a housing worn or stretched, and for bright spots on the shells' backs" + never
	case fails(&r.Gap, tolerance.Above):
		return "too much nip: the shells bulge inward at the split; look for the wrong shells or a housing that is too small" + never
	case !asked:
		return "no limits are given: look them up in the engine maker's manual"
	case r.Worst == tolerance.CantTell:
		return "can't be told yet, which is not a pass: measure as the findings say"
	case r.Worst >= tolerance.OutsideNewBand:
		return "outside the limits: other shells" + never
	}
	return "within the limits; at assembly keep backs and housings dry and clean, and tighten both bolts in the manual's order"
}

func (s *ShellSurvey) check() error {
	if len(s.Upper) == 0 && len(s.Lower) == 0 && s.FreeUpper.IsZero() && s.FreeLower.IsZero() && s.Gap.IsZero() {
		return &InputError{journalField(s.Where, "shells"), "(nothing measured)", "measured: walls, free width or gap"}
	}
	for _, b := range [...]struct {
		field string
		value *tolerance.Bracket
		least units.Length
	}{
		{"ball", &s.Ball, units.Picometre}, {"housing bore", &s.Housing, units.Picometre}, {"upper free width", &s.FreeUpper, units.Picometre},
		{"lower free width", &s.FreeLower, units.Picometre}, {"gap", &s.Gap, 0},
	} {
		if b.value.IsZero() {
			continue
		}
		if b.value == &s.Gap { // blades may leave its upper end open
			if lo, end := s.Gap.Lower(); !s.Gap.InRange() || end == tolerance.Absent || lo < 0 {
				return &InputError{journalField(s.Where, b.field), journalQuote(s.Gap.String()), "measured, from 0 mm"}
			}
			continue
		}
		if err := journalBracketOf(s.Where, b.field, *b.value, b.least); err != nil {
			return err
		}
	}
	if s.Housing.IsZero() && (!s.FreeUpper.IsZero() || !s.FreeLower.IsZero()) {
		return &InputError{journalField(s.Where, "housing bore"), "(not given)", "measured, for the free spread"}
	}
	for i, list := range [2][]tolerance.Bracket{s.Upper, s.Lower} {
		for k, x := range list {
			field := func() string { return journalField(s.Where, shellHalves[i]+" shell, reading "+strconv.Itoa(k+1)) }
			if journalBracket("", x, units.Picometre) != nil {
				return journalBracket(field(), x, units.Picometre)
			}
			if ball := s.Ball; !ball.IsZero() {
				_, most := journalEnds(ball)
				if lo, _ := journalEnds(x); lo <= most {
					return &InputError{field(), x.String(), "above the ball it is read over, " + ball.String()}
				}
			}
		}
	}
	return nil
}
