package instrument

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const (
	pm   = units.Picometre
	edge = units.Length(1 << 61) // of the range
)

func length(t testing.TB, text string) units.Length {
	t.Helper()
	l, err := units.ParseLength(text)
	require.NoError(t, err)
	return l
}

func kelvins(t testing.TB, text string) units.TemperatureDifference {
	t.Helper()
	d, err := units.ParseTemperatureDifference(text + " K")
	require.NoError(t, err)
	return d
}

func lengths(t testing.TB, text string) (ls []units.Length) {
	t.Helper()
	for s := range strings.FieldsSeq(text) {
		n, err := strconv.ParseInt(s, 10, 64)
		require.NoError(t, err)
		ls = append(ls, units.Length(n))
	}
	return ls
}

func TestSet_reference(t *testing.T) {
	vectors.Load(t, "reference/instrument_sets.txt").Each(t, func(t *testing.T, c vectors.Case) {
		setting := lengths(t, c.Text("setting"))
		var th [3]Thermal
		for i, text := range strings.Split(c.Text("thermal"), " / ") {
			f := strings.Fields(text)
			k, err := strconv.ParseFloat(f[0], 64)
			require.NoError(t, err)
			ke, err := strconv.ParseFloat(f[1], 64)
			require.NoError(t, err)
			th[i] = Thermal{k, ke, kelvins(t, f[2]), kelvins(t, f[3])}
		}
		in := Instrument{
			Step: units.Length(c.Int64("step")), Error: units.Length(c.Int64("error")), Together: c.Bool("together"), Thermal: th[0],
			Setting: Setting{Standard: setting[0], Error: setting[1], Reading: setting[2], Thermal: th[1]},
		}
		s, err := in.Set(th[2], lengths(t, c.Text("readings"))...)
		require.NoError(t, err)
		cold := th == [3]Thermal{}
		// It holds the exact range, and no more than a picometre beside it.
		judge := func(column string, got tolerance.Bracket, err error) {
			require.NoError(t, err)
			want := lengths(t, c.Text(column))
			lo, _ := got.Lower()
			hi, _ := got.Upper()
			if cold {
				require.Equal(t, want, []units.Length{lo, hi}, column)
			}
			require.True(t, lo <= want[0] && want[1] <= hi, "%s: %v, want %v", column, got, want)
			require.True(t, lo >= want[0]-pm && hi <= want[1]+pm, "%s: %v, want %v", column, got, want)
		}
		for i, column := range []string{"first", "second"} {
			got, err := s.Size(i)
			judge(column, got.Bracket, err)
			require.True(t, got.Bracket.Contains(got.Size))
			alone, err := in.Reading(got.Reading, th[2])
			require.NoError(t, err)
			require.Equal(t, got, alone)
		}
		d, err := s.Difference(0, 1)
		judge("difference", d, err)
		d, err = s.Spread()
		judge("spread", d, err)
		same, err := s.Difference(2, 2)
		require.NoError(t, err)
		require.Equal(t, tolerance.Exactly(units.Length(0)), same)
	})
}

func TestInstrument_gaugesAsPublished(t *testing.T) {
	vectors.Load(t, "published/instrument_gauges.txt").Each(t, func(t *testing.T, c vectors.Case) {
		th := Thermal{PerKelvin: c.Float("coefficient"), Above: kelvins(t, c.Text("above"))}
		in := Instrument{Setting: Setting{Standard: length(t, c.Text("standard")), Thermal: th}, Thermal: th}
		x := length(t, c.Text("difference"))
		got, err := in.Reading(x, th)
		require.NoError(t, err)
		require.Equal(t, length(t, c.Text("size")), got.Size)

		warmer := th
		warmer.Above += units.Kelvin
		short, err := in.Reading(x, warmer)
		require.NoError(t, err)
		c.Near("shorter_nm_per_kelvin", (got.Size - short.Size).Float(units.InNanometres))
		if c.Has("coefficient_nm") {
			other := th
			other.PerKelvin += 1e-6
			long, err := in.Reading(x, other)
			require.NoError(t, err)
			c.Near("coefficient_nm", (long.Size - got.Size).Float(units.InNanometres))
		}
	})
}

func TestClearanceGrowth_worked(t *testing.T) {
	vectors.Load(t, "practice/instrument_expansion.txt").Each(t, func(t *testing.T, c vectors.Case) {
		size := tolerance.Float(length(t, c.Text("size")).Float(units.InMillimetres))
		hole, shaft := tolerance.Float(c.Float("hole")*1e-6), tolerance.Float(c.Float("shaft")*1e-6)
		holeRise, shaftRise := tolerance.Float(c.Float("hole_rise")), tolerance.Float(c.Float("shaft_rise"))
		got := ClearanceGrowth(size, hole, holeRise, shaft, shaftRise)
		c.Near("growth", float64(got))
		apart := Growth(size, hole, holeRise).Sub(Growth(size, shaft, shaftRise))
		require.InDelta(t, float64(apart), float64(got), 1e-12)
	})
}

