package uncertainty_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func celsius(value, half float64) uncertainty.EstimateOf[units.Temperature] {
	return must(uncertainty.Rectangular("temperature", must(units.Nearest(value, units.InCelsius)), units.Temperature(half*units.CELSIUS)))
}

func expansion(name string, value, half float64) uncertainty.Dual {
	return must(uncertainty.NewDual(name, value, "1/K", uncertainty.RectangularShape, half))
}

func TestAtReference(t *testing.T) {
	// An aluminium piston of 86 mm at 30 °C under a steel micrometer at 22 °C:
	// 86·(1 + 11.5e-6·2)/(1 + 23e-6·10) = 85.982202094 mm, by bc to 12 places.
	steel := uncertainty.Body{Temperature: celsius(22, 1), Expansion: expansion("steel", 11.5e-6, 1e-6)}
	aluminium := uncertainty.Body{Temperature: celsius(30, 2), Expansion: expansion("aluminium", 23e-6, 2e-6)}
	e := must(uncertainty.AtReference(uncertainty.Exactly(86*mm), steel, aluminium))
	require.InDelta(t, 85.982202094, e.Value().Float(units.InMillimetres), 1e-9)
	// Its uncertainty is that of the four terms: L·α·u(θ) and L·θ·u(α).
	want := math.Sqrt(math.Pow(86e3*11.5e-6*1, 2)+math.Pow(86e3*2*1e-6, 2)+math.Pow(86e3*23e-6*2, 2)+math.Pow(86e3*10*2e-6, 2)) / math.Sqrt(3)
	_, u := e.Float(units.InMicrometres)
	relative(t, want, u, 1e-3)
	require.Len(t, e.Sources(), 4)

	// One material at one temperature: the reading itself, without doubt.
	same := must(uncertainty.AtReference(uncertainty.Exactly(86*mm), steel, steel))
	require.Equal(t, 86*mm, same.Value())
	require.Equal(t, units.Length(0), same.StandardUncertainty())

	// Soaked together: only the difference counts.
	apart := must(uncertainty.Rectangular("difference", 0, units.TemperatureDifference(0.05*units.KELVIN)))
	part := uncertainty.Body{Temperature: uncertainty.Warmer(steel.Temperature, apart), Expansion: steel.Expansion}
	soaked := must(uncertainty.AtReference(uncertainty.Exactly(50*mm), steel, part))
	_, u = soaked.Float(units.InNanometres)
	require.InDelta(t, 16.6, u, 0.05) // GUM table H.1: 575 nm/K · 0.05 K/√3
	require.Equal(t, 50*mm, soaked.Value())

	// The same formula in plain numbers.
	require.InDelta(t, 85.982202094, float64(uncertainty.LengthAtReference[tolerance.Float](86, 11.5e-6, 2, 23e-6, 10)), 1e-9)

	bad := uncertainty.Body{Temperature: uncertainty.Warmer(steel.Temperature, uncertainty.Exactly(-1000*units.Kelvin)), Expansion: steel.Expansion}
	require.False(t, bad.Temperature.InRange())
	for _, c := range []struct {
		reading          uncertainty.Estimate
		instrument, part uncertainty.Body
	}{
		{uncertainty.Exactly(mm).Scale(1, 0), steel, steel}, {uncertainty.Exactly(mm), bad, steel}, {uncertainty.Exactly(mm), steel, bad},
		{uncertainty.Exactly(mm), steel, uncertainty.Body{Temperature: steel.Temperature, Expansion: uncertainty.ExactlyReal(math.NaN())}},
	} {
		_, err := uncertainty.AtReference(c.reading, c.instrument, c.part)
		refused(t, err, uncertainty.ErrRange)
	}
	// A part that expansion makes vanish.
	_, err := uncertainty.AtReference(uncertainty.Exactly(mm), steel, uncertainty.Body{Temperature: celsius(21, 0), Expansion: uncertainty.ExactlyReal(-1)})
	require.ErrorIs(t, err, units.ErrRange)
}
