package tolerance

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// A PrintedOf is a band with its limits as the manual prints them: which unit,
// how many places. Its text is what was read, with single spaces, as long as
// the band is the one that was read.
type PrintedOf[Q units.Quantity] struct {
	BandOf[Q]
	Least, Greatest units.Written[Q] // as printed; zero where absent or calculated

	text string    // what was read
	read BandOf[Q] // as
}

// A Printed is a band of lengths as a manual prints it.
type Printed = PrintedOf[units.Length]

// ParsePrinted is [ParsePrintedOf] for lengths.
func ParsePrinted(s string) (Printed, error) { return ParsePrintedOf[units.Length](s) }

// ParsePrintedOf reads what [ParseBandOf] reads and keeps how each limit was
// printed.
func ParsePrintedOf[Q units.Quantity](s string) (PrintedOf[Q], error) {
	return printed[Q](s, false)
}

func printed[Q units.Quantity](s string, wide bool) (PrintedOf[Q], error) {
	if p, ok := plainBand[Q](s); ok {
		p.text, p.read = s, p.BandOf
		return p, nil
	}
	return (&reader[Q]{what: "band", input: s, wide: wide}).printed()
}

func (r *reader[Q]) printed() (none PrintedOf[Q], err error) {
	text, err := r.text()
	if err != nil || strings.EqualFold(text.s, noLimit) {
		return none, err
	}
	p, err := r.band(text)
	if err != nil {
		return none, err
	}
	p.text, p.read = text.s, p.BandOf
	return p, nil
}

// String is the text that was read, or the band's own.
func (p PrintedOf[Q]) String() string {
	if p.text == "" || p.BandOf != p.read {
		return p.BandOf.String()
	}
	return p.text
}

// AppendText appends what String gives. It fails where the band is out of
// range.
func (p PrintedOf[Q]) AppendText(dst []byte) ([]byte, error) {
	if p.text == "" || p.BandOf != p.read {
		return p.BandOf.AppendText(dst)
	}
	return append(dst, p.text...), nil
}

// MarshalText is what AppendText appends.
func (p PrintedOf[Q]) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText reads what [ParsePrintedOf] reads, over the whole range.
func (p *PrintedOf[Q]) UnmarshalText(text []byte) error {
	v, err := printed[Q](string(text), true)
	if err == nil {
		*p = v
	}
	return err
}
