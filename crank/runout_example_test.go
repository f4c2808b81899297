package crank_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func inches(s string) units.Length { return units.MustParseLength(s + " in") }

func millimetres(s string) units.Length { return units.MustParseLength(s + " mm") }

func bracketOf(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

// Readings at 12, 3, 6 and 9 o'clock.
func ExampleRunOut() {
	r := crank.RunOut(inches("0"), inches(".003"), inches("-.002"), inches(".003"))
	fmt.Println(r.Text(units.InInches, 3))
	// Output: 0.005 in
}

func ExampleBendOfRunOut() {
	fmt.Println(crank.BendOfRunOut(millimetres("0.08")))
	// Output: 0.04 mm
}

func ExampleRunOutOfBend() {
	fmt.Println(crank.RunOutOfBend(millimetres("0.04")))
	// Output: 0.08 mm
}

// Run-out of 0.01 mm at one end main and 0.03 mm, the same way, at the other: at
// a quarter of the way the shaft takes 0.015 mm along from them.
func ExampleSupportLine() {
	fmt.Println(crank.SupportLine(millimetres("0.01"), millimetres("0.03"), millimetres("100"), millimetres("300")))
	// Output: 0.015 mm
}

// Twelve readings would do better; four take three lobes for a bend.
func ExampleRunOutComponents() {
	x, y := crank.RunOutComponents(tolerance.Float(0), 5, 10, 5)
	fmt.Printf("run-out %.0f, high point at %.0f°\n", crank.RunOutOf(x, y), crank.HighPoint(x, y)*180/math.Pi)
	// Output: run-out 10, high point at 180°
}

func ExampleBendOf() {
	fmt.Printf("%.0f µm\n", crank.BendOf(tolerance.Float(3), 4))
	// Output: 5 µm
}

func ExampleRunOutOf() {
	fmt.Printf("%.0f µm\n", crank.RunOutOf(tolerance.Float(3), 4))
	// Output: 10 µm
}

func ExampleHighPoint() {
	fmt.Printf("%.0f°\n", crank.HighPoint(tolerance.Float(0), 7)*180/math.Pi)
	// Output: 90°
}

// Two journals of .002 in run-out each: opposite they add up, at right angles
// the second is .00283 in off the first.
func ExampleNeighbourRunOut() {
	for _, degrees := range []tolerance.Float{0, 90, 180} {
		fmt.Printf("%3.0f°: %.5f in\n", degrees, crank.NeighbourRunOut(0.002, 0.002, degrees*math.Pi/180))
	}
	// Output:
	//   0°: 0.00000 in
	//  90°: 0.00283 in
	// 180°: 0.00400 in
}

func ExampleNeighbourSum() {
	fmt.Println(crank.NeighbourSum(inches(".002"), inches(".0015")).Text(units.InInches, 4))
	// Output: 0.0035 in
}

func ExampleNeighbourDifference() {
	fmt.Println(crank.NeighbourDifference(inches(".002"), inches(".0035")).Text(units.InInches, 4))
	// Output: 0.0015 in
}

func ExampleFaceRunOutAt() {
	fmt.Println(crank.FaceRunOutAt(millimetres("0.06"), millimetres("120"), millimetres("100")))
	// Output: 0.05 mm
}

func ExampleFaceTilt() {
	fmt.Printf("%.5f rad\n", crank.FaceTilt(tolerance.Float(0.06), 120))
	// Output: 0.00025 rad
}

// The shaft crept 0.1 mm while the flywheel turned; two dials take it out.
func ExampleFaceReading() {
	fmt.Println(crank.FaceReading(millimetres("0.12"), millimetres("0.08")))
	// Output: 0.02 mm
}

func ExampleFaceShift() {
	fmt.Println(crank.FaceShift(millimetres("0.12"), millimetres("0.08")))
	// Output: 0.1 mm
}

// An oval journal: half the dial's reading claims more bend than there is.
func ExampleRunOutTurn_Separate() {
	turn := crank.RunOutTurn{Where: "main 3"}
	for _, micrometres := range []int64{45, 35, 10, -12, -15, 5, 26, 25, 0, -32, -45, -12} {
		turn.Readings = append(turn.Readings, units.Length(micrometres)*units.Micrometre)
	}
	s, err := turn.Separate(units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	half, _ := crank.BendOfRunOut(s.Total).Middle()
	bend, _ := s.Off.Bend().Middle()
	fmt.Println("half the run-out", half)
	fmt.Println("bend            ", bend.Text(units.InMillimetres, 3))
	fmt.Println("ovality         ", s.Ovality.Text(units.InMillimetres, 3))
	// Output:
	// half the run-out 0.045 mm
	// bend             0.011 mm
	// ovality          0.136 mm
}

func ExampleRunOutVector_Bend() {
	v := crank.RunOutVector{Cosine: 3 * units.Micrometre, Sine: 4 * units.Micrometre, Error: units.Micrometre}
	fmt.Println(v.Bend())
	// Output: [0.004 mm, 0.006 mm]
}

func ExampleRunOutVector_RunOut() {
	v := crank.RunOutVector{Cosine: 3 * units.Micrometre, Sine: 4 * units.Micrometre, Error: units.Micrometre}
	fmt.Println(v.RunOut())
	// Output: [0.008 mm, 0.012 mm]
}

func ExampleRunOutVector_HighPoint() {
	v := crank.RunOutVector{Cosine: 3 * units.Micrometre, Sine: 4 * units.Micrometre, Error: units.Micrometre}
	at, within := v.HighPoint()
	fmt.Println(at.Text(units.InDegrees, 0), "give or take", within.Text(units.InDegrees, 0))
	// Output: 53° give or take 12°
}

func ExampleRunOutVector_Sub() {
	a, b := crank.RunOutVector{Cosine: 5 * units.Micrometre}, crank.RunOutVector{Cosine: -5 * units.Micrometre}
	fmt.Println(a.Sub(b).RunOut())
	// Output: 0.02 mm
}

func ExampleNeighbourLimits_CompareNeighbours() {
	limits := crank.NeighbourLimits{
		Along:     tolerance.Spec{Wear: tolerance.MustParseBand("max 0.003 in")},
		RightSum:  tolerance.Spec{Wear: tolerance.MustParseBand("max 0.004 in")},
		RightEach: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.002 in")},
	}
	a := crank.RunOutVector{Cosine: inches(".00105")} // run-out .0021 in
	b := crank.RunOutVector{Sine: inches(".001")}     // run-out .0020 in
	n, err := limits.CompareNeighbours("main 2", a, "main 3", b)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Between, n.Manual[0].Case)
	fmt.Println("by the vectors:", n.Vector.Standing)
	fmt.Println("by the manual: ", n.Standing)
	// Output:
	// 90° at right angles
	// by the vectors: usable
	// by the manual:  past the wear limit
}

func ExampleNeighbourCase_String() {
	fmt.Println(crank.Opposite)
	// Output: opposite
}

func ExampleStraightShaft() {
	places := []units.Length{0, millimetres("100"), millimetres("200")}
	line, err := crank.StraightShaft(places, []crank.RunOutVector{{}, {Cosine: 30 * units.Micrometre}, {}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(line.Most, "off the straight line at main", line.MostAt+1)
	// Output: 0.02 mm off the straight line at main 2
}

func ExampleRunOutSurvey_Inspect() {
	um := func(values ...int64) (all []units.Length) {
		for _, v := range values {
			all = append(all, units.Length(v)*units.Micrometre)
		}
		return all
	}
	s := crank.RunOutSurvey{
		Journals: []crank.RunOutJournal{
			{RunOutTurn: crank.RunOutTurn{Where: "main 1", Readings: um(0, 0, 0, 0, 0, 0, 0, 0)}},
			{RunOutTurn: crank.RunOutTurn{Where: "main 2", Position: millimetres("110"), Readings: um(0, 9, 30, 51, 60, 51, 30, 9)}},
			{RunOutTurn: crank.RunOutTurn{Where: "main 3", Position: millimetres("220"), Readings: um(0, 0, 0, 0, 0, 0, 0, 0)}},
		},
		Second: 2, Error: units.Micrometre,
		Bend: tolerance.Spec{New: tolerance.MustParseBand("max 0.02 mm"), Wear: tolerance.MustParseBand("max 0.05 mm")},
	}
	r, err := s.Inspect()
	if err != nil {
		fmt.Println(err)
		return
	}
	at, _ := r.Journals[1].Relative.HighPoint()
	fmt.Println(r.WorstAt+":", r.Worst, "with the high point at", at.Text(units.InDegrees, 0))
	// Output: bend, main 2: usable with the high point at 180°
}
