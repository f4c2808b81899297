package limits

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Limits are what a class asks at one nominal size: 25 H7 is 25.000 to
// 25.021 mm. They come from [Class.At] or [ParseLimits]. The zero Limits ask
// nothing. Limits compare with ==.
type Limits struct {
	nominal      units.Length
	lower, upper int32 // limit deviations in nanometres
	class        Class
}

// IsZero reports whether l asks nothing.
func (l Limits) IsZero() bool { return l.class.IsZero() }

// Nominal is the nominal size, from which the deviations count.
func (l Limits) Nominal() units.Length { return l.nominal }

// Class is the tolerance class.
func (l Limits) Class() Class { return l.class }

// UpperDeviation is the upper limit deviation (ES of a hole, es of a shaft):
// the greatest size less the nominal one.
func (l Limits) UpperDeviation() units.Length { return length(l.upper) }

// LowerDeviation is the lower limit deviation (EI of a hole, ei of a shaft):
// the least size less the nominal one.
func (l Limits) LowerDeviation() units.Length { return length(l.lower) }

// Greatest is the upper limit of size.
func (l Limits) Greatest() units.Length { return l.nominal + length(l.upper) }

// Least is the lower limit of size.
func (l Limits) Least() units.Length { return l.nominal + length(l.lower) }

// Tolerance is the greatest size less the least: the width of the grade.
func (l Limits) Tolerance() units.Length { return length(l.upper - l.lower) }

// Band is the sizes allowed, both limits included, for a measurement to be
// judged against. That of the zero Limits asks nothing.
func (l Limits) Band() tolerance.Band {
	if l.IsZero() {
		return tolerance.Band{}
	}
	return tolerance.MustBetween(l.Least(), l.Greatest())
}

// String is the limits as a drawing has them, the nominal size in millimetres:
// 25 H7.
func (l Limits) String() string {
	if l.IsZero() {
		return "no limits"
	}
	return string(l.append(make([]byte, 0, 24)))
}

func (l Limits) append(dst []byte) []byte {
	dst = append(appendSize(dst, l.nominal), ' ')
	dst, _ = l.class.AppendText(dst)
	return dst
}

// appendSize appends a size in millimetres without the unit.
func appendSize(dst []byte, size units.Length) []byte {
	dst, _ = size.Append(dst, units.Style[units.Length]{Unit: units.InMillimetres, Places: units.AllPlaces, Bare: true})
	return dst
}

// AppendText appends what String gives; nothing for the zero Limits.
func (l Limits) AppendText(dst []byte) ([]byte, error) {
	if l.IsZero() {
		return dst, nil
	}
	return l.append(dst), nil
}

// MarshalText is what AppendText appends.
func (l Limits) MarshalText() ([]byte, error) { return l.AppendText(make([]byte, 0, 24)) }

// UnmarshalText reads what [ParseLimits] reads, looking the limits up afresh;
// nothing gives the zero Limits.
func (l *Limits) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*l = Limits{}
		return nil
	}
	v, err := ParseLimits(string(text))
	if err == nil {
		*l = v
	}
	return err
}
