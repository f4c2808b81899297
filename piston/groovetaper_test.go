package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
)

// By hand: [0.1016, 0.127) less [0.0508, 0.0635) lies over 0.0381 and under
// 0.0762; [0.0635, 0.0762) less the same, over 0 and under 0.0254.
func TestAssessGrooveTaper(t *testing.T) {
	root := at("[0.0508 mm, 0.0635 mm)")
	for _, c := range []struct {
		limit, standing string
		mouths          []string
	}{
		{"max 0.03 mm", "past the wear limit", []string{"[0.1016 mm, 0.127 mm)"}},
		{"max 0.03 mm", "usable", []string{"[0.0635 mm, 0.0762 mm)"}},
		{"max 0.02 mm", "can't tell", []string{"[0.0635 mm, 0.0762 mm)"}},
		{"max 0.03 mm", "past the wear limit", []string{"[0.0635 mm, 0.0762 mm)", "[0.1016 mm, 0.127 mm)"}},
	} {
		var mouth, roots []tolerance.Bracket
		for _, m := range c.mouths {
			mouth, roots = append(mouth, at(m)), append(roots, root)
		}
		f, err := AssessGrooveTaper("piston 1, top groove", tolerance.Spec{Wear: band(c.limit)}, mouth, roots)
		require.NoError(t, err)
		require.Equal(t, c.standing, f.Standing.String(), f.String())
	}

	// A rolled edge: the mouth is the narrower, and a greatest limit has nothing against it.
	f, err := AssessGrooveTaper("x", tolerance.Spec{Wear: band("-0.01–0.03 mm")}, []tolerance.Bracket{at("0.04 mm")}, []tolerance.Bracket{at("0.06 mm")})
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, f.Standing)
	require.Equal(t, tolerance.Below, f.Wear.Least)

	_, err = AssessGrooveTaper("x", tolerance.Spec{}, []tolerance.Bracket{root}, nil)
	require.ErrorIs(t, err, ErrInput)
	_, err = AssessGrooveTaper("x", tolerance.Spec{Wear: band("max 0.03 mm")}, nil, nil)
	require.ErrorIs(t, err, tolerance.ErrNoReading)
}
