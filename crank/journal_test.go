package crank

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

var journalTwo = []units.Angle{0, 90 * units.Degree}

// The limits of three manuals, on readings on either side of them.
func TestJournalLimitsOfManuals(t *testing.T) {
	vectors.Load(t, "published/crank_journal_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := JournalSurvey{Planes: make([]JournalPlane, 2), Headings: journalTwo}
		for _, col := range []string{"front", "rear"} {
			for f := range strings.FieldsSeq(strings.ReplaceAll(c.Text(col), " in", "in")) {
				s.Readings = append(s.Readings, ReadJournal(units.MustParseLength(f)))
			}
		}
		l := JournalLimits{Taper: journalWorn(c.Text("taper_limit")), OutOfRound: journalWorn(c.Text("round_limit"))}
		var r JournalReport
		require.NoError(t, s.Inspect(&l, &r))
		require.Equal(t, journalAt(c.Text("taper")), r.Taper[JournalTaperAlong].Value)
		require.Equal(t, journalAt(c.Text("round")), r.OutOfRound.Value)
		require.Equal(t, c.Text("taper_standing"), r.Standing[JournalTaperMeasure].String())
		require.Equal(t, c.Text("round_standing"), r.Standing[JournalOutOfRoundMeasure].String())
	})
}

// A survey with a gauge that is off: the setting's error counts in sizes and not in
// differences. By hand: 59.972 and 59.983; each known to ±0.0045 mm, of which
// ±0.0015 is common, so a difference to ±0.006.
func TestJournalSurveyBrackets(t *testing.T) {
	s := journalTable(journalMicrometer, journalFour, `
		59.981 59.979 59.972 59.978
		59.983 59.981 59.976 59.980`)
	s.Finished = journalAt("59.990 ±0.001 mm")
	var r JournalReport
	require.NoError(t, s.Inspect(&JournalLimits{}, &r))
	require.Equal(t, 8, r.Taken)
	require.Equal(t, JournalExtreme{journalAt("[59.9675 mm, 59.9765 mm]"), journalMM("59.972"), JournalStation{0, 2}}, r.Least)
	require.Equal(t, JournalExtreme{journalAt("[59.9785 mm, 59.9875 mm]"), journalMM("59.983"), JournalStation{1, 0}}, r.Greatest)
	require.Equal(t, JournalSpread{journalAt("[0.003 mm, 0.015 mm]"), true, JournalStation{Plane: 0}}, r.OutOfRound)
	require.Equal(t, JournalSpread{journalAt("[0 mm, 0.01 mm]"), true, JournalStation{Heading: 2}}, r.Taper[JournalTaperAlong])
	require.Equal(t, JournalSpread{journalAt("[-0.01 mm, 0.002 mm]"), true, JournalStation{Heading: 2}}, r.Taper[JournalTaperEnds])
	require.Equal(t, JournalSpread{journalAt("[0.005 mm, 0.017 mm]"), true, JournalStation{0, 2}}, r.Taper[JournalTaperOverall])
	// Means 59.9775 and 59.98: 0.0025 apart, ±0.006.
	require.Equal(t, journalAt("[0 mm, 0.0085 mm]"), r.Taper[JournalTaperOfMeans].Value)
	require.Equal(t, journalAt("[59.97425 mm, 59.98325 mm]"), r.Mean)
	require.Equal(t, journalAt("[0.0125 mm, 0.0235 mm]"), r.Wear.Value)
	require.Equal(t, JournalStraight, r.Shape)
	require.Equal(t, tolerance.CantTell, r.Worst(&JournalLimits{}), "no limits")
}

