package valvetrain

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Spring is one valve spring, as measured on the bench, and where it is to
// work. What wasn't measured is left at zero, and has no finding.
//
// A spring under load can leave the bench at the height of an eye, and so can
// the collets that it holds: wear eye protection, use the tester's and the
// compressor's own guards, and never stand in line with it.
type Spring struct {
	Where     string            // "exhaust 3, outer"
	Form      SpringForm        // what its coils are like
	Free      tolerance.Bracket // length without load
	OffSquare tolerance.Bracket // how far its top stands off a square at its foot
	Readings  []SpringReading   // loads on a tester; two or more tell a rate
	Coil      SpringCoil        // wire and coils; zero value where not measured; its form is the spring's
	Solid     tolerance.Bracket // height when coil-bound, as measured; zero to take it from the coils
	Installed tolerance.Bracket // height with the valve closed
	Lift      tolerance.Bracket // of the valve; zero where open height isn't asked

	FreeLimits   tolerance.Spec                // of the free length
	SquareLimits tolerance.Spec                // of OffSquare
	SeatLimits   tolerance.SpecOf[units.Force] // of the load at the installed height
	OpenLimits   tolerance.SpecOf[units.Force] // of the load over the nose, at full lift
	BindLimits   tolerance.Spec                // of the margin to coil bind, "min 1 mm"
	// ReadingLimits judges readings against the loads that a manual prints for their
	// heights; as many as readings, or none.
	ReadingLimits []tolerance.SpecOf[units.Force]
}

// A SpringReport is what the measurements tell of a spring. A finding of zero
// value is of something that wasn't measured.
type SpringReport struct {
	Free     tolerance.Finding                  `json:"free,omitzero"`     // length
	Square   tolerance.Finding                  `json:"square,omitzero"`   // off a square
	Readings []tolerance.FindingOf[units.Force] `json:"readings,omitzero"` // each reading against its own limits
	Rate     RateBracket                        `json:"rate,omitzero"`     // between its tallest and shortest reading
	// RateByCoil is the rate from wire and coils; zero where they weren't given or
	// the spring isn't cylindrical.
	RateByCoil RateBracket                      `json:"rateByCoil,omitzero"`
	SeatLoad   tolerance.FindingOf[units.Force] `json:"seatLoad,omitzero"`   // valve closed
	OpenLoad   tolerance.FindingOf[units.Force] `json:"openLoad,omitzero"`   // valve fully open
	OpenHeight tolerance.Bracket                `json:"openHeight,omitzero"` // valve fully open
	Solid      tolerance.Bracket                `json:"solid,omitzero"`      // as measured, or by the coils
	Bind       tolerance.Finding                `json:"bind,omitzero"`       // margin to coil bind
	Notes      []string                         `json:"notes,omitempty"`     // what was taken for granted
	Next       string                           `json:"next"`                // what to do
}

// Inspect judges free length, squareness, loads and the margin to coil bind. The
// load at a height is a straight line between the two readings on either side of
// it; a height past the readings goes by the nearest two, for cylindrical springs
// only. It fails with an [InputError] where a size can't be, where a height past
// the readings is asked of another spring, and where the lift takes the spring
// past its solid height for certain.
func (s Spring) Inspect() (SpringReport, error) {
	if err := s.check(); err != nil {
		return SpringReport{}, err
	}
	var r SpringReport
	steps := []func(*SpringReport) error{s.inspectShape, s.inspectLoads, s.inspectBind}
	for _, step := range steps {
		if err := step(&r); err != nil {
			return SpringReport{}, err
		}
	}
	r.Next = s.next(r)
	return r, nil
}

func (s Spring) inspectShape(r *SpringReport) (err error) {
	if !s.Free.IsZero() {
		if r.Free, err = inputAssess("free length", s.Where, s.FreeLimits, s.Free); err != nil {
			return err
		}
	}
	if !s.OffSquare.IsZero() {
		r.Square, err = inputAssess("out of square", s.Where, s.SquareLimits, s.OffSquare)
	}
	return err
}

