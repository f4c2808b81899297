package cylinder

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const (
	thrust = 90 * units.Degree
	other  = 270 * units.Degree
)

func wallAt(heading units.Angle, wear string) BoreWall {
	return BoreWall{Heading: heading, Wear: boreAt(wear)}
}

// Common practice, by the formulas and by the walls of a bore.
func TestLeastSize_commonPractice(t *testing.T) {
	vectors.Load(t, "practice/cylinder_oversize_wear.txt").Each(t, func(t *testing.T, c vectors.Case) {
		mm := func(col string) units.Length { return boreLen(c.Text(col) + " mm") }
		d0, w1, w2, cut, hone := mm("finished"), mm("wear1"), mm("wear2"), mm("cut"), mm("hone")
		axis, moved, shift := mm("axis"), mm("moved"), mm("shift")
		require.Equal(t, axis, LeastSizeOnAxis(d0, w1, cut, hone))
		require.Equal(t, moved, LeastSizeMoved(d0, w1, w2, cut, hone))
		require.Equal(t, shift, BoreShift(w1, w2))

		b := WornBore{Finished: d0, Walls: []BoreWall{{Heading: thrust, Wear: tolerance.Exactly(w1)}, {Heading: other, Wear: tolerance.Exactly(w2)}}}
		p := BoringPlan{Cut: cut, Honing: hone}
		n, err := LeastSize(&b, &p)
		require.NoError(t, err)
		require.Equal(t, tolerance.Exactly(axis), n.Size)
		require.Equal(t, BoreCentre{}, n.Centre)
		p.Centring = MovedToBore
		n, err = LeastSize(&b, &p)
		require.NoError(t, err)
		require.Equal(t, tolerance.Exactly(moved), n.Size)
		require.Equal(t, BoreCentre{Y: shift}, n.Centre)
		p.Centring, p.Centre = StatedCentre, BoreCentre{Y: shift}
		stated, err := LeastSize(&b, &p)
		require.NoError(t, err)
		require.Equal(t, n, stated)

		// From the diameter alone both lie within the bounds.
		b.Walls, b.Greatest = nil, tolerance.Exactly(d0+w1+w2)
		p.Centring = OriginalAxis
		n, err = LeastSize(&b, &p)
		require.NoError(t, err)
		require.True(t, n.ByDiameters)
		require.True(t, n.Size.Contains(axis) && n.Size.Contains(moved))
		lo, _ := n.Size.Lower()
		hi, _ := n.Size.Upper()
		require.Equal(t, moved, lo)
		require.Equal(t, d0+2*(w1+w2)+2*cut+hone, hi)
	})
}

// The least circle against an optimiser that knows nothing of circles.
func TestLeastCircle_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/cylinder_oversize_circle.txt").All(t) {
		bore := units.Length(c.Int64("bore"))
		b := WornBore{Finished: bore}
		for w := range strings.FieldsSeq(c.Text("walls")) {
			heading, wear, _ := strings.Cut(w, ":")
			over, err := strconv.ParseInt(wear, 10, 64)
			require.NoError(t, err)
			b.Walls = append(b.Walls, BoreWall{Heading: units.MustParseAngle(heading + "°"), Wear: tolerance.Exactly(units.Length(over))})
		}
		n, err := LeastSize(&b, &BoringPlan{Centring: MovedToBore})
		require.NoError(t, err)
		_, hi := bothOf(n.Size)
		c.Near("excess", float64(hi-bore))
		coversAll(t, &b, n)
	}
}

// coversAll holds a size to every wall in exact rationals (to 200 bits): no
// wall, and no unworn one, lies outside, by more than the direction's rounding.
func coversAll(t *testing.T, b *WornBore, n BoreNeed) {
	t.Helper()
	_, size := bothOf(n.Size)
	f := func(x float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(x) }
	for _, w := range b.Walls {
		_, wear := bothOf(w.Wear)
		x, y := unit(w.Heading)
		r := f(float64(b.Finished) + 2*float64(wear))
		dx := new(big.Float).Sub(new(big.Float).Mul(r, f(x)), f(2*float64(n.Centre.X)))
		dy := new(big.Float).Sub(new(big.Float).Mul(r, f(y)), f(2*float64(n.Centre.Y)))
		d := new(big.Float).Add(new(big.Float).Mul(dx, dx), new(big.Float).Mul(dy, dy))
		got, _ := d.Sqrt(d).Float64()
		require.LessOrEqual(t, got, float64(size)+0.001)
	}
	require.LessOrEqual(t, float64(b.Finished)+2*math.Hypot(float64(n.Centre.X), float64(n.Centre.Y)), float64(size)+0.001)
}

