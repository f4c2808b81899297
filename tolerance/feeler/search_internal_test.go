package feeler

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

// A search that has gone on too long ends without an answer, at whatever depth
// it is.
func TestSearchEnds(t *testing.T) {
	d := Imperial32().d
	for _, left := range []int{0, 1, 50, 1000} {
		q := search{a: d.thick, sums: d.sums, target: 2*units.Millimetre + units.Picometre, least: 0, steps: stepsMax - left}
		_, err := q.run(5)
		require.ErrorIs(t, err, ErrSize)
		require.Less(t, q.steps, stepsMax+1000)
	}
}

func TestRootUp(t *testing.T) {
	for v, want := range map[uint64]int64{0: 0, 1: 1, 2: 2, 3: 2, 4: 2, 5: 3, 8: 3, 9: 3, 10: 4, 1 << 60: 1 << 30, 1<<60 + 1: 1<<30 + 1, 8e18: 2828427125} {
		require.Equal(t, want, int64(rootUp(v)), "%d", v)
	}
}
