package crank

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// journalFormula is every formula of one quantity of journals, undersizes,
// clearances and shells, of four inputs at most.
func journalFormula[N tolerance.Number[N]]() map[string]func(a, b, c, d N) N {
	return map[string]func(a, b, c, d N) N{
		"JournalOutOfRound":    func(a, b, c, d N) N { return JournalOutOfRound(a, b, c, d) },
		"JournalTaper":         func(a, b, c, d N) N { return JournalTaper(a, b, c) },
		"JournalTaperSigned":   func(a, b, _, _ N) N { return JournalTaperSigned(a, b) },
		"JournalTaperPer":      func(a, b, c, _ N) N { return JournalTaperPer(c, a, b) },
		"JournalTaperOver":     func(a, b, c, _ N) N { return JournalTaperOver(c, a, b) },
		"JournalWear":          func(a, b, _, _ N) N { return JournalWear(a, b) },
		"JournalWorn":          func(a, _, c, _ N) N { return JournalWorn(a, c) },
		"JournalWearOpposite":  func(a, b, c, _ N) N { return JournalWearOpposite(a, b, c) },
		"StrokeByHeights":      func(a, b, _, _ N) N { return StrokeByHeights(a, b) },
		"HeightForStroke":      func(a, b, _, _ N) N { return HeightForStroke(a, b) },
		"CleanSize":            func(a, _, c, d N) N { return CleanSize(a, c, d) },
		"WearCleaned":          func(a, b, c, _ N) N { return WearCleaned(a, b, c) },
		"CleanSizeMoved":       CleanSizeMoved[N],
		"CentreShift":          func(_, _, c, d N) N { return CentreShift(c, d) },
		"StrokeAfterShift":     func(a, _, c, _ N) N { return StrokeAfterShift(a, c) },
		"ShiftOfStroke":        func(a, b, _, _ N) N { return ShiftOfStroke(a, b) },
		"CleanSizeBent":        func(a, _, c, d N) N { return CleanSizeBent(a, c, d) },
		"CleanSizeBentMost":    CleanSizeBentMost[N],
		"RunOutCleaned":        func(a, b, c, _ N) N { return RunOutCleaned(a, b, c) },
		"CleanSizeByDiameters": func(a, b, c, _ N) N { lo, _ := CleanSizeByDiameters(a, b, c); return lo },
		"CaseLeft":             func(a, b, c, _ N) N { return CaseLeft(c, a, b) },
		"SizeForCase":          func(a, _, c, d N) N { return SizeForCase(c, d, a) },
		"UndersizeOf":          func(a, _, c, _ N) N { return UndersizeOf(a, c) },
		"UndersizeWall":        func(a, _, c, _ N) N { return UndersizeWall(a, c) },
		"UndersizeByWall":      func(a, b, _, _ N) N { return UndersizeByWall(a, b) },
		"OilClearance":         func(a, b, c, _ N) N { return OilClearance(a, c, b) },
		"HousingForClearance":  func(a, b, c, _ N) N { return HousingForClearance(c, b, a) },
		"WallForClearance":     func(a, b, c, _ N) N { return WallForClearance(a, c, b) },
		"JournalForClearance":  func(a, b, c, _ N) N { return JournalForClearance(a, c, b) },
		"OilClearanceOfHalves": OilClearanceOfHalves[N],
		"OilClearanceThumb":    func(a, _, _, _ N) N { return OilClearanceThumb(a) },
		"LeastOilClearance":    func(a, b, c, d N) N { x, _ := LeastOilClearance([]N{a, b}, []N{c, d}); return x },
		"GreatestOilClearance": func(a, b, c, d N) N { x, _ := GreatestOilClearance([]N{a, b}, []N{c, d}); return x },
		"ClearanceByHalf":      func(_, _, c, d N) N { return ClearanceByHalf(c, d) },
		"ShellNip":             func(a, b, _, _ N) N { return ShellNip(a, b) },
		"HalfPeriphery":        func(a, _, c, _ N) N { return HalfPeriphery(c, a) },
		"NipGap":               func(_, _, c, d N) N { return NipGap(c, d) },
		"NipOfGap":             func(_, _, c, d N) N { return NipOfGap(c, d) },
		"NipInterference":      func(a, _, c, _ N) N { return NipInterference(c, a) },
		"NipGapOf":             func(_, _, c, _ N) N { return NipGapOf(c) },
		"FreeSpread":           func(a, b, _, _ N) N { return FreeSpread(a, b) },
		"WallByBall":           func(a, b, _, _ N) N { return WallByBall(a, b) },
		"WallVariation":        func(a, b, c, _ N) N { return WallVariation(a, b, c) },
	}
}

