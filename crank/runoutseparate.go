package crank

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// A RunOutTurn is one journal, nose or flange turned once under a dial that
// stands still.
type RunOutTurn struct {
	Where    string       // "main 3"
	Position units.Length // along the shaft, from any place
	// Readings are the dial's, above zero where the surface comes toward it,
	// in the order of the places round the journal, the mark first.
	Readings []units.Length
	// Angles are those of the places from the mark, on the shaft; empty where
	// they are equally spaced.
	Angles []units.Angle
	// Back is the dial back at the first place, where it was read. What it is
	// off by widens every reading.
	Back     units.Length
	BackRead bool // false: Back was not read
}

// A RunOutShape is what the readings of one turn hold.
type RunOutShape struct {
	Where string `json:"where"` // "main 3"
	// Total is the run-out as a manual means it, the total indicator reading.
	Total tolerance.Bracket `json:"total"`
	// Off is the eccentricity: the centre's place seen from the axis that it
	// turned about.
	Off RunOutVector `json:"off"`
	// Own is the swing of the readings that is left without the eccentricity:
	// the journal's own shape, and the dial's errors.
	Own units.Length `json:"own"`
	// Ovality is the difference of the long and the short diameter of the oval
	// in the readings; 0 where OvalityTold is false.
	Ovality     units.Length `json:"ovality"`
	OvalityTold bool         `json:"ovalityTold"` // not below five readings
	// Lobes is the order of the largest lobing of three lobes and more in the
	// readings; 0 where they tell none.
	Lobes  int          `json:"lobes"`
	Lobing units.Length `json:"lobing"` // its swing
	// Hidden are the numbers of lobes, up to 15, that these readings take for
	// eccentricity, half of them or more: with n at equal angles, those one less
	// and one more than a multiple of n. Four readings take three for a bend.
	Hidden []int `json:"hidden,omitempty"`

	spectrum form.Spectrum // in picometres
	reading  units.Length  // the error of each
}

const (
	leastReadings = 3
	mostReadings  = 1000
)

// Separate takes the readings of a turn apart, each of them good to ± e. The
// eccentricity is their first harmonic: by the discrete Fourier transform where
// the places are equally spaced, else by least squares with an oval and three
// lobes beside it as far as the readings go. Its error is the greatest that
// errors of e in the readings can make of it.
//
// It fails with an [InputError] below 3 or above 1000 readings, where there are
// not as many angles as readings, where angles repeat or don't go round, and
// where a reading is out of range.
func (t RunOutTurn) Separate(e units.Length) (RunOutShape, error) {
	if err := t.check(e); err != nil {
		return RunOutShape{}, err
	}
	s := RunOutShape{Where: t.Where, reading: e}
	if t.BackRead {
		s.reading += t.Back.Sub(t.Readings[0]).Abs()
	}
	total := RunOut(t.Readings[0], t.Readings[1:]...)
	s.Total, _ = tolerance.NewInterval(max(total-2*s.reading, 0), tolerance.Closed, total+2*s.reading, tolerance.Closed) // in order
	radii := make([]float64, len(t.Readings))
	for i, r := range t.Readings {
		radii[i] = float64(r)
	}
	angles, even := t.places()
	rows, err := s.separate(radii, angles, even)
	if err != nil {
		return RunOutShape{}, &InputError{t.Where + ", angles", fmt.Sprint(len(angles), " places"), "spread round the whole turn, so that a bend shows"}
	}
	first := s.spectrum.Eccentricity()
	s.Off = RunOutVector{
		Cosine: units.Length(math.Round(first.Cos)),
		Sine:   units.Length(math.Round(first.Sin)),
		Error:  units.Length(math.Ceil(farthestCorner(rows)*float64(s.reading))) + units.Picometre,
	}
	own := make([]float64, len(radii))
	for i := range radii {
		own[i] = radii[i] - first.At(angles[i].Radians())
	}
	s.Own = swing(own)
	s.Hidden = hidden(rows, angles)
	s.tell(len(radii))
	return s, nil
}

// separate fits the harmonics, and gives what each reading weighs in the first.
func (s *RunOutShape) separate(radii []float64, angles []units.Angle, even bool) (rows [][2]float64, err error) {
	n := len(radii)
	rows = make([][2]float64, n)
	if even {
		for i := range rows {
			sin, cos := equalPlace(i, n)
			rows[i] = [2]float64{2 / float64(n) * cos, 2 / float64(n) * sin}
		}
		s.spectrum, err = form.Harmonics(radii)
		return rows, err
	}
	for highest := min((n-1)/2, 3); highest > 0; highest-- {
		if s.spectrum, err = form.HarmonicsAt(angles, radii, highest); err != nil {
			continue
		}
		one := make([]float64, n)
		for i := range rows {
			one[i] = 1
			unit, err := form.HarmonicsAt(angles, one, highest)
			if err != nil {
				return nil, err
			}
			rows[i] = [2]float64{unit.Eccentricity().Cos, unit.Eccentricity().Sin}
			one[i] = 0
		}
		return rows, nil
	}
	return nil, err
}

