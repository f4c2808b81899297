package piston

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
)

func TestGrooveAndReportReadBack(t *testing.T) {
	g := Groove{
		Where: "piston 3, oil groove", Ring: OilRing,
		Stations:   []tolerance.Bracket{at("[0.1016 mm, 0.127 mm)"), at("[0.1016 mm, ∞)")},
		Limits:     tolerance.Spec{New: band("0.03–0.07 mm"), Wear: band("max 0.10 mm")},
		UsedHeight: at("1.487 ±0.002 mm"), NewHeight: band("1.478–1.490 mm"), NewWidth: band("1.520–1.540 mm"),
	}
	bare := Groove{Where: "piston 1", Stations: []tolerance.Bracket{at("0.05 mm")}}
	for _, g := range []Groove{g, bare} {
		text, err := json.Marshal(g)
		require.NoError(t, err)
		var back Groove
		require.NoError(t, json.Unmarshal(text, &back))
		require.Empty(t, cmp.Diff(g, back, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b }), cmp.Comparer(func(a, b tolerance.Band) bool { return a == b })))

		r, err := g.Assess()
		require.NoError(t, err)
		text, err = json.Marshal(r)
		require.NoError(t, err)
		var report GrooveReport
		require.NoError(t, json.Unmarshal(text, &report))
		require.Equal(t, r, report)
	}
	text, err := json.Marshal(bare)
	require.NoError(t, err)
	require.NotContains(t, string(text), "usedHeight", "what was not measured is left out")
}

func TestWordsReadBack(t *testing.T) {
	for k := range RingKind(len(ringNames)) {
		var back RingKind
		require.NoError(t, back.UnmarshalText([]byte(k.String())))
		require.Equal(t, k, back)
	}
	for o := range Outcome(len(outcomeNames)) {
		var back Outcome
		require.NoError(t, back.UnmarshalText([]byte(o.String())))
		require.Equal(t, o, back)
	}
	for r := range Remedy(len(remedyNames)) {
		var back Remedy
		require.NoError(t, back.UnmarshalText([]byte(r.String())))
		require.Equal(t, r, back)
	}
	ring := OilRing
	require.EqualError(t, ring.UnmarshalText([]byte("scraper")), `piston: ring "scraper" is not one of "compression ring", "oil ring"`)
	require.Equal(t, OilRing, ring, "left as it was")
	err := ring.UnmarshalText([]byte(strings.Repeat("x", 1<<20)))
	require.ErrorIs(t, err, ErrInput)
	require.Less(t, len(err.Error()), 200)
}

// What was typed is checked even where nothing is worked out from it.
func TestGrooveRefusesSizesThatAnAnswerDoesNotNeed(t *testing.T) {
	g := Groove{Where: "piston 1", Stations: []tolerance.Bracket{at("0.05 mm")}, Limits: tolerance.Spec{New: band("0.03–0.07 mm")}}
	for _, c := range []struct {
		spoil func(*Groove)
		text  string
	}{
		{func(g *Groove) { g.UsedHeight = at("-1 mm") }, "piston: used ring height -1 mm is not above 0 mm"},
		{func(g *Groove) { g.NewHeight = band("-1–1.5 mm") }, "piston: new ring height [-1 mm, 1.5 mm] is not above 0 mm"},
		{func(g *Groove) { g.NewWidth = band("0–1.5 mm") }, "piston: new groove width [0 mm, 1.5 mm] is not above 0 mm"},
	} {
		bad := g
		c.spoil(&bad)
		_, err := bad.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.EqualError(t, err, c.text)
	}
}

// A finding of another groove would lend its verdict to this one.
func TestReportRefusesAnotherGroovesFinding(t *testing.T) {
	g := Groove{Where: "piston 1", Stations: []tolerance.Bracket{at("0.05 mm")}, Limits: tolerance.Spec{New: band("0.03–0.07 mm")}}
	f, err := tolerance.Assess(measure, g.Where, g.Limits, g.Stations...)
	require.NoError(t, err)
	_, err = g.Report(f)
	require.NoError(t, err)

	_, err = g.Report(tolerance.Finding{})
	require.ErrorIs(t, err, ErrInput)
	other := g
	other.Limits.Wear = band("max 0.10 mm")
	_, err = other.Report(f)
	require.EqualError(t, err, "piston: the finding's limits new 0.03–0.07 mm, wear no limit is not the groove's: new 0.03–0.07 mm, wear max 0.1 mm")
	other = g
	other.Stations = []tolerance.Bracket{at("0.06 mm")}
	_, err = other.Report(f)
	require.EqualError(t, err, "piston: the finding's clearance 0.05 mm to 0.05 mm is not that of the groove's stations: 0.06 mm to 0.06 mm")
}
