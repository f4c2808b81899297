package document_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// bench is an engine's sheet of invented readings: 400 of them, in the forms
// that people write, and 60 limits.
type bench struct {
	Job       string             `json:"job"`
	Cylinders []cylinder         `json:"cylinders"`
	Limits    []inspection.Limit `json:"limits"`
}

type cylinder struct {
	Number  int                `json:"number"`
	Bore    []station          `json:"bore"`
	Pin     inspection.Reading `json:"pin,omitzero"`
	Skirt   inspection.Reading `json:"skirt"`
	Grooves [9]pairOfReadings  `json:"grooves"`
}

type station struct {
	Along  inspection.Reading `json:"along"`
	Across inspection.Reading `json:"across"`
}

type pairOfReadings struct {
	Width inspection.Reading `json:"width"`
	Ring  inspection.Reading `json:"ring"`
}

// benchText gives 10 cylinders of 40 readings each.
func benchText(t testing.TB) []byte {
	read := func(format string, a ...any) (r inspection.Reading) {
		require.NoError(t, r.UnmarshalText(fmt.Appendf(nil, format, a...)))
		return r
	}
	b := bench{Job: "demo"}
	for c := range 10 {
		cyl := cylinder{Number: c + 1, Pin: read("22.%03d mm", c), Skirt: read("85.%03d mm", 940+c)}
		for s := range 10 {
			cyl.Bore = append(cyl.Bore, station{Along: read("86.%03d mm", 10+s), Across: read("86.%03d ±0.002 mm", 12+s+c)})
		}
		for g := range cyl.Grooves {
			cyl.Grooves[g] = pairOfReadings{Width: read("[1.%03d mm, 1.%03d mm)", 520+g, 530+g), Ring: read("1.%03d mm", 490+g)}
		}
		b.Cylinders = append(b.Cylinders, cyl)
	}
	for l := range 60 {
		var limit inspection.Limit
		require.NoError(t, limit.New.UnmarshalText(fmt.Appendf(nil, "0.%03d–0.%03d mm", 20+l, 70+l)))
		require.NoError(t, limit.Wear.UnmarshalText(fmt.Appendf(nil, "max 0.%03d mm", 150+l)))
		b.Limits = append(b.Limits, limit)
	}
	text, err := json.Marshal(b)
	require.NoError(t, err)
	return text
}

func BenchmarkDecode_readings(b *testing.B) {
	text := benchText(b)
	b.Run("lib=document/op=400-readings", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		b.ReportAllocs()
		for b.Loop() {
			var sheet bench
			require.NoError(b, document.Decode(text, &sheet))
		}
	})
	b.Run("lib=encoding-json/op=400-readings", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		b.ReportAllocs()
		for b.Loop() {
			var sheet bench
			require.NoError(b, strictly(text, &sheet))
		}
	})
}
