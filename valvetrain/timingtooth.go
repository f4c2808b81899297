package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// mostTeeth is more than any timing gear has.
const mostTeeth = 10_000

// ToothAngle is what one tooth of the crankshaft's gear or sprocket moves the
// timing by, in degrees of the crankshaft: a turn over its teeth, to the nearest
// microarcsecond. The camshaft's, with twice the teeth, moves it by as much; a
// drive through an idler of any size does too. It fails with an [InputError]
// where the teeth aren't from 1 to 10 000.
func ToothAngle(crankTeeth int) (units.Angle, error) {
	if crankTeeth < 1 || crankTeeth > mostTeeth {
		return 0, &InputError{"teeth of the crankshaft's gear", strconv.Itoa(crankTeeth), "from 1 to 10 000"}
	}
	return units.Turn.Scale(1, int64(crankTeeth)), nil
}

// TeethFor are the whole teeth of the crankshaft's gear that are nearest to an
// angle of the crankshaft, and what is left over: an error of timing that is
// nearly a tooth, with little left, was made in fitting the drive. Below zero
// the teeth are to the retarded side. It fails as [ToothAngle] does, and where
// the angle is more than a turn.
func TeethFor(off units.Angle, crankTeeth int) (teeth int, left units.Angle, err error) {
	if _, err := ToothAngle(crankTeeth); err != nil {
		return 0, 0, err
	}
	if off < -units.Turn || off > units.Turn {
		return 0, 0, &InputError{"error of timing", off.String(), "within a turn"}
	}
	// Half up in magnitude; a turn times 10 000 teeth is within range.
	n, turn := int64(off)*int64(crankTeeth), int64(units.Turn)
	whole := (2*abs64(n) + turn) / (2 * turn)
	if n < 0 {
		whole = -whole
	}
	return int(whole), off.Sub(units.Turn.Scale(whole, int64(crankTeeth))), nil
}

func abs64(n int64) int64 {
	if n < 0 {
		return -n
	}
	return n
}
