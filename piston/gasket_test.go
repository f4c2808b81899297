package piston

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// invented: three gaskets by protrusion, the first two rows sharing a limit,
// a gap between the second and the third.
func gasketTable() GasketTable {
	return GasketTable{
		{"1 hole", band("0.50–0.60 mm"), band("1.25–1.35 mm")},
		{"2 holes", band("0.60–0.70 mm"), band("1.35–1.45 mm")},
		{"3 holes", band("0.71–0.80 mm"), band("1.45–1.55 mm")},
	}
}

func deckPiston(where, first, second string) DeckPiston {
	return DeckPiston{where, at(first), at(second)}
}

func TestGasketInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(52, 1))
	for range 1000 {
		g, p := units.Length(r.Int64N(2e9)), units.Length(r.Int64N(2e9)-1e9)
		c := GasketClearance(g, p)
		require.Equal(t, g, GasketThicknessFor(c, p))
		require.Equal(t, p, GasketProtrusionFor(c, g))
	}
	// By hand: 1.40 − 0.65; a piston 0.30 below the face counts below zero.
	require.Equal(t, mm("0.75"), GasketClearance(mm("1.40"), mm("0.65")))
	require.Equal(t, mm("1.70"), GasketClearance(mm("1.40"), mm("-0.30")))
	require.False(t, GasketClearance(units.OutOfRange[units.Length](), mm("1")).InRange())
}

func TestGasketReadings(t *testing.T) {
	s, err := working.Solve(GasketClearance(working.Given("gasket", "g", mm("1.40")), working.Given("protrusion", "p", mm("0.65"))).Named("clearance", "c"), units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.75 mm")
	g, err := uncertainty.Normal("gasket", mm("1.40"), mm("0.03"))
	require.NoError(t, err)
	p, err := uncertainty.Normal("protrusion", mm("0.65"), mm("0.04"))
	require.NoError(t, err)
	_, u := GasketClearance(g, p).Float(units.InMillimetres)
	require.InDelta(t, 0.05, u, 1e-12) // 3, 4, 5
}

func TestGasketChoice(t *testing.T) {
	row := func(i int) []int { return []int{i} }
	for _, c := range []struct {
		name        string
		first, next string // the points of the greatest piston
		verdict     tolerance.Verdict
		row         int
		rows        []int
		needs       string
	}{
		{"one row", "0.655 ±0.005 mm", "0.645 ±0.005 mm", tolerance.Within, 1, row(1), ""},
		{"straddles", "0.60 ±0.01 mm", "0.61 ±0.01 mm", tolerance.Undecided, -1, []int{0, 1}, "measure piston 2 more closely: the greatest protrusion [0.595 mm, 0.615 mm] may lie on either side of 0.6 mm"},
		{"on the shared limit", "0.60 mm", "0.60 mm", tolerance.Undecided, -1, []int{0, 1}, "the table itself gives 0.6 mm to more than one row"},
		{"in the gap", "0.705 mm", "0.705 mm", tolerance.Undecided, -1, nil, "the table has no row for 0.705 mm"},
		{"in the gap, bracket", "0.705 ±0.001 mm", "0.705 mm", tolerance.Undecided, -1, nil, "the table has no row for [0.7045 mm, 0.7055 mm]"},
		{"across the gap's edge", "0.70 ±0.004 mm", "0.70 ±0.004 mm", tolerance.Undecided, -1, row(1), "on either side of 0.7 mm, where the table may have no row"},
		{"across the gap", "0.705 ±0.02 mm", "0.705 ±0.02 mm", tolerance.Undecided, -1, []int{1, 2}, "0.7 mm and 0.71 mm, where the table may have no row"},
		{"above all", "0.85 mm", "0.84 mm", tolerance.Above, -1, nil, "above all rows"},
		{"perhaps above", "0.80 ±0.01 mm", "0.80 ±0.01 mm", tolerance.Undecided, -1, row(2), "where the table may have no row"},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := GasketCheck{Table: gasketTable(), Pistons: []DeckPiston{deckPiston("piston 1", "0.52 mm", "0.52 mm"), deckPiston("piston 2", c.first, c.next)}}
			r, err := g.Choose()
			require.NoError(t, err)
			require.Equal(t, c.verdict, r.Verdict)
			require.Equal(t, c.row, r.Row)
			require.Equal(t, c.rows, r.Rows)
			require.Contains(t, r.Needs, c.needs)
			require.Equal(t, []string{"piston 2"}, r.Governs)
			require.Equal(t, c.row < 0, strings.HasPrefix(r.Next, "no gasket is chosen: "))
			require.Equal(t, c.row < 0, r.Contact == HeadContactUnknown)
			require.Equal(t, c.row < 0, r.LeastClearance(2) == "")
			b, err := json.Marshal(r)
			require.NoError(t, err)
			var back GasketChoice
			require.NoError(t, json.Unmarshal(b, &back))
			require.Empty(t, cmp.Diff(r, back, cmpopts.EquateComparable(tolerance.Bracket{}, tolerance.Band{})))
		})
	}
	g := GasketCheck{Table: gasketTable(), Pistons: []DeckPiston{deckPiston("piston 1", "0.42 mm", "0.42 mm")}}
	r, err := g.Choose()
	require.NoError(t, err)
	require.Equal(t, tolerance.Below, r.Verdict)
	require.Contains(t, r.Needs, "below all rows")
	// The table's faults are told whether they matter or not.
	require.Equal(t, []selective.Fault{
		{Kind: selective.SharedLimit, First: "1 hole", Second: "2 holes", Where: at("0.6 mm")},
		{Kind: selective.Gap, First: "2 holes", Second: "3 holes", Where: at("(0.7 mm, 0.71 mm)")},
	}, r.Faults)
}

