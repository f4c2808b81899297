package cylinder

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

func TestBoreSurvey_refuses(t *testing.T) {
	good := surveyOf(dial, "0.042 0.030\n0.018 0.015")
	for name, c := range map[string]struct {
		change func(*BoreSurvey)
		want   string
	}{
		"no level":        {func(s *BoreSurvey) { s.Levels = nil }, "levels (none) is not one level or more"},
		"no direction":    {func(s *BoreSurvey) { s.Headings = nil }, "directions (none)"},
		"lists":           {func(s *BoreSurvey) { s.Readings = s.Readings[:3] }, "cylinder 1, readings 3 is not 4"},
		"none taken":      {func(s *BoreSurvey) { s.Readings = make([]BoreReading, 4) }, "(none taken)"},
		"same direction":  {func(s *BoreSurvey) { s.Headings[1] = 180 * units.Degree }, "half a turn on is the same diameter"},
		"no angle":        {func(s *BoreSurvey) { s.Headings[1] = units.OutOfRange[units.Angle]() }, "within the range of an angle"},
		"depths":          {func(s *BoreSurvey) { s.Levels[0].Depth, s.Levels[1].Depth = 2, 1 }, "depth of level 2 0.000000001 mm is not greater"},
		"half the depths": {func(s *BoreSurvey) { s.Levels[0].Depth = 2 }, "0 at all levels"},
		"between steps":   {func(s *BoreSurvey) { s.Readings[3].Shown++ }, "between two steps"},
		"first off step":  {func(s *BoreSurvey) { s.Readings[0].Shown++ }, "between two steps"},
		"out of range":    {func(s *BoreSurvey) { s.Readings[3].Shown = units.OutOfRange[units.Length]() }, "within ±10 m"},
		"finished":        {func(s *BoreSurvey) { s.Finished = boreAt("-1 mm") }, "size last finished to -1 mm"},
		"negative bore":   {func(s *BoreSurvey) { s.Gauge.Setting.Standard, s.Gauge.Setting.Error = 0, 0 }, ""},
		"wild gauge":      {func(s *BoreSurvey) { s.Gauge.Error = 11 * units.Metre }, "leaves something measured"},
		"unworn":          {func(s *BoreSurvey) { s.Unworn = ReadBore(1) }, "between two steps"},
		"ridge unsaid":    {func(s *BoreSurvey) { s.Ridge.Height = boreAt("0.1 mm") }, "per side"},
		"ridge negative":  {func(s *BoreSurvey) { s.Ridge = Ridge{boreAt("-0.1 mm"), RidgePerSide} }, "ridge -0.1 mm"},
		"many":            {func(s *BoreSurvey) { s.Levels = make([]BoreLevel, 60_000) }, "100 000"},
		"cold":            {func(s *BoreSurvey) { s.Block.Above = -400 * units.Kelvin }, "temperature"},
	} {
		t.Run(name, func(t *testing.T) {
			s := good
			s.Levels, s.Headings, s.Readings = slices.Clone(s.Levels), slices.Clone(s.Headings), slices.Clone(s.Readings)
			c.change(&s)
			var r BoreReport
			err := s.Inspect(&BoreLimits{}, &r)
			if name == "negative bore" {
				require.NoError(t, err, "0.042 mm is a bore, if a small one")
				return
			}
			require.ErrorContains(t, err, c.want)
		})
	}
	zero := surveyOf(instrument.Instrument{}, "0 0.01\n0 0.01")
	require.ErrorContains(t, zero.Inspect(&BoreLimits{}, &BoreReport{}), "which ring was the gauge set on?")

	for name, c := range map[string]struct {
		l    BoreLimits
		want string
	}{
		"per length": {BoreLimits{Taper: boreWorn("max 0.1 mm"), TaperRule: TaperPerLength}, "taper per length (not given)"},
		"negative":   {BoreLimits{TaperPer: -1}, "taper per length"},
		"rule":       {BoreLimits{TaperRule: 9}, "one of the five"},
		"ridge":      {BoreLimits{Ridge: boreWorn("max 0.1 mm")}, "ridge limit"},
		"spec":       {BoreLimits{Wear: tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}}, "reaches past the wear limit"},
	} {
		require.ErrorContains(t, good.Inspect(&c.l, &BoreReport{}), c.want, name)
		_, err := InspectBores(nil, []BoreSurvey{good}, &c.l)
		require.ErrorContains(t, err, c.want, name)
	}
	_, err := InspectBores(nil, []BoreSurvey{good, {}}, &BoreLimits{})
	require.ErrorIs(t, err, ErrInput)
}

// A reading in another unit, or a decimal place away, is named as such.
func TestBoreSurvey_wrongUnit(t *testing.T) {
	for name, c := range map[string]struct{ table, want string }{
		"inch":    {"86.04 86.03\n86.02 3.387\n86.01 86.01", "level 2, across the crank 3.387 mm is not like its neighbours"},
		"decimal": {"86.04 86.03\n86.02 8.602\n86.01 86.01", "decimal place"},
		"tenfold": {"86.04 86.03\n86.02 860.2\n86.01 86.01", "decimal place"},
		"radius":  {"86.04 86.03\n86.02 43.01\n86.01 86.01", "a radius for a diameter"},
		"two":     {"86.04\n3.387", "one of them is in another unit"},
		"half":    {"86.04 86.03\n3.387 3.387", "one of them is in another unit"},
	} {
		s := surveyOf(instrument.Instrument{}, c.table)
		err := s.Inspect(&BoreLimits{}, &BoreReport{})
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	ring := surveyOf(instrument.Instrument{}, "3.387\n3.386")
	ring.Finished = boreAt("86 mm")
	err := ring.Inspect(&BoreLimits{}, &BoreReport{})
	require.ErrorIs(t, err, ErrInput)
	require.ErrorContains(t, err, "which ring was the gauge set on?")
	// One turn of a micrometer, and a deviation with its point moved, may be
	// honest readings: they are noted, and the bore isn't passed.
	s := surveyOf(instrument.Instrument{}, "86.04 86.03\n86.02 86.52\n86.01 86.01")
	l := BoreLimits{Size: boreWorn("max 86.60 mm")}
	r := inspect(t, s, l)
	require.Equal(t, SuspectReading, r.Notes[0].Kind)
	require.Contains(t, r.Notes[0].Text(&s), "level 2, across the crank: 86.52 mm may be 86.02 mm")
	require.Equal(t, tolerance.CantTell, r.Worst(&l))
	s = surveyOf(dial, "0.030 0.031\n0.030 0.300\n0.031 0.030")
	r = inspect(t, s, l)
	require.Len(t, r.Notes, 1)
	require.Contains(t, r.Notes[0].Text(&s), "a deviation of 0.3 mm may be 0.03 mm")
}
