package cylinder

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// What a bad document is refused with: line, path and reason.
func TestRead_refuses(t *testing.T) {
	limits, readings := string(demoFile(t, "limits.json")), string(demoFile(t, "readings.json"))
	for _, c := range []struct {
		name, file, old, new string
		want                 []string
	}{
		{"unknown field", "readings", `"along"`, `"allong"`, []string{"unknown field", "cylinders[0].levels[0]"}},
		{"duplicate key", "readings", `"cylinder": 1,`, `"cylinder": 1, "cylinder": 1,`, []string{"given twice", "cylinders[0].cylinder"}},
		{"no unit", "readings", `"0.030 mm"`, `"0.030"`, []string{"cylinders[0].levels[0].along", "unit"}},
		{"a bare number", "readings", `"0.030 mm"`, `0.030`, []string{"cylinders[0].levels[0].along", "wrong type"}},
		{"truncated", "readings", readings[2000:], ``, []string{"cut short"}},
		{"wrong schema", "readings", `"schema": 1`, `"schema": 2`, []string{"unknown schema number"}},
		{"not a number", "readings", `12.1`, `NaN`, []string{"testConditions.batteryV"}},
		{"a voltage that can't be", "readings", `12.1`, `1210`, []string{":3: testConditions", "from 0 to 100 V"}},
		{"one number twice", "readings", `"cylinder": 2,`, `"cylinder": 1,`, []string{"cylinders[1].cylinder", "two can't have one"}},
		{"number 0", "readings", `"cylinder": 2,`, `"cylinder": 0,`, []string{"cylinders[1].cylinder", "from 1 to 64"}},
		{"a housing twice", "readings", `"main": 2,`, `"main": 1,`, []string{"mains[1].main"}},
		{"a reading with its error", "readings", `"0.030 mm"`, `"0.030 ±0.001 mm"`, []string{"cylinders[0].levels[0].along", "its errors stand in the limits"}},
		{"a size below zero", "readings", `"59.012 mm"`, `"-59.012 mm"`, []string{"mains[0].sizes[0][0]", "above 0 mm"}},
		{"a gap below zero", "readings", `"[0.0254 mm, 0.0381 mm)"`, `"-0.01 mm"`, []string{"blockFaces[0].lines[0].gap", "0 mm or more"}},
		{"a height below zero", "readings", `"219.98 mm"`, `"-219.98 mm"`, []string{"blockFaces[0].heights[0]"}},
		{"a pressure below zero", "readings", `"12.1 bar"`, `"-12.1 bar"`, []string{"cylinders[0].compression.dry"}},
		{"more held than supplied", "readings", `"6.4 bar"`, `"7.4 bar"`, []string{"cylinders[0].leakage.held", "at most the supply"}},
		{"an angle that isn't", "readings", `"52°"`, `"200°"`, []string{"cylinders[0].crossHatch", "from 0° to 180°"}},
		{"a bow below zero", "readings", `"camBow": "[0.0254 mm, 0.0381 mm)"`, `"camBow": "-1 mm"`, []string{"heads[0].camBow"}},
		{"an unheard-of place", "readings", `"oil filler"`, `"radio"`, []string{"cylinders[2].leakage.heard[0]"}},
		{"it rests, and rocks", "readings", `"straightEdge": "rests",`, `"straightEdge": "rests", "front": "0.1 mm",`, []string{"blockFaces[0].lines[0].straightEdge", "rocks"}},
		{"a line's height without an end", "readings", `"[0 mm, 0.01 mm)"`, `"[0 mm, ∞)"`, []string{"mains[0].line"}},

		{"no schema", "limits", `"schema": 1,`, ``, []string{"schema", "missing field"}},
		{"no cylinders", "limits", `"cylinders": 4`, `"cylinders": 0`, []string{":3: cylinders", "from 1 to 64"}},
		{"a bore below zero", "limits", `"standard": "86.000 mm",`, `"standard": "-86.000 mm",`, []string{"bores.standard"}},
		{"a limit below zero", "limits", `"max 0.050 mm"`, `"max -0.050 mm"`, []string{"bores.outOfRound.wear"}},
		{"an unknown rule", "limits", `"greatest less least along one direction"`, `"by eye"`, []string{"bores.taperRule"}},
		{"levels out of order", "limits", `"depth": "45 mm"`, `"depth": "15 mm"`, []string{"bores.levels"}},
		{"no levels", "limits", `"levels": ["front", "rear"]`, `"levels": []`, []string{"mainTunnel.levels"}},
		{"a gauge's error below zero", "limits", `"error": "0.001 mm",`, `"error": "-0.001 mm",`, []string{"bores.gauge"}},
		{"a kit below zero", "limits", `"oversize": "0.25 mm"`, `"oversize": "-0.25 mm"`, []string{"bores.kits"}},
		{"plated and rebored", "limits", `"plain iron"`, `"plated"`, []string{"bores.kits", "plated bore is not rebored"}},
		{"places that don't grow", "limits", `"95 mm"`, `"0 mm"`, []string{"mainTunnel.line.places[1]"}},
		{"a place too few", "limits", `"0 mm", "95 mm"`, `"95 mm"`, []string{"mainTunnel.line.places"}},
		{"an angle not said", "limits", `"counted": "included"`, `"counted": "not stated"`, []string{"boreFinish.counted"}},
		{"a percentage", "limits", `"lowPercent": 75`, `"lowPercent": 175`, []string{"beforeStrip.lowPercent"}},
		{"a skim below zero", "limits", `"stock": "0.03 mm"`, `"stock": "-0.03 mm"`, []string{"blockFace.skim.stock"}},
		{"a hone to nothing", "limits", `"finish": "59.010 mm"`, `"finish": "0 mm"`, []string{"mainTunnel.lineHone.finish"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := map[string]string{"limits": limits, "readings": readings}[c.file]
			require.Contains(t, text, c.old)
			data := []byte(strings.Replace(text, c.old, c.new, 1))
			var err error
			if c.file == "limits" {
				_, err = ReadLimits("engine.json", data)
			} else {
				_, err = ReadReadings("engine.json", data)
			}
			var at *document.Error
			require.ErrorAs(t, err, &at)
			require.Regexp(t, `^engine\.json:\d+: `, err.Error())
			require.Positive(t, at.Line)
			for _, w := range c.want {
				require.Contains(t, err.Error(), w)
			}
		})
	}
}

