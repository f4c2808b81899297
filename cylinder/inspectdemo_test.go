package cylinder

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// The demo engine is invented: four cylinders, of which the third asks for an
// oversize, and a head that has bowed.

func demoFile(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/inspect/" + name)
	require.NoError(t, err)
	return data
}

func demoLimits(t testing.TB) Limits {
	t.Helper()
	l, err := ReadLimits("limits.json", demoFile(t, "limits.json"))
	require.NoError(t, err)
	return l
}

func demoReadings(t testing.TB) Readings {
	t.Helper()
	r, err := ReadReadings("readings.json", demoFile(t, "readings.json"))
	require.NoError(t, err)
	return r
}
