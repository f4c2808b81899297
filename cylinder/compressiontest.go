package cylinder

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// CompressionBelow is how far one cylinder's pressure lies below the highest.
func CompressionBelow[N tolerance.Number[N]](highest, pressure N) N { return highest.Sub(pressure) }

// CompressionOfHighest is the share that one cylinder's pressure has of the
// highest, as that part of whole: with 100 of any unit, a percentage.
func CompressionOfHighest[N tolerance.Number[N]](whole, pressure, highest N) N {
	return whole.MulDiv(pressure, highest)
}

// WetRise is by how much oil in the cylinder raises its pressure.
func WetRise[N tolerance.Number[N]](dry, wet N) N { return wet.Sub(dry) }

// A CylinderPressure is what a gauge showed on one cylinder.
type CylinderPressure struct {
	Cylinder int                                `json:"cylinder"` // from 1
	Pressure tolerance.Interval[units.Pressure] `json:"pressure"` // above the atmosphere
}

// TestConditions are how a compression test was made. What isn't recorded
// can't be compared with the manual's figure, nor with last year's.
type TestConditions struct {
	Engine    Warmth   `json:"engine"`    // zero: not recorded
	Throttle  Throttle `json:"throttle"`  // zero: not recorded
	BatteryV  float64  `json:"batteryV"`  // while cranking; 0 where not recorded
	CrankRPM  float64  `json:"crankRPM"`  // 0 where not recorded
	AllOut    bool     `json:"allOut"`    // all spark plugs or injectors were out
	FuelOff   bool     `json:"fuelOff"`   // fuel was disabled
	SparkSafe bool     `json:"sparkSafe"` // ignition was disabled
}

// Warmth says whether an engine was at its working temperature.
type Warmth uint8

// The temperatures of an engine. The zero value is WarmthNotRecorded.
const (
	WarmthNotRecorded Warmth = iota
	Warm
	Cold
)

// Throttle says how the throttle was held.
type Throttle uint8

// The positions of a throttle. The zero value is ThrottleNotRecorded.
const (
	ThrottleNotRecorded Throttle = iota
	ThrottleOpen
	ThrottleClosed
	NoThrottle // the engine has none
)

var (
	warmthNames   = []string{"not recorded", "warm", "cold"}
	throttleNames = []string{"not recorded", "open", "closed", "none"}
)

// String is the warmth in words.
func (w Warmth) String() string { return wordOf(warmthNames, w) }

// MarshalText writes what String gives.
func (w Warmth) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// UnmarshalText reads what String gives.
func (w *Warmth) UnmarshalText(text []byte) error { return readWord("engine", warmthNames, text, w) }

// String is the position in words.
func (t Throttle) String() string { return wordOf(throttleNames, t) }

// MarshalText writes what String gives.
func (t Throttle) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads what String gives.
func (t *Throttle) UnmarshalText(text []byte) error {
	return readWord("throttle", throttleNames, text, t)
}

// missing names what of the conditions isn't recorded or isn't as it should be.
func (c TestConditions) missing() (m []string) {
	note := func(bad bool, text string) {
		if bad {
			m = append(m, text)
		}
	}
	note(c.Engine == WarmthNotRecorded, "the engine's temperature is not recorded")
	note(c.Engine == Cold, "the engine was cold")
	note(c.Throttle == ThrottleNotRecorded, "the throttle's position is not recorded")
	note(c.Throttle == ThrottleClosed, "the throttle was closed: readings are low")
	note(c.BatteryV == 0, "the battery's voltage while cranking is not recorded")
	note(c.CrankRPM == 0, "the cranking speed is not recorded")
	note(!c.AllOut, "not all plugs or injectors are recorded as out")
	note(!c.FuelOff, "fuel is not recorded as disabled")
	note(!c.SparkSafe, "ignition is not recorded as disabled")
	return m
}

