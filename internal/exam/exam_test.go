package exam

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

func TestKey(t *testing.T) {
	k := Key{1, 7, []Question{{"side clearance", "What is it?", units.MustParseLength("0.0635 mm"), units.Micrometre, 2}}}
	text, err := k.Text()
	require.NoError(t, err)
	back, err := Read("key.json", text)
	require.NoError(t, err)
	require.Equal(t, k, back)
	for old, c := range map[string][2]string{
		`"schema": 1`:          {`"schema": 2`, "key.json:2: schema"},
		`"seed"`:               {`"sed"`, "sed"},
		`"within": "0.001 mm"`: {`"within": "-0.001 mm"`, "key.json:5: questions[0]"},
		`"0.0635 mm"`:          {`"0.0635"`, "questions[0].answer"},
	} {
		_, err := Read("key.json", []byte(strings.Replace(string(text), old, c[0], 1)))
		require.ErrorContains(t, err, c[1])
	}
	_, err = Read("key.json", []byte(`{"schema": 1, "seed": 7, "questions": []}`))
	require.ErrorContains(t, err, "there are none")
}
