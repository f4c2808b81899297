package crank

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// stripDemo is an invented table.
var stripDemo = StripTable{
	{journalMM("1.2"), journalMM("0.076")}, {journalMM("1.5"), journalMM("0.051")}, {journalMM("2.0"), journalMM("0.038")}, {journalMM("3.0"), journalMM("0.025")},
}

// By hand from the table: on a mark, between two, beyond the ends, and with a width
// that is itself a bracket.
func TestStripTableClearance(t *testing.T) {
	for width, want := range map[string]string{
		"1.5 mm": "0.051 mm", "1.8 mm": "(0.038 mm, 0.051 mm)", "3.0 mm": "0.025 mm", "3.5 mm": "[0 mm, 0.025 mm)",
		"1.0 mm": "(0.076 mm, ∞)", "1.2 mm": "0.076 mm", "[1.4 mm, 1.6 mm]": "(0.038 mm, 0.076 mm)",
		"[1.5 mm, 2.0 mm]": "[0.038 mm, 0.051 mm]", "[2.9 mm, 3.1 mm]": "[0 mm, 0.038 mm)",
	} {
		got, err := stripDemo.Clearance(journalAt(width))
		require.NoError(t, err)
		require.Equal(t, journalAt(want), got, width)
	}
	for clearance, want := range map[string]string{
		"0.051 mm": "1.5 mm", "0.045 mm": "(1.5 mm, 2 mm)", "0.01 mm": "(3 mm, ∞)", "0.1 mm": "(0 mm, 1.2 mm)", "[0.03 mm, 0.045 mm]": "(1.5 mm, 3 mm)",
	} {
		got, err := stripDemo.Width(journalAt(clearance))
		require.NoError(t, err)
		require.Equal(t, journalAt(want), got, clearance)
	}
}

// Wider is tighter, whatever the table, and a width at a clearance stands for that
// clearance again.
func TestStripTableIsMonotone(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for range 300 {
		table := StripTable{}
		w, c := units.Length(1e8), units.Length(2e8)
		for range 2 + rng.IntN(8) {
			w += units.Length(1 + rng.Int64N(1e9))
			c -= units.Length(1 + rng.Int64N(1e7))
			table = append(table, StripMark{w, c})
		}
		a, b := units.Length(1+rng.Int64N(6e9)), units.Length(1+rng.Int64N(6e9))
		if a > b {
			a, b = b, a
		}
		narrow, err := table.Clearance(tolerance.Exactly(a))
		require.NoError(t, err)
		wide, err := table.Clearance(tolerance.Exactly(b))
		require.NoError(t, err)
		lo, _ := narrow.Lower()
		lower, _ := wide.Lower()
		require.GreaterOrEqual(t, lo, lower)
		if hi, end := wide.Upper(); end == tolerance.Absent {
			_, end := narrow.Upper()
			require.Equal(t, tolerance.Absent, end)
		} else if top, end := narrow.Upper(); end != tolerance.Absent {
			require.GreaterOrEqual(t, top, hi)
		}
		m := table[rng.IntN(len(table))]
		width, err := table.Width(tolerance.Exactly(m.Clearance))
		require.NoError(t, err)
		require.Equal(t, tolerance.Exactly(m.Width), width)
		back, err := table.Clearance(width)
		require.NoError(t, err)
		require.Equal(t, tolerance.Exactly(m.Clearance), back)
	}
}

