package cylinder

import (
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// An Inspector is limits made ready, for as many engines of one kind as there
// are: names, paths and the proofreading of the limits are worked out once.
// It may be used by several goroutines at once. [Limits.Prepare] makes one.
type Inspector struct {
	limits   Limits
	err      error             // of limits that can't be
	slips    []inspection.Slip // in the limits
	lengths  int               // how many findings there will be
	where    []string          // "cylinder 3", by its number less 1
	paths    []string          // "cylinders[2]"
	dryPaths []string          // "cylinders[2].compression.dry"
	leaks    []string          // "cylinders[2].leakage"
	banks    [][]int           // the cylinders of each

	compression, difference, leakage measured[units.Pressure]
	faces, heads                     *facesReady
	tunnel                           *tunnelReady
	bores                            *boresReady
	protrusion, step, variation      measured[units.Length]
	crossHatch                       measured[units.Angle]

	nothing ReadingsCylinder // stands for a cylinder that isn't in the document
}

// Prepare makes limits ready to inspect many engines by. The limits must not be
// changed after it. Where they can't be, each inspection says so.
func (l *Limits) Prepare() *Inspector {
	in := &Inspector{limits: *l}
	if in.err = l.Validate(); in.err != nil {
		return in
	}
	for i := range l.Cylinders {
		in.where = append(in.where, "cylinder "+strconv.Itoa(i+1))
		in.paths = append(in.paths, inspection.Index("cylinders", i))
		in.dryPaths = append(in.dryPaths, in.paths[i]+".compression.dry")
		in.leaks = append(in.leaks, in.paths[i]+".leakage")
	}
	in.banks = l.banks()
	if s := l.Strip; s != nil {
		in.compression = ready(in, s.Compression, "beforeStrip.compression", "compression")
		in.difference = ready(in, s.Difference, "beforeStrip.difference", "difference of compression")
		in.leakage.name = "leakage, as a drop of pressure"
	}
	if l.Face != nil {
		in.faces = in.face(l.Face, inspection.StepBlockFace, "block face", "blockFaces", "blockFace")
	}
	if l.Tunnel != nil {
		in.readyTunnel()
	}
	if l.Bores != nil {
		in.readyBores()
	}
	if s := l.Liners; s != nil {
		in.protrusion = ready(in, s.Protrusion, "liners.protrusion", "liner protrusion")
		in.step = ready(in, s.Step, "liners.step", "step between liners")
		in.variation = ready(in, s.Variation, "liners.variation", "variation of protrusion")
		in.lengths += 3 * l.Cylinders
	}
	if s := l.Finish; s != nil {
		in.crossHatch = ready(in, s.CrossHatch, "boreFinish.crossHatch", "cross-hatch ("+s.Counted.String()+")")
	}
	if h := l.Head; h != nil {
		in.heads = in.face(&h.Face, inspection.StepHead, "head", "heads", "head.face")
		if h.CamTunnel != nil {
			in.heads.bow = ready(in, *h.CamTunnel, "head.camTunnel", "bow of the cam tunnel")
			in.lengths += len(in.banks)
		}
	}
	return in
}

// Slips are what looks like a slip in the limits themselves.
func (in *Inspector) Slips() []inspection.Slip { return slices.Clone(in.slips) }

// banks are the cylinders of each bank; of one row where none are given.
func (l *Limits) banks() [][]int {
	if l.Banks != nil {
		return l.Banks
	}
	row := make([]int, l.Cylinders)
	for i := range row {
		row[i] = i + 1
	}
	return [][]int{row}
}

// with is the instrument given, or the usual one.
func with(given, usual string) string {
	if given == "" {
		return usual
	}
	return given
}
