package proofread

import (
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// A Ratio says how many times as great a second measure is as the first:
// Num/Den, times π if Pi is set. A ring's gap grows by π for each unit of bore,
// a diameter is twice a radius.
type Ratio struct {
	Num int64 `json:"num"`         // 1 to 10⁹
	Den int64 `json:"den"`         // 1 to 10⁹
	Pi  bool  `json:"pi,omitzero"` // times π
}

// String is the ratio: "π", "2", "3/4·π".
func (r Ratio) String() string {
	s := strconv.FormatInt(r.Num, 10)
	if r.Den != 1 {
		s += "/" + strconv.FormatInt(r.Den, 10)
	}
	switch {
	case r.Pi && s == "1":
		return "π"
	case r.Pi:
		return s + "·π"
	}
	return s
}

// π is near enough 245850922/78256779: a continued fraction, off by 8·10⁻¹⁷.
// It serves where π divides, of which only the places printed are used.
const (
	piNum = 245_850_922
	piDen = 78_256_779
)

const mostRatio = 1_000_000_000

func (r Ratio) check() error {
	if r.Num < 1 || r.Den < 1 || r.Num > mostRatio || r.Den > mostRatio {
		return &CheckError{Field: "ratio", Value: r.String(), Kind: ErrRatio, Want: "a numerator and a denominator from 1 to 10⁹"}
	}
	return nil
}

// times is q times the ratio, and over q divided by it, to the nearest quantum.
func times[Q units.Quantity](q Q, r Ratio) Q {
	if r.Pi {
		return units.ScalePiRound(q, r.Num, r.Den, units.NearestEven)
	}
	return units.ScaleRound(q, r.Num, r.Den, units.NearestEven)
}

func over[Q units.Quantity](q Q, r Ratio) Q {
	num, den := r.Den, r.Num
	if r.Pi {
		num, den = num*piDen, den*piNum
	}
	return units.ScaleRound(q, num, den, units.NearestEven)
}

// CheckRatio holds a printed measure to another that it follows from: to must
// be ratio times from, within half a step of each. Values out of range, of the
// product too, and ratios that can't be are a [CheckError].
func CheckRatio[Q units.Quantity](from, to units.Written[Q], ratio Ratio) (ResultOf[Q], error) {
	r := ResultOf[Q]{Relation: InRatio, Pair: PairOf[Q]{from, to}}
	if err := ratio.check(); err != nil {
		return r, err
	}
	if err := r.Pair.inRange(); err != nil {
		return r, err
	}
	made, back := times(from.Value, ratio), over(to.Value, ratio)
	if !units.InRange(made) || !units.InRange(back) {
		return r, &CheckError{Field: "first times " + ratio.String(), Value: from.String(), Kind: ErrRange, Want: "a product within the range of its type"}
	}
	a, b := show(from), show(to)
	expected := shown{int64(made), int64(times(Q(a.step), ratio))}
	if agree(expected, b) {
		return r, nil
	}
	var found []candidate[Q]
	if ratio.Pi {
		found = factorPi(from, to, ratio)
	}
	second := newSearch(PairOf[Q]{decimalOf(made, to.Unit, to.Unit.Places()), to}, First, Second)
	second.at[0], second.printed = expected, r.Pair
	second.slips()
	first := newSearch(PairOf[Q]{from, decimalOf(back, from.Unit, from.Unit.Places())}, Second, First)
	first.printed = r.Pair
	first.at[1] = shown{int64(back), int64(over(Q(b.step), ratio))}
	first.slips()
	for _, c := range append(second.found, first.found...) {
		if !c.Kind.Mild() { // the measures were rounded alike or not: nobody rounds one from the other
			found = append(found, c)
		}
	}
	if len(found) > 1 { // what has a name comes without the wrong number
		found = deleteUnnamed(found)
	}
	r.Slips = ordered(found)
	return r, nil
}

func deleteUnnamed[Q units.Quantity](found []candidate[Q]) []candidate[Q] {
	var named []candidate[Q]
	for _, c := range found {
		if c.Kind != WrongNumber {
			named = append(named, c)
		}
	}
	if len(named) == 0 {
		return found
	}
	return named
}

// factorPi tries π left out, and π taken twice.
func factorPi[Q units.Quantity](from, to units.Written[Q], ratio Ratio) (found []candidate[Q]) {
	a, b := show(from), show(to)
	plain := Ratio{Num: ratio.Num, Den: ratio.Den}
	once := times(from.Value, ratio)
	for _, wrong := range []shown{
		{int64(times(from.Value, plain)), int64(times(Q(a.step), plain))},
		{int64(units.ScalePiRound(once, 1, 1, units.NearestEven)), int64(times(Q(4*a.step), ratio))},
	} {
		if units.InRange(Q(wrong.value)) && agree(wrong, b) {
			found = append(found, candidate[Q]{SlipOf: SlipOf[Q]{Kind: FactorPi, In: Second, Printed: to,
				Correct: decimalOf(once, to.Unit, int(to.Places)), Rank: rankWrongUnit}})
		}
	}
	return found
}

// CheckRelated holds two measures to each other, each printed in two units, of
// which the second follows from the first: 0.0012 in (0.03 mm) of bore and
// 0.0031 in (0.08 mm) of ring gap, with a ratio of π. Where one column doesn't
// hold and its figure is no more than the other column's rounded figure
// converted back, it was rounded twice.
func CheckRelated[Q units.Quantity](from, to PairOf[Q], ratio Ratio) (ReportOf[Q], error) {
	var r ReportOf[Q]
	for _, p := range []PairOf[Q]{from, to} {
		result, err := CheckPair(p)
		if err != nil {
			return ReportOf[Q]{}, err
		}
		r.Results = append(r.Results, result)
	}
	for _, side := range []Side{First, Second} {
		result, err := CheckRatio(from.side(side), to.side(side), ratio)
		if err != nil {
			return ReportOf[Q]{}, err
		}
		r.Results = append(r.Results, result)
	}
	first, second := &r.Results[2], &r.Results[3]
	if first.Flagged() != second.Flagged() {
		bad, side := first, First
		if second.Flagged() {
			bad, side = second, Second
		}
		if slip, ok := convertedBack(from, to.side(side), side, ratio); ok {
			bad.Slips = append([]SlipOf[Q]{slip}, bad.Slips[:min(len(bad.Slips), mostSlips-1)]...)
		}
	}
	return r, nil
}

// convertedBack reports whether from's figure on one side is its figure on the
// other side converted, while the measure to that follows from it comes from a
// size that only rounds to the other figure.
func convertedBack[Q units.Quantity](from PairOf[Q], to units.Written[Q], side Side, ratio Ratio) (SlipOf[Q], bool) {
	w, via := from.side(side), from.side(side.other())
	made := shown{int64(over(to.Value, ratio)), int64(over(Q(show(to).step), ratio))}
	if w.Unit == via.Unit || !rounds(int64(via.Value), show(w), zeroOf(w.Unit)) || !agree(made, show(via)) {
		return SlipOf[Q]{}, false
	}
	return SlipOf[Q]{Kind: RoundedTwice, In: First, Printed: w, Via: via, Correct: decimalOf(Q(made.value), w.Unit, int(w.Places)), Rank: rankRoundedTwice}, true
}