func TestJournalShapes(t *testing.T) {
	exact := instrument.Instrument{}
	for _, c := range []struct {
		table string
		want  JournalShape
	}{
		{"50.00 50.00", JournalShapeNotTold},
		{"50.00 50.00\n50.00 50.00", JournalStraight},
		{"49.98 50.00\n50.00 50.00", JournalSmallerFront},
		{"50.00 50.00\n49.98 49.98", JournalSmallerRear},
		{"49.98 49.98\n50.00 50.00\n49.97 49.99", JournalBarrel},
		{"50.00 50.00\n49.98 49.98\n49.99 50.01", JournalHourglass},
		{"50.00 50.00\n49.98 49.98\n50.02 50.02\n50.00 50.00", JournalUneven},
		{"50.00 50.00\n49.99 49.99\n49.98 49.98\n49.97 49.97", JournalSmallerRear},
		{"50.00 50.00\n49.98 -\n50.00 50.00", JournalStraight},                        // a plane with a gap doesn't count
		{"50.00 50.00\n49.98 49.98\n- -\n50.00 50.00\n50.00 50.00", JournalHourglass}, // nor one never read
	} {
		s := journalTable(exact, journalTwo, c.table)
		var r JournalReport
		require.NoError(t, s.Inspect(&JournalLimits{}, &r))
		require.Equal(t, c.want, r.Shape, c.table)
	}
	// The same within what the micrometer can't tell.
	s := journalTable(instrument.Instrument{Error: journalMM("0.01")}, journalTwo, "49.98 49.98\n50.00 50.00\n49.97 49.99")
	var r JournalReport
	require.NoError(t, s.Inspect(&JournalLimits{}, &r))
	require.Equal(t, JournalStraight, r.Shape)
	s = journalTable(instrument.Instrument{Error: journalMM("0.008")}, journalTwo, "49.98 49.98\n50.00 50.00\n49.99 49.99")
	require.NoError(t, s.Inspect(&JournalLimits{}, &r))
	require.Equal(t, JournalShapeNotTold, r.Shape, "sure of one end alone")
}

// Barrel and hourglass from synthesised profiles: the word follows from the sign of
// the bow, whatever taper goes with it, as long as the bow is the greater.
func TestJournalShapeFollowsTheProfile(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	for range 500 {
		bow, slope := rng.Int64N(40_000_001)-20_000_000, rng.Int64N(10_000_001)-5_000_000
		s := JournalSurvey{Headings: journalTwo, Planes: make([]JournalPlane, 5)}
		for k := range int64(5) {
			x := 60*units.Millimetre + units.Length(slope*(k-2)+bow*(4-(k-2)*(k-2))/4)
			s.Readings = append(s.Readings, ReadJournal(x), ReadJournal(x))
		}
		var r JournalReport
		require.NoError(t, s.Inspect(&JournalLimits{}, &r))
		// The middle is above both ends by bow ∓ 2·slope.
		switch {
		case bow > 2*max(slope, -slope)+2:
			require.Equal(t, JournalBarrel, r.Shape)
		case bow < -2*max(slope, -slope)-2:
			require.Equal(t, JournalHourglass, r.Shape)
		}
		require.Equal(t, 0, r.Missing)
		lo, _ := journalEnds(r.Taper[JournalTaperAlong].Value)
		require.GreaterOrEqual(t, lo, units.Length(4*max(slope, -slope))-4)
	}
}

func TestJournalGapsAreNamed(t *testing.T) {
	s := journalTable(journalMicrometer, journalFour, `
		59.981 - 59.972 59.978
		-      - -      -
		59.983 - 59.976 -`)
	s.Planes[0].Name, s.Planes[2].Name = "front", "rear"
	l := JournalLimits{Wear: journalWorn("max 0.05 mm"), Size: journalWorn("min 59.95 mm")}
	var r JournalReport
	require.NoError(t, s.Inspect(&l, &r))
	require.Equal(t, 7, r.Missing)
	var texts []string
	for _, n := range r.Notes {
		texts = append(texts, n.Text(&s))
	}
	require.Equal(t, []string{
		"never read at 45°: what the journal is there is not known",
		"never read in plane 2: what the journal is there is not known",
		"not read: rear, 135°",
		"a limit on wear is given, and not the size last ground to",
	}, texts)
	require.Equal(t, tolerance.CantTell, r.Worst(&l))
	require.Equal(t, tolerance.Usable, r.Standing[JournalSizeMeasure])

	// One reading: nothing tells of taper and out-of-round.
	one := journalTable(journalMicrometer, journalTwo[:1], "59.981")
	require.NoError(t, one.Inspect(&l, &r))
	require.False(t, r.OutOfRound.Known || r.Taper[JournalTaperAlong].Known)
	require.Equal(t, JournalShapeNotTold, r.Shape)
	require.Equal(t, "read in one plane: its taper is not known", r.Notes[0].Text(&one))
	require.Equal(t, "read in one direction: its out-of-round is not known, nor the wear in any other", r.Notes[1].Text(&one))
	_, err := one.Finding(&l, &r, JournalTaperMeasure)
	require.ErrorIs(t, err, tolerance.ErrNoReading)
}

