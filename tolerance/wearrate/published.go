package wearrate

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The names of the published profiles.
const (
	// TM10393064714P is Technical Manual TM 10-3930-647-14&P, a United States
	// Army manual, whose wear limit table gives rates for a whole engine.
	TM10393064714P = "TM 10-3930-647-14&P"
	// TM10393067124 is Technical Manual TM 10-3930-671-24, for the margin of
	// a valve.
	TM10393067124 = "TM 10-3930-671-24"
	// NAVEDTRA14076 is the training course NAVEDTRA 14076, Engineman 2 (1992),
	// for the free length of a valve spring.
	NAVEDTRA14076 = "NAVEDTRA 14076"
)

// The items of the published profiles.
const (
	CylinderBoreWear      = "cylinder bore wear"
	CylinderBoreTaper     = "cylinder bore taper"
	PistonWear            = "piston wear"
	GudgeonPinWear        = "gudgeon pin wear"
	PistonPinBoreWear     = "piston pin bore wear"
	RodBushWear           = "rod bush wear"
	MainBearingClearance  = "main bearing clearance"
	CrankpinClearance     = "crankpin bearing clearance"
	MainJournalOutOfRound = "main journal out-of-round"
	CrankpinOutOfRound    = "crankpin out-of-round"
	MainJournalTaper      = "main journal taper"
	CrankpinTaper         = "crankpin taper"
	CrankshaftEndFloat    = "crankshaft end float"
	CamshaftJournal       = "camshaft journal"
	CamshaftBush          = "camshaft bush"
	CamshaftEndFloat      = "camshaft end float"
	ValveStemWear         = "valve stem wear"
	ValveGuideWear        = "valve guide wear"
	ValveSeatWidth        = "valve seat width"
	ValveMargin           = "valve margin"
	ValveSpringFreeLength = "valve spring free length"
)

// The sizes that the rates of the table are of.
const (
	boreDiameter     = "bore diameter"
	pinDiameter      = "pin diameter"
	journalDiameter  = "journal diameter"
	camshaftDiameter = "camshaft journal diameter"
)

// Names lists the published profiles.
func Names() []string { return []string{TM10393064714P, TM10393067124, NAVEDTRA14076} }

// Published is a published profile by its name, one of [Names]. The numbers are
// the source's; that the allowable wear is the limit itself, and that an item
// without a band for new parts has none, is how this package reads it. It fails
// with an [InputError] of kind [ErrUnknown].
func Published(name string) (Profile, error) {
	p := Profile{Schema: Schema, Name: name}
	switch name {
	case TM10393064714P:
		p.Source, p.Rules = "TM 10-3930-647-14&P, table of wear limits", wearLimitTable()
	case TM10393067124:
		p.Source = "TM 10-3930-671-24, engine overhaul"
		p.Rules = []Rule{{Item: ValveMargin, Kind: AtLeast, Rate: ratio(1, 2), Of: "margin when new"}}
	case NAVEDTRA14076:
		p.Source = "NAVEDTRA 14076, Engineman 2, April 1992, chapter 3"
		p.Rules = []Rule{{Item: ValveSpringFreeLength, Kind: AtLeast, Rate: ratio(97, 100), Of: "free length when new",
			Note: "the free length alone does not prove the load"}}
	default:
		return Profile{}, refuse(name, "profile", "", ErrUnknown, "one of those that Names lists, or a profile of your own")
	}
	return p, nil
}

// ratio is a fraction in lowest terms.
func ratio(num, den int64) tolerance.Ratio { return tolerance.Ratio{Num: num, Den: den} }

// wearLimitTable is the table of TM 10-3930-647-14&P.
func wearLimitTable() []Rule {
	const half = 2000 // 0.0005 = 1/2000
	return []Rule{
		{Item: CylinderBoreWear, Kind: AtMost, Rate: ratio(1, 1000), Of: boreDiameter},
		{Item: CylinderBoreTaper, Kind: AtMost, Rate: ratio(1, half), Of: "piston travel", Note: "with the ridge removed and the bore honed"},
		{Item: PistonWear, Kind: AtMost, Rate: ratio(1, half), Of: "piston diameter", Note: "skirt, and above the pin"},
		{Item: GudgeonPinWear, Kind: AtMost, Plus: units.Thou},
		{Item: PistonPinBoreWear, Kind: AtMost, Rate: ratio(1, half), Of: pinDiameter},
		{Item: RodBushWear, Kind: AtMost, Rate: ratio(1, half), Of: pinDiameter},
		{Item: MainBearingClearance, Kind: AboveNew, Rate: ratio(1, half), Of: journalDiameter},
		{Item: CrankpinClearance, Kind: AboveNew, Rate: ratio(1, half), Of: journalDiameter},
		{Item: MainJournalOutOfRound, Kind: AtMost, Rate: ratio(1, 2500), Of: journalDiameter},
		{Item: CrankpinOutOfRound, Kind: AtMost, Rate: ratio(1, 2500), Of: journalDiameter},
		{Item: MainJournalTaper, Kind: AboveNew, Times: ratio(2, 1)},
		{Item: CrankpinTaper, Kind: AboveNew, Times: ratio(2, 1)},
		{Item: CrankshaftEndFloat, Kind: AboveNew, Plus: 5 * units.Thou},
		{Item: CamshaftJournal, Kind: BelowNew, Rate: ratio(1, half), Of: camshaftDiameter},
		{Item: CamshaftBush, Kind: AboveNew, Rate: ratio(1, half), Of: camshaftDiameter},
		{Item: CamshaftEndFloat, Kind: AboveNew, Plus: 10 * units.Thou},
		{Item: ValveStemWear, Kind: AtMost, Plus: units.Thou},
		{Item: ValveGuideWear, Kind: AtMost, Plus: units.Thou * 3 / 2},
		{Item: ValveSeatWidth, Kind: AtMost, Rate: ratio(23, 20), Of: "width when new"},
	}
}
