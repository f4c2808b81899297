package cylinder

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/form"
)

// Package form finds the same zone another way, on the hull of the points.
func TestTunnelLine_form(t *testing.T) {
	vectors.Load(t, "reference/cylinder_tunnel_lines.txt").Each(t, func(t *testing.T, c vectors.Case) {
		c.Ignore("zone")
		l := tunnelLine(strings.Fields(c.Text("places")), strings.Fields(c.Text("heights")), "µm")
		var f form.Heights
		for _, s := range l.Saddles {
			h, _ := s.Height.Middle()
			f.Places, f.Heights = append(f.Places, s.At), append(f.Heights, h)
		}
		straight, err := f.Straightness(form.MZLI)
		require.NoError(t, err)
		got, err := l.Assess()
		require.NoError(t, err)
		m, _ := got.Straightness.Greatest.Middle()
		require.InDelta(t, float64(straight.STRt), float64(m), 4)
	})
}
