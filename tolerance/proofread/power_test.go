package proofread_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// A press prints correct pairs and slips in one figure of each. Slips of digits
// are made in the text, by other means than the detector undoes them.
type press struct{ *rand.Rand }

// pair is a size as a manual prints it: clearances and sizes, inches to 3 or 4
// places, millimetres to one place less or as many, either column first.
func (p press) pair() (in, mm string) {
	inPlaces := 3 + p.IntN(2)
	mmPlaces := inPlaces - p.IntN(2)
	least, most := units.Thou, 20*units.Thou
	if p.IntN(2) == 0 {
		least, most = units.Inch/4, 6*units.Inch
	}
	v := least + units.Length(p.Int64N(int64(most-least)))
	in = v.Text(units.InInches, inPlaces)
	printed := units.MustParseLength(in)
	if p.IntN(2) == 0 { // designed in millimetres
		mm = v.Text(units.InMillimetres, mmPlaces)
		return units.MustParseLength(mm).Text(units.InInches, inPlaces), mm
	}
	return in, printed.Text(units.InMillimetres, mmPlaces)
}

// number and unit of a text.
func cut(text string) (number, unit string) {
	number, unit, _ = strings.Cut(text, " ")
	return number, " " + unit
}

// digitsAt lists where the digits of a number stand that count: not the 0
// before the point.
func digitsAt(number string) (at []int) {
	for i, c := range number {
		if c != '.' && (i > 0 || c != '0') {
			at = append(at, i)
		}
	}
	return at
}

// one changes one of the two texts.
func (p press) one(change func(text string) string) func(in, mm string) (string, string) {
	return func(in, mm string) (string, string) {
		if p.IntN(2) == 0 {
			return change(in), mm
		}
		return in, change(mm)
	}
}

func (p press) shift(by int) func(in, mm string) (string, string) {
	return p.one(func(text string) string {
		number, unit := cut(text)
		whole, decimals, _ := strings.Cut(number, ".")
		digits, point := whole+decimals, len(whole)
		if p.IntN(2) == 0 {
			point -= by
		} else {
			point += by
		}
		for point < 1 {
			digits, point = "0"+digits, point+1
		}
		for point > len(digits) {
			digits += "0"
		}
		whole = strings.TrimLeft(digits[:point], "0")
		if whole == "" {
			whole = "0"
		}
		if digits[point:] == "" {
			return whole + unit
		}
		return whole + "." + digits[point:] + unit
	})
}

func (p press) digit(change func(b []byte, at []int, i int) []byte) func(in, mm string) (string, string) {
	return p.one(func(text string) string {
		number, unit := cut(text)
		at := digitsAt(number)
		return string(change([]byte(number), at, p.IntN(len(at)))) + unit
	})
}

// inner changes a digit that is neither 0 (a 0 lost or added moves the point)
// nor the last (the figure would be cut off).
func (p press) inner(change func(b []byte, at int) []byte) func(in, mm string) (string, string) {
	return p.digit(func(b []byte, at []int, i int) []byte {
		if b[at[i]] == '0' || i == len(at)-1 {
			return b
		}
		return change(b, at[i])
	})
}

func (p press) scaled(num, den int64) func(in, mm string) (string, string) {
	return p.one(func(text string) string {
		number, unit := cut(text)
		w, _ := units.ParseWritten[units.Length](text)
		_, decimals, _ := strings.Cut(number, ".")
		return strings.Replace(w.Value.Scale(num, den).Text(w.Unit, len(decimals)), " "+w.Unit.Symbol(), unit, 1)
	})
}

// converted prints an inch figure with the millimetres that rounding makes.
func (p press) converted(rounding func(v units.Length, places int) units.Length) func(in, mm string) (string, string) {
	return func(in, mm string) (string, string) {
		number, _ := cut(mm)
		_, decimals, _ := strings.Cut(number, ".")
		v, _ := units.ParseLength(in)
		right := v.Text(units.InMillimetres, len(decimals))
		wrong := rounding(v, len(decimals)).Text(units.InMillimetres, len(decimals))
		away, _ := v.Round(units.InMillimetres, len(decimals), units.NearestAway) // of a tie
		if wrong == right || wrong == away.Text(units.InMillimetres, len(decimals)) {
			return in, mm
		}
		return in, wrong
	}
}

// fraction prints a fraction of an inch with the millimetres of the next one.
func (p press) fraction(string, string) (in, mm string) {
	n := 1 + p.Int64N(62)
	f := units.Written[units.Length]{Value: units.Length(n) * units.Inch / 64, Unit: units.InInches, Denominator: 64}
	for ; n%2 == 0; n /= 2 {
		f.Denominator /= 2
	}
	next := f.Value + units.Inch/units.Length(f.Denominator)
	return f.String(), next.Text(units.InMillimetres, 1+p.IntN(2))
}

