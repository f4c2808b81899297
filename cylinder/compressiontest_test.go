package cylinder

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func stripBar(s string) tolerance.Interval[units.Pressure] {
	i, err := tolerance.ParseInterval[units.Pressure](s)
	if err != nil {
		panic(err)
	}
	return i
}

func stripList4(text string) (list []CylinderPressure) {
	for i, s := range strings.Fields(text) {
		if s != "-" {
			list = append(list, CylinderPressure{i + 1, stripBar(s + " bar")})
		}
	}
	return list
}

func stripTest(dry, wet string) CompressionTest {
	least, err := tolerance.ParseBandOf[units.Pressure]("min 9 bar")
	if err != nil {
		panic(err)
	}
	return CompressionTest{Cylinders: 4, Dry: stripList4(dry), Wet: stripList4(wet),
		Conditions: TestConditions{Warm, ThrottleOpen, 10.5, 250, true, true, true},
		Limits:     CompressionLimits{Pressure: tolerance.SpecOf[units.Pressure]{Wear: least}, LowPercent: 75, RisePercent: 10}}
}

var stripShort = map[Sign]string{TestAgain: "again", RingsOrBore: "rings", ValvesOrGasket: "valves", GasketBetween: "between", AllLow: "all", TooHigh: "high"}

func stripSigns(p []Pointer) string {
	var s []string
	for _, one := range p {
		n := strings.Trim(strings.ReplaceAll(fmt.Sprint(one.Cylinders), " ", "+"), "[]")
		s = append(s, stripShort[one.Sign]+" "+n)
	}
	if s == nil {
		return "none"
	}
	return strings.Join(s, ", ")
}

// The patterns of the trade.
func TestCompressionTest_patterns(t *testing.T) {
	vectors.Load(t, "practice/cylinder_strip_patterns.txt").Each(t, func(t *testing.T, c vectors.Case) {
		r, err := stripTest(c.Text("dry"), c.Text("wet")).Assess()
		require.NoError(t, err)
		require.Equal(t, c.Text("signs"), stripSigns(r.Pointers))
		require.Empty(t, r.Conditions)
		for _, p := range r.Pointers {
			require.Contains(t, p.String(), "proves nothing")
			require.NotEmpty(t, p.Next)
		}
	})
}

func TestCompressionTest_differences(t *testing.T) {
	test := stripTest("12.0 9.0 - 11.5", "")
	most, err := tolerance.ParseBandOf[units.Pressure]("max 3 bar")
	require.NoError(t, err)
	test.Limits.Difference = most
	r, err := test.Assess()
	require.NoError(t, err)
	require.Equal(t, []int{3}, r.Missing)
	require.Equal(t, "cylinder 3: not read, which points to test again and proves nothing; read every cylinder before comparing them", r.Pointers[0].String())
	require.Equal(t, stripBar("3 bar"), r.Difference)
	require.Equal(t, tolerance.Within, r.Even)
	require.Equal(t, stripBar("3 bar"), r.Cylinders[1].Below)
	require.Equal(t, stripBar("0 bar"), r.Cylinders[0].Below)
	// 9 of 12 is 75 % exactly, and that isn't low.
	require.Equal(t, tolerance.Within, r.Cylinders[1].Of)
	require.Equal(t, 75, r.Cylinders[1].LeastPercent)
	require.Equal(t, 75, r.Cylinders[1].GreatestPercent)
	// 11.5 of 12 is 95.83 %.
	require.Equal(t, 95, r.Cylinders[2].LeastPercent)
	require.Equal(t, 96, r.Cylinders[2].GreatestPercent)

	// Coarse readings: what can't be told isn't.
	test = stripTest("12.0 9.0 11.9 11.5", "- 9.5 - -")
	test.Dry[1].Pressure = stripBar("9.0 ±0.5 bar")
	r, err = test.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.Cylinders[1].Of)
	require.Equal(t, "again 2", stripSigns(r.Pointers))
	test.Dry[1].Pressure, test.Wet[0].Pressure = stripBar("8.0 ±0.4 bar"), stripBar("8.8 ±0.2 bar")
	r, err = test.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.Cylinders[1].Raised)
	require.Contains(t, r.Pointers[0].Because, "wet test doesn't tell")

	test = stripTest("12.0 15.0 11.9 11.8", "")
	high, err := tolerance.ParseBandOf[units.Pressure]("11–13 bar")
	require.NoError(t, err)
	test.Limits = CompressionLimits{Pressure: tolerance.SpecOf[units.Pressure]{New: high}}
	r, err = test.Assess()
	require.NoError(t, err)
	require.Equal(t, "high 2", stripSigns(r.Pointers))

	// Neighbours of a V: 1 and 2 stand on different banks.
	test = stripTest("6.0 6.1 11.9 12.0", "")
	test.Neighbours = [][2]int{{1, 3}, {2, 4}}
	r, err = test.Assess()
	require.NoError(t, err)
	require.Equal(t, "again 1, again 2", stripSigns(r.Pointers))

	hundred := 100 * units.Kilopascal
	require.Equal(t, 75*units.Kilopascal, CompressionOfHighest(hundred, 900*units.Kilopascal, 1200*units.Kilopascal))
	require.Equal(t, 300*units.Kilopascal, CompressionBelow(1200*units.Kilopascal, 900*units.Kilopascal))
	require.Equal(t, 50*units.Kilopascal, WetRise(900*units.Kilopascal, 950*units.Kilopascal))
	// An open end leaves the percentage open.
	least, greatest := stripPercent(stripBar("[1 bar, ∞)"), stripBar("[2 bar, ∞)"))
	require.Equal(t, [2]int{0, 100}, [2]int{least, greatest})
}

