package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// RockerClearance is the clearance of a rocker's bush on its shaft, on the
// diameter.
func RockerClearance[N tolerance.Number[N]](bush, shaft N) N { return bush.Sub(shaft) }

// RockerBushFor is the bore of a bush that has a clearance on a shaft.
func RockerBushFor[N tolerance.Number[N]](shaft, clearance N) N { return shaft.Add(clearance) }

// RockerShaftFor is the shaft on which a bush has a clearance.
func RockerShaftFor[N tolerance.Number[N]](bush, clearance N) N { return bush.Sub(clearance) }

// RockerShaftWear is how much smaller a rocker shaft is under a rocker than
// where nothing runs. It wears on its loaded side: measure across the wear, in
// line with the valve's push, and not only square to it.
func RockerShaftWear[N tolerance.Number[N]](unworn, worn N) N { return unworn.Sub(worn) }

// FollowerClearance is the clearance of a cam follower (tappet, bucket, lifter)
// in its bore, on the diameter.
func FollowerClearance[N tolerance.Number[N]](bore, follower N) N { return bore.Sub(follower) }

// FollowerBoreFor is the bore in which a follower has a clearance.
func FollowerBoreFor[N tolerance.Number[N]](follower, clearance N) N { return follower.Add(clearance) }

// FollowerFor is the follower that has a clearance in a bore.
func FollowerFor[N tolerance.Number[N]](bore, clearance N) N { return bore.Sub(clearance) }

// A RockerPivot is a rocker on its shaft, measured at one or more places and
// ways.
type RockerPivot struct {
	Where  string              // "rocker 3"
	Shafts []tolerance.Bracket // of the shaft, where the rocker runs
	Bushes []tolerance.Bracket // of the rocker's bush
	Unworn tolerance.Bracket   // of the shaft where nothing runs; zero where not measured

	ShaftLimits     tolerance.Spec // of the shaft
	BushLimits      tolerance.Spec // of the bush
	ClearanceLimits tolerance.Spec // of the clearance, on the diameter
	WearLimits      tolerance.Spec // of [RockerShaftWear]
}

// A FollowerFit is a cam follower in its bore, measured at one or more places
// and ways.
type FollowerFit struct {
	Where     string              // "exhaust 2"
	Followers []tolerance.Bracket // of the follower's outside
	Bores     []tolerance.Bracket // of its bore

	FollowerLimits  tolerance.Spec // of the follower
	BoreLimits      tolerance.Spec // of the bore
	ClearanceLimits tolerance.Spec // of the clearance, on the diameter
}

// A PivotReport is what a shaft and the hole that it runs in tell.
type PivotReport struct {
	Shaft     tolerance.Finding `json:"shaft"`           // or follower
	Bore      tolerance.Finding `json:"bore"`            // or bush
	Clearance tolerance.Finding `json:"clearance"`       // least and greatest anywhere
	Wear      tolerance.Finding `json:"wear,omitzero"`   // of the shaft against its unworn part
	Next      string            `json:"next"`            // what to do
	Notes     []string          `json:"notes,omitempty"` // what was not measured
}

// Inspect judges a rocker on its shaft. It fails with an [InputError] where a
// size isn't measured, or the shaft is larger than the bush for certain.
func (p RockerPivot) Inspect() (PivotReport, error) {
	r, err := camPair{p.Where, "rocker shaft", "rocker bush", "rocker-to-shaft clearance",
		p.Shafts, p.Bushes, p.ShaftLimits, p.BushLimits, p.ClearanceLimits}.inspect()
	if err != nil {
		return PivotReport{}, err
	}
	if p.Unworn.IsZero() {
		r.Notes = append(r.Notes, "the shaft's wear is not known: measure it where nothing runs")
	} else {
		if err := inputBracket("unworn rocker shaft", p.Unworn, units.Picometre); err != nil {
			return PivotReport{}, err
		}
		worn := make([]tolerance.Bracket, len(p.Shafts))
		for i, s := range p.Shafts {
			worn[i] = RockerShaftWear(p.Unworn, s)
		}
		if r.Wear, err = inputAssess("wear of the rocker shaft", p.Where, p.WearLimits, worn...); err != nil {
			return PivotReport{}, err
		}
	}
	switch {
	case camBad(r.Shaft) || camBad(r.Wear):
		r.Next = "renew or turn the shaft as the manual allows, then judge the bush again on it"
	case camBad(r.Bore) || camBad(r.Clearance):
		r.Next = "renew the bush and ream it to its shaft, oil holes in line"
	default:
		r.Next = camNext("none by these limits", r.Shaft, r.Bore, r.Clearance, r.Wear)
	}
	return r, nil
}

