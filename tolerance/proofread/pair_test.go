package proofread_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// Each kind by its name and sentence. The inch is 25.4 mm; the rest is worked by
// hand: 2.7528 in = 69.921 mm, 0.0070 in = 0.1778 mm, 0.2344 in = 5.954 mm.
func TestPair_kinds(t *testing.T) {
	for _, c := range []struct {
		text string
		kind proofread.Kind
		want string
	}{
		{"0.0070 in (0.17 mm)", proofread.CutOff, "0.0070 in is 0.18 mm: the 0.17 mm printed beside it was cut off, not rounded"},
		{"-0.0070 in (-0.17 mm)", proofread.CutOff, ""},
		{"0.0071 in (0.19 mm)", proofread.RoundedUp, "0.0071 in is 0.18 mm: the 0.19 mm printed beside it was rounded up, not to the nearest"},
		{"0.0012 in (0.025 mm)", proofread.RoundedTwice, "0.025 mm is 0.0010 in: the 0.0012 in printed beside it was rounded twice, by way of 0.03 mm"},
		{"0.003 in (0.76 mm)", proofread.DecimalPlace, "0.003 in is 0.076 mm: the 0.76 mm printed beside it looks a decimal place off; or the 0.003 in should be 0.030 in"},
		{"2.7528 in (0.6992 mm)", proofread.DecimalPlace, "2.7528 in is 69.921 mm: the 0.6992 mm printed beside it looks two decimal places off; or the 2.7528 in should be 0.027528 in"},
		{"2.7528 in (69921 mm)", proofread.DecimalPlace, "2.7528 in is 69.921 mm: the 69921 mm printed beside it looks three decimal places off; or the 2.7528 in should be 2752.7953 in"},
		{"0.002 in (-0.05 mm)", proofread.WrongSign, "0.002 in is 0.05 mm: the -0.05 mm printed beside it has the wrong sign; or the 0.002 in should be -0.002 in"},
		{"69.92 in (69.92 mm)", proofread.WrongUnit, "69.92 mm is 2.7528 in: the 69.92 in printed beside it looks like a figure in millimetres; or the 69.92 mm should be 1776.0 mm"},
		{"2.7528 in (2.7528 mm)", proofread.WrongUnit, "2.7528 in is 69.921 mm: the 2.7528 mm printed beside it looks like a figure in inches; or the 2.7528 in should be 0.1084 in"},
		{"69.921 in (2.7528 mm)", proofread.UnitsExchanged, "69.921 in is not 2.7528 mm: each looks exchanged with the other, or one of them was converted the wrong way"},
		{"0.007 in (0.07 mm)", proofread.StepsMixed, "0.007 in is 0.18 mm: the 0.07 mm printed beside it looks as if hundredths or tenths of a millimetre were mixed up with thousandths of an inch; or the 0.007 in should be 0.0028 in"},
		{"0.0123 in (0.1230 mm)", proofread.StepsMixed, ""},
		{"1.3764 in (69.921 mm)", proofread.FactorTwo, "69.921 mm is 2.7528 in: the 1.3764 in printed beside it looks half what it should be; or the 69.921 mm should be 34.9606 mm"},
		{"5.5056 in (69.921 mm)", proofread.FactorTwo, "5.5056 in is 139.842 mm: the 69.921 mm printed beside it looks half what it should be; or the 5.5056 in should be 2.7528 in"},
		{"3/32 in (3.2 mm)", proofread.FractionMisread, "3.2 mm is 1/8 in: the 3/32 in printed beside it looks like 1/8 in misread"},
		{"1 3/16 in (4.8 mm)", proofread.FractionMisread, "4.8 mm is 3/16 in: the 1 3/16 in printed beside it looks like 3/16 in misread"},
		{"3/16 in (2.38 mm)", proofread.FractionMisread, "2.38 mm is 3/32 in: the 3/16 in printed beside it looks like 3/32 in misread"},
		{"13/64 in (12.30 mm)", proofread.FractionMisread, "12.30 mm is 31/64 in: the 13/64 in printed beside it looks like 31/64 in misread"},
		{"0.0938 in (3.175 mm)", proofread.FractionMisread, "3.175 mm is 0.1250 in: the 0.0938 in printed beside it looks like 0.1250 in misread"},
		{"90.00 mm (32.22 in)", proofread.TemperatureConverted, "90.00 mm is 3.5433 in: the 32.22 in printed beside it looks run through a temperature conversion; or the 90.00 mm should be 818.4 mm"},
		{"2.7258 in (69.921 mm)", proofread.DigitsTransposed, "69.921 mm is 2.7528 in: the 2.7258 in printed beside it looks like 2.7528 in with two digits exchanged"},
		{"2.7548 in (69.921 mm)", proofread.DigitWrong, "2.7548 in is 69.972 mm: the 69.921 mm printed beside it looks like 69.971 mm with one digit wrong; or the 2.7548 in should be 2.7528 in"},
		{"2.7528 in (669.921 mm)", proofread.DigitAdded, "2.7528 in is 69.921 mm: the 669.921 mm printed beside it looks like 69.921 mm with a digit too many"},
		{"2.7528 in (9.921 mm)", proofread.DigitLost, "2.7528 in is 69.921 mm: the 9.921 mm printed beside it looks like 69.921 mm with a digit lost"},
		{"2.7528 in (68.821 mm)", proofread.TwoDigitsWrong, "2.7528 in is 69.921 mm: the 68.821 mm printed beside it looks like 69.921 mm with two digits wrong"},
		{"0.2344 in (0.3594 mm)", proofread.WrongNumber, "0.2344 in is 5.954 mm: the 0.3594 mm printed beside it is a wrong number, or the other figure is; or the 0.2344 in should be 0.0141 in"},
		{"0.000 in (0.24 mm)", proofread.WrongNumber, ""},
	} {
		r, err := proofread.CheckPair(pair(t, c.text))
		require.NoError(t, err)
		require.Equal(t, c.kind, r.Likeliest().Kind, "%s: %s", c.text, r)
		if c.want != "" {
			require.Equal(t, c.want, r.String())
		}
		require.Equal(t, c.kind == proofread.CutOff || c.kind == proofread.RoundedUp || c.kind == proofread.RoundedTwice, r.Likeliest().Kind.Mild())
	}
}

