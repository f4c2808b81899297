package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SeatPlan is what there is to plan the cuts of a seat from.
type SeatPlan struct {
	Seat    Seat         // as measured
	Above   SeatAngle    // of the cutter from above, and of the cone that is there; flatter than the seat
	Below   SeatAngle    // of the cutter from below; steeper than the seat, below 90°
	Throat  SeatAngle    // of the throat that is there; zero where it was cut with Below
	Outer   units.Length // wanted outer diameter
	Width   units.Length // wanted, along the cone
	CleanUp units.Length // least cut of the seat itself, along the stem; 0 for none
}

// SeatCuts are the three cuts, in the order in which they are made. Feeds are
// along the stem; those of the narrowing cuts count from where the cutter just
// touches the seat's edge. Of a bracket feed the lower end, measure, and go on.
type SeatCuts struct {
	// Reface is the cut of the seat itself: for clean-up, or to reach the wanted
	// edges, enough for every size that the brackets allow. It is also what the
	// seat's cut lets the valve sink.
	Reface  units.Length      `json:"reface"`
	Refaced Seat              `json:"refaced"` // the seat then, wider
	Above   tolerance.Bracket `json:"above"`   // feed from above, to the wanted outer diameter
	Below   tolerance.Bracket `json:"below"`   // feed from below, to the wanted width
	Seat    Seat              `json:"seat"`    // the seat wanted, as it will be
}

// Plan finds the least cut of the seat that reaches beyond both wanted edges
// and cleans it up, and the feeds that then narrow it to them:
//
//	reface   max(clean-up, (D* − D)/2·(tan α − tan β), (d − d*)/2·(tan γ − tan α))
//	above    (D′ − D*)/2·(tan α − tan β)
//	below    (d* − d′)/2·(tan γ − tan α)
//
// D and d are the seat's edges, D′ and d′ those once it is refaced, D* and d*
// the wanted ones. Angles are exact as ground; what a stone is out by has to be
// dressed away. Cut the seat from a guide that is in order, a little at a time,
// and measure.
//
// It fails with an [InputError] where a size or an angle can't be, where the
// throat is so wide that no cut of this seat reaches the wanted inner edge, and
// where the wanted width leaves no port.
//
// Dust of seats of beryllium alloy harms the lungs for life: find out what the
// seats are made of before grinding. Wear eye protection.
func (p SeatPlan) Plan() (SeatCuts, error) {
	if err := p.check(); err != nil {
		return SeatCuts{}, err
	}
	throat := p.Throat
	if throat == (SeatAngle{}) {
		throat = p.Below
	}
	wanted, err := SeatOfWidth(p.Seat.Angle, tolerance.Exactly(p.Outer), tolerance.Exactly(p.Width))
	if err != nil {
		return SeatCuts{}, err
	}
	nothing := tolerance.Exactly(units.Length(0))
	angle := p.Seat.Angle
	up, down := tangents(angle, p.Above)/2, tangents(p.Below, angle)/2
	_, reach := inputEnds(seatScaled(wanted.Outer.Sub(p.Seat.Outer).Max(nothing), up))
	cuts := SeatCuts{Reface: max(p.CleanUp, reach), Seat: wanted}
	short := p.Seat.Inner.Sub(wanted.Inner).Max(nothing)
	if _, hi := inputEnds(short); hi > 0 {
		if throat.square >= units.Turn/4 {
			return SeatCuts{}, &InputError{"wanted width", p.Width.String(), "narrow enough: the straight throat leaves no more than from " + p.Seat.Inner.String() + " to " + p.Outer.String()}
		}
		_, reach := inputEnds(seatScaled(short, tangents(throat, angle)/2))
		cuts.Reface = max(cuts.Reface, reach)
	}
	if cuts.Refaced, err = p.Seat.Refaced(tolerance.Exactly(cuts.Reface), p.Above, throat); err != nil {
		return SeatCuts{}, err
	}
	cuts.Above = seatScaled(cuts.Refaced.Outer.Sub(wanted.Outer).Max(nothing), up)
	cuts.Below = seatScaled(wanted.Inner.Sub(cuts.Refaced.Inner).Max(nothing), down)
	if !cuts.Above.InRange() || !cuts.Below.InRange() {
		return SeatCuts{}, &InputError{"cutter from below", p.Below.String(), "flat enough for a feed within range"}
	}
	return cuts, nil
}

func (p SeatPlan) check() error {
	return firstError(p.Seat.check,
		func() error { return p.Seat.checkAbove(p.Above) },
		func() error { return p.Seat.checkBelow("cutter from below", p.Below) },
		func() error { return p.Below.checkCone("cutter from below") },
		func() error {
			if p.Throat == (SeatAngle{}) {
				return nil
			}
			return p.Seat.checkBelow("throat", p.Throat)
		},
		func() error { return inputSize("wanted outer diameter", p.Outer) },
		func() error { return inputSize("wanted width", p.Width) },
		func() error { return inputAllowance("clean-up", p.CleanUp) })
}