// slips are the slips that the press makes, with what the detector must reach:
// the share of the slips flagged, of those flagged the share named so at first,
// and named so among the explanations.
func (p press) slips() []slipMade {
	return []slipMade{
		{proofread.DecimalPlace, "one place", p.shift(1), 0.99, 0.99, 0.99},
		{proofread.DecimalPlace, "two places", p.shift(2), 0.99, 0.99, 0.99},
		{proofread.DigitsTransposed, "any neighbours", p.digit(func(b []byte, at []int, i int) []byte {
			if i+1 < len(at) {
				b[at[i]], b[at[i+1]] = b[at[i+1]], b[at[i]]
			}
			return b
		}), 0.97, 0.88, 0.92},
		{proofread.DigitWrong, "any digit", p.digit(func(b []byte, at []int, i int) []byte {
			b[at[i]] = '0' + (b[at[i]]-'0'+byte(1+p.IntN(9)))%10
			return b
		}), 0.88, 0.80, 0.93},
		{proofread.DigitLost, "not 0, not the last", p.inner(func(b []byte, at int) []byte { return slices.Delete(b, at, at+1) }), 0.88, 0.40, 0.78},
		{proofread.DigitAdded, "doubled, not 0, not the last", p.inner(func(b []byte, at int) []byte { return slices.Insert(b, at, b[at]) }), 0.80, 0.40, 0.70},
		{proofread.FactorTwo, "doubled", p.scaled(2, 1), 0.99, 0.97, 0.97},
		{proofread.FactorTwo, "halved", p.scaled(1, 2), 0.98, 0.93, 0.94},
		{proofread.FractionMisread, "next mark", p.fraction, 0.99, 0.9, 0.95},
		{proofread.WrongUnit, "not converted", func(in, mm string) (string, string) {
			number, _ := cut(mm)
			return number + " in", mm
		}, 0.99, 0.98, 0.98},
		{proofread.UnitsExchanged, "exchanged", func(in, mm string) (string, string) {
			a, _ := cut(in)
			b, _ := cut(mm)
			return b + " in", a + " mm"
		}, 0.99, 0.97, 0.98},
		{proofread.StepsMixed, "thou for hundredths", p.scaled(100, 254), 0.98, 0.80, 0.82},
		{proofread.StepsMixed, "hundredths for thou", p.scaled(254, 100), 0.98, 0.88, 0.89},
		{proofread.WrongSign, "minus", p.one(func(text string) string { return "-" + text }), 0.99, 0.99, 0.99},
		{proofread.TemperatureConverted, "to Celsius", func(in, mm string) (string, string) {
			number, _ := cut(mm)
			f, _ := units.ParseTemperature(number + " °F")
			c, _ := cut(f.Text(units.InCelsius, 2))
			return c + " in", mm
		}, 0.99, 0.95, 0.95},
		{proofread.CutOff, "inch known to be exact", p.converted(func(v units.Length, places int) units.Length {
			v, _ = v.Round(units.InMillimetres, places, units.Down)
			return v
		}), 0.99, 0.97, 0.97},
		{proofread.RoundedUp, "inch known to be exact", p.converted(func(v units.Length, places int) units.Length {
			v, _ = v.Round(units.InMillimetres, places, units.Up)
			return v
		}), 0.99, 0.97, 0.97},
	}
}

type slipMade struct {
	kind                   proofread.Kind
	how                    string
	make                   func(in, mm string) (string, string)
	flagged, named, listed float64
}

// The detector's power: of slips made at random, the share that it flags, and
// of those the share that it names right. What isn't flagged changed nothing
// that the other figure shows, as two equal digits exchanged.
func TestPower(t *testing.T) {
	const each = 2000
	p := press{rand.New(rand.NewPCG(16, 7))}
	for _, slip := range p.slips() {
		var changed, flagged, named, listed int
		for range each {
			in, mm := p.pair()
			badIn, badMM := slip.make(in, mm)
			if badIn == in && badMM == mm {
				continue
			}
			changed++
			text, design := badIn+" ("+badMM+")", proofread.First
			if p.IntN(2) == 0 {
				text, design = badMM+" ("+badIn+")", proofread.Second
			}
			if !slip.kind.Mild() {
				design = proofread.Neither
			}
			pair, err := proofread.ParsePair(text)
			require.NoError(t, err)
			r, err := proofread.CheckConversion(pair, design)
			require.NoError(t, err)
			if !r.Flagged() {
				continue
			}
			flagged++
			if r.Likeliest().Kind == slip.kind {
				named++
			}
			if slices.ContainsFunc(r.Slips, func(s proofread.Slip) bool { return s.Kind == slip.kind }) {
				listed++
			}
		}
		a, b, c := float64(flagged)/float64(changed), float64(named)/float64(flagged), float64(listed)/float64(flagged)
		name := fmt.Sprintf("%s (%s)", slip.kind, slip.how)
		t.Logf("%-44s of %4d flagged %5.1f %%, named first %5.1f %%, among the explanations %5.1f %%", name, changed, 100*a, 100*b, 100*c)
		require.GreaterOrEqual(t, a, slip.flagged, name)
		require.GreaterOrEqual(t, b, slip.named, name)
		require.GreaterOrEqual(t, c, slip.listed, name)
	}
}
