package piston

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Documents that can't be: each is refused with its line and path.
func TestReadReadings_bad(t *testing.T) {
	good := string(demoFile(t, "readings.json"))
	for name, c := range map[string]struct {
		old, new, path string
		line           int
		kind           error
	}{
		"unknown field":     {`"mark": "1"`, `"marke": "1"`, "pistons[0].marke", 6, document.ErrUnknown},
		"twice":             {`"mark": "1"`, `"mark": "1", "mark": "1"`, "pistons[0].mark", 6, document.ErrDuplicate},
		"no unit":           {`"85.966 mm"`, `"85.966"`, "pistons[0].skirt[0].across", 9, units.ErrNoUnit},
		"wrong type":        {`"85.966 mm"`, `85.966`, "pistons[0].skirt[0].across", 9, document.ErrType},
		"not a number":      {`"85.966 mm"`, `"NaN mm"`, "pistons[0].skirt[0].across", 9, tolerance.ErrSyntax},
		"negative":          {`"85.966 mm"`, `"-85.966 mm"`, "pistons[0].skirt[0].across", 9, ErrInput},
		"wrong schema":      {`"schema": 1`, `"schema": 2`, "schema", 2, document.ErrSchema},
		"one number twice":  {`"piston": 2`, `"piston": 1`, "pistons[1].piston", 0, ErrInput},
		"no number":         {`"piston": 2`, `"piston": 0`, "pistons[1].piston", 0, ErrInput},
		"two bores":         {`"cylinder": 2`, `"cylinder": 1`, "bores[1].cylinder", 0, ErrInput},
		"number missing":    {`"piston": 2,`, ``, "pistons[1].piston", 0, document.ErrMissing},
		"blade":             {`.002 in drag`, `.002 in wobbles`, "pistons[0].rings[0].sideClearance[0].tried", 0, ErrInput},
		"finish of no kit":  {`"top": "86.035 ±0.003 mm"`, `"finish": "86.5 mm"`, "bores[0].oversize", 0, ErrInput},
		"state":             {`"crackTested": "yes"`, `"crackTested": "maybe"`, "pistons[0].condition.crackTested", 0, inspection.ErrInput},
		"mass of nothing":   {`"412.4 g"`, `"0 g"`, "pistons[0].mass", 0, ErrInput},
		"gap below zero":    {`"0.36 ±0.02 mm"`, `"0.01 ±0.02 mm"`, "pistons[0].rings[0].endGapBottom.gap", 0, ErrInput},
		"pin":               {`"21.9975 mm"`, `"0 mm"`, "pistons[0].pin.atBosses[0][0]", 0, ErrInput},
		"length":            {`"70.00 ±0.01 mm"`, `"0 mm"`, "pistons[0].pin.length", 0, ErrInput},
		"between":           {`"70.30 ±0.02 mm"`, `"-1 mm"`, "pistons[0].pin.between", 0, ErrInput},
		"protrusion":        {`"0.608 mm"`, `"12 m"`, "pistons[0].first", 0, nil},
		"ring's height":     {`"1.484 mm"`, `"0 mm"`, "pistons[0].rings[0].usedHeight", 0, ErrInput},
		"bore":              {`"86.010 ±0.003 mm"`, `"0 mm"`, "bores[0].bottom", 0, ErrInput},
		"bore at the skirt": {`"86.015 ±0.002 mm"`, `"0 mm"`, "bores[0].skirt[0]", 0, ErrInput},
	} {
		t.Run(name, func(t *testing.T) {
			require.Contains(t, good, c.old)
			_, err := ReadReadings("readings.json", []byte(strings.Replace(good, c.old, c.new, 1)))
			var e *document.Error
			require.ErrorAs(t, err, &e)
			require.Equal(t, "readings.json", e.Name)
			require.Equal(t, c.path, e.Path)
			require.Positive(t, e.Line)
			if c.line > 0 {
				require.Equal(t, c.line, e.Line)
			}
			if c.kind != nil {
				require.ErrorIs(t, err, c.kind)
			}
		})
	}
	for n := range len(good) - 2 {
		if n%97 == 0 {
			_, err := ReadReadings("readings.json", []byte(good[:n]))
			require.Error(t, err)
		}
	}
	_, err := ReadReadings("readings.json", nil)
	require.ErrorIs(t, err, document.ErrEmpty)
}