// Every formula in four readings: a bracket that holds every case, an estimate with
// the same value, and a working whose result is the same number; and none takes
// memory on lengths.
func TestJournalFormulasInEveryReading(t *testing.T) {
	exact, brackets := journalFormula[units.Length](), journalFormula[tolerance.Bracket]()
	estimates, terms := journalFormula[uncertainty.Estimate](), journalFormula[working.Term]()
	rng := rand.New(rand.NewPCG(40, 1))
	for name, f := range exact {
		for range 50 {
			var x [4]units.Length
			var b [4]tolerance.Bracket
			var e [4]uncertainty.Estimate
			var w [4]working.Term
			for i, base := range []int64{60_000_000_000, 59_900_000_000, 0, 0} {
				lo, width := base+rng.Int64N(2e8), rng.Int64N(5e6)
				x[i] = units.Length(lo + rng.Int64N(width+1))
				b[i] = journalSpan(units.Length(lo), units.Length(lo+width))
				e[i] = uncertainty.Exactly(x[i])
				w[i] = working.Given("input", string(rune('a'+i)), x[i])
			}
			want := f(x[0], x[1], x[2], x[3])
			require.True(t, brackets[name](b[0], b[1], b[2], b[3]).Contains(want), name)
			require.Equal(t, want, estimates[name](e[0], e[1], e[2], e[3]).Value(), name)
			solved, err := working.Solve(terms[name](w[0], w[1], w[2], w[3]).Named("result", "r"), units.Style[units.Length]{Unit: units.InMillimetres, Places: units.AllPlaces})
			require.NoError(t, err, name)
			require.Contains(t, solved.Text(), strings.ReplaceAll(want.String(), "-", "−"), name)
		}
		switch name {
		case "LeastOilClearance", "GreatestOilClearance", "JournalOutOfRound", "JournalTaper", "WallVariation": // whose lists are made here
		default:
			a, c := 60*units.Millimetre, units.Millimetre
			require.Zero(t, testing.AllocsPerRun(100, func() { journalLength = f(a, a, c, c) }), name)
		}
	}
}

// Uncertainty goes through: the wear of one side counts twice in a clean size.
func TestCleanSizeUncertainty(t *testing.T) {
	wear, err := uncertainty.Rectangular("dial", journalMM("0.08"), journalMM("0.01"))
	require.NoError(t, err)
	size := CleanSize(uncertainty.Exactly(journalMM("50")), wear, uncertainty.Exactly(journalMM("0.01")))
	require.InDelta(t, 2*wear.StandardUncertainty().Float(units.InMillimetres), size.StandardUncertainty().Float(units.InMillimetres), 1e-9)
}

// The index crosses quantities: its working, and its uncertainty, which is that of
// the height over the throw for a pin near level.
func TestIndexErrorInOtherReadings(t *testing.T) {
	g := working.GivenReal
	s, err := working.SolveReal(IndexError(g("first height", "h₁", 0, "mm"), g("second height", "h₂", 0.43, "mm"), g("throw", "r", 43, "mm")).Named("index", "φ", "rad"), working.RealStyle{Places: 6})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.010000 rad") // asin 0.01 = 0.01000017
	h, err := uncertainty.NewDual("height", 0.43, "mm", uncertainty.RectangularShape, 0.01)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	index := IndexError(x(0), h, x(43))
	require.InDelta(t, h.StandardUncertainty()/43, index.StandardUncertainty(), 1e-7)
	back := IndexHeight(index, x(43))
	require.InDelta(t, 0.43, back.Value(), 1e-12)
	moved := IndexAfterShift(h, x(43))
	require.InDelta(t, h.StandardUncertainty()/43, moved.StandardUncertainty(), 1e-7)
	s, err = working.SolveReal(IndexAfterShift(g("shift", "s", 0.43, "mm"), g("throw", "r", 43, "mm")).Named("index", "φ", "rad"), working.RealStyle{Places: 6})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.010000 rad")
}

// The words of each kind read back, and nothing else does.
func TestJournalWordsReadBack(t *testing.T) {
	type word interface {
		String() string
		MarshalText() ([]byte, error)
	}
	check := func(n int, make func(i int) word, read func(text []byte) (word, error)) {
		for i := range n {
			text, err := make(i).MarshalText()
			require.NoError(t, err)
			back, err := read(text)
			require.NoError(t, err)
			require.Equal(t, make(i), back)
		}
		require.Equal(t, make(0).String(), make(200).String(), "what has no name is the zero value")
		_, err := read([]byte("something else that is much longer than sixty-four bytes, and so is cut ä"))
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, "one of ")
	}
	check(2, func(i int) word { return JournalKind(i) }, func(b []byte) (word, error) { var v JournalKind; err := v.UnmarshalText(b); return v, err })
	check(7, func(i int) word { return JournalShape(i) }, func(b []byte) (word, error) { var v JournalShape; err := v.UnmarshalText(b); return v, err })
	check(10, func(i int) word { return JournalNoteKind(i) }, func(b []byte) (word, error) { var v JournalNoteKind; err := v.UnmarshalText(b); return v, err })
	check(9, func(i int) word { return JournalMeasure(i) }, func(b []byte) (word, error) { var v JournalMeasure; err := v.UnmarshalText(b); return v, err })
	check(4, func(i int) word { return JournalTaperRule(i) }, func(b []byte) (word, error) { var v JournalTaperRule; err := v.UnmarshalText(b); return v, err })
	check(2, func(i int) word { return JournalCentring(i) }, func(b []byte) (word, error) { var v JournalCentring; err := v.UnmarshalText(b); return v, err })
	check(5, func(i int) word { return JournalSurface(i) }, func(b []byte) (word, error) { var v JournalSurface; err := v.UnmarshalText(b); return v, err })
	check(4, func(i int) word { return UndersizeOutcome(i) }, func(b []byte) (word, error) { var v UndersizeOutcome; err := v.UnmarshalText(b); return v, err })
	check(4, func(i int) word { return OilMethod(i) }, func(b []byte) (word, error) { var v OilMethod; err := v.UnmarshalText(b); return v, err })
}
