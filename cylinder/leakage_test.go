package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func stripLeak(cylinder, least, greatest int, heard ...Heard) CylinderLeakage {
	c, err := LeakagePercent(cylinder, least, greatest, heard...)
	if err != nil {
		panic(err)
	}
	return c
}

func stripLeaks() LeakageTest {
	return LeakageTest{Cylinders: 4, Engine: Warm, Most: 20, Difference: 15,
		Readings: []CylinderLeakage{stripLeak(1, 8, 10), stripLeak(2, 20, 20), stripLeak(3, 45, 50, AtExhaust), stripLeak(4, 19, 21)}}
}

// What is heard where points where common practice says.
func TestLeakageTest_heard(t *testing.T) {
	for heard, sign := range map[Heard]Sign{AtInlet: InletValve, AtExhaust: ExhaustValve, AtOilFiller: RingsOrBore, InCoolant: GasketOrCrack,
		AtNeighbour: GasketBetween, AtHeadJoint: GasketOutward, AllAtOnce: TimingOrBothOpen} {
		l := stripLeaks()
		l.Readings[2].Heard = []Heard{heard}
		l.Readings[2].Neighbour = 4
		r, err := l.Assess()
		require.NoError(t, err)
		require.Len(t, r.Pointers, 1)
		require.Equal(t, sign, r.Pointers[0].Sign)
		want := []int{3}
		if heard == AtNeighbour {
			want = []int{3, 4}
		}
		require.Equal(t, want, r.Pointers[0].Cylinders)
	}
}

func TestLeakageTest_assess(t *testing.T) {
	r, err := stripLeaks().Assess()
	require.NoError(t, err)
	for i, want := range []tolerance.Verdict{tolerance.Within, tolerance.Within, tolerance.Above, tolerance.Undecided} {
		require.Equal(t, want, r.Cylinders[i].Verdict, "cylinder %d", i+1)
	}
	require.Equal(t, 20, r.Cylinders[1].LeastPercent)
	require.Equal(t, 20, r.Cylinders[1].GreatestPercent)
	require.Equal(t, stripBar("[0.45 bar, 0.5 bar]"), r.Cylinders[2].Drop)
	// Between 45 − 10 and 50 − 8.
	require.Equal(t, [2]int{35, 42}, [2]int{r.LeastDifference, r.GreatestDifference})
	require.Equal(t, tolerance.Above, r.Even)
	require.Empty(t, r.Missing)

	l := stripLeaks()
	l.Difference, l.Engine = 40, Cold
	l.Readings[2].Heard = nil
	r, err = l.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.Even)
	require.Equal(t, []string{"the engine was cold: leakage reads high"}, r.Conditions)
	require.Equal(t, TestAgain, r.Pointers[0].Sign)
	l.Difference, l.Engine, l.Readings = 60, WarmthNotRecorded, l.Readings[:3]
	r, err = l.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Within, r.Even)
	require.Equal(t, []int{4}, r.Missing)
	require.Len(t, r.Conditions, 1)
	l.Difference, l.Most = 0, 0
	r, err = l.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.Even)

	// 80 psi supplied and 72 held is 10 %.
	psi := units.MustParsePressure("80 psi")
	require.Equal(t, 10*units.Kilopascal, LeakageShare(100*units.Kilopascal, psi, units.MustParsePressure("72 psi")))
	require.Equal(t, units.MustParsePressure("8 psi"), LeakageDrop(psi, units.MustParsePressure("72 psi")))
}

func TestLeakageTest_refuses(t *testing.T) {
	for want, change := range map[string]func(*LeakageTest){
		"cylinders 1":                     func(l *LeakageTest) { l.Cylinders = 1 },
		"leakage limits 101":              func(l *LeakageTest) { l.Most = 101 },
		"engine 9":                        func(l *LeakageTest) { l.Engine = 9 },
		"leakage readings 1":              func(l *LeakageTest) { l.Readings = l.Readings[:1] },
		"held reading of cylinder 1":      func(l *LeakageTest) { l.Readings[1].Cylinder = 1 },
		"supply of cylinder 1 (−∞":        func(l *LeakageTest) { l.Readings[0].Supply = tolerance.Interval[units.Pressure]{} },
		"supply of cylinder 1 50 kPa":     func(l *LeakageTest) { l.Readings[0].Supply = stripBar("0.5 bar") },
		"supply of cylinder 1 0 kPa":      func(l *LeakageTest) { l.Readings[0].Supply = stripBar("0 bar") },
		"heard at 99":                     func(l *LeakageTest) { l.Readings[0].Heard = []Heard{99} },
		"neighbour 1 is not another cyli": func(l *LeakageTest) { l.Readings[0].Neighbour = 1 },
	} {
		l := stripLeaks()
		change(&l)
		_, err := l.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
	}
	_, err := LeakagePercent(1, 20, 10)
	require.EqualError(t, err, "cylinder: leakage of cylinder 1 20 to 10 % is not from 0 to 100 %, the least first")
	var h Heard
	require.NoError(t, h.UnmarshalText([]byte("oil filler")))
	text, err := h.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "oil filler", string(text))
	require.Error(t, h.UnmarshalText(nil))
	require.Error(t, h.UnmarshalText([]byte("roof")))
}

func FuzzLeakageTest(f *testing.F) {
	f.Add(4, 10, 20, 30, 40, 20, 15, uint8(3), 2)
	f.Add(-1, 200, -3, 0, 0, -1, 1<<30, uint8(255), -9)
	f.Fuzz(func(t *testing.T, n, a, b, c, d, most, difference int, heard uint8, neighbour int) {
		one, err := LeakagePercent(1, a, b, Heard(heard))
		if err != nil {
			return
		}
		two, err := LeakagePercent(2, c, d)
		if err != nil {
			return
		}
		one.Neighbour = neighbour
		r, err := LeakageTest{Cylinders: n, Readings: []CylinderLeakage{one, two}, Most: most, Difference: difference}.Assess()
		if err != nil {
			return
		}
		require.Equal(t, a, r.Cylinders[0].LeastPercent)
		require.Equal(t, b, r.Cylinders[0].GreatestPercent)
		require.LessOrEqual(t, r.LeastDifference, r.GreatestDifference)
	})
}

func BenchmarkLeakageTest(b *testing.B) {
	b.Run("lib=tenthou/op=assess", func(b *testing.B) {
		b.ReportAllocs()
		l := stripLeaks()
		for b.Loop() {
			if _, err := l.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