func TestJournalNotesOnWear(t *testing.T) {
	s := journalTable(instrument.Instrument{}, journalTwo, "59.70 59.72\n59.71 59.73")
	s.Finished = journalAt("60 mm")
	var r JournalReport
	require.NoError(t, s.Inspect(&JournalLimits{}, &r))
	require.Equal(t, "plane 1, 0°: more than wears off in service; was the journal ground undersize before? Wear counts from the size last ground to", r.Notes[0].Text(&s))
	s.Finished = journalAt("59.72 mm")
	require.NoError(t, s.Inspect(&JournalLimits{}, &r))
	require.Equal(t, "plane 2, 90°: larger than it was last ground to; check the micrometer's setting and the size that wear counts from", r.Notes[0].Text(&s))
	require.Empty(t, JournalNote{}.Text(&s))
}

// The standing of every measure, those beside the diameters too.
func TestJournalStandings(t *testing.T) {
	s := journalTable(instrument.Instrument{}, journalTwo, "59.97 59.98\n59.98 59.98")
	s.Kind = Crankpin
	s.Finished, s.Fillet, s.ThrustWidth, s.Stroke = journalAt("60 mm"), journalAt("2.5 ±0.1 mm"), journalAt("28.10 mm"), journalAt("86.00 ±0.02 mm")
	s.Index, _ = tolerance.PlusMinus(10*units.Arcminute, units.Arcminute)
	l := JournalLimits{
		Size: journalWorn("min 59.96 mm"), Mean: journalWorn("min 59.98 mm"), OutOfRound: journalWorn("max 0.005 mm"), Taper: journalWorn("max 0.02 mm"),
		Wear: journalWorn("max 0.04 mm"), Fillet: journalWorn("min 2.5 mm"), ThrustWidth: tolerance.Spec{New: tolerance.MustParseBand("28.00–28.05 mm")},
		Stroke: tolerance.Spec{New: tolerance.MustParseBand("86.00 ±0.05 mm")},
		Index:  tolerance.SpecOf[units.Angle]{Wear: tolerance.AtMost(15 * units.Arcminute)},
	}
	var r JournalReport
	require.NoError(t, s.Inspect(&l, &r))
	want := [journalMeasures]tolerance.Standing{
		tolerance.Usable, tolerance.PastWearLimit, tolerance.PastWearLimit, tolerance.Usable, tolerance.Usable,
		tolerance.CantTell, tolerance.OutsideNewBand, tolerance.AsNew, tolerance.Usable,
	}
	require.Equal(t, want, r.Standing)
	require.Equal(t, tolerance.PastWearLimit, r.Worst(&l))
	for _, m := range JournalMeasures() {
		if m == JournalIndexMeasure {
			f, err := s.IndexFinding(&l)
			require.NoError(t, err)
			require.Equal(t, want[m], f.Standing)
			continue
		}
		f, err := s.Finding(&l, &r, m)
		require.NoError(t, err)
		require.Equal(t, want[m], f.Standing, m)
		require.True(t, strings.HasPrefix(f.Measure, m.String()))
	}
	require.Zero(t, l.Spec(JournalIndexMeasure))
	s.Index = tolerance.Interval[units.Angle]{}
	_, err := s.IndexFinding(&l)
	require.ErrorIs(t, err, tolerance.ErrNoReading)
	require.NoError(t, s.Inspect(&l, &r))
	require.Equal(t, tolerance.CantTell, r.Standing[JournalIndexMeasure])
}