// Points alone are not enough: the corner opposite two worn walls stays uncut.
// By hand: with 0.10 toward 0° and 90°, the bar at (c, c) needs
// max(0.1 − c, c√2) over the radius, least at c = 0.1/(1+√2) = 0.041421, so
// 86.117157 mm; over the four points alone it would be 86.10.
func TestLeastSize_unwornCorner(t *testing.T) {
	b := WornBore{Finished: 86 * units.Millimetre, Walls: []BoreWall{
		wallAt(0, "0.10 mm"), wallAt(thrust, "0.10 mm"), wallAt(180*units.Degree, "0 mm"), wallAt(other, "0 mm")}}
	n, err := LeastSize(&b, &BoringPlan{Centring: MovedToBore})
	require.NoError(t, err)
	_, hi := bothOf(n.Size)
	// To the second order: c²/2R = 0.00001 mm.
	require.InDelta(t, 86.117157, hi.Float(units.InMillimetres), 0.00003)
	require.InDelta(t, 0.041421, n.Centre.X.Float(units.InMillimetres), 0.00002)
	require.InDelta(t, 0, float64(n.Centre.X-n.Centre.Y), 2)
	coversAll(t, &b, n)
}

// The inverse formulas.
func TestOversizeInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	for range 2000 {
		d0, w, shift := units.Length(5e10+r.Int64N(5e10)), units.Length(r.Int64N(2e8)), units.Length(r.Int64N(1e8)-5e7)
		size := d0 + 2*units.Length(r.Int64N(5e8))
		require.Equal(t, size, SizeForWallCut(WallCut(size, d0, shift, w), d0, shift, w))
		hone := units.Length(r.Int64N(1e8))
		require.Equal(t, size, FinishedBore(RoughBore(size, hone), hone))
		require.Equal(t, d0, SizeWorn(d0, w)-w)
		require.Equal(t, w, BoreWear(SizeWorn(d0, w), d0))
		require.Equal(t, w, PistonClearance(BoreTarget(d0, w), d0))
		require.Equal(t, d0, SkirtFor(BoreTarget(d0, w), w))
		require.Equal(t, hone, WearOppositeWall(d0+w+hone, d0, w))
		// The least size leaves just the cut on the most worn wall.
		cut := units.Length(r.Int64N(1e8))
		least := LeastSizeOnAxis(d0, w, cut, hone)
		require.Equal(t, cut, WallCut(RoughBore(least, hone), d0, 0, w))
		w2 := w - w&1 + 2*units.Length(r.Int64N(1e8))&^1
		moved := LeastSizeMoved(d0, w-w&1, w2, cut, hone)
		require.Equal(t, cut, WallCut(RoughBore(moved, hone), d0, BoreShift(w-w&1, w2), w-w&1))
		require.Equal(t, cut, WallCut(RoughBore(moved, hone), d0, BoreShift(w2, w-w&1), w2))
		per, over := units.Length(1+r.Int64N(1e11)), units.Length(1e9+r.Int64N(1e11))
		back := TaperOver(TaperPer(w, over, per), over, per)
		require.LessOrEqual(t, (back - w).Abs(), 1+(over/per)/2)
	}
	require.Equal(t, boreLen("0.00225 in"), TaperOver(boreLen("0.0005 in"), boreLen("4.5 in"), units.Inch))
	require.Equal(t, boreLen("0.045 mm"), TaperOver(boreLen("0.0005 mm"), boreLen("90 mm"), units.Millimetre))
	require.Equal(t, boreLen("0.03 mm"), Taper(boreLen("86.05 mm"), boreLen("86.02 mm"), boreLen("86.04 mm")))
	require.Equal(t, boreLen("-0.03 mm"), TaperSigned(boreLen("86.02 mm"), boreLen("86.05 mm")))
	require.Equal(t, boreLen("0.03 mm"), BoreChoke(boreLen("86.02 mm"), boreLen("86.05 mm")))
	require.Equal(t, boreLen("0.0025 in"), OutOfRound(boreLen("5.7565 in"), boreLen("5.7540 in")))
}