// The formula of the documentation, read as float64, agrees with the bracket.
func TestAtReference(t *testing.T) {
	in := Instrument{
		Setting: Setting{Standard: length(t, "86 mm"), Reading: length(t, "0.002 mm"), Thermal: At(units.MustParseTemperature("23 °C"), 0, 11.5e-6, 0)},
		Thermal: At(units.MustParseTemperature("24 °C"), 0, 10e-6, 0),
	}
	part := At(units.MustParseTemperature("77 °F"), 0, 23.6e-6, 0) // 25 °C
	require.Equal(t, 5*units.Kelvin, part.Above)
	got, err := in.Reading(length(t, "0.035 mm"), part)
	require.NoError(t, err)
	e := Expansion[tolerance.Float]
	want := AtReference(0.035, 0.002, 86, e(10e-6, 4), e(11.5e-6, 3), e(23.6e-6, 5))
	require.InDelta(t, float64(want), got.Size.Float(units.InMillimetres), 1e-9)
	require.True(t, got.Bracket.Contains(got.Size))
}

func TestThermal_SizeAt(t *testing.T) {
	steel := Thermal{PerKelvin: 11.5e-6, Above: 10 * units.Kelvin}
	hot, err := steel.SizeAt(100 * units.Millimetre)
	require.NoError(t, err)
	require.Equal(t, "[100.011499999 mm, 100.011500001 mm]", hot.String())
	back, err := steel.ReferenceSize(length(t, "100.0115 mm"))
	require.NoError(t, err)
	require.True(t, back.Contains(100*units.Millimetre))
	w, _ := back.Width()
	require.LessOrEqual(t, w, 2*units.Picometre)
	// A size that nothing warms is what it is.
	same, err := Thermal{}.SizeAt(units.Inch)
	require.NoError(t, err)
	require.Equal(t, tolerance.Exactly(units.Inch), same)
	_, err = steel.SizeAt(units.OutOfRange[units.Length]())
	require.ErrorIs(t, err, ErrRange)
	_, err = Thermal{PerKelvin: 11.5}.ReferenceSize(units.Inch)
	require.ErrorIs(t, err, ErrExpansion)
	_, err = steel.SizeAt(edge)
	require.ErrorIs(t, err, ErrRange)
}

// One temperature for all three is a narrower bracket than three that may
// each be off: steel measured with steel.
func TestInstrument_together(t *testing.T) {
	warm := Thermal{PerKelvin: 11.5e-6, Above: 6 * units.Kelvin, AboveError: 2 * units.Kelvin}
	in := Instrument{Setting: Setting{Standard: 86 * units.Millimetre, Thermal: warm}, Thermal: warm}
	apart, err := in.Reading(20*units.Micrometre, warm)
	require.NoError(t, err)
	in.Together = true
	together, err := in.Reading(20*units.Micrometre, warm)
	require.NoError(t, err)
	wide, _ := apart.Bracket.Width()
	narrow, _ := together.Bracket.Width()
	require.Greater(t, wide, 7*units.Micrometre)
	require.LessOrEqual(t, narrow, 2*units.Picometre)
	require.Equal(t, apart.Size, together.Size)
	require.True(t, together.Bracket.Within(apart.Bracket))
	_, err = in.Reading(0, Thermal{})
	require.ErrorIs(t, err, ErrTogether)
	in.Setting.Thermal = Thermal{}
	_, err = in.Reading(0, warm)
	require.ErrorIs(t, err, ErrTogether)
	in.Setting.Standard = 0 // closed anvils have no temperature of their own
	_, err = in.Reading(0, warm)
	require.NoError(t, err)
}

func TestInstrument_json(t *testing.T) {
	const text = `{"name": "micrometer 2", "range": "25–50 mm", "step": "0.01 mm", "error": "0.004 mm",
		"setting": {"standard": "25 mm", "error": "0.001 mm", "reading": "25.01 mm", "thermal": {"perKelvin": 11.5e-6, "above": "1.5 K", "aboveError": "0.5 K"}}}`
	var in Instrument
	require.NoError(t, document.Decode([]byte(text), &in))
	require.Equal(t, Instrument{
		Name: "micrometer 2", Range: tolerance.MustParseBand("25–50 mm"), Step: 10 * units.Micrometre, Error: 4 * units.Micrometre,
		Setting: Setting{Standard: 25 * units.Millimetre, Error: units.Micrometre, Reading: length(t, "25.01 mm"),
			Thermal: Thermal{PerKelvin: 11.5e-6, Above: 3 * units.Kelvin / 2, AboveError: units.Kelvin / 2}},
	}, in)
	require.Equal(t, 10*units.Micrometre, in.ZeroError())
	b, err := json.Marshal(in)
	require.NoError(t, err)
	var back Instrument
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, in, back)
}

