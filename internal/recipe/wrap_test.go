package recipe

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWrap(t *testing.T) {
	require.Equal(t, "- one two\n  three\n", Wrap("one two  three", 9, "- ", "  "))
	require.Equal(t, "- µµµ µµµ\n", Wrap("µµµ µµµ", 9, "- ", "  "))
	require.Equal(t, "- longerthanaline\n  x\n", Wrap("longerthanaline x", 5, "- ", "  "))
	require.Equal(t, "\n", Wrap("", 5, "", "  "))
}
