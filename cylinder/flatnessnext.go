package cylinder

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
)

// A CamTunnel is the tunnel of a camshaft that runs in the head. A head that
// has bowed has bowed its tunnel with it: a skim makes the face flat and leaves
// the tunnel bent, and the camshaft binds or breaks. So the tunnel comes first.
type CamTunnel struct {
	InHead bool              // whether the camshaft runs in the head
	Bow    tolerance.Bracket // of the tunnel's line, caps torqued; zero where it wasn't checked
	Limits tolerance.Spec    // of the bow
}

// A FaceDoubt is something that a straight-edge left open.
type FaceDoubt uint8

// The doubts. The zero value is none.
const (
	NoFaceDoubt FaceDoubt = iota
	NoDiagonals           // a twist doesn't show
	OneDiagonal           // a twist can't be told from a hump or a hollow
	NoLengthwise
	NoAcross
	SeatNotSaid // whether it rested or rocked
)

var faceDoubtNames = []string{
	"",
	"no diagonal was measured: a twist shows nothing along edges and ends, so the face may be twisted all the same",
	"one diagonal alone was measured: measure the other, since a twist is a hollow along one and a hump along the other",
	"no line was measured lengthwise",
	"no line was measured across",
	"it isn't said for every line whether the straight-edge rested at both ends or rocked: a hump of H shows H to 4H where it rocks",
}

// String is the doubt in words.
func (d FaceDoubt) String() string { return wordOf(faceDoubtNames, d) }

// MarshalText writes what String gives.
func (d FaceDoubt) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

func (f Face) doubts() (doubts []FaceDoubt) {
	var count [Diagonal + 1]int
	said := true
	for _, l := range f.Lines {
		if len(l.whole()) > 0 {
			count[l.Direction]++
			said = said && l.Seat != SeatUnsaid
		}
	}
	for _, d := range []struct {
		doubt FaceDoubt
		is    bool
	}{
		{NoDiagonals, count[Diagonal] == 0}, {OneDiagonal, count[Diagonal] == 1},
		{NoLengthwise, count[Lengthwise] == 0}, {NoAcross, count[Across] == 0}, {SeatNotSaid, !said},
	} {
		if d.is {
			doubts = append(doubts, d.doubt)
		}
	}
	return doubts
}

// A FaceRemedy is what follows for a face. The zero value is to measure again.
type FaceRemedy uint8

// The remedies.
const (
	MeasureFaceAgain FaceRemedy = iota // the readings do not settle it
	KeepFace                           // within its limits
	CheckCamTunnel                     // before anything else: the camshaft runs in this head
	StraightenFirst                    // the cam tunnel is past its limits: a skim would leave it so
	SkimFace                           // past its limits: plan the skim
	AskFaceManual                      // no limit is given that decides
)

var faceRemedyNames = []string{
	"measure again",
	"keep the face as it is",
	"check the cam tunnel first",
	"straighten the head or line-bore the cam tunnel, or renew the head, before the face is skimmed",
	"skim the face",
	"see the engine maker's manual",
}

// String is the remedy in words.
func (r FaceRemedy) String() string { return wordOf(faceRemedyNames, r) }

// MarshalText writes what String gives.
func (r FaceRemedy) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// decide says what follows: the cam tunnel before the face.
func (f Face) decide(r *FaceReport) error {
	if !f.Tunnel.InHead {
		if !f.Tunnel.Bow.IsZero() {
			return &InputError{"bow of the cam tunnel", f.Tunnel.Bow.String(), "left out where the camshaft doesn't run in the head"}
		}
		r.Remedy, r.Next = r.face()
		return nil
	}
	if f.Tunnel.Bow.IsZero() {
		r.Remedy, r.Next = CheckCamTunnel, "check the cam tunnel first: the camshaft runs in this head, and a skim makes its face flat but leaves a bowed tunnel bowed; with the caps torqued lay a straight-edge and blades along the tunnel, or turn a true shaft in it"
		return nil
	}
	if lo, _ := f.Tunnel.Bow.Lower(); lo < 0 {
		return &InputError{"bow of the cam tunnel", f.Tunnel.Bow.String(), "0 mm or more"}
	}
	var err error
	if r.Tunnel, err = tolerance.Assess("bow of the cam tunnel", f.Where, f.Tunnel.Limits, f.Tunnel.Bow); err != nil {
		return err
	}
	switch s := r.Tunnel.Standing; {
	case s == tolerance.CantTell:
		r.Remedy, r.Next = CheckCamTunnel, "the cam tunnel first, which can't be told yet and is not a pass: "+r.Tunnel.Settle
	case s >= tolerance.OutsideNewBand:
		r.Remedy, r.Next = StraightenFirst, "the cam tunnel first, "+r.Tunnel.Explain()+": straighten the head or line-bore the tunnel by the maker's process, or renew the head; a skim now would leave the tunnel bowed. Then measure the face again"
	default:
		r.Remedy, r.Next = r.face()
	}
	return nil
}

// face says what follows for the face alone.
func (r *FaceReport) face() (FaceRemedy, string) {
	var open []string
	limited := false
	add := func(f tolerance.Finding) {
		limited = limited || !f.Spec.IsZero()
		if f.Standing == tolerance.CantTell && f.Settle != "" {
			open = append(open, f.Where+": "+f.Settle)
		}
	}
	for _, l := range r.Lines {
		add(l.Finding)
	}
	for _, l := range r.Local {
		add(l.Finding)
	}
	switch {
	case !limited:
		return AskFaceManual, "no limit is given: look it up in the engine maker's manual"
	case r.Standing == tolerance.CantTell:
		return MeasureFaceAgain, "not a pass; to settle it, " + strings.Join(open, "; ")
	case r.Standing >= tolerance.OutsideNewBand:
		return SkimFace, "past what is allowed on " + lineList(r.past()) + ": skim the face if its height allows, and measure it again afterwards"
	case len(r.Doubts) > 0 && r.Doubts[0] == NoDiagonals:
		return MeasureFaceAgain, "within its limits where it was measured, which is not a pass yet: lay the straight-edge along both diagonals"
	}
	return KeepFace, "within its limits: keep the face as it is"
}

// past are the lines and local limits that are not kept.
func (r *FaceReport) past() (names []string) {
	for _, l := range r.Lines {
		if l.Finding.Standing >= tolerance.OutsideNewBand {
			names = append(names, l.Name)
		}
	}
	for _, l := range r.Local {
		if l.Finding.Standing >= tolerance.OutsideNewBand {
			names = append(names, "any "+l.Over.String())
		}
	}
	return names
}
