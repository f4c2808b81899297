package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func mm(text string) units.Length { return units.MustParseLength(text + " mm") }

func ExampleBoreChoke() {
	fmt.Println(cylinder.BoreChoke(mm("85.98"), mm("86.00")))
	// Output: 0.02 mm
}

func ExampleBoreMeasures() {
	for _, m := range cylinder.BoreMeasures() {
		fmt.Println(m)
	}
	// Output:
	// bore size
	// mean bore size
	// out-of-round
	// taper
	// wear
	// choke
	// ridge
}

func ExampleBoreShift() {
	fmt.Println(cylinder.BoreShift(mm("0.10"), mm("0")))
	// Output: 0.05 mm
}

// Worn 0.10 mm on the thrust side alone, 0.01 mm cut per side, 0.06 mm left
// for the hone: 86.28 mm on the original axis, 86.18 mm with the bar moved.
func ExampleLeastSizeMoved() {
	fmt.Println(cylinder.LeastSizeOnAxis(mm("86"), mm("0.10"), mm("0.01"), mm("0.06")))
	fmt.Println(cylinder.LeastSizeMoved(mm("86"), mm("0.10"), mm("0"), mm("0.01"), mm("0.06")))
	// Output:
	// 86.28 mm
	// 86.18 mm
}

// The same bore known by its greatest diameter alone.
func ExampleLeastSizeByDiameters() {
	fmt.Println(cylinder.LeastSizeByDiameters(mm("86"), mm("86.10"), mm("0.01"), mm("0.06")))
	// Output: 86.18 mm 86.28 mm
}

func ExampleRoughBore() {
	fmt.Println(cylinder.RoughBore(mm("86.50"), mm("0.06")))
	// Output: 86.44 mm
}

func ExampleFinishedBore() {
	fmt.Println(cylinder.FinishedBore(mm("86.44"), mm("0.06")))
	// Output: 86.5 mm
}

func ExampleKitSize() {
	fmt.Println(cylinder.KitSize(mm("86.00"), mm("0.50")))
	// Output: 86.5 mm
}

func ExampleInchSteps() {
	fmt.Println(cylinder.InchSteps()[0].Text(units.InThou, 0))
	// Output: 10 thou
}

func ExampleMetricSteps() {
	fmt.Println(cylinder.MetricSteps()[0])
	// Output: 0.25 mm
}

// Two directions stand at 30° to the long axis and show half the oval.
func ExampleOvalFrom() {
	shown, angle := tolerance.Float(0.020), tolerance.Float(0.5235987755982988)
	fmt.Printf("%.3f mm\n", float64(cylinder.OvalFrom(shown, angle)))
	// Output: 0.040 mm
}

func ExamplePistonClearance() {
	fmt.Println(cylinder.PistonClearance(mm("86.50"), mm("86.46")))
	// Output: 0.04 mm
}

func ExampleSkirtFor() {
	fmt.Println(cylinder.SkirtFor(mm("86.50"), mm("0.04")))
	// Output: 86.46 mm
}

// A price of nothing was given; one that was not given is not free.
func ExamplePriceOf() {
	fmt.Println(cylinder.PriceOf(0).Given, cylinder.Price{}.Given)
	// Output: true false
}

// None in stock is known; a stock that was not counted is not none.
func ExampleStockOf() {
	fmt.Println(cylinder.StockOf(0).Known, cylinder.Stock{}.Known)
	// Output: true false
}

// A deviation of nothing was read; a station that was passed over was not.
func ExampleReadBore() {
	fmt.Println(cylinder.ReadBore(0).Taken, cylinder.BoreReading{}.Taken)
	// Output: true false
}

func ExampleRidgeSided() {
	fmt.Println(cylinder.RidgeSided(mm("0.10")))
	// Output: 0.05 mm
}

func ExampleSizeForWallCut() {
	// Just cleaning up, by 0.01 mm, a wall worn by 0.10 mm.
	fmt.Println(cylinder.SizeForWallCut(mm("0.01"), mm("86"), mm("0"), mm("0.10")))
	// Output: 86.22 mm
}

func ExampleWallLeftOf() {
	fmt.Println(cylinder.WallLeftOf(mm("5.2"), mm("0.25")))
	// Output: 4.95 mm
}

// A wall of 3.50 mm on one side, 4.00 mm on the worn other, 3 mm to be left.
func ExampleLargestByWall() {
	b := cylinder.WornBore{Finished: mm("86"), Sonic: []cylinder.SonicWall{
		{Where: "thrust", Heading: 90 * units.Degree, Wall: tolerance.Exactly(mm("4.00")), Wear: tolerance.Exactly(mm("0.10"))},
		{Where: "other", Heading: 270 * units.Degree, Wall: tolerance.Exactly(mm("3.50")), Wear: tolerance.Exactly(mm("0"))},
	}}
	fmt.Println(cylinder.LargestByWall(&b, cylinder.BoreCentre{}, mm("3")))
	// Output: 87 mm other true <nil>
}