// The line is that of the place.
func TestReadReadings_line(t *testing.T) {
	data := []byte("{\n\"schema\": 1,\n\"cylinders\": [\n{\"cylinder\": 1},\n{\"cylinder\": 2,\n \"levels\": [{\"along\": \"86.01 ±0.01 mm\"}]}]}")
	_, err := ReadReadings("r.json", data)
	require.ErrorContains(t, err, "r.json:6: cylinders[1].levels[0].along: ")
	require.ErrorIs(t, err, ErrInput)
}

// Readings that the limits have no place for, and parts in another's place.
func TestInspect_refuses(t *testing.T) {
	for _, c := range []struct {
		path   string
		change func(l *Limits, r *Readings)
	}{
		{"cylinders[3].cylinder", func(_ *Limits, r *Readings) { r.Cylinders[3].Cylinder = 5 }},
		{"mains[4].main", func(_ *Limits, r *Readings) { r.Mains[4].Main = 6 }},
		{"mains[1].cap", func(_ *Limits, r *Readings) { r.Mains[1].Cap, r.Mains[2].Cap = "3", "2" }},
		{"mains[0].sizes", func(l *Limits, _ *Readings) { l.Tunnel.Levels = l.Tunnel.Levels[:1] }},
		{"mains[0].sizes[0]", func(l *Limits, _ *Readings) { l.Tunnel.Directions = l.Tunnel.Directions[:2] }},
		{"mains[0].main", func(l *Limits, _ *Readings) { l.Tunnel = nil }},
		{"mains[0].line", func(l *Limits, _ *Readings) { l.Tunnel.Line = nil }},
		{"mains[0].crown", func(l *Limits, r *Readings) { l.Tunnel.Hone, r.Mains[0].Crown = nil, read(t, "1 mm") }},
		{"cylinders[0].compression", func(l *Limits, _ *Readings) { l.Strip = nil }},
		{"cylinders[0].leakage", func(l *Limits, _ *Readings) { l.Strip.Leakage, l.Strip.LeakageDifference = 0, 0 }},
		{"cylinders[0].leakage.neighbour", func(_ *Limits, r *Readings) { r.Cylinders[0].Leakage.Neighbour = 1 }},
		{"cylinders[2].compression.wet", func(_ *Limits, r *Readings) { r.Cylinders[2].Compression.Dry.Taken = false }},
		{"cylinders[0].leakage.supply", func(l *Limits, r *Readings) { l.Strip.GaugeError = 8 * 100_000_000_000_000_000 }},
		{"cylinders[0].levels", func(l *Limits, _ *Readings) { l.Bores = nil }},
		{"cylinders[0].levels", func(l *Limits, _ *Readings) { l.Bores.Levels = l.Bores.Levels[:3] }},
		{"cylinders[0].levels[1].angled", func(_ *Limits, r *Readings) {
			r.Cylinders[0].Levels[1].Angled = []inspection.Reading{read(t, "0 mm")}
		}},
		{"cylinders[0].ridge", func(_ *Limits, r *Readings) { r.Cylinders[0].Ridge = read(t, "0 mm") }},
		{"cylinders[0].liner", func(_ *Limits, r *Readings) { r.Cylinders[0].Liner.Mark = "1" }},
		{"cylinders[1].liner.mark", func(l *Limits, r *Readings) { l.Liners, r.Cylinders[1].Liner.Mark = &LimitsLiners{}, "4" }},
		{"cylinders[1].liner.protrusion", func(l *Limits, r *Readings) {
			l.Liners, r.Cylinders[1].Liner.Protrusion = &LimitsLiners{}, make([]inspection.Reading, 2)
		}},
		{"cylinders[0].crossHatch", func(l *Limits, _ *Readings) { l.Finish = nil }},
		{"cylinders[0].levels[0].along", func(l *Limits, _ *Readings) { l.Bores.Gauge.Step = 7 * 1_000_000 }},
		{"cylinders[1].unworn", func(_ *Limits, r *Readings) { r.Cylinders[1].Unworn = read(t, "0.0005 mm") }},
		{"cylinders[0].levels[0].along", func(_ *Limits, r *Readings) { r.Cylinders[0].Levels[0].Along = read(t, "-90 mm") }},
		{"cylinders[2]", func(_ *Limits, r *Readings) {
			r.Cylinders[2].Walls[0].Wear = bracket(t, "0 mm")
		}},
		{"blockFaces[0].bank", func(_ *Limits, r *Readings) { r.Faces[0].Bank = 2 }},
		{"blockFaces[0].bank", func(l *Limits, _ *Readings) { l.Face = nil }},
		{"blockFaces[0].lines", func(l *Limits, _ *Readings) { l.Face.Lines = []LimitsLine{{"left edge", Lengthwise}} }},
		{"blockFaces[0].heights", func(l *Limits, _ *Readings) { l.Face.Height = inspection.Limit{} }},
		{"blockFaces[0].local", func(_ *Limits, r *Readings) { r.Faces[0].Local = make([]inspection.Reading, 1) }},
		{"blockFaces[0].offBefore", func(_ *Limits, r *Readings) { r.Faces[0].OffBefore = read(t, "0.1 mm") }},
		{"blockFaces[0].grid", func(_ *Limits, r *Readings) { r.Faces[0].Grid = make([][]inspection.Reading, 1) }},
		{"heads[0].grid", func(l *Limits, r *Readings) {
			l.Head.Face.Grid = smallGrid()
			r.Heads[0].Lines = nil
			r.Heads[0].Grid = make([][]inspection.Reading, 4)
		}},
		{"heads[0].grid[0]", func(l *Limits, r *Readings) {
			l.Head.Face.Grid = smallGrid()
			r.Heads[0].Lines, r.Heads[0].Grid = nil, [][]inspection.Reading{make([]inspection.Reading, 3)}
		}},
		{"heads[0].camBow", func(l *Limits, _ *Readings) { l.Head.CamTunnel = nil }},
		{"mains[1].line", func(_ *Limits, r *Readings) { r.Mains[1].Line = read(t, "-0.01 mm") }},
		{"block.thermal", func(_ *Limits, r *Readings) { r.Block.Thermal.PerKelvin = 11.5 }}, // 11.5e-6 was meant
		{"schema", func(_ *Limits, r *Readings) { r.Schema = 0 }},
		{"caps", func(_ *Limits, r *Readings) { r.Caps = 9 }},
		{"blockFaces[0].lines[0].straightEdge", func(_ *Limits, r *Readings) { r.Faces[0].Lines[0].Seat = 9 }},
		{"blockFaces[0].lines[0].front", func(_ *Limits, r *Readings) { r.Faces[0].Lines[0].Front = read(t, "-1 mm") }},
		{"blockFaces[0].lines[0].rear", func(_ *Limits, r *Readings) { r.Faces[0].Lines[0].Rear = read(t, "-1 mm") }},
		{"blockFaces[0].local[0]", func(_ *Limits, r *Readings) { r.Faces[0].Local = []inspection.Reading{read(t, "-1 mm")} }},
		{"blockFaces[0].grid[0][0]", func(_ *Limits, r *Readings) { r.Faces[0].Grid = [][]inspection.Reading{{read(t, "[0 mm, 1 mm]")}} }},
		{"blockFaces[0].offBefore", func(_ *Limits, r *Readings) { r.Faces[0].OffBefore = read(t, "-1 mm") }},
		{"cylinders[0].oversize", func(_ *Limits, r *Readings) { r.Cylinders[0].Oversize = -1 }},
		{"cylinders[0].unworn", func(_ *Limits, r *Readings) { r.Cylinders[0].Unworn = read(t, "[0 mm, 1 mm]") }},
		{"cylinders[0].finished", func(_ *Limits, r *Readings) { r.Cylinders[0].Finished = read(t, "[1 mm, ∞)") }},
		{"cylinders[0].liner.protrusion[0]", func(_ *Limits, r *Readings) { r.Cylinders[0].Liner.Protrusion = []inspection.Reading{read(t, "11 mm")} }},
		{"cylinders[0].leakage.heard[0]", func(_ *Limits, r *Readings) { r.Cylinders[0].Leakage.Heard = []Heard{0} }},
	} {
		t.Run(c.path, func(t *testing.T) {
			l, r := demoLimits(t), demoReadings(t)
			c.change(&l, &r)
			_, err := Inspect(&l, &r)
			var at *inspection.PathError
			require.ErrorAs(t, err, &at, "%v", err)
			require.Equal(t, c.path, at.Path, err)
			_, _, err = l.Prepare().Outcome(&r)
			require.Error(t, err)
		})
	}
	l, r := demoLimits(t), demoReadings(t)
	r.Mains[1].Cap, r.Mains[2].Cap = "3", "2"
	_, err := Inspect(&l, &r)
	require.ErrorIs(t, err, inspection.ErrMixUp)
	r.Mains[1].Mark, r.Mains[2].Mark = "3", "2" // stamped so
	_, err = Inspect(&l, &r)
	require.NoError(t, err)
}

