package cylinder

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/tolerance/wearrate"
	"github.com/tenthou/tenthou/units"
)

func boreLen(s string) units.Length { return units.MustParseLength(s) }

func boreAt(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func boreWorn(s string) tolerance.Spec { return tolerance.Spec{Wear: tolerance.MustParseBand(s)} }

// surveyOf reads a table of readings in millimetres, a level a line; a dash is
// one that was not taken.
func surveyOf(gauge instrument.Instrument, table string) BoreSurvey {
	s := BoreSurvey{Where: "cylinder 1", Gauge: gauge, TorquePlate: RecordedYes, CapsTorqued: RecordedYes}
	for line := range strings.Lines(strings.TrimSpace(table)) {
		cells := strings.Fields(line)
		s.Levels = append(s.Levels, BoreLevel{})
		if len(s.Headings) == 0 {
			for j := range cells {
				s.Headings = append(s.Headings, units.Angle(j)*180*units.Degree/units.Angle(len(cells)))
			}
		}
		for _, c := range cells {
			r := BoreReading{}
			if c != "-" {
				r = ReadBore(boreLen(c + " mm"))
			}
			s.Readings = append(s.Readings, r)
		}
	}
	return s
}

// dial is a dial bore gauge set on a ring of 86 mm.
var dial = instrument.Instrument{Name: "bore gauge", Step: units.Micrometre, Error: units.Micrometre,
	Setting: instrument.Setting{Standard: 86 * units.Millimetre, Error: 2 * units.Micrometre}}

func inspect(t *testing.T, s BoreSurvey, l BoreLimits) BoreReport {
	t.Helper()
	var r BoreReport
	require.NoError(t, s.Inspect(&l, &r))
	return r
}

// A US Army manual (published values, part B, 1.2, source S2): the ladder, and
// out-of-round and mean of stations A to E judged apart; V33 and V34.
func TestBoreSurvey_published(t *testing.T) {
	vectors.Load(t, "published/cylinder_bore_manual.txt").Each(t, func(t *testing.T, c vectors.Case) {
		step := boreLen(c.Text("step"))
		along, across := boreLen(c.Text("along")), boreLen(c.Text("across"))
		s := BoreSurvey{Levels: []BoreLevel{{}}, Headings: []units.Angle{AlongCrank, AcrossCrank}, Readings: []BoreReading{ReadBore(along), ReadBore(across)}}
		l := BoreLimits{
			Mean:       tolerance.Spec{New: tolerance.MustBetween(boreLen("5.7510 in")+step, boreLen("5.7530 in")+step), Wear: tolerance.AtMost(boreLen("5.7600 in") + step)},
			OutOfRound: tolerance.Spec{New: tolerance.AtMost(boreLen("0.0020 in")), Wear: tolerance.AtMost(boreLen("0.0030 in"))},
		}
		r := inspect(t, s, l)
		require.Equal(t, boreAt(c.Text("out_of_round")), r.OutOfRound.Value)
		require.Equal(t, boreAt(c.Text("mean")), r.Mean)
		require.Equal(t, c.Text("round_standing"), r.Standing[MeasureOutOfRound].String())
		require.Equal(t, c.Text("mean_standing"), r.Standing[MeasureMean].String())
	})
}

// V46 and the rates beside it (source S1): 0.001 of the bore for wear, 0.0005
// of the travel for taper.
func TestBoreSurvey_wearRates(t *testing.T) {
	bore := boreLen("4.000 in")
	s := BoreSurvey{
		Levels:   []BoreLevel{{"top", boreLen("0.5 in")}, {"bottom", boreLen("5.0 in")}},
		Headings: []units.Angle{AcrossCrank}, Finished: tolerance.Exactly(bore),
		Readings: []BoreReading{ReadBore(boreLen("4.0040 in")), ReadBore(boreLen("4.00175 in"))},
	}
	l := BoreLimits{Wear: boreWorn("max 0.0040 in"), Taper: boreWorn("max 0.0005 in"), TaperRule: TaperPerLength, TaperPer: units.Inch}
	r := inspect(t, s, l)
	require.Equal(t, tolerance.Usable, r.Standing[MeasureWear])
	require.Equal(t, boreAt("0.00225 in"), r.Taper[TaperAlong].Value, "the limit over a travel of 4.5 in, as the table's rate gives it")
	require.Equal(t, boreAt("0.0005 in"), r.Taper[TaperPerLength].Value)
	require.Equal(t, tolerance.Usable, r.Standing[MeasureTaper])
	s.Readings[0].Shown += units.Microinch
	r = inspect(t, s, l)
	require.Equal(t, tolerance.PastWearLimit, r.Standing[MeasureWear])
	require.Equal(t, tolerance.PastWearLimit, r.Standing[MeasureTaper])

	// The profile of package wearrate gives the same limit.
	for _, name := range wearrate.Names() {
		p, err := wearrate.Published(name)
		require.NoError(t, err)
		for _, rule := range p.Rules {
			if rule.Item == "cylinder bore wear" {
				spec, err := rule.Spec(bore, tolerance.Band{})
				require.NoError(t, err)
				require.Equal(t, l.Wear.Wear, spec.Wear)
			}
		}
	}
}

// The gauge's setting counts once in a size and not at all in a difference.
// Numbers by hand: ring ±2, step 1, error ±1 µm, so ±2.5 common, ±1.5 own.
func TestBoreSurvey_settingError(t *testing.T) {
	s := surveyOf(dial, `
		0.042 0.030
		0.030 0.024
		0.018 0.015`)
	s.Finished = boreAt("86.010 mm")
	r := inspect(t, s, BoreLimits{})
	require.Equal(t, boreAt("[86.038 mm, 86.046 mm]"), r.Greatest.Size)
	require.Equal(t, Station{0, 0}, r.Greatest.At)
	require.Equal(t, boreAt("[86.011 mm, 86.019 mm]"), r.Least.Size)
	require.Equal(t, Station{2, 1}, r.Least.At)
	require.Equal(t, boreAt("[86.0225 mm, 86.0305 mm]"), r.Mean, "159/6 = 26.5 µm")
	require.Equal(t, boreAt("[0.009 mm, 0.015 mm]"), r.OutOfRound.Value)
	require.Equal(t, 0, r.OutOfRound.At.Level)
	require.Equal(t, boreAt("[0.021 mm, 0.027 mm]"), r.Taper[TaperAlong].Value)
	require.Equal(t, boreAt("[0.021 mm, 0.027 mm]"), r.Taper[TaperTopToBottom].Value)
	require.Equal(t, boreAt("[0.0165 mm, 0.0225 mm]"), r.Taper[TaperOfMeans].Value, "36 less 16.5 µm")
	require.Equal(t, boreAt("[0.024 mm, 0.03 mm]"), r.Taper[TaperOverall].Value)
	require.False(t, r.Taper[TaperPerLength].Known, "no depths")
	require.Equal(t, boreAt("[-0.0225 mm, -0.0165 mm]"), r.Choke.Value)
	require.Equal(t, boreAt("[0.028 mm, 0.036 mm]"), r.Wear.Value)
	require.Equal(t, ShapeWiderTop, r.Shape)
	require.Empty(t, r.Notes)

	// From a reading below the ring travel the ring drops out of the wear too.
	s.Unworn = ReadBore(boreLen("0.010 mm"))
	r = inspect(t, s, BoreLimits{})
	require.Equal(t, boreAt("[0.029 mm, 0.035 mm]"), r.Wear.Value)
}

// A bore at +0.50 worn by 0.06 is not worn by 0.56.
func TestBoreSurvey_wearFromLastFinish(t *testing.T) {
	s := surveyOf(instrument.Instrument{}, `
		86.56 86.54
		86.51 86.51`)
	s.Finished = boreAt("86.50 mm")
	l := BoreLimits{Wear: boreWorn("max 0.10 mm")}
	r := inspect(t, s, l)
	require.Equal(t, boreAt("0.06 mm"), r.Wear.Value)
	require.Equal(t, tolerance.Usable, r.Standing[MeasureWear])
	s.Finished = boreAt("86.00 mm")
	r = inspect(t, s, l)
	require.Equal(t, tolerance.PastWearLimit, r.Standing[MeasureWear])
	require.Equal(t, FinishedOversize, r.Notes[0].Kind)
	require.Contains(t, r.Notes[0].Text(&s), "level 1, along the crank: as much as an oversize step")
	s.Finished = tolerance.Bracket{}
	r = inspect(t, s, l)
	require.Equal(t, tolerance.CantTell, r.Standing[MeasureWear])
	require.Equal(t, WearUnknown, r.Notes[0].Kind)
}

// Choke that the limits ask for is not negative wear. The rule is S2's: reject
// if the head end is the larger.
func TestBoreSurvey_choke(t *testing.T) {
	s := surveyOf(instrument.Instrument{}, `
		85.96 85.96
		86.00 86.00
		86.02 86.02`)
	s.Finished = boreAt("86.00 mm")
	r := inspect(t, s, BoreLimits{})
	require.Len(t, r.Notes, 1)
	require.Equal(t, SmallerThanFinished, r.Notes[0].Kind)
	l := BoreLimits{Choke: tolerance.Spec{New: tolerance.MustParseBand("0.03–0.08 mm"), Wear: tolerance.MustParseBand("min 0 mm")}}
	r = inspect(t, s, l)
	require.Empty(t, r.Notes)
	require.Equal(t, tolerance.AsNew, r.Standing[MeasureChoke])
	s.Readings[0].Shown, s.Readings[1].Shown = boreLen("86.03 mm"), boreLen("86.03 mm")
	r = inspect(t, s, l)
	require.Equal(t, boreAt("-0.01 mm"), r.Choke.Value)
	require.Equal(t, tolerance.PastWearLimit, r.Standing[MeasureChoke])
}

func TestBoreSurvey_missing(t *testing.T) {
	l := BoreLimits{OutOfRound: boreWorn("max 0.05 mm"), Taper: boreWorn("max 0.05 mm")}
	s := surveyOf(dial, `
		0.042 0.030 -
		-     0.024 -
		-     -     -
		0.018 0.015 -`)
	r := inspect(t, s, l)
	require.Equal(t, 5, r.Taken)
	require.Equal(t, 7, r.Missing)
	var kinds []BoreNoteKind
	for _, n := range r.Notes {
		kinds = append(kinds, n.Kind)
	}
	require.Equal(t, []BoreNoteKind{DirectionNeverRead, LevelNeverRead, ReadingMissing}, kinds)
	require.Equal(t, "never read 120° to the crank: what the bore is there is not known", r.Notes[0].Text(&s))
	require.Equal(t, "never read at level 3: what the bore is there is not known", r.Notes[1].Text(&s))
	require.Equal(t, "not read: level 2, along the crank", r.Notes[2].Text(&s))
	require.Equal(t, tolerance.Usable, r.Standing[MeasureTaper])
	require.Equal(t, tolerance.CantTell, r.Worst(&l), "a direction that was never read is not a pass")
	// A level that misses a direction has no mean to compare.
	require.Equal(t, boreAt("[0.0165 mm, 0.0225 mm]"), r.Taper[TaperOfMeans].Value)

	one := surveyOf(dial, `0.042 0.030`)
	r = inspect(t, one, l)
	require.Equal(t, OneLevel, r.Notes[0].Kind)
	require.Equal(t, tolerance.CantTell, r.Standing[MeasureTaper])
	require.Equal(t, tolerance.Usable, r.Standing[MeasureOutOfRound])
	require.Equal(t, tolerance.CantTell, r.Worst(&l))
	one = surveyOf(dial, "0.042\n0.030")
	r = inspect(t, one, l)
	require.Equal(t, OneDirection, r.Notes[0].Kind)
	require.Equal(t, tolerance.CantTell, r.Standing[MeasureOutOfRound])
	require.Equal(t, tolerance.Usable, r.Standing[MeasureTaper])
	require.False(t, r.OutOfRound.Known)
}

func TestBoreSurvey_states(t *testing.T) {
	s := surveyOf(dial, "0.01 0.01\n0.01 0.01")
	l := BoreLimits{TorquePlate: RecordedYes, CapsTorqued: RecordedYes}
	require.Empty(t, inspect(t, s, l).Notes)
	s.TorquePlate, s.CapsTorqued = NotRecorded, RecordedNo
	notes := inspect(t, s, l).Notes
	require.Equal(t, TorquePlateNotStated, notes[0].Kind)
	require.Equal(t, CapsDiffer, notes[1].Kind)
	require.Contains(t, notes[1].Text(&s), "caps torqued: no")
	s.TorquePlate, s.CapsTorqued = RecordedNo, NotRecorded
	notes = inspect(t, s, l).Notes
	require.Equal(t, TorquePlateDiffers, notes[0].Kind)
	require.Equal(t, CapsNotStated, notes[1].Kind)
}

// Shapes by hand, in micrometres; the gauge's own error is ±1.5 µm.
func TestBoreShape(t *testing.T) {
	for _, c := range []struct {
		levels string
		want   BoreShape
	}{
		{"10", ShapeNotTold},
		{"10 10", ShapeStraight},
		{"13 10", ShapeStraight}, // three are what two readings may be off by together
		{"14 10", ShapeWiderTop}, //
		{"10 14", ShapeWiderBottom},
		{"40 30 20 10", ShapeWiderTop},
		{"10 20 30 40", ShapeWiderBottom},
		{"10 20 10", ShapeBarrel},
		{"10 30 20 12", ShapeBarrel},
		{"20 10 20", ShapeWaisted},
		{"30 20 10 20 30", ShapeWaisted},
		{"30 10 10 11 10", ShapeBellTop},
		{"10 11 10 10 30", ShapeBellBottom},
		{"30 10 11 10 30", ShapeBellBoth},
		{"10 11 12 11 10", ShapeStraight},
		{"10 14 12", ShapeNotTold}, // wider than one end for sure, and not than the other
	} {
		table := strings.ReplaceAll(c.levels, " ", "\n")
		var lines []string
		for v := range strings.SplitSeq(table, "\n") {
			lines = append(lines, "0.0"+v+" 0.0"+v)
		}
		s := surveyOf(dial, strings.Join(lines, "\n"))
		require.Equal(t, c.want, inspect(t, s, BoreLimits{}).Shape, c.levels)
	}
}

// Turning, shifting and reversing a survey changes what it should and nothing
// else.
func TestBoreSurvey_properties(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 1))
	for range 400 {
		levels, n := 2+rng.IntN(5), 1+rng.IntN(4)
		s := BoreSurvey{Gauge: dial}
		for i := range levels {
			s.Levels = append(s.Levels, BoreLevel{Depth: units.Length(i+1) * 20 * units.Millimetre})
		}
		for j := range n {
			s.Headings = append(s.Headings, units.Angle(j)*30*units.Degree)
		}
		for range levels * n {
			s.Readings = append(s.Readings, BoreReading{units.Length(rng.Int64N(40)) * units.Micrometre, rng.IntN(8) > 0})
		}
		if !slices.ContainsFunc(s.Readings, func(r BoreReading) bool { return r.Taken }) {
			continue
		}
		l := BoreLimits{TaperPer: 100 * units.Millimetre}
		r := inspect(t, s, l)

		turned := s
		turned.Headings = nil
		for _, a := range s.Headings {
			turned.Headings = append(turned.Headings, a+17*units.Degree)
		}
		require.Equal(t, r, inspect(t, turned, l))

		shift := units.Length(rng.Int64N(9)-4) * units.Micrometre
		shifted := s
		shifted.Readings = slices.Clone(s.Readings)
		for i := range shifted.Readings {
			shifted.Readings[i].Shown += shift
		}
		got := inspect(t, shifted, l)
		by := tolerance.Exactly(shift)
		require.Equal(t, r.Greatest.Size.Add(by), got.Greatest.Size)
		require.Equal(t, r.Least.Size.Add(by), got.Least.Size)
		require.Equal(t, r.Mean.Add(by), got.Mean)
		got.Greatest, got.Least, got.Mean = r.Greatest, r.Least, r.Mean
		require.Equal(t, r, got)
		// The same through the setting.
		set := s
		set.Gauge.Setting.Standard += shift
		require.Equal(t, r.Mean.Add(by), inspect(t, set, l).Mean)

		back := s
		back.Readings = nil
		for i := range levels {
			back.Readings = append(back.Readings, s.Readings[(levels-1-i)*n:(levels-i)*n]...)
		}
		got = inspect(t, back, l)
		require.Equal(t, r.Greatest.Size, got.Greatest.Size)
		require.Equal(t, r.OutOfRound.Value, got.OutOfRound.Value)
		for _, rule := range []TaperRule{TaperAlong, TaperOfMeans, TaperOverall} {
			require.Equal(t, r.Taper[rule].Value, got.Taper[rule].Value, rule.String())
		}
		zero := tolerance.Exactly(units.Length(0))
		if r.Choke.Known {
			require.Equal(t, zero.Sub(r.Choke.Value), got.Choke.Value)
		}
		if d := r.Taper[TaperTopToBottom]; d.Known && d.Value.Abs() == got.Taper[TaperTopToBottom].Value.Abs() && d.At == got.Taper[TaperTopToBottom].At {
			require.Equal(t, zero.Sub(d.Value), got.Taper[TaperTopToBottom].Value)
		}
		mirror := map[BoreShape]BoreShape{ShapeWiderTop: ShapeWiderBottom, ShapeWiderBottom: ShapeWiderTop, ShapeBellTop: ShapeBellBottom, ShapeBellBottom: ShapeBellTop}
		want, ok := mirror[r.Shape]
		if !ok {
			want = r.Shape
		}
		require.Equal(t, want, got.Shape)

		// Every taper by its own rule agrees with the readings taken apart.
		require.Equal(t, r.Taken+r.Missing, len(s.Readings))
		if r.Taper[TaperAlong].Known && r.Taper[TaperOverall].Known {
			a, _ := r.Taper[TaperAlong].Value.Upper()
			o, _ := r.Taper[TaperOverall].Value.Upper()
			require.LessOrEqual(t, a, o)
		}
	}
}

