package units

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
)

// The same work by this package, by the decimal library and by float64, so
// that one run shows the ratios.

var sunk struct {
	l Length
	v Volume
	d decimal.Decimal
	f float64
	b []byte
	c int
}

func BenchmarkParse(b *testing.B) {
	const text = "0.0025 in"
	b.Run("lib=tenthou/op=parse", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.l, _ = ParseLength(text)
		}
	})
	b.Run("lib=decimal/op=parse", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.d, _ = decimalParse(text)
		}
	})
	b.Run("lib=float64/op=parse", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.f, _ = floatParse(text)
		}
	})
	for name, text := range map[string]string{"quote": `.0025"`, "comma": "0,07 mm", "fraction": "25/64 in", "feet": "5 ft 3 1/2 in"} {
		b.Run("lib=tenthou/op=parse-"+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sunk.l, _ = ParseLength(text)
			}
		})
	}
	b.Run("lib=tenthou/op=parse-error", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.l, _ = ParseLength("0.07 mn")
		}
	})
}

// floatParse reads a number and a unit to millimetres.
func floatParse(s string) (float64, error) {
	number, unit, _ := strings.Cut(s, " ")
	x, err := strconv.ParseFloat(number, 64)
	switch unit {
	case "mm":
	case "in":
		x *= 25.4
	case "µm":
		x *= 0.001
	case "thou":
		x *= 0.0254
	default:
		return math.NaN(), strconv.ErrSyntax
	}
	return x, err
}

var decimalInch = decimal.New(254, -1)

func decimalParse(s string) (decimal.Decimal, error) {
	number, unit, _ := strings.Cut(s, " ")
	x, err := decimal.NewFromString(number)
	switch unit {
	case "mm":
	case "in":
		x = x.Mul(decimalInch)
	default:
		return x, strconv.ErrSyntax
	}
	return x, err
}

func BenchmarkAppend(b *testing.B) {
	l := MustParseLength("0.0635 mm")
	buf := make([]byte, 0, 64)
	b.Run("lib=tenthou/op=append", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.b, _ = l.AppendText(buf[:0])
		}
	})
	d, f := decimal.New(635, -4), 0.0635
	b.Run("lib=decimal/op=append", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.b = append(append(buf[:0], d.String()...), " mm"...)
		}
	})
	b.Run("lib=float64/op=append", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.b = append(strconv.AppendFloat(buf[:0], f, 'f', -1, 64), " mm"...)
		}
	})
	b.Run("lib=tenthou/op=append-inches", func(b *testing.B) {
		b.ReportAllocs()
		s := Style[Length]{Unit: InInches, Places: 4}
		for b.Loop() {
			sunk.b, _ = l.Append(buf[:0], s)
		}
	})
	b.Run("lib=decimal/op=append-inches", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.b = append(append(buf[:0], d.DivRound(decimalInch, 4).StringFixed(4)...), " in"...)
		}
	})
	b.Run("lib=float64/op=append-inches", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.b = append(strconv.AppendFloat(buf[:0], f/25.4, 'f', 4, 64), " in"...)
		}
	})
	b.Run("lib=tenthou/op=append-dual", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sunk.b = l.AppendDual(buf[:0], 4, 4)
		}
	})
}

// The operands of arithmetic stand in memory, so that nothing is computed
// before the run.
var operands = struct {
	a, b, c    Length
	da, db, dc decimal.Decimal
	fa, fb, fc float64
}{
	86_012_000_000, 85_974_000_000, 25_400_000_000,
	decimal.New(86012, -3), decimal.New(85974, -3), decimal.New(254, -1),
	86.012, 85.974, 25.4,
}

func BenchmarkArithmetic(b *testing.B) {
	x := &operands
	pi := decimal.NewFromFloat(math.Pi)
	for _, c := range []struct {
		name string
		run  func(*testing.B)
	}{
		{"lib=tenthou/op=add", func(b *testing.B) {
			for b.Loop() {
				sunk.l = x.a.Add(x.b)
			}
		}},
		{"lib=decimal/op=add", func(b *testing.B) {
			for b.Loop() {
				sunk.d = x.da.Add(x.db)
			}
		}},
		{"lib=float64/op=add", func(b *testing.B) {
			for b.Loop() {
				sunk.f = x.fa + x.fb
			}
		}},
		{"lib=int64/op=add", func(b *testing.B) {
			for b.Loop() {
				sunk.l = x.a + x.b
			}
		}},
		{"lib=tenthou/op=compare", func(b *testing.B) {
			for b.Loop() {
				sunk.c = x.a.Compare(x.b)
			}
		}},
		{"lib=decimal/op=compare", func(b *testing.B) {
			for b.Loop() {
				sunk.c = x.da.Cmp(x.db)
			}
		}},
		{"lib=float64/op=compare", func(b *testing.B) {
			for b.Loop() {
				sunk.c = compareFloat(x.fa, x.fb)
			}
		}},
		{"lib=tenthou/op=muldiv", func(b *testing.B) {
			for b.Loop() {
				sunk.l = x.a.MulDiv(x.b, x.c)
			}
		}},
		{"lib=decimal/op=muldiv", func(b *testing.B) {
			for b.Loop() {
				sunk.d = x.da.Mul(x.db).DivRound(x.dc, 9)
			}
		}},
		{"lib=float64/op=muldiv", func(b *testing.B) {
			for b.Loop() {
				sunk.f = x.fa * x.fb / x.fc
			}
		}},
		{"lib=tenthou/op=scalepi", func(b *testing.B) {
			for b.Loop() {
				sunk.l = x.a.ScalePi(1, 4)
			}
		}},
		{"lib=decimal/op=scalepi", func(b *testing.B) {
			four := decimal.New(4, 0)
			for b.Loop() {
				sunk.d = x.da.Mul(pi).DivRound(four, 9)
			}
		}},
		{"lib=float64/op=scalepi", func(b *testing.B) {
			for b.Loop() {
				sunk.f = x.fa * math.Pi / 4
			}
		}},
		{"lib=tenthou/op=cylinder", func(b *testing.B) {
			for b.Loop() {
				sunk.v = CylinderVolume(x.a, x.b)
			}
		}},
		{"lib=decimal/op=cylinder", func(b *testing.B) {
			four := decimal.New(4, 0)
			for b.Loop() {
				sunk.d = x.da.Mul(x.da).Mul(x.db).Mul(pi).DivRound(four, 8)
			}
		}},
		{"lib=float64/op=cylinder", func(b *testing.B) {
			for b.Loop() {
				sunk.f = x.fa * x.fa * x.fb * math.Pi / 4
			}
		}},
		{"lib=tenthou/op=round", func(b *testing.B) {
			for b.Loop() {
				sunk.l, _ = x.a.Round(InMillimetres, 2, NearestEven)
			}
		}},
		{"lib=decimal/op=round", func(b *testing.B) {
			for b.Loop() {
				sunk.d = x.da.RoundBank(2)
			}
		}},
		{"lib=float64/op=round", func(b *testing.B) {
			for b.Loop() {
				sunk.f = math.RoundToEven(x.fa*100) / 100
			}
		}},
		{"lib=tenthou/op=from-float64", func(b *testing.B) {
			for b.Loop() {
				sunk.l, _ = Nearest(x.fa, InMillimetres)
			}
		}},
		{"lib=decimal/op=from-float64", func(b *testing.B) {
			for b.Loop() {
				sunk.d = decimal.NewFromFloat(x.fa)
			}
		}},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			c.run(b)
		})
	}
}

func compareFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
