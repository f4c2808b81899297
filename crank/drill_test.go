package crank

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func TestDrillReference(t *testing.T) {
	vectors.Load(t, "reference/crank_drill.txt").Each(t, func(t *testing.T, c vectors.Case) {
		h := DrillHole[float]{float(c.Float("diameter")), float(c.Float("depth")), radians(c.Float("point"))}
		rho, radius := float(c.Float("density")), float(c.Float("radius"))
		require.InEpsilon(t, c.Float("height"), float64(h.PointHeight()), 1e-14)
		require.InEpsilon(t, c.Float("volume"), float64(h.Volume()), 1e-14)
		require.InEpsilon(t, c.Float("centroid"), float64(h.CentroidDepth()), 1e-13)
		require.InEpsilon(t, c.Float("radial"), float64(h.RadialGMM(rho, radius)), 1e-13)
		require.InEpsilon(t, c.Float("axial"), float64(h.AxialGMM(rho, radius)), 1e-13)
		require.InEpsilon(t, c.Float("rim"), float64(h.RadialRimGMM(rho, radius)), 1e-12)
		require.InEpsilon(t, float64(h.Depth+h.PointHeight()), float64(h.DepthToPoint()), 1e-15)
		// The inverses undo their forwards.
		require.InEpsilon(t, float64(h.Depth), float64(DrillRadialDepth(h.RadialGMM(rho, radius), rho, radius, h)), 1e-12)
		require.InEpsilon(t, float64(h.Depth), float64(DrillRimDepth(h.RadialRimGMM(rho, radius), rho, radius, h)), 1e-12)
		require.InEpsilon(t, float64(h.Depth), float64(DrillAxialDepth(h.AxialGMM(rho, radius), rho, radius, h)), 1e-12)
		// And the checked way.
		mm := func(col string) units.Length { return units.MustParseLength(c.Text(col) + " mm") }
		d := Drilling{Diameter: mm("diameter"), Point: units.MustParseAngle(c.Text("point") + "°"), Radius: mm("radius"), Deepest: 50 * units.Millimetre, DensityGPerCM3: float64(rho)}
		depth := sliderLength(h.DepthToPoint())
		for way, want := range map[DrillWay]string{DrillRoundRim: "rim", DrillFlat: "radial", DrillAxial: "axial"} {
			d.Way = way
			got, err := d.Hole(depth)
			require.NoError(t, err)
			require.InEpsilon(t, c.Float(want), got.UnbalanceGMM, 1e-9, want)
			require.InDelta(t, float64(mm("depth")), float64(got.FullDiameter), 2)
			full, err := d.HoleOfFull(mm("depth"))
			require.NoError(t, err)
			require.InEpsilon(t, c.Float(want), full.UnbalanceGMM, 1e-9, want)
			volume := c.Float("volume")
			if way == DrillRoundRim {
				volume = c.Float("rimvolume")
			}
			require.InEpsilon(t, volume, got.Volume.Float(units.InCubicMillimetres), 2e-7)
			require.InEpsilon(t, volume*float64(rho)/1000, got.MassG, 2e-7)
			require.InEpsilon(t, c.Float(want)/(volume*float64(rho)/1000), got.CentreRadius.Float(units.InMillimetres), 2e-7)
			found, err := d.For(got.UnbalanceGMM)
			require.NoError(t, err)
			require.InDelta(t, float64(depth), float64(found.ToPoint), 2)
		}
	})
}

// A cone alone, against its own formula: π/3·tan²·t³, with its centre a quarter
// of the depth below the mouth.
func TestDrillPointAlone(t *testing.T) {
	d := Drilling{Way: DrillFlat, Diameter: 12 * units.Millimetre, Point: 118 * units.Degree, Radius: 80 * units.Millimetre, Deepest: 30 * units.Millimetre, DensityGPerCM3: 7.85}
	for _, depth := range []float64{0.2, 1, 3.6} {
		tan := math.Tan(59 * math.Pi / 180)
		v := math.Pi / 3 * tan * tan * depth * depth * depth
		got, err := d.Hole(units.Length(depth * 1e9))
		require.NoError(t, err)
		require.Zero(t, got.FullDiameter)
		require.InEpsilon(t, v, got.Volume.Float(units.InCubicMillimetres), 1e-7)
		require.InEpsilon(t, v*7.85e-3*(80-depth/4), got.UnbalanceGMM, 1e-9)
	}
	none, err := d.Hole(0)
	require.NoError(t, err)
	require.Equal(t, Drilled{CentreRadius: d.Radius}, none)
}

