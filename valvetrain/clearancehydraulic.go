package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// HydraulicPreload is how far the plunger of a hydraulic follower stands pressed
// in with the valve shut, from the clearance found with the plunger bottomed:
//
//	preload = travel − clearance/ratio
//
// travel is the plunger's whole way from its stop ring to the bottom; the
// clearance is measured at the valve; ratio is the valve's movement over the
// plunger's, the rocker ratio, above 0.
//
// Why: in running, the plunger stands pressed in by the preload and has
// travel − preload left. Pressed to the bottom it gives up just that much, which
// the rocker makes (travel − preload) × ratio of clearance at the valve.
func HydraulicPreload[N tolerance.Number[N]](travel, clearance N, ratio tolerance.Ratio) N {
	return travel.Sub(clearance.Scale(clearanceOver(ratio)))
}

// HydraulicClearance is the clearance at the valve with the plunger bottomed that
// goes with a preload: (travel − preload) × ratio.
func HydraulicClearance[N tolerance.Number[N]](travel, preload N, ratio tolerance.Ratio) N {
	return travel.Sub(preload).Scale(clearanceTimes(ratio))
}

// HydraulicTravel is the plunger's whole way, from a preload set by turns of a
// screw and the clearance then found with the plunger bottomed.
func HydraulicTravel[N tolerance.Number[N]](preload, clearance N, ratio tolerance.Ratio) N {
	return preload.Add(clearance.Scale(clearanceOver(ratio)))
}

// PushrodForPreload is the pushrod that changes the preload of a hydraulic
// follower to the wanted one: pushrod + wanted − preload, one for one, since rod
// and plunger lie in one line.
func PushrodForPreload[N tolerance.Number[N]](pushrod, preload, wanted N) N {
	return pushrod.Add(wanted).Sub(preload)
}

// A Hydraulic is a valve with a hydraulic follower, its plunger bottomed for the
// measuring.
type Hydraulic struct {
	Where           string            // "inlet 2"
	Travel          tolerance.Bracket // of the plunger, from its stop ring to the bottom
	Clearance       tolerance.Bracket // at the valve, with the plunger bottomed; with both ends
	Ratio           tolerance.Ratio   // of the valve's movement to the plunger's; zero for 1
	ClearanceLimits tolerance.Spec    // the manual's, for Clearance; may be empty
	PreloadLimits   tolerance.Spec    // the manual's, for the plunger's preload; may be empty
}

// A HydraulicReport is what a bottomed plunger tells.
type HydraulicReport struct {
	Clearance tolerance.Finding `json:"clearance"` // with the plunger bottomed
	Preload   tolerance.Finding `json:"preload"`   // of the plunger; below zero it hangs on its stop ring and rattles
	Next      string            `json:"next"`      // what to do
}

// Inspect judges a hydraulic follower. A clearance at which the plunger would
// have to go beyond its way is no error: the preload is below zero then, and the
// report says so. It fails with an [InputError] where a reading can't be.
func (h Hydraulic) Inspect() (HydraulicReport, error) {
	ratio := ratioOrOne(h.Ratio)
	err := firstError(
		func() error { return inputBracket("plunger travel", h.Travel, units.Picometre) },
		func() error { return inputBracket("clearance with the plunger bottomed", h.Clearance, 0) },
		func() error { return clearanceRatio("ratio of valve to plunger", ratio) },
	)
	if err != nil {
		return HydraulicReport{}, err
	}
	preload := HydraulicPreload(h.Travel, h.Clearance, ratio)
	var r HydraulicReport
	if r.Clearance, err = inputAssess("clearance with the plunger bottomed", h.Where, h.ClearanceLimits, h.Clearance); err != nil {
		return HydraulicReport{}, err
	}
	if r.Preload, err = inputAssess("plunger preload", h.Where, h.PreloadLimits, preload); err != nil {
		return HydraulicReport{}, err
	}
	lo, _ := preload.Lower()
	least, _ := h.Clearance.Lower()
	switch {
	case least <= 0:
		r.Next = "no clearance is proved: see that the cam is on its base circle and the plunger bled and bottomed; a plunger that bottoms in running holds the valve open"
	case lo <= 0:
		r.Next = "the plunger may hang on its stop ring with clearance left in the train: a longer pushrod, or what the manual names"
	case r.Clearance.Standing >= tolerance.OutsideNewBand || r.Preload.Standing >= tolerance.OutsideNewBand:
		r.Next = "choose another pushrod, screw setting or shim by what the preload is to change"
	case r.Clearance.Standing == tolerance.CantTell && r.Clearance.Settle != "" && !h.ClearanceLimits.IsZero():
		r.Next = r.Clearance.Settle
	case r.Preload.Standing == tolerance.CantTell && r.Preload.Settle != "" && !h.PreloadLimits.IsZero():
		r.Next = r.Preload.Settle
	default:
		r.Next = "none by this test"
	}
	return r, nil
}
