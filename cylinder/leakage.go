package cylinder

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// LeakageDrop is how far the pressure in a cylinder stays below the supply's.
func LeakageDrop[N tolerance.Number[N]](supply, held N) N { return supply.Sub(held) }

// LeakageShare is the leakage as a part of whole: with 100 of any unit, in per
// cent of the supply's pressure. It depends on the tester's orifice, so two
// testers' figures don't compare.
func LeakageShare[N tolerance.Number[N]](whole, supply, held N) N {
	return whole.Sub(whole.MulDiv(held, supply))
}

// A Heard is where escaping air was heard or seen.
type Heard uint8

// The places where air escapes.
const (
	AtInlet     Heard = iota + 1 // at the open throttle or air filter
	AtExhaust                    // at the tailpipe
	AtOilFiller                  // at the oil filler or dipstick
	InCoolant                    // bubbles at the radiator or header tank
	AtNeighbour                  // at the open plug hole of a neighbour
	AtHeadJoint                  // along the joint of head and block
	AllAtOnce                    // nothing is held at all
)

var heardNames = []string{"", "inlet", "exhaust", "oil filler", "coolant", "neighbour", "head joint", "all at once"}

// String is the place in words.
func (h Heard) String() string { return wordOf(heardNames, h) }

// MarshalText writes what String gives.
func (h Heard) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads what String gives.
func (h *Heard) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return linerError("heard at", `""`, "a place such as inlet")
	}
	return readWord("heard at", heardNames, text, h)
}

// A CylinderLeakage is what was read of one cylinder, its piston at top dead
// centre on the compression stroke.
type CylinderLeakage struct {
	Cylinder int                                `json:"cylinder"`        // from 1
	Supply   tolerance.Interval[units.Pressure] `json:"supply"`          // regulated pressure before the tester's orifice, above the atmosphere and above 0
	Held     tolerance.Interval[units.Pressure] `json:"held"`            // pressure that stays in the cylinder, above the atmosphere: from 0 to the supply
	Heard    []Heard                            `json:"heard,omitempty"` // where the air escapes; none where not listened for or not heard
	// Neighbour is where AtNeighbour was heard; 0 where not told.
	Neighbour int `json:"neighbour,omitzero"`
}

// LeakagePercent is the reading of a tester that shows per cent leakage, as a
// supply of 100 kPa and what is held of it.
func LeakagePercent(cylinder, least, greatest int, heard ...Heard) (CylinderLeakage, error) {
	if least < 0 || greatest < least || greatest > 100 {
		return CylinderLeakage{}, linerError(fmt.Sprintf("leakage of cylinder %d", cylinder), fmt.Sprintf("%d to %d %%", least, greatest), "from 0 to 100 %, the least first")
	}
	held, err := tolerance.NewInterval(units.Pressure(100-greatest)*units.Kilopascal, tolerance.Closed, units.Pressure(100-least)*units.Kilopascal, tolerance.Closed)
	return CylinderLeakage{Cylinder: cylinder, Supply: tolerance.Exactly(100 * units.Kilopascal), Held: held, Heard: heard}, err
}

// A LeakageTest is the test of all cylinders of an engine.
//
// The air turns the crank unless it is held at top dead centre exactly: keep
// hands, tools and the bar on the crank bolt clear, and never leave a bar or
// spanner on it. Disable the ignition. Open a hot cooling system never, and a
// cold one slowly.
type LeakageTest struct {
	Cylinders  int               // the engine's, 2 or more
	Readings   []CylinderLeakage // of two cylinders or more, each once
	Engine     Warmth            // zero: not recorded
	Most       int               // greatest leakage allowed in per cent, the manual's; 0 where not given
	Difference int               // greatest between two cylinders in per cent; 0 where not given
}

// A CylinderLeakageReport is what follows for one cylinder. Percentages are
// whole ones that hold what was read.
type CylinderLeakageReport struct {
	Cylinder        int                                `json:"cylinder"`        // from 1
	Drop            tolerance.Interval[units.Pressure] `json:"drop"`            // supply less held
	LeastPercent    int                                `json:"leastPercent"`    // leakage in per cent of the supply, rounded down: from 0 to 100
	GreatestPercent int                                `json:"greatestPercent"` // rounded up
	Verdict         tolerance.Verdict                  `json:"verdict"`         // against Most
}

// A LeakageReport is what follows from a leakage test.
type LeakageReport struct {
	Cylinders []CylinderLeakageReport `json:"cylinders"` // in the order of the readings
	// LeastDifference is the least that the greatest leakage and the least may
	// differ by, in per cent of the supply: 0 or more.
	LeastDifference int `json:"leastDifference"`
	// GreatestDifference is the most that they may differ by.
	GreatestDifference int `json:"greatestDifference"`
	// Even says how they lie to the difference allowed; Undecided too where
	// none is given.
	Even       tolerance.Verdict `json:"even"`
	Missing    []int             `json:"missing,omitempty"`    // cylinders that were not read
	Conditions []string          `json:"conditions,omitempty"` // what stands against comparing with the manual
	Pointers   []Pointer         `json:"pointers"`             // where what was heard points; none where it points nowhere
}

