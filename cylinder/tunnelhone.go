package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// HousingAfterGrinding is the vertical size of a housing after its cap's and
// its block's parting faces were ground: less by both.
func HousingAfterGrinding[N tolerance.Number[N]](size, capGround, blockGround N) N {
	return size.Sub(capGround).Sub(blockGround)
}

// LineHoneStock is what a hone then takes at crown and cap together to reach
// the finish size: finish less the ground size.
func LineHoneStock[N tolerance.Number[N]](finish, ground N) N { return finish.Sub(ground) }

// LineHoneBlockCut is what a finished housing has lost at its crown, in the
// block, from the height of the crown, the height of the new line (the new
// centre), and the finish size. Heights grow from the crank toward the head;
// a depth below the block face counts as one below zero.
//
//	    crown before ───  ─┬─ block cut
//	new crown: line + finish/2
//
// Below zero the hone doesn't reach the crown.
func LineHoneBlockCut[N tolerance.Number[N]](crown, line, finish N) N {
	return line.Add(finish.Scale(1, 2)).Sub(crown)
}

// LineHoneCapCut is what it has lost at the bottom of its cap: the stock less
// the cut at the crown.
func LineHoneCapCut[N tolerance.Number[N]](finish, ground, blockCut N) N {
	return finish.Sub(ground).Sub(blockCut)
}

// CrankRise is how far the centre of a housing moves toward the crown, and so
// the crank toward the head: the cut at the crown less half of what the size
// grew. An even cut all round leaves it where it was; one at the crown alone,
// with the size kept by grinding the cap, moves it by all of that cut.
func CrankRise[N tolerance.Number[N]](blockCut, size, finish N) N {
	return blockCut.Sub(finish.Sub(size).Scale(1, 2))
}

// CrankRiseCentred is the rise where the hone centres itself in the ground
// housing and takes as much at crown and cap: half of what was ground off the
// parting faces, whatever the finish size.
func CrankRiseCentred[N tolerance.Number[N]](ground N) N { return ground.Scale(1, 2) }

// DeckAfterCrankRise is the depth of a piston below the block face after the
// crank rose: less by the rise; below zero the piston stands above the face.
// Squish and clearance volume shrink with it, and a gear or chain to the crank
// comes as much nearer to a camshaft above.
func DeckAfterCrankRise[N tolerance.Number[N]](deck, rise N) N { return deck.Sub(rise) }

// A HonedHousing is one housing before a line hone: its crown's height and its
// vertical size, with the cap torqued and nothing ground yet.
type HonedHousing struct {
	Where string            // "main 2"
	Crown tolerance.Bracket // its height toward the head, from a plate parallel to the block face; or below zero, its depth under the face
	Size  tolerance.Bracket // vertical diameter
}

// A LineHone is a tunnel to be honed to one line, parallel to what the heights
// count from, and to one size.
type LineHone struct {
	Housings []HonedHousing // in order along the tunnel
	Finish   units.Length   // the size wanted
	LeastCut units.Length   // to be taken at crown and cap everywhere, to clean up
	Rise     tolerance.Band // how far the crank may rise; the zero Band where no limit is given
}

// A HoneCut is what the hone leaves at one housing: the bracket of each
// reading carries through.
type HoneCut struct {
	Where    string            `json:"where"`    // the housing's
	BlockCut tolerance.Bracket `json:"blockCut"` // taken at the crown
	// Grind is the least to grind off the parting faces for the cap to clean
	// up, zero where it does without.
	Grind  units.Length      `json:"grind"`
	CapCut tolerance.Bracket `json:"capCut"` // taken at the cap, after grinding
	Rise   tolerance.Bracket `json:"rise"`   // of the centre, toward the crown
}

// A LineHoneReport is the least line hone that makes a straight tunnel of one
// size.
type LineHoneReport struct {
	// Line is the height of the new centres: the lowest that cleans up every
	// crown for certain.
	Line   units.Length `json:"line"`
	Forced string       `json:"forced"` // the housing that asked for it
	Cuts   []HoneCut    `json:"cuts"`   // housing by housing
	// Rise is the greatest centre's rise, and how it lies to what is allowed.
	Rise    tolerance.Bracket `json:"rise"`
	Allowed tolerance.Verdict `json:"allowed"` // of Rise; Undecided where no limit is given
	Next    string            `json:"next"`    // what to do
}