// What two directions show, from hand: all at 0, none at 45°, half at 30°.
func TestOvalShown(t *testing.T) {
	rad := func(deg float64) tolerance.Float { return tolerance.Float(deg * math.Pi / 180) }
	for deg, want := range map[float64]float64{0: 0.08, 30: 0.04, 45: 0, 60: -0.04, 90: -0.08} {
		require.InDelta(t, want, float64(OvalShown[tolerance.Float](0.08, rad(deg))), 1e-15)
		if deg != 45 {
			require.InDelta(t, 0.08, float64(OvalFrom(tolerance.Float(want), rad(deg))), 1e-15)
		}
	}
	every := func(n int, step units.Angle) (h []units.Angle) {
		for k := range n {
			h = append(h, units.Angle(k)*step)
		}
		return h
	}
	for _, c := range []struct {
		headings []units.Angle
		want     float64
	}{
		{nil, 0}, {every(1, 1), 0}, {every(2, 90*units.Degree), 0}, {every(2, 37*units.Degree), 0},
		{every(3, 60*units.Degree), 0.75}, {every(4, 45*units.Degree), math.Sqrt2 / 2},
		{every(3, 45*units.Degree), 0.5},              // at 0, 45 and 90°: the width of a right triangle
		{every(6, 30*units.Degree), math.Sqrt(3) / 2}, // a hexagon
		{every(361, units.Degree/4), 0},
	} {
		require.InDelta(t, c.want, LeastOvalShown(c.headings...), 1e-12, "%v", c.headings)
	}
	// Against ovals turned through every degree.
	r := rand.New(rand.NewPCG(13, 1))
	for range 50 {
		h := make([]units.Angle, 2+r.IntN(5))
		for i := range h {
			h[i] = units.Angle(r.Int64N(int64(180 * units.Degree)))
		}
		least := math.Inf(1)
		for k := range 18000 {
			lo, hi := 1.0, -1.0
			for _, a := range h {
				v := math.Cos(2*(a.Radians()-float64(k)*math.Pi/18000)) / 2
				lo, hi = min(lo, v), max(hi, v)
			}
			least = min(least, hi-lo)
		}
		got := LeastOvalShown(h...)
		require.LessOrEqual(t, got, least+1e-12)
		require.InDelta(t, least, got, 4e-4)
	}
}

func TestLeastSize_brackets(t *testing.T) {
	b := WornBore{Finished: 86 * units.Millimetre, Walls: []BoreWall{wallAt(thrust, "[0.08 mm, 0.10 mm]"), wallAt(other, "[0 mm, 0.02 mm]")}}
	p := BoringPlan{Cut: boreLen("0.01 mm"), Honing: boreLen("0.06 mm")}
	n, err := LeastSize(&b, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("[86.24 mm, 86.28 mm]"), n.Size)
	require.Equal(t, 0, n.Governs)
	p.Centring = MovedToBore
	n, err = LeastSize(&b, &p)
	require.NoError(t, err)
	require.Equal(t, BoreCentre{Y: boreLen("0.04 mm")}, n.Centre)
	// The unworn bore lies 0.04 beyond this centre, and the wall 0.08 − 0.04.
	require.Equal(t, boreAt("[86.16 mm, 86.2 mm]"), n.Size)

	// A diameter that no dialled wall explains.
	b.Greatest = boreAt("86.21 mm")
	_, err = LeastSize(&b, &p)
	require.ErrorContains(t, err, "dial the place where it was gauged")
	b.Greatest = boreAt("86.15 mm")
	n, err = LeastSize(&b, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("[86.23 mm, 86.23 mm]"), n.Size, "a circle over a diameter is as wide")

	// One wall dialled, and the diameter through it: the other is worn by what is
	// left, 0.02, so the bar moves by 0.03 and not by 0.04.
	one := WornBore{Finished: 86 * units.Millimetre, Walls: []BoreWall{wallAt(thrust, "0.08 mm")}, Greatest: boreAt("86.10 mm")}
	n, err = LeastSize(&one, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("86.18 mm"), n.Size)
	require.Equal(t, BoreCentre{Y: boreLen("0.03 mm")}, n.Centre)
	require.Empty(t, n.Settle)
	one.Greatest = tolerance.Bracket{}
	n, err = LeastSize(&one, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("86.16 mm"), n.Size)
	require.Equal(t, "dial the wall opposite the most worn one too, which counts as unworn", n.Settle)
	p.Centring, p.Centre = StatedCentre, BoreCentre{Y: boreLen("-0.05 mm")}
	one.Greatest = boreAt("86.10 mm")
	n, err = LeastSize(&one, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("86.34 mm"), n.Size, "0.08 + 0.05 from the bar, twice, and 0.08")
	// The other wall, which the bar would miss: 0.02 + 0.09 beside 0.08 − 0.09.
	p.Centre.Y = boreLen("0.09 mm")
	n, err = LeastSize(&one, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("86.3 mm"), n.Size)
	require.Equal(t, -1, n.Governs)

	// From diameters, with a stated centre that is off.
	b.Walls, b.Greatest = nil, boreAt("86.10 mm")
	p.Centring, p.Centre = StatedCentre, BoreCentre{X: boreLen("0.2 mm")}
	n, err = LeastSize(&b, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("[86.48 mm, 86.68 mm]"), n.Size)
	// Not worn at all.
	b.Greatest, p.Centring = boreAt("85.99 mm"), OriginalAxis
	n, err = LeastSize(&b, &p)
	require.NoError(t, err)
	require.Equal(t, boreAt("86.08 mm"), n.Size)
	require.Empty(t, n.Settle)
}

