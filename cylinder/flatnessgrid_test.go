package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// gridOf is a grid of heights in micrometres.
func gridOf(columns int, heights ...int) form.Grid {
	g := form.Grid{StepX: 100 * units.Millimetre, StepY: 60 * units.Millimetre, Columns: columns}
	for _, h := range heights {
		g.Heights = append(g.Heights, units.Length(h)*units.Micrometre)
	}
	return g
}

// Nine heights from six bows are as flat as the judge's planes say.
func TestFaceGridReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/cylinder_flatness_edges.txt").All(t) {
		c.Ignore("shape", "corner")
		if c.Choice("kind", "hump", "face") == "hump" {
			c.Ignore("readings", "departure")
			continue
		}
		b := mmCells(t, c.Text("readings"))
		grid := form.Grid{StepX: 60 * units.Millimetre, StepY: 100 * units.Millimetre, Columns: 3}
		for _, row := range NineHeights(Bows[units.Length]{b[0], b[1], b[2], b[3], b[4], b[5]}) {
			grid.Heights = append(grid.Heights, row[:]...)
		}
		r, err := FaceGrid{Where: "head", Grid: grid}.Assess()
		require.NoError(t, err)
		c.Near("departure", r.Zone.FLTt.Float(units.InMillimetres))
		require.Equal(t, tolerance.Exactly(r.Zone.FLTt), r.Flatness)
		lo, _ := r.OnCorners.Lower()
		require.GreaterOrEqual(t, lo, r.Zone.FLTt)
		// No line departs more than the face; the bows are the lines' departures.
		require.Len(t, r.Lines, 4)
		for i, want := range []units.Length{
			max(b[2].Abs(), b[3].Abs()), max(b[0].Abs(), b[1].Abs()), b[4].Abs(), b[5].Abs(),
		} {
			departure, _ := r.Lines[i].Departure.Middle()
			require.GreaterOrEqual(t, departure, want-1)
			require.LessOrEqual(t, departure, r.Zone.FLTt+1)
		}
		require.Equal(t, AskFaceManual, r.Remedy)
	}
}

// A pure twist, which six straight-edges see half of: 0.05 at the corners.
func TestFaceGridTwist(t *testing.T) {
	g := FaceGrid{Where: "head", Grid: gridOf(5, 50, 25, 0, -25, -50, 0, 0, 0, 0, 0, -50, -25, 0, 25, 50),
		Flat: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.08 mm")}}
	r, err := g.Assess()
	require.NoError(t, err)
	require.Equal(t, parsedLength(t, "0.1 mm"), r.Flatness)
	require.Equal(t, tolerance.PastWearLimit, r.Standing)
	require.Equal(t, SkimFace, r.Remedy)
	require.Contains(t, r.Next, "the face as a whole")
	// Set level on three corners the fourth is 0.2 off.
	require.Equal(t, parsedLength(t, "0.2 mm"), r.OnCorners)
	require.Equal(t, parsedLength(t, "0 mm"), r.Lines[0].Departure)
	require.Equal(t, parsedLength(t, "0 mm"), r.Lines[1].Departure)
	require.Equal(t, parsedLength(t, "0.05 mm"), r.Lines[2].Departure)
	require.Equal(t, parsedLength(t, "0.05 mm"), r.Lines[3].Departure)

	// By the straight-edge's limit the same face is within.
	g.Flat, g.Limits.Overall = tolerance.Spec{}, tolerance.Spec{Wear: tolerance.MustParseBand("max 0.08 mm")}
	r, err = g.Assess()
	require.NoError(t, err)
	require.Equal(t, KeepFace, r.Remedy)

	// Readings to ±0.02 leave a flatness of 0.06 to 0.14 open.
	g.Flat, g.Error = g.Limits.Overall, 20*units.Micrometre
	r, err = g.Assess()
	require.NoError(t, err)
	require.Equal(t, parsedLength(t, "[0.06 mm, 0.14 mm]"), r.Flatness)
	require.Equal(t, tolerance.CantTell, r.Standing)

	g.Tunnel.InHead = true
	r, err = g.Assess()
	require.NoError(t, err)
	require.Equal(t, CheckCamTunnel, r.Remedy)
}

func TestFaceGridLines(t *testing.T) {
	// Two rows have no columns to judge, and sides without a common part no
	// diagonals.
	r, err := FaceGrid{Grid: gridOf(4, 0, 10, 10, 0, 0, 0, 0, 0)}.Assess()
	require.NoError(t, err)
	require.Len(t, r.Lines, 1)
	require.Equal(t, "row 1", r.Lines[0].Name)
	require.Equal(t, parsedLength(t, "0.01 mm"), r.Lines[0].Departure)
	r, err = FaceGrid{Grid: gridOf(2, 0, 0, 0, 20, 0, 0)}.Assess()
	require.NoError(t, err)
	require.Len(t, r.Lines, 1)
	require.Equal(t, "column 2", r.Lines[0].Name)
}

func TestFaceGridRefuses(t *testing.T) {
	bad := tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	good := gridOf(3, 0, 0, 0, 0, 5, 0, 0, 0, 0)
	_, err := FaceGrid{Grid: good, Error: -1}.Assess()
	require.ErrorIs(t, err, ErrInput)
	_, err = FaceGrid{}.Assess()
	require.ErrorIs(t, err, form.ErrShape)
	_, err = FaceGrid{Grid: gridOf(3, 0, 1, 0)}.Assess()
	require.Error(t, err)
	for _, g := range []FaceGrid{
		{Grid: good, Flat: bad}, {Grid: good, Limits: FaceLimits{Lengthwise: bad}}, {Grid: good, Limits: FaceLimits{Across: bad}},
		{Grid: good, Limits: FaceLimits{Diagonal: bad}}, {Grid: good, Tunnel: CamTunnel{InHead: true, Bow: parsedLength(t, "0.1 mm"), Limits: bad}},
	} {
		_, err := g.Assess()
		require.ErrorIs(t, err, tolerance.ErrSpec)
	}
}
