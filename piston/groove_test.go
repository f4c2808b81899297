package piston

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Hand arithmetic: clearance 0.08, used ring 1.47, new ring 1.49, new groove
// 1.53: groove worn 0.08 + 1.47 − 1.53 = 0.02, ring 0.02: half each.
func TestShareWear(t *testing.T) {
	w, err := ShareWear(at("0.08 mm"), at("1.47 mm"), band("1.53–1.53 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Equal(t, Wear{Groove: at("0.02 mm"), Ring: at("0.02 mm"), LeastPercent: 50, GreatestPercent: 50}, w)

	// All of it the groove's.
	w, err = ShareWear(at("0.08 mm"), at("1.49 mm"), band("1.53–1.53 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Equal(t, Wear{Groove: at("0.04 mm"), Ring: at("0 mm"), LeastPercent: 100, GreatestPercent: 100}, w)

	// One third: 33.3 % prints as 33 to 34.
	w, err = ShareWear(at("0.07 mm"), at("1.47 mm"), band("1.53–1.53 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Equal(t, at("0.01 mm"), w.Groove)
	require.Equal(t, [2]int{33, 34}, [2]int{w.LeastPercent, w.GreatestPercent})

	// A bracket: groove [0.02, 0.04), ring 0.02: 50 % and up to two thirds.
	w, err = ShareWear(at("[0.08 mm, 0.1 mm)"), at("1.47 mm"), band("1.53–1.53 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Equal(t, [2]int{50, 67}, [2]int{w.LeastPercent, w.GreatestPercent})

	// No blade refused: the groove may have any share from half up.
	w, err = ShareWear(at("[0.08 mm, ∞)"), at("1.47 mm"), band("1.53–1.53 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Equal(t, [2]int{50, 100}, [2]int{w.LeastPercent, w.GreatestPercent})

	// Nothing worn at all: no share to tell.
	w, err = ShareWear(at("0.04 mm"), at("1.49 mm"), band("1.53–1.53 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Equal(t, [2]int{0, 100}, [2]int{w.LeastPercent, w.GreatestPercent})
}

func TestShareWearDoubtsWhatCantBeWear(t *testing.T) {
	w, err := ShareWear(at("0.02 mm"), at("1.47 mm"), band("1.53–1.54 mm"), band("1.49–1.49 mm"))
	require.NoError(t, err)
	require.Contains(t, w.Doubt, "narrower than new")
	require.Equal(t, [2]int{0, 0}, [2]int{w.LeastPercent, w.GreatestPercent})

	w, err = ShareWear(at("0.08 mm"), at("1.50 mm"), band("1.53–1.54 mm"), band("1.48–1.49 mm"))
	require.NoError(t, err)
	require.Contains(t, w.Doubt, "higher than a new one")

	for _, bad := range [][4]string{
		{"0.08 mm", "0 mm", "1.53–1.54 mm", "1.48–1.49 mm"},
		{"0.08 mm", "1.4 mm", "max 1.54 mm", "1.48–1.49 mm"},
		{"0.08 mm", "1.4 mm", "1.53–1.54 mm", "-1–1.49 mm"},
	} {
		_, err := ShareWear(at(bad[0]), at(bad[1]), band(bad[2]), band(bad[3]))
		require.ErrorIs(t, err, ErrInput)
	}
	_, err = ShareWear(tolerance.Exactly(units.OutOfRange[units.Length]()), at("1.4 mm"), band("1.53–1.54 mm"), band("1.48–1.49 mm"))
	require.ErrorIs(t, err, ErrInput)
}

func TestGrooveRemedies(t *testing.T) {
	both := tolerance.Spec{New: band("0.03–0.07 mm"), Wear: band("max 0.10 mm")}
	newOnly := tolerance.Spec{New: band("0.03–0.07 mm")}
	for _, c := range []struct {
		name     string
		g        Groove
		standing tolerance.Standing
		remedy   Remedy
		next     string // a part of it
	}{
		{"as new", Groove{Limits: both, Stations: []tolerance.Bracket{at("[0.0508 mm, 0.0635 mm)")}}, tolerance.AsNew, ReUse, "re-use"},
		{"usable", Groove{Limits: both, Stations: []tolerance.Bracket{at("[0.0762 mm, 0.0889 mm)")}}, tolerance.Usable, ReUse, "outside the band for new parts"},
		{"undecided", Groove{Limits: newOnly, Stations: []tolerance.Bracket{at("[0.0635 mm, 0.0762 mm)")}}, tolerance.CantTell, MeasureAgain, "not a pass"},
		{"no limits", Groove{Stations: []tolerance.Bracket{at("0.05 mm")}}, tolerance.CantTell, AskManual, "manual"},
		{"oil ring without limits", Groove{Ring: OilRing, Stations: []tolerance.Bracket{at("0.05 mm")}}, tolerance.CantTell, AskManual, "no side-clearance limit of its own"},
		{"oil ring with limits", Groove{Ring: OilRing, Limits: newOnly, Stations: []tolerance.Bracket{at("0.05 mm")}}, tolerance.AsNew, ReUse, "re-use"},
		{"too tight", Groove{Limits: both, Stations: []tolerance.Bracket{at("[0 mm, 0.0254 mm)")}}, tolerance.OutsideNewBand, CheckFit, "clean the groove"},
		{"past, ring not measured", Groove{Limits: both, Stations: []tolerance.Bracket{at("[0.127 mm, 0.1524 mm)")}}, tolerance.PastWearLimit, MeasureAgain, "measure the used ring's height"},
		{"past, new ring restores", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.11 mm")}, UsedHeight: at("1.43 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.PastWearLimit, FitNewRing, "a new ring brings"},
		{"past, groove worn", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.11 mm")}, UsedHeight: at("1.48 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.PastWearLimit, RenewGroove, "never a thicker ring"},
		{"outside, no wear limit, groove worn", Groove{Limits: newOnly, Stations: []tolerance.Bracket{at("0.11 mm")}, UsedHeight: at("1.48 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.OutsideNewBand, RenewGroove, "manual decides"},
		{"past, new ring too tight", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.11 mm")}, UsedHeight: at("1.38 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.PastWearLimit, CheckFit, "right one"},
		{"past, ring higher than new", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.11 mm")}, UsedHeight: at("1.52 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.PastWearLimit, MeasureAgain, "higher than a new one"},
		{"past, groove narrower than new", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.11 mm")}, UsedHeight: at("1.43 mm"), NewHeight: band("1.48–1.49 mm"), NewWidth: band("1.56–1.58 mm")}, tolerance.PastWearLimit, MeasureAgain, "narrower than new"},
		{"past, can't tell", Groove{Limits: both, Stations: []tolerance.Bracket{at("[0.1016 mm, 0.127 mm)")}, UsedHeight: at("1.45 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.PastWearLimit, MeasureAgain, "more closely"},
		{"tight here, loose there", Groove{Limits: newOnly, Stations: []tolerance.Bracket{at("0.02 mm"), at("0.12 mm")}, UsedHeight: at("1.48 mm"), NewHeight: band("1.48–1.49 mm")}, tolerance.OutsideNewBand, RenewGroove, "look for carbon, a burr or a bent land and try again; no wear limit is given"},
		{"tight here, loose there, ring not measured", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.02 mm"), at("0.12 mm")}}, tolerance.PastWearLimit, MeasureAgain, "a bent land and try again; measure the used ring's height"},
		{"greatest of several", Groove{Limits: both, Stations: []tolerance.Bracket{at("0.05 mm"), at("0.12 mm")}, UsedHeight: at("1.48 mm"), NewHeight: band("1.48–1.48 mm")}, tolerance.PastWearLimit, RenewGroove, "worn"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.g.Where = "piston 1, top groove"
			r, err := c.g.Assess()
			require.NoError(t, err)
			require.Equal(t, c.standing, r.Finding.Standing, r.Finding.String())
			require.Equal(t, c.remedy, r.Remedy, r.Next)
			require.Contains(t, r.Next, c.next)
			require.NotContains(t, r.Next, "reject")
			_, err = json.Marshal(r)
			require.NoError(t, err)
		})
	}
}

// The manual's no-go test (TM 9-2815-226-34-1, p. 3-143): with a new ring
// segment held flush, a 0.006 in blade that enters scraps the piston; one
// that doesn't, passes it.
func TestNoGoBladeWithNewRing(t *testing.T) {
	limits := tolerance.Spec{Wear: tolerance.LessThan(units.MustParseLength("0.006 in"))}
	fresh := at("3/32 in")
	for _, c := range []struct {
		bracket string
		remedy  Remedy
	}{{"[0.1524 mm, ∞)", RenewGroove}, {"[0 mm, 0.1524 mm)", ReUse}} {
		r, err := Groove{Where: "piston 1, top groove", Stations: []tolerance.Bracket{at(c.bracket)}, Limits: limits, UsedHeight: fresh, NewHeight: tolerance.BandFrom(fresh)}.Assess()
		require.NoError(t, err)
		require.Equal(t, c.remedy, r.Remedy, r.Next)
	}
}

func TestGrooveRefusesWhatCantBe(t *testing.T) {
	limits := tolerance.Spec{New: band("0.03–0.07 mm")}
	_, err := Groove{Limits: limits}.Assess()
	require.ErrorIs(t, err, tolerance.ErrNoReading)
	_, err = Groove{Limits: limits, Stations: []tolerance.Bracket{at("-0.05 mm")}}.Assess()
	require.ErrorIs(t, err, ErrInput)
	_, err = Groove{Limits: limits, Stations: []tolerance.Bracket{at("0.05 mm")}, UsedHeight: at("-1 mm"), NewHeight: band("1.4–1.5 mm")}.Assess()
	require.ErrorIs(t, err, ErrInput)
	_, err = Groove{Limits: limits, Stations: []tolerance.Bracket{at("0.05 mm")}, UsedHeight: at("1 mm"), NewHeight: band("1.4–1.5 mm"), NewWidth: band("min 1 mm, less than 0.9 m")}.Assess()
	require.NoError(t, err)
	_, err = Groove{Limits: limits, Stations: []tolerance.Bracket{at("0.05 mm")}, UsedHeight: at("1 mm"), NewHeight: band("1.4–1.5 mm"), NewWidth: band("max 1 mm")}.Assess()
	require.ErrorIs(t, err, ErrInput)
	_, err = Groove{Limits: tolerance.Spec{New: band("0.03–0.07 mm"), Wear: band("max 0.05 mm")}, Stations: []tolerance.Bracket{at("0.05 mm")}}.Assess()
	require.ErrorIs(t, err, tolerance.ErrSpec)
}

func TestRemedyWords(t *testing.T) {
	require.Equal(t, "re-cut the groove with a spacer, or renew the piston", RenewGroove.String())
	require.Equal(t, "measure again", Remedy(99).String())
	text, err := FitNewRing.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "fit a new ring", string(text))
	for r := range Remedy(len(remedyNames)) {
		require.NotContains(t, r.String(), "thicker")
	}
}
