package piston

import (
	"slices"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// An inspector serves several goroutines, and what it gave is its own.
func TestInspector_again(t *testing.T) {
	l, r := demo(t)
	in := l.Prepare()
	want, err := in.Inspect(&r)
	require.NoError(t, err)
	worn := r
	worn.Pistons = slices.Clone(r.Pistons)
	worn.Pistons[0].Skirt = []ReadingsSkirt{{}, {Across: reading("85.920 mm")}}
	var wait sync.WaitGroup
	for i := range 4 {
		wait.Go(func() {
			for range 20 {
				if i%2 == 0 {
					out, err := in.Inspect(&r)
					assert.NoError(t, err)
					assert.Empty(t, cmp.Diff(want, out, compareAll))
				} else {
					out, err := in.Inspect(&worn)
					assert.NoError(t, err)
					assert.Equal(t, inspection.Replace, out.Decisions[0].Action)
				}
			}
		})
	}
	wait.Wait()
	fresh, err := Inspect(&l, &r)
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(want, fresh, compareAll))
}
