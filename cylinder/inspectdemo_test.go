package cylinder

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
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

// badPressure is a limit on a pressure that can't be.
func badPressure(t testing.TB) tolerance.PrintedOf[units.Pressure] {
	t.Helper()
	p, err := tolerance.ParsePrintedOf[units.Pressure]("max -1 bar")
	require.NoError(t, err)
	return p
}
