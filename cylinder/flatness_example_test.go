package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// gapOf is what two blades left of a gap.
func gapOf(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func ExampleFace_Assess() {
	lines := cylinder.SixLines()
	for i, gap := range []string{"[0.0381 mm, 0.0508 mm)", "[0.0508 mm, 0.0635 mm)", "[0 mm, 0.0381 mm)", "[0 mm, 0.0381 mm)", "[0.0635 mm, 0.0762 mm)", "[0.0508 mm, 0.0635 mm)"} {
		lines[i].Seat = cylinder.Rests
		lines[i].Gaps = []cylinder.Gap{{At: "middle", Gap: gapOf(gap)}}
	}
	limit := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")}
	f := cylinder.Face{Where: "head", Lines: lines, Limits: cylinder.FaceLimits{Overall: limit}}
	r, _ := f.Assess()
	fmt.Println(r.Standing)
	fmt.Println(r.Governs)
	fmt.Println(r.Next)

	// With the camshaft in it, its tunnel comes first.
	f.Tunnel.InHead = true
	r, _ = f.Assess()
	fmt.Println(r.Remedy)
	// Output:
	// past the wear limit
	// [diagonal, front left to rear right]
	// past what is allowed on right edge; diagonal, front left to rear right; diagonal, front right to rear left: skim the face if its height allows, and measure it again afterwards
	// check the cam tunnel first
}

// One hump, three ways to hold the straight-edge.
func ExampleHump() {
	fmt.Println(cylinder.Hump(exactLength("0.05 mm"), exactLength("0.05 mm"))) // level
	fmt.Println(cylinder.Hump(exactLength("0.02 mm"), exactLength("0.09 mm")))
	fmt.Println(cylinder.Hump(exactLength("0 mm"), exactLength("0.20 mm"))) // rocked over
	// Output:
	// 0.05 mm
	// [0.02 mm, 0.09 mm]
	// [0 mm, 0.2 mm]
}

func ExampleHumpOfParabola() {
	fmt.Printf("%.4f\n", cylinder.HumpOfParabola(tolerance.Float(0.02), 0.0945))
	fmt.Printf("%.4f\n", cylinder.HumpOfParabola(tolerance.Float(0), 0.2))
	// Output:
	// 0.0504
	// 0.0500
}

func ExampleHumpBracket() {
	fmt.Println(cylinder.HumpBracket(gapOf("[0 mm, 0.01 mm)"), gapOf("[0.19 mm, 0.21 mm)")).Text(units.InMillimetres, 3))
	// Output: [0.047 mm, 0.078 mm]
}

func ExampleHumpOfRidge() {
	fmt.Println(cylinder.HumpOfRidge(units.MustParseLength("0.02 mm"), units.MustParseLength("0.08 mm")))
	// Output: 0.05 mm
}

func ExampleRockedOnParabola() {
	fmt.Println(cylinder.RockedOnParabola(units.MustParseLength("0.05 mm")))
	// Output: 0.2 mm
}

func ExampleRockedOnRidge() {
	fmt.Println(cylinder.RockedOnRidge(units.MustParseLength("0.05 mm")))
	// Output: 0.1 mm
}

// A twist of 0.05 mm: a hollow along one diagonal, a hump along the other.
func ExampleCornerOffPlane() {
	fmt.Println(cylinder.CornerOffPlane(units.MustParseLength("-0.05 mm"), units.MustParseLength("0.05 mm")))
	// Output: 0.2 mm
}

func ExampleNineHeights() {
	bows := cylinder.Bows[units.Length]{FirstDiagonal: -50 * units.Micrometre, SecondDiagonal: 50 * units.Micrometre}
	for _, row := range cylinder.NineHeights(bows) {
		fmt.Println(row)
	}
	// Output:
	// [0.05 mm 0 mm -0.05 mm]
	// [0 mm 0 mm 0 mm]
	// [-0.05 mm 0 mm 0.05 mm]
}

func ExampleSixLines() {
	for _, l := range cylinder.SixLines() {
		fmt.Println(l.Direction, "-", l.Name)
	}
	// Output:
	// lengthwise - left edge
	// lengthwise - right edge
	// across - front end
	// across - rear end
	// diagonal - diagonal, front left to rear right
	// diagonal - diagonal, front right to rear left
}

func ExampleSixBows() {
	lines := cylinder.SixLines()
	for i := range lines {
		lines[i].Seat, lines[i].Gaps = cylinder.Rests, []cylinder.Gap{{Gap: gapOf("[0.02 mm, 0.03 mm)")}}
	}
	b, ok := cylinder.SixBows(lines)
	fmt.Println(b.Left, ok)
	// Output: (-0.03 mm, -0.02 mm] true
}

func ExampleLine_Departure() {
	l := cylinder.Line{Direction: cylinder.Lengthwise, Seat: cylinder.Rests, Gaps: []cylinder.Gap{{Gap: gapOf("[0.05 mm, 0.06 mm)")}}}
	fmt.Println(l.Departure())
	l.Seat = cylinder.SeatUnsaid
	fmt.Println(l.Departure())
	// Output:
	// [0.05 mm, 0.06 mm)
	// [0 mm, 0.06 mm)
}

// A face twisted by 0.05 mm at its corners, by its heights at 3 × 3 stations.
func ExampleFaceGrid_Assess() {
	g := cylinder.FaceGrid{
		Where: "head",
		Grid: form.Grid{StepX: 180 * units.Millimetre, StepY: 70 * units.Millimetre, Columns: 3, Heights: []units.Length{
			50 * units.Micrometre, 0, -50 * units.Micrometre,
			0, 0, 0,
			-50 * units.Micrometre, 0, 50 * units.Micrometre,
		}},
		Error: 5 * units.Micrometre,
		Flat:  tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")},
	}
	r, _ := g.Assess()
	fmt.Println(r.Flatness, r.Standing)
	for _, l := range r.Lines {
		fmt.Println(l.Direction, l.Departure)
	}
	// Output:
	// [0.09 mm, 0.11 mm] past the wear limit
	// lengthwise [0 mm, 0.01 mm]
	// across [0 mm, 0.01 mm]
	// diagonal [0.04 mm, 0.06 mm]
	// diagonal [0.04 mm, 0.06 mm]
}
