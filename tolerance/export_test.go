package tolerance

import "github.com/tenthou/tenthou/units"

// What the tests hold to each other: the readers of plain forms, and the reader
// of every form.

func PlainInterval[Q units.Quantity](s string) (Interval[Q], bool) { return plainInterval[Q](s) }

func PlainBand[Q units.Quantity](s string) (PrintedOf[Q], bool) { return plainBand[Q](s) }

func AnyInterval[Q units.Quantity](s string, wide bool) (Interval[Q], error) {
	return (&reader[Q]{what: "interval", input: s, wide: wide}).interval()
}

func AnyBand[Q units.Quantity](s string, wide bool) (PrintedOf[Q], error) {
	return (&reader[Q]{what: "band", input: s, wide: wide}).printed()
}

// PlainNames are the names of units that plain forms may have, and the most
// that their reader takes.
func PlainNames[Q units.Quantity]() (names []string, most Q) {
	t := plainOf[Q]()
	for _, u := range t.units {
		names = append(names, u.name)
	}
	return names, Q(t.most)
}
