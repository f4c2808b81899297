package crank

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// floatOf reads a bracket as it is written.
func floatOf(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func floatsOf(texts ...string) (all []tolerance.Bracket) {
	for _, t := range texts {
		all = append(all, floatOf(t))
	}
	return all
}

func lengthOf(s string) units.Length { return units.MustParseLength(s) }

func TestEndFloat_published(t *testing.T) {
	vectors.Load(t, "published/crank_endfloat_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		c.Ignore("source")
		spec := tolerance.Spec{New: tolerance.MustParseBand(c.Text("new")), Wear: tolerance.MustParseBand(c.Text("worn"))}
		for column, want := range map[string]tolerance.Standing{"as_new": tolerance.AsNew, "usable": tolerance.Usable, "past": tolerance.PastWearLimit} {
			f, err := EndFloatCheck{Where: "main 3", Readings: floatsOf(c.Text(column)), Limits: spec}.Assess()
			require.NoError(t, err)
			require.Equal(t, want, f.Standing, column)
		}
	})
}

// Every formula undoes its inverse, exactly.
func TestEndFloat_inverses(t *testing.T) {
	for _, x := range []string{"0 mm", "0.07 mm", ".0165 in", "3.1 mm", "0.123456788 mm"} {
		a := lengthOf(x)
		b, c, d := lengthOf("28.4 mm"), lengthOf(".122 in"), lengthOf("2.31 mm")
		require.Equal(t, a, EndFloatOf(ThrustJournal(a, b, c, d), b, c, d))
		require.Equal(t, a, EndFloatWith(c, b, ThrustTotalFor(c, b, a)))
		require.Equal(t, a, EndFloatWithOversize(c, ThrustOversize(c, a)))
		require.Equal(t, a, EndFloat(b, b+a))
		require.Equal(t, a, EndFloat(b+a, b))
		// Both sides thicker by a: twice it off the float.
		require.Equal(t, EndFloatWithOversize(c, a), EndFloatWith(c, ThrustTotal(d, d), ThrustTotal(d+a, d+a)))
		require.Equal(t, units.Length(0), ThrustShift(a, a), "both sides alike: the shaft stays")
		require.Equal(t, a, ThrustShift(2*a, 0))
	}
}