// The mass centre moves inward as a hole towards the axis gets deeper, each
// millimetre takes away less, and a row's hole does what the row is to do.
func TestDrillingProperties(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 3))
	for range 200 {
		d := Drilling{Way: DrillWay(rnd.IntN(3)), Diameter: units.Millimetre * units.Length(4+rnd.IntN(14)), Point: units.Degree * units.Angle(90+rnd.IntN(60)), Radius: units.Millimetre * units.Length(60+rnd.IntN(60)), Deepest: 40 * units.Millimetre, DensityGPerCM3: 6.9 + rnd.Float64()}
		require.NoError(t, d.Check())
		point := 9 * units.Millimetre // below the cone of the largest
		var last, lastStep float64 = 0, math.Inf(1)
		radius := units.Metre
		for depth := point; depth <= d.Deepest; depth += units.Millimetre {
			h, err := d.Hole(depth)
			require.NoError(t, err)
			require.Greater(t, h.UnbalanceGMM, last)
			if depth > point {
				require.LessOrEqual(t, h.UnbalanceGMM-last, lastStep*(1+1e-9))
				lastStep = h.UnbalanceGMM - last
			}
			if d.Way == DrillAxial {
				require.InDelta(t, float64(d.Radius), float64(h.CentreRadius), 1)
			} else {
				require.Less(t, h.CentreRadius, radius)
			}
			last, radius = h.UnbalanceGMM, h.CentreRadius
		}
		wanted := last * (0.05 + 2*rnd.Float64())
		row, err := d.Row(wanted, 25*units.Degree, 4)
		require.NoError(t, err)
		// As vectors, the holes take away what was wanted, on the middle's side.
		var x, y float64
		for i, h := range row {
			sin, cos := math.Sincos((float64(i) - float64(len(row)-1)/2) * 25 * math.Pi / 180)
			x, y = x+h.UnbalanceGMM*cos, y+h.UnbalanceGMM*sin
		}
		require.InEpsilon(t, wanted, x, 1e-7)
		require.InDelta(t, 0, y, 1e-8*wanted)
	}
}

func TestDrillRowFactor(t *testing.T) {
	require.InDelta(t, math.Sqrt(3), float64(DrillRowFactor[float](2, math.Pi/3)), 1e-14)
	require.InDelta(t, 1, float64(DrillRowFactor[float](1, 0.3)), 1e-14)
	require.InDelta(t, 1+2*math.Cos(0.4), float64(DrillRowFactor[float](3, 0.4)), 1e-14)
}

func TestDrillPlug(t *testing.T) {
	// π/4·25²·20 = 9817.477 mm³; at 17 less 7.85 g/cm³ it gains 89.830 g, not 166.897.
	gain := DrillPlugGainG[float](25, 20, 17, 7.85)
	require.InDelta(t, 89.82991, float64(gain), 1e-4)
	require.InDelta(t, 166.8971, float64(DrillPlugGainG[float](25, 20, 17, 0)), 1e-4)
	u := DrillPlugGMM[float](25, 20, 75, 17, 7.85)
	require.InDelta(t, 75*89.82991, float64(u), 1e-2)
	require.InEpsilon(t, 20, float64(DrillPlugLength(u, 25, 75, 17, 7.85)), 1e-14)
	require.InEpsilon(t, 25, float64(DrillPlugDiameter(u, 20, 75, 17, 7.85)), 1e-14)
	require.False(t, DrillPlugLength(u, 25, 75, 7.85, 7.85).InRange(), "steel in steel gains nothing")
}

