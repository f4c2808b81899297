package crank

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A DrillWay is how a balancing hole goes into a counterweight. The zero value
// is DrillRoundRim.
type DrillWay uint8

// The ways.
const (
	DrillRoundRim DrillWay = iota // towards the shaft's axis, into a rim that is round about it
	DrillFlat                     // towards the shaft's axis, from a flat spot across the hole
	DrillAxial                    // along the shaft, from a flat face
)

var drillWays = [...]string{"round rim", "flat", "axial"}

// String is the way in words.
func (w DrillWay) String() string {
	if int(w) >= len(drillWays) {
		w = 0
	}
	return drillWays[w]
}

// MarshalText writes what String gives.
func (w DrillWay) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// UnmarshalText reads what String gives.
func (w *DrillWay) UnmarshalText(text []byte) error {
	for i, name := range drillWays {
		if name == string(text) {
			*w = DrillWay(i)
			return nil
		}
	}
	return &InputError{"way of drilling", strconv.Quote(bobweightName(string(text), "")), `one of "round rim", "flat", "axial"`}
}

// A Drilling is how balancing holes are drilled on one counterweight.
type Drilling struct {
	Way      DrillWay     `json:"way"`      // into what the hole goes, and which way
	Diameter units.Length `json:"diameter"` // of the drill
	Point    units.Angle  `json:"point"`    // included angle of the drill's point: 118° or 135° are usual
	// Radius is from the shaft's axis: to the hole's mouth where it is drilled
	// towards the axis, to the hole's own axis where it is drilled along the
	// shaft.
	Radius units.Length `json:"radius"`
	// Deepest is how deep the point may go, by what lies below: oil ways,
	// plugs, the web. It must be given.
	Deepest        units.Length `json:"deepest"`
	DensityGPerCM3 float64      `json:"densityGPerCM3"` // 7.85 for steel, 7.1 to 7.3 for cast iron: from memory
}

// A Drilled is one hole.
type Drilled struct {
	ToPoint      units.Length `json:"toPoint"`      // depth to the drill's point, as a depth stop is set
	FullDiameter units.Length `json:"fullDiameter"` // depth of the full diameter, as a drawing gives it; 0 where only the point went in
	Volume       units.Volume `json:"volume"`       // of what was drilled out, to the nearest 10⁻¹¹ cm³ of a float64
	MassG        float64      `json:"mass_g"`       // what was drilled out, in grams
	// CentreRadius is how far from the shaft's axis the mass centre of what was
	// drilled out was: it gets less as a hole towards the axis gets deeper.
	CentreRadius units.Length `json:"centreRadius"`
	UnbalanceGMM float64      `json:"unbalance_g_mm"` // what it takes away on its side
}

// Check refuses what is no drill, no counterweight and no metal. Its error is
// an [InputError].
func (d Drilling) Check() error {
	switch {
	case int(d.Way) >= len(drillWays):
		return &InputError{"way of drilling", strconv.Itoa(int(d.Way)), "one that has a name"}
	case d.Diameter < units.Millimetre/10 || d.Diameter > units.Metre/10:
		return &InputError{"drill's diameter", d.Diameter.String(), "from 0.1 to 100 mm"}
	case d.Point < 30*units.Degree || d.Point > 175*units.Degree:
		return &InputError{"angle of the drill's point", d.Point.String(), "the included angle, from 30° to 175°"}
	case d.Radius < d.Diameter || d.Radius > 5*units.Metre:
		return &InputError{"radius of the hole", d.Radius.String(), "at least the drill's diameter, " + d.Diameter.String() + ", and at most 5 m"}
	case d.Deepest <= 0 || d.Deepest > 5*units.Metre:
		return &InputError{"deepest hole", d.Deepest.String(), "above 0 mm and at most 5 m"}
	case d.Way != DrillAxial && d.Deepest >= d.Radius:
		return &InputError{"deepest hole", d.Deepest.String(), "less than the radius, " + d.Radius.String() + ": it would reach the shaft's axis"}
	case !(d.DensityGPerCM3 >= 0.5 && d.DensityGPerCM3 <= 25):
		return &InputError{"density", sliderText(d.DensityGPerCM3, "g/cm³"), "from 0.5 to 25 g/cm³: steel has 7.85"}
	}
	return nil
}