// Inspect judges a follower in its bore. It fails with an [InputError] where a
// size isn't measured, or the follower is larger than its bore for certain.
func (f FollowerFit) Inspect() (PivotReport, error) {
	r, err := camPair{f.Where, "cam follower", "follower bore", "follower-to-bore clearance",
		f.Followers, f.Bores, f.FollowerLimits, f.BoreLimits, f.ClearanceLimits}.inspect()
	if err != nil {
		return PivotReport{}, err
	}
	switch {
	case camBad(r.Shaft):
		r.Next = "renew the follower, with a sound lobe under it, and judge its bore again"
	case camBad(r.Bore) || camBad(r.Clearance):
		r.Next = "an oversize follower, or sleeve the bore, as the manual allows"
	default:
		r.Next = camNext("none by these limits; a follower's foot is looked at too: hollow, pitted or not turning, it takes the lobe with it", r.Shaft, r.Bore, r.Clearance)
	}
	return r, nil
}

// camPair is a shaft in a hole, both measured at several places.
type camPair struct {
	where, shaft, bore, clearance       string
	shafts, bores                       []tolerance.Bracket
	shaftSpec, boreSpec, clearanceLimit tolerance.Spec
}

func (p camPair) inspect() (r PivotReport, err error) {
	if err = camSizes(p.shaft, p.shafts); err != nil {
		return PivotReport{}, err
	}
	if err = camSizes(p.bore, p.bores); err != nil {
		return PivotReport{}, err
	}
	leastShaft, greatestShaft := tolerance.Extremes(p.shafts...)
	leastBore, greatestBore := tolerance.Extremes(p.bores...)
	loose := CamJournalClearance(greatestBore, leastShaft)
	if _, hi := inputEnds(loose); hi < 0 {
		return PivotReport{}, &InputError{p.shaft + ", " + inputText(p.where), leastShaft.String(), "below its " + p.bore + ", " + greatestBore.String()}
	}
	for _, a := range []struct {
		into    *tolerance.Finding
		measure string
		spec    tolerance.Spec
		read    []tolerance.Bracket
	}{
		{&r.Shaft, p.shaft, p.shaftSpec, p.shafts}, {&r.Bore, p.bore, p.boreSpec, p.bores},
		{&r.Clearance, p.clearance, p.clearanceLimit, []tolerance.Bracket{guideNoLess(CamJournalClearance(leastBore, greatestShaft)), guideNoLess(loose)}},
	} {
		if *a.into, err = inputAssess(a.measure, p.where, a.spec, a.read...); err != nil {
			return PivotReport{}, err
		}
	}
	return r, nil
}

// camSizes refuses no readings, and any that isn't a bounded size.
func camSizes(field string, read []tolerance.Bracket) error {
	if len(read) == 0 {
		return &InputError{field, "without readings", "measured at one place or more"}
	}
	for _, b := range read {
		if err := inputBracket(field, b, units.Picometre); err != nil {
			return err
		}
	}
	return nil
}

// camBad tells a finding past what its limits allow.
func camBad(f tolerance.Finding) bool { return f.Standing >= tolerance.OutsideNewBand }

// camNext is what would settle the first of the findings that has limits and
// can't tell, or else the given.
func camNext(otherwise string, findings ...tolerance.Finding) string {
	for _, f := range findings {
		if f.Measure != "" && f.Standing == tolerance.CantTell && !f.Spec.IsZero() && f.Settle != "" {
			return f.Measure + ", " + f.Where + ": " + f.Settle
		}
	}
	return otherwise
}
