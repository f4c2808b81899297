package piston_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// Half of a keystone groove's 15°.
const half = tolerance.Float(7.5 * math.Pi / 180)

func ExampleKeystoneWidth() {
	w := piston.KeystoneWidth(working.GivenReal("over pins", "M", 89.1, "mm"), working.GivenReal("pin", "d", 2.5, "mm"),
		working.GivenReal("gauge diameter", "D", 86, "mm"), working.GivenReal("half angle", "β", 0.1309, "rad")).Named("groove width", "w", "mm")
	s, _ := working.SolveReal(w, working.RealStyle{Places: 3})
	fmt.Print(s.Text())
	// Output:
	// groove width = pin ÷ cosine of (half angle) + (gauge diameter + pin − over pins) × (sine of (half angle) ÷ cosine of (half angle))
	// w = d ÷ cos(β) + (D + d − M) × (sin(β) ÷ cos(β))
	//   = 2.5 mm ÷ cos(0.1309 rad) + (86 mm + 2.5 mm − 89.1 mm) × (sin(0.1309 rad) ÷ cos(0.1309 rad))
	//   ≈ 2.443 mm
}

func ExampleKeystoneOverPins() {
	fmt.Printf("%.3f mm\n", piston.KeystoneOverPins(2.50, 2.5, 86, half))
	// Output: 88.664 mm
}

func ExampleKeystoneWidthAt() {
	fmt.Printf("%.3f mm\n", piston.KeystoneWidthAt(2.50, 86, 88, half))
	// Output: 2.763 mm
}

// Over pins 4.3168 in when new and 4.2844 in now: at 15° the groove is
// 0.0043 in wider.
func ExampleKeystoneWear() {
	fmt.Printf("%.4f in\n", piston.KeystoneWear(4.3168, 4.2844, half))
	// Output: 0.0043 in
}

func ExampleKeystoneContact() {
	fmt.Printf("%.2f mm\n", piston.KeystoneContact(89.1, 2.5, half))
	// Output: 86.27 mm
}

func ExampleKeystonePinFor() {
	fmt.Printf("%.3f mm\n", piston.KeystonePinFor(2.50, half))
	// Output: 2.522 mm
}

func ExampleKeystoneHalfWidth() {
	fmt.Printf("%.3f mm\n", piston.KeystoneHalfWidth(89.1, 2.5, 86, half))
	// Output: 2.471 mm
}

func ExampleKeystoneHalfOverPins() {
	fmt.Printf("%.3f mm\n", piston.KeystoneHalfOverPins(2.471, 2.5, 86, half))
	// Output: 89.104 mm
}

func ExampleKeystoneClearance() {
	fmt.Printf("flush %.3f mm, at work %.3f mm\n", piston.KeystoneClearance(2.60, 86, 2.45, 1, 88, half), piston.KeystoneClearance(2.60, 86, 2.45, 1, 88.6, half))
	// Output: flush 0.150 mm, at work 0.229 mm
}

func ExampleKeystoneRingWidth() {
	fmt.Printf("%.3f mm\n", piston.KeystoneRingWidth(0.15, 2.60, 86, 1, 88, half))
	// Output: 2.450 mm
}

func ExampleKeystoneRunning() {
	fmt.Printf("%.3f mm\n", piston.KeystoneRunning(0.15, 88.6, 88, half))
	// Output: 0.229 mm
}

func ExampleKeystoneFlush() {
	fmt.Printf("%.3f mm\n", piston.KeystoneFlush(0.229, 88.6, 88, half))
	// Output: 0.150 mm
}

func ExampleKeystoneNormal() {
	fmt.Printf("%.4f mm\n", piston.KeystoneNormal(0.15, half))
	// Output: 0.1487 mm
}

func ExampleKeystoneAxial() {
	fmt.Printf("%.4f mm\n", piston.KeystoneAxial(0.1487, half))
	// Output: 0.1500 mm
}

// A ring with 0.15 mm flush can be pushed 0.57 mm below the land.
func ExampleKeystoneSink() {
	fmt.Printf("%.2f mm\n", piston.KeystoneSink(0.15, half))
	// Output: 0.57 mm
}

func ExampleKeystoneClearanceBySink() {
	fmt.Printf("%.2f mm\n", piston.KeystoneClearanceBySink(0.57, half))
	// Output: 0.15 mm
}

func keystoneGroove() piston.KeystoneGroove {
	return piston.KeystoneGroove{Where: "piston 1, top groove", OverPins: ringBracket("89.100 ±0.005 mm"), Pin: ringBracket("2.500 ±0.001 mm"),
		GaugeDiameter: 86 * units.Millimetre, Included: 15 * units.Degree, Land: 88 * units.Millimetre, Limits: tolerance.Spec{Wear: tolerance.MustParseBand("max 2.50 mm")}}
}

func ExampleKeystoneGroove_Width() {
	g := keystoneGroove()
	w, _ := g.Width()
	fmt.Println(w.Text(units.InMillimetres, 4))
	// Output: [2.4407 mm, 2.4444 mm]
}

func ExampleKeystoneGroove_OverPinsLimits() {
	g := keystoneGroove()
	limits, _ := g.OverPinsLimits(tolerance.MustParseBand("max 2.50 mm"))
	fmt.Println(limits.Text(units.InMillimetres, 3))
	// Output: min 88.664 mm
}

func ExampleKeystoneGroove_Assess() {
	g := keystoneGroove()
	f, _ := g.Assess()
	fmt.Println(f.Standing)
	// Output: usable
}