// By hand: the gasket of 1.35–1.45 mm over 0.65 leaves 0.70–0.80.
func TestGasketClearances(t *testing.T) {
	g := GasketCheck{
		Table:     gasketTable(),
		Pistons:   []DeckPiston{deckPiston("piston 1", "0.62 mm", "0.60 mm"), deckPiston("piston 2", "0.655 ±0.002 mm", "0.645 ±0.002 mm")},
		Clearance: tolerance.Spec{New: band("min 0.65 mm")},
		Tilt:      tolerance.Spec{Wear: band("max 0.03 mm")},
	}
	r, err := g.Choose()
	require.NoError(t, err)
	require.Equal(t, at("[0.698 mm, 0.802 mm]"), r.Pistons[1].Clearance)
	require.Equal(t, at("[0.74 mm, 0.84 mm]"), r.Pistons[0].Clearance)
	require.Equal(t, at("0.02 mm"), r.Pistons[0].Tilt)
	require.Equal(t, tolerance.AsNew, r.Clearance.Standing)
	require.Equal(t, HeadClear, r.Contact)
	require.Equal(t, DeckSideAbove, r.Pistons[0].Side)
	require.Equal(t, "fit the gasket marked 2 holes; turn the engine by hand two full turns before it runs", r.Next)
	// Rounded down, never to nearest: 0.698 is not 0.70.
	require.Equal(t, "0.69 mm", r.LeastClearance(2))
	require.Equal(t, "0.698 mm", r.LeastClearance(3))

	g.Clearance.New = band("min 0.70 mm")
	r, err = g.Choose()
	require.NoError(t, err)
	require.Contains(t, r.Next, "not a pass")

	// A piston that leans is not passed over, though the row would be clear.
	g.Tilt.Wear = band("max 0.01 mm")
	r, err = g.Choose()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.Verdict)
	require.Equal(t, -1, r.Row)
	require.Contains(t, r.Needs, "piston 1 and piston 2 differ")
	g.Pistons[1] = deckPiston("piston 2", "0.65 mm", "0.65 mm")
	r, err = g.Choose()
	require.NoError(t, err)
	require.Contains(t, r.Needs, "two points of piston 1 differ")

	// Which is the greatest can't be told: both are named, and the row is
	// chosen all the same where it is the same for both.
	g = GasketCheck{Table: gasketTable(), Pistons: []DeckPiston{deckPiston("a", "0.65 ±0.01 mm", "0.65 mm"), deckPiston("b", "0.648 ±0.01 mm", "0.65 mm"), deckPiston("c", "0.55 mm", "0.55 mm")}}
	r, err = g.Choose()
	require.NoError(t, err)
	require.Equal(t, []string{"a", "b"}, r.Governs)
	require.Equal(t, 1, r.Row)
}

// Touching counts as touching, and zero is no clearance.
func TestGasketContact(t *testing.T) {
	for thickness, want := range map[string]HeadContact{
		"0.70–0.80 mm": HeadClear,
		"0.65–0.70 mm": HeadMayTouch,
		"0.60–0.66 mm": HeadMayTouch,
		"0.60–0.65 mm": HeadTouches,
		"0.50–0.60 mm": HeadTouches,
	} {
		g := GasketCheck{Table: GasketTable{{"thin", band("0.6–0.7 mm"), band(thickness)}}, Pistons: []DeckPiston{deckPiston("1", "0.65 mm", "0.65 mm")}}
		r, err := g.Choose()
		require.NoError(t, err)
		require.Equal(t, want, r.Contact, thickness)
		require.Equal(t, want != HeadClear, strings.HasPrefix(r.Next, "don't build"))
	}
	require.Equal(t, HeadClear, headContact(at("(0 mm, 0.1 mm]")))
	g := GasketCheck{Table: GasketTable{{"thin", band("0.6–0.7 mm"), tolerance.Band{}}}, Pistons: []DeckPiston{deckPiston("1", "0.65 mm", "0.65 mm")}}
	r, err := g.Choose()
	require.NoError(t, err)
	require.Equal(t, HeadContactUnknown, r.Contact)
	require.Contains(t, r.Next, "fit the gasket marked thin")
	for h := range HeadContact(5) {
		b, err := h.MarshalText()
		require.NoError(t, err)
		var back HeadContact
		require.NoError(t, back.UnmarshalText(b))
		require.Equal(t, h%4, back)
	}
	require.ErrorIs(t, new(HeadContact).UnmarshalText([]byte("kiss")), ErrInput)
}

