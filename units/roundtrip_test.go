package units

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// textAgain holds a value's exact text to read back as the value.
func (s suite[Q, P]) textAgain(t *testing.T, v Q) {
	t.Helper()
	text, err := v.AppendText([]byte("x "))
	require.NoError(t, err)
	require.Equal(t, "x "+v.String(), string(text))
	marshalled, err := v.MarshalText()
	require.NoError(t, err)
	require.Equal(t, v.String(), string(marshalled))
	generic, err := AppendText(nil, v)
	require.NoError(t, err)
	require.Equal(t, v.String(), string(generic))
	var again Q
	require.NoError(t, P(&again).UnmarshalText(marshalled), "%d", int64(v))
	require.Equal(t, int64(v), int64(again), "%s", marshalled)
	// In any unit that has a finite decimal for it, as well.
	for _, u := range s.units() {
		text, exact := v.Append(nil, Style[Q]{Unit: u, Places: AllPlaces})
		places, finite := v.Places(u)
		require.Equal(t, exact, finite)
		if !exact {
			continue
		}
		require.NoError(t, P(&again).UnmarshalText(text))
		require.Equal(t, int64(v), int64(again), "%s", text)
		require.Equal(t, string(text), v.Text(u, places))
	}
}

// writtenAgain holds how something was written to read back as the same.
func (s suite[Q, P]) writtenAgain(t *testing.T, w Written[Q]) {
	t.Helper()
	text, err := w.MarshalText()
	require.NoError(t, err, "%+v", w)
	require.Equal(t, w.String(), string(text))
	require.True(t, w.Exact())
	var again Written[Q]
	require.NoError(t, again.UnmarshalText(text), "%+v", w)
	require.Equal(t, w, again, "%s", text)
	require.Equal(t, w, w.As(w.Value))
	require.Positive(t, int64(w.Step()))
}

func (s suite[Q, P]) texts(t *testing.T) {
	rnd, table := seeded(), s.table()
	for range 5000 {
		s.textAgain(t, Q(table.sample(rnd)))
	}
	for _, v := range []int64{0, 1, -1, 2, 3, table.least, limit, limit - 1} {
		if table.inRange(v) {
			s.textAgain(t, Q(v))
		}
	}
}

func TestTexts(t *testing.T) { each(t, tester.texts) }

// Any Written at all, made up too, has a text; and where that is exact it
// reads back as the value.
func (s suite[Q, P]) writtens(t *testing.T) {
	rnd, table := seeded(), s.table()
	exact := 0
	for range 10_000 {
		w := Written[Q]{
			Value:       Q(table.sample(rnd)),
			Unit:        Unit[Q](rnd.IntN(len(table.units) + 1)),
			Places:      uint8(rnd.IntN(20)),
			Denominator: [...]uint16{0, 0, 0, 2, 3, 64, 512, 65535}[rnd.IntN(8)],
			Compound:    rnd.IntN(2) == 0,
		}
		text, err := w.MarshalText()
		require.Equal(t, w.Exact(), err == nil, "%+v", w)
		if err != nil {
			require.ErrorIs(t, err, ErrTooFine)
			continue
		}
		exact++
		var again Written[Q]
		require.NoError(t, again.UnmarshalText(text), "%+v", w)
		require.Equal(t, int64(w.Value), int64(again.Value), "%+v: %s", w, text)
	}
	require.Greater(t, exact, 1000)
	for _, v := range table.beyond() {
		for _, compound := range []bool{false, true} {
			for _, den := range []uint16{0, 2} {
				w := Written[Q]{Value: Q(v), Denominator: den, Compound: compound}
				require.Equal(t, table.quantity+" out of range", w.String())
				require.False(t, w.Exact())
				_, err := w.MarshalText()
				require.ErrorIs(t, err, ErrRange)
			}
		}
	}
	var w Written[Q]
	require.Error(t, w.UnmarshalText([]byte("x")))
	require.Zero(t, w)
}

func TestWrittens(t *testing.T) { each(t, tester.writtens) }

func TestWritten_keeps(t *testing.T) {
	for in, want := range map[string]string{
		"0.070mm":                        "0.070 mm",
		"0,07 mm":                        "0.07 mm",
		".0025\"":                        "0.0025 in",
		"25/64 in":                       "25/64 in",
		"3-25/64″":                       "3 25/64 in",
		"89/64 in":                       "1 25/64 in",
		"-2/4 in":                        "-2/4 in",
		"16/16 in":                       "1 in",
		"3/3 in":                         "1 in",
		"6/9 ft":                         "2/3 ft",
		"0/16 in":                        "0 in",
		"5ft3in":                         "5 ft 3 in",
		"5 ft 3.50 in":                   "5 ft 3.50 in",
		"5 ft 3 1/2 in":                  "5 ft 3 1/2 in",
		"0 ft 3 in":                      "0 ft 3 in",
		"0 ft 0 in":                      "0 ft 0 in",
		"5 ft 0.000000000 in":            "5 ft 0.000000000 in",
		"-0.00 mm":                       "0.00 mm",
		"1.0000000000000000000000000 mm": "1.000000000000000000 mm",
	} {
		w, err := ParseWritten[Length](in)
		require.NoError(t, err)
		require.Equal(t, want, w.String())
		suites[0].(suite[Length, *Length]).writtenAgain(t, w)
	}
	for in, want := range map[string]string{
		"44°30′":     "44° 30′",
		"44° 30′ 0″": "44° 30′ 0″",
		"44° 0′ 15″": "44° 0′ 15″",
		"0° 0′ 15″":  "0′ 15″",
		"-1° 0.50′":  "-1° 0.50′",
		"1/2°":       "1/2°",
		"90′ 15″":    "1° 30′ 15″",
		"60′ 0″":     "1° 0′ 0″",
	} {
		w, err := ParseWritten[Angle](in)
		require.NoError(t, err)
		require.Equal(t, want, w.String())
	}
}

