package proofread

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

// Of limits that are close no shifted point is tried: none would be found. Where
// the greatest is ten times the least, one is.
func TestClose(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	closed, found := 0, 0
	for range 50_000 {
		figure := func() units.Written[units.Length] {
			w := units.Written[units.Length]{Unit: units.Unit[units.Length](r.IntN(4)), Places: uint8(r.IntN(5))}
			w.Value = units.Length(r.Int64N(1200)-100) * w.Step()
			return w
		}
		c := Column{Form: Range, A: figure(), B: figure()}
		if r.IntN(4) == 0 { // a slip, or near to one
			c.B.Unit, c.B.Places = c.A.Unit, c.A.Places
			c.B.Value = c.A.Value*10 + units.Length(r.Int64N(5)-2)*c.A.Step()
		}
		n := len(c.shifted())
		if c.close() {
			closed++
			require.Zero(t, n, c)
		} else if n > 0 {
			found++
		}
	}
	require.Greater(t, closed, 10_000)
	require.Greater(t, found, 1_000)
	// Degrees Fahrenheit have a zero of their own.
	warm := ColumnOf[units.Temperature]{Form: Range}
	require.False(t, warm.close())
}
