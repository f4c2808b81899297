package cylinder

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func linerAt(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func linerLength(s string) units.Length { return units.MustParseLength(s) }

func linerCelsius(x float64) units.Temperature {
	t, err := units.Nearest(x, units.InCelsius)
	if err != nil {
		panic(err)
	}
	return t
}

// Heating and chilling, against roots found on the sizes at temperature.
func TestDropIn_reference(t *testing.T) {
	vectors.Load(t, "reference/cylinder_liner_heat.txt").Each(t, func(t *testing.T, c vectors.Case) {
		d := DropIn{Bore: linerAt(c.Text("bore") + " mm"), Liner: linerAt(c.Text("liner") + " mm"), Gap: linerLength(c.Text("gap") + " mm"),
			MeasuredAt: linerCelsius(c.Float("measured_at")), BlockPerK: c.Float("block_expansion") * 1e-6, LinerPerK: c.Float("liner_expansion") * 1e-6}
		lt, bt := linerCelsius(c.Float("liner_at")), linerCelsius(c.Float("block_at"))

		block, err := d.BlockAt(lt)
		require.NoError(t, err)
		c.Near("block", block.Float(units.InCelsius))
		gap, err := d.GapAt(block, lt)
		require.NoError(t, err)
		lo, _ := gap.Lower()
		require.InDelta(t, float64(d.Gap), float64(lo), 20, "the inverse undoes it to 20 pm: 1e-9 K of slack")

		chill, err := d.LinerAt(bt)
		if c.Float("measured_at") > 0 && err != nil { // some would have to be below absolute zero
			c.Ignore("chill")
			require.ErrorIs(t, err, ErrInput)
		} else {
			c.Near("chill", chill.Float(units.InCelsius))
			gap, err := d.GapAt(bt, chill)
			require.NoError(t, err)
			lo, _ := gap.Lower()
			require.InDelta(t, float64(d.Gap), float64(lo), 20)
		}

		room, err := d.GapAt(bt, lt)
		require.NoError(t, err)
		lo, _ = room.Lower()
		hi, _ := room.Upper()
		c.Near("room", lo.Float(units.InMillimetres))
		require.LessOrEqual(t, hi-lo, 4*units.Picometre)
	})
}

func linerDropIn() DropIn {
	return DropIn{Bore: linerAt("[96.000 mm, 96.006 mm]"), Liner: linerAt("96.050 ±0.003 mm"), Gap: 50 * units.Micrometre,
		MeasuredAt: units.Reference, BlockPerK: 21.5e-6, LinerPerK: 11.4e-6}
}

// The worst pair sets the temperature; the gap holds every pair's.
func TestDropIn_worstPair(t *testing.T) {
	d := linerDropIn()
	block, err := d.BlockAt(units.Reference)
	require.NoError(t, err)
	// By hand: (0.050 + 0.053) / (96 · 21.5e-6) = 49.903 K above 20 °C.
	require.InDelta(t, 69.903, block.Float(units.InCelsius), 0.001)
	g, err := d.GapAt(block, units.Reference)
	require.NoError(t, err)
	lo, _ := g.Lower()
	hi, _ := g.Upper()
	require.GreaterOrEqual(t, lo, 50*units.Micrometre-5)
	require.InDelta(t, 0.062, hi.Float(units.InMillimetres), 0.0001)

	open := d
	open.Bore = linerAt("[96 mm, ∞)")
	g, err = open.GapAt(block, units.Reference)
	require.NoError(t, err)
	_, end := g.Upper()
	require.Equal(t, tolerance.Absent, end)
}

func TestDropIn_refuses(t *testing.T) {
	for want, change := range map[string]func(*DropIn){
		"bore -1 mm":               func(d *DropIn) { d.Bore = linerAt("-1 mm") },
		"bore (0 mm, 1 mm] is not": func(d *DropIn) { d.Bore = linerAt("(0 mm, 1 mm]") },
		"liner outside diameter 0": func(d *DropIn) { d.Liner = linerAt("0 mm") },
		"has no greatest value":    func(d *DropIn) { d.Liner = linerAt("[96 mm, ∞)") },
		"assembly gap -0.001 mm":   func(d *DropIn) { d.Gap = -units.Micrometre },
		"block expansion 21.5":     func(d *DropIn) { d.BlockPerK = 21.5 },
		"block expansion NaN":      func(d *DropIn) { d.BlockPerK = math.NaN() },
		"liner expansion 0":        func(d *DropIn) { d.LinerPerK = 0 },
		"temperature measured at":  func(d *DropIn) { d.MeasuredAt = units.OutOfRange[units.Temperature]() },
		"liner outside diameter":   func(d *DropIn) { d.Liner = tolerance.Exactly(units.OutOfRange[units.Length]()) },
	} {
		d := linerDropIn()
		change(&d)
		_, err := d.BlockAt(units.Reference)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
		_, err = d.LinerAt(units.Reference)
		require.ErrorContains(t, err, want)
		_, err = d.GapAt(units.Reference, units.Reference)
		require.ErrorContains(t, err, want)
	}
	d, bad := linerDropIn(), units.OutOfRange[units.Temperature]()
	_, err := d.BlockAt(bad)
	require.ErrorContains(t, err, "liner temperature")
	_, err = d.LinerAt(bad)
	require.ErrorContains(t, err, "block temperature")
	_, err = d.GapAt(bad, units.Reference)
	require.ErrorContains(t, err, "block temperature")
	_, err = d.GapAt(units.Reference, bad)
	require.ErrorContains(t, err, "liner temperature")
	_, err = d.LinerAt(units.AbsoluteZero)
	require.ErrorContains(t, err, "absolute zero")
	tiny := d
	tiny.BlockPerK = 1e-300
	_, err = tiny.BlockAt(units.Reference)
	require.ErrorContains(t, err, "can be reached")
	huge := d
	huge.MeasuredAt = -200 * units.CELSIUS
	huge.Bore, huge.Liner, huge.BlockPerK = tolerance.Exactly(units.Length(2e18)), tolerance.Exactly(units.Length(2e18)), 9.9e-4
	_, err = huge.GapAt(499*units.CELSIUS, units.Reference)
	require.ErrorContains(t, err, "range of a length")
	_, err = d.LinerAt(5000 * units.CELSIUS)
	require.ErrorContains(t, err, "at most 500 °C")
}

func TestCoolantFor(t *testing.T) {
	room, c := units.Reference, linerCelsius
	require.Equal(t, NoChilling, CoolantFor(room, room))
	require.Equal(t, Freezer, CoolantFor(c(-18), room))
	require.Equal(t, DryIce, CoolantFor(c(-18.1), room))
	require.Equal(t, DryIce, CoolantFor(c(-78.5), room))
	require.Equal(t, LiquidNitrogen, CoolantFor(c(-78.6), room))
	require.Equal(t, LiquidNitrogen, CoolantFor(c(-195.8), room))
	require.Equal(t, NoCoolant, CoolantFor(c(-195.9), room))
	require.Equal(t, NoCoolant, CoolantFor(units.OutOfRange[units.Temperature](), room))
	text, err := LiquidNitrogen.MarshalText()
	require.NoError(t, err)
	require.Contains(t, string(text), "open draught")
	require.Equal(t, NoCoolant.String(), Coolant(99).String())
}

// Textbook values are the printed ones (status P), the others from memory.
func TestLinerExpansions(t *testing.T) {
	printed := map[string]float64{"ductile iron 60-40-18": 11.2, "ductile iron 80-55-06": 10.6, "cast aluminium 356.0": 21.5,
		"aluminium 2024": 22.9, "aluminium 6061": 23.6, "leaded tin bronze C93200": 18.0}
	for _, e := range LinerExpansions() {
		got, ok := LinerExpansionOf(e.Material)
		require.True(t, ok)
		require.Equal(t, e, got)
		if want, ok := printed[e.Material]; ok {
			require.InDelta(t, want, e.PerK*1e6, 1e-9)
			require.Equal(t, textbook, e.Source)
			delete(printed, e.Material)
		} else {
			require.Equal(t, fromMemory, e.Source)
		}
	}
	require.Empty(t, printed)
	_, ok := LinerExpansionOf("cheese")
	require.False(t, ok)
}

func FuzzDropIn(f *testing.F) {
	f.Add(int64(96e9), int64(96.05e9), int64(5e7), 21.5e-6, 11.4e-6, int64(20), int64(-78), int64(150))
	f.Add(int64(1), int64(1<<62), int64(-1), 1e-320, 9.99e-4, int64(-1<<62), int64(1<<62), int64(0))
	f.Fuzz(func(t *testing.T, bore, liner, gap int64, ab, al float64, at, lt, bt int64) {
		d := DropIn{Bore: tolerance.Exactly(units.Length(bore)), Liner: tolerance.Exactly(units.Length(liner)), Gap: units.Length(gap),
			BlockPerK: ab, LinerPerK: al, MeasuredAt: units.Temperature(at) * units.CELSIUS}
		l, b := units.Temperature(lt)*units.CELSIUS, units.Temperature(bt)*units.CELSIUS
		if block, err := d.BlockAt(l); err == nil {
			require.True(t, block.InRange())
		}
		if chill, err := d.LinerAt(b); err == nil {
			require.True(t, chill.InRange())
		}
		if g, err := d.GapAt(b, l); err == nil {
			require.True(t, g.InRange())
		}
	})
}

func BenchmarkDropIn(b *testing.B) {
	b.Run("lib=tenthou/op=blocktemperature", func(b *testing.B) {
		b.ReportAllocs()
		d := linerDropIn()
		for b.Loop() {
			if _, err := d.BlockAt(units.Reference); err != nil {
				b.Fatal(err)
			}
		}
	})
}
