package wearrate

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Allowance is what a rate allows for a size: size × rate. The formulas here
// are generic, so that sizes may be lengths, brackets, estimates or working
// terms. The rate must be a ratio. Each rounds once, to the nearest quantum
// (brackets outward); [Rule.Spec] rounds inward.
func Allowance[N tolerance.Number[N]](size N, rate tolerance.Ratio) N {
	return size.Scale(rate.Num, rate.Den)
}

// GreatestWorn is the greatest that a size or clearance may become with wear:
// the greatest when new, and the allowance for the part's size.
func GreatestWorn[N tolerance.Number[N]](greatestNew, size N, rate tolerance.Ratio) N {
	return greatestNew.Add(Allowance(size, rate))
}

// LeastWorn is the least that a size may become with wear: the least when new,
// less the allowance for the part's size.
func LeastWorn[N tolerance.Number[N]](leastNew, size N, rate tolerance.Ratio) N {
	return leastNew.Sub(Allowance(size, rate))
}

// SizeFor is the size for which a rate allows so much wear, the inverse of
// [Allowance]: wear ÷ rate. On a smaller part the wear is past the limit. The
// rate must be a ratio other than zero.
func SizeFor[N tolerance.Number[N]](wear N, rate tolerance.Ratio) N {
	return wear.Scale(rate.Den, rate.Num)
}

// Observed is the rate that wear comes to on a part of a size, exactly: 0.03 mm
// on 60 mm is 0.0005. It fails with an [InputError] where the size is not above
// zero or a value is out of range.
func Observed(wear, size units.Length) (tolerance.Ratio, error) {
	if !wear.InRange() {
		return tolerance.Ratio{}, refuse("", "wear", wear.String(), ErrRange, "within the range of a length")
	}
	if err := checkSize("", "size", size); err != nil {
		return tolerance.Ratio{}, err
	}
	return tolerance.NewRatio(int64(wear), int64(size))
}

func checkSize(item, field string, size units.Length) error {
	switch {
	case !size.InRange():
		return refuse(item, field, size.String(), ErrRange, "within the range of a length")
	case size <= 0:
		return refuse(item, field, size.String(), ErrSize, "above 0 mm")
	}
	return nil
}
