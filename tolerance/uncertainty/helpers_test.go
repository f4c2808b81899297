package uncertainty_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

const (
	pm = units.Picometre
	nm = units.Nanometre
	um = units.Micrometre
	mm = units.Millimetre
)

// must is the value of a call that has no reason to fail.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// expect compares what was computed, by name, with every line of a vector
// file whose names begin with the prefix, and demands that all of it is there.
func expect(t *testing.T, file, prefix string, got map[string]float64) {
	t.Helper()
	used := 0
	for c := range vectors.Load(t, file).All(t) {
		if len(c.ID) < len(prefix) || c.ID[:len(prefix)] != prefix {
			c.Ignore("expected")
			continue
		}
		v, ok := got[c.ID]
		require.True(t, ok, "%s: nothing was computed for %q", c.Where(), c.ID)
		c.Near("expected", v)
		used++
	}
	require.Equal(t, len(got), used, "a value was computed that the file doesn't have")
}

// refused asserts that an error is an InputError of the kind.
func refused(t *testing.T, err, kind error) {
	t.Helper()
	require.ErrorIs(t, err, kind)
	var input *uncertainty.InputError
	require.ErrorAs(t, err, &input)
	require.NotEmpty(t, input.Op)
	require.NotEmpty(t, input.Field)
	require.LessOrEqual(t, len(input.Value), 64+len("…"))
	require.LessOrEqual(t, len(input.Name), 64+len("…"))
	require.Contains(t, err.Error(), "uncertainty: "+input.Op)
}

func relative(t *testing.T, want, got, part float64) {
	t.Helper()
	require.InDelta(t, want, got, math.Abs(want)*part)
}