func TestStripRead(t *testing.T) {
	limits, taper := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.060 mm")}, tolerance.Spec{Wear: tolerance.MustParseBand("max 0.025 mm")}
	s := CrushedStrip{Where: "rod 2", Front: journalAt("1.5 mm"), Middle: journalAt("2.0 mm"), Rear: journalAt("1.6 mm")}
	r, err := stripDemo.Read(&s, limits, taper)
	require.NoError(t, err)
	require.Equal(t, journalAt("0.051 mm"), r.Front)
	require.Equal(t, journalAt("0.038 mm"), r.Middle)
	require.Equal(t, journalAt("(0.038 mm, 0.051 mm)"), r.Rear)
	require.Equal(t, journalAt("0.038 mm"), r.Least, "the widest place")
	require.Equal(t, journalAt("0.013 mm"), r.Taper, "the rear lies between the two")
	require.Equal(t, JournalBarrel, r.Shape)
	require.Equal(t, tolerance.Usable, r.Finding.Standing)
	require.Equal(t, tolerance.Usable, r.TaperFinding.Standing)
	require.False(t, r.Spoiled)

	for _, spoiled := range []CrushedStrip{{Turned: true}, {Oiled: true}} {
		spoiled.Front, spoiled.Rear = s.Front, s.Rear
		r, err = stripDemo.Read(&spoiled, limits, taper)
		require.NoError(t, err)
		require.True(t, r.Spoiled)
		require.Equal(t, tolerance.CantTell, r.Finding.Standing)
		require.Equal(t, "wipe journal, shell and its back dry, lay a new strip, and don't turn the shaft", r.TaperFinding.Settle)
	}
	shape := func(front, middle, rear string) JournalShape {
		s := CrushedStrip{Front: journalAt(front), Rear: journalAt(rear)}
		if middle != "" {
			s.Middle = journalAt(middle)
		}
		r, err := stripDemo.Read(&s, limits, taper)
		require.NoError(t, err)
		return r.Shape
	}
	require.Equal(t, JournalStraight, shape("1.5 mm", "", "1.5 mm"))
	require.Equal(t, JournalStraight, shape("1.5 mm", "1.5 mm", "1.5 mm"))
	require.Equal(t, JournalHourglass, shape("2.0 mm", "1.5 mm", "1.9 mm"))
	require.Equal(t, JournalSmallerFront, shape("1.5 mm", "1.6 mm", "1.7 mm"))
	require.Equal(t, JournalSmallerRear, shape("1.7 mm", "", "1.5 mm"))
	require.Equal(t, JournalShapeNotTold, shape("1.5 mm", "1.6 mm", "[1.5 mm, 1.7 mm]"))
}

func TestStripRefuses(t *testing.T) {
	mm := journalMM
	for name, table := range map[string]StripTable{
		"one mark":  {{mm("1"), mm("0.05")}},
		"none":      nil,
		"width":     {{0, mm("0.05")}, {mm("1"), mm("0.04")}},
		"clearance": {{mm("1"), mm("0.05")}, {mm("2"), 0}},
		"order":     {{mm("2"), mm("0.05")}, {mm("1"), mm("0.04")}},
		"wider":     {{mm("1"), mm("0.05")}, {mm("2"), mm("0.05")}},
	} {
		require.ErrorIs(t, table.Validate(), ErrInput, name)
		_, err := table.Clearance(journalAt("1 mm"))
		require.ErrorIs(t, err, ErrInput, name)
		_, err = table.Width(journalAt("1 mm"))
		require.ErrorIs(t, err, ErrInput, name)
		_, err = table.Read(&CrushedStrip{}, tolerance.Spec{}, tolerance.Spec{})
		require.ErrorIs(t, err, ErrInput, name)
	}
	_, err := stripDemo.Clearance(journalAt("-1 mm"))
	require.ErrorIs(t, err, ErrInput)
	_, err = stripDemo.Width(journalAt("-1 mm"))
	require.ErrorIs(t, err, ErrInput)
	_, err = stripDemo.Read(&CrushedStrip{Where: "rod 2", Front: journalAt("1.5 mm")}, tolerance.Spec{}, tolerance.Spec{})
	require.ErrorContains(t, err, "rod 2, rear width")
	bad := tolerance.Spec{New: tolerance.MustParseBand("1–3 mm"), Wear: tolerance.MustParseBand("max 2 mm")}
	s := CrushedStrip{Front: journalAt("1.5 mm"), Rear: journalAt("1.5 mm")}
	_, err = stripDemo.Read(&s, bad, tolerance.Spec{})
	require.Error(t, err)
	_, err = stripDemo.Read(&s, tolerance.Spec{}, bad)
	require.Error(t, err)
}

func FuzzStripTable(f *testing.F) {
	f.Add(int64(1_200_000_000), int64(300_000_000), int64(76_000_000), int64(25_000_000), int64(1_300_000_000), int64(10))
	f.Add(int64(1), int64(0), int64(-1), int64(5), int64(0), int64(-1))
	f.Fuzz(func(t *testing.T, w, dw, c, dc, width, e int64) {
		table := StripTable{{units.Length(w), units.Length(c)}, {units.Length(w).Add(units.Length(dw)), units.Length(c).Sub(units.Length(dc))}}
		x := journalSpan(units.Length(width), units.Length(width).Add(units.Length(e)))
		s := CrushedStrip{Front: x, Middle: x, Rear: x}
		r, err := table.Read(&s, tolerance.Spec{}, tolerance.Spec{})
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		lo, end := r.Least.Lower()
		require.NotEqual(t, tolerance.Absent, end)
		require.GreaterOrEqual(t, lo, units.Length(0))
		require.Equal(t, JournalStraight, r.Shape)
	})
}
