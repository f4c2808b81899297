package crank

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// The gap between two planes tilted against each other is, opposite the
// crankpin, m + V·cos θ + H·sin θ: synthesised readings give V and H back.
func TestWeb_synthesised(t *testing.T) {
	const m, v, h = 0.4, 0.035, -0.02
	gap := func(degrees float64) tolerance.Float {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		return tolerance.Float(m + v*cos + h*sin)
	}
	for _, delta := range []float64{1, 15, 30, 45} {
		at := WebVerticalAt(gap(0), gap(180-delta), gap(180+delta), tolerance.Float(delta*math.Pi/180))
		require.InDelta(t, 2*v, float64(at), 1e-15)
	}
	// The mean alone is short of it: by (1 − cos 30°)/2 = 6.7 %.
	mean := (gap(150) + gap(210)) / 2
	require.InDelta(t, 0.067, 1-float64(gap(0)-mean)/(2*v), 0.0001)
	greatest, least := math.Inf(-1), math.Inf(1)
	for d := 0.0; d < 360; d += 0.1 {
		greatest, least = max(greatest, float64(gap(d))), min(least, float64(gap(d)))
	}
	require.InDelta(t, greatest-least, float64(WebSwing(gap(0)-gap(180), gap(90)-gap(270))), 1e-7)
	require.Zero(t, WebClosure(units.Length(7), 3, 1, 5))
	require.Equal(t, units.Length(6), WebVertical[units.Length](7, 1))
	require.Equal(t, units.Length(-2), WebHorizontal[units.Length](3, 5))
}

func webThrow() WebThrow {
	return WebThrow{Where: "throw 4", Top: floatOf("0.02 mm"), Port: floatOf("0.01 mm"), Bottom: floatOf("-0.01 mm"), Starboard: floatOf("0 mm")}
}

func webSurvey() WebSurvey {
	return WebSurvey{
		Throws:   []WebThrow{webThrow()},
		Vertical: tolerance.Spec{New: tolerance.MustParseBand("max 0.03 mm"), Wear: tolerance.MustParseBand("max 0.06 mm")}, Horizontal: tolerance.Spec{New: tolerance.MustParseBand("max 0.02 mm")},
		Closure: tolerance.Spec{New: tolerance.MustParseBand("max 0.01 mm")},
	}
}

func TestWebSurvey(t *testing.T) {
	r, err := webSurvey().Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Worst) // 0.03 on the limit of 0.03
	require.Equal(t, floatOf("0.03 mm"), r.Throws[0].Vertical)
	require.Equal(t, floatOf("0.01 mm"), r.Throws[0].Horizontal)
	require.Contains(t, r.Next, "keep the readings")
	swing, _ := r.Throws[0].Swing.Middle()
	require.InDelta(t, math.Hypot(0.03, 0.01), swing.Float(units.InMillimetres), 1e-9)

	// TM 5-2815-232-14: no more than 0.03 mm (.001 in) over some 300°.
	s := webSurvey()
	s.Swing = tolerance.Spec{New: tolerance.MustParseBand("max 0.03 mm")}
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.OutsideNewBand, r.Worst)
	require.Contains(t, r.Next, "greatest difference over a turn, throw 4 is out of limits")
	s.Throws[0].Port, s.Throws[0].Starboard = floatOf("0 mm"), floatOf("0 mm")
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Worst, "nothing horizontal: the swing is the vertical, exactly")
	s.Throws[0].Top, s.Throws[0].Bottom = floatOf("0 mm"), floatOf("0 mm")
	s.Throws[0].Port = floatOf("0.01 mm")
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, floatOf("0.01 mm"), r.Throws[0].Swing)

	// Beside the bottom by 30°: 2·V is 2/(1 + cos 30°) of what the mean says.
	s = webSurvey()
	throw := &s.Throws[0]
	throw.Bottom, throw.Before, throw.After, throw.Beside = tolerance.Bracket{}, floatOf("-0.009 mm"), floatOf("-0.005 mm"), angleOf("30")
	throw.Drift = floatOf("-0.02 mm")
	r, err = s.Inspect()
	require.NoError(t, err)
	vertical, _ := r.Throws[0].Vertical.Middle()
	require.InDelta(t, 0.027*2/(1+math.Cos(math.Pi/6)), vertical.Float(units.InMillimetres), 2e-9)
	require.Equal(t, "drift back at the start, throw 4", r.WorstAt)
	closure := r.Throws[0].Findings[3].Greatest
	middle, _ := closure.Middle()
	require.InDelta(t, math.Abs(0.02+(0.02-0.027*2/(1+math.Cos(math.Pi/6)))-0.01), middle.Float(units.InMillimetres), 2e-9)

	s = webSurvey()
	s.Throws[0].Top = floatOf("0.045 ±0.01 mm")
	s.Vertical.Wear = tolerance.MustParseBand("max 0.05 mm")
	s.Closure = tolerance.Spec{}
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Worst)
	require.Contains(t, r.Next, "not a pass")
	r, err = WebSurvey{Throws: []WebThrow{webThrow()}}.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "no limits were given")
}

func TestWebSurvey_refuses(t *testing.T) {
	_, err := WebSurvey{}.Inspect()
	require.ErrorIs(t, err, ErrInput)
	for name, spoil := range map[string]func(*WebThrow){
		"no top":          func(w *WebThrow) { w.Top = tolerance.Bracket{} },
		"no bottom":       func(w *WebThrow) { w.Bottom = tolerance.Bracket{} },
		"both":            func(w *WebThrow) { w.Before = floatOf("0 mm") },
		"no angle":        func(w *WebThrow) { w.Bottom, w.Before, w.After = tolerance.Bracket{}, floatOf("0 mm"), floatOf("0 mm") },
		"only one":        func(w *WebThrow) { w.Bottom, w.Before, w.Beside = tolerance.Bracket{}, floatOf("0 mm"), angleOf("30") },
		"too far beside":  func(w *WebThrow) { w.Bottom, w.Beside = tolerance.Bracket{}, angleOf("70") },
		"far":             func(w *WebThrow) { w.Port = floatOf("11 m") },
		"unbounded drift": func(w *WebThrow) { w.Drift = floatOf("[0 mm, ∞)") },
	} {
		s := webSurvey()
		spoil(&s.Throws[0])
		_, err := s.Inspect()
		require.ErrorIs(t, err, ErrInput, name)
	}
	s := webSurvey()
	s.Swing = tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	_, err = s.Inspect()
	require.Error(t, err)
}

func TestWeb_otherReadings(t *testing.T) {
	top, err := uncertainty.NewDual("top", 0.02, "mm", uncertainty.RectangularShape, 0.005)
	require.NoError(t, err)
	u := WebVerticalAt(top, uncertainty.ExactlyReal(0), uncertainty.ExactlyReal(0), uncertainty.ExactlyReal(math.Pi/3))
	require.InDelta(t, 0.02*4/3, u.Value(), 1e-12)
	require.InDelta(t, 0.005/math.Sqrt(3)*4/3, u.StandardUncertainty(), 1e-12)
	w := WebVertical(working.Given("top", "t", 20*units.Micrometre), working.Given("bottom", "b", -10*units.Micrometre)).Named("vertical deflection", "v")
	s, err := working.Solve(w, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.030 mm")
	require.Equal(t, floatOf("0.01 mm"), WebBottom(floatOf("0 mm"), floatOf("0.02 mm")))
}
