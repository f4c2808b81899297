package crank

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

func journalMM(s string) units.Length { return units.MustParseLength(s + " mm") }

func journalAt(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func journalWorn(s string) tolerance.Spec { return tolerance.Spec{Wear: tolerance.MustParseBand(s)} }

// journalMicrometer is good to ±0.0045 mm, of which ±0.0015 is common.
var journalMicrometer = instrument.Instrument{
	Name: "micrometer", Step: journalMM("0.001"), Error: journalMM("0.0025"),
	Setting: instrument.Setting{Standard: journalMM("50"), Reading: journalMM("50"), Error: journalMM("0.001")},
}

// journalTable is a survey from a table of sizes in millimetres, a row for each
// plane; a dash was not read.
func journalTable(in instrument.Instrument, headings []units.Angle, table string) JournalSurvey {
	s := JournalSurvey{Where: "main 1", Headings: headings, Gauge: in}
	for line := range strings.Lines(strings.TrimSpace(table)) {
		s.Planes = append(s.Planes, JournalPlane{})
		for f := range strings.FieldsSeq(line) {
			r := JournalReading{}
			if f != "-" {
				r = ReadJournal(journalMM(f))
			}
			s.Readings = append(s.Readings, r)
		}
	}
	return s
}

var journalFour = []units.Angle{0, 45 * units.Degree, 90 * units.Degree, 135 * units.Degree}

// journalShaft is 5 mains and 4 crankpins × 2 planes × 4 directions.
func journalShaft() ([]JournalSurvey, JournalLimits) {
	var shaft []JournalSurvey
	for i := range 9 {
		s := journalTable(journalMicrometer, journalFour, "59.981 59.979 59.972 59.978\n59.983 59.981 59.976 59.980")
		s.Finished = journalAt("59.990 mm")
		if i >= 5 {
			s.Kind = Crankpin
		}
		shaft = append(shaft, s)
	}
	return shaft, JournalLimits{
		Size:       journalWorn("min 59.950 mm"),
		OutOfRound: journalWorn("max 0.03 mm"),
		Taper:      journalWorn("max 0.03 mm"),
		Wear:       journalWorn("max 0.05 mm"),
	}
}

func TestInspectJournalsAllocatesNothing(t *testing.T) {
	shaft, l := journalShaft()
	dst, err := InspectJournals(nil, shaft, &l)
	require.NoError(t, err)
	require.Len(t, dst, 9)
	for i := range dst {
		require.Equal(t, tolerance.Usable, dst[i].Worst(&l))
	}
	require.Zero(t, testing.AllocsPerRun(100, func() {
		if dst, err = InspectJournals(dst[:0], shaft, &l); err != nil {
			t.Fatal(err)
		}
	}))
}

var (
	journalReports []JournalReport
	journalFloats  [3]float64
)

func BenchmarkInspectJournals(b *testing.B) {
	shaft, l := journalShaft()
	b.Run("lib=tenthou/op=shaft9x2x4", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var err error
			if journalReports, err = InspectJournals(journalReports[:0], shaft, &l); err != nil {
				b.Fatal(err)
			}
		}
	})
	// The bare arithmetic on the same readings, without brackets, checks and
	// standings.
	b.Run("lib=float64/op=shaft9x2x4", func(b *testing.B) {
		var readings [9][2][4]float64
		for i := range readings {
			for p := range 2 {
				for h := range 4 {
					readings[i][p][h] = shaft[i].Readings[p*4+h].Shown.Float(units.InMillimetres)
				}
			}
		}
		for b.Loop() {
			for i := range readings {
				lo, hi := readings[i][0][0], readings[i][0][0]
				round, taper := 0.0, 0.0
				for p := range 2 {
					l, h := readings[i][p][0], readings[i][p][0]
					for _, x := range readings[i][p] {
						l, h = min(l, x), max(h, x)
					}
					round = max(round, h-l)
					lo, hi = min(lo, l), max(hi, h)
				}
				for h := range 4 {
					taper = max(taper, readings[i][0][h]-readings[i][1][h], readings[i][1][h]-readings[i][0][h])
				}
				journalFloats = [3]float64{hi - lo, round, taper}
			}
		}
	})
}