func TestLeastSize_refuses(t *testing.T) {
	mm := units.Millimetre
	good := WornBore{Where: "cylinder 2", Finished: 86 * mm, Walls: []BoreWall{wallAt(0, "0.1 mm")}}
	for name, c := range map[string]struct {
		b    func(*WornBore)
		p    BoringPlan
		want string
	}{
		"nothing":   {func(b *WornBore) { b.Walls = nil }, BoringPlan{}, "cylinder 2, greatest diameter (not given)"},
		"size":      {func(b *WornBore) { b.Finished = 0 }, BoringPlan{}, "size last finished to 0 mm"},
		"inch":      {func(b *WornBore) { b.Greatest = boreAt("3.39 mm") }, BoringPlan{}, "near the size last finished to"},
		"open":      {func(b *WornBore) { b.Greatest = boreAt("[86 mm, ∞)") }, BoringPlan{}, "a least and a greatest"},
		"wear":      {func(b *WornBore) { b.Walls[0].Wear = boreAt("30 mm") }, BoringPlan{}, "wall 1, wear 30 mm is not less than a quarter"},
		"no wear":   {func(b *WornBore) { b.Walls[0].Wear = tolerance.Bracket{} }, BoringPlan{}, "a least and a greatest"},
		"heading":   {func(b *WornBore) { b.Walls[0].Heading = units.OutOfRange[units.Angle]() }, BoringPlan{}, "heading"},
		"cut":       {func(b *WornBore) {}, BoringPlan{Cut: -1}, "least cut per side"},
		"hone":      {func(b *WornBore) {}, BoringPlan{Honing: 11 * units.Metre}, "honing stock"},
		"centring":  {func(b *WornBore) {}, BoringPlan{Centring: 7}, "one of the three"},
		"centre":    {func(b *WornBore) {}, BoringPlan{Centring: StatedCentre, Centre: BoreCentre{X: -50 * mm}}, "within a quarter of the bore"},
		"no wall":   {func(b *WornBore) { b.Sonic = []SonicWall{{Wall: boreAt("-4 mm")}} }, BoringPlan{}, "ultrasonic reading 1, wall -4 mm is not a thickness above 0 mm"},
		"thick":     {func(b *WornBore) { b.Sonic = []SonicWall{{Where: "front", Wall: boreAt("120 mm")}} }, BoringPlan{}, "front, wall 120 mm"},
		"worn wall": {func(b *WornBore) { b.Sonic = []SonicWall{{Wall: boreAt("4 mm"), Wear: boreAt("40 mm")}} }, BoringPlan{}, "less than a quarter"},
		"open wall": {func(b *WornBore) { b.Sonic = []SonicWall{{Wall: boreAt("4 mm"), Wear: boreAt("[0 mm, ∞)")}} }, BoringPlan{}, "a least and a greatest"},
		"wall head": {func(b *WornBore) {
			b.Sonic = []SonicWall{{Wall: boreAt("4 mm"), Heading: units.OutOfRange[units.Angle]()}}
		}, BoringPlan{}, "heading"},
	} {
		b := good
		b.Walls = append([]BoreWall(nil), good.Walls...)
		c.b(&b)
		_, err := LeastSize(&b, &c.p)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	for _, s := range []BoreSurface{PlatedBore, CoatedBore, BareAlloy} {
		b := good
		b.Surface = s
		_, err := LeastSize(&b, &BoringPlan{})
		require.ErrorIs(t, err, ErrProcess)
		require.EqualError(t, err, "cylinder: cylinder 2: a "+s.String()+" bore is not rebored without the maker's own process for it, which is not given")
		b.Process = "workshop manual, section 4"
		_, err = LeastSize(&b, &BoringPlan{})
		require.NoError(t, err)
	}
	require.EqualError(t, &ProcessError{Surface: PlatedBore}, "cylinder: a plated bore is not rebored without the maker's own process for it, which is not given")
}

// More wear never asks for less; a turned bore asks for the same; a wall more
// changes nothing where it lies within.
func TestLeastSize_properties(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 1))
	for range 300 {
		b := WornBore{Finished: 86 * units.Millimetre}
		for range 1 + r.IntN(12) {
			b.Walls = append(b.Walls, BoreWall{Heading: units.Angle(r.IntN(24)) * 15 * units.Degree, Wear: tolerance.Exactly(units.Length(r.Int64N(2e8)))})
		}
		for _, where := range []Centring{OriginalAxis, MovedToBore} {
			p := BoringPlan{Centring: where}
			n, err := LeastSize(&b, &p)
			require.NoError(t, err)
			_, size := bothOf(n.Size)
			coversAll(t, &b, n)

			turned := b
			turned.Walls = nil
			for _, w := range b.Walls {
				w.Heading += 90 * units.Degree
				turned.Walls = append(turned.Walls, w)
			}
			m, err := LeastSize(&turned, &p)
			require.NoError(t, err)
			_, same := bothOf(m.Size)
			require.InDelta(t, 0, float64(size-same), 3)
			require.InDelta(t, float64(n.Centre.X), float64(m.Centre.Y), 2)

			more := b
			more.Walls = append([]BoreWall(nil), b.Walls...)
			i := r.IntN(len(more.Walls))
			more.Walls[i].Wear = more.Walls[i].Wear.Add(tolerance.Exactly(units.Length(r.Int64N(1e8))))
			m, err = LeastSize(&more, &p)
			require.NoError(t, err)
			_, larger := bothOf(m.Size)
			require.GreaterOrEqual(t, larger+3, size, "%v", where)
		}
		axis, err := LeastSize(&b, &BoringPlan{})
		require.NoError(t, err)
		moved, err := LeastSize(&b, &BoringPlan{Centring: MovedToBore})
		require.NoError(t, err)
		_, a := bothOf(axis.Size)
		_, m := bothOf(moved.Size)
		require.LessOrEqual(t, m, a+3, "a bar that may move needs no more")
	}
}