func (c TestConditions) check() error {
	switch {
	case !(c.BatteryV >= 0 && c.BatteryV <= 100):
		return linerError("battery", linerNumber(c.BatteryV)+" V", "from 0 to 100 V")
	case !(c.CrankRPM >= 0 && c.CrankRPM <= 2000):
		return linerError("cranking speed", linerNumber(c.CrankRPM)+" r/min", "from 0 to 2000 r/min")
	case c.Engine > Cold || c.Throttle > NoThrottle:
		return linerError("conditions", fmt.Sprintf("%d, %d", c.Engine, c.Throttle), "recorded states")
	}
	return nil
}

// A CompressionTest is the test of all cylinders of an engine, made before it
// is stripped.
//
// Disable fuel and ignition first: fuel sprayed from an open plug hole burns,
// and a coil that has nowhere to go kills coils and hurts people. Keep hands
// and clothes from belts and fan, and stand clear of the open holes. A wet
// test is not for a diesel, whose small chamber the oil may fill or fire,
// unless its maker's manual describes one.
type CompressionTest struct {
	Cylinders  int                // the engine's
	Dry        []CylinderPressure // each cylinder once
	Wet        []CylinderPressure // of those that were tried with oil, each of them read dry too
	Conditions TestConditions     // as recorded; the zero value records nothing
	Limits     CompressionLimits  // the manual's; the zero value judges nothing
	Neighbours [][2]int           // cylinders side by side under one gasket; nil for 1-2, 2-3, … in one row
}

// CompressionLimits are the manual's. What it doesn't give stays zero, and
// isn't judged.
type CompressionLimits struct {
	Pressure tolerance.SpecOf[units.Pressure] `json:"pressure,omitzero"` // of each cylinder
	// Difference is between the highest and the lowest cylinder.
	Difference tolerance.BandOf[units.Pressure] `json:"difference,omitzero"`
	// LowPercent is how many per cent of the highest a cylinder must have.
	LowPercent int `json:"lowPercent,omitzero"`
	// RisePercent is from how many per cent of the dry reading on a wet rise
	// counts as one that points to rings or bore.
	RisePercent int `json:"risePercent,omitzero"`
}

// A CylinderCompression is what follows for one cylinder. Percentages of the
// highest are whole ones that hold what was read.
type CylinderCompression struct {
	Cylinder        int                                `json:"cylinder"`        // from 1
	Dry             tolerance.Interval[units.Pressure] `json:"dry"`             // as read, above the atmosphere
	Below           tolerance.Interval[units.Pressure] `json:"below"`           // the highest
	LeastPercent    int                                `json:"leastPercent"`    // of the highest, rounded down: from 0 to 100
	GreatestPercent int                                `json:"greatestPercent"` // of the highest, rounded up: from 0 to 100
	// Of says how it lies to LowPercent of the highest; Within where it has
	// that much.
	Of      tolerance.Verdict                   `json:"of"`
	Finding tolerance.FindingOf[units.Pressure] `json:"finding"`       // against the manual's pressure
	Wet     tolerance.Interval[units.Pressure]  `json:"wet,omitzero"`  // as read with oil in it; zero where it was not tried
	Rise    tolerance.Interval[units.Pressure]  `json:"rise,omitzero"` // wet less dry, below zero where oil lowered it; zero where not tried
	// Raised says whether oil raised it: Above where by RisePercent or more,
	// Within where by less.
	Raised tolerance.Verdict `json:"raised"`
}

// Low reports whether the cylinder is low for certain, by either limit.
func (c CylinderCompression) Low() bool {
	return c.Of == tolerance.Below || c.Finding.New.Least == tolerance.Below || c.Finding.Wear.Least == tolerance.Below
}

// A CompressionReport is what follows from a compression test.
type CompressionReport struct {
	Cylinders  []CylinderCompression              `json:"cylinders"`            // in the order of the dry readings
	Highest    tolerance.Interval[units.Pressure] `json:"highest"`              // of the dry readings
	Difference tolerance.Interval[units.Pressure] `json:"difference"`           // highest less lowest
	Even       tolerance.Verdict                  `json:"even"`                 // of the difference
	Missing    []int                              `json:"missing,omitempty"`    // cylinders without a dry reading
	Conditions []string                           `json:"conditions,omitempty"` // what stands against comparing with the manual
	Pointers   []Pointer                          `json:"pointers"`             // where the pattern points; none where it points nowhere
}

