package cylinder

import (
	"slices"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// decideBores decides on each bore and on all together: where one has to be
// bored, all are, to one oversize.
func (x *inspecting) decideBores(bores []boreSeen) error {
	l := x.in.limits.Bores
	bored := len(l.Kits) > 0 || x.in.limits.Liners == nil && l.Surface <= PlainIron
	r := rule{used: inspection.CleanAndReUse, past: inspection.ReconditionTo}
	if !bored {
		r.past = inspection.Replace
	}
	all := make([]inspection.Decision, len(bores))
	force, untested := false, -1
	worst := inspection.MeasureAgain // of the bores that weren't tested, by size
	for i := range bores {
		b := &bores[i]
		d := x.decide(&b.tally, r)
		all[i] = b.c.Condition.Overrule(l.Care, d)
		force = force || d.Action == inspection.ReconditionTo
		if all[i].Action == inspection.MeasureAgain && d.Action > worst {
			untested, worst = i, d.Action
		}
	}
	set := setDecision("cylinder bores", all...)
	work := boringWork{kit: -1}
	if force && len(l.Kits) > 0 {
		var err error
		if work, err = x.choose(bores, all, &set); err != nil {
			return err
		}
	} else if force && set.Action == inspection.ReconditionTo {
		set.Settle = joined(set.Settle, "list the oversizes that pistons can be had in: the limits have none")
	}
	if untested >= 0 && set.Action < inspection.Replace {
		d := &all[untested]
		set.Action, set.Size, set.Because, set.Settle, set.Governs = d.Action, "", d.Because, d.Settle, d.Where
	}
	if set.Action == inspection.ReconditionTo || work.kit >= 0 && set.Action == inspection.Repair {
		follow(all, inspection.ReconditionTo, &set)
	}
	if bored && set.Action >= inspection.Replace { // they stand in one block
		follow(all, set.Action, &set)
	}
	for i := range all { // a bore that is lined anyway is bored for its liner alone
		if work.lined != nil && work.lined[i] && all[i].Action == inspection.ReconditionTo {
			all[i].Action, all[i].Size = inspection.Repair, "a liner, finished to "+work.name
		}
	}
	x.report.Decisions = append(x.report.Decisions, all...)
	if bored && len(all) > 1 {
		x.keep(set)
	}
	x.rebored = set.Action == inspection.ReconditionTo || set.Action == inspection.Repair
	x.cut = x.cut || x.rebored
	x.orderBores(all, &set, &work)
	return x.afterBores(bores, all, &work)
}

// boringWork is what boring comes to.
type boringWork struct {
	kit    int // in the choice's kits; −1 where it isn't settled
	name   string
	lined  []bool // by cylinder; nil where none is
	sure   bool   // nothing that is still to be measured may change it
	choice OversizeChoice
	jobs   []int // by cylinder, its place in the choice's bores; −1 where it isn't there
}

// choose chooses the oversize for the block and puts it into the set's decision
// and into those of the bores that ask for it.
func (x *inspecting) choose(bores []boreSeen, all []inspection.Decision, set *inspection.Decision) (boringWork, error) {
	l := x.in.limits.Bores
	w := boringWork{kit: -1, jobs: make([]int, len(bores))}
	job := l.job()
	job.Bores = make([]WornBore, 0, len(bores))
	var unknown []string
	for i := range bores {
		b := &bores[i]
		read := b.read && b.tally.suspect == ""
		if !read || b.tally.missing > 0 || len(b.tally.against) > 0 {
			unknown = append(unknown, b.tally.where)
		}
		if w.jobs[i] = -1; read && all[i].Action < inspection.Replace {
			w.jobs[i] = len(job.Bores)
			job.Bores = append(job.Bores, b.worn(l))
		}
	}
	if len(job.Bores) == 0 {
		return w, nil
	}
	job.Kits = ownPistons(job.Kits, w.jobs, len(job.Bores))
	var err error
	if w.choice, err = ChooseOversize(&job); err != nil {
		return w, x.badJob(bores, &job, w.jobs, err)
	}
	if x.out != nil {
		x.out.Oversize = &w.choice
	}
	if set.Action >= inspection.Replace {
		return w, nil
	}
	forced := &w.choice.Bores[w.choice.Forced]
	set.Governs = forced.Where
	for i, k := range w.jobs {
		if k == w.choice.Forced && all[i].Action == inspection.ReconditionTo {
			set.Because = all[i].Because
		}
	}
	set.Because += "; the least size that cleans up " + forced.Where + " is " + forced.Need.Size.Text(units.InMillimetres, 3)
	x.nameWork(&w, set)
	if len(unknown) > 0 {
		if w.sure = false; set.Size != "" {
			set.Size = "at least " + set.Size
		}
		set.Settle = joined("measure "+strings.Join(unknown, ", ")+" as the limits ask, which may ask for more", set.Settle)
	}
	for i := range all {
		if all[i].Action == inspection.ReconditionTo {
			all[i].Size = set.Size
		}
	}
	return w, nil
}

// ownPistons are the kits for some of the bores: pistons that were measured for
// each bore go with theirs, others with any.
func ownPistons(kits []PistonKit, jobs []int, bores int) []PistonKit {
	if bores == len(jobs) {
		return kits
	}
	kits = slices.Clone(kits)
	for k := range kits {
		all := kits[k].Pistons
		switch len(all) {
		case len(jobs):
			kits[k].Pistons = nil
			for i, p := range all {
				if jobs[i] >= 0 {
					kits[k].Pistons = append(kits[k].Pistons, p)
				}
			}
		case bores: // as many as bores by chance: none is for a certain one
			kits[k].Pistons = append(slices.Clone(all), all[0])
		}
	}
	return kits
}

// nameWork puts the choice into words.
func (x *inspecting) nameWork(w *boringWork, set *inspection.Decision) {
	c := &w.choice
	settle := c.Settle
	switch c.Outcome {
	case OversizeKit:
		w.kit, w.sure = c.Kit, true
		w.name = c.size(w.kit, x.in.limits.Bores.Standard)
		set.Action, set.Size = max(set.Action, inspection.ReconditionTo), w.name
	case OversizeLiner:
		o := c.option()
		if o < 0 {
			set.Action, set.Size = inspection.Replace, ""
			set.Because = joined(set.Because, "no oversize cleans up every bore, and none can be lined")
			return
		}
		w.kit, w.sure = c.Options[o].Kit, len(c.Options[o].Open) == 0
		w.name = c.size(w.kit, x.in.limits.Bores.Standard)
		w.lined = make([]bool, len(w.jobs))
		var names []string
		for _, k := range c.Options[o].Lined {
			for i, j := range w.jobs {
				if j == k {
					w.lined[i] = true
				}
			}
			names = append(names, c.Bores[k].Where)
		}
		set.Action, set.Size = inspection.Repair, "line "+strings.Join(names, ", ")+"; all to "+w.name
		set.Because = joined(set.Because, "no oversize cleans up every bore")
	default:
		names := c.Kits[max(c.Possible, 0)].Name + " may do"
		if c.Kit >= 0 {
			names += ", " + c.Kits[c.Kit].Name + " does for sure"
			w.name = c.size(c.Kit, x.in.limits.Bores.Standard)
		}
		set.Action, set.Size = inspection.MeasureAgain, ""
		set.Because = joined(set.Because, "bored it must be: "+names)
	}
	set.Settle = joined(settle, set.Settle)
}

// size is what a kit's bores are finished to, in words.
func (c *OversizeChoice) size(kit int, standard units.Length) string {
	k := &c.Kits[kit]
	size := k.Name + ": "
	if fit := &c.Bores[c.Forced].Fits[kit]; fit.Proved {
		return size + "each to its own piston and clearance, " + c.Bores[c.Forced].Where + " to " + fit.Size.Text(units.InMillimetres, 3)
	}
	return size + KitSize(standard, k.Oversize).String() + " nominal"
}

// option is the way to line what doesn't clean up: the cheapest where all are
// priced, else the one with the fewest liners; −1 where no wall is thick
// enough.
func (c *OversizeChoice) option() int {
	best := -1
	for i := range c.Options {
		o := &c.Options[i]
		if o.LinersStand != tolerance.Within {
			continue
		}
		if best >= 0 {
			b := &c.Options[best]
			if o.Total.Given && b.Total.Given {
				if o.Total.Coins >= b.Total.Coins {
					continue
				}
			} else if len(o.Lined) >= len(b.Lined) {
				continue
			}
		}
		best = i
	}
	return best
}

// badJob says at which bore a job can't be.
func (x *inspecting) badJob(bores []boreSeen, job *OversizeJob, jobs []int, err error) error {
	for i, k := range jobs {
		if k < 0 {
			continue
		}
		if _, one := LeastSize(&job.Bores[k], &job.Plan); one != nil {
			return inspection.At(x.in.paths[bores[i].index], one)
		}
	}
	return inspection.At("cylinders", err)
}

// worn is a bore for the choice. What it was last finished to is known within a
// bracket: where walls were dialled its greatest asks for the most, by diameters
// alone its least.
func (b *boreSeen) worn(l *LimitsBores) WornBore {
	finished := KitSize(l.Standard, b.c.Oversize)
	if lo, end := b.from.Lower(); end != tolerance.Absent {
		finished = lo
	}
	if hi, end := b.from.Upper(); end != tolerance.Absent && len(b.c.Walls) > 0 {
		finished = hi
	}
	w := l.wornBore(b.tally.where, finished)
	w.Walls, w.Sonic, w.Greatest = b.c.Walls, b.c.Sonic, b.report.Greatest.Size
	return w
}
