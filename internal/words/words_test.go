package words

import (
	"testing"

	"github.com/stretchr/testify/require"
)

type blade uint8

func TestWords(t *testing.T) {
	names := []string{"not tried", "enters", "doesn't enter"}
	require.Equal(t, "enters", Of(names, blade(1)))
	require.Equal(t, "(3)", Of(names, blade(3)))
	got := blade(9)
	want, ok := Read(names, []byte("doesn't enter"), &got)
	require.True(t, ok)
	require.Empty(t, want)
	require.Equal(t, blade(2), got)
	want, ok = Read(names, []byte("Enters"), &got)
	require.False(t, ok)
	require.Equal(t, `one of "not tried", "enters", "doesn't enter"`, want)
	require.Equal(t, blade(2), got)
}
