package feeler

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// side is one limit of a spec as a band of its own.
type side struct {
	band  tolerance.Band
	limit units.Length
	lower bool
}

// sidesOf are the limits of a spec, the wear limits first, each once.
func sidesOf(spec tolerance.Spec) []side {
	var sides []side
	add := func(s side) {
		if !slices.Contains(sides, s) {
			sides = append(sides, s)
		}
	}
	for _, b := range []tolerance.Band{spec.Wear, spec.New} {
		if l, end := b.Lower(); end != tolerance.Absent {
			band, _ := tolerance.NewBand(l, end, 0, tolerance.Absent)
			add(side{band, l, true})
		}
		if l, end := b.Upper(); end != tolerance.Absent {
			band, _ := tolerance.NewBand(0, tolerance.Absent, l, end)
			add(side{band, l, false})
		}
	}
	return sides
}