// The gauge here and package instrument agree on every size and difference, at
// 20 °C and warm.
func TestBoreSurvey_agreesWithInstrument(t *testing.T) {
	steel := instrument.At(units.MustParseTemperature("24 °C"), units.Kelvin/2, 11.5e-6, 1e-6)
	alloy := instrument.At(units.MustParseTemperature("31 °C"), units.Kelvin/2, 21.5e-6, 1e-6)
	warm := dial
	warm.Thermal, warm.Setting.Thermal = steel, steel
	for _, c := range []struct {
		gauge instrument.Instrument
		block instrument.Thermal
	}{{dial, instrument.Thermal{}}, {warm, alloy}} {
		s := surveyOf(c.gauge, "0.042 0.030\n0.018 0.015")
		s.Block = c.block
		s.Unworn = ReadBore(boreLen("0.010 mm"))
		r := inspect(t, s, BoreLimits{})
		set, err := c.gauge.Set(c.block, s.Readings[0].Shown, s.Readings[1].Shown, s.Readings[2].Shown, s.Readings[3].Shown, s.Unworn.Shown)
		require.NoError(t, err)
		size, err := set.Size(0)
		require.NoError(t, err)
		require.Equal(t, size.Bracket, r.Greatest.Size)
		size, err = set.Size(3)
		require.NoError(t, err)
		require.Equal(t, size.Bracket, r.Least.Size)
		d, err := set.Difference(0, 1)
		require.NoError(t, err)
		require.Equal(t, d, r.OutOfRound.Value)
		d, err = set.Difference(0, 2)
		require.NoError(t, err)
		require.Equal(t, d, r.Taper[TaperAlong].Value)
		d, err = set.Difference(0, 4)
		require.NoError(t, err)
		require.Equal(t, d, r.Wear.Value)
		all, err := set.Spread()
		require.NoError(t, err)
		require.NotZero(t, all)
	}
}
