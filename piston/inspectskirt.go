package piston

import (
	"errors"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// skirtOf judges a piston's skirt and its lands, and lists what is missing.
func (x *inspecting) skirtOf(i int) error {
	in, p := x.in, &x.pistons[i]
	names, paths := &in.names[i], &in.paths[p.here]
	x.tests(&p.piston, &in.limits.Care, &p.doc.Condition, paths.piston, names.piston)
	if in.limits.Skirt != nil {
		s := &x.skirt
		*s = SkirtSurvey{Where: names.piston, MeasuringHeight: in.limits.Skirt.MeasuringHeight}
		x.missingSkirt(i)
		if err := x.survey(i, s); err != nil {
			return err
		}
	}
	for k := range in.rings {
		m := &in.rings[k].land
		if !m.asked() {
			continue
		}
		ring := x.doc(i, k)
		if !ring.Land.Taken {
			x.miss(&p.piston, paths.rings[k].land, m.name, names.rings[k], "outside micrometer or calliper", m.printed)
			continue
		}
		p.piston.taken++
		land := valueOf(ring.Land, in.limits.Rings[k].Error)
		if err := x.length(&p.piston, m, names.rings[k], paths.rings[k].land, land, land); err != nil {
			return err
		}
	}
	return nil
}

// missingSkirt lists what of a skirt is still to be measured.
func (x *inspecting) missingSkirt(i int) {
	in, p := x.in, &x.pistons[i]
	l, names, paths := in.limits.Skirt, &in.names[i], &in.paths[p.here]
	for k := range l.Heights {
		at := ReadingsSkirt{}
		if k < len(p.doc.Skirt) {
			at = p.doc.Skirt[k]
		}
		if p.piston.took(at.Across.Taken); !at.Across.Taken {
			x.miss(&p.piston, paths.skirt[k], "skirt", names.heights[k]+", across the thrust faces", in.skirtWith, in.skirtPrinted[k])
		}
		p.piston.took(at.Along.Taken)
		if m := &in.skirt[SkirtMeasureOvality]; k == in.measuring && m.asked() && !at.Along.Taken {
			x.miss(&p.piston, paths.along[k], "skirt", names.heights[k]+", along the gudgeon pin", in.skirtWith, m.name+": "+m.printed)
		}
	}
	m := &in.skirt[SkirtMeasurePulled]
	if !m.asked() {
		return
	}
	for k := range l.pulls() {
		if k < len(p.doc.Pulls) && len(p.doc.Pulls[k]) > 0 {
			p.piston.taken++
			continue
		}
		where := names.piston
		if k < len(l.PullAt) {
			where += ", " + l.PullAt[k]
		}
		x.miss(&p.piston, inspection.Index(paths.pulls, k), m.name, where, "feeler strip and spring scale", m.printed)
	}
}

// survey works out a skirt from the readings that are there.
func (x *inspecting) survey(i int, s *SkirtSurvey) error {
	in, p := x.in, &x.pistons[i]
	l, paths := in.limits.Skirt, &in.paths[p.here]
	x.stations, x.brackets = x.stations[:0], x.brackets[:0]
	read := false
	for k, height := range l.Heights {
		st := SkirtStation{Height: height}
		if k < len(l.New) {
			st.New = l.New[k].Interval()
		}
		if k < len(p.doc.Skirt) {
			at := &p.doc.Skirt[k]
			if x.good(&at.Across) {
				st.Across, read = valueOf(at.Across, l.Error), true
			}
			if x.good(&at.Along) {
				st.Along, read = valueOf(at.Along, l.Error), true
			}
		}
		x.stations = append(x.stations, st)
	}
	p.skirt = x.stations[in.measuring].Across
	for k := range p.bore.Skirt {
		if p.bore.Skirt[k].Taken {
			x.brackets = append(x.brackets, p.bore.Skirt[k].Value)
		}
	}
	bores := len(x.brackets)
	if bores > 0 {
		p.bores[0], p.bores[1] = tolerance.Extremes(x.brackets...)
	}
	for k, trials := range p.doc.Pulls {
		if len(trials) == 0 {
			continue
		}
		told, err := l.PullRule.Read(trials...)
		if err != nil {
			return inspection.At(inspection.Index(paths.pulls, k), err)
		}
		if !told.Told {
			p.piston.stands("a pull of the strip tells nothing", "pull a strip of another thickness at "+inspection.Index(paths.pulls, k))
			continue
		}
		x.brackets, read = append(x.brackets, told.Clearance), true
	}
	if !read {
		return nil
	}
	s.Stations, s.Bores, s.Pulled = x.stations, x.brackets[:bores:bores], x.brackets[bores:]
	specs := in.skirtLimits.specs()
	var err error
	if x.skirts, err = s.judge(x.skirts[:0], &specs, i); err != nil {
		return x.unlike(&p.piston, paths.piston+".skirt", in.names[i].piston, err)
	}
	for k := range x.skirts {
		if err := x.skirtResult(i, s, &x.skirts[k]); err != nil {
			return err
		}
	}
	return nil
}

// unlike enters, as a slip, readings that can't be of one part.
func (x *inspecting) unlike(t *tally, path, where string, err error) error {
	var bad *InputError
	if !errors.As(err, &bad) {
		return inspection.At(path, err)
	}
	x.doubtful(t, inspection.Slip{Path: path, What: where, Text: strings.TrimPrefix(bad.Error(), "piston: ")})
	return nil
}

// skirtResult enters one measure of a skirt.
func (x *inspecting) skirtResult(i int, s *SkirtSurvey, r *SkirtResult) error {
	in, p := x.in, &x.pistons[i]
	m := &in.skirt[r.Measure]
	if !r.Known {
		switch {
		case r.Measure == SkirtMeasureClearance && !p.skirt.IsZero():
			p.piston.stands("the bore of "+in.names[i].cylinder+" isn't known", s.missing(r.Measure))
		case p.piston.missing == 0 && p.piston.suspect == "":
			p.piston.stands(m.name+" can't be told", s.missing(r.Measure))
		}
		return nil
	}
	where, path := in.names[i].piston, in.paths[p.here].pulls
	if r.Station >= 0 {
		where, path = in.names[i].heights[r.Station], in.paths[p.here].skirt[r.Station]
	}
	f, err := x.judge(&p.piston, m, where, path, r.Least, r.Greatest)
	if f == nil {
		return err
	}
	switch {
	case r.Measure != SkirtMeasurePulled:
		settleMore(f)
	case len(f.Unsettled) > 0 && f.Settle != "":
		f.Settle += ": pull a strip nearer to it, or measure bore and skirt"
	}
	if r.Measure == SkirtMeasureClearance {
		p.fits[0] = x.last() + 1
	}
	if r.Fit() == tolerance.InterferenceFit {
		p.piston.stands("the piston doesn't go in its bore: "+f.String(), "look whether piston and bore belong together")
		return nil
	}
	if r.Measure == SkirtMeasureClearance && f.Standing >= tolerance.OutsideNewBand {
		return x.looseSkirt(p, f)
	}
	p.piston.note(x.last(), f.Standing, f.Settle)
	return nil
}

// looseSkirt tells whether a clearance that fails is the piston's or the bore's
// doing: by what a new piston of the same size would have.
func (x *inspecting) looseSkirt(p *pistonState, f *tolerance.Finding) error {
	if x.in.newSkirt.IsZero() {
		p.piston.stands(f.String(), "look up what a new skirt measures, which tells whether piston or bore is worn")
		return nil
	}
	least, greatest := SkirtClearance(p.bores[0], x.in.newSkirt), SkirtClearance(p.bores[1], x.in.newSkirt)
	switch s := f.Spec.StandAll(least, greatest); {
	case passes(s):
		if f.Standing == tolerance.PastWearLimit {
			p.renew = append(p.renew, f.String()+"; a new piston would have "+rangeOf(least, greatest)+" in that bore")
			return nil
		}
		p.piston.stands(f.String(), "look up the wear limit in the engine maker's manual: none is given; a new piston would have "+rangeOf(least, greatest))
	case s == tolerance.CantTell:
		p.piston.stands(f.String(), "measure a new piston: it may have "+rangeOf(least, greatest)+" in that bore")
	default:
		p.piston.stands(f.String()+"; a new piston would have "+rangeOf(least, greatest)+": the bore is worn", "decide on the bore first: a piston for its oversize follows from that")
	}
	return nil
}

// rangeOf is from the least to the greatest, exactly.
func rangeOf(least, greatest tolerance.Bracket) string {
	if least == greatest {
		return least.String()
	}
	return hullOf(least, greatest).String()
}