// What no document says in words, but a program might.
func TestReadings_Validate(t *testing.T) {
	x := reading("-1 mm")
	for path, change := range map[string]func(*Readings){
		"schema":                    func(r *Readings) { r.Schema = 0 },
		"pistons[0].piston":         func(r *Readings) { r.Pistons[0].Piston = 65 },
		"pistons[0].skirt[1].along": func(r *Readings) { r.Pistons[0].Skirt[1].Along = x },
		"pistons[0].rings[0].sideClearance[0].clearance": func(r *Readings) { r.Pistons[0].Rings[0].Side[0].Clearance = x },
		"pistons[0].rings[0].sideClearance[0].width":     func(r *Readings) { r.Pistons[0].Rings[0].Side[0].Width = x },
		"pistons[0].rings[0].sideClearance[0]":           func(r *Readings) { r.Pistons[0].Rings[0].Side[0].Width = reading("1.5 mm") },
		"pistons[0].rings[0].endGapTop.gap":              func(r *Readings) { r.Pistons[0].Rings[0].Top.Gap = x },
		"bores[0].skirt":                                 func(r *Readings) { r.Bores[0].Skirt = make([]inspection.Reading, 17) },
	} {
		_, r := demo(t)
		change(&r)
		err := r.Validate()
		require.ErrorIs(t, err, ErrInput, path)
		var at *inspection.PathError
		require.ErrorAs(t, err, &at)
		require.Equal(t, path, at.Path)
		l, _ := demo(t)
		_, again := Inspect(&l, &r)
		require.Equal(t, err, again)
	}
}

// Readings that the limits have no place for would be left unjudged.
func TestInspect_notAsked(t *testing.T) {
	some := []inspection.Reading{reading("22 mm"), reading("22 mm"), reading("22 mm")}
	for path, change := range map[string]func(*Limits, *Readings){
		"pistons[1].piston":                          func(_ *Limits, r *Readings) { r.Pistons[1].Piston = 5 },
		"pistons[0].skirt":                           func(_ *Limits, r *Readings) { r.Pistons[0].Skirt = make([]ReadingsSkirt, 4) },
		"pistons[0].pulls":                           func(_ *Limits, r *Readings) { r.Pistons[0].Pulls = make([][]PullTrial, 1) },
		"pistons[0].rings":                           func(_ *Limits, r *Readings) { r.Pistons[0].Rings = make([]ReadingsRing, 4) },
		"pistons[0].rings[0].sideClearance":          func(_ *Limits, r *Readings) { r.Pistons[0].Rings[0].Side = make([]ReadingsSide, 3) },
		"pistons[0].rings[2].sideClearance":          func(_ *Limits, r *Readings) { r.Pistons[0].Rings[2].Side = make([]ReadingsSide, 1) },
		"pistons[0].rings[0].sideClearance[0].width": func(_ *Limits, r *Readings) { r.Pistons[0].Rings[0].Side[0] = ReadingsSide{Width: reading("1.5 mm")} },
		"pistons[0].rings[0].grooveDepth":            func(_ *Limits, r *Readings) { r.Pistons[0].Rings[0].Thickness = reading("3.5 mm") },
		"pistons[0].rings[0].land":                   func(_ *Limits, r *Readings) { r.Pistons[0].Rings[0].Land = reading("3.5 mm") },
		"pistons[0].rings[0].endGapTop":              func(l *Limits, _ *Readings) { l.Rings[0].Gap = inspection.Limit{} },
		"pistons[0].pin.bosses":                      func(_ *Limits, r *Readings) { r.Pistons[0].Pin.Bosses = make([][]inspection.Reading, 3) },
		"pistons[0].pin.smallEnd[1]":                 func(_ *Limits, r *Readings) { r.Pistons[0].Pin.SmallEnd[1] = some },
		"pistons[0].pin.between":                     func(l *Limits, _ *Readings) { l.Pins.EndFloat = inspection.Limit{} },
		"pistons[0].pin.atBosses":                    func(l *Limits, _ *Readings) { l.Pins = nil },
		"pistons[0].mass":                            func(l *Limits, _ *Readings) { l.Mass = nil },
		"pistons[0].first":                           func(l *Limits, _ *Readings) { l.Protrusion = nil },
		"bores[3].cylinder":                          func(_ *Limits, r *Readings) { r.Bores[3].Cylinder = 9 },
		"bores[0].oversize":                          func(_ *Limits, r *Readings) { r.Bores[0].Oversize = "+1.00 mm" },
	} {
		l, r := demo(t)
		change(&l, &r)
		_, err := Inspect(&l, &r)
		require.ErrorIs(t, err, ErrInput, path)
		var at *inspection.PathError
		require.ErrorAs(t, err, &at)
		require.Equal(t, path, at.Path)
	}
}

