package crank

import "github.com/tenthou/tenthou/tolerance"

// OilClearance is the clearance of a journal in its shells, on the diameter, from
// the housing bore, a shell's wall and the journal:
//
//	housing − 2·wall − journal
//
// before the nip of the shells widens the housing and narrows them. Below zero
// it is an interference. Better is the bore measured with the shells in place
// ([OilClearanceInstalled]).
func OilClearance[N tolerance.Number[N]](housing, wall, journal N) N {
	return housing.Sub(wall.Scale(2, 1)).Sub(journal)
}

// HousingForClearance is the housing bore that makes an oil clearance, one of the
// inverses of [OilClearance].
func HousingForClearance[N tolerance.Number[N]](clearance, wall, journal N) N {
	return clearance.Add(wall.Scale(2, 1)).Add(journal)
}

// WallForClearance is the wall of a shell that makes an oil clearance, one of the
// inverses of [OilClearance].
func WallForClearance[N tolerance.Number[N]](housing, clearance, journal N) N {
	return housing.Sub(clearance).Sub(journal).Scale(1, 2)
}

// JournalForClearance is the journal that has an oil clearance in shells, one of
// the inverses of [OilClearance]: what to grind it to.
func JournalForClearance[N tolerance.Number[N]](housing, wall, clearance N) N {
	return housing.Sub(wall.Scale(2, 1)).Sub(clearance)
}

// OilClearanceOfHalves is the oil clearance where the two halves differ: housing −
// upper wall − lower wall − journal.
func OilClearanceOfHalves[N tolerance.Number[N]](housing, upper, lower, journal N) N {
	return housing.Sub(upper).Sub(lower).Sub(journal)
}

// OilClearanceInstalled is the clearance of a journal in the bore measured with the
// shells in place and the cap tightened, at 90° to the split: shells are made
// larger at the split, where by some manuals they measure a thousandth of an inch
// more.
func OilClearanceInstalled[N tolerance.Number[N]](bore, journal N) N { return bore.Sub(journal) }

// JournalForBore is the journal that has an oil clearance in a measured bore, the
// inverse of [OilClearanceInstalled].
func JournalForBore[N tolerance.Number[N]](bore, clearance N) N { return bore.Sub(clearance) }

// LeastOilClearance is the least clearance of a journal that was measured at
// several places, in a bore that was: the least bore less the greatest journal. It
// decides whether the journal runs free.
func LeastOilClearance[N tolerance.Number[N]](bores, journals []N) (N, bool) {
	return acrossClearance(bores, journals, N.Min, N.Max)
}

// GreatestOilClearance is the greatest clearance, the greatest bore less the least
// journal. It decides whether the oil pressure holds. ok is false where a list is
// empty.
func GreatestOilClearance[N tolerance.Number[N]](bores, journals []N) (N, bool) {
	return acrossClearance(bores, journals, N.Max, N.Min)
}

func acrossClearance[N tolerance.Number[N]](bores, journals []N, bore, journal func(a, b N) N) (clearance N, ok bool) {
	if len(bores) == 0 || len(journals) == 0 {
		return clearance, false
	}
	b, j := bores[0], journals[0]
	for _, x := range bores[1:] {
		b = bore(b, x)
	}
	for _, x := range journals[1:] {
		j = journal(j, x)
	}
	return OilClearanceInstalled(b, j), true
}

// OilClearanceThumb is the rule of thumb for an oil clearance: a thousandth of the
// journal's diameter, a thousandth of an inch for each inch. It is common practice
// and no limit: the manual's figure governs. Makers of plain bearings say up to
// one and a half times that.
func OilClearanceThumb[N tolerance.Number[N]](journal N) N { return journal.Scale(1, 1000) }

// ClearanceByHalf is how much smaller a clearance becomes where one half of a pair
// is changed for one of another undersize: half of what the undersizes differ by.
// One half of a .001 pair takes .0005.
func ClearanceByHalf[N tolerance.Number[N]](undersize, other N) N {
	return other.Sub(undersize).Scale(1, 2)
}
