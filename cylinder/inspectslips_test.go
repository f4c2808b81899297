package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A reading that looks like a slip is listed, and no decision rests on it in
// silence.
func TestInspect_readingSlips(t *testing.T) {
	for _, c := range []struct {
		name        string
		change      func(l *Limits, r *Readings)
		path        string
		text        string
		part, where string
	}{
		// The gauge shows deviations from a ring of 86 mm.
		{"a size for a deviation", func(_ *Limits, r *Readings) { worn(t, r, 1, "86.041 mm") },
			"cylinders[0].levels[0].across", "where about 86 mm is expected", "cylinder bore", "cylinder 1"},
		{"the same below the ring travel", func(l *Limits, r *Readings) { r.Cylinders[0].Unworn = read(t, "86.005 mm") },
			"cylinders[0].unworn", "where about 86 mm is expected", "cylinder bore", "cylinder 1"},
		{"inches for millimetres", func(l *Limits, r *Readings) {
			byMicrometer(t, l, r)
			r.Cylinders[0].Levels[2].Along = read(t, "3.387 mm")
		}, "cylinders[0].levels[2].along", "", "cylinder bore", "cylinder 1"},
		{"a half-millimetre mark miscounted", func(l *Limits, r *Readings) {
			byMicrometer(t, l, r)
			r.Cylinders[0].Levels[2].Along = read(t, "86.510 mm")
		}, "cylinders[0].levels[2].along", "one turn of a metric micrometer's thimble", "cylinder bore", "cylinder 1"},
		{"a decimal place of a housing", func(_ *Limits, r *Readings) { r.Mains[1].Sizes[1][2] = read(t, "5.9010 mm") },
			"mains[1].sizes[1][2]", "where about 59 mm is expected", "main bearing housing", "main 2"},
		{"a turn of the micrometer on a housing", func(_ *Limits, r *Readings) { r.Mains[1].Sizes[1][2] = read(t, "59.510 mm") },
			"mains[1].sizes[1][2]", "", "main bearing housing", "main 2"},
		{"a height", func(_ *Limits, r *Readings) { r.Faces[0].Heights[1] = read(t, "21.998 mm") },
			"blockFaces[0].heights[1]", "", "block face", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := inspected(t, c.change)
			require.Len(t, r.Slips, 1)
			require.Equal(t, c.path, r.Slips[0].Path)
			require.Contains(t, r.Slips[0].Text, c.text)
			d := decision(t, &r, c.part, c.where)
			require.Equal(t, inspection.MeasureAgain, d.Action)
			require.Equal(t, []string{c.path}, d.Slips)
			require.Contains(t, d.Settle, "measure that place again")
			for _, o := range r.Orders {
				require.False(t, o.Sure && c.part == "cylinder bore")
			}
		})
	}
}

// byMicrometer reads the first bore as sizes, with an inside micrometer.
func byMicrometer(t testing.TB, l *Limits, r *Readings) {
	l.Bores.Gauge.Setting.Standard = 0
	for i := range r.Cylinders {
		for k := range r.Cylinders[i].Levels {
			for _, s := range []*inspection.Reading{&r.Cylinders[i].Levels[k].Along, &r.Cylinders[i].Levels[k].Across} {
				q, _ := s.Value.Lower()
				*s = read(t, (86*units.Millimetre + q).String())
			}
		}
	}
}

// The pressures of a compression test are held to each other.
func TestInspect_compressionSlip(t *testing.T) {
	r := inspected(t, func(_ *Limits, r *Readings) {
		r.Cylinders[2].Compression.Wet = inspection.ReadingOf[units.Pressure]{}
		require.NoError(t, r.Cylinders[2].Compression.Dry.UnmarshalText([]byte("1.2 bar")))
	})
	require.Len(t, r.Slips, 1)
	require.Equal(t, "cylinders[2].compression.dry", r.Slips[0].Path)
	require.Equal(t, "cylinder 3", r.Slips[0].What)
}

// A limit whose columns disagree is listed; what is decided by both alike
// stands and names it, what isn't is looked up first.
func TestInspect_limitSlips(t *testing.T) {
	wrong := func(l *Limits) { // 3.3898 in would be right
		l.Bores.Size.WearAlso = printed(t, "max 3.3889 in")
	}
	r := inspected(t, func(l *Limits, r *Readings) { wrong(l); sound(r) })
	require.Len(t, r.Slips, 1)
	require.Equal(t, "limits.bores.size.wearAlso", r.Slips[0].Path)
	d := decision(t, &r, "cylinder bore", "cylinder 1")
	require.Equal(t, inspection.CleanAndReUse, d.Action, "86.044 mm is within 86.100 mm and 3.3889 in, 86.078 mm")
	require.Equal(t, []string{"limits.bores.size.wearAlso"}, d.Slips)
	require.Contains(t, d.Settle, "the standing is the same by either column")

	r = inspected(t, func(l *Limits, r *Readings) {
		wrong(l)
		sound(r)
		worn(t, r, 1, "0.085 mm")
		l.Bores.Taper, l.Bores.OutOfRound = inspection.Limit{}, inspection.Limit{}
	})
	d = decision(t, &r, "cylinder bore", "cylinder 1")
	require.Equal(t, inspection.MeasureAgain, d.Action, "86.085 mm is within the one and past the other")
	require.Contains(t, d.Because, "which of them is right decides")
	require.Contains(t, d.Settle, "look up the limit")
	require.Equal(t, "cylinder 1", decision(t, &r, "cylinder bores", "").Governs)

	// A wear limit inside the band for new parts judges nothing.
	r = inspected(t, func(l *Limits, r *Readings) {
		sound(r)
		l.Bores.Size.Wear, l.Bores.Size.WearAlso = printed(t, "max 86.010 mm"), printed(t, "no limit")
	})
	require.Equal(t, "limits.bores.size.wear", r.Slips[0].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "cylinder bore", "cylinder 2").Action)
	for _, f := range r.Findings {
		require.NotEqual(t, "bore size", f.Measure())
	}
	// Nor does a second column without a first.
	r = inspected(t, func(l *Limits, _ *Readings) {
		l.Face.Overall.Wear, l.Face.Overall.WearAlso = printed(t, "no limit"), printed(t, "max .002 in")
	})
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "block face", "").Action)

	in := demoLimits(t).prepared()
	require.Empty(t, in.Slips())
}

func (l Limits) prepared() *Inspector { return l.Prepare() }
