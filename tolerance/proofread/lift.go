package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// usualLift is the greatest lobe lift that is believed without the lobe's
// height. Common practice: lobes of cars' and lorries' engines lift 5 to 15 mm.
const usualLift = 20 * units.Millimetre

// CheckLift asks whether what is printed as the lift of a cam's lobe can be
// one. Lift is the lobe's height less the diameter of its base circle, and the
// base circle is greater than the lift, so a lift is less than half the height.
// Where the height isn't known (a zero Column), a lift of more than 20 mm is
// suspected, which the largest engines exceed.
//
// The result's pair holds the lift and the height, or the lift twice. Values
// out of range are a [CheckError].
func CheckLift(lift, height Column) (Report, error) {
	if err := lift.inRange("lift"); err != nil {
		return Report{}, err
	}
	if err := height.inRange("height"); err != nil {
		return Report{}, err
	}
	r := Report{Results: lift.order(nil)}
	least, ok := height.least()
	if !ok {
		least, _ = height.greatest()
	}
	for i := range lift.count() {
		w := lift.figure(i)
		if lift.limit(i) == Allowed {
			continue
		}
		x := Result{Relation: LiftNotSize, Limit: lift.limit(i), Pair: Pair{w, w}}
		most := usualLift
		if least.Value != 0 {
			x.Pair.Second = least
			most = least.Value.Abs() / 2
		}
		if w.Value > most || least.Value != 0 && w.Value == most {
			x.Slips = []Slip{{Kind: HeightForLift, In: First, Printed: w, Rank: rankWrongNumber}}
		}
		r.Results = append(r.Results, x)
	}
	return r, nil
}
