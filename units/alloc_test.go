package units

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestAllocations(t *testing.T) {
	var (
		buf   = make([]byte, 0, 64)
		l     = MustParseLength("0.0635 mm")
		angle = MustParseAngle("1° 0′ 0.5″")
		style = Style[Length]{Unit: InInches, Places: 4, Point: true}
		w, _  = ParseWritten[Length]("3 25/64 in")
		sink  Length
		many  = []Length{1, 2, 3}
	)
	for name, f := range map[string]func(){
		"parse":            func() { sink, _ = ParseLength("0.0025 in") },
		"parse a name":     func() { sink, _ = ParseLength(".0025″") },
		"parse a fraction": func() { sink, _ = ParseLength("3 25/64 in") },
		"parse a comma":    func() { sink, _ = ParseLength(" 0,07\u00a0mm") },
		"parse a sum":      func() { sink, _ = ParseLength("5 ft 3 1/2 in") },
		"parse in":         func() { sink, _ = ParseIn("0.07", InMillimetres) },
		"parse written":    func() { w, _ = ParseWritten[Length]("3 25/64 in") },
		"AppendText":       func() { buf, _ = l.AppendText(buf[:0]) },
		"AppendText angle": func() { buf, _ = angle.AppendText(buf[:0]) },
		"Append":           func() { buf, _ = l.Append(buf[:0], style) },
		"AppendDual":       func() { buf = l.AppendDual(buf[:0], 3, 4) },
		"append written":   func() { buf, _ = w.Append(buf[:0]) },
		"arithmetic":       func() { sink = l.Add(3*l).Sub(l).Abs().Min(7*l).Max(l).Spread(l, 2*l) },
		"Scale":            func() { sink = l.Scale(355, 113) },
		"MulDiv":           func() { sink = l.MulDiv(Millimetre, Inch) },
		"Share":            func() { sink = l.Share(Millimetre, Inch) },
		"ScalePi":          func() { sink = l.ScalePi(1, 4) },
		"ScalePi wide":     func() { sink = (100 * Metre).ScalePi(1<<40, 1<<41) },
		"CylinderVolume":   func() { sink = Length(CylinderVolume(86*Millimetre, 86*Millimetre)) },
		"Round":            func() { sink, _ = l.Round(InMillimetres, 3, NearestEven) },
		"Nearest":          func() { sink, _ = Nearest(0.0635, InMillimetres) },
		"Sum":              func() { sink, _ = Sum(many...) },
		"Mean":             func() { sink, _ = Mean(many...) },
	} {
		require.Zero(t, testing.AllocsPerRun(100, f), name)
	}
	require.LessOrEqual(t, testing.AllocsPerRun(100, func() { _ = l.String() }), 1.0)
	require.LessOrEqual(t, testing.AllocsPerRun(100, func() { _ = l.Text(InInches, 4) }), 1.0)
	_ = sink
}