func TestLimits_Validate(t *testing.T) {
	far := inspection.Limit{Wear: tolerance.Printed{BandOf: band("max 20 m")}}
	below := inspection.Limit{New: printed(t, "-2 mm to -1 mm")}
	names := make([]string, 17)
	for i := range names {
		names[i] = string(rune('a' + i))
	}
	long := strings.Repeat("x", 65)
	one := tolerance.AtMost(units.Millimetre)
	for path, change := range map[string]func(*Limits){
		"schema":                        func(l *Limits) { l.Schema = 3 },
		"pistons":                       func(l *Limits) { l.Pistons = 65 },
		"arrow":                         func(l *Limits) { l.Arrow = long },
		"standardBore":                  func(l *Limits) { l.Standard = -1 },
		"kits":                          func(l *Limits) { l.Kits = make([]LimitsKit, 17) },
		"kits[1].name":                  func(l *Limits) { l.Kits[1].Name = "standard" },
		"kits[0].oversize":              func(l *Limits) { l.Kits[0].Oversize = mm("-0.5") },
		"kits[0].skirt":                 func(l *Limits) { l.Kits[0].Skirt = one },
		"blades":                        func(l *Limits) { l.Blades = "imperial 2600" },
		"ownBlades":                     func(l *Limits) { l.OwnBlades = make([]feeler.Blade, 300) },
		"skirt.heights":                 func(l *Limits) { l.Skirt.Heights = nil },
		"skirt.heights[1]":              func(l *Limits) { l.Skirt.Heights[1] = mm("5") },
		"skirt.measuringHeight":         func(l *Limits) { l.Skirt.MeasuringHeight = mm("19") },
		"skirt.new":                     func(l *Limits) { l.Skirt.New = l.Skirt.New[:2] },
		"skirt.new[1]":                  func(l *Limits) { l.Skirt.New[1] = one },
		"skirt.size.new":                func(l *Limits) { l.Skirt.Size = below },
		"skirt.taper.wear":              func(l *Limits) { l.Skirt.Taper = far },
		"skirt.pullRule":                func(l *Limits) { l.Skirt.Pulled = inspection.Limit{New: printed(t, "max 0.1 mm")} },
		"skirt.pullAt[1]":               func(l *Limits) { l.Skirt.PullAt = []string{"front", "front"} },
		"skirt.error":                   func(l *Limits) { l.Skirt.Error = -1 },
		"rings":                         func(l *Limits) { l.Rings = make([]LimitsRing, 9) },
		"rings[1].name":                 func(l *Limits) { l.Rings[1].Name = "top" },
		"rings[0].name":                 func(l *Limits) { l.Rings[0].Name = "" },
		"rings[0].kind":                 func(l *Limits) { l.Rings[0].Kind = 9 },
		"rings[0].land.new":             func(l *Limits) { l.Rings[0].Land = below },
		"rings[0].sideClearanceAt":      func(l *Limits) { l.Rings[0].SideAt = names },
		"rings[0].endGapAt[0]":          func(l *Limits) { l.Rings[0].GapAt = []string{"middle"} },
		"rings[0].endGapAt[1]":          func(l *Limits) { l.Rings[0].GapAt = []string{"top", "top"} },
		"rings[0].newHeight":            func(l *Limits) { l.Rings[0].NewHeight = one },
		"rings[0].newWidth":             func(l *Limits) { l.Rings[0].NewWidth = one },
		"rings[0].newGap":               func(l *Limits) { l.Rings[0].NewGap = one },
		"rings[0].spacers":              func(l *Limits) { l.Rings[0].Spacers = make([]Spacer, 17) },
		"rings[1].spacers[0].name":      func(l *Limits) { l.Rings[1].Spacers = []Spacer{{}} },
		"rings[1].spacers[0].thickness": func(l *Limits) { l.Rings[1].Spacers = []Spacer{{"x", one}} },
		"rings[2].spacers[0].thickness": func(l *Limits) { l.Rings[2].Spacers = []Spacer{{Name: "x"}} },
		"rings[2].spacers":              func(l *Limits) { l.Rings[2].Spacers = []Spacer{{"x", band("0.59–0.61 mm")}} },
		"rings[0].cut":                  func(l *Limits) { l.Rings[0].Cut = -1 },
		"pins.fit":                      func(l *Limits) { l.Pins.Fit = 7 },
		"pins.bosses":                   func(l *Limits) { l.Pins.Bosses = names },
		"pins.directions[1]":            func(l *Limits) { l.Pins.Directions[1] = l.Pins.Directions[0] },
		"pins.size.new":                 func(l *Limits) { l.Pins.Size = below },
		"pins.smallEndClearance":        func(l *Limits) { l.Pins.Fit = PinPressed },
		"pins.smallEndInterference":     func(l *Limits) { l.Pins.SmallEndInterference = inspection.Limit{New: printed(t, "max 0.1 mm")} },
		"pins.newPin":                   func(l *Limits) { l.Pins.NewPin = one },
		"pins.newBoss":                  func(l *Limits) { l.Pins.NewBoss = one },
		"pins.newSmallEnd":              func(l *Limits) { l.Pins.NewSmallEnd = one },
		"pins.error":                    func(l *Limits) { l.Pins.Error = mm("11000") },
		"mass":                          func(l *Limits) { l.Mass.Error = -1 },
		"mass.spread.new": func(l *Limits) {
			l.Mass.Spread.New = tolerance.PrintedOf[units.Mass]{BandOf: tolerance.AtMost(-units.Gram)}
		},
		"protrusion.table":     func(l *Limits) { l.Protrusion.Table[1].Mark = "" },
		"protrusion.tilt.wear": func(l *Limits) { l.Protrusion.Tilt = far },
		"protrusion.error":     func(l *Limits) { l.Protrusion.Error = -1 },
	} {
		l, r := demo(t)
		change(&l)
		err := l.Validate()
		require.Error(t, err, path)
		var at *inspection.PathError
		require.ErrorAs(t, err, &at, path)
		require.Equal(t, path, at.Path)
		_, again := l.Prepare().Inspect(&r)
		require.Equal(t, err, again)
	}
	l, _ := demo(t)
	l.Skirt.PullRule = &PullRule{}
	require.ErrorContains(t, l.Validate(), "skirt.pullRule")
	l, _ = demo(t)
	for i := range 65 {
		l.Protrusion.Table = append(l.Protrusion.Table, GasketRow{Mark: strings.Repeat("i", i+1)})
	}
	require.ErrorContains(t, l.Validate(), "protrusion.table")
	_, err := ReadLimits("limits.json", []byte(`{"schema": 1, "pistons": 0}`))
	require.EqualError(t, err, "limits.json:1: pistons: piston: pistons 0 is not from 1 to 64")
}

