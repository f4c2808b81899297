package working_test

import (
	"encoding/json"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func exactly(s string) working.Term { return working.Exactly(units.MustParseLength(s)) }

func TestMark(t *testing.T) {
	for _, c := range []struct {
		right, answer, within string
		grade                 working.Grade
		slips                 string // their words, joined by "; "
	}{
		{"0.055 mm", "0.055 mm", "0 mm", working.Right, ""},
		{"0.055 mm", "55 µm", "0 mm", working.Right, ""},
		{"0.055 mm", ".0022 in", "0.001 mm", working.Right, ""},
		{"0.0625 in", "1/16 in", "0 in", working.Right, ""},
		{"-0.02 mm", "−0.02 mm", "0 mm", working.Right, ""},
		{"0 mm", "0 mm", "0 mm", working.Right, ""},
		{"0.055 mm", "0.06 mm", "0.0005 mm", working.RoundedTooFar, ""},
		{"0.055 mm", "0.1 mm", "0.0005 mm", working.RoundedTooFar, ""},
		{"0.055 mm", "0 mm", "0.0005 mm", working.RoundedTooFar, ""},
		{"0.055 mm", "0.002 in", "0.0005 mm", working.RoundedTooFar, ""},
		{"0.4 in", "3/8 in", "0.001 in", working.RoundedTooFar, ""},
		{"0.055 mm", "0.055", "0.0005 mm", working.NoUnit, "the number is right with the unit mm"},
		{"0.055 mm", "55", "0.0005 mm", working.NoUnit, "the number is right with the unit µm"},
		{"0.055 mm", "0.07", "0.0005 mm", working.NoUnit, ""},
		{"0 mm", "0", "0.0005 mm", working.NoUnit, ""},
		{"0.055 mm", "-0.055 mm", "0.0005 mm", working.Wrong, "right but for its sign"},
		{"0.055 mm", "0.55 mm", "0.0005 mm", working.Wrong, "10 times too large: the decimal point"},
		{"0.055 mm", "5.5 µm", "0.0005 mm", working.Wrong, "10 times too small: the decimal point"},
		{"0.055 mm", "5.5 mm", "0.0005 mm", working.Wrong, "100 times too large: the decimal point"},
		{"0.055 mm", "55 mm", "0.0005 mm", working.Wrong, "1000 times too large: the decimal point; the number is right with the unit µm"},
		{"0.055 mm", "0.055 in", "0.0005 mm", working.Wrong, "25.4 times too large: inches and millimetres; the number is right with the unit mm"},
		{"0.055 mm", "1.397 mm", "0.0005 mm", working.Wrong, "25.4 times too large: inches and millimetres"},
		{"0.055 mm", "0.00217 mm", "0.00001 mm", working.Wrong, "25.4 times too small: inches and millimetres; the number is right with the unit in"},
		{"0.055 mm", "0.11 mm", "0.0005 mm", working.Wrong, "twice too large: a diameter for a radius, or counted twice"},
		{"0.055 mm", "0.0275 mm", "0.0005 mm", working.Wrong, "half the size: a radius for a diameter, or halved for nothing"},
		{"0.0942 mm", "0.03 mm", "0.0005 mm", working.Wrong, "π times too small: π left out"},
		{"0.03 mm", "0.0942 mm", "0.0005 mm", working.Wrong, "π times too large: π put in for nothing"},
		{"0.055 mm", "0.07 mm", "0.0005 mm", working.Wrong, ""},
		{"0 mm", "0.07 mm", "0.0005 mm", working.Wrong, ""},
		{"0.07 mm", "0.00 mm", "0.0005 mm", working.Wrong, ""},
		// Ten times 0.055 would round to it, but so would much else.
		{"0.055 mm", "0.6 mm", "0.0005 mm", working.Wrong, ""},
		// A tolerance that holds all from 0 to twice the answer names no slip.
		{"0.055 mm", "1.2 mm", "0.055 mm", working.Wrong, ""},
		{"1 mm", "10.4 mm", "0.07 mm", working.Wrong, "10 times too large: the decimal point"},
		{"1 mm", "10.6 mm", "0.07 mm", working.Wrong, ""},
		// Slips seen in print, in government engine manuals: the second column
		// of a limit, given the first.
		{"0.006 in", "0.015 mm", "0.0005 mm", working.Wrong, "10 times too small: the decimal point; the number is right with the unit cm"},
		{"0.038 mm", "0.00015 in", "0.00005 in", working.Wrong, "10 times too small: the decimal point"},
		{"0.003 in", "0.76 mm", "0.0005 mm", working.Wrong, "10 times too large: the decimal point"},
		{"-1.40 mm", "-0.555 in", "0.0005 in", working.Wrong, "10 times too large: the decimal point"},
		{"0.001 in", "0.05 mm", "0.0005 mm", working.Wrong, "twice too large: a diameter for a radius, or counted twice"},
		{"0.2344 in", "0.3594 mm", "0.005 mm", working.Wrong, ""},
		{"3/32 in", "3.2 mm", "0.05 mm", working.Wrong, ""},
	} {
		m, err := working.Mark(exactly(c.right), c.answer, units.MustParseLength(c.within))
		require.NoError(t, err, c)
		require.Equal(t, c.grade, m.Grade, "%v: %s", c, m.Explain())
		words := []string{}
		for _, s := range m.Slips {
			words = append(words, s.String())
		}
		require.Equal(t, c.slips, strings.Join(words, "; "), c)
		require.Equal(t, m.Answer.Value-m.Right, m.Off)
	}
}

func TestMark_explain(t *testing.T) {
	explain := func(answer string) string {
		m, err := working.Mark(exactly("0.055 mm"), answer, 500*units.Nanometre)
		require.NoError(t, err)
		return m.Explain()
	}
	require.Equal(t, "right", explain("0.055 mm"))
	require.Equal(t, "right as far as it goes, but rounded too far", explain("0.06 mm"))
	require.Equal(t, "no unit", explain("7"))
	require.Equal(t, "no unit: the number is right with the unit mm", explain("0.055"))
	require.Equal(t, "wrong", explain("7 mm"))
	require.Equal(t, "wrong: 25.4 times too large: inches and millimetres; or the number is right with the unit mm", explain(".055 in"))
}

func TestMark_otherQuantities(t *testing.T) {
	require.Equal(t, "right", explain(t, 45*units.Degree+30*units.Arcminute, "45° 30′", 0))
	require.Equal(t, "wrong: twice too large: a diameter for a radius, or counted twice", explain(t, units.Degree, "2° 0′", units.Arcminute))
	require.Equal(t, "wrong: the number is right with the unit N", explain(t, 320*units.Newton, "320 lbf", units.Newton))
	require.Equal(t, "wrong: the number is right with the unit g", explain(t, units.Kilogram, "1000 oz", units.Gram))
	require.Equal(t, "no unit: the number is right with the unit K", explain(t, 60*units.Kelvin, "60", 0))
	require.Equal(t, "wrong: 100 times too small: the decimal point; or the number is right with the unit bar; or the number is right with the unit kgf/cm²", explain(t, 10*units.Bar, "10 kPa", units.Kilopascal))
}

func explain[Q working.Quantity[Q]](t *testing.T, right Q, answer string, within Q) string {
	t.Helper()
	m, err := working.Mark(working.Exactly(right), answer, within)
	require.NoError(t, err)
	return m.Explain()
}

func TestMark_refuses(t *testing.T) {
	var e *working.Error
	for _, answer := range []string{"", "wide", "1/0 in", "5 N", "1e400 mm", "0.055 mil", "\xff mm", "NaN", strings.Repeat("9", 1<<20), "1,000 mm"} {
		_, err := working.Mark(exactly("0.055 mm"), answer, 0)
		require.ErrorIs(t, err, working.ErrAnswer, answer)
		require.ErrorAs(t, err, &e)
		var p *units.ParseError
		require.ErrorAs(t, err, &p)
		require.Less(t, len(err.Error()), 500)
	}
	_, err := working.Mark(exactly("0.055 mm"), "1 mm", -units.Millimetre)
	require.ErrorIs(t, err, working.ErrTolerance)
	require.EqualError(t, err, `working: mark tolerance "-1 mm": not a tolerance; 0 or more`)
	_, err = working.Mark(exactly("0.055 mm"), "1 mm", units.OutOfRange[units.Length]())
	require.ErrorIs(t, err, working.ErrRange)
	_, err = working.Mark(exactly("0.055 mm").Scale(1, 0), "1 mm", 0)
	require.ErrorIs(t, err, working.ErrRange)
	require.EqualError(t, err, "working: mark result: out of range; within ±2^61 quanta, and nothing divided by zero")
	// A number too large for one unit may do in another, or in none.
	m, err := working.Mark(exactly("0.055 mm"), "1000000000000", 0)
	require.ErrorIs(t, err, working.ErrAnswer)
	require.Equal(t, working.Wrong, m.Grade)
}

func TestMarking_json(t *testing.T) {
	m, err := working.Mark(exactly("0.055 mm"), "0.055 in", 0)
	require.NoError(t, err)
	data, err := json.Marshal(m)
	require.NoError(t, err)
	require.JSONEq(t, `{"grade":"wrong","answer":"0.055 in","right":"0.055 mm","off":"1.342 mm","slips":[
		{"kind":"inches and millimetres","num":127,"den":5},
		{"kind":"other unit","unit":"mm"}]}`, string(data))
	var back working.Marking[units.Length]
	require.NoError(t, json.Unmarshal(data, &back))
	require.Empty(t, cmp.Diff(m, back))

	var g working.Grade
	require.ErrorIs(t, g.UnmarshalText([]byte("perhaps")), working.ErrName)
	require.EqualError(t, g.UnmarshalText([]byte("perhaps")), `working: read grade "perhaps": not a name; one of "wrong", "right", "rounded too far", "no unit"`)
	var k working.SlipKind
	require.ErrorIs(t, k.UnmarshalText([]byte(strings.Repeat("ü", 100))), working.ErrName)
	require.Equal(t, "wrong", working.Grade(200).String())
	require.Equal(t, "none", working.SlipKind(200).String())
	require.Equal(t, "none", working.Slip{}.String())
}

// Marks at random: right exactly where the distance says so, and what is one
// of the slips is named.
func TestMark_random(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 3000 {
		right := units.Length(1+r.Int64N(200_000)) * units.Micrometre
		off := units.Length(r.Int64N(2_000_000)) - 1_000_000
		within := units.Length(r.Int64N(2_000_000))
		m, err := working.Mark(working.Exactly(right), (right + off).String(), within)
		require.NoError(t, err)
		require.Equal(t, off.Abs() <= within, m.Grade == working.Right)
		require.Equal(t, off, m.Off)

		slipped := right.Scale(10, 1)
		m, err = working.Mark(working.Exactly(right), slipped.String(), 0)
		require.NoError(t, err)
		require.Equal(t, working.Slip{Kind: working.DecimalPlace, Num: 10, Den: 1}, m.Slips[0], slipped)
	}
}

func FuzzMark(f *testing.F) {
	f.Add(int64(55_000_000), "0.55 mm", int64(500_000))
	f.Add(int64(-1), "1/64 in", int64(0))
	f.Add(int64(1)<<61, "-99.999 m", int64(1)<<61)
	f.Add(int64(7), "5 ft 3 1/2 in", int64(math.MaxInt64))
	f.Add(int64(0), "7", int64(-3))
	f.Fuzz(func(t *testing.T, right int64, answer string, within int64) {
		m, err := working.Mark(working.Exactly(units.Length(right)), answer, units.Length(within))
		if err != nil {
			var e *working.Error
			require.ErrorAs(t, err, &e)
			return
		}
		require.NotEmpty(t, m.Explain())
		off := new(big.Int).Sub(big.NewInt(int64(m.Answer.Value)), big.NewInt(right))
		if m.Grade != working.NoUnit {
			require.Equal(t, off.CmpAbs(big.NewInt(within)) <= 0, m.Grade == working.Right)
		}
		if m.Grade == working.Right || m.Grade == working.RoundedTooFar {
			require.Empty(t, m.Slips)
		}
	})
}