func TestDrillReadings(t *testing.T) {
	x := uncertainty.ExactlyReal
	depth, err := uncertainty.NewDual("depth", 15, "mm", uncertainty.RectangularShape, 0.1)
	require.NoError(t, err)
	u := DrillHole[uncertainty.Dual]{x(12), depth, x(118 * math.Pi / 180)}.RadialGMM(x(7.85), x(80))
	// dU/dh = ρA(R − h − c/3)
	c := 6 / math.Tan(59*math.Pi/180)
	require.InEpsilon(t, 7.85e-3*math.Pi*36*(80-15-c/3)*0.1/math.Sqrt(3), u.StandardUncertainty(), 1e-12)
	g := working.GivenReal
	h := DrillHole[working.RealTerm]{g("diameter", "d", 12, "mm"), g("depth", "h", 15, "mm"), g("point", "α", 2.0594885, "rad")}
	for _, term := range []working.RealTerm{h.RadialGMM(g("density", "ρ", 7.85, "g/cm³"), g("radius", "R", 80, "mm")), DrillRimDepth(g("unbalance", "U", 900, "g·mm"), g("density", "ρ", 7.85, "g/cm³"), g("radius", "R", 80, "mm"), h)} {
		_, err := working.SolveReal(term.Named("answer", "a", ""), working.RealStyle{Places: 2, Bare: true})
		require.NoError(t, err)
	}
}

func TestDrillingRefuses(t *testing.T) {
	good := Drilling{Diameter: 12 * units.Millimetre, Point: 118 * units.Degree, Radius: 80 * units.Millimetre, Deepest: 30 * units.Millimetre, DensityGPerCM3: 7.85}
	for says, change := range map[string]func(*Drilling){
		"way of drilling 7":                    func(d *Drilling) { d.Way = 7 },
		"drill's diameter 0 mm":                func(d *Drilling) { d.Diameter = 0 },
		"drill's diameter 120 mm":              func(d *Drilling) { d.Diameter = 120 * units.Millimetre },
		"angle of the drill's point 180°":      func(d *Drilling) { d.Point = units.Turn / 2 },
		"radius of the hole 5 mm":              func(d *Drilling) { d.Radius = 5 * units.Millimetre },
		"deepest hole 0 mm":                    func(d *Drilling) { d.Deepest = 0 },
		"deepest hole 80 mm is not less":       func(d *Drilling) { d.Deepest = d.Radius },
		"density -7.85 g/cm³":                  func(d *Drilling) { d.DensityGPerCM3 = -7.85 },
		"density 7850 g/cm³ is not from 0.5":   func(d *Drilling) { d.DensityGPerCM3 = 7850 },
		"density NaN g/cm³ is not from 0.5 to": func(d *Drilling) { d.DensityGPerCM3 = math.NaN() },
	} {
		d := good
		change(&d)
		_, err := d.Hole(units.Millimetre)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, says)
		_, err = d.For(1)
		require.ErrorIs(t, err, ErrInput)
		_, err = d.HoleOfFull(1)
		require.ErrorIs(t, err, ErrInput)
		_, err = d.Row(1, units.Degree, 1)
		require.ErrorIs(t, err, ErrInput)
	}
	axial := good
	axial.Way, axial.Deepest = DrillAxial, 90*units.Millimetre
	require.NoError(t, axial.Check(), "along the shaft it may be deeper than the radius")
	for _, depth := range []units.Length{-1, good.Deepest + 1} {
		_, err := good.Hole(depth)
		require.ErrorContains(t, err, "from 0 mm to the deepest, 30 mm")
	}
	_, err := good.HoleOfFull(-1)
	require.ErrorContains(t, err, "depth of the full diameter")
	_, err = good.HoleOfFull(good.Deepest)
	require.ErrorContains(t, err, "from 0 mm to the deepest, 30 mm")
	for _, u := range []float64{0, -3, math.NaN(), math.Inf(1)} {
		_, err := good.For(u)
		require.ErrorContains(t, err, "above 0 g·mm")
		_, err = good.Row(u, 20*units.Degree, 3)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err = good.For(5000)
	require.ErrorContains(t, err, "at most what the deepest hole takes away, ")
	_, err = good.Row(50000, 20*units.Degree, 3)
	require.ErrorContains(t, err, "within what 3 holes")
	_, err = good.Row(5000, 8*units.Degree, 3)
	require.ErrorContains(t, err, "more than 8.6°, where they meet")
	_, err = good.Row(5000, 20*units.Degree, 0)
	require.ErrorContains(t, err, "most holes 0")
	_, err = good.Row(1e7, 100*units.Degree, 5)
	require.ErrorContains(t, err, "within what 5 holes")
}

