package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// Inspect judges all that was measured of a cylinder block and its head: what
// looks like a slip, findings in the order of the bench, what becomes of each
// part, what is still to be measured, what to order, what the bores and faces
// will be after the work, and the cautions that apply. A half-filled document
// is the normal case; of an empty one, [Limits.Blank], what comes is the list of
// all readings, in the order of measuring.
//
// Undecided is not a pass: such a part is to be measured again, and the
// decision says with what. The engine maker's manual governs.
//
// It fails, with an [inspection.PathError], where limits or readings can't be,
// and where a cap or a liner stands in another one's place. For many engines of
// one kind use [Limits.Prepare].
func Inspect(l *Limits, r *Readings) (inspection.Report, error) { return l.Prepare().Inspect(r) }

// Inspect is [Inspect] by limits that are ready.
func (in *Inspector) Inspect(r *Readings) (inspection.Report, error) {
	x := inspecting{in: in, r: r}
	err := x.all()
	if err != nil {
		return inspection.Report{}, err
	}
	return x.report, nil
}

// Outcome is Inspect with what the other parts of the engine hang on: what each
// bore is and will be, the oversize, the skims, the rise of the crank, and the
// reports of the tests before the strip.
func (in *Inspector) Outcome(r *Readings) (inspection.Report, Outcome, error) {
	var out Outcome
	x := inspecting{in: in, r: r, out: &out}
	if err := x.all(); err != nil {
		return inspection.Report{}, Outcome{}, err
	}
	return x.report, out, nil
}

// inspecting is one inspection on its way.
type inspecting struct {
	in        *Inspector
	r         *Readings
	out       *Outcome // nil where it isn't asked for
	report    inspection.Report
	lengths   []tolerance.Finding // memory for findings
	scratch   [mostPlaces]tolerance.Bracket
	at        [mostCylinders + 1]int
	stripped  bool // the engine is in pieces
	condemned bool // the block is replaced
	cut       bool // something is bored, honed or skimmed
	open      bool // the block itself isn't passed yet: buy nothing
	rebored   bool // all bores get a new surface
}

// all goes through the parts in the order of the bench.
func (x *inspecting) all() error {
	if x.in.err != nil {
		return x.in.err
	}
	if err := x.r.Validate(); err != nil {
		return err
	}
	if err := x.fits(); err != nil {
		return err
	}
	x.lengths = make([]tolerance.Finding, 0, x.in.lengths)
	x.report.Findings = make([]inspection.Finding, 0, x.in.lengths+2*len(x.in.where))
	x.report.Decisions = make([]inspection.Decision, 0, 2*len(x.in.where)+2*len(x.in.banks)+8)
	x.report.Slips = append(x.report.Slips, x.in.slips...)
	x.stripped = x.isStripped()
	for _, part := range [...]func(*inspecting) error{
		(*inspecting).strip, (*inspecting).block, (*inspecting).blockFaces, (*inspecting).mainTunnel,
		(*inspecting).allBores, (*inspecting).liners, (*inspecting).finish, (*inspecting).heads,
	} {
		if err := part(x); err != nil {
			return err
		}
	}
	x.cautions()
	return nil
}

// fits refuses readings for which the limits have no place.
func (x *inspecting) fits() error {
	l := &x.in.limits
	for i := range x.r.Cylinders {
		c := &x.r.Cylinders[i]
		if c.Cylinder > l.Cylinders {
			return badAt(x.in.pathOf(i)+".cylinder", "cylinder", strconv.Itoa(c.Cylinder), "from 1 to "+strconv.Itoa(l.Cylinders)+", as the limits have")
		}
		x.at[c.Cylinder] = i + 1
		if err := x.fitsCylinder(c); err != nil {
			return inspection.At(x.in.pathOf(i), err)
		}
	}
	if l.Tunnel != nil || len(x.r.Mains) > 0 {
		if err := x.fitsTunnel(); err != nil {
			return err
		}
	}
	for i := range x.r.Faces {
		f := &x.r.Faces[i]
		if err := x.in.faces.fits(&f.ReadingsFace, f.Bank, len(x.in.banks)); err != nil {
			return inspection.At(inspection.Index("blockFaces", i), err)
		}
	}
	for i := range x.r.Heads {
		h := &x.r.Heads[i]
		err := x.in.heads.fits(&h.ReadingsFace, h.Bank, len(x.in.banks))
		if err == nil && h.CamBow.Taken && l.Head.CamTunnel == nil {
			err = notAsked("camBow")
		}
		if err != nil {
			return inspection.At(inspection.Index("heads", i), err)
		}
	}
	return nil
}

