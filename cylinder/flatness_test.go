package cylinder

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestFaceLimitsPublished(t *testing.T) {
	vectors.Load(t, "published/cylinder_flatness_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		var d Direction
		require.NoError(t, d.UnmarshalText([]byte(c.Text("direction"))))
		limit := tolerance.Spec{Wear: tolerance.MustParseBand(c.Text("limit"))}
		gap := parsedLength(t, c.Text("gap"))
		f := Face{Where: "face", Lines: []Line{{Name: "line", Direction: d, Gaps: []Gap{{Gap: gap}}}}, Limits: FaceLimits{Overall: limit}}
		r, err := f.Assess()
		require.NoError(t, err)
		require.Equal(t, c.Text("standing"), r.Standing.String())
		if c.Has("most_off") {
			p, err := FaceSkim{Departure: gap, MostOff: units.MustParseLength(c.Text("most_off"))}.Plan()
			require.NoError(t, err)
			require.Equal(t, tolerance.Within, p.Verdict)
		}
	})
}

// six is a face of six lines with the gaps as written, all resting.
func six(t *testing.T, gaps ...string) []Line {
	lines := SixLines()
	for i, g := range gaps {
		lines[i].Seat = Rests
		lines[i].Gaps = []Gap{{At: "middle", Gap: parsedLength(t, g)}}
	}
	return lines
}

var faceLimits = FaceLimits{
	Lengthwise: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.10 mm")},
	Across:     tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")},
	Diagonal:   tolerance.Spec{Wear: tolerance.MustParseBand("max 0.10 mm")},
	Local:      []LocalLimit{{150 * units.Millimetre, tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")}}},
}

func TestFaceDecisions(t *testing.T) {
	// Every line under 0.04: the local limit of 0.05 is kept as well, since a
	// shorter straight-edge shows no more.
	f := Face{Where: "head", Lines: six(t, "[0 mm, 0.04 mm)", "[0 mm, 0.04 mm)", "[0 mm, 0.04 mm)", "[0 mm, 0.04 mm)", "[0 mm, 0.04 mm)", "[0 mm, 0.04 mm)"), Limits: faceLimits}
	r, err := f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Standing)
	require.Equal(t, KeepFace, r.Remedy)
	require.Empty(t, r.Doubts)
	_, err = json.Marshal(r)
	require.NoError(t, err)

	// 0.06 lengthwise is allowed there, but whether within 150 mm can't be
	// told from the long straight-edge.
	f.Lines[0].Gaps[0].Gap = parsedLength(t, "[0.06 mm, 0.07 mm)")
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Standing)
	require.Equal(t, MeasureFaceAgain, r.Remedy)
	require.Contains(t, r.Next, "lay a straight-edge of 150 mm")
	// The short one settles it, either way.
	f.Lines[0].Gaps = append(f.Lines[0].Gaps, Gap{At: "cylinder 2", Gap: parsedLength(t, "[0 mm, 0.03 mm)"), Over: 150 * units.Millimetre})
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Standing) // elsewhere on that line it was 0.06 under the long edge
	f.Lines[0].Gaps[1].Gap = parsedLength(t, "[0.051 mm, 0.06 mm)")
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, r.Standing)
	require.Equal(t, SkimFace, r.Remedy)
	require.Contains(t, r.Next, "any 150 mm")
	// A straight-edge of 100 mm that shows more than the limit settles it too,
	// one that shows less does not.
	f.Lines[0].Gaps[1].Over = 100 * units.Millimetre
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, r.Standing)

	// Across, the tighter limit governs though the gap is the same.
	f.Lines = six(t, "0.06 mm", "0.06 mm", "0.06 mm", "0.02 mm", "0.06 mm", "0.06 mm")
	f.Limits.Local = nil
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, []string{"front end"}, r.Governs)
	require.Equal(t, SkimFace, r.Remedy)
	require.Contains(t, r.Next, "front end")
	require.Equal(t, parsedLength(t, "0.06 mm"), r.Worst)

	// No limits: nothing is passed.
	f.Limits = FaceLimits{}
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, AskFaceManual, r.Remedy)
	require.Len(t, r.Governs, 5)
}

