package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Whatever the readings and the table: an error, or an answer that chooses no
// row unless the greatest protrusion lies in it for certain, and calls nothing
// clear that isn't.
func FuzzGasketChoose(f *testing.F) {
	f.Add(int64(5e8), int64(6e8), int64(6e8), int64(7e8), int64(6.5e8), int64(6.4e8), int64(5e6), int64(14e8))
	f.Add(int64(0), int64(1), int64(1), int64(1)<<61, int64(1), int64(1)<<61, int64(1)<<60, int64(1))
	f.Fuzz(func(t *testing.T, a, b, c, d, first, second, off, thick int64) {
		l := func(x int64) units.Length { return units.Length(x) }
		row := func(lo, hi, thick int64) GasketRow {
			p, _ := tolerance.Between(l(lo), l(hi))
			g, _ := tolerance.Between(l(thick), l(thick).Add(50*units.Micrometre))
			return GasketRow{Mark: "m" + l(lo).String(), Protrusion: p, Thickness: g}
		}
		read := func(x int64) tolerance.Bracket { r, _ := tolerance.PlusMinus(l(x), l(off)); return r }
		g := GasketCheck{
			Table:   GasketTable{row(a, b, thick), row(c, d, thick/2*3)},
			Pistons: []DeckPiston{{"1", read(first), read(second)}, {"2", read(second), read(second)}},
		}
		r, err := g.Choose()
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.NotEmpty(t, r.Next)
		if r.Row < 0 {
			require.NotEmpty(t, r.Needs)
			require.Equal(t, HeadContactUnknown, r.Contact)
			return
		}
		require.Equal(t, tolerance.Within, g.Table[r.Row].Protrusion.Judge(r.Greatest))
		for _, p := range r.Pistons {
			if lo, _ := p.Clearance.Lower(); lo <= 0 {
				require.NotEqual(t, HeadClear, r.Contact)
			}
		}
	})
}