func smallGrid() *LimitsGrid {
	return &LimitsGrid{Rows: 2, Columns: 2, StepLengthwise: 100_000_000_000, StepAcross: 100_000_000_000}
}

// Limits that can't be, by their paths.
func TestLimits_refuses(t *testing.T) {
	require.NoError(t, func() error { l := demoLimits(t); return l.Validate() }())
	for _, c := range []struct {
		path   string
		change func(l *Limits)
	}{
		{"schema", func(l *Limits) { l.Schema = 0 }},
		{"cylinders", func(l *Limits) { l.Cylinders = 65 }},
		{"banks[0]", func(l *Limits) { l.Banks = [][]int{{}} }},
		{"banks[0][1]", func(l *Limits) { l.Banks = [][]int{{1, 1}} }},
		{"banks", func(l *Limits) { l.Banks = [][]int{{1, 2}} }},
		{"beforeStrip.compression", func(l *Limits) { l.Cylinders = 1 }},
		{"beforeStrip.gaugeError", func(l *Limits) { l.Strip.GaugeError = -1 }},
		{"beforeStrip.difference.wear", func(l *Limits) {
			l.Strip.Difference.Wear.BandOf = l.Strip.Compression.Wear.BandOf
			l.Strip.Difference.Wear = badPressure(t)
		}},
		{"beforeStrip.compression.new", func(l *Limits) { l.Strip.Compression.New = badPressure(t) }},
		{"blockFace.lines", func(l *Limits) { l.Face.HeightAt = make([]string, 65) }},
		{"blockFace.lines[0].direction", func(l *Limits) { l.Face.Lines = []LimitsLine{{"x", NoDirection}} }},
		{"blockFace.local[0].over", func(l *Limits) { l.Face.Local = []LimitsLocal{{}} }},
		{"blockFace.local[0].limit.wear", func(l *Limits) { l.Face.Local = []LimitsLocal{{1, inspection.Limit{Wear: printed(t, "max -1 mm")}}} }},
		{"blockFace.overall.wear", func(l *Limits) { l.Face.Overall.Wear = printed(t, "max -1 mm") }},
		{"blockFace.heightError", func(l *Limits) { l.Face.HeightError = -1 }},
		{"blockFace.grid", func(l *Limits) { l.Face.Grid = &LimitsGrid{} }},
		{"blockFace.grid", func(l *Limits) { l.Face.Grid = smallGrid(); l.Face.Grid.Rows, l.Face.Grid.Columns = 64, 64 }},
		{"blockFace.grid.stepLengthwise", func(l *Limits) { l.Face.Grid = smallGrid(); l.Face.Grid.StepAcross = 0 }},
		{"blockFace.grid.error", func(l *Limits) { l.Face.Grid = smallGrid(); l.Face.Grid.Error = -1 }},
		{"blockFace.grid.flatness.wear", func(l *Limits) { l.Face.Grid = smallGrid(); l.Face.Grid.Flatness.Wear = printed(t, "max -1 mm") }},
		{"blockFace.local", func(l *Limits) { l.Face.Grid = smallGrid(); l.Face.Local = []LimitsLocal{{Over: 1}} }},
		{"head.face.heightError", func(l *Limits) { l.Head.Face.HeightError = -1 }},
		{"head.camTunnel.wear", func(l *Limits) { l.Head.CamTunnel.Wear = printed(t, "max -1 mm") }},
		{"mainTunnel.mains", func(l *Limits) { l.Tunnel.Mains = 0 }},
		{"mainTunnel.error", func(l *Limits) { l.Tunnel.Error = -1 }},
		{"mainTunnel.size.new", func(l *Limits) { l.Tunnel.Size.New = printed(t, "max -1 mm") }},
		{"mainTunnel.line.straight.wear", func(l *Limits) { l.Tunnel.Line.Straight.Wear = printed(t, "max -1 mm") }},
		{"mainTunnel.line.error", func(l *Limits) { l.Tunnel.Line.Error = -1 }},
		{"mainTunnel.lineHone.leastCut", func(l *Limits) { l.Tunnel.Hone.LeastCut = -1 }},
		{"bores.levels", func(l *Limits) { l.Bores.Levels = nil }},
		{"bores.levels", func(l *Limits) { l.Bores.Angles = append(l.Bores.Angles, AcrossCrank) }},
		{"bores.wear.wear", func(l *Limits) { l.Bores.Wear.Wear = printed(t, "max 11 m") }},
		{"bores.torquePlate", func(l *Limits) { l.Bores.TorquePlate = 9 }},
		{"bores.gauge", func(l *Limits) { l.Bores.Gauge.Setting.Reading = 1 }},
		{"bores.taperPer", func(l *Limits) { l.Bores.TaperRule = TaperPerLength }},
		{"bores.ridgeCounted", func(l *Limits) { l.Bores.Ridge.Wear = printed(t, "max 1 mm") }},
		{"bores.surface", func(l *Limits) { l.Bores.Surface = 9 }},
		{"bores.plan", func(l *Limits) { l.Bores.Kits, l.Bores.Plan.Cut = nil, -1 }},
		{"bores.kits", func(l *Limits) { l.Bores.Kits = make([]PistonKit, 65) }},
		{"boreFinish.error", func(l *Limits) { l.Finish.Error = -1 }},
		{"liners.places", func(l *Limits) { l.Liners = &LimitsLiners{Places: make([]string, 65)} }},
		{"liners.protrusion.wear", func(l *Limits) { l.Liners = &LimitsLiners{Protrusion: inspection.Limit{Wear: printed(t, "max -1 m")}} }},
		{"liners.step.wear", func(l *Limits) { l.Liners = &LimitsLiners{Step: inspection.Limit{Wear: printed(t, "max -1 mm")}} }},
		{"liners.stepFrom", func(l *Limits) { l.Liners = &LimitsLiners{StepFrom: 9} }},
		{"liners.shims", func(l *Limits) { l.Liners = &LimitsLiners{MostShims: 9} }},
		{"liners.error", func(l *Limits) { l.Liners = &LimitsLiners{Error: -1} }},
	} {
		t.Run(c.path, func(t *testing.T) {
			l := demoLimits(t)
			c.change(&l)
			err := l.Validate()
			var at *inspection.PathError
			require.ErrorAs(t, err, &at, "%v", err)
			require.Equal(t, c.path, at.Path, err)
			// Whatever they are used for, they are refused.
			require.Equal(t, Readings{Schema: 1}, l.Blank())
			_, inspected := Inspect(&l, &Readings{Schema: 1})
			require.True(t, errors.As(inspected, &at))
		})
	}
}
