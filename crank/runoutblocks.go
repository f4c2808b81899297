package crank

import (
	"fmt"
	"math"
	"slices"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// A journal of lobes A·cos n(θ − ω) turning in a V rises by κ of it, with
//
//	κ = cos n(90° + α/2) / sin(α/2)
//
// and a dial on the bisector, opposite the V, shows 1 + κ of it. So where the
// dial on the support shows r, the support rises by r·κ/(1 + κ), and a place
// between the supports by the mean of the two, weighted by position. For n = 1
// κ is −1: a V shows nothing of an eccentricity, and passes none on.

// blockRise is κ.
func blockRise(lobes int, included units.Angle) float64 {
	half := included.Radians() / 2
	return math.Cos(float64(lobes)*(math.Pi/2+half)) / math.Sin(half)
}

// leastShown is the least part of a lobing that a dial must show for it to be
// told: below that its own error grows tenfold.
const leastShown = 0.1

// takeOffBlocks takes the rise of the supports in their Vs off the shape of every
// other journal, and says what can't be.
func (s RunOutSurvey) takeOffBlocks(found []RunOutFound) (notes []string) {
	first, second := s.Journals[s.First], s.Journals[s.Second]
	span := float64(second.Position - first.Position)
	for i := range found {
		if i == s.First || i == s.Second {
			continue
		}
		f := &found[i]
		toFirst := float64(second.Position-s.Journals[i].Position) / span
		harmonics := slices.Clone(f.spectrum.Harmonics)
		for k := 2; k < len(harmonics); k++ {
			one, other := found[s.First].rise(k, s.Included), found[s.Second].rise(k, s.Included)
			harmonics[k].Cos -= toFirst*one.Cos + (1-toFirst)*other.Cos
			harmonics[k].Sin -= toFirst*one.Sin + (1-toFirst)*other.Sin
		}
		f.spectrum.Harmonics = harmonics
		f.tell(len(s.Journals[i].Readings))
	}
	for _, w := range []int{s.First, s.Second} {
		if len(s.Journals[w].Readings) == 0 {
			notes = append(notes, s.Journals[w].Where+" wasn't read: it is taken for round, and what it rises in its V counts as ovality and lobes of the others")
		}
	}
	for k := 2; k <= 5; k++ {
		if math.Abs(1+blockRise(k, s.Included)) < leastShown {
			notes = append(notes, fmt.Sprintf("V-blocks of %v hide %d lobes of the supports from the dial above them, and pass their rise on to the others: a micrometer or a V of another angle tells", s.Included, k))
		}
	}
	return notes
}

// rise is the part of order k by which a support rises in its V, from what the
// dial on it showed.
func (f RunOutFound) rise(k int, included units.Angle) form.Harmonic {
	kappa := blockRise(k, included)
	h := f.spectrum.Order(k)
	if math.Abs(1+kappa) < leastShown {
		return form.Harmonic{Order: k}
	}
	by := kappa / (1 + kappa)
	return form.Harmonic{Order: k, Cos: by * h.Cos, Sin: by * h.Sin}
}
