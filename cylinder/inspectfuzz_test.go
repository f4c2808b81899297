package cylinder

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// smallLimits and smallReadings are a twin, invented: short, since the fuzzer
// makes what it finds as short as it can.
const (
	smallLimits = `{"schema": 1, "cylinders": 2,
"beforeStrip": {"compression": {"wear": "min 9 bar"}, "leakagePercent": 20},
"block": {"care": {"crackTest": true}},
"blockFace": {"lines": [{"name": "edge", "direction": "lengthwise"}, {"name": "diagonal", "direction": "diagonal"}],
 "overall": {"wear": "max 0.05 mm"}, "height": {"wear": "min 200 mm"}, "skim": {"stock": "0.03 mm"}, "local": [{"over": "150 mm", "limit": {"wear": "max 0.03 mm"}}]},
"mainTunnel": {"mains": 3, "levels": ["front", "rear"], "directions": ["vertical", "across"], "size": {"new": "59–59.02 mm"}, "ovality": {"wear": "max 0.02 mm"},
 "line": {"places": ["0 mm", "95 mm", "190 mm"], "straight": {"wear": "max 0.05 mm"}}, "lineHone": {"finish": "59.01 mm", "leastCut": "0 mm"}},
"bores": {"standard": "86 mm", "levels": [{"name": "top"}, {"name": "bottom"}], "size": {"new": "86–86.02 mm", "wear": "max 86.1 mm"}, "taper": {"wear": "max 0.06 mm"},
 "wear": {"wear": "max 0.1 mm"}, "kits": [{"name": "+0.25", "oversize": "0.25 mm"}, {"name": "+0.50", "oversize": "0.5 mm"}], "plan": {"cut": "0.01 mm", "honing": "0.05 mm"}},
"liners": {"protrusion": {"new": "0.05–0.12 mm"}, "step": {"wear": "max 0.04 mm"}, "shims": [{"name": "a", "thickness": "0.05 mm"}]},
"boreFinish": {"crossHatch": {"new": "40–60°"}, "counted": "included"},
"head": {"face": {"across": {"wear": "max 0.03 mm"}}, "camTunnel": {"wear": "max 0.05 mm"}}}`
	smallReadings = `{"schema":1,"block":{"condition":{"cracked":"no","crackTested":"yes"}},"caps":"torqued",
"blockFaces":[{"bank":1,"lines":[{"straightEdge":"rests","gap":"0.02 mm"},{"straightEdge":"rocks","front":"0.03 mm","rear":"0.04 mm"}],"heights":["201 mm"]}],
"mains":[{"main":1,"cap":"1","sizes":[["59.01 mm","59.01 mm"],["59.03 mm","59.01 mm"]],"line":"0 mm","crown":"-40 mm"},{"main":2,"line":"0.01 mm"}],
"cylinders":[{"cylinder":1,"compression":{"dry":"12 bar"},"leakage":{"supply":"7 bar","held":"6 bar"},"levels":[{"along":"86.03 mm","across":"86.12 mm"},{"along":"86.01 mm","across":"86.02 mm"}],
"walls":[{"where":"top","heading":"90°","wear":"0.06 mm"}],"liner":{"protrusion":["0.03 mm"]},"crossHatch":"50°"},
{"cylinder":2,"compression":{"dry":"11 bar"},"levels":[{"along":"86.01 mm","across":"86.02 mm"},{"along":"86.01 mm"}],"liner":{"protrusion":["0.08 mm"]}}],
"heads":[{"bank":1,"condition":{"blued":"yes"},"camBow":"0.01 mm"}]}`
)

// Whatever is written in two places of a document, the inspection doesn't
// panic; what it passes was measured; what it refuses has a place.
func FuzzInspect(f *testing.F) {
	pieces := strings.Split(smallReadings, `"`) // names and values are the odd ones
	at := func(old string) uint16 {
		i := slices.Index(pieces, old)
		require.Positive(f, i, old)
		return uint16(i)
	}
	for _, c := range [][2]string{
		{"86.12 mm", "86.10 mm"}, {"86.03 mm", "8.603 mm"}, {"59.03 mm", "59.51 mm"}, {"201 mm", "[199 mm, 202 mm]"}, {"torqued", "loose"},
		{"cylinder", "main"}, {"no", "yes"}, {"50°", ""}, {"7 bar", "0 bar"}, {"12 bar", "[1 bar, ∞)"}, {"rests", "rocks"}, {"0.04 mm", "[1 mm, ∞)"},
	} {
		f.Add(at(c[0]), c[1], at("86.01 mm"), "86.01 mm")
		f.Add(at(c[0]), c[1], at("0.06 mm"), "0.09 ±0.03 mm")
	}
	l, err := ReadLimits("l.json", []byte(smallLimits))
	require.NoError(f, err)
	in := l.Prepare()
	f.Fuzz(func(t *testing.T, at uint16, text string, at2 uint16, text2 string) {
		changed := slices.Clone(pieces)
		changed[int(at)%len(pieces)] = text
		changed[int(at2)%len(pieces)] = text2
		r, err := ReadReadings("r.json", []byte(strings.Join(changed, `"`)))
		if err != nil {
			var at *document.Error
			require.True(t, errors.As(err, &at), err)
			return
		}
		report, out, err := in.Outcome(&r)
		if err != nil {
			var at *inspection.PathError
			require.True(t, errors.As(err, &at), "%T %v", err, err)
			return
		}
		checkReport(t, &report)
		for _, b := range out.Bores {
			require.True(t, b.LeastAfter.InRange() && b.GreatestAfter.InRange())
		}
	})
}
