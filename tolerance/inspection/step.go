package inspection

import "github.com/tenthou/tenthou/internal/words"

// A Step is a place in the order of the bench, from the engine as it comes in
// to the engine as it goes out. The zero Step is not placed.
type Step uint8

// The steps, in order.
const (
	StepNone        Step = iota
	StepIdentify         // the engine, its standard sizes, its marks
	StepBeforeStrip      // compression, leakage, clearances as found
	StepBolts            // lengths and stretch
	StepBlock            // cracks, pressure test
	StepBlockFace        // flatness and height
	StepMainTunnel       // housings and their line
	StepCamTunnel        // camshaft and follower bores in the block
	StepBores            // cylinder bores
	StepLiners           // protrusion, counterbores, lower fits
	StepBoreFinish       // cross-hatch, stock left for honing
	StepPistons          // skirts, grooves, mass
	StepPins             // gudgeon pins in pistons and rods
	StepRings            // side clearance and end gap
	StepRods             // both ends, centres, bend and twist
	StepCrank            // journals, run-out
	StepShells           // walls, nip, oil clearance
	StepThrust           // end float
	StepBalance          // masses and unbalance
	StepCamshaft         // journals, lobes, end float
	StepTimingDrive      // chain, gears, backlash
	StepHead             // cracks, flatness, height, chambers
	StepGuides           // bores, rocking
	StepValves           // stems, margins, run-out
	StepSeats            // width, contact, recession
	StepSprings          // lengths, loads, squareness
	StepFollowers        // rockers, buckets, pushrods, shims
	StepOilPump          // gears, cover, relief spring
	StepFlanges          // manifolds and other faces
	StepAssembly         // clearances of the assembled parts
	StepTiming           // cam timing and valve clearance
	StepRecord           // compression ratio as built; the record sheet
)

var stepNames = []string{
	"", "identify", "before strip", "bolts", "block", "block face", "main bearing tunnel", "cam tunnel", "cylinder bores", "liners",
	"bore finish", "pistons", "gudgeon pins", "piston rings", "rods", "crankshaft", "bearing shells", "end float", "balance",
	"camshaft", "timing drive", "cylinder head", "valve guides", "valves", "valve seats", "valve springs", "followers and shims",
	"oil pump", "flanges", "assembly checks", "timing and valve clearance", "record",
}

// String is the step in words; empty where it is not placed.
func (s Step) String() string { return words.Of(stepNames, s) }

// MarshalText writes what String gives.
func (s Step) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *Step) UnmarshalText(text []byte) error { return read("step", stepNames, text, s) }

// Steps is the order of the bench.
func Steps() []Step {
	all := make([]Step, 0, len(stepNames)-1)
	for s := StepIdentify; int(s) < len(stepNames); s++ {
		all = append(all, s)
	}
	return all
}
