package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// EndFloat (end play) is how far a crankshaft moves along its axis: the
// difference of a dial's readings with the shaft held forward and held back.
// Exact; which way the dial counts doesn't matter.
func EndFloat[N tolerance.Number[N]](forward, back N) N { return forward.Sub(back).Abs() }

// EndFloatOf is the end float that parts give: the width between the shaft's
// thrust faces, less the housing between its own, less the washers in front
// and behind. Below zero the shaft is pinched. For a shell with flanges give
// its width as the housing and washers of nothing.
//
//	web ║ front ┌─────────┐ rear ║ web
//	    ║←washer→│ housing │←────→║
//	    ║←──────── journal ──────→║
func EndFloatOf[N tolerance.Number[N]](journal, housing, front, rear N) N {
	return journal.Sub(housing).Sub(front).Sub(rear)
}

// ThrustJournal is the width between the thrust faces for an end float. It
// undoes [EndFloatOf].
func ThrustJournal[N tolerance.Number[N]](float, housing, front, rear N) N {
	return float.Add(housing).Add(front).Add(rear)
}

// ThrustTotal is the thickness of the washers on both sides together.
func ThrustTotal[N tolerance.Number[N]](front, rear N) N { return front.Add(rear) }

// EndFloatWith is the end float that a shaft will have over other washers, from
// the one measured: the float and the washers that are in, less those that go
// in, both sides together. An oversize on both sides takes off twice itself.
func EndFloatWith[N tolerance.Number[N]](float, in, other N) N { return float.Add(in).Sub(other) }

// ThrustTotalFor is the washers, both sides together, that give the wanted
// float. It undoes [EndFloatWith].
func ThrustTotalFor[N tolerance.Number[N]](float, in, wanted N) N { return float.Add(in).Sub(wanted) }

// ThrustOversize is the oversize that each of two like sides needs over the
// washers that are in to bring a float to the wanted one: half the difference.
// Below zero the washers are too thick already.
func ThrustOversize[N tolerance.Number[N]](float, wanted N) N {
	return float.Sub(wanted).Scale(1, 2)
}

// EndFloatWithOversize is the float once both sides have an oversize over the
// washers that are in. It undoes [ThrustOversize].
func EndFloatWithOversize[N tolerance.Number[N]](float, oversize N) N {
	return float.Sub(oversize.Scale(2, 1))
}

// ThrustShift is how far forward a shaft comes to run, in the middle of its
// float, when the washers in front and behind grow by so much: half the
// difference. Below zero it is back. Rods and timing gear come along.
func ThrustShift[N tolerance.Number[N]](front, rear N) N { return front.Sub(rear).Scale(1, 2) }

// An EndFloatCheck is the end float of one shaft, read once or at several
// places of a turn, by dial ([EndFloat] over brackets) or by blades between a
// thrust face and its washer (package feeler).
//
// Push and pull the shaft with the force and at the places that the engine
// maker's manual names, never against a cap or a seal, and keep hands clear of
// the webs: a shaft that is levered turns. Read with the caps tightened. By
// blade, push the shaft hard to one end first; a face out of square or worn
// hollow shows less than the dial does.
type EndFloatCheck struct {
	Where    string              // "thrust bearing, main 3"
	Readings []tolerance.Bracket // the float as read, each 0 or more
	Limits   tolerance.Spec      // of the float
}

// Assess judges the least of the readings against the lower limit and the
// greatest against the upper. It fails with an [InputError] where none was
// taken or one is below zero, and as [tolerance.Assess] does.
func (c EndFloatCheck) Assess() (tolerance.Finding, error) {
	if len(c.Readings) == 0 {
		return tolerance.Finding{}, &InputError{"end float", "with no reading", "read at least once"}
	}
	for _, r := range c.Readings {
		if err := floatBracket("end float", r); err != nil {
			return tolerance.Finding{}, err
		}
	}
	return tolerance.Assess("end float", c.Where, c.Limits, c.Readings...)
}

// farthest is more than any shaft measures, and keeps sums from wrapping.
const farthest = 10 * units.Metre

// floatBracket refuses a bracket that no clearance can have. One without an
// upper end, where every blade went in, is one.
func floatBracket(field string, b tolerance.Bracket) error {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	if !b.InRange() || loEnd == tolerance.Absent || lo < 0 || lo > farthest || hiEnd != tolerance.Absent && hi > farthest {
		return &InputError{field, b.String(), "0 mm or more, and at most 10 m"}
	}
	return nil
}

// inputOf names the place in an InputError, whose text is made only where it is needed.
func inputOf(where string, err error) error {
	if e, ok := err.(*InputError); ok && where != "" {
		e.Field = where + ", " + e.Field
	}
	return err
}

// thickBracket refuses a bracket that no part's width can have.
func thickBracket(field string, b tolerance.Bracket) error {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	if !b.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo <= 0 || hi > farthest {
		return &InputError{field, b.String(), "measured, above 0 mm and at most 10 m"}
	}
	return nil
}
