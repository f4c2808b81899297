package cylinder

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

func TestBoreWords(t *testing.T) {
	roundTrip(t, taperNames, func(i uint8) string { return TaperRule(i).String() }, func(b []byte) (uint8, error) {
		var v TaperRule
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return TaperRule(i).MarshalText() })
	roundTrip(t, recordedNames, func(i uint8) string { return Recorded(i).String() }, func(b []byte) (uint8, error) {
		var v Recorded
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return Recorded(i).MarshalText() })
	roundTrip(t, ridgeNames, func(i uint8) string { return RidgeSide(i).String() }, func(b []byte) (uint8, error) {
		var v RidgeSide
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return RidgeSide(i).MarshalText() })
	roundTrip(t, shapeNames, func(i uint8) string { return BoreShape(i).String() }, func(b []byte) (uint8, error) {
		var v BoreShape
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return BoreShape(i).MarshalText() })
	roundTrip(t, noteNames, func(i uint8) string { return BoreNoteKind(i).String() }, func(b []byte) (uint8, error) {
		var v BoreNoteKind
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return BoreNoteKind(i).MarshalText() })
	roundTrip(t, boreMeasureNames, func(i uint8) string { return BoreMeasure(i).String() }, func(b []byte) (uint8, error) {
		var v BoreMeasure
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return BoreMeasure(i).MarshalText() })
	roundTrip(t, centringNames, func(i uint8) string { return Centring(i).String() }, func(b []byte) (uint8, error) {
		var v Centring
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return Centring(i).MarshalText() })
	roundTrip(t, surfaceNames, func(i uint8) string { return BoreSurface(i).String() }, func(b []byte) (uint8, error) {
		var v BoreSurface
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return BoreSurface(i).MarshalText() })
	roundTrip(t, oversizeNames, func(i uint8) string { return OversizeOutcome(i).String() }, func(b []byte) (uint8, error) {
		var v OversizeOutcome
		err := v.UnmarshalText(b)
		return uint8(v), err
	}, func(i uint8) ([]byte, error) { return OversizeOutcome(i).MarshalText() })

	for k := range BoreNoteKind(len(noteNames)) {
		s := BoreSurvey{}
		require.Equal(t, k == NoNote, BoreNote{Kind: k}.Text(&s) == "", k.String())
	}
	s := BoreSurvey{Levels: []BoreLevel{{Name: "top"}}, Headings: []units.Angle{-90 * units.Degree}}
	require.Equal(t, "top, across the crank", s.Name(Station{0, 0}))
	require.Equal(t, "level 10, direction 10", s.Name(Station{9, 9}))
	require.Zero(t, s.At(Station{-1, 0}))
	require.Zero(t, s.At(Station{0, 0}), "the list is short")
	require.Equal(t, strings.Repeat("é", 32)+"…", clip(strings.Repeat("é", 100)))
	require.Equal(t, "x"+strings.Repeat("é", 31)+"…", clip("x"+strings.Repeat("é", 100)))
}

func roundTrip(t *testing.T, names []string, word func(uint8) string, read func([]byte) (uint8, error), write func(uint8) ([]byte, error)) {
	t.Helper()
	for i, n := range names {
		require.Equal(t, n, word(uint8(i)))
		text, err := write(uint8(i))
		require.NoError(t, err)
		back, err := read(text)
		require.NoError(t, err)
		require.Equal(t, uint8(i), back)
	}
	require.Equal(t, names[0], word(200))
	_, err := read([]byte(strings.Repeat("nonsense", 20)))
	require.ErrorIs(t, err, ErrInput)
	require.Less(t, len(err.Error()), 600)
}
