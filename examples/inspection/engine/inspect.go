package engine

import (
	"errors"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/valvetrain"
)

// An Inspector is limits made ready for many engines. It keeps nothing of what
// it inspects, so that several may be inspected at once.
type Inspector struct {
	limits     *Limits
	cylinder   *cylinder.Inspector
	piston     *piston.Inspector
	crank      *crank.Inspector
	valvetrain *valvetrain.Inspector
	err        error // of the limits
}

// Prepare makes the limits ready. What is wrong with them every inspection
// says.
func (l *Limits) Prepare() *Inspector {
	in := &Inspector{limits: l}
	if l.Cylinder != nil {
		in.refuse("cylinder", l.Cylinder.Validate())
		in.cylinder = l.Cylinder.Prepare()
	}
	if l.Piston != nil {
		in.refuse("piston", l.Piston.Validate())
		in.piston = l.Piston.Prepare()
	}
	if l.Crank != nil {
		in.refuse("crank", l.Crank.Validate())
		in.crank = l.Crank.Prepare()
	}
	if l.Valvetrain != nil {
		in.refuse("valvetrain", l.Valvetrain.Validate())
		in.valvetrain = l.Valvetrain.Prepare()
	}
	return in
}

// refuse keeps the first error of the limits, with its path.
func (in *Inspector) refuse(part string, err error) {
	if err == nil || in.err != nil {
		return
	}
	var own *inspection.PathError
	if !errors.As(err, &own) {
		own = &inspection.PathError{Err: err}
	}
	at := strings.TrimPrefix(strings.TrimPrefix(own.Path, "limits"), ".")
	in.err = &inspection.PathError{Path: strings.TrimSuffix("limits."+part+"."+at, "."), Err: own.Err}
}

// A Result is the report with what its pictures are drawn from.
type Result struct {
	inspection.Report
	Bores []cylinder.BoreOutcome
	// Departed, Agreed and Unmeasured hold what was built to what was
	// predicted, where it was measured again.
	Departed   []inspection.Departure
	Agreed     int
	Unmeasured []inspection.Finding
}

// Inspect inspects a document by limits that are ready.
func (in *Inspector) Inspect(d *Document) (Result, error) {
	if in.err != nil {
		return Result{}, in.err
	}
	result, err := in.one("readings", &d.Readings)
	if err != nil || d.Built == nil {
		return result, err
	}
	built, err := in.one("built", d.Built)
	if err != nil {
		return Result{}, err
	}
	result.Departed, result.Agreed, result.Unmeasured = inspection.Compared(result.Predicted, built.Findings)
	result.Slips = append(result.Slips, readingSlips(built.Slips)...)
	return result, nil
}

// readingSlips are those that don't lie in the limits, which are told already.
func readingSlips(slips []inspection.Slip) (of []inspection.Slip) {
	for _, s := range slips {
		if len(s.Path) < 6 || s.Path[:6] != "limits" {
			of = append(of, s)
		}
	}
	return of
}

// one inspects one set of readings, named as the document names it.
func (in *Inspector) one(readings string, r *Readings) (Result, error) {
	var result Result
	var reports [4]inspection.Report
	at := func(part string, err error) error {
		var own *inspection.PathError
		if errors.As(err, &own) {
			return &inspection.PathError{Path: path(readings, part, own.Path), Err: own.Err}
		}
		return &inspection.PathError{Path: readings + "." + part, Err: err}
	}
	if in.cylinder != nil {
		var outcome cylinder.Outcome
		var err error
		if reports[0], outcome, err = in.cylinder.Outcome(or(r.Cylinder, cylinder.Readings{Schema: 1})); err != nil {
			return result, at("cylinder", err)
		}
		result.Bores = outcome.Bores
	}
	if in.piston != nil {
		var err error
		if reports[1], err = in.piston.Inspect(in.withBores(or(r.Piston, piston.Readings{Schema: 1}), result.Bores)); err != nil {
			return result, at("piston", err)
		}
	}
	if in.crank != nil {
		var err error
		if reports[2], err = in.crank.Inspect(or(r.Crank, crank.Readings{Schema: 1})); err != nil {
			return result, at("crank", err)
		}
	}
	if in.valvetrain != nil {
		var err error
		if reports[3], err = in.valvetrain.Inspect(or(r.Valvetrain, valvetrain.Readings{Schema: 1})); err != nil {
			return result, at("valvetrain", err)
		}
	}
	for i, part := range [...]string{"cylinder", "piston", "crank", "valvetrain"} {
		rename(&reports[i], readings, part)
	}
	result.Report = inspection.Merge(reports[:]...)
	return result, nil
}

