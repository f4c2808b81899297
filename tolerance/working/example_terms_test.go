package working_test

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// π, a share and a spread, as the lines of a solution have them.
func ExampleTermOf_ScalePi() {
	bore := working.Given("bore", "d", 86*units.Millimetre)
	s, err := working.Solve(bore.ScalePi(1, 1).Named("round the bore", "u"), units.Style[units.Length]{Places: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// round the bore = π × bore
	// u = π × d
	//   = π × 86.00 mm
	//   ≈ 270.18 mm
}

func ExampleTermOf_Share() {
	growth := working.Given("growth", "g", 40*units.Micrometre)
	groove := working.Given("groove wear", "a", 30*units.Micrometre)
	ring := working.Given("ring wear", "b", 10*units.Micrometre)
	s, err := working.Solve(growth.Share(groove, ring).Named("groove's share", "s"), units.Style[units.Length]{Places: 3})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// groove's share = growth × groove wear ÷ (groove wear + ring wear)
	// s = g × a ÷ (a + b)
	//   = 0.040 mm × 0.030 mm ÷ (0.030 mm + 0.010 mm)
	//   = 0.030 mm
}

func ExampleTermOf_Spread() {
	a := working.Given("top", "a", 86_020*units.Micrometre)
	b := working.Given("middle", "b", 86_035*units.Micrometre)
	c := working.Given("bottom", "c", 86_010*units.Micrometre)
	s, err := working.Solve(a.Spread(b, c).Named("difference", "t"), units.Style[units.Length]{Places: 3})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// difference = greatest of (top, middle, bottom) − least of (top, middle, bottom)
	// t = max(a, b, c) − min(a, b, c)
	//   = max(86.020 mm, 86.035 mm, 86.010 mm) − min(86.020 mm, 86.035 mm, 86.010 mm)
	//   = 0.025 mm
}

func ExampleTermOf_Scale() {
	lift := working.Given("cam lift", "h", 6200*units.Micrometre)
	s, err := working.Solve(lift.Scale(3, 2).Named("valve lift", "v"), units.Style[units.Length]{Places: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// valve lift = cam lift × 3 ÷ 2
	// v = h × 3 ÷ 2
	//   = 6.20 mm × 3 ÷ 2
	//   = 9.30 mm
}

func ExampleTermOf_InRange() {
	gap := working.Given("gap", "g", units.Millimetre)
	fmt.Println(gap.Scale(1, 2).InRange(), gap.Scale(1, 0).InRange())
	// Output: true false
}

// A marking is plain data: an answer key's results can be stored.
func ExampleMarking_json() {
	right := working.Given("groove", "w", 1560*units.Micrometre).Sub(working.Given("ring", "h", 1505*units.Micrometre))
	m, err := working.Mark(right, "0.55 mm", units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(m)
	fmt.Println(string(text), err)
	// Output:
	// {"grade":"wrong","answer":"0.55 mm","right":"0.055 mm","off":"0.495 mm","slips":[{"kind":"decimal place","num":10,"den":1}]} <nil>
}

func ExampleSlip_String() {
	right := working.Exactly(units.Length(0.0024 * units.IN))
	for _, answer := range []string{"0.024 in", "-.0024 in", ".0024 mm"} {
		m, err := working.Mark(right, answer, 1*units.Micrometre)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(answer, m.Grade, "-", m.Slips[0])
	}
	// Output:
	// 0.024 in wrong - 10 times too large: the decimal point
	// -.0024 in wrong - right but for its sign
	// .0024 mm wrong - 25.4 times too small: inches and millimetres
}

func ExampleError() {
	gap := working.Given("gap", "g", units.Millimetre)
	_, err := working.Solve(gap.Scale(1, 0).Named("half", "x"), units.Style[units.Length]{Places: 3})
	fmt.Println(err)
	_, err = working.Mark(gap, "a hair", units.Micrometre)
	fmt.Println(err)
	// Output:
	// working: solve half: out of range; within ±2^61 quanta, and nothing divided by zero
	// working: mark answer: not an answer that can be read: units: length "a hair", at byte 0: not written as a quantity; a number is expected, as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"
}
