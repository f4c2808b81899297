package crank

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/units"
)

// A ShaftLine is how the centres of a shaft's journals lie to the straight line
// nearest to them all, by least squares in both planes at once.
type ShaftLine struct {
	// Off are the centres seen from that line, in the order given, with no
	// error of their own: it is that of the readings at most twice over.
	Off []RunOutVector `json:"off"`
	// Most is the greatest distance of a centre from the line. Twice Most is the
	// diameter of the least cylinder about it that holds all centres.
	Most   units.Length `json:"most"`
	MostAt int          `json:"mostAt"` // the journal that it is at, from 0
}

// StraightShaft lays the least-squares line through the centres of journals at
// places along the shaft. Unlike a bend seen from two supports it doesn't
// depend on which journals the shaft turned on. To the nearest picometre, from
// float64.
//
// It fails with an [InputError] below two places or above 100, where there are
// not as many centres as places, and where places aren't in order.
func StraightShaft(places []units.Length, centres []RunOutVector) (ShaftLine, error) {
	n := len(places)
	if n < 2 || n > mostJournals {
		return ShaftLine{}, &InputError{"places along the shaft", fmt.Sprint(n), "from 2 to 100"}
	}
	if len(centres) != n {
		return ShaftLine{}, &InputError{"journal centres", fmt.Sprint(len(centres)), fmt.Sprint("one for each of ", n, " places")}
	}
	var mid float64
	for i, p := range places {
		c := centres[i]
		if p.Abs() > farthest || c.Cosine.Abs() > farthest || c.Sine.Abs() > farthest || !p.InRange() || !c.Cosine.InRange() || !c.Sine.InRange() {
			return ShaftLine{}, &InputError{fmt.Sprint("journal ", i+1), p.String(), "within 10 m, its centre too"}
		}
		if i > 0 && p <= places[i-1] {
			return ShaftLine{}, &InputError{fmt.Sprint("place of journal ", i+1), p.String(), "beyond that of the journal before it"}
		}
		mid += float64(p) / float64(n)
	}
	var x, y, zz, zx, zy float64
	for i, p := range places {
		z := float64(p) - mid
		x += float64(centres[i].Cosine) / float64(n)
		y += float64(centres[i].Sine) / float64(n)
		zz += float64(z * z)
		zx += float64(z * float64(centres[i].Cosine))
		zy += float64(z * float64(centres[i].Sine))
	}
	l := ShaftLine{Off: make([]RunOutVector, n)}
	for i, p := range places {
		z := float64(p) - mid
		off := RunOutVector{
			Cosine: units.Length(math.Round(float64(centres[i].Cosine) - x - z*zx/zz)),
			Sine:   units.Length(math.Round(float64(centres[i].Sine) - y - z*zy/zz)),
		}
		l.Off[i] = off
		if d := units.Length(math.Round(off.hypot())); d > l.Most {
			l.Most, l.MostAt = d, i
		}
	}
	return l, nil
}