func TestDrillWayText(t *testing.T) {
	for _, w := range []DrillWay{DrillRoundRim, DrillFlat, DrillAxial} {
		text, err := w.MarshalText()
		require.NoError(t, err)
		var back DrillWay
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, w, back)
	}
	var w DrillWay
	require.EqualError(t, w.UnmarshalText([]byte("sideways")), `crank: way of drilling "sideways" is not one of "round rim", "flat", "axial"`)
	require.Equal(t, "round rim", DrillWay(9).String())
}

// What For gives takes away what was asked, to the picometre of depth.
func FuzzDrilling(f *testing.F) {
	f.Add(uint8(0), int64(12e9), int64(118*3600e6), int64(80e9), int64(30e9), 7.85, 500.0)
	f.Fuzz(func(t *testing.T, way uint8, diameter, point, radius, deepest int64, density, wanted float64) {
		d := Drilling{DrillWay(way), units.Length(diameter), units.Angle(point), units.Length(radius), units.Length(deepest), density}
		h, err := d.For(wanted)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, h.ToPoint > 0 && h.ToPoint <= d.Deepest && h.FullDiameter >= 0 && h.FullDiameter < h.ToPoint)
		require.True(t, h.MassG >= 0 && h.UnbalanceGMM >= wanted, "%v", h)
		if h.ToPoint > 1 {
			less, err := d.Hole(h.ToPoint - 1)
			require.NoError(t, err)
			require.LessOrEqual(t, less.UnbalanceGMM, wanted)
		}
	})
}

func TestBalanceAllocatesNothing(t *testing.T) {
	d := Drilling{Diameter: 12 * units.Millimetre, Point: 118 * units.Degree, Radius: 80 * units.Millimetre, Deepest: 30 * units.Millimetre, DensityGPerCM3: 7.85}
	require.Zero(t, testing.AllocsPerRun(20, func() { sinkDrilled, _ = d.For(500) }))
	r := UnbalanceRotor{Mass: 20 * units.Kilogram, RPM: 6000, GradeMMPS: 6.3, BearingB: 400 * units.Millimetre, Readings: []UnbalanceReading{{AmountGMM: 20}, {AmountGMM: 30, At: units.Metre}}}
	require.Zero(t, testing.AllocsPerRun(20, func() { sinkReport, _ = r.Assess() }))
}

var (
	sinkDrilled Drilled
	sinkReport  UnbalanceReport
	sinkBob     Bobweight
)

func BenchmarkBalance(b *testing.B) {
	d := Drilling{Diameter: 12 * units.Millimetre, Point: 118 * units.Degree, Radius: 80 * units.Millimetre, Deepest: 30 * units.Millimetre, DensityGPerCM3: 7.85}
	b.Run("lib=tenthou/op=hole", func(b *testing.B) {
		for b.Loop() {
			sinkDrilled, _ = d.Hole(15 * units.Millimetre)
		}
	})
	b.Run("lib=tenthou/op=holefor", func(b *testing.B) {
		for b.Loop() {
			sinkDrilled, _ = d.For(500)
		}
	})
	r := UnbalanceRotor{Mass: 20 * units.Kilogram, RPM: 6000, GradeMMPS: 6.3, BearingB: 400 * units.Millimetre, Readings: []UnbalanceReading{{AmountGMM: 20}, {AmountGMM: 30, At: units.Metre}}}
	b.Run("lib=tenthou/op=unbalance", func(b *testing.B) {
		for b.Loop() {
			sinkReport, _ = r.Assess()
		}
	})
	rod := BobweightRod{BigEnd: grams(b, "621.5 g"), SmallEnd: grams(b, "230 g"), Piston: grams(b, "510 g")}
	pin := BobweightPin{Rods: []BobweightRod{rod, rod}, Factor: tolerance.Ratio{Num: 1, Den: 2}}
	b.Run("lib=tenthou/op=bobweight", func(b *testing.B) {
		for b.Loop() {
			sinkBob, _ = pin.Bobweight()
		}
	})
}
