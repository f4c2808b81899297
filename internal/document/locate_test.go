package document

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLocate(t *testing.T) {
	text := []byte("{\n  \"a\": [1,\n    {\"b\": \"é\", \"c\": [true]}],\n  \"d\": {\"e\": null}}")
	for path, want := range map[string]Place{
		"":          {1, 1},
		"a":         {2, 8},
		"a[0]":      {2, 9},
		"a[1]":      {3, 5},
		"a[1].b":    {3, 11},
		"a[1].c[0]": {3, 22},
		"d.e":       {4, 14},
	} {
		got, ok := Locate(text, path)
		require.True(t, ok, path)
		require.Equal(t, want, got, path)
	}
	for _, path := range []string{"b", "a[2]", "a[1].c[1]", "d.e.f", "[0]"} {
		_, ok := Locate(text, path)
		require.False(t, ok, path)
	}
	for _, bad := range []string{"", "{", `{"a"`, `{"a":[`, `{1:2}`, "["} {
		_, ok := Locate([]byte(bad), "x.y")
		require.False(t, ok, bad)
	}
}
