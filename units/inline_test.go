package units

import (
	"os/exec"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

// What costs no more than int64 does must stay small enough for the compiler
// to put it in the caller's place.
func TestInlines(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the package once more")
	}
	goTool, err := exec.LookPath("go")
	if err != nil {
		t.Skip("no go command here to ask: ", err)
	}
	out, err := exec.Command(goTool, "build", "-gcflags=-m", ".").CombinedOutput()
	require.NoError(t, err, "%s", out)
	can := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m): can inline (\S+)`).FindAllSubmatch(out, -1) {
		can[string(m[1])] = true
	}
	for _, s := range suites {
		name := s.table().goType[len("units."):]
		want := []string{"InRange", "Compare"}
		if name != "Temperature" {
			want = append(want, "Add", "Sub", "Abs", "Min", "Max", "Scale")
		}
		for _, method := range want {
			require.True(t, can[name+"."+method], "%s.%s can be inlined", name, method)
		}
	}
	require.True(t, can["ok"])
	require.False(t, can["Length.NoSuchMethod"])
}