func (s Spring) inspectLoads(r *SpringReport) (err error) {
	if s.Coil != (SpringCoil{}) && s.Form == Cylindrical {
		if r.RateByCoil, err = s.coil().Rate(); err != nil {
			return err
		}
	}
	for i, x := range s.Readings {
		var spec tolerance.SpecOf[units.Force]
		if len(s.ReadingLimits) > 0 {
			spec = s.ReadingLimits[i]
		}
		f, err := inputAssess("load at "+x.Height.String(), s.Where, spec, x.Load)
		if err != nil {
			return err
		}
		r.Readings = append(r.Readings, f)
	}
	if len(s.Readings) < 2 {
		return nil
	}
	sorted := s.sorted()
	if r.Rate, err = SpringRateBetween(sorted[0], sorted[len(sorted)-1]); err != nil {
		return err
	}
	if s.Installed.IsZero() {
		return nil
	}
	load, err := s.LoadAt(s.Installed)
	if err != nil {
		return err
	}
	if r.SeatLoad, err = inputAssess("seat load", s.Where, s.SeatLimits, load); err != nil {
		return err
	}
	if s.Lift.IsZero() {
		return nil
	}
	if load, err = s.LoadAt(SpringOpenHeight(s.Installed, s.Lift)); err != nil {
		return err
	}
	r.OpenLoad, err = inputAssess("load at full lift", s.Where, s.OpenLimits, load)
	return err
}

func (s Spring) inspectBind(r *SpringReport) (err error) {
	switch {
	case !s.Solid.IsZero():
		r.Solid = s.Solid
	case s.Coil != (SpringCoil{}) && s.Form != Conical:
		if r.Solid, err = s.coil().Solid(); err != nil {
			return err
		}
		r.Notes = append(r.Notes, "the solid height is taken from wire, coils and ends: a measured one is better")
	}
	if s.Installed.IsZero() || s.Lift.IsZero() {
		return nil
	}
	r.OpenHeight = SpringOpenHeight(s.Installed, s.Lift)
	if r.Solid.IsZero() {
		r.Notes = append(r.Notes, "the margin to coil bind is not known: measure the solid height, or wire and coils")
		return nil
	}
	margin := CoilBindMargin(s.Installed, s.Lift, r.Solid)
	if _, hi := inputEnds(margin); hi <= 0 {
		most := LiftToMargin(s.Installed, tolerance.Exactly(units.Length(0)), r.Solid)
		return &InputError{"lift", s.Lift.String(), "below " + most.String() + ", at which the spring is coil-bound"}
	}
	r.Bind, err = inputAssess("margin to coil bind", s.Where, s.BindLimits, margin)
	return err
}

// coil is the coil with the spring's own form.
func (s Spring) coil() SpringCoil {
	c := s.Coil
	c.Form = s.Form
	return c
}

// sorted are the readings, the tallest first.
func (s Spring) sorted() []SpringReading {
	sorted := slices.Clone(s.Readings)
	slices.SortStableFunc(sorted, func(a, b SpringReading) int {
		aLo, _ := inputEnds(a.Height)
		bLo, _ := inputEnds(b.Height)
		return bLo.Compare(aLo)
	})
	return sorted
}

// LoadAt is the load at a height, by the readings: see [Spring.Inspect].
func (s Spring) LoadAt(height tolerance.Bracket) (LoadBracket, error) {
	if len(s.Readings) < 2 {
		return LoadBracket{}, &InputError{"readings of the spring", "fewer than two", "loads at two heights or more"}
	}
	for _, x := range s.Readings {
		if err := x.check("reading"); err != nil {
			return LoadBracket{}, err
		}
	}
	if err := inputBracket("height", height, units.Picometre); err != nil {
		return LoadBracket{}, err
	}
	sorted := s.sorted()
	lo, hi := inputEnds(height)
	last := len(sorted) - 1
	_, tallest := inputEnds(sorted[0].Height)
	shortest, _ := inputEnds(sorted[last].Height)
	if (hi > tallest || lo < shortest) && s.Form != Cylindrical {
		return LoadBracket{}, &InputError{"height", height.String(), "between the readings, from " + shortest.String() + " to " + tallest.String() + ": past them a spring that is " + s.Form.String() + " doesn't follow a straight line"}
	}
	// The pair around the height; of one that reaches over a reading, every pair
	// that it touches counts.
	var load LoadBracket
	for i := range last {
		a, b := sorted[i], sorted[i+1]
		_, top := inputEnds(a.Height)
		foot, _ := inputEnds(b.Height)
		if i > 0 && lo > top || i < last-1 && hi < foot {
			continue
		}
		l, err := SpringLoadFrom(a, b, height)
		if err != nil {
			return LoadBracket{}, err
		}
		if load.IsZero() {
			load = l
			continue
		}
		a1, a2 := springEnds(load)
		b1, b2 := springEnds(l)
		load = inputSpan(min(a1, b1), max(a2, b2))
	}
	return load, nil
}
