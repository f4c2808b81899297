package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Whatever the gaps, a face is judged or refused: no panic, nothing kept that
// is past a limit or can't be told, and the cam tunnel before the face.
func FuzzFace(f *testing.F) {
	f.Add("[0.05 mm, 0.06 mm)", "0.02 mm", "[0 mm, 0.03 mm)", uint8(1), uint8(3), int64(0), int64(50e6), true)
	f.Add("[0.05 mm, ∞)", "0.02 mm", "0 mm", uint8(2), uint8(1), int64(150e9), int64(100e6), false)
	f.Fuzz(func(t *testing.T, gap, end1, end2 string, seat, direction uint8, over, limit int64, cam bool) {
		g, err1 := tolerance.ParseBracket(gap)
		a, err2 := tolerance.ParseBracket(end1)
		b, err3 := tolerance.ParseBracket(end2)
		if err1 != nil || err2 != nil || err3 != nil {
			return
		}
		spec := tolerance.Spec{Wear: tolerance.AtMost(units.Length(limit))}
		lines := SixLines()
		lines[0] = Line{Name: "x", Direction: Direction(direction), Seat: Seat(seat), Gaps: []Gap{{Gap: g, Over: units.Length(over)}}}
		lines[4].Seat, lines[4].Ends = Rocks, [2]tolerance.Bracket{a, b}
		face := Face{Where: "head", Lines: lines, Tunnel: CamTunnel{InHead: cam}, Limits: FaceLimits{Overall: spec, Local: []LocalLimit{{150 * units.Millimetre, spec}}}}
		r, err := face.Assess()
		if err != nil {
			return
		}
		if cam {
			require.Equal(t, CheckCamTunnel, r.Remedy)
		}
		for _, l := range r.Lines {
			if l.Finding.Standing == tolerance.CantTell || l.Finding.Standing >= tolerance.OutsideNewBand {
				require.NotEqual(t, KeepFace, r.Remedy)
			}
		}
		if len(r.Lines) > 0 {
			require.NotEmpty(t, r.Governs)
		}
	})
}
