// Package units is a stand-in with the declarations that the check looks at.
package units

type (
	Length                int64
	Angle                 int64
	Temperature           int64
	TemperatureDifference int64

	// Luminance has no constant to suggest.
	Luminance int64

	// Unit and Rounding are not quantities.
	Unit[Q Quantity] uint8
	Rounding         uint8
)

type Quantity interface {
	Length | Angle | Temperature | TemperatureDifference
}

const (
	Micrometre Length = 1_000_000
	Millimetre Length = 1000 * Micrometre
	Thou       Length = 25_400_000
	Inch       Length = 1000 * Thou

	Degree Angle = 3_600_000_000

	Kelvin TemperatureDifference = 9_000_000_000
)

const (
	MM      = 1_000_000_000
	THOU    = 25_400_000
	IN      = 25_400_000_000
	DEG     = 3_600_000_000
	CELSIUS = 9_000_000_000

	limit = 1 << 61
)

const Even Rounding = 1

func (l Length) Abs() Length                            { return max(l, -l) }
func (l Length) Add(m Length) Length                    { return l + m }
func (l Length) Scale(num, den int64) Length            { return Length(int64(l) * num / den) }
func (l Length) Text(u Unit[Length], places int) string { return "" }

func (t Temperature) Add(d TemperatureDifference) Temperature { return t + Temperature(d) }

// Area would be refused anywhere but in this package.
func area(a, b Length) Length { return a * b / 5 }

func Parse[Q Quantity](s string) (Q, error) { return 5, nil }
