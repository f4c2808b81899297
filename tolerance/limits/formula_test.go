package limits

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/units"
)

// published is our figure for a cell of the reference files, in micrometres.
func published(t testing.TB, c vectors.Case) float64 {
	t.Helper()
	_, upTo := step(c)
	if cell := c.Text("cell"); strings.HasPrefix(cell, "it") {
		g, err := ParseGrade(strings.ToUpper(cell))
		require.NoError(t, err)
		width, err := g.Tolerance(upTo)
		require.NoError(t, err)
		return width.Float(units.InMicrometres)
	}
	class, _ := columnClass(c.Text("cell"), Shaft)
	return deviationOf(t, class, upTo).Float(units.InMicrometres)
}

// leaves reports whether a published figure leaves its formula. IT1 to IT4 are
// printed to 0.1, 0.5 or 1 µm; IT5 to IT11 are the formula rounded to 1, 5 or
// 10 µm (from memory); for the deviations the standard rounds to various
// numbers, so that 1 µm or 1 % is taken for agreement.
func leaves(cell string, figure, formula float64) bool {
	off := math.Abs(figure - formula)
	switch {
	case !strings.HasPrefix(cell, "it"):
		return off > max(1, math.Abs(formula)/100)
	case strings.Contains(" it01 it0 it1 it2 it3 it4 ", " "+cell+" "):
		unit := 1.0
		if figure < 1 {
			unit = 0.1
		} else if figure < 5 {
			unit = 0.5
		}
		return off > unit/2
	}
	unit := 10.0
	if formula <= 100 {
		unit = 1
	} else if formula <= 200 {
		unit = 5
	}
	return figure != unit*math.Floor(formula/unit+0.5)
}

// The standard's own formulas give every figure but those that are listed, and
// not those.
func TestFormulas(t *testing.T) {
	listed := map[string]bool{}
	for c := range vectors.Load(t, "reference/iso286_off_formula.txt").All(t) {
		c.Near("published", published(t, c))
		require.True(t, leaves(c.Text("cell"), published(t, c), c.Float("formula")), c.Where())
		listed[c.Text("cell")+" to "+c.Text("upto")] = true
	}
	cells := 0
	for c := range vectors.Load(t, "reference/iso286_formula.txt").All(t) {
		c.Ignore("over", "d")
		where := c.Text("cell") + " to " + c.Text("upto")
		require.Equal(t, listed[where], leaves(c.Text("cell"), published(t, c), c.Float("value")), "%s: %s", c.Where(), where)
		cells++
	}
	require.Len(t, listed, 133)
	require.Equal(t, 679, cells)
}

// p is IT7 and 0 to 5 µm, and s up to 50 mm IT8 and 1 to 4: Machine Drawing,
// Table 15.4. The first step leaves the rule, as it does most formulas.
func TestRangesOfPAndS(t *testing.T) {
	for s, upTo := range stepEnds {
		if s == 0 {
			continue
		}
		p := int32(shaftDeviations[s][16])*1000 - IT7.tolerance(s)
		require.True(t, p >= 0 && p <= 5000, "p to %v: %d", upTo, p)
		if upTo <= 50*units.Millimetre {
			v := int32(shaftDeviations[s][18])*1000 - IT8.tolerance(s)
			require.True(t, v >= 1000 && v <= 4000, "s to %v: %d", upTo, v)
		}
	}
	require.Equal(t, []string{"p", "s"}, []string{shaftLetters[16], shaftLetters[18]})
}

// Delta's purpose: a hole of the shaft basis fits as the same letters do on the
// hole basis, P7/h6 as H7/p6. ISO 286-1's special rule holds for K, M and N to
// IT8 and for P to ZC to IT7, over 3 mm.
func TestShaftBasisFitsAsHoleBasis(t *testing.T) {
	same, differ := 0, map[string]bool{}
	for s := 1; s < len(stepEnds); s++ {
		for l := uint8(letterK); l < letters; l++ {
			for g := IT3; g <= IT8; g++ {
				if g == IT8 && l > letterN {
					continue
				}
				onHole, err := Pair{Class{Hole, letterH, g}, Class{Shaft, l, g - 1}}.At(stepEnds[s])
				onShaft, err2 := Pair{Class{Hole, l, g}, Class{Shaft, letterH, g - 1}}.At(stepEnds[s])
				require.Equal(t, err == nil, err2 == nil)
				if err != nil {
					require.ErrorIs(t, err, ErrNotTabulated)
					continue
				}
				if onHole.MaxClearance() == onShaft.MaxClearance() && onHole.MinClearance() == onShaft.MinClearance() {
					same++
					continue
				}
				differ[fmt.Sprintf("%v %v", onShaft, onHole.Pair())] = true
			}
		}
	}
	// M6 is the exception the standard names; k3 and k2 stand on the nominal size
	// where K does not.
	for where := range differ {
		require.True(t, strings.Contains(where, " K3/h2 H3/k2") || strings.Contains(where, " K4/h3 H4/k3") ||
			where == "280 M6/h5 H6/m5" || where == "315 M6/h5 H6/m5", where)
	}
	require.Len(t, differ, 24+24+2)
	require.Equal(t, 24*3*6+24*12*5-len(differ)-untabulated(t), same)
}

// untabulated counts the steps over 3 mm without T, V or Y, for five grades.
func untabulated(t *testing.T) (n int) {
	for c := range vectors.Load(t, "published/iso286_shafts.txt").All(t) {
		over, _ := step(c)
		for _, col := range []string{"t", "v", "y"} {
			if over > 0 && !c.Has(col) {
				n += 5
			}
		}
		c.Ignore("a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "j5", "j7", "j8", "k", "k_other", "m", "n",
			"p", "r", "s", "u", "x", "z", "za", "zb", "zc", "upto", "t", "v", "y")
	}
	return n
}