func TestPair_basis(t *testing.T) {
	for _, c := range []struct {
		text  string
		basis proofread.Basis
	}{
		{"1 in (25.4 mm)", proofread.Same},
		{"0.0025 in (0.064 mm)", proofread.FromEither},  // 0.0635, a tie; 0.064 mm is 0.002 520 in
		{"0.0025 in (0.06 mm)", proofread.FromFirst},    // 0.0635; 0.06 mm is 0.002 362 in
		{"0.00252 in (0.064 mm)", proofread.FromEither}, // 0.064 008 mm
		{"0.0075 in (0.190 mm)", proofread.FromEither},  // 0.1905 to even; 0.190 mm is 0.007 480 in
		{"0.0075 in (0.191 mm)", proofread.FromEither},  // 0.1905 away; 0.191 mm is 0.007 520 in
		{"1/32 in (0.7937 mm)", proofread.FromSecond},   // 0.793 75, which no rule takes to 0.7937
		{"1/32 in (0.7938 mm)", proofread.FromEither},
		{"1/2 in (13 mm)", proofread.FromEither},   // 12.7 mm
		{"1/2 in (13.4 mm)", proofread.FromSecond}, // 8.44 sixteenths
		{"0.0017 in (0.044 mm)", proofread.FromSecond},
		{"1.001 in (25.44 mm)", proofread.FromThird}, // 1.0015 in at the most, 25.435 mm at the least
		{"0.007 in (0.17 mm)", proofread.FromSecond},
		{"1.0 in (26.6 mm)", proofread.FromSecond},
		{"1.0 in (26.7 mm)", proofread.FromThird}, // 1.05 in, half to even
		{"1.0 in (26.8 mm)", proofread.Apart},
	} {
		r, err := proofread.CheckPair(pair(t, c.text))
		require.NoError(t, err)
		require.Equal(t, c.basis, r.Basis, c.text)
		require.Equal(t, c.basis == proofread.Apart, r.Flagged())
		require.Zero(t, proofread.Result{}.Likeliest())
	}
}

// With the design column known, only what follows from it is right.
func TestConversion(t *testing.T) {
	for _, c := range []struct {
		text   string
		design proofread.Side
		kind   proofread.Kind
	}{
		{"0.007 in (0.178 mm)", proofread.First, proofread.NoSlip},
		{"0.007 in (0.177 mm)", proofread.First, proofread.CutOff},
		{"0.007 in (0.177 mm)", proofread.Second, proofread.NoSlip},
		{"0.007 in (0.177 mm)", proofread.Neither, proofread.NoSlip},
		{"0.007 in (0.177 mm)", 7, proofread.NoSlip},
		{"1/32 in (0.7937 mm)", proofread.First, proofread.CutOff},
		{"1/32 in (0.7938 mm)", proofread.First, proofread.NoSlip},
		{"0.0017 in (0.044 mm)", proofread.First, proofread.RoundedUp},
		{"1.001 in (25.44 mm)", proofread.First, proofread.DigitWrong}, // 25.4254, more than a step below
		{"1.001 in (25.44 mm)", proofread.Second, proofread.CutOff},
		{"0.0445 mm (0.0018 in)", proofread.First, proofread.NoSlip},
		{"0.00175 in (0.045 mm)", proofread.First, proofread.RoundedUp}, // 0.044 45, by way of 0.0445
		{"0.0023 in (0.06 mm)", proofread.Second, proofread.CutOff},     // 0.002 362
		{"2 in (52 mm)", proofread.Second, proofread.NoSlip},
	} {
		r, err := proofread.CheckConversion(pair(t, c.text), c.design)
		require.NoError(t, err)
		require.Equal(t, c.kind, r.Likeliest().Kind, "%s: %s", c.text, r)
		if c.kind != proofread.NoSlip {
			require.Equal(t, proofread.Apart, r.Basis)
		}
	}
}

