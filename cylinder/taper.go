package cylinder

import "github.com/tenthou/tenthou/tolerance"

// A TaperRule is one of the ways in which manuals and shops count the taper of
// a bore. They differ on the same readings, so a limit holds only with its own
// rule. The zero value is TaperAlong.
type TaperRule uint8

// The rules.
const (
	// TaperAlong: the greatest less the least of the levels, read in one
	// direction; of the directions, the greatest.
	TaperAlong TaperRule = iota
	// TaperTopToBottom: the first level less the last, in one direction, with
	// its sign: above zero the bore is larger at the top. Of the directions, the
	// one that differs most.
	TaperTopToBottom
	// TaperOfMeans: each level's mean over its directions; the greatest less
	// the least.
	TaperOfMeans
	// TaperOverall: the greatest less the least of all readings. An oval bore
	// has some without any taper.
	TaperOverall
	// TaperPerLength: as TaperAlong, for each length of [BoreLimits].TaperPer
	// between the first and the last level read in that direction; of the
	// directions, the greatest.
	TaperPerLength

	taperRules = iota
)

var taperNames = []string{
	"greatest less least along one direction",
	"top less bottom along one direction",
	"greatest less least of the levels' means",
	"greatest less least of all readings",
	"along one direction, per length",
}

// String is the rule in words.
func (r TaperRule) String() string { return wordOf(taperNames, r) }

// MarshalText writes what String gives.
func (r TaperRule) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *TaperRule) UnmarshalText(text []byte) error {
	return readWord("taper rule", taperNames, text, r)
}

// Taper is the greatest less the least of sizes at several levels: along one
// direction, of the levels' means, or of all readings, as the sizes given.
// Readings of one gauge share its setting error, which brackets given here
// count twice: [BoreSurvey.Inspect] doesn't.
func Taper[N tolerance.Number[N]](size N, more ...N) N { return size.Spread(more...) }

// TaperSigned is the size at the top less that at the bottom: above zero the
// bore is larger at the top, as wear leaves it.
func TaperSigned[N tolerance.Number[N]](top, bottom N) N { return top.Sub(bottom) }

// BoreChoke is how much smaller a bore is at its head end than at its foot:
// −[TaperSigned]. Some makers ask for it cold, since the head end runs hotter.
func BoreChoke[N tolerance.Number[N]](top, bottom N) N { return bottom.Sub(top) }

// TaperPer is the taper for each length per of a bore that tapers by so much
// over the length over: taper × per ÷ over.
func TaperPer[N tolerance.Number[N]](taper, over, per N) N { return taper.MulDiv(per, over) }

// TaperOver is the taper over a length of a bore that tapers by so much for
// each length per: the inverse of [TaperPer]. A limit of 0.0005 in for each inch
// is 0.00225 in over a travel of 4.5 in.
func TaperOver[N tolerance.Number[N]](rate, over, per N) N { return rate.MulDiv(over, per) }