func TestFaceDoubts(t *testing.T) {
	lines := six(t, "0.02 mm", "0.02 mm", "0.02 mm", "0.02 mm", "0.02 mm", "0.02 mm")
	for _, c := range []struct {
		lines  []Line
		doubts []FaceDoubt
		remedy FaceRemedy
	}{
		{lines, nil, KeepFace},
		{lines[:4], []FaceDoubt{NoDiagonals}, MeasureFaceAgain},
		{lines[:5], []FaceDoubt{OneDiagonal}, KeepFace},
		{lines[2:], []FaceDoubt{NoLengthwise}, KeepFace},
		{lines[4:], []FaceDoubt{NoLengthwise, NoAcross}, KeepFace},
	} {
		r, err := Face{Where: "head", Lines: c.lines, Limits: FaceLimits{Overall: faceLimits.Across}}.Assess()
		require.NoError(t, err)
		require.Equal(t, c.doubts, r.Doubts)
		require.Equal(t, c.remedy, r.Remedy)
	}
	lines[0].Seat = SeatUnsaid
	r, err := Face{Lines: lines, Limits: faceLimits}.Assess()
	require.NoError(t, err)
	require.Equal(t, []FaceDoubt{SeatNotSaid}, r.Doubts)
	require.True(t, r.Flatness.IsZero())
	require.Equal(t, parsedLength(t, "[0 mm, 0.02 mm]"), r.Lines[0].Departure)
}

// A hump: one end's gap says little, both alike all.
func TestFaceRocks(t *testing.T) {
	f := Face{Lines: []Line{{Name: "left edge", Direction: Lengthwise, Seat: Rocks, Gaps: []Gap{{At: "rear", Gap: parsedLength(t, "0.16 mm")}}}}, Limits: faceLimits}
	f.Limits.Local = nil
	r, err := f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Standing)
	require.Contains(t, r.Next, "rock the straight-edge until")

	f.Lines[0].Gaps = nil
	f.Lines[0].Ends = [2]tolerance.Bracket{parsedLength(t, "[0.04 mm, 0.05 mm)"), parsedLength(t, "[0.04 mm, 0.05 mm)")}
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Standing)
	require.Equal(t, parsedLength(t, "[0.04 mm, 0.05 mm)"), r.Worst)

	// Rocked over: from nothing to 0.16.
	f.Lines[0].Ends = [2]tolerance.Bracket{parsedLength(t, "[0 mm, 0.02 mm)"), parsedLength(t, "[0.16 mm, 0.17 mm)")}
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Standing)
	require.Equal(t, parsedLength(t, "[0 mm, 0.17 mm)"), r.Worst)
	// A local limit hears of end gaps as well.
	f.Limits = FaceLimits{Local: []LocalLimit{{150 * units.Millimetre, tolerance.Spec{Wear: tolerance.MustParseBand("max 0.2 mm")}}}}
	r, err = f.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Local[0].Finding.Standing)
}

// The cam tunnel comes before the face, whatever the face's standing.
func TestFaceCamTunnel(t *testing.T) {
	bow := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")}
	for _, gap := range []string{"0.02 mm", "0.5 mm"} {
		f := Face{Where: "head", Lines: six(t, gap, gap, gap, gap, gap, gap), Limits: faceLimits, Tunnel: CamTunnel{InHead: true, Limits: bow}}
		r, err := f.Assess()
		require.NoError(t, err)
		require.Equal(t, CheckCamTunnel, r.Remedy)
		require.Contains(t, r.Next, "check the cam tunnel first")

		f.Tunnel.Bow = parsedLength(t, "[0.04 mm, 0.06 mm)")
		r, err = f.Assess()
		require.NoError(t, err)
		require.Equal(t, CheckCamTunnel, r.Remedy)
		require.Contains(t, r.Next, "not a pass")

		f.Tunnel.Bow = parsedLength(t, "0.08 mm")
		r, err = f.Assess()
		require.NoError(t, err)
		require.Equal(t, StraightenFirst, r.Remedy)
		require.Contains(t, r.Next, "leave the tunnel bowed")

		f.Tunnel.Bow = parsedLength(t, "[0 mm, 0.04 mm)")
		r, err = f.Assess()
		require.NoError(t, err)
		require.Equal(t, tolerance.Usable, r.Tunnel.Standing)
		require.NotEqual(t, CheckCamTunnel, r.Remedy)
	}
}