// Whatever a document says, inspecting it doesn't panic, and no part is passed
// of which a reading is missing.
func FuzzInspect(f *testing.F) {
	l, _ := demo(f)
	in := l.Prepare()
	f.Add(string(demoFile(f, "readings.json")))
	f.Add(`{"schema": 1, "pistons": [{"piston": 1, "skirt": [{"across": "85.9 mm"}], "rings": [{"sideClearance": [{"tried": ".002 in drag"}], "endGapBottom": {"gap": "0.4 mm"}}]}]}`)
	f.Add(`{"schema": 1, "bores": [{"cylinder": 2, "oversize": "+0.50 mm", "finish": "86.5 mm"}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		r, err := ReadReadings("x.json", []byte(text))
		if err != nil {
			return
		}
		out, err := in.Inspect(&r)
		if err != nil {
			return
		}
		sound(t, &out)
		for _, d := range out.Decisions {
			if d.Action != inspection.ReUse && d.Action != inspection.CleanAndReUse {
				continue
			}
			for _, m := range out.Missing {
				require.False(t, m.Step == d.Step && d.Where != "" && (m.Where == d.Where || strings.HasPrefix(m.Where, d.Where+",")), "%+v lacks %+v", d, m)
			}
			for _, s := range out.Slips {
				require.NotContains(t, d.Slips, s.Path)
			}
		}
	})
}
