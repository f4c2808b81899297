package limits

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/units"
)

// um reads a column in micrometres, exactly.
func um(t testing.TB, c vectors.Case, col string) units.Length {
	t.Helper()
	l, err := units.ParseIn(c.Text(col), units.InMicrometres)
	require.NoError(t, err, c.Where())
	return l
}

// step reads the columns over and upto, in millimetres.
func step(c vectors.Case) (over, upTo units.Length) {
	return units.Length(c.Int64("over")) * units.Millimetre, units.Length(c.Int64("upto")) * units.Millimetre
}

var gradeColumns = []string{"it01", "it0", "it1", "it2", "it3", "it4", "it5", "it6", "it7", "it8", "it9", "it10",
	"it11", "it12", "it13", "it14", "it15", "it16", "it17", "it18"}

// The published tables, the source of tables.go and two others, cell by cell.
func TestGradesArePublished(t *testing.T) {
	cells := 0
	for _, name := range []string{"published/iso286_grades.txt", "published/iso286_other_grades.txt"} {
		for c := range vectors.Load(t, name).All(t) {
			over, upTo := step(c)
			for i, col := range gradeColumns {
				if !c.Has(col) {
					continue
				}
				g, err := ParseGrade(strings.ToUpper(col))
				require.NoError(t, err)
				require.Equal(t, IT01+Grade(i), g)
				least := max(over, units.Millimetre) + units.Picometre
				for _, nominal := range []units.Length{least, (least + upTo) / 2, upTo} {
					got, err := g.Tolerance(nominal)
					require.NoError(t, err)
					require.Equal(t, um(t, c, col), got, "%s: %v at %v", c.Where(), g, nominal)
				}
				cells++
			}
		}
	}
	// 13 steps: 20 grades, and again 18 and 18.
	require.Equal(t, 13*(20+18+18), cells)
}

// IT12 to IT18 are ten times the grade five before: a rule of ISO 286-1 without
// an exception up to 500 mm.
func TestCoarseGradesAreTenfold(t *testing.T) {
	for s := range stepEnds {
		for g := IT12; g <= IT18; g++ {
			require.Equal(t, 10*(g-5).tolerance(s), g.tolerance(s), "%v at %v", g, stepEnds[s])
		}
	}
}

func TestDeltasArePublished(t *testing.T) {
	for c := range vectors.Load(t, "published/iso286_delta.txt").All(t) {
		_, upTo := step(c)
		s, ok := stepOf(upTo)
		require.True(t, ok)
		for i, d := range deltas[mainSteps[s]] {
			require.Equal(t, um(t, c, "it"+strconv.Itoa(i+3)), length(d), c.Where())
			// Delta is by definition the grade less the one before, over 3 mm.
			if g := IT3 + Grade(i); upTo > 3*units.Millimetre {
				require.Equal(t, g.tolerance(s)-(g-1).tolerance(s), d, "%v at %v", g, upTo)
			}
		}
	}
}

// deviationOf is the deviation that the standard tabulates for a class at a
// size, before delta.
func deviationOf(t testing.TB, c Class, nominal units.Length) units.Length {
	l, err := c.At(nominal)
	require.NoError(t, err)
	deviation := l.LowerDeviation()
	if above := c.letter >= letterJ; above == (c.feature == Hole) {
		deviation = l.UpperDeviation()
	}
	return deviation
}

// The columns of the tables of deviations, each with a class that shows it bare:
// of holes from K on a grade that takes no delta, or with delta taken away.
func columnClass(col string, f Feature) (c Class, delta bool) {
	letter, grade, _ := strings.Cut(col, "_")
	g := IT9
	switch {
	case strings.ContainsAny(letter, "5678"): // j5, j7, …
		g = gradeOf(letter[1:])
		letter = letter[:1]
	case grade == "other":
		g = IT3
	case letter == "k" && f == Shaft:
		g = IT4
	case f == Hole && grade == "" && (letter == "k" || letter == "m" || letter == "n"):
		g, delta = IT8, true
	}
	if f == Hole {
		letter = strings.ToUpper(letter)
	}
	return must(NewClass(letter, g)), delta
}

// compareDeviations compares every cell of a table of deviations, and gives how
// many there were and the cells that differ.
func compareDeviations(t *testing.T, name string, f Feature) (cells int, differ []string) {
	file := vectors.Load(t, name)
	for c := range file.All(t) {
		over, upTo := step(c)
		s, _ := stepOf(upTo)
		for _, col := range file.Columns {
			if col == "source" || col == "over" || col == "upto" {
				continue
			}
			class, delta := columnClass(col, f)
			what := c.Where() + ": " + class.String()
			switch got, err := class.At(upTo); {
			case !c.Has(col) && strings.Contains(name, "other"): // the page was not at hand
				continue
			case !c.Has(col) || c.Is(col, "none"):
				require.ErrorIs(t, err, ErrNotTabulated, what)
			default:
				require.NoError(t, err, what)
				require.Equal(t, upTo, got.Nominal())
				least := max(over, units.Millimetre) + units.Picometre
				for _, nominal := range []units.Length{least, (least + upTo) / 2, upTo} {
					d := deviationOf(t, class, nominal)
					if delta {
						d -= length(deltas[mainSteps[s]][class.grade-IT3])
					}
					if want := um(t, c, col); d != want {
						differ = append(differ, class.Deviation()+" to "+upTo.String()+": "+want.Text(units.InMicrometres, 0))
						break
					}
				}
			}
			cells++
		}
	}
	return cells, differ
}

func TestDeviationsArePublished(t *testing.T) {
	cells, differ := compareDeviations(t, "published/iso286_shafts.txt", Shaft)
	require.Empty(t, differ)
	require.Equal(t, 25*30, cells)

	cells, differ = compareDeviations(t, "published/iso286_holes.txt", Hole)
	require.Empty(t, differ)
	require.Equal(t, 25*32, cells)
}

// Two books hold the same figures, but for two misprints.
func TestDeviationsAgreeWithBooks(t *testing.T) {
	cells, differ := compareDeviations(t, "published/iso286_other_shafts.txt", Shaft)
	require.Empty(t, differ)
	require.Equal(t, 368, cells)

	cells, differ = compareDeviations(t, "published/iso286_other_holes.txt", Hole)
	require.Equal(t, []string{"U to 225 mm: -256 µm", "X to 400 mm: -650 µm"}, differ)
	require.Equal(t, 626, cells)
}

// A hole's deviation is that of the shaft of the same letter with the other
// sign, J and N above IT8 apart: a rule of ISO 286-1.
func TestHolesMirrorShafts(t *testing.T) {
	for s, upTo := range stepEnds {
		for l := range uint8(letters) {
			if l == letterJ || l == letterJS {
				continue
			}
			shaft, hole := shaftDeviations[s][l], holeDeviations[s][l]
			if shaft != none || hole != none {
				require.Equal(t, -shaft, hole, "%s to %v", holeLetters[l], upTo)
			}
		}
		// The rest: k but for k4 to k7 is 0, as K9 is up to 3 mm; N9 is 0 over 3 mm.
		want := []int16{none, 0}
		if s == 0 {
			want = []int16{0, -shaftDeviations[s][letterN]}
		}
		require.Equal(t, want, coarseHoles[s][:])
	}
}
