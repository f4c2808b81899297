package units

import (
	"database/sql/driver"
	"encoding"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
)

// methods is what every quantity has.
type methods[Q Quantity] interface {
	Quantity
	fmt.Stringer
	fmt.Formatter
	encoding.TextMarshaler
	encoding.TextAppender
	driver.Valuer
	InRange() bool
	Compare(Q) int
	Text(Unit[Q], int) string
	Append([]byte, Style[Q]) ([]byte, bool)
	Round(Unit[Q], int, Rounding) (Q, bool)
	Places(Unit[Q]) (int, bool)
	Float(Unit[Q]) float64
	Decimal(Unit[Q], int, Rounding) (decimal.Decimal, bool)
}

type pointer[Q Quantity] interface {
	*Q
	encoding.TextUnmarshaler
	Scan(any) error
}

// suite holds the tests that every quantity passes.
type suite[Q methods[Q], P pointer[Q]] struct {
	parse func(string) (Q, error)
	must  func(string) Q
}

type tester interface {
	table() *table
	parsers(t *testing.T)
	texts(t *testing.T)
	writtens(t *testing.T)
	unitNames(t *testing.T)
	styles(t *testing.T)
	decimals(t *testing.T)
	nearest(t *testing.T)
	encoders(t *testing.T)
	databases(t *testing.T)
	formats(t *testing.T)
	outOfRange(t *testing.T)
	sums(t *testing.T)
	fuzz(t *testing.T, s string)
}

var suites = []tester{
	suite[Length, *Length]{ParseLength, MustParseLength},
	suite[Angle, *Angle]{ParseAngle, MustParseAngle},
	suite[Volume, *Volume]{ParseVolume, MustParseVolume},
	suite[Mass, *Mass]{ParseMass, MustParseMass},
	suite[Force, *Force]{ParseForce, MustParseForce},
	suite[Pressure, *Pressure]{ParsePressure, MustParsePressure},
	suite[SpringRate, *SpringRate]{ParseSpringRate, MustParseSpringRate},
	suite[TemperatureDifference, *TemperatureDifference]{ParseTemperatureDifference, MustParseTemperatureDifference},
	suite[Temperature, *Temperature]{ParseTemperature, MustParseTemperature},
}

// each runs one test of the suite for every quantity.
func each(t *testing.T, test func(tester, *testing.T)) {
	t.Helper()
	for _, s := range suites {
		t.Run(s.table().goType, func(t *testing.T) { test(s, t) })
	}
}

func (suite[Q, P]) table() *table { return tableOf[Q]() }

// units is every unit of the quantity.
func (s suite[Q, P]) units() (all []Unit[Q]) {
	for i := range s.table().units {
		all = append(all, Unit[Q](i))
	}
	return all
}

func tableNamed(quantity string) *table {
	i := slices.IndexFunc(suites, func(s tester) bool { return s.table().quantity == quantity })
	return suites[i].table()
}

func seeded() *rand.Rand { return rand.New(rand.NewPCG(25, 4)) }

// sample is a value in range: small, large, round in some unit, or at an end.
func (t *table) sample(rnd *rand.Rand) int64 {
	for {
		v := int64(math.Exp2(rnd.Float64() * 61))
		switch rnd.IntN(8) {
		case 0:
			v = rnd.Int64N(limit)
		case 1:
			v = limit - rnd.Int64N(3)
		case 2:
			v = rnd.Int64N(20)
		case 3, 4, 5:
			u := &t.units[rnd.IntN(len(t.units))]
			step := u.step[rnd.IntN(u.places+1)]
			v = v/step*step + u.zero
		case 6:
			u := &t.units[rnd.IntN(len(t.units))]
			v = u.quanta*rnd.Int64N(100) + rnd.Int64N(3) - 1
		}
		if rnd.IntN(2) == 0 {
			v = -v
		}
		if t.inRange(v) {
			return v
		}
	}
}

// beyond is every sort of value that is out of range.
func (t *table) beyond() []int64 {
	all := []int64{math.MinInt64, math.MinInt64 + 1, -limit - 1, -2 * limit, limit + 1, 2 * limit, math.MaxInt64}
	if t.least != -limit {
		all = append(all, t.least-1)
	}
	return all
}
