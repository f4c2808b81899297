package limits

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Pair is the classes of a hole and of the shaft that goes in it: H7/g6.
type Pair struct {
	Hole, Shaft Class // one of each; At refuses others
}

// At looks up the fit at a nominal size. The errors are those of [Class.At],
// and an [OrderError] where Hole is not a hole's class or Shaft not a shaft's.
func (p Pair) At(nominal units.Length) (Fit, error) {
	if p.Hole.feature != Hole || p.Shaft.feature != Shaft {
		return Fit{}, &OrderError{First: p.Hole, Second: p.Shaft}
	}
	hole, err := p.Hole.At(nominal)
	if err != nil {
		return Fit{}, err
	}
	shaft, err := p.Shaft.At(nominal)
	if err != nil {
		return Fit{}, err
	}
	return Fit{hole, shaft}, nil
}

// IsZero reports whether the pair has no classes.
func (p Pair) IsZero() bool { return p == Pair{} }

// String is the pair as a drawing has it: H7/g6.
func (p Pair) String() string {
	if p.IsZero() {
		return "no classes"
	}
	return p.Hole.String() + "/" + p.Shaft.String()
}

// MarshalText writes what String gives; nothing for the zero Pair. A pair that
// is not a hole and a shaft is an [OrderError].
func (p Pair) MarshalText() ([]byte, error) {
	switch {
	case p.IsZero():
		return []byte{}, nil
	case p.Hole.feature != Hole || p.Shaft.feature != Shaft:
		return nil, &OrderError{First: p.Hole, Second: p.Shaft}
	}
	return []byte(p.String()), nil
}

// UnmarshalText reads what [ParsePair] reads; nothing gives the zero Pair.
func (p *Pair) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = Pair{}
		return nil
	}
	v, err := ParsePair(string(text))
	if err == nil {
		*p = v
	}
	return err
}

// noFit is the text of the zero Fit.
const noFit = "no fit"

// A Fit is a hole and a shaft of one nominal size: 50 H7/g6. It comes from
// [Parse] or [Pair.At]. Clearance counts above zero, interference below. The
// zero Fit is none. Fits compare with ==.
type Fit struct {
	hole, shaft Limits
}

// IsZero reports whether f is no fit.
func (f Fit) IsZero() bool { return f.hole.IsZero() || f.shaft.IsZero() }

// Nominal is the nominal size that hole and shaft share.
func (f Fit) Nominal() units.Length { return f.hole.nominal }

// Hole is the hole's limits.
func (f Fit) Hole() Limits { return f.hole }

// Shaft is the shaft's limits.
func (f Fit) Shaft() Limits { return f.shaft }

// Pair is the two classes.
func (f Fit) Pair() Pair { return Pair{f.hole.class, f.shaft.class} }

// MaxClearance is the greatest hole less the least shaft. Below zero it is the
// least interference.
func (f Fit) MaxClearance() units.Length {
	return units.Length(int64(f.hole.upper)-int64(f.shaft.lower)) * units.Nanometre
}

// MinClearance is the least hole less the greatest shaft. Below zero it is the
// greatest interference.
func (f Fit) MinClearance() units.Length {
	return units.Length(int64(f.hole.lower)-int64(f.shaft.upper)) * units.Nanometre
}

// Clearance is the bracket from the least to the greatest clearance. That of
// the zero Fit knows nothing.
func (f Fit) Clearance() tolerance.Bracket {
	if f.IsZero() {
		return tolerance.Bracket{}
	}
	return tolerance.MustBetween(f.MinClearance(), f.MaxClearance()).Interval()
}

// Kind says whether the fit is one of clearance, transition or interference. A
// least clearance of zero, as in H7/h6, still makes a clearance fit, and a
// greatest of zero an interference fit.
func (f Fit) Kind() tolerance.FitKind { return f.Bands().Kind() }

// Bands is the fit as package tolerance has it, for judging against a wanted
// clearance. That of the zero Fit knows nothing.
func (f Fit) Bands() tolerance.Fit {
	bands, _ := tolerance.FitBands(f.hole.Band(), f.shaft.Band()) // fails for the zero Fit alone
	return bands
}

// Describe says in words and millimetres what the fit comes to: "clearance 0.009
// to 0.05 mm", "up to 0.023 mm clearance, up to 0.018 mm interference".
func (f Fit) Describe() string {
	span := func(dst []byte, from, to units.Length) string {
		return string(append(appendSize(append(appendSize(dst, from), " to "...), to), " mm"...))
	}
	switch f.Kind() {
	case tolerance.ClearanceFit:
		return span([]byte("clearance "), f.MinClearance(), f.MaxClearance())
	case tolerance.InterferenceFit:
		return span([]byte("interference "), -f.MaxClearance(), -f.MinClearance())
	case tolerance.TransitionFit:
		return "up to " + f.MaxClearance().String() + " clearance, up to " + (-f.MinClearance()).String() + " interference"
	}
	return noFit
}

// String is the fit as a drawing has it, the nominal size in millimetres:
// 50 H7/g6.
func (f Fit) String() string {
	if f.IsZero() {
		return noFit
	}
	return string(f.append(make([]byte, 0, 32)))
}

func (f Fit) append(dst []byte) []byte {
	dst = append(f.hole.append(dst), '/')
	dst, _ = f.shaft.class.AppendText(dst)
	return dst
}

// AppendText appends what String gives; nothing for the zero Fit.
func (f Fit) AppendText(dst []byte) ([]byte, error) {
	if f.IsZero() {
		return dst, nil
	}
	return f.append(dst), nil
}

// MarshalText is what AppendText appends.
func (f Fit) MarshalText() ([]byte, error) { return f.AppendText(make([]byte, 0, 32)) }

// UnmarshalText reads what [Parse] reads, looking the limits up afresh; nothing
// gives the zero Fit.
func (f *Fit) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*f = Fit{}
		return nil
	}
	v, err := Parse(string(text))
	if err == nil {
		*f = v
	}
	return err
}