// What would settle an undecided measure: by hand from the readings.
func TestJournalFindingSettles(t *testing.T) {
	s := journalTable(journalMicrometer, journalTwo, "59.951 59.960\n59.955 59.958")
	s.Planes[0].Name = "front"
	s.Finished = journalAt("59.990 ±0.004 mm")
	l := JournalLimits{Size: journalWorn("min 59.95 mm"), OutOfRound: journalWorn("max 0.01 mm"), Wear: journalWorn("max 0.041 mm"), Taper: journalWorn("max 0.004 mm"), TaperRule: JournalTaperEnds}
	var r JournalReport
	require.NoError(t, s.Inspect(&l, &r))
	settle := func(m JournalMeasure) (where, text string) {
		f, err := s.Finding(&l, &r, m)
		require.NoError(t, err)
		require.Equal(t, tolerance.CantTell, f.Standing, m)
		return f.Where, f.Settle
	}
	where, text := settle(JournalSizeMeasure)
	require.Equal(t, "main 1, least at front, 0°", where)
	require.Contains(t, text, "it reads 0.001 mm from the limit, and is known to ±0.0045 mm: measure again with a micrometer good to less than ±0.001 mm, setting included")
	where, text = settle(JournalOutOfRoundMeasure)
	require.Equal(t, "main 1, front", where)
	require.Contains(t, text, "it reads 0.001 mm from the limit, and is known to ±0.006 mm: measure again with a micrometer good to less than ±0.0005 mm")
	_, text = settle(JournalWearMeasure)
	require.Contains(t, text, "of which ±0.004 mm is the size last ground to: look up what this shaft was ground to")
	s.Finished = journalAt("59.990 ±0.0005 mm")
	require.NoError(t, s.Inspect(&l, &r))
	_, text = settle(JournalWearMeasure)
	require.Contains(t, text, "it reads 0.002 mm from the limit, and is known to ±0.005 mm: measure again with a micrometer good to less than ±0.0015 mm")
	// On the limit itself.
	l.Size = journalWorn("min 59.951 mm")
	require.NoError(t, s.Inspect(&l, &r))
	_, text = settle(JournalSizeMeasure)
	require.Contains(t, text, "it reads on the limit itself")
	// A bracket with an end missing has no middle.
	require.Empty(t, s.settle(&tolerance.Finding{Unsettled: []units.Length{1}, Settle: "x"}, JournalSizeMeasure))
}

// Warm: a steel shaft at 30 °C measured with a micrometer of 20 °C is too large by
// 60 mm × 11.5e-6 × 10 K = 6.9 µm.
func TestJournalSurveyWarm(t *testing.T) {
	s := journalTable(instrument.Instrument{Setting: instrument.Setting{Standard: journalMM("50"), Reading: journalMM("50")}}, journalTwo, "60.0069 60.0069\n60.0169 60.0069")
	s.Shaft = instrument.Thermal{PerKelvin: 11.5e-6, Above: 10 * units.Kelvin}
	s.Finished = journalAt("60.01 mm")
	var r JournalReport
	require.NoError(t, s.Inspect(&JournalLimits{}, &r))
	lo, hi := journalEnds(r.Least.Size)
	require.InDelta(t, 60.0069/(1+1.15e-4), lo.Float(units.InMillimetres), 1e-9)
	require.InDelta(t, 60.0069/(1+1.15e-4), hi.Float(units.InMillimetres), 1e-9)
	lo, _ = journalEnds(r.OutOfRound.Value)
	require.InDelta(t, 0.01/(1+1.15e-4), lo.Float(units.InMillimetres), 1e-9)
	mean, _ := r.Mean.Middle()
	require.InDelta(t, 60.0094/(1+1.15e-4), mean.Float(units.InMillimetres), 1e-9)
}

func TestJournalSurveyRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*JournalSurvey)
		want   string
	}{
		"kind":         {func(s *JournalSurvey) { s.Kind = 9 }, "kind (unknown)"},
		"no planes":    {func(s *JournalSurvey) { s.Planes = nil }, "planes (none)"},
		"no direction": {func(s *JournalSurvey) { s.Headings = nil }, "directions (none)"},
		"directions":   {func(s *JournalSurvey) { s.Headings = make([]units.Angle, 361) }, "360 at most"},
		"stations":     {func(s *JournalSurvey) { s.Planes = make([]JournalPlane, 50_001) }, "100 000 at most"},
		"count":        {func(s *JournalSurvey) { s.Readings = s.Readings[:3] }, "main 1, readings 3 is not 4"},
		"same":         {func(s *JournalSurvey) { s.Headings = []units.Angle{10 * units.Degree, -170 * units.Degree} }, "half a turn on is the same diameter"},
		"angle":        {func(s *JournalSurvey) { s.Headings = []units.Angle{0, units.OutOfRange[units.Angle]()} }, "within the range of an angle"},
		"places":       {func(s *JournalSurvey) { s.Planes[0].Along = 1 }, "place of plane 1"},
		"order":        {func(s *JournalSurvey) { s.Planes[0].Along, s.Planes[1].Along = 5, 5 }, "further to the rear"},
		"finished":     {func(s *JournalSurvey) { s.Finished = journalAt("-1 mm") }, "main 1, size last ground to -1 mm"},
		"fillet":       {func(s *JournalSurvey) { s.Fillet = journalAt("[1 mm, ∞)") }, "fillet radius"},
		"stroke":       {func(s *JournalSurvey) { s.Stroke = journalAt("11000 mm") }, "stroke"},
		"index":        {func(s *JournalSurvey) { s.Index = tolerance.Exactly(181 * units.Degree) }, "within half a turn"},
		"none taken":   {func(s *JournalSurvey) { s.Readings = make([]JournalReading, 4) }, "(none taken)"},
		"inch":         {func(s *JournalSurvey) { s.Readings[1].Shown = journalMM("2.361") }, "plane 1, 90° 2.361 mm"},
		"another unit": {func(s *JournalSurvey) {
			s.Planes, s.Readings = s.Planes[:1], []JournalReading{ReadJournal(journalMM("59.98")), ReadJournal(journalMM("30"))}
		}, "in another unit"},
		"huge": {func(s *JournalSurvey) { s.Readings[3].Shown = 11 * units.Metre }, "within ±10 m"},
		"zero": {func(s *JournalSurvey) {
			s.Planes, s.Headings, s.Readings = s.Planes[:1], s.Headings[:1], []JournalReading{ReadJournal(0)}
		}, "which standard was the micrometer set on"},
		"gauge": {func(s *JournalSurvey) { s.Gauge.Error = 11 * units.Metre }, "gauge error"},
	} {
		s := journalTable(instrument.Instrument{}, []units.Angle{0, 90 * units.Degree}, "59.98 59.98\n59.98 59.98")
		c.change(&s)
		var r JournalReport
		err := s.Inspect(&JournalLimits{}, &r)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	s := journalTable(journalMicrometer, journalTwo, "59.9805 59.98\n59.98 59.98")
	var r JournalReport
	require.ErrorIs(t, s.Inspect(&JournalLimits{}, &r), instrument.ErrStep)
	s = journalTable(instrument.Instrument{Step: -1}, journalTwo, "59.98 59.98")
	require.ErrorIs(t, s.Inspect(&JournalLimits{}, &r), instrument.ErrNegative)
	warm := journalTable(instrument.Instrument{}, journalTwo, "59.98 59.98")
	warm.Shaft = instrument.Thermal{PerKelvin: 11.5, Above: units.Kelvin}
	require.ErrorIs(t, warm.Inspect(&JournalLimits{}, &r), instrument.ErrExpansion)

	bad := JournalLimits{TaperRule: 9}
	require.ErrorIs(t, s.Inspect(&bad, &r), ErrInput)
	_, err := InspectJournals(nil, nil, &bad)
	require.ErrorIs(t, err, ErrInput)
	bad = JournalLimits{Size: tolerance.Spec{New: tolerance.MustParseBand("1–3 mm"), Wear: tolerance.MustParseBand("min 2 mm")}}
	require.Error(t, s.Inspect(&bad, &r))
	dst, err := InspectJournals(make([]JournalReport, 2), []JournalSurvey{s}, &JournalLimits{})
	require.Error(t, err)
	require.Len(t, dst, 2, "what was there stays")
	require.Equal(t, JournalReading{}, s.At(JournalStation{9, 0}))
	require.Equal(t, JournalReading{}, (&JournalSurvey{Planes: s.Planes, Headings: s.Headings}).At(JournalStation{}))
	require.Equal(t, journalMM("59.98"), s.At(JournalStation{0, 1}).Shown)
	require.Equal(t, "plane 9, direction 8", s.Name(JournalStation{8, 7}))
}