// The other readings of the same formulas: brackets, uncertainty, working.
func TestEndFloat_otherReadings(t *testing.T) {
	require.Equal(t, floatOf("[0.19 mm, 0.21 mm]"), EndFloat(floatOf("0.3 ±0.005 mm"), floatOf("0.1 ±0.005 mm")))
	require.Equal(t, floatOf("[0.08 mm, 0.12 mm]"), EndFloatOf(floatOf("30.1 ±0.005 mm"), floatOf("25 ±0.005 mm"), floatOf("2.5 ±0.005 mm"), floatOf("2.5 ±0.005 mm")))

	read := func(name, at string) uncertainty.Estimate {
		e, err := uncertainty.Normal(name, lengthOf(at), 3*units.Micrometre)
		require.NoError(t, err)
		return e
	}
	f := EndFloatWith(read("float", "0.3 mm"), read("in", "6.1 mm"), read("new", "6.2 mm"))
	require.Equal(t, lengthOf("0.2 mm"), f.Value())
	// √3 · 3 µm, by the law of propagation for sums.
	require.Equal(t, lengthOf("0.005196152 mm"), f.StandardUncertainty())

	w := EndFloatWith(working.Given("end float", "E", 30*units.Thou), working.Given("washers in", "W", 240*units.Thou), working.Given("standard washers", "W₀", 244*units.Thou)).Named("float over standard washers", "E₀")
	s, err := working.Solve(w, units.Style[units.Length]{Unit: units.InInches, Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.0260 in")
}

func TestEndFloat_refuses(t *testing.T) {
	_, err := EndFloatCheck{}.Assess()
	require.ErrorIs(t, err, ErrInput)
	require.EqualError(t, err, "crank: end float with no reading is not read at least once")
	for _, bad := range []string{"-0.01 mm", "[-0.01 mm, 0.02 mm]", "11 m"} {
		_, err = EndFloatCheck{Readings: floatsOf(bad)}.Assess()
		require.ErrorIs(t, err, ErrInput, bad)
	}
	_, err = EndFloatCheck{Readings: []tolerance.Bracket{{}}}.Assess()
	require.ErrorIs(t, err, ErrInput)
	// Every blade went in: no upper end, and no pass.
	f, err := EndFloatCheck{Readings: floatsOf("[0.4 mm, ∞)"), Limits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.5 mm")}}.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, f.Standing)
}

func picked(c ThrustChoice) string {
	var names []string
	for _, p := range c.Picks {
		names = append(names, p.Step.Name)
	}
	return strings.Join(names, " | ")
}

func TestThrustTable_published(t *testing.T) {
	table := PublishedThrustTable()
	vectors.Load(t, "published/crank_thrust_choice.txt").Each(t, func(t *testing.T, c vectors.Case) {
		choice, err := table.Choose(floatOf(c.Text("float")), tolerance.Exactly(table.Total))
		require.NoError(t, err)
		want := c.Text("picks")
		require.Equal(t, want, picked(choice))
		two := strings.Contains(want, "|")
		require.Equal(t, !two, choice.Decided)
		require.Equal(t, two, choice.Gap)
		require.Equal(t, two, choice.Settle != "")
		require.False(t, choice.Pinched)
	})
}

func TestThrustTable_brackets(t *testing.T) {
	table := PublishedThrustTable()
	for _, c := range []struct {
		float, picks string
		gap          bool
	}{
		{"[.015 in, .0155 in]", "standard", false},
		{"[.0155 in, .016 in)", "standard", false},
		{"[.0155 in, .0165 in]", "standard | .005 in oversize", true},
		{"[.0165 in, .0175 in]", "standard | .005 in oversize", true},
		{"[.0155 in, .018 in]", "standard | .005 in oversize", true},
		{"[.018 in, .028 in]", ".005 in oversize | .010 in oversize", true},
		{"[.030 in, .040 in]", ".010 in oversize | replace the crankshaft", false}, // they meet at .036
		{"[.026 in, .027 in]", ".005 in oversize | .010 in oversize", true},
		{"[.001 in, .050 in]", "standard | .005 in oversize | .010 in oversize | replace the crankshaft", true},
		{"[.040 in, ∞)", "replace the crankshaft", false},
		{"[.030 in, ∞)", ".010 in oversize | replace the crankshaft", false},
	} {
		choice, err := table.Choose(floatOf(c.float), tolerance.Exactly(table.Total))
		require.NoError(t, err)
		require.Equal(t, c.picks, picked(choice), c.float)
		require.Equal(t, c.gap, choice.Gap, c.float)
	}
	// The manual's own steps 16 to 18: washers worn to .118 and .117 in, .020 in
	// measured: .020 − (.244 − .235) = .011.
	choice, err := table.Choose(floatOf(".020 in"), floatOf(".235 in"))
	require.NoError(t, err)
	require.Equal(t, floatOf(".011 in"), choice.Float)
	require.Equal(t, "standard", picked(choice))
	// With new ones of .119 to .122 in, .011 to .017 in.
	require.Equal(t, floatOf("[.011 in, .017 in]"), choice.Picks[0].Float)
	require.False(t, choice.Pinched)
	choice, err = table.Choose(floatOf(".002 in"), floatOf(".240 in"))
	require.NoError(t, err)
	require.True(t, choice.Pinched, ".002 − .004 is below nothing")
	choice, err = table.Choose(floatOf(".040 in"), floatOf(".244 in"))
	require.NoError(t, err)
	require.True(t, choice.Picks[0].Float.IsZero(), "no washer does")

	// A table that ends, and what lies beyond it.
	short := ThrustTable{Total: units.Millimetre, Steps: []ThrustStep{{Name: "a", Float: tolerance.MustParseBand("0.1–0.2 mm")}, {Name: "b", Float: tolerance.MustParseBand("0.2–0.3 mm")}}}
	short.Steps[0].Float = tolerance.MustBetween(100*units.Micrometre, 199*units.Micrometre)
	for at, want := range map[string]string{"0.05 mm": "a", "0.35 mm": "b", "[0.05 mm, 0.15 mm]": "a", "[0.25 mm, 0.4 mm]": "b"} {
		choice, err = short.Choose(floatOf(at), floatOf("1 mm"))
		require.NoError(t, err)
		require.Equal(t, want, picked(choice), at)
		require.True(t, choice.Gap)
		require.False(t, choice.Decided)
	}
	// Both open where they meet: that one value is in neither.
	open := short
	open.Steps = []ThrustStep{{Name: "a", Float: tolerance.LessThan(units.Millimetre)}, {Name: "b", Float: tolerance.MoreThan(units.Millimetre)}}
	choice, err = open.Choose(floatOf("[0.9 mm, 1.1 mm]"), floatOf("1 mm"))
	require.NoError(t, err)
	require.True(t, choice.Gap)
}

func TestThrustTable_refuses(t *testing.T) {
	good := PublishedThrustTable()
	for name, spoil := range map[string]func(*ThrustTable){
		"no steps":     func(t *ThrustTable) { t.Steps = nil },
		"no total":     func(t *ThrustTable) { t.Total = 0 },
		"no band":      func(t *ThrustTable) { t.Steps[1].Float = tolerance.Band{} },
		"out of order": func(t *ThrustTable) { t.Steps[0], t.Steps[1] = t.Steps[1], t.Steps[0] },
		"overlap":      func(t *ThrustTable) { t.Steps[0].Float = tolerance.AtMost(17 * units.Thou) },
	} {
		table := PublishedThrustTable()
		spoil(&table)
		_, err := table.Choose(floatOf(".01 in"), floatOf(".244 in"))
		require.ErrorIs(t, err, ErrInput, name)
	}
	_, err := good.Choose(floatOf("-.01 in"), floatOf(".244 in"))
	require.ErrorIs(t, err, ErrInput)
	_, err = good.Choose(floatOf(".01 in"), floatOf("0 in"))
	require.ErrorIs(t, err, ErrInput)
	_, err = good.Choose(floatOf(".01 in"), floatOf("[.1 in, ∞)"))
	require.ErrorIs(t, err, ErrInput)
}

func thrustFit() ThrustFit {
	return ThrustFit{
		Float: floatOf("0.40 ±0.01 mm"),
		Front: floatsOf("2.31 mm", "2.32 mm"),
		Rear:  floatsOf("2.28 mm", "2.28 mm"),
		Match: tolerance.Spec{New: tolerance.MustParseBand("max 0.005 mm")},
		Limits: tolerance.Spec{
			New: tolerance.MustParseBand("0.08–0.20 mm"), Wear: tolerance.MustParseBand("max 0.30 mm"),
		},
	}
}

// By hand: in are 2.32 + 2.28 = 4.60, the thicker half of each side; the float
// with a pair is 0.40 + 4.60 less the pair.
func TestThrustFit(t *testing.T) {
	f := thrustFit()
	sides, err := f.Sides()
	require.NoError(t, err)
	require.Len(t, sides, 2)
	require.Equal(t, tolerance.OutsideNewBand, sides[0].Standing)
	require.Equal(t, tolerance.AsNew, sides[1].Standing)
	in, err := f.In()
	require.NoError(t, err)
	require.Equal(t, floatOf("4.6 mm"), in)
	stock := []ThrustWasher{
		{Name: "standard", Thickness: floatOf("2.31 mm")},
		{Name: "+0.125", Thickness: floatOf("2.435 mm"), Pieces: 4},
		{Name: "+0.25", Thickness: floatOf("2.56 mm"), Pieces: 1},
	}
	all, err := f.Options(stock...)
	require.NoError(t, err)
	require.Len(t, all, 4, "one piece of +0.25 makes no side of two halves")
	// 5.00 − 4.87 = 0.13 is the nearest to 0.14, and the only one within the new band.
	require.Equal(t, "+0.125 +0.125", all[0].Front+" "+all[0].Rear)
	require.Equal(t, floatOf("[0.12 mm, 0.14 mm]"), all[0].Float)
	require.True(t, f.Serves(all[0]))
	require.False(t, f.Serves(all[1]))
	// Forward by half of (2.435 − 2.32) − (2.435 − 2.28).
	require.Equal(t, floatOf("-0.02 mm"), all[0].Shift)
	// 5.00 − 4.745 both ways: the one that shifts the shaft less comes first,
	// (0.115 − 0.03)/2 against (−0.01 − 0.155)/2.
	require.Equal(t, "+0.125", all[1].Front)
	require.Equal(t, floatOf("0.0425 mm"), all[1].Shift)
	require.Equal(t, floatOf("[0.245 mm, 0.265 mm]"), all[1].Float)

	f.Wanted = 25 * units.Millimetre / 100
	f.Limits.New = tolerance.Band{}
	all, err = f.Options(stock...)
	require.NoError(t, err)
	require.Equal(t, floatOf("[0.245 mm, 0.265 mm]"), all[0].Float)
	require.True(t, f.Serves(all[0]))
	stock[1].Pieces = 3 // not enough for both sides
	all, err = f.Options(stock...)
	require.NoError(t, err)
	require.Len(t, all, 3)

	// One washer a side has nothing to match; by blades, every one went in.
	one := ThrustFit{Float: floatOf("[1 mm, ∞)"), Front: floatsOf("2 mm"), Rear: floatsOf("2 mm"), Limits: f.Limits, Wanted: 1}
	sides, err = one.Sides()
	require.NoError(t, err)
	require.Empty(t, sides)
	all, err = one.Options(stock...)
	require.NoError(t, err)
	require.False(t, one.Serves(all[0]))
	require.Equal(t, units.Length(2), ThrustSide[units.Length](1, 2))
}

func TestThrustFit_refuses(t *testing.T) {
	stock := []ThrustWasher{{Name: "standard", Thickness: floatOf("2.31 mm")}}
	for name, spoil := range map[string]func(*ThrustFit){
		"no float":        func(f *ThrustFit) { f.Float = tolerance.Bracket{} },
		"no washer":       func(f *ThrustFit) { f.Front = nil },
		"three halves":    func(f *ThrustFit) { f.Rear = floatsOf("1 mm", "1 mm", "1 mm") },
		"no thickness":    func(f *ThrustFit) { f.Rear = floatsOf("0 mm") },
		"negative wanted": func(f *ThrustFit) { f.Wanted = -1 },
		"no middle":       func(f *ThrustFit) { f.Limits = tolerance.Spec{Wear: tolerance.MustParseBand("max 0.3 mm")} },
		"bad limits":      func(f *ThrustFit) { f.Limits.Wear = tolerance.MustParseBand("max 0.1 mm") },
	} {
		f := thrustFit()
		spoil(&f)
		_, err := f.Options(stock...)
		require.Error(t, err, name)
	}
	f := thrustFit()
	_, err := f.Options()
	require.ErrorIs(t, err, ErrInput)
	_, err = f.Options(ThrustWasher{})
	require.ErrorIs(t, err, ErrInput)
	_, err = f.Options(ThrustWasher{Thickness: floatOf("2 mm"), Pieces: -1})
	require.ErrorIs(t, err, ErrInput)
	_, err = ThrustFit{}.Sides()
	require.ErrorIs(t, err, ErrInput)
	f.Match = tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	_, err = f.Sides()
	require.Error(t, err)
}

// Whatever the float, a table picks something, in order; and a greater float
// never picks a thinner washer.
func FuzzThrustTable(f *testing.F) {
	f.Add(int64(16*units.Thou), int64(units.Thou), int64(240*units.Thou))
	f.Add(int64(0), int64(0), int64(1))
	f.Fuzz(func(t *testing.T, float, width, in int64) {
		b, err := tolerance.NewInterval(units.Length(float), tolerance.Closed, units.Length(float).Add(units.Length(width)), tolerance.Closed)
		if err != nil {
			return
		}
		table := PublishedThrustTable()
		c, err := table.Choose(b, tolerance.Exactly(units.Length(in)))
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.NotEmpty(t, c.Picks)
		require.Equal(t, c.Decided, len(c.Picks) == 1)
		require.Equal(t, c.Decided, c.Settle == "")
		more, err := table.Choose(b.Add(tolerance.Exactly(units.Thou)), tolerance.Exactly(units.Length(in)))
		if err == nil {
			require.GreaterOrEqual(t, more.Picks[0].Step.Oversize+farthest*units.Length(btoi(more.Picks[0].Step.Replace)), c.Picks[0].Step.Oversize)
		}
	})
}

func btoi(b bool) int64 {
	if b {
		return 1
	}
	return 0
}