// Hole is the hole whose point goes to a depth, up to the deepest. A depth that
// is less than the point's height makes a cone. It fails with an [InputError].
func (d Drilling) Hole(toPoint units.Length) (Drilled, error) {
	if err := d.Check(); err != nil {
		return Drilled{}, err
	}
	if toPoint < 0 || toPoint > d.Deepest {
		return Drilled{}, &InputError{"depth", toPoint.String(), "from 0 mm to the deepest, " + d.Deepest.String()}
	}
	return d.hole(toPoint), nil
}

// HoleOfFull is [Drilling.Hole] by the depth of the full diameter, as a drawing
// gives it: the point goes deeper by its height.
func (d Drilling) HoleOfFull(depth units.Length) (Drilled, error) {
	if err := d.Check(); err != nil {
		return Drilled{}, err
	}
	if depth < 0 {
		return Drilled{}, &InputError{"depth of the full diameter", depth.String(), "0 mm or more"}
	}
	h := DrillHole[tolerance.Float]{Diameter: sliderMM(d.Diameter), Point: tolerance.Float(d.Point.Radians())}
	return d.Hole(depth.Add(sliderLength(h.PointHeight())))
}

func (d Drilling) hole(toPoint units.Length) Drilled {
	s := d.shape(toPoint.Float(units.InMillimetres))
	r := Drilled{ToPoint: toPoint, FullDiameter: max(sliderLength(tolerance.Float(s.full)), 0), MassG: s.mass(d), UnbalanceGMM: s.unbalance(d)}
	r.CentreRadius = d.Radius
	if r.MassG > 0 {
		r.CentreRadius = sliderLength(tolerance.Float(r.UnbalanceGMM / r.MassG))
	}
	if v, err := units.Nearest(s.volume, units.InCubicMillimetres); err == nil {
		r.Volume = v
	}
	return r
}

// A drillShape is the volume of a hole and its moment about the shaft's axis,
// by its area, in mm.
type drillShape struct{ full, volume, moment float64 }

func (s drillShape) mass(d Drilling) float64      { return d.DensityGPerCM3 * s.volume / 1000 }
func (s drillShape) unbalance(d Drilling) float64 { return d.DensityGPerCM3 * s.moment / 1000 }

// shape is that of the hole with its point at a depth. A cone alone is a hole
// of a lesser diameter with a depth of nothing, so that one set of formulas
// serves.
func (d Drilling) shape(toPoint float64) drillShape {
	radius := tolerance.Float(d.Radius.Float(units.InMillimetres))
	h := DrillHole[tolerance.Float]{
		Diameter: tolerance.Float(d.Diameter.Float(units.InMillimetres)),
		Point:    tolerance.Float(d.Point.Radians()),
	}
	h.Depth = tolerance.Float(toPoint) - h.PointHeight()
	full := float64(h.Depth)
	if h.Depth < 0 {
		h.Diameter = h.Diameter * tolerance.Float(toPoint) / h.PointHeight()
		h.Depth = 0
	}
	s := drillShape{full: full, volume: float64(h.Volume())}
	if s.volume == 0 {
		return drillShape{full: full}
	}
	// A density of 1000 g/cm³ is a gram for each cubic millimetre.
	switch d.Way {
	case DrillAxial:
		s.moment = float64(h.AxialGMM(1000, radius))
	case DrillFlat:
		s.moment = float64(h.RadialGMM(1000, radius))
	default:
		s.moment = float64(h.RadialRimGMM(1000, radius))
		s.volume -= rimFall(float64(h.Diameter), float64(radius))
	}
	return s
}