// Assess compares the cylinders and says what was heard points to.
func (t LeakageTest) Assess() (LeakageReport, error) {
	have, err := t.check()
	if err != nil {
		return LeakageReport{}, err
	}
	r := LeakageReport{Missing: stripMissing(have, t.Cylinders)}
	switch t.Engine {
	case WarmthNotRecorded:
		r.Conditions = []string{"the engine's temperature is not recorded"}
	case Cold:
		r.Conditions = []string{"the engine was cold: leakage reads high"}
	}
	if len(r.Missing) > 0 {
		r.Pointers = append(r.Pointers, Pointer{r.Missing, TestAgain, "not read", "read every cylinder before comparing them"})
	}
	var minLeast, minGreatest, maxLeast, maxGreatest int
	for i, c := range t.Readings {
		one := CylinderLeakageReport{Cylinder: c.Cylinder, Drop: LeakageDrop(c.Supply, c.Held)}
		least, greatest := stripPercent(c.Held, c.Supply)
		one.LeastPercent, one.GreatestPercent = 100-greatest, 100-least
		if t.Most > 0 {
			// Leakage at most so much: held at least the rest.
			if one.Verdict = stripAtLeast(c.Held, c.Supply, 100-t.Most); one.Verdict == tolerance.Below {
				one.Verdict = tolerance.Above
			}
		}
		if i == 0 {
			minLeast, minGreatest, maxLeast, maxGreatest = one.LeastPercent, one.GreatestPercent, one.LeastPercent, one.GreatestPercent
		}
		minLeast, minGreatest = min(minLeast, one.LeastPercent), min(minGreatest, one.GreatestPercent)
		maxLeast, maxGreatest = max(maxLeast, one.LeastPercent), max(maxGreatest, one.GreatestPercent)
		r.Cylinders = append(r.Cylinders, one)
		r.Pointers = append(r.Pointers, c.pointers(one.Verdict)...)
	}
	r.LeastDifference, r.GreatestDifference = max(0, maxLeast-minGreatest), maxGreatest-minLeast
	switch {
	case t.Difference == 0:
	case r.GreatestDifference <= t.Difference:
		r.Even = tolerance.Within
	case r.LeastDifference > t.Difference:
		r.Even = tolerance.Above
	}
	return r, nil
}

// heardSigns is what a place points to and what to look at next.
var heardSigns = [...]struct {
	sign    Sign
	because string
	next    string
}{
	AtInlet:     {InletValve, "air is heard at the inlet", "check that valve's clearance first"},
	AtExhaust:   {ExhaustValve, "air is heard at the exhaust", "check that valve's clearance first"},
	AtOilFiller: {RingsOrBore, "air is heard at the oil filler", "some passes the ring gaps always: compare with the other cylinders"},
	InCoolant:   {GasketOrCrack, "bubbles rise in the coolant", "check the faces for flatness, and head and block for cracks"},
	AtNeighbour: {GasketBetween, "air is heard at a neighbour's plug hole", "check both faces for flatness between them"},
	AtHeadJoint: {GasketOutward, "air is heard along the head joint", "check both faces for flatness there"},
	AllAtOnce:   {TimingOrBothOpen, "nothing is held", "bring the piston to top dead centre on its compression stroke and try again"},
}

func (c CylinderLeakage) pointers(v tolerance.Verdict) (p []Pointer) {
	for _, h := range c.Heard {
		s := heardSigns[h]
		cylinders := []int{c.Cylinder}
		if h == AtNeighbour && c.Neighbour != 0 {
			cylinders = append(cylinders, c.Neighbour)
		}
		p = append(p, Pointer{cylinders, s.sign, s.because, s.next})
	}
	if len(c.Heard) == 0 && v == tolerance.Above {
		p = append(p, Pointer{[]int{c.Cylinder}, TestAgain, "it leaks more than is allowed and nothing is recorded as heard", "listen at inlet, exhaust, oil filler, coolant and the neighbours"})
	}
	return p
}

func (t LeakageTest) check() (map[int]tolerance.Interval[units.Pressure], error) {
	if err := stripCylinders(t.Cylinders); err != nil {
		return nil, err
	}
	if t.Most < 0 || t.Most > 100 || t.Difference < 0 || t.Difference > 100 {
		return nil, linerError("leakage limits", fmt.Sprintf("%d and %d %%", t.Most, t.Difference), "from 0 to 100 %")
	}
	if t.Engine > Cold {
		return nil, linerError("engine", fmt.Sprint(uint8(t.Engine)), "a recorded state")
	}
	var list []CylinderPressure
	for _, c := range t.Readings {
		list = append(list, CylinderPressure{c.Cylinder, c.Held})
	}
	have, err := stripReadings("held", list, t.Cylinders)
	if err != nil {
		return nil, err
	}
	if len(have) < 2 {
		return nil, linerError("leakage readings", fmt.Sprint(len(have)), "at least 2: one cylinder has nothing to be compared with")
	}
	for _, c := range t.Readings {
		field := fmt.Sprintf("supply of cylinder %d", c.Cylinder)
		if err := stripPressure(field, c.Supply); err != nil {
			return nil, err
		}
		lo, _ := c.Supply.Lower()
		_, end := c.Held.Upper()
		most, supplyEnd := c.Supply.Upper()
		held, _ := c.Held.Lower()
		if lo <= 0 || end == tolerance.Absent || supplyEnd != tolerance.Absent && held > most {
			return nil, linerError(field, c.Supply.String(), "above 0, with a held pressure that ends and is no more than it, "+c.Held.String())
		}
		for _, h := range c.Heard {
			if h < AtInlet || h > AllAtOnce {
				return nil, linerError("heard at", fmt.Sprint(uint8(h)), "a place that is known")
			}
		}
		if c.Neighbour < 0 || c.Neighbour > t.Cylinders || c.Neighbour == c.Cylinder {
			return nil, linerError("neighbour", fmt.Sprint(c.Neighbour), "another cylinder")
		}
	}
	return have, nil
}