// A reading that stands apart, in a way that has a name, is noted.
func TestJournalSuspectReading(t *testing.T) {
	s := journalTable(instrument.Instrument{}, journalTwo, "59.982 59.980\n59.481 59.983\n59.981 59.980")
	var r JournalReport
	l := JournalLimits{Size: journalWorn("min 59 mm")}
	require.NoError(t, s.Inspect(&l, &r))
	require.Equal(t, JournalReadingSuspect, r.Notes[0].Kind)
	require.Equal(t, JournalStation{1, 0}, r.Notes[0].At)
	require.Contains(t, r.Notes[0].Text(&s), "59.481 mm may be 59.981 mm")
	require.Equal(t, tolerance.CantTell, r.Worst(&l))
}

// The same report whether the memory is new or used, and appended after what is
// there.
func TestInspectJournalsAppends(t *testing.T) {
	shaft, l := journalShaft()
	fresh, err := InspectJournals(nil, shaft, &l)
	require.NoError(t, err)
	shaft[3].Readings[2].Taken = false
	changed, err := InspectJournals(make([]JournalReport, 1, 12), shaft, &l)
	require.NoError(t, err)
	require.Len(t, changed, 10)
	require.NotEmpty(t, changed[4].Notes)
	shaft[3].Readings[2].Taken = true
	again, err := InspectJournals(changed[:1], shaft, &l)
	require.NoError(t, err)
	for i := range again[1:] {
		if len(again[i+1].Notes) == 0 {
			again[i+1].Notes = nil
		}
		if len(fresh[i].Notes) == 0 {
			fresh[i].Notes = nil
		}
	}
	require.Empty(t, cmp.Diff(fresh, again[1:], cmp.AllowUnexported(tolerance.Bracket{})))
}

// Heights and index: each inverse undoes its formula, and a pin 10 minutes late
// stands lower by the throw times its sine.
func TestStrokeAndIndex(t *testing.T) {
	require.Equal(t, journalMM("86"), StrokeByHeights(journalMM("193.5"), journalMM("107.5")))
	require.Equal(t, journalMM("193.5"), HeightForStroke(journalMM("86"), journalMM("107.5")))
	rng := rand.New(rand.NewPCG(6, 1))
	for range 1000 {
		index, throw := (rng.Float64()-0.5)*math.Pi*0.99, 1+rng.Float64()*100
		h := IndexHeight(tolerance.Float(index), tolerance.Float(throw))
		require.InDelta(t, throw*math.Sin(index), float64(h), 1e-12)
		require.InDelta(t, index, float64(IndexError(0, h, tolerance.Float(throw))), 1e-9)
		require.InDelta(t, 2*index, float64(IndexError(-h, h, tolerance.Float(throw))), 2e-9)
	}
	require.True(t, math.IsNaN(float64(IndexError(tolerance.Float(0), 44, 43))))
}

func FuzzJournalSurvey(f *testing.F) {
	f.Add(int64(60_000_000_000), int64(59_990_000_000), int64(0), int64(1_000_000), uint8(3), uint8(2), uint64(5))
	f.Add(int64(-1), int64(1), int64(1), int64(0), uint8(1), uint8(1), uint64(0))
	f.Fuzz(func(t *testing.T, a, b, e, step int64, planes, headings uint8, taken uint64) {
		s := JournalSurvey{Gauge: instrument.Instrument{Error: units.Length(e), Step: units.Length(step)}}
		for i := range headings % 8 {
			s.Headings = append(s.Headings, units.Angle(i)*20*units.Degree)
		}
		s.Planes = make([]JournalPlane, planes%8)
		for i := range len(s.Planes) * len(s.Headings) {
			x := units.Length(a)
			if i%3 == 1 {
				x = units.Length(b)
			}
			s.Readings = append(s.Readings, JournalReading{x, taken>>(i%64)&1 == 0})
		}
		var r JournalReport
		l := JournalLimits{Size: journalWorn("min 1 mm")}
		if s.Inspect(&l, &r) != nil {
			return
		}
		lo, _ := journalEnds(r.Least.Size)
		_, hi := journalEnds(r.Greatest.Size)
		require.LessOrEqual(t, lo, hi)
		require.Equal(t, len(s.Readings), r.Taken+r.Missing)
		for _, n := range r.Notes {
			require.NotEmpty(t, n.Text(&s))
		}
		require.True(t, r.Mean.InRange())
	})
}
