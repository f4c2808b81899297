package valvetrain

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestInputError(t *testing.T) {
	err := inputSize("stem diameter", -units.Millimetre)
	require.EqualError(t, err, "valvetrain: stem diameter -1 mm is not above 0 mm and at most 10 m")
	require.ErrorIs(t, err, ErrInput)
	var input *InputError
	require.True(t, errors.As(err, &input))
	require.Equal(t, "stem diameter", input.Field)

	require.Error(t, inputSize("stem diameter", 0))
	require.Error(t, inputSize("stem diameter", inputLargest+1))
	require.NoError(t, inputSize("stem diameter", inputLargest))
	require.Error(t, inputAllowance("wear", -1))
	require.NoError(t, inputAllowance("wear", 0))
}

func TestInputBracket(t *testing.T) {
	whole, err := tolerance.NewInterval(units.Millimetre, tolerance.Closed, 2*units.Millimetre, tolerance.Open)
	require.NoError(t, err)
	require.NoError(t, inputBracket("gap", whole, 0))
	require.EqualError(t, inputBracket("gap", whole, 3*units.Millimetre),
		"valvetrain: gap [1 mm, 2 mm) is not from 3 mm to 10 m")
	open, err := tolerance.NewInterval(units.Millimetre, tolerance.Closed, 0, tolerance.Absent)
	require.NoError(t, err)
	require.EqualError(t, inputBracket("gap", open, 0),
		"valvetrain: gap [1 mm, ∞) is not measured, with a least and a greatest")
}

func TestInputText(t *testing.T) {
	require.Equal(t, "short", inputText("short"))
	long := inputText(strings.Repeat("é", 50))
	require.Equal(t, strings.Repeat("é", 32)+"…", long)
	require.Equal(t, strings.Repeat("é", 31)+"x…", inputText(strings.Repeat("é", 31)+"x"+strings.Repeat("é", 9)))
}