// Assess compares the cylinders with one another, with the highest and with
// the manual, and says what the pattern points to. The gauge's own error is
// common to all cylinders; brackets that hold it make differences wider than
// they need be.
func (t CompressionTest) Assess() (CompressionReport, error) {
	wet, missing, err := t.check()
	if err != nil {
		return CompressionReport{}, err
	}
	r := CompressionReport{Missing: missing, Conditions: t.Conditions.missing()}
	var all []tolerance.Interval[units.Pressure]
	for _, d := range t.Dry {
		all = append(all, d.Pressure)
	}
	_, r.Highest = tolerance.Extremes(all...)
	r.Difference = all[0].Spread(all[1:]...)
	r.Even = t.Limits.Difference.Judge(r.Difference)
	for _, d := range t.Dry {
		c, err := t.cylinder(d, wet[d.Cylinder], r.Highest)
		if err != nil {
			return CompressionReport{}, err
		}
		r.Cylinders = append(r.Cylinders, c)
	}
	r.Pointers = t.pointers(r)
	return r, nil
}

func (t CompressionTest) cylinder(d CylinderPressure, wet, highest tolerance.Interval[units.Pressure]) (CylinderCompression, error) {
	c := CylinderCompression{Cylinder: d.Cylinder, Dry: d.Pressure}
	// A cylinder is never above the highest, nor more than all of it.
	c.Below = CompressionBelow(highest, d.Pressure).Max(tolerance.Exactly(units.Pressure(0)))
	c.LeastPercent, c.GreatestPercent = stripPercent(d.Pressure, highest)
	if t.Limits.LowPercent > 0 {
		c.Of = stripAtLeast(d.Pressure, highest, t.Limits.LowPercent)
	}
	var err error
	c.Finding, err = tolerance.Assess("compression", fmt.Sprintf("cylinder %d", d.Cylinder), t.Limits.Pressure, d.Pressure)
	if err != nil || wet.IsZero() {
		return c, err
	}
	c.Wet, c.Rise = wet, WetRise(d.Pressure, wet)
	if t.Limits.RisePercent > 0 {
		c.Raised = stripRaised(d.Pressure, wet, t.Limits.RisePercent)
	}
	return c, nil
}

// stripAtLeast judges x ≥ percent·y/100 exactly: Within, Below or Undecided.
func stripAtLeast(x, y tolerance.Interval[units.Pressure], percent int) tolerance.Verdict {
	zero := tolerance.AtLeast(units.Pressure(0))
	return zero.Judge(x.Sub(y.Scale(int64(percent), 100)))
}

// stripRaised judges wet − dry ≥ percent of dry: Above, Within or Undecided.
func stripRaised(dry, wet tolerance.Interval[units.Pressure], percent int) tolerance.Verdict {
	switch stripAtLeast(wet, dry, 100+percent) {
	case tolerance.Within:
		return tolerance.Above
	case tolerance.Below:
		return tolerance.Within
	}
	return tolerance.Undecided
}

// stripPercent is the share of x in y in whole per cent, outward, at most 100.
func stripPercent(x, y tolerance.Interval[units.Pressure]) (least, greatest int) {
	xl, _ := x.Lower()
	xh, xe := x.Upper()
	yl, _ := y.Lower()
	yh, ye := y.Upper()
	if ye != tolerance.Absent && yh > 0 {
		least = int(math.Floor(100 * float64(max(xl, 0)) / float64(yh)))
	}
	greatest = 100
	if xe != tolerance.Absent && yl > 0 {
		greatest = min(100, int(math.Ceil(100*float64(xh)/float64(yl))))
	}
	return min(least, greatest), greatest
}
