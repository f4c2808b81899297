package form_test

import (
	"encoding/binary"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// numbers reads float64s from bytes: whole ones of two bytes, or where raw any
// bit pattern of eight.
func numbers(data []byte, raw bool) (out []float64) {
	if raw {
		for ; len(data) >= 8 && len(out) < 90; data = data[8:] {
			out = append(out, math.Float64frombits(binary.LittleEndian.Uint64(data)))
		}
		return out
	}
	for ; len(data) >= 2 && len(out) < 90; data = data[2:] {
		out = append(out, float64(int16(binary.LittleEndian.Uint16(data))))
	}
	return out
}

// number reports whether all are finite.
func number(t *testing.T, v ...float64) {
	t.Helper()
	for _, v := range v {
		require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%v", v)
	}
}

func FuzzCircle(f *testing.F) {
	f.Add([]byte("\x01\x00\x02\x00\x05\x00\x01\x00\x09\x00\x07\x00\x00\x00\x08\x00"), false)
	f.Add([]byte("\x00\x01\x00\x00\x00\x00\x00\x01\x00\xff\x00\x00\x00\x00\x00\xff"), false)
	f.Add(make([]byte, 64), true)
	f.Fuzz(func(t *testing.T, data []byte, raw bool) {
		v := numbers(data, raw)
		points := make([]form.Point, len(v)/2)
		size := 0.0
		for i := range points {
			points[i] = form.Point{X: v[2*i], Y: v[2*i+1]}
			size = max(size, math.Abs(v[2*i]), math.Abs(v[2*i+1]))
		}
		fits := map[form.CircleKind]form.Roundness{}
		for _, kind := range kinds {
			r, err := form.Circle(kind, points)
			if err != nil {
				var e *form.Error
				require.ErrorAs(t, err, &e)
				require.NotEmpty(t, err.Error())
				continue
			}
			fits[kind] = r
			number(t, r.Centre.X, r.Centre.Y, r.Radius, r.Inner, r.Outer, r.RONq(), r.RONt())
			require.LessOrEqual(t, r.Inner, r.Outer)
			require.LessOrEqual(t, r.RONp(form.Shaft), r.RONt()+1e-9*r.Radius)
			_, _ = r.Lengths(units.InMicrometres)
			if raw {
				continue // scales that leave nothing to compare
			}
			// A centre far away leaves distances good to its own rounding.
			tiny := 1e-9 * (size + r.Outer)
			if kind == form.MZCI {
				require.LessOrEqual(t, r.RONt(), fits[form.LSCI].RONt()+tiny)
			}
			if kind == form.MCCI {
				for _, k := range r.Contacts() {
					p := points[k.Index]
					require.InDelta(t, r.Outer, math.Hypot(p.X-r.Centre.X, p.Y-r.Centre.Y), tiny)
				}
			}
		}
		z, ok := fits[form.MZCI]
		if i, both := fits[form.MICI]; ok && both && z.Global && !raw {
			require.LessOrEqual(t, z.RONt(), i.RONt()+1e-9*size)
		}
	})
}

func FuzzLine(f *testing.F) {
	f.Add([]byte("\x01\x00\x02\x00\x05\x00\x01\x00\x09\x00\x07\x00\x09\x00\x08\x00"), false)
	f.Add(make([]byte, 64), true)
	f.Fuzz(func(t *testing.T, data []byte, raw bool) {
		v := numbers(data, raw)
		points := make([]form.Point, len(v)/2)
		for i := range points {
			points[i] = form.Point{X: v[2*i], Y: v[2*i+1]}
		}
		l, err := form.LeastSquaresLine(points)
		z, zerr := form.MinimumZoneLines(points)
		e, eerr := form.EndPointLine(points)
		require.Equal(t, err, zerr)
		require.Equal(t, err, eerr)
		if err != nil || raw {
			return
		}
		number(t, l.STRt(), z.STRt(), e.STRt(), z.Slope, z.STRq())
		tiny := 1e-12 * max(lineScale(points, l), lineScale(points, z), lineScale(points, e))
		require.LessOrEqual(t, z.STRt(), l.STRt()+tiny)
		require.LessOrEqual(t, z.STRt(), e.STRt()+tiny)
		require.LessOrEqual(t, l.STRq(), z.STRq()+tiny)
		proveLine(t, points, z)
	})
}

func FuzzPlane(f *testing.F) {
	f.Add([]byte("\x01\x00\x02\x00\x05\x00\x01\x00\x09\x00\x07\x00\x09\x00\x08\x00\x01\x00\x00\x00\x07\x00\x03\x00"), false)
	f.Add(make([]byte, 96), true)
	f.Fuzz(func(t *testing.T, data []byte, raw bool) {
		v := numbers(data, raw)
		points := make([]form.Point3, len(v)/3)
		for i := range points {
			points[i] = form.Point3{X: v[3*i], Y: v[3*i+1], Z: v[3*i+2]}
		}
		_, _ = form.Cylinder(form.MZCY, points)
		_, _ = form.Plane(form.ThreePoints, points)
		l, err := form.LeastSquaresPlane(points)
		z, zerr := form.MinimumZonePlanes(points)
		if raw {
			return
		}
		require.Equal(t, err, zerr)
		if err != nil {
			return
		}
		number(t, l.FLTt(), z.FLTt(), z.SlopeX, z.SlopeY, z.FLTq())
		tiny := 1e-11 * planeScale(points, l)
		require.LessOrEqual(t, z.FLTt(), l.FLTt()+tiny)
		require.LessOrEqual(t, l.FLTq(), z.FLTq()+tiny)
		provePlane(t, points, z)
	})
}

func FuzzHarmonics(f *testing.F) {
	f.Add([]byte("\x01\x00\x02\x00\x05\x00\x01\x00\x09\x00"), int64(90), int64(0))
	f.Fuzz(func(t *testing.T, data []byte, included, indicator int64) {
		radii := numbers(data, false)
		s, err := form.Harmonics(radii)
		if err != nil {
			return
		}
		for i, r := range s.Radii(len(radii)) {
			require.InDelta(t, radii[i], r, 1e-8)
		}
		mean, squares := s.Mean(), 0.0
		for _, r := range radii {
			squares += (r - mean) * (r - mean) / float64(len(radii))
		}
		require.InDelta(t, math.Sqrt(squares), s.RootMeanSquare(), 1e-8)
		v := form.VBlock{Included: units.Angle(included), Indicator: units.Angle(indicator)}
		swing, err := v.Swing(s, 7)
		if err == nil {
			number(t, swing)
		}
	})
}