// Other quantities: 30 psi = 206.84 kPa, 76 lbf = 338.06 N, 20 °C = 68 °F,
// 1/2 lb = 226.8 g.
func TestPair_quantities(t *testing.T) {
	checkText[units.Pressure](t, "30 psi (207 kPa)", "")
	checkText[units.Pressure](t, "30 psi (2.07 kPa)", "30 psi is 206.84 kPa: the 2.07 kPa printed beside it looks two decimal places off; or the 30 psi should be 0.30 psi")
	checkText[units.Pressure](t, "30 psi (270 kPa)", "30 psi is 207 kPa: the 270 kPa printed beside it looks like 207 kPa with two digits exchanged")
	checkText[units.Pressure](t, "30 psi (30 kPa)", "30 psi is 207 kPa: the 30 kPa printed beside it looks like a figure in psi; or the 30 psi should be 4.4 psi")
	checkText[units.Force](t, "76 lbf (338 N)", "")
	checkText[units.Mass](t, "1/2 lb (226.8 g)", "")
	checkText[units.Mass](t, "1/2 lb (22.68 g)", "1/2 lb is 226.80 g: the 22.68 g printed beside it looks a decimal place off")
	checkText[units.Temperature](t, "20 °C (68 °F)", "")
	checkText[units.Temperature](t, "20 °C (86 °F)", "20 °C is 68 °F: the 86 °F printed beside it looks like 68 °F with two digits exchanged")
	checkText[units.Angle](t, "44° 30′ (44.5°)", "")
	checkText[units.Angle](t, "44° 30′ (45.4°)", "44° 30′ is 44.5°: the 45.4° printed beside it looks like 44.5° with two digits exchanged")
	checkText[units.TemperatureDifference](t, "50 K (90 F°)", "")
}

func checkText[Q units.Quantity](t *testing.T, text, want string) {
	t.Helper()
	p, err := proofread.ParsePairOf[Q](text)
	require.NoError(t, err)
	r, err := proofread.CheckPair(p)
	require.NoError(t, err)
	require.Equal(t, want != "", r.Flagged(), "%s: %s", text, r)
	if want != "" {
		require.Equal(t, want, r.String())
	}
}

// Figures that no parser gives: out of range, off their own steps, with places
// that no unit has.
func TestPair_absurd(t *testing.T) {
	out := units.Written[units.Length]{Value: units.OutOfRange[units.Length]()}
	in := units.Written[units.Length]{Value: units.Inch, Unit: units.InInches}
	var check *proofread.CheckError
	for _, err := range []error{
		second(proofread.CheckPair(proofread.Pair{First: out, Second: in})),
		second(proofread.CheckPair(proofread.Pair{First: in, Second: out})),
		second(proofread.CheckConversion(proofread.Pair{First: in, Second: out}, proofread.First)),
		second(proofread.CheckColumn(proofread.Column{A: out})),
		second(proofread.CheckColumn(proofread.Column{Form: proofread.Range, A: in, B: out})),
		second(proofread.CheckLimits(proofread.Limits{First: proofread.Column{A: out}})),
		second(proofread.CheckLimits(proofread.Limits{Second: proofread.Column{A: out}})),
		second(proofread.CheckWear(proofread.Column{A: out}, proofread.Column{A: in})),
		second(proofread.CheckWear(proofread.Column{A: in}, proofread.Column{A: out})),
		second(proofread.CheckRatio(out, in, proofread.Ratio{Num: 1, Den: 1})),
		second(proofread.CheckRelated(proofread.Pair{First: out}, proofread.Pair{}, proofread.Ratio{Num: 1, Den: 1})),
		second(proofread.CheckLift(proofread.Column{A: out}, proofread.Column{})),
		second(proofread.CheckLift(proofread.Column{A: in}, proofread.Column{A: out})),
	} {
		require.ErrorIs(t, err, proofread.ErrRange)
		require.True(t, errors.As(err, &check))
		require.Contains(t, err.Error(), "a value within the range of its type")
	}
	require.Equal(t, "proofread: readings: too few readings; three", (&proofread.CheckError{Field: "readings", Kind: proofread.ErrTooFew, Want: "three"}).Error())
	for _, w := range []units.Written[units.Length]{
		{Value: units.Picometre, Unit: units.InInches, Places: 255},
		{Value: units.Picometre, Unit: units.InInches, Places: 1},
		{Value: 8_466_666_667 * units.Picometre, Unit: units.InInches, Denominator: 3},
		{Value: units.Picometre, Unit: units.InInches, Denominator: 65535},
		{Value: units.Length(1 << 61), Unit: units.InPicometres},
		{Value: units.Length(-1 << 61), Unit: 200, Places: 9},
		{Value: units.Length(1 << 60), Denominator: 64},
	} {
		for _, p := range []proofread.Pair{{First: w, Second: in}, {First: in, Second: w}, {First: w, Second: w}} {
			r, err := proofread.CheckPair(p)
			require.NoError(t, err)
			require.NotEmpty(t, r.String())
			require.Equal(t, r.Basis == proofread.Apart, r.Flagged())
		}
	}
	huge := proofread.Column{Form: proofread.Symmetric, A: units.Written[units.Length]{Value: units.Length(1 << 61)}, B: units.Written[units.Length]{Value: units.Length(1 << 61)}}
	r, err := proofread.CheckWear(huge, proofread.Column{Form: proofread.Maximum, A: in})
	require.NoError(t, err)
	require.False(t, r.Flagged(), "its greatest is out of range: there is nothing to compare")
}