// Assess works out the least line hone: the new line is parallel to the datum
// and as low as lets the hone take the least cut at every crown; each cap is
// ground by as much as lets it take that at the cap. A housing too wide across
// its parting line is not brought back by grinding its cap. A boring bar set to a
// line does this; a hone left to itself centres between crown and cap
// ([CrankRiseCentred]).
func (h LineHone) Assess() (LineHoneReport, error) {
	if err := h.check(); err != nil {
		return LineHoneReport{}, err
	}
	var r LineHoneReport
	half := h.Finish.Scale(1, 2)
	for i, one := range h.Housings {
		crown, _ := one.Crown.Upper()
		if line := crown.Add(h.LeastCut).Sub(half); i == 0 || line > r.Line {
			r.Line, r.Forced = line, one.Where
		}
	}
	finish, line := tolerance.Exactly(h.Finish), tolerance.Exactly(r.Line)
	for i, one := range h.Housings {
		c := HoneCut{Where: one.Where, BlockCut: LineHoneBlockCut(one.Crown, line, finish)}
		// The cap's cut is finish − size − (line + finish/2 − crown).
		capCut := LineHoneCapCut(finish, one.Size, c.BlockCut)
		least, _ := capCut.Lower()
		c.Grind = h.LeastCut.Sub(least).Max(0)
		c.CapCut = capCut.Add(tolerance.Exactly(c.Grind))
		// Written with each reading once: line − (crown − size/2).
		c.Rise = line.Sub(one.Crown).Add(one.Size.Scale(1, 2))
		if !c.CapCut.InRange() || !c.Rise.InRange() {
			return LineHoneReport{}, linerError("readings of "+one.Where, one.Crown.String(), "within the range of a length")
		}
		if i == 0 {
			r.Rise = c.Rise
		}
		r.Rise = r.Rise.Max(c.Rise)
		r.Cuts = append(r.Cuts, c)
	}
	r.Allowed = h.Rise.Judge(r.Rise)
	switch {
	case h.Rise.IsZero():
		r.Next = "no limit is given for the crank's rise: look it up; every piston rises with it, and a chain or gear drive tightens or slackens"
	case r.Allowed == tolerance.Within:
		r.Next = "check deck clearance, squish and the drive of the camshaft with the crank at its new height"
	case r.Allowed == tolerance.Undecided:
		r.Next = "the readings don't tell whether the crank rises too far: measure heights and sizes with a finer instrument"
	default:
		r.Next = "the crank would rise further than is allowed: another block, or a repair of the crowns as its maker describes"
	}
	return r, nil
}

func (h LineHone) check() error {
	switch {
	case len(h.Housings) == 0:
		return linerError("housings", "none", "at least one")
	case h.Finish <= 0 || !h.Finish.InRange():
		return linerError("finish size", h.Finish.String(), "above 0 mm")
	case h.LeastCut < 0 || h.LeastCut > h.Finish/20:
		return linerError("least cut", h.LeastCut.String(), "0 mm or more and at most a twentieth of the finish size")
	}
	for _, one := range h.Housings {
		if err := linerSize("vertical size of "+one.Where, one.Size); err != nil {
			return err
		}
		for _, x := range []struct {
			field string
			b     tolerance.Bracket
		}{{"crown of ", one.Crown}, {"vertical size of ", one.Size}} {
			_, lo := x.b.Lower()
			_, hi := x.b.Upper()
			if !x.b.InRange() || lo == tolerance.Absent || hi == tolerance.Absent {
				return linerError(x.field+one.Where, x.b.String(), "measured between two ends")
			}
		}
		// A line hone takes tenths of a millimetre, a repair a little more.
		size, _ := one.Size.Middle()
		if h.Finish < size.Scale(3, 4) || h.Finish > size.Scale(5, 4) {
			return linerError("finish size", h.Finish.String(), "near the "+one.Size.String()+" of "+clip(one.Where)+": is one of them in another unit?")
		}
		crown, _ := one.Crown.Middle()
		if first, _ := h.Housings[0].Crown.Middle(); crown.Sub(first).Abs() > h.Finish {
			return linerError("crown of "+one.Where, one.Crown.String(), "near that of "+clip(h.Housings[0].Where)+", "+h.Housings[0].Crown.String()+": heights count from one datum, depths have a minus")
		}
	}
	return nil
}