// FuzzLeastSize: whatever the walls, a size that covers them all or a typed
// error.
func FuzzLeastSize(f *testing.F) {
	f.Add(int64(86_000_000_000), int64(100_000_000), int64(0), int64(0), int64(0), int64(324_000_000_000), int64(0), uint8(1))
	f.Add(int64(86_000_000_000), int64(100_000_000), int64(100_000_000), int64(-5), int64(0), int64(1_000_000), int64(7), uint8(1))
	f.Add(int64(10), int64(2), int64(1), int64(-2), int64(90), int64(1), int64(3), uint8(2))
	f.Fuzz(func(t *testing.T, bore, w1, w2, w3, a1, a2, a3 int64, centring uint8) {
		b := WornBore{Finished: units.Length(bore), Walls: []BoreWall{
			{Heading: units.Angle(a1), Wear: tolerance.Exactly(units.Length(w1))},
			{Heading: units.Angle(a2), Wear: tolerance.Exactly(units.Length(w2))},
			{Heading: units.Angle(a3), Wear: tolerance.Exactly(units.Length(w3))}}}
		p := BoringPlan{Centring: Centring(centring), Centre: BoreCentre{units.Length(a1 % 1000), units.Length(w1 % 1000)}}
		n, err := LeastSize(&b, &p)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		lo, hi := bothOf(n.Size)
		require.LessOrEqual(t, lo, hi)
		require.GreaterOrEqual(t, hi, b.Finished)
		coversAll(t, &b, n)
		for _, w := range b.Walls {
			b.Sonic = append(b.Sonic, SonicWall{Heading: w.Heading, Wall: tolerance.Exactly(max(1, b.Finished/10)), Wear: w.Wear})
		}
		if n.Centre.X.Abs() > b.Finished/4 || n.Centre.Y.Abs() > b.Finished/4 {
			return
		}
		left, err := WallsLeft(&b, n.Centre, n.Size)
		require.NoError(t, err)
		require.Len(t, left, 3)
	})
}