func TestTestConditions(t *testing.T) {
	test := stripTest("12 12 12 12", "")
	test.Conditions = TestConditions{}
	r, err := test.Assess()
	require.NoError(t, err)
	require.Len(t, r.Conditions, 7)
	test.Conditions = TestConditions{Engine: Cold, Throttle: ThrottleClosed, BatteryV: 12, CrankRPM: 200, AllOut: true, FuelOff: true, SparkSafe: true}
	r, err = test.Assess()
	require.NoError(t, err)
	require.Equal(t, []string{"the engine was cold", "the throttle was closed: readings are low"}, r.Conditions)

	var w Warmth
	require.NoError(t, w.UnmarshalText([]byte("warm")))
	require.Equal(t, Warm, w)
	require.EqualError(t, w.UnmarshalText([]byte("tepid")), `cylinder: engine "tepid" is not one of "not recorded", "warm", "cold"`)
	var th Throttle
	require.NoError(t, th.UnmarshalText([]byte("none")))
	text, err := th.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "none", string(text))
	text, err = Warmth(99).MarshalText()
	require.NoError(t, err)
	require.Equal(t, "not recorded", string(text))
	text, err = GasketBetween.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "the head gasket between two cylinders", string(text))
	require.Equal(t, "cylinders 1, 2 and 4", stripList([]int{1, 2, 4}))
	require.Equal(t, "a, which points to nothing and proves nothing; b", Pointer{Because: "a", Next: "b"}.String())
}

func TestCompressionTest_refuses(t *testing.T) {
	for want, change := range map[string]func(*CompressionTest){
		"cylinders 1 is not from 2":          func(c *CompressionTest) { c.Cylinders = 1 },
		"dry readings 1":                     func(c *CompressionTest) { c.Dry = c.Dry[:1] },
		"dry reading of cylinder 2 -100 kPa": func(c *CompressionTest) { c.Dry[1].Pressure = stripBar("-1 bar") },
		"dry reading of cylinder 1 1200 kPa": func(c *CompressionTest) { c.Dry[1].Cylinder = 1 },
		"cylinder of a dry reading 5":        func(c *CompressionTest) { c.Dry[1].Cylinder = 5 },
		"cylinder of a wet reading 0":        func(c *CompressionTest) { c.Wet = []CylinderPressure{{0, stripBar("1 bar")}} },
		"wet reading of cylinder 2 900 kPa": func(c *CompressionTest) {
			c.Dry = append(c.Dry[:1], c.Dry[2:]...)
			c.Wet = []CylinderPressure{{2, stripBar("9 bar")}}
		},
		"neighbours 1 and 1":               func(c *CompressionTest) { c.Neighbours = [][2]int{{1, 1}} },
		"battery NaN V":                    func(c *CompressionTest) { c.Conditions.BatteryV = math.NaN() },
		"cranking speed +Inf":              func(c *CompressionTest) { c.Conditions.CrankRPM = math.Inf(1) },
		"conditions 9":                     func(c *CompressionTest) { c.Conditions.Engine = 9 },
		"least share of the highest 101 %": func(c *CompressionTest) { c.Limits.LowPercent = 101 },
		"wet rise that counts -1 %":        func(c *CompressionTest) { c.Limits.RisePercent = -1 },
		"within the range of a pressure":   func(c *CompressionTest) { c.Dry[0].Pressure = tolerance.Exactly(units.OutOfRange[units.Pressure]()) },
	} {
		c := stripTest("12 12 12 12", "")
		change(&c)
		_, err := c.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
	}
	c := stripTest("12 12 12 12", "")
	c.Limits.Pressure.New, _ = tolerance.ParseBandOf[units.Pressure]("min 5 bar")
	_, err := c.Assess()
	require.ErrorContains(t, err, "reaches past")
}

func FuzzCompressionTest(f *testing.F) {
	f.Add(int64(12), int64(8), int64(10), 75, 10, 4, 10.5)
	f.Add(int64(-1), int64(1<<40), int64(0), -5, 1<<30, 1<<30, math.NaN())
	f.Fuzz(func(t *testing.T, a, b, wet int64, low, rise, n int, volts float64) {
		p := func(v int64) tolerance.Interval[units.Pressure] {
			return tolerance.Exactly(units.Pressure(v) * 100 * units.Kilopascal)
		}
		c := CompressionTest{Cylinders: n, Dry: []CylinderPressure{{1, p(a)}, {2, p(b)}}, Wet: []CylinderPressure{{2, p(wet)}},
			Conditions: TestConditions{BatteryV: volts}, Limits: CompressionLimits{LowPercent: low, RisePercent: rise}}
		r, err := c.Assess()
		if err != nil {
			return
		}
		for _, one := range r.Cylinders {
			require.LessOrEqual(t, one.LeastPercent, one.GreatestPercent)
			require.GreaterOrEqual(t, one.LeastPercent, 0)
		}
		for _, x := range r.Pointers {
			require.NotEqual(t, NoSign, x.Sign)
			require.NotEmpty(t, x.Cylinders)
		}
	})
}

func BenchmarkCompressionTest(b *testing.B) {
	b.Run("lib=tenthou/op=assess", func(b *testing.B) {
		b.ReportAllocs()
		c := stripTest("12.0 8.0 12.1 11.9", "- 10.5 - -")
		for b.Loop() {
			if _, err := c.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