func TestWritten_as(t *testing.T) {
	in := func(s string, l Length) string {
		w, err := ParseWritten[Length](s)
		require.NoError(t, err)
		as := w.As(l)
		require.Equal(t, l, as.Value)
		text := as.String()
		again, err := ParseLength(text)
		require.Equal(t, as.Exact(), err == nil && again == l, "%s", text)
		return text
	}
	require.Equal(t, "0.08 mm", in("0.07 mm", 75*Micrometre))
	require.Equal(t, "0.06 mm", in("0.07 mm", 65*Micrometre))
	require.Equal(t, "0.0030 in", in("0.0025 in", 3*Thou))
	require.Equal(t, "1 1/64 in", in("25/64 in", Inch+Inch/64))
	require.Equal(t, "0.3 mm", in("1/2 mm", 300*Micrometre))
	require.Equal(t, "0.001 in", in("25/64 in", Thou))
	require.Equal(t, "0.039370079 in", in("25/64 in", Millimetre))
	require.Equal(t, "5 ft 3.00 in", in("1 ft 1.11 in", 63*Inch))
	require.Equal(t, "5 ft 0.00 in", in("1 ft 1.11 in", 60*Inch-Thou))
	require.Equal(t, "4 ft 11.999 in", in("1 ft 1.111 in", 60*Inch-Thou))
	require.Equal(t, "0 ft 0.04 in", in("1 ft 1.11 in", Millimetre))
	require.Equal(t, "1 ft 0.001 in", in("1 ft 1/2 in", Foot+Thou))
	require.Equal(t, "0 ft 0.03937008 in", in("1 ft 1.000000000 in", Millimetre))
	// At the very end of the range no rounding up is left.
	w := Written[Length]{Value: limit, Unit: InInches, Compound: true}
	require.Equal(t, "90781221 in", w.String())
	require.False(t, w.Exact())
}

func TestWritten_step(t *testing.T) {
	for in, want := range map[string]Length{
		"0.07 mm": 10 * Micrometre, "25/64 in": Inch / 64, "5 mm": Millimetre, ".0025 in": Thou / 10,
		"0.00000001 in": 254, "0.000000005 in": 254, "5 ft 3 1/2 in": Inch / 2,
	} {
		w, err := ParseWritten[Length](in)
		require.NoError(t, err)
		require.Equal(t, want, w.Step(), "%s", in)
	}
}

func (s suite[Q, P]) unitNames(t *testing.T) {
	table := s.table()
	for i, u := range s.units() {
		row := &table.units[i]
		require.Equal(t, row.symbol, u.Symbol())
		require.Equal(t, row.symbol, u.String())
		require.Equal(t, row.places, u.Places())
		for _, name := range append([]string{row.symbol}, row.names...) {
			got, err := ParseUnit[Q](name)
			require.NoError(t, err)
			require.Equal(t, u, got)
			var again Unit[Q]
			require.NoError(t, again.UnmarshalText([]byte(name)))
			require.Equal(t, u, again)
		}
		text, err := u.MarshalText()
		require.NoError(t, err)
		require.Equal(t, row.symbol, string(text))
	}
	for name, kind := range map[string]error{"": ErrNoUnit, "furlong": ErrUnknownUnit, " " + table.units[0].symbol: ErrUnknownUnit, "\xff": ErrUnknownUnit} {
		_, err := ParseUnit[Q](name)
		require.ErrorIs(t, err, kind)
		u := Unit[Q](1)
		require.ErrorIs(t, u.UnmarshalText([]byte(name)), kind)
		require.Equal(t, Unit[Q](1), u, "kept where there is an error")
	}
	for name := range table.ambiguous {
		_, err := ParseUnit[Q](name)
		require.ErrorIs(t, err, ErrAmbiguous)
	}
	// A number that names no unit stands for the first.
	none := Unit[Q](rand.IntN(100) + len(table.units))
	require.Equal(t, Unit[Q](0).Symbol(), none.Symbol())
	v, err := ParseIn("1", none)
	require.NoError(t, err)
	require.EqualValues(t, table.units[0].quanta, v)
	require.Equal(t, v.String(), v.Text(none, 0))
}

func TestUnitNames(t *testing.T) { each(t, tester.unitNames) }
