package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// temperature tries whether the figure is the other one taken for degrees
// Fahrenheit and converted to Celsius, or the other way: 90° (32.22).
func (s *search[Q]) temperature(side Side) {
	switch any(Q(0)).(type) {
	case units.Temperature, units.TemperatureDifference:
		return
	}
	f, o := &s.figs[side.index()], &s.figs[side.other().index()]
	if !s.digits[side.index()] || !s.digits[side.other().index()] || f.m < 10 {
		return
	}
	for _, to := range []units.Unit[units.Temperature]{units.InCelsius, units.InFahrenheit} {
		got, ok1 := degrees(f, to)
		from, ok2 := degrees(o, units.InCelsius+units.InFahrenheit-to)
		if ok1 && ok2 && rounds(int64(from.Value), show(got), zeroOf(to)) {
			rank := uint8(rankTemperature)
			if f.m < 100 { // two digits may fit by chance
				rank = rankCoarse
			}
			s.add(SlipOf[Q]{Kind: TemperatureConverted, In: side, Rank: rank}, 0)
		}
	}
}

// degrees is a figure's number as a temperature.
func degrees[Q units.Quantity](f *figure[Q], u units.Unit[units.Temperature]) (units.Written[units.Temperature], bool) {
	t := figure[units.Temperature]{unit: u, zero: zeroOf(u), m: f.m, minus: f.minus, places: f.places}
	v, ok := t.value(t.m, t.places)
	return t.written(v.value, t.places), ok
}