// rimFall is what is missing above a round rim below its highest point, over
// the mouth of a hole: the disc's mean of R − √(R² − y²) times its area, to
// its third term; the next is below a millionth of it for a hole of a tenth of
// the radius.
func rimFall(diameter, radius float64) float64 {
	a := diameter / 2
	q := a * a / (radius * radius)
	return math.Pi * a * a * radius * q / 8 * (1 + q/8*(1+q*5/16))
}

// For is the hole that takes away an unbalance in g·mm, found by bisection on
// the depth to the picometre. It fails with an [InputError] for an unbalance
// that isn't above zero, or that takes a hole deeper than the deepest: then
// [Drilling.Row] shares it out. Drill less than it says, spin the shaft again,
// and go on from there.
func (d Drilling) For(unbalanceGMM float64) (Drilled, error) {
	if err := d.Check(); err != nil {
		return Drilled{}, err
	}
	if !(unbalanceGMM > 0 && unbalanceGMM < 1e12) {
		return Drilled{}, &InputError{"unbalance", sliderText(unbalanceGMM, "g·mm"), "above 0 g·mm"}
	}
	most := d.hole(d.Deepest)
	if unbalanceGMM > most.UnbalanceGMM {
		return Drilled{}, &InputError{"unbalance", sliderText(unbalanceGMM, "g·mm"), "at most what the deepest hole takes away, " + strconv.FormatFloat(most.UnbalanceGMM, 'f', 1, 64) + " g·mm"}
	}
	// The unbalance grows with the depth as long as that is less than the
	// radius: what is drilled out lies on the hole's side of the axis.
	lo, hi := units.Length(0), d.Deepest
	for hi-lo > units.Picometre {
		if m := lo + (hi-lo)/2; d.shape(m.Float(units.InMillimetres)).unbalance(d) < unbalanceGMM {
			lo = m
		} else {
			hi = m
		}
	}
	return d.hole(hi), nil
}

// DrillRowFactor is how much of the unbalance of so many equal holes, evenly
// apart round the shaft by an angle in radians, counts towards their middle:
// sin(n·angle/2)/sin(angle/2). Of two holes 60° apart 1.73 counts, not 2.
func DrillRowFactor[R tolerance.Real[R]](count, apart R) R {
	half := apart.Quo(apart.Const(2))
	return count.Mul(half).Sin().Quo(half.Sin())
}

// Row shares an unbalance out to as few equal holes as will do, evenly apart
// round the shaft by an angle with the heavy place in their middle, at most so
// many. It fails with an [InputError] as [Drilling.For] does, where the holes
// would meet at their mouths or reach halfway round, and where the most aren't
// enough.
func (d Drilling) Row(unbalanceGMM float64, apart units.Angle, most int) ([]Drilled, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	if most < 1 || most > 100 {
		return nil, &InputError{"most holes", strconv.Itoa(most), "from 1 to 100"}
	}
	least, _ := units.AngleFromRadians(2 * math.Asin(d.Diameter.Float(units.InMillimetres)/2/d.Radius.Float(units.InMillimetres)))
	if most > 1 && (apart <= least || apart > units.Turn/2) {
		return nil, &InputError{"angle between holes", apart.String(), "more than " + least.Text(units.InDegrees, 1) + ", where they meet, and at most 180°"}
	}
	for n := 1; n <= most && (n == 1 || units.Angle(n-1)*apart < units.Turn/2); n++ {
		share := unbalanceGMM
		if n > 1 {
			share /= float64(DrillRowFactor(tolerance.Float(n), tolerance.Float(apart.Radians())))
		}
		if share > d.hole(d.Deepest).UnbalanceGMM {
			continue
		}
		one, err := d.For(share)
		if err != nil {
			return nil, err
		}
		row := make([]Drilled, n)
		for i := range row {
			row[i] = one
		}
		return row, nil
	}
	return nil, &InputError{"unbalance", sliderText(unbalanceGMM, "g·mm"), "within what " + strconv.Itoa(most) + " holes this far apart can take away; drill on another counterweight too, or a larger hole"}
}
