package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A ShellStock is how many pairs of shells are there. The zero value is not known.
type ShellStock struct {
	Pairs int  `json:"pairs"` // 0 or more
	Known bool `json:"known"` // false: not counted
}

// PairsInStock is a stock that is known.
func PairsInStock(pairs int) ShellStock { return ShellStock{pairs, true} }

// enough reports whether n are there, as far as is known.
func (s ShellStock) enough(n int) bool { return !s.Known || s.Pairs >= n }

// A ShellKit is an undersize that shells can be had in.
type ShellKit struct {
	Name      string       `json:"name"`      // "standard", "0.25 mm", ".010 in"
	Undersize units.Length `json:"undersize"` // under the standard journal, on the diameter; 0 for standard
	// Journal is the band of sizes printed for a journal ground for these shells.
	// Where it is missing the standard band less the undersize stands in for it,
	// and the answer says so.
	Journal tolerance.Band `json:"journal,omitzero"`
	// AsIs is the band of sizes of a used journal that these shells may go on
	// without grinding, as standard ones and thin ones (.001, .002 in) may by some
	// manuals' rule; the least diameter is held to it, and the oil clearance then to
	// the greatest. The zero band: never, but that standard shells go on the standard
	// sizes. A kit with this band alone is not ground for.
	AsIs  tolerance.Band `json:"asIs,omitzero"`
	Stock ShellStock     `json:"stock,omitzero"` // how many pairs are there
}

// MetricUndersizes and InchUndersizes are the steps that shells are most often
// made in: common practice. The inch steps end at .030 or, by some manuals, .040.
func MetricUndersizes() []units.Length {
	return []units.Length{units.Millimetre / 4, units.Millimetre / 2, 3 * units.Millimetre / 4, units.Millimetre}
}

// InchUndersizes are said with [MetricUndersizes].
func InchUndersizes() []units.Length {
	return []units.Length{10 * units.Thou, 20 * units.Thou, 30 * units.Thou, 40 * units.Thou}
}

// ShellLadder is a kit for each step, named by it: "0.25 mm", ".010 in".
func ShellLadder(unit units.Unit[units.Length], steps ...units.Length) []ShellKit {
	places := 2
	if unit == units.InInches {
		places = 3
	}
	kits := make([]ShellKit, len(steps))
	for i, s := range steps {
		n := places
		if exact, ok := units.Places(s, unit); ok {
			n = max(places, exact)
		}
		name, _ := units.Append(nil, s, units.Style[units.Length]{Unit: unit, Places: n, Point: unit == units.InInches})
		kits[i] = ShellKit{Name: string(name), Undersize: s}
	}
	return kits
}

// band is the sizes that a journal is ground to for a kit; nominal is whether the
// standard band stands in for one that isn't printed.
func (k *ShellKit) band(standard tolerance.Band) (b tolerance.Band, nominal bool) {
	if !k.Journal.IsZero() {
		return k.Journal, false
	}
	return tolerance.BandFrom(UndersizeOf(standard.Interval(), tolerance.Exactly(k.Undersize))), true
}

func (k *ShellKit) name(i int) string {
	if k.Name == "" {
		return "kit " + strconv.Itoa(i+1)
	}
	return journalQuote(k.Name)
}

func (k *ShellKit) check(i int, standard tolerance.Band) error {
	name := k.name(i)
	lo, hi := journalEnds(standard.Interval())
	if k.Undersize < 0 || k.Undersize > lo/4 {
		return &InputError{name + ", undersize", k.Undersize.String(), "from 0 mm to a quarter of the standard journal"}
	}
	if k.Stock.Pairs < 0 || k.Stock.Pairs != 0 && !k.Stock.Known {
		return &InputError{name + ", pairs in stock", strconv.Itoa(k.Stock.Pairs), "0 or more, and said to be known"}
	}
	for _, b := range [...]struct {
		field string
		band  tolerance.Band
	}{{"journal", k.Journal}, {"journal as it is", k.AsIs}} {
		if b.band.IsZero() {
			continue
		}
		least, greatest := b.band.Interval(), b.band.Interval()
		if err := journalBracket(name+", "+b.field, least, units.Picometre); err != nil {
			return err
		}
		// A band belongs to its own undersize: half a step away it is another's.
		bottom, _ := journalEnds(least)
		_, top := journalEnds(greatest)
		const slack = 100 * units.Micrometre
		if bottom < lo-k.Undersize-slack || top > hi-k.Undersize+slack {
			return &InputError{name + ", " + b.field, journalQuote(b.band.String()), "within 0.1 mm of the standard journal less the undersize: " + journalSpan(lo-k.Undersize, hi-k.Undersize).String()}
		}
	}
	return nil
}
