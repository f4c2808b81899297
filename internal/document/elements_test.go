package document_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// grows decodes lists of n elements and gives what the longest of them costs
// more than one of a single element.
func grows[T any](t *testing.T, element string) float64 {
	t.Helper()
	var costs []float64
	for _, n := range []int{1, 2, 13, 50} {
		list := []byte("[" + strings.Repeat(element+",\n ", n-1) + element + " ]")
		var into []T
		require.NoError(t, document.Decode(list, &into))
		require.Len(t, into, n)
		for _, x := range into {
			require.Equal(t, into[0], x)
		}
		costs = append(costs, testing.AllocsPerRun(20, func() {
			var into []T
			_ = document.Decode(list, &into)
		}))
	}
	return costs[len(costs)-1] - costs[0]
}

// A list's memory is taken at once where its length shows.
func TestElements(t *testing.T) {
	type flat struct {
		Along  inspection.Reading  `json:"along"`
		Across *inspection.Reading `json:"across,omitempty"`
		Turns  int                 `json:"turns,omitempty"`
	}
	require.Zero(t, grows[inspection.Reading](t, `"86.012 mm"`))
	require.Zero(t, grows[inspection.Reading](t, `"[0.06 mm, 0.07 mm]"`), "a bracket within a text ends no list")
	require.Zero(t, grows[flat](t, `{"along": "[0.06 mm, 0.07 mm]"}`))
	require.Zero(t, grows[flat](t, `{"along": "[0.06 mm, 0.07 mm]", "turns": 5}`))
	require.Zero(t, grows[int](t, `-5`))
	require.Zero(t, grows[float64](t, `0.5`))
	require.Zero(t, grows[bool](t, `true`))
	require.Equal(t, 4.0, grows[[1]flat](t, `[{"along": "0.06 mm"}]`), "of elements that hold others it doubles, from 4")
	require.Equal(t, 4.0, grows[struct {
		Set flat `json:"set"`
	}](t, `{"set": {"along": "0.06 mm"}}`))
}

// A guess that is wrong costs memory, and no more: what it must not do is show.
func TestElements_misled(t *testing.T) {
	type named struct {
		Name string `json:"name"`
	}
	var texts []string
	require.NoError(t, document.Decode([]byte(`["\"]", "\"\"\"]", "a]\"", "{,{", ""]`), &texts))
	require.Equal(t, []string{`"]`, `"""]`, `a]"`, "{,{", ""}, texts)
	var objects []named
	require.NoError(t, document.Decode([]byte(`[{"name":"}]"}, {"name":"}  ]{{{"}, {"name":""}]`), &objects))
	require.Equal(t, []named{{"}]"}, {"}  ]{{{"}, {""}}, objects)
	// Longer than it looks ahead.
	const n = 20_000
	var numbers []int
	require.NoError(t, document.Decode([]byte("["+strings.Repeat("7,", n-1)+"7]"), &numbers))
	require.Len(t, numbers, n)
	require.Equal(t, 7, numbers[n-1])
	require.ErrorIs(t, document.Decode([]byte(`[1, 2`), &numbers), document.ErrTruncated)
	require.ErrorIs(t, document.Decode([]byte(`["a`), &texts), document.ErrTruncated)
	require.ErrorIs(t, document.Decode([]byte(`[{`), &objects), document.ErrTruncated)
}

// A type may contain itself through the pointer that is read.
func TestElements_recursive(t *testing.T) {
	type link struct {
		Size size  `json:"size"`
		Next *link `json:"next,omitempty"`
	}
	var chain *link
	require.NoError(t, document.Decode([]byte(`{"size": "1.000 mm", "next": {"size": "2.000 mm"}}`), &chain))
	require.Equal(t, size(2000), chain.Next.Size)
	var chains []link
	require.NoError(t, document.Decode([]byte(`[{"size": "1.000 mm", "next": {"size": "2.000 mm"}}, {"size": "3.000 mm"}]`), &chains))
	require.Equal(t, size(3000), chains[1].Size)
}