// rename makes a part's paths those of the whole document. All new ones lie in
// one piece of memory.
func rename(r *inspection.Report, readings, part string) {
	before := readings + "." + part + "."
	room := 0
	for i := range r.Findings {
		room += len(before) + len(r.Findings[i].Path)
	}
	for i := range r.Missing {
		room += len(before) + len(r.Missing[i].Path)
	}
	for i := range r.Predicted {
		room += len(before) + len(r.Predicted[i].Path)
	}
	var b strings.Builder
	b.Grow(room)
	to := func(own string) string {
		begin := b.Len()
		if own == "" {
			return path(readings, part, own)
		}
		b.WriteString(before)
		b.WriteString(own)
		return b.String()[begin:]
	}
	for i := range r.Findings {
		r.Findings[i].Path = to(r.Findings[i].Path)
	}
	for i := range r.Missing {
		r.Missing[i].Path = to(r.Missing[i].Path)
	}
	for i := range r.Predicted {
		r.Predicted[i].Path = to(r.Predicted[i].Path)
	}
	for i := range r.Slips { // some lie in the limits
		r.Slips[i].Path = path(readings, part, r.Slips[i].Path)
	}
	for i := range r.Decisions {
		for k, slip := range r.Decisions[i].Slips {
			r.Decisions[i].Slips[k] = path(readings, part, slip)
		}
	}
}

// withBores is the pistons' readings with the bores as the block's document has
// them, now and after the work. The readings themselves are not touched.
func (in *Inspector) withBores(r *piston.Readings, bores []cylinder.BoreOutcome) *piston.Readings {
	if in.cylinder == nil || len(bores) == 0 {
		return r
	}
	with := *r
	with.Bores = make([]piston.ReadingsBore, 0, len(bores))
	for i := range bores {
		b := &bores[i]
		one := piston.ReadingsBore{Cylinder: b.Cylinder, Elsewhere: true, Undecided: b.Action == inspection.MeasureAgain}
		for k := range b.Levels {
			level := &b.Levels[k]
			if level.Least.IsZero() {
				continue
			}
			one.Skirt = append(one.Skirt, inspection.Read(level.Least), inspection.Read(level.Greatest))
			mean := in.meanBore(level)
			if !one.Top.Taken {
				one.Top = mean
			}
			one.Bottom = mean
		}
		if b.OversizeAfter != b.Oversize || b.Action == inspection.ReconditionTo {
			for _, k := range in.limits.Piston.Kits {
				if k.Oversize == b.OversizeAfter {
					one.Oversize = k.Name
				}
			}
			if !b.LeastAfter.IsZero() {
				if finish, ok := hull(b.LeastAfter, b.GreatestAfter); ok {
					one.Finish = inspection.Read(finish)
				}
			}
		}
		with.Bores = append(with.Bores, one)
	}
	return &with
}

// meanBore is the mean diameter at a level, as a ring's gap wants it.
func (in *Inspector) meanBore(level *cylinder.LevelOutcome) inspection.Reading {
	mean := level.Least.Add(level.Greatest).Scale(1, 2) // exactly, of two directions
	if b := in.limits.Cylinder.Bores; b != nil && len(b.Angles) > 0 {
		mean, _ = hull(level.Least, level.Greatest) // of more, somewhere between
	}
	return inspection.Read(mean)
}

// hull is from the lower end of one bracket to the upper end of another.
func hull(least, greatest tolerance.Bracket) (tolerance.Bracket, bool) {
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	b, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	return b, err == nil
}

// or is the readings, or none of them.
func or[R any](r *R, none R) *R {
	if r != nil {
		return r
	}
	return &none
}
