package crank

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Limits that can't be are refused with their path.
func TestLimitsRefuse(t *testing.T) {
	for _, c := range []struct{ limits, path string }{
		{`"layout": {"mains": -1}`, "layout.mains"},
		{`"layout": {"mains": 101}`, "layout.mains"},
		{`"layout": {"mains": 5, "dialPlaces": 2}`, "layout.dialPlaces"},
		{`"layout": {"mains": 5, "dialPlaces": 361}`, "layout.dialPlaces"},
		{`"layout": {}, "mains": {"wear": {"wear": "max 0.1 mm"}}`, "layout"},
		{`"layout": {}, "rods": {"side": {"wear": "max 0.1 mm"}}`, "layout"},
		{`"layout": {}, "crankpins": {"stroke": {"new": "76–77 mm"}}`, "layout"},
		{`"layout": {"rods": 2, "crankpins": 1, "rodPins": [1]}`, "layout.rodPins"},
		{`"layout": {"rods": 2, "crankpins": 1, "rodPins": [1, 2]}`, "layout.rodPins[1]"},
		{`"layout": {"mainDirections": ["0°", "180°"]}`, "layout.mainDirections[1]"},
		{`"layout": {"pinDirections": ["10°", "10°"]}`, "layout.pinDirections[1]"},
		{`"layout": {"mains": 3, "supports": [1]}`, "layout.supports"},
		{`"layout": {"mains": 3, "supports": [1, 4]}`, "layout.supports"},
		{`"layout": {"mains": 3, "positions": ["0 mm"]}`, "layout.positions"},
		{`"layout": {"mains": 3, "positions": ["0 mm", "0 mm", "1 mm"]}`, "layout.positions[1]"},
		{`"layout": {"mains": 3, "positions": ["0 mm", "1 mm", "11 m"]}`, "layout.positions[2]"},
		{`"layout": {"mains": 3}, "shaft": {"bend": {"new": "max 0.1 mm"}}`, "layout"},
		{`"layout": {}, "instruments": {"mains": {"name": "m", "step": "-1 mm"}}`, "instruments.mains"},
		{`"layout": {}, "instruments": {"bolt": "-1 mm"}`, "instruments.bolt"},
		{`"layout": {"mains": 1}, "mains": {"size": {"new": "60–61 mm", "wear": "min 60.5 mm"}}`, "mains.size"},
		{`"layout": {"mains": 1}, "mains": {"size": {"new": "60–20000 mm"}}`, "mains.size"},
		{`"layout": {"mains": 1}, "mains": {"size": {"new": "min 60 mm"}}`, "mains.size.new"},
		{`"layout": {"mains": 1}, "mains": {"case": "(-∞, 1 mm]"}`, "mains.case"},
		{`"layout": {"mains": 1}, "mains": {"shells": [{"name": "x", "undersize": "0 mm"}]}`, "mains"},
		{`"layout": {"mains": 1}, "mains": {"size": {"new": "60–61 mm"}, "shells": [{"name": "x", "undersize": "-1 mm"}]}`, "mains.shells[0]"},
		{`"layout": {"mains": 1}, "mains": {"size": {"new": "60–61 mm"}, "shells": [{"name": "x", "undersize": "0 mm", "wall": "min 1 mm"}]}`, "mains.shells[0].wall"},
		{`"layout": {"crankpins": 1}, "crankpins": {"index": {"new": "1–2°", "wear": "max 1.5°"}}`, "crankpins.index"},
		{`"layout": {"mains": 1}, "mainBearings": {"method": "by gauging strip", "oilClearance": {"new": "max 0.1 mm"}}`, "mainBearings.strip"},
		{`"layout": {"mains": 1}, "mainBearings": {"strip": [{"width": "1 mm", "clearance": "1 mm"}]}`, "mainBearings.strip"},
		{`"layout": {"mains": 1}, "mainBearings": {"places": -1}`, "mainBearings.places"},
		{`"layout": {"mains": 1}, "mainBolts": {"count": -1}`, "mainBolts.count"},
		{`"layout": {"rods": 1}, "rods": {"span": "-1 mm"}`, "rods.span"},
		{`"layout": {"rods": 1}, "rods": {"twistPer": {"new": "max 1 mm"}}`, "rods"},
		{`"layout": {"rods": 1}, "rods": {"centres": {"new": "100–101 mm"}}`, "rods"},
		{`"layout": {"rods": 1}, "rods": {"master": "-1 mm"}`, "rods.master"},
		{`"layout": {"mains": 1}, "thrust": {"main": 2}`, "thrust.main"},
		{`"layout": {}, "thrust": {"halves": 3}`, "thrust.halves"},
		{`"layout": {}, "thrust": {"wanted": "-1 mm"}`, "thrust.wanted"},
		{`"layout": {}, "thrust": {"stock": [{"name": "x", "thickness": "1 mm", "pieces": -1}], "endFloat": {"new": "1–2 mm"}}`, "thrust.stock[0].pieces"},
		{`"layout": {}, "thrust": {"stock": [{"name": "x", "thickness": "1 mm"}], "endFloat": {"new": "min 1 mm"}}`, "thrust"},
		{`"layout": {}, "thrust": {"table": {"source": "x", "total": "1 mm", "steps": []}}`, "thrust.table"},
		{`"layout": {"rods": 1, "crankpins": 1}, "balance": {"bobweight": {"new": "max 2 kg"}}`, "balance"},
		{`"layout": {"rods": 1, "crankpins": 1}, "balance": {"bobweight": {"new": "max 2 kg"}, "factor": "50"}`, "balance"},
		{`"layout": {"rods": 1, "crankpins": 1}, "balance": {"bobweight": {"new": "max 2 kg"}, "factor": "1/2", "oil": "-1 g"}`, "balance.oil"},
		{`"layout": {"rods": 1}, "balance": {"bigEnds": {"new": "max -2 g"}}`, "balance.bigEnds"},
		{`"layout": {}, "balance": {"rotor": {"mass": "0 kg", "rpm": 1, "gradeMMPS": 1, "bearingA": "0 mm", "bearingB": "1 mm", "massCentre": "0 mm"}}`, "balance.rotor"},
		{`"layout": {}, "balance": {"rotor": {"mass": "1 kg", "rpm": 1, "gradeMMPS": 1, "bearingA": "0 mm", "bearingB": "1 mm", "massCentre": "0 mm", "readings": [{"at": "0 mm", "amountGMM": 1, "errorGMM": 0}]}}`, "balance.rotor.readings"},
		{`"layout": {}, "oilPump": {"backlash": {"new": "max 1 mm"}, "kind": "rotor"}`, "oilPump.backlash"},
		{`"layout": {}, "oilPump": {"gasket": "-1 mm"}`, "oilPump.gasket"},
		{`"layout": {}, "oilPump": {"newWidth": "min 1 mm"}`, "oilPump.newWidth"},
		{`"layout": {}, "oilPump": {"relief": {"installed": "1 mm"}}`, "oilPump.relief"},
		{`"layout": {}, "oilPump": {"relief": {"height": "30 mm", "pressure": {"new": "max 1 MPa"}}}`, "oilPump.relief"},
		{`"layout": {}, "oilPump": {"relief": {"height": "30 mm", "load": {"new": "max -1 N"}}}`, "oilPump.relief.load"},
	} {
		_, err := ReadLimits("x.json", []byte(`{"schema": 1, `+c.limits+`}`))
		require.Error(t, err, c.limits)
		require.Contains(t, err.Error(), "x.json:1: "+c.path+": ", c.limits)
	}
	for path, l := range map[string]Limits{
		"mains.taperRule":     {Schema: 1, Mains: LimitsJournals{TaperRule: 9}},
		"shaft.surface":       {Schema: 1, Shaft: LimitsShaft{Surface: 9}},
		"mainBearings.method": {Schema: 1, MainBearings: LimitsBearings{Method: 9}},
		"oilPump.kind":        {Schema: 1, OilPump: LimitsPump{Kind: 9}},
		"mains.shells":        {Schema: 1, Layout: LimitsLayout{Mains: 1}, Mains: LimitsJournals{Shells: make([]LimitsShells, 101)}},
		"thrust.stock":        {Schema: 1, Thrust: LimitsThrust{Stock: make([]ThrustWasher, 101)}},
		"layout.planes":       {Schema: 1, Layout: LimitsLayout{Planes: make([]string, 361)}},
	} {
		err := l.Validate()
		require.ErrorIs(t, err, ErrInput, path)
		require.ErrorContains(t, err, path)
		_, err = l.Prepare().Inspect(&Readings{Schema: 1})
		require.ErrorContains(t, err, path)
	}
}