// pathOf is the path of the i-th cylinder in the list.
func (in *Inspector) pathOf(i int) string {
	if i < len(in.paths) {
		return in.paths[i]
	}
	return inspection.Index("cylinders", i)
}

// notAsked is the error of a reading that the limits don't ask for: it would
// be left unjudged.
func notAsked(path string) error {
	return badAt(path, "reading", "of "+path, "asked for by the limits, which leave it out")
}

// fitsCylinder refuses readings of a cylinder that the limits don't ask for.
func (x *inspecting) fitsCylinder(c *ReadingsCylinder) error {
	l := &x.in.limits
	strip, liners := l.Strip, l.Liners
	switch {
	case (c.Compression.Dry.Taken || c.Compression.Wet.Taken) && (strip == nil || !strip.compression()):
		return notAsked("compression")
	case c.Compression.Wet.Taken && !c.Compression.Dry.Taken:
		return badAt("compression.wet", "wet reading", c.Compression.Wet.String(), "paired: the cylinder has no dry one")
	case (c.Leakage.Supply.Taken || c.Leakage.Held.Taken) && (strip == nil || !strip.leakage()):
		return notAsked("leakage")
	case c.Leakage.Neighbour < 0 || c.Leakage.Neighbour > l.Cylinders || c.Leakage.Neighbour == c.Cylinder:
		return badAt("leakage.neighbour", "neighbour", strconv.Itoa(c.Leakage.Neighbour), "another cylinder")
	case l.Bores == nil && (len(c.Levels) > 0 || c.Unworn.Taken || c.Ridge.Taken || c.Finished.Taken || len(c.Walls) > 0 || len(c.Sonic) > 0):
		return notAsked("levels")
	case liners == nil && (len(c.Liner.Protrusion) > 0 || c.Liner.Shim.Taken || c.Liner.Mark != ""):
		return notAsked("liner")
	case l.Finish == nil && c.CrossHatch.Taken:
		return notAsked("crossHatch")
	}
	if b := l.Bores; b != nil {
		if len(c.Levels) > len(b.Levels) {
			return badAt("levels", "levels", strconv.Itoa(len(c.Levels)), strconv.Itoa(len(b.Levels))+" at most, as the limits have")
		}
		for i := range c.Levels {
			if n := len(c.Levels[i].Angled); n > len(b.Angles) {
				return badAt(inspection.Index("levels", i)+".angled", "further directions", strconv.Itoa(n), strconv.Itoa(len(b.Angles))+" at most, as the limits have")
			}
		}
		if c.Ridge.Taken && b.Ridge.IsZero() {
			return notAsked("ridge")
		}
	}
	if liners != nil {
		if n := max(1, len(liners.Places)); len(c.Liner.Protrusion) > n {
			return badAt("liner.protrusion", "places", strconv.Itoa(len(c.Liner.Protrusion)), strconv.Itoa(n)+" at most, as the limits have")
		}
		return inspection.At("liner.mark", inspection.Matched("liner", x.in.where[c.Cylinder-1], c.Liner.Mark, strconv.Itoa(c.Cylinder)))
	}
	return nil
}

// isStripped reports whether anything was read that can't be read before the
// engine is stripped.
func (x *inspecting) isStripped() bool {
	for i := range x.r.Cylinders {
		for k := range x.r.Cylinders[i].Levels {
			if l := &x.r.Cylinders[i].Levels[k]; l.Along.Taken || l.Across.Taken {
				return true
			}
		}
	}
	for i := range x.r.Mains {
		for _, row := range x.r.Mains[i].Sizes {
			for _, s := range row {
				if s.Taken {
					return true
				}
			}
		}
	}
	for i := range x.r.Faces {
		for k := range x.r.Faces[i].Lines {
			if l := &x.r.Faces[i].Lines[k]; l.Gap.Taken || l.Front.Taken {
				return true
			}
		}
	}
	return false
}

// cylinder is what was read of a cylinder and where it stands in the list, or
// would stand.
func (x *inspecting) cylinder(number int) (c *ReadingsCylinder, at int) {
	if at = x.at[number]; at > 0 {
		return &x.r.Cylinders[at-1], at - 1
	}
	at = len(x.r.Cylinders)
	for n := range number {
		if n > 0 && x.at[n] == 0 {
			at++
		}
	}
	return &x.in.nothing, at
}
