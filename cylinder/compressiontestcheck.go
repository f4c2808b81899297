package cylinder

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const mostCylinders = 64

// check refuses what can't be, and gives the wet readings by cylinder and the
// cylinders without a dry one.
func (t CompressionTest) check() (wet map[int]tolerance.Interval[units.Pressure], missing []int, err error) {
	if err := stripCylinders(t.Cylinders); err != nil {
		return nil, nil, err
	}
	if err := t.Conditions.check(); err != nil {
		return nil, nil, err
	}
	for _, p := range [...]struct {
		name    string
		percent int
		most    int
	}{{"least share of the highest", t.Limits.LowPercent, 100}, {"wet rise that counts", t.Limits.RisePercent, 1000}} {
		if p.percent < 0 || p.percent > p.most {
			return nil, nil, linerError(p.name, fmt.Sprint(p.percent, " %"), fmt.Sprintf("from 0 to %d %%", p.most))
		}
	}
	dry, err := stripReadings("dry", t.Dry, t.Cylinders)
	if err != nil {
		return nil, nil, err
	}
	if len(dry) < 2 {
		return nil, nil, linerError("dry readings", fmt.Sprint(len(dry)), "at least 2: one cylinder has nothing to be compared with")
	}
	if wet, err = stripReadings("wet", t.Wet, t.Cylinders); err != nil {
		return nil, nil, err
	}
	for _, w := range t.Wet {
		if dry[w.Cylinder].IsZero() {
			return nil, nil, linerError("wet reading of cylinder "+fmt.Sprint(w.Cylinder), w.Pressure.String(), "paired: the cylinder has no dry one")
		}
	}
	if err := stripPairs(t.Neighbours, t.Cylinders); err != nil {
		return nil, nil, err
	}
	return wet, stripMissing(dry, t.Cylinders), nil
}

func stripCylinders(n int) error {
	if n < 2 || n > mostCylinders {
		return linerError("cylinders", fmt.Sprint(n), fmt.Sprintf("from 2 to %d: one has nothing to be compared with", mostCylinders))
	}
	return nil
}

func stripPairs(pairs [][2]int, n int) error {
	for _, p := range pairs {
		if p[0] < 1 || p[0] > n || p[1] < 1 || p[1] > n || p[0] == p[1] {
			return linerError("neighbours", fmt.Sprintf("%d and %d", p[0], p[1]), fmt.Sprintf("two cylinders from 1 to %d", n))
		}
	}
	return nil
}

func stripReadings(kind string, list []CylinderPressure, n int) (map[int]tolerance.Interval[units.Pressure], error) {
	by := make(map[int]tolerance.Interval[units.Pressure], len(list))
	for _, c := range list {
		field := fmt.Sprintf("%s reading of cylinder %d", kind, c.Cylinder)
		if c.Cylinder < 1 || c.Cylinder > n {
			return nil, linerError("cylinder of a "+kind+" reading", fmt.Sprint(c.Cylinder), fmt.Sprintf("from 1 to %d", n))
		}
		if _, twice := by[c.Cylinder]; twice {
			return nil, linerError(field, c.Pressure.String(), "given once")
		}
		if err := stripPressure(field, c.Pressure); err != nil {
			return nil, err
		}
		by[c.Cylinder] = c.Pressure
	}
	return by, nil
}

// stripPressure refuses what no gauge shows.
func stripPressure(field string, p tolerance.Interval[units.Pressure]) error {
	if !p.InRange() {
		return linerError(field, p.String(), "within the range of a pressure")
	}
	if lo, end := p.Lower(); end == tolerance.Absent || lo < 0 {
		return linerError(field, p.String(), "0 or more above the atmosphere")
	}
	return nil
}

func stripMissing(have map[int]tolerance.Interval[units.Pressure], n int) (missing []int) {
	for i := 1; i <= n; i++ {
		if have[i].IsZero() {
			missing = append(missing, i)
		}
	}
	return missing
}

// stripNeighbours are the pairs given, or those of one row.
func stripNeighbours(pairs [][2]int, n int) [][2]int {
	if pairs != nil {
		return pairs
	}
	for i := 1; i < n; i++ {
		pairs = append(pairs, [2]int{i, i + 1})
	}
	return pairs
}