// tell fills in what the harmonics say of the shape.
func (s *RunOutShape) tell(n int) {
	s.OvalityTold = len(s.spectrum.Harmonics) > 2 && n > 4
	s.Ovality, s.Lobes, s.Lobing = 0, 0, 0
	if s.OvalityTold {
		s.Ovality = units.Length(math.Round(s.spectrum.Ovality().OutOfRound()))
	}
	if top := min(len(s.spectrum.Harmonics)-1, (n-1)/2); top > 2 {
		l := s.spectrum.Largest(3, top)
		s.Lobes, s.Lobing = l.Order, units.Length(math.Round(l.RONt()))
	}
}

// hidden are the numbers of lobes of which half or more passes for eccentricity:
// what the readings weigh of the lobes' two waves.
func hidden(rows [][2]float64, angles []units.Angle) (lobes []int) {
	for k := 2; k <= 15; k++ {
		var c, s [2]float64
		for i, row := range rows {
			sin, cos := math.Sincos(float64(k) * angles[i].Radians())
			c[0], c[1] = c[0]+row[0]*cos, c[1]+row[1]*cos
			s[0], s[1] = s[0]+row[0]*sin, s[1]+row[1]*sin
		}
		// Each wave gives 1 where all of it passes.
		if math.Hypot(math.Hypot(c[0], c[1]), math.Hypot(s[0], s[1])) > math.Sqrt2/2 {
			lobes = append(lobes, k)
		}
	}
	return lobes
}

// swing is the greatest less the least, to the nearest picometre.
func swing(values []float64) units.Length {
	lo, hi := values[0], values[0]
	for _, v := range values {
		lo, hi = min(lo, v), max(hi, v)
	}
	return units.Length(math.Round(hi - lo))
}

// farthestCorner is the greatest length of Σ ±row over all choices of signs: how
// far errors of 1 in the readings can move the eccentricity. The sums fill a
// polygon, and at each of its corners the signs are those of the rows' parts
// along some direction; trying the normal of every row, with the rows parallel
// to it either way, finds them all.
func farthestCorner(rows [][2]float64) float64 {
	const parallel = 1e-12
	best := 0.0
	for _, r := range rows {
		var sum, with [2]float64
		for _, q := range rows {
			across, along := q[1]*r[0]-q[0]*r[1], q[0]*r[0]+q[1]*r[1]
			into, sign := &sum, across
			if math.Abs(across) <= parallel*math.Hypot(q[0], q[1])*math.Hypot(r[0], r[1]) {
				into, sign = &with, along
			}
			into[0] += math.Copysign(1, sign) * q[0]
			into[1] += math.Copysign(1, sign) * q[1]
		}
		best = max(best, math.Hypot(sum[0]+with[0], sum[1]+with[1]), math.Hypot(sum[0]-with[0], sum[1]-with[1]))
	}
	return best
}

// places are the angles of the readings, and whether they are equally spaced
// from the mark on.
func (t RunOutTurn) places() (angles []units.Angle, even bool) {
	const turn = 360 * units.Degree
	n := int64(len(t.Readings))
	angles = make([]units.Angle, n)
	even = true
	for i := range angles {
		equal := units.Angle(turn).Scale(int64(i), n)
		if len(t.Angles) == 0 {
			angles[i] = equal
			continue
		}
		angles[i] = wrapped(t.Angles[i])
		even = even && angles[i] == equal
	}
	return angles, even
}

// wrapped is the same direction from 0° to below 360°.
func wrapped(a units.Angle) units.Angle {
	const turn = 360 * units.Degree
	return (a%turn + turn) % turn
}

func (t RunOutTurn) check(e units.Length) error {
	n := len(t.Readings)
	switch {
	case n < leastReadings || n > mostReadings:
		return &InputError{t.Where + ", dial readings", fmt.Sprint(n), fmt.Sprintf("from %d to %d round the journal", leastReadings, mostReadings)}
	case len(t.Angles) != 0 && len(t.Angles) != n:
		return &InputError{t.Where + ", angles", fmt.Sprint(len(t.Angles)), fmt.Sprint("one for each of ", n, " readings")}
	case e < 0 || e > farthest:
		return &InputError{"error of a dial reading", e.String(), "0 mm or more, and at most 10 m"}
	case t.Position.Abs() > farthest || !t.Position.InRange():
		return &InputError{t.Where + ", position", t.Position.String(), "at most 10 m either way"}
	case t.BackRead && (!t.Back.InRange() || t.Back.Abs() > farthest):
		return &InputError{t.Where + ", dial back at the first place", t.Back.String(), "at most 10 m either way"}
	}
	for i, r := range t.Readings {
		if !r.InRange() || r.Abs() > farthest {
			return &InputError{fmt.Sprint(t.Where, ", dial reading ", i+1), r.String(), "at most 10 m either way"}
		}
	}
	seen := make(map[units.Angle]int, len(t.Angles))
	for i, a := range t.Angles {
		if !a.InRange() {
			return &InputError{fmt.Sprint(t.Where, ", angle ", i+1), a.String(), "a direction"}
		}
		if first, twice := seen[wrapped(a)]; twice {
			return &InputError{fmt.Sprint(t.Where, ", angle ", i+1), a.String(), fmt.Sprint("another place than reading ", first+1, "; give a reading back at the first place by itself")}
		}
		seen[wrapped(a)] = i
	}
	return nil
}
