package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func bars(texts ...string) (list []cylinder.CylinderPressure) {
	for i, t := range texts {
		if p, err := tolerance.ParseInterval[units.Pressure](t + " bar"); err == nil {
			list = append(list, cylinder.CylinderPressure{Cylinder: i + 1, Pressure: p})
		}
	}
	return list
}

func ExampleCompressionTest_Assess() {
	t := cylinder.CompressionTest{
		Cylinders: 4, Dry: bars("12.0", "8.0", "12.1", "11.9"), Wet: bars("", "10.5", "", ""),
		Conditions: cylinder.TestConditions{Engine: cylinder.Warm, Throttle: cylinder.ThrottleOpen, BatteryV: 10.6, CrankRPM: 240, AllOut: true, FuelOff: true},
		Limits:     cylinder.CompressionLimits{LowPercent: 75, RisePercent: 10},
	}
	r, err := t.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Cylinders[1].GreatestPercent, "% of the highest")
	for _, p := range r.Pointers {
		fmt.Println(p)
	}
	for _, c := range r.Conditions {
		fmt.Println(c)
	}
	// Output:
	// 67 % of the highest
	// cylinder 2: it is low and oil raises it, which points to piston rings, piston or bore and proves nothing; test for leakage and listen at the oil filler
	// ignition is not recorded as disabled
}

func ExampleCompressionBelow() {
	fmt.Println(cylinder.CompressionBelow(units.MustParsePressure("12.1 bar"), units.MustParsePressure("8 bar")))
	// Output: 410 kPa
}

func ExampleCompressionOfHighest() {
	hundred := 100 * units.Kilopascal // of any unit
	fmt.Println(cylinder.CompressionOfHighest(hundred, units.MustParsePressure("9 bar"), units.MustParsePressure("12 bar")))
	// Output: 75 kPa
}

func ExampleWetRise() {
	fmt.Println(cylinder.WetRise(units.MustParsePressure("8 bar"), units.MustParsePressure("10.5 bar")))
	// Output: 250 kPa
}

func ExampleCylinderCompression_Low() {
	t := cylinder.CompressionTest{Cylinders: 2, Dry: bars("12.0", "8.0"), Limits: cylinder.CompressionLimits{LowPercent: 75}}
	r, _ := t.Assess()
	fmt.Println(r.Cylinders[0].Low(), r.Cylinders[1].Low())
	// Output: false true
}

func ExampleLeakageDrop() {
	fmt.Println(cylinder.LeakageDrop(units.MustParsePressure("80 psi"), units.MustParsePressure("72 psi")).Text(units.InPSI, 1))
	// Output: 8.0 psi
}

func ExampleLeakageShare() {
	hundred := 100 * units.Kilopascal // of any unit
	fmt.Println(cylinder.LeakageShare(hundred, units.MustParsePressure("80 psi"), units.MustParsePressure("72 psi")))
	// Output: 10 kPa
}

func ExampleLeakageTest_Assess() {
	one, _ := cylinder.LeakagePercent(1, 8, 10)
	two, _ := cylinder.LeakagePercent(2, 45, 50, cylinder.AtExhaust)
	r, err := cylinder.LeakageTest{Cylinders: 2, Readings: []cylinder.CylinderLeakage{one, two}, Engine: cylinder.Warm, Most: 20}.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Cylinders[0].Verdict, r.Cylinders[1].Verdict)
	fmt.Println(r.Pointers[0])
	// Output:
	// within above
	// cylinder 2: air is heard at the exhaust, which points to exhaust valve or its seat and proves nothing; check that valve's clearance first
}

func ExampleLeakagePercent() {
	_, err := cylinder.LeakagePercent(3, 20, 120)
	fmt.Println(err)
	// Output: cylinder: leakage of cylinder 3 20 to 120 % is not from 0 to 100 %, the least first
}