func second[T any](_ T, err error) error { return err }

func TestNames(t *testing.T) {
	seen := map[string]bool{}
	for k := proofread.NoSlip; k <= proofread.WrongNumber; k++ {
		text, err := k.MarshalText()
		require.NoError(t, err)
		require.False(t, seen[string(text)], "%s twice", text)
		seen[string(text)] = true
		var back proofread.Kind
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, k, back)
	}
	require.Len(t, seen, 24)
	require.Equal(t, "no slip", proofread.Kind(200).String())
	var k proofread.Kind
	err := k.UnmarshalText([]byte("typo"))
	require.ErrorIs(t, err, proofread.ErrSyntax)
	require.ErrorContains(t, err, `proofread: kind of slip "typo": not written as expected; one of "no slip", "cut off", `)
	var side proofread.Side
	require.EqualError(t, side.UnmarshalText([]byte("third")), `proofread: side "third": not written as expected; one of "neither", "first", "second"`)
	require.Equal(t, "same size", proofread.Relation(99).String())
	require.Equal(t, []string{"neither", "first", "second"}, []string{proofread.Neither.String(), proofread.First.String(), proofread.Second.String()})
	require.Equal(t, "apart", proofread.Basis(99).String())
	require.Equal(t, "one figure", proofread.Form(99).String())
	require.Equal(t, "value", proofread.Limit(99).String())
	require.Equal(t, "wrong number", proofread.Cause{Kind: proofread.WrongNumber}.String())
	require.Equal(t, "a decimal place", proofread.Cause{Kind: proofread.DecimalPlace, Num: 1, Den: 10}.String())
}

// Results are plain data, equal when their texts are, and encode.
func TestResult_json(t *testing.T) {
	r, err := proofread.CheckPair(pair(t, "0.006 in (0.015 mm)"))
	require.NoError(t, err)
	again, err := proofread.CheckPair(pair(t, "0.006 in (0.015 mm)"))
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(r, again))
	text, err := json.Marshal(r)
	require.NoError(t, err)
	require.Contains(t, string(text), `"slips":[{"kind":"decimal place","in":"second","shift":-1,"printed":"0.015 mm","undone":"0.15 mm","correct":"0.152 mm","rank":10}`)
	var back proofread.Result
	require.NoError(t, json.Unmarshal(text, &back))
	require.Empty(t, cmp.Diff(r, back))
	l, err := proofread.ParseLimits("2.7548–2.7533 in (69.920–69.632 mm)")
	require.NoError(t, err)
	report, err := proofread.CheckLimits(l)
	require.NoError(t, err)
	text, err = json.Marshal([]any{l, report})
	require.NoError(t, err)
	var l2 proofread.Limits
	var report2 proofread.Report
	require.NoError(t, json.Unmarshal(text, &[]any{&l2, &report2}))
	require.Empty(t, cmp.Diff(l, l2))
	require.Empty(t, cmp.Diff(report, report2))
	require.True(t, strings.HasPrefix(r.Slips[0].String(), "0.015 mm for 0.152 mm: decimal place"))
}