func TestFaceRefuses(t *testing.T) {
	good := Face{Where: "head", Lines: six(t, "0.02 mm"), Limits: faceLimits}
	for _, c := range []struct {
		spoil func(*Face)
		says  string
	}{
		{func(f *Face) { f.Lines = nil }, "lines measured none"},
		{func(f *Face) { f.Lines = SixLines() }, "lines measured none"},
		{func(f *Face) { f.Lines[0].Direction = NoDirection }, "direction of left edge"},
		{func(f *Face) { f.Lines[0].Direction = 9 }, "direction of left edge"},
		{func(f *Face) { f.Lines[0].Seat = 9 }, "seat on left edge"},
		{func(f *Face) { f.Lines[0].Gaps[0].Gap = parsedLength(t, "-0.02 mm") }, "gap on left edge -0.02 mm is not 0 mm or more"},
		{func(f *Face) { f.Lines[0].Gaps[0].Gap = tolerance.Bracket{} }, "gap on left edge"},
		{func(f *Face) { f.Lines[0].Gaps[0].Over = -1 }, "straight-edge on left edge"},
		{func(f *Face) { f.Lines[0].Ends[0] = parsedLength(t, "0.1 mm") }, "left out where the straight-edge rests"},
		{func(f *Face) { f.Limits.Local[0].Over = 0 }, "length of a local limit"},
		{func(f *Face) { f.Tunnel.Bow = parsedLength(t, "0.1 mm") }, "doesn't run in the head"},
		{func(f *Face) { f.Tunnel = CamTunnel{InHead: true, Bow: parsedLength(t, "-0.1 mm")} }, "bow of the cam tunnel"},
	} {
		f := good
		f.Lines = append([]Line(nil), good.Lines...)
		f.Lines[0].Gaps = append([]Gap(nil), good.Lines[0].Gaps...)
		f.Limits.Local = append([]LocalLimit(nil), good.Limits.Local...)
		c.spoil(&f)
		_, err := f.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
	bad := tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	for _, f := range []Face{
		{Lines: good.Lines, Limits: FaceLimits{Lengthwise: bad}},
		{Lines: good.Lines, Limits: FaceLimits{Local: []LocalLimit{{units.Millimetre, bad}}}},
		{Lines: good.Lines, Tunnel: CamTunnel{InHead: true, Bow: parsedLength(t, "0.1 mm"), Limits: bad}},
	} {
		_, err := f.Assess()
		require.ErrorIs(t, err, tolerance.ErrSpec)
	}
	require.True(t, Line{}.Departure().IsZero())
}

func TestFaceWords(t *testing.T) {
	for d := range Direction(4) {
		text, _ := d.MarshalText()
		var back Direction
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, d, back)
	}
	for s := range Seat(3) {
		text, _ := s.MarshalText()
		var back Seat
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	var s Seat
	require.ErrorContains(t, s.UnmarshalText([]byte("sits")), `seat "sits" is not one of "unsaid", "rests", "rocks"`)
	require.Equal(t, "no direction", Direction(9).String())
	require.Equal(t, "measure again", FaceRemedy(99).String())
	require.Empty(t, FaceDoubt(99).String())
	text, _ := NoDiagonals.MarshalText()
	require.Contains(t, string(text), "twist")
	text, _ = CheckCamTunnel.MarshalText()
	require.Equal(t, "check the cam tunnel first", string(text))
}