// The documents encode, and are read back as they were.
func TestInspectDocumentsEncode(t *testing.T) {
	l, d := inspectLimits(t), inspectReadings(t)
	data, err := json.Marshal(l)
	require.NoError(t, err)
	back, err := ReadLimits("x", data)
	require.NoError(t, err)
	require.Equal(t, l, back)
	data, err = json.Marshal(d)
	require.NoError(t, err)
	again, err := ReadReadings("x", data)
	require.NoError(t, err)
	require.Equal(t, d, again)
	data, err = json.Marshal(l.Blank())
	require.NoError(t, err)
	blank, err := ReadReadings("x", data)
	require.NoError(t, err)
	require.Len(t, blank.Mains, 5)
}

// Readings drawn at random: some missing, some slips, some parts scored or cracked.
// Whatever comes, nothing panics and nothing passes that it shouldn't.
func TestInspectAnything(t *testing.T) {
	l := inspectLimits(t)
	l.Instruments.Mains.Step, l.Instruments.Crankpins.Step = 0, 0
	in := l.Prepare()
	rng := rand.New(rand.NewPCG(8, 1))
	touch := func(r *inspection.Reading) {
		if !r.Taken {
			return
		}
		lo, _ := r.Value.Lower()
		switch rng.IntN(12) {
		case 0:
			*r = inspection.Reading{}
		case 1:
			*r = inspection.Read(tolerance.Exactly(lo * 10))
		case 2:
			*r = inspection.Read(tolerance.Exactly(lo + units.Millimetre/2))
		case 3:
			*r = inspection.Read(tolerance.Exactly(lo - units.Millimetre/20))
		case 4:
			*r = inspection.Read(tolerance.Exactly(lo + units.Length(rng.Int64N(int64(units.Millimetre/5)))))
		}
	}
	refused, decided := 0, 0
	for range 400 {
		d := inspectReadings(t)
		for i := range d.Mains {
			touch(&d.Mains[i].RunOut)
			for p := range d.Mains[i].Planes {
				for k := range d.Mains[i].Planes[p].Sizes {
					if rng.IntN(4) == 0 {
						touch(&d.Mains[i].Planes[p].Sizes[k])
					}
				}
			}
			touch(&d.MainBearings[i].Bore[0])
		}
		for i := range d.Crankpins {
			for p := range d.Crankpins[i].Planes {
				touch(&d.Crankpins[i].Planes[p].Sizes[rng.IntN(2)])
			}
			touch(&d.BigEnds[i].Bore[0])
			r := &d.Rods[i]
			for _, one := range []*inspection.Reading{&r.Right, &r.Left, &r.Twist, &r.Side[0], &r.BigEnd[0].Sizes[1], &r.BigEnd[1].Sizes[0], &r.Bolts[1].Free} {
				touch(one)
			}
			r.Condition.Scored, r.Condition.Cracked = inspection.State(rng.IntN(3)), inspection.State(rng.IntN(2))
			d.Crankpins[i].Condition.Blued = inspection.State(max(rng.IntN(40)-37, 0))
		}
		for _, one := range []*inspection.Reading{&d.Thrust.EndFloat[0], &d.Thrust.Front[1], &d.Thrust.Rear[0], &d.OilPump.Tip[0], &d.OilPump.Side[0], &d.OilPump.Free} {
			touch(one)
		}
		d.Shaft.Condition.CrackTested = inspection.State(rng.IntN(3))
		if rng.IntN(8) == 0 {
			d.Shaft.Crankpins = []string{"0.25 mm", "0.50 mm", "standard"}[rng.IntN(3)]
		}
		r, err := in.Inspect(&d)
		if err != nil {
			var at *inspection.PathError
			require.ErrorAs(t, err, &at)
			require.False(t, strings.HasPrefix(at.Path, "limits"))
			refused++
			continue
		}
		decided++
		passedWhole(t, &r)
	}
	require.Greater(t, decided, 100, refused)
}