func TestInstrument_refuses(t *testing.T) {
	good := Instrument{Name: "m", Range: tolerance.MustParseBand("0–25 mm"), Step: 10 * units.Micrometre}
	far := units.OutOfRange[units.Length]()
	with := func(change func(*Instrument)) Instrument { in := good; change(&in); return in }
	warm := func(th Thermal) Instrument { return with(func(in *Instrument) { in.Thermal = th }) }
	for i, c := range []struct {
		in    Instrument
		x     units.Length
		part  Thermal
		kind  error
		field string
	}{
		{with(func(in *Instrument) { in.Step = -pm }), 0, Thermal{}, ErrNegative, "step"},
		{with(func(in *Instrument) { in.Error = -pm }), 0, Thermal{}, ErrNegative, "error"},
		{with(func(in *Instrument) { in.Error = far }), 0, Thermal{}, ErrRange, "error"},
		{with(func(in *Instrument) { in.Setting.Error = -pm }), 0, Thermal{}, ErrNegative, "setting, error of the standard"},
		{with(func(in *Instrument) { in.Setting.Standard = -pm }), 0, Thermal{}, ErrNegative, "setting, standard"},
		{with(func(in *Instrument) { in.Setting.Reading = pm }), 0, Thermal{}, ErrStep, "setting, reading"},
		{with(func(in *Instrument) { in.Setting.Reading = far }), 0, Thermal{}, ErrRange, "setting, reading"},
		{with(func(in *Instrument) { in.Range = tolerance.BandFrom(tolerance.Exactly(far)) }), 0, Thermal{}, ErrRange, "range"},
		{good, 12_345 * pm, Thermal{}, ErrStep, "reading"},
		{good, far, Thermal{}, ErrRange, "reading"},
		{good, 26 * units.Millimetre, Thermal{}, ErrOutside, "reading"},
		{good, -10 * units.Micrometre, Thermal{}, ErrOutside, "reading"},
		{warm(Thermal{PerKelvin: math.NaN()}), 0, Thermal{}, ErrExpansion, "scale, coefficient"},
		{warm(Thermal{PerKelvin: math.Inf(-1)}), 0, Thermal{}, ErrExpansion, "scale, coefficient"},
		{warm(Thermal{PerKelvin: 11.5}), 0, Thermal{}, ErrExpansion, "scale, coefficient"},
		{warm(Thermal{PerKelvinError: math.NaN()}), 0, Thermal{}, ErrNegative, "scale, error of the coefficient"},
		{warm(Thermal{PerKelvinError: -1e-6}), 0, Thermal{}, ErrNegative, "scale, error of the coefficient"},
		{warm(Thermal{Above: -300 * units.Kelvin}), 0, Thermal{}, ErrTemperature, "scale, temperature above 20 °C"},
		{warm(Thermal{Above: units.OutOfRange[units.TemperatureDifference]()}), 0, Thermal{}, ErrTemperature, "scale, temperature above 20 °C"},
		{warm(Thermal{AboveError: -units.Kelvin}), 0, Thermal{}, ErrNegative, "scale, error of the temperature"},
		{warm(Thermal{AboveError: units.TemperatureDifference(1 << 62)}), 0, Thermal{}, ErrTemperature, "scale, temperature above 20 °C"},
		{with(func(in *Instrument) { in.Setting.Thermal.Above = 1000 * units.Kelvin }), 0, Thermal{}, ErrTemperature, "standard, temperature above 20 °C"},
		{good, 0, Thermal{PerKelvin: -0.01}, ErrExpansion, "part, coefficient"},
		{with(func(in *Instrument) { in.Together = true }), 0, Thermal{Above: units.Kelvin}, ErrTogether, "together"},
		{Instrument{Setting: Setting{Standard: edge}}, edge, Thermal{}, ErrRange, "reading"},
		{Instrument{Error: edge}, edge, Thermal{}, ErrRange, "reading"},
	} {
		got, err := c.in.Reading(c.x, c.part)
		require.ErrorIs(t, err, c.kind, "case %d", i)
		require.Zero(t, got)
		var e *InputError
		require.ErrorAs(t, err, &e)
		require.Equal(t, c.field, e.Field, "case %d", i)
		s, err := c.in.Set(c.part, c.x)
		if err == nil { // where only the size is out of range
			_, err = s.Size(0)
		}
		require.ErrorIs(t, err, c.kind, "case %d", i)
	}
	_, err := good.Reading(12*units.Micrometre, Thermal{})
	require.EqualError(t, err, `instrument: "m", reading 0.012 mm: between two steps; a whole number of steps of 0.01 mm`)
	_, err = warm(Thermal{PerKelvin: 11.5}).Reading(0, Thermal{})
	require.EqualError(t, err, `instrument: "m", scale, coefficient 11.5: not a coefficient of expansion; within ±0.001 for each kelvin, its error included; steel has 11.5e-6`)
	require.Equal(t, "x"+strings.Repeat("ä", 31), clip("x"+strings.Repeat("ä", 40)))
}