func TestGasketRefuses(t *testing.T) {
	one := []DeckPiston{deckPiston("piston 1", "0.62 mm", "0.60 mm")}
	for _, c := range []struct {
		name  string
		check func(*GasketCheck)
		want  string
	}{
		{"no pistons", func(g *GasketCheck) { g.Pistons = nil }, "protrusion of no piston is not measured on every piston"},
		{"one point", func(g *GasketCheck) { g.Pistons[0].Second = tolerance.Bracket{} }, "second point of piston 1"},
		{"twice", func(g *GasketCheck) { g.Pistons = append(one, one...) }, `piston "piston 1" is not named once`},
		{"no table", func(g *GasketCheck) { g.Table = nil }, "of no rows"},
		{"no mark", func(g *GasketCheck) { g.Table[1].Mark = "" }, "mark of row 2"},
		{"mark twice", func(g *GasketCheck) { g.Table[2].Mark = "1 hole" }, "another than that of row 1"},
		{"no band", func(g *GasketCheck) { g.Table[0].Protrusion = tolerance.Band{} }, "protrusion of row 1"},
		{"out of order", func(g *GasketCheck) { g.Table[0], g.Table[1] = g.Table[1], g.Table[0] }, "the rows go from the least protrusion up"},
		{"thinner for more", func(g *GasketCheck) { g.Table[1].Thickness = band("1.15–1.25 mm") }, "a greater protrusion takes a thicker gasket"},
		{"thickness missing", func(g *GasketCheck) { g.Table[2].Thickness = tolerance.Band{} }, "given for all rows, or for none"},
		{"thickness zero", func(g *GasketCheck) { g.Table[0].Thickness = band("0–1.35 mm") }, "above 0 mm"},
		{"thickness open", func(g *GasketCheck) { g.Table[0].Thickness = band("min 1.2 mm") }, "a least and a greatest"},
		{"open rows", func(g *GasketCheck) { g.Table[1].Protrusion = band("min 0.6 mm") }, "the rows go from"},
		{"limits", func(g *GasketCheck) { g.Tilt = tolerance.Spec{New: band("max 0.2 mm"), Wear: band("max 0.1 mm")} }, "difference of the two points"},
		{"clearance limits", func(g *GasketCheck) { g.Clearance = tolerance.Spec{New: band("min 0.1 mm"), Wear: band("min 0.2 mm")} }, "piston-to-head clearance"},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := GasketCheck{Table: gasketTable(), Pistons: []DeckPiston{deckPiston("piston 1", "0.62 mm", "0.61 mm")}}
			c.check(&g)
			r, err := g.Choose()
			require.ErrorContains(t, err, c.want)
			require.Zero(t, r)
		})
	}
	// The first row may have no least, the last no greatest.
	g := GasketTable{{"1", band("max 0.6 mm"), tolerance.Band{}}, {"2", band("more than 0.6 mm"), tolerance.Band{}}}
	faults, err := g.Faults()
	require.NoError(t, err)
	require.Empty(t, faults)
}

// Whatever the readings: a row is chosen only where every value of the
// greatest bracket lies in that row and in no other.
func TestGasketChosenForCertain(t *testing.T) {
	r := rand.New(rand.NewPCG(53, 1))
	chosen := 0
	for range 3000 {
		step := func(n int) units.Length { return units.Length(r.IntN(n)) * 10 * units.Micrometre }
		table := GasketTable{}
		edge := 400*units.Millimetre/1000 + step(5)
		for i := range 3 {
			next := edge + 20*units.Micrometre + step(8)
			table = append(table, GasketRow{Mark: string(rune('a' + i)), Protrusion: tolerance.MustBetween(edge, next)})
			edge = next + step(3)
		}
		g := GasketCheck{Table: table}
		var top tolerance.Bracket
		for i := range 1 + r.IntN(4) {
			b, err := tolerance.PlusMinus(380*units.Micrometre+step(30), step(4))
			require.NoError(t, err)
			g.Pistons = append(g.Pistons, DeckPiston{string(rune('1' + i)), b, b})
			if i == 0 {
				top = b
			}
			top = top.Max(b)
		}
		c, err := g.Choose()
		require.NoError(t, err)
		var sure []int
		for i, row := range table {
			in := row.Protrusion.Judge(top) == tolerance.Within
			for j, other := range table {
				_, meets := other.Protrusion.Interval().Intersect(top)
				in = in && (i == j || !meets)
			}
			if in {
				sure = append(sure, i)
			}
		}
		if len(sure) == 1 {
			require.Equal(t, sure[0], c.Row)
			chosen++
		} else {
			require.Equal(t, -1, c.Row)
			require.NotEmpty(t, c.Needs)
		}
	}
	require.Greater(t, chosen, 300)
}
