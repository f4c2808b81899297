package units

import "testing"

// Each target holds a parser to the judge (see suite.fuzz), and text to read
// back as what it was written from.

func fuzzSuite(f *testing.F, s tester, seeds ...string) {
	for _, seed := range seeds {
		f.Add(seed)
	}
	for _, form := range forms {
		f.Add(form)
		for i := range s.table().units {
			f.Add(form + " " + s.table().units[i].symbol)
		}
	}
	f.Fuzz(func(t *testing.T, text string) { s.fuzz(t, text) })
}

func FuzzParseLength(f *testing.F) {
	var seeds []string
	for _, c := range acceptedLengths {
		seeds = append(seeds, c.in)
	}
	for _, c := range refusedLengths {
		if len(c.in) < 1000 {
			seeds = append(seeds, c.in)
		}
	}
	fuzzSuite(f, suites[0], seeds...)
}

func FuzzParseAngle(f *testing.F) {
	fuzzSuite(f, suites[1], "44° 30′ 15″", "1° 0′ 0.000001″", "-0°0′1/2″", "44°30'", "12 arcmin 60 arcsec", "1°1′1′")
}

func FuzzParseVolume(f *testing.F) {
	fuzzSuite(f, suites[2], "45.0 cm3", "45cc", "30.5 cu. in.", "3 cubic inches", "3 in3 4 in3")
}

func FuzzParseMass(f *testing.F) {
	fuzzSuite(f, suites[3], "2 lb 4 oz", "2 lb 15 7/8 oz", "2 lb 16 oz", "3 gr")
}

func FuzzParseForce(f *testing.F) {
	fuzzSuite(f, suites[4], "10000.000000000000005 N", "72 lb", "32.5 kp")
}

func FuzzParsePressure(f *testing.F) {
	fuzzSuite(f, suites[5], "138 lb/in2", "9.7 kg/cm2", "138 lbf/in² 5")
}

func FuzzParseSpringRate(f *testing.F) {
	fuzzSuite(f, suites[6], "230 lb/in", "4.1 kg/mm")
}

func FuzzParseTemperatureDifference(f *testing.F) { fuzzSuite(f, suites[7], "60 C°", "100 °F") }

func FuzzParseTemperature(f *testing.F) {
	fuzzSuite(f, suites[8], "-273.15 °C", "-459.67 °F", "-459.68 °F", "-1 K", "20 deg C", "20°", "68℉")
}

// FuzzParseWritten: what is written has a text that reads back as the same,
// whatever else is said of it.
func FuzzParseWritten(f *testing.F) {
	for _, c := range acceptedLengths {
		f.Add(c.in, int64(c.pm), uint8(2), uint16(64), true)
	}
	f.Add("5 ft 11.99999999999 in", int64(limit), uint8(18), uint16(0), true)
	f.Fuzz(func(t *testing.T, text string, value int64, places uint8, den uint16, compound bool) {
		w, err := ParseWritten[Length](text)
		if err == nil {
			suites[0].(suite[Length, *Length]).writtenAgain(t, w)
		}
		for _, other := range []Written[Length]{w.As(Length(value)), {Length(value), w.Unit, places, den, compound}} {
			out, err := other.MarshalText()
			if err != nil {
				continue
			}
			var again Written[Length]
			if err := again.UnmarshalText(out); err != nil || again.Value != other.Value {
				t.Fatalf("%+v is written %s, which is read as %+v, %v", other, out, again, err)
			}
		}
	})
}

// FuzzParseUnit: a unit that is read is written by a name that is read as it.
func FuzzParseUnit(f *testing.F) {
	for _, s := range suites {
		for _, u := range s.table().units {
			f.Add(u.symbol)
			for _, name := range u.names {
				f.Add(name)
			}
		}
	}
	f.Fuzz(func(t *testing.T, name string) {
		u, err := ParseUnit[Length](name)
		if err == nil {
			again, err := ParseUnit[Length](u.Symbol())
			if err != nil || again != u {
				t.Fatalf("%q is %v, which is %v, %v", name, u, again, err)
			}
		}
		if l, parseErr := ParseLength("1 " + name); err == nil && (parseErr != nil || l != Length(row(u).quanta)) {
			t.Fatalf("1 %q is %v, %v", name, l, parseErr)
		}
	})
}
