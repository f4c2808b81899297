package cylinder

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
)

// A Sign is what a pattern of readings points to. It never proves it.
type Sign uint8

// The signs. The zero value is NoSign.
const (
	NoSign           Sign = iota // the readings don't point anywhere
	TestAgain                    // conditions or readings are missing
	RingsOrBore                  // oil raises it, or the leak is heard in the crankcase
	ValvesOrGasket               // oil doesn't raise it
	GasketBetween                // two neighbours
	AllLow                       // every cylinder: the test itself, valve timing, or wear all over
	TooHigh                      // above the new band: deposits, or oil in the chamber
	InletValve                   // heard at the inlet
	ExhaustValve                 // heard at the exhaust
	GasketOrCrack                // bubbles in the coolant
	GasketOutward                // heard along the joint of head and block
	TimingOrBothOpen             // all the air goes out at once
)

var signNames = []string{
	"nothing",
	"test again",
	"piston rings, piston or bore",
	"valves, their seats or the head gasket",
	"the head gasket between two cylinders",
	"the test itself, valve timing, or wear all over",
	"deposits or oil in the chamber",
	"inlet valve or its seat",
	"exhaust valve or its seat",
	"head gasket into the coolant, or a crack",
	"head gasket to the outside",
	"a piston not at top dead centre on its compression stroke, or a valve held open",
}

// String is the sign in words.
func (s Sign) String() string { return wordOf(signNames, s) }

// MarshalText writes what String gives.
func (s Sign) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// A Pointer is where a pattern points, why, and what to look at next.
type Pointer struct {
	Cylinders []int  `json:"cylinders"` // those it is about, from 1
	Sign      Sign   `json:"sign"`      // what it points to
	Because   string `json:"because"`   // what was seen: "it is low and oil raises it"
	Next      string `json:"next"`      // what to look at next
}

// String is the pointer in words.
func (p Pointer) String() string {
	s := stripList(p.Cylinders)
	if s != "" {
		s += ": "
	}
	return s + p.Because + ", which points to " + p.Sign.String() + " and proves nothing; " + p.Next
}

// stripList names cylinders.
func stripList(n []int) string {
	switch len(n) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("cylinder %d", n[0])
	}
	var s strings.Builder
	s.WriteString("cylinders ")
	for i, c := range n {
		switch {
		case i == len(n)-1:
			s.WriteString(" and ")
		case i > 0:
			s.WriteString(", ")
		}
		s.WriteString(fmt.Sprint(c))
	}
	return s.String()
}

// pointers reads the pattern. What a wet test and neighbours point to is
// common practice.
func (t CompressionTest) pointers(r CompressionReport) (p []Pointer) {
	add := func(sign Sign, because, next string, cylinders ...int) {
		p = append(p, Pointer{Cylinders: cylinders, Sign: sign, Because: because, Next: next})
	}
	if len(r.Missing) > 0 {
		add(TestAgain, "not read", "read every cylinder before comparing them", r.Missing...)
	}
	by := map[int]CylinderCompression{}
	low := map[int]bool{}
	var all []int
	for _, c := range r.Cylinders {
		by[c.Cylinder], low[c.Cylinder] = c, c.Low()
		all = append(all, c.Cylinder)
	}
	below := 0
	for _, c := range r.Cylinders {
		if c.Finding.New.Least == tolerance.Below || c.Finding.Wear.Least == tolerance.Below {
			below++
		}
		if c.Finding.New.Greatest == tolerance.Above || c.Finding.Wear.Greatest == tolerance.Above {
			add(TooHigh, "above the limits", "look into the chamber before anything else, and check that the gauge reads true", c.Cylinder)
		}
	}
	if below == len(all) {
		add(AllLow, "every cylinder is below the limits", "check throttle, battery, cranking speed, gauge and valve clearance, then test again", all...)
	}
	between := map[int]bool{}
	for _, n := range stripNeighbours(t.Neighbours, t.Cylinders) {
		// Oil that raises either is rather a sign of its rings.
		a, b := by[n[0]], by[n[1]]
		if below < len(all) && low[n[0]] && low[n[1]] && a.Raised != tolerance.Above && b.Raised != tolerance.Above {
			between[n[0]], between[n[1]] = true, true
			add(GasketBetween, "two neighbours are low", "listen at one's open plug hole while the other is under air", n[0], n[1])
		}
	}
	for _, c := range r.Cylinders {
		switch {
		case !low[c.Cylinder]:
			if c.Of == tolerance.Undecided && t.Limits.LowPercent > 0 {
				add(TestAgain, "the readings don't tell whether it is low", "read it again with a finer gauge", c.Cylinder)
			}
		case c.Raised == tolerance.Above:
			add(RingsOrBore, "it is low and oil raises it", "test for leakage and listen at the oil filler", c.Cylinder)
		case between[c.Cylinder]:
		case c.Raised == tolerance.Within:
			add(ValvesOrGasket, "it is low and oil doesn't raise it", "check its valve clearance, then test for leakage and listen at inlet, exhaust and coolant", c.Cylinder)
		case c.Wet.IsZero():
			add(TestAgain, "it is low and was not tried with oil", "test it wet, where the manual allows that, or for leakage", c.Cylinder)
		default:
			add(TestAgain, "it is low and the wet test doesn't tell", "test for leakage", c.Cylinder)
		}
	}
	return p
}
