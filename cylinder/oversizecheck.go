package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// check refuses a job that can't be.
func (j *OversizeJob) check() error {
	if err := boreSize("standard bore", j.Standard); err != nil {
		return err
	}
	switch {
	case len(j.Bores) == 0 || len(j.Bores) > MostBores:
		return &InputError{"bores", strconv.Itoa(len(j.Bores)), "from 1 to 1000"}
	case len(j.Kits) == 0:
		return &InputError{"oversizes", "(none)", "at least one kit to choose from"}
	case len(j.Kits) > MostBores:
		return &InputError{"oversizes", strconv.Itoa(len(j.Kits)), "1000 at most"}
	}
	if err := j.Plan.check(); err != nil {
		return err
	}
	if l := j.Plan.LargestBore; l != 0 && (l < j.Standard || l > j.Standard+j.Standard/4) {
		return &InputError{"largest bore allowed", l.String(), "from the standard bore " + j.Standard.String() + " to a quarter more"}
	}
	for i := range j.Bores {
		b := &j.Bores[i]
		// An oversize already there is a few millimetres at most.
		if err := b.checkFinished(); err != nil {
			return err
		}
		if d := (b.Finished - j.Standard).Abs(); d > j.Standard/4 {
			return &InputError{b.field("size last finished to"), b.Finished.String(), "near the standard bore " + j.Standard.String()}
		}
	}
	for i := range j.Kits {
		if err := j.Kits[i].check(i, j.Standard); err != nil {
			return err
		}
		if len(j.Kits[i].Pistons) > 0 {
			if err := boreBracket("clearance", j.Clearance, 0); err != nil {
				return err
			}
			if _, hi := bothOf(j.Clearance); hi > j.Standard/100 {
				return &InputError{"clearance", j.Clearance.String(), "at most a hundredth of the bore: is it in the right unit?"}
			}
		}
	}
	if err := j.Liner.Price.check("liner, price"); err != nil {
		return err
	}
	if o := j.Liner.Outside; o != 0 && (o <= j.Standard || o > 2*j.Standard) {
		return &InputError{"liner, outside", o.String(), "above the standard bore " + j.Standard.String()}
	}
	return j.Boring.check("boring, price")
}

// check refuses what can't be.
func (b *WornBore) check(p *BoringPlan) error {
	if b.Surface > PlainIron && b.Process == "" {
		return &ProcessError{Where: clip(b.Where), Surface: b.Surface}
	}
	if err := p.check(); err != nil {
		return err
	}
	if err := b.checkFinished(); err != nil {
		return err
	}
	if !b.Greatest.IsZero() {
		const field = "greatest diameter" // named in full only where it is needed
		if boreBracket(field, b.Greatest, units.Picometre) != nil {
			return boreBracket(b.field(field), b.Greatest, units.Picometre)
		}
		// Three times the size is another unit, or another engine.
		if lo, hi := bothOf(b.Greatest); hi > b.Finished+b.Finished/2 || lo < b.Finished/2 {
			return &InputError{b.field("greatest diameter"), b.Greatest.String(), "near the size last finished to, " + b.Finished.String()}
		}
	}
	if p.Cut > b.Finished/20 || p.Honing > b.Finished/20 || p.LeastWall > b.Finished/2 {
		return &InputError{b.field("cut, honing stock and least wall"), p.Cut.String() + ", " + p.Honing.String() + ", " + p.LeastWall.String(),
			"at most a twentieth, a twentieth and a half of the bore: is all in its right unit?"}
	}
	for i := range b.Walls {
		w := &b.Walls[i]
		field := b.field(w.name(i))
		if err := boreBracket(field+", wear", w.Wear, -b.Finished/4); err != nil {
			return err
		}
		if _, hi := bothOf(w.Wear); hi > b.Finished/4 {
			return &InputError{field + ", wear", w.Wear.String(), "less than a quarter of the bore"}
		}
		if !w.Heading.InRange() {
			return &InputError{field + ", heading", w.Heading.String(), "within the range of an angle"}
		}
	}
	if p.Centring == StatedCentre {
		if lim := b.Finished / 4; p.Centre.X.Abs() > lim || p.Centre.Y.Abs() > lim {
			return &InputError{b.field("stated centre"), p.Centre.X.String() + ", " + p.Centre.Y.String(), "within a quarter of the bore of its axis"}
		}
	}
	return b.checkSonic()
}

func (b *WornBore) checkFinished() error {
	const field = "size last finished to"
	if boreSize(field, b.Finished) != nil {
		return boreSize(b.field(field), b.Finished)
	}
	return nil
}

func (w *BoreWall) name(i int) string {
	if w.Where == "" {
		return "wall " + strconv.Itoa(i+1)
	}
	return clip(w.Where)
}

func (b *WornBore) field(field string) string {
	if b.Where == "" {
		return field
	}
	return clip(b.Where) + ", " + field
}

func (p *BoringPlan) check() error {
	for _, x := range [...]struct {
		field string
		value units.Length
	}{{"least cut per side", p.Cut}, {"honing stock", p.Honing}, {"least wall", p.LeastWall}, {"largest bore allowed", p.LargestBore}} {
		if err := boreAllowance(x.field, x.value); err != nil {
			return err
		}
	}
	if p.Centring > StatedCentre {
		return &InputError{"centring", "(unknown)", "one of the three"}
	}
	return nil
}
