package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func (l *LimitsBores) check(cylinders int) error {
	if err := boreSize("standard bore", l.Standard); err != nil {
		return inspection.At("standard", err)
	}
	if n := len(l.Levels) * (2 + len(l.Angles)); n == 0 || n > mostStationsDoc || len(l.Levels) > mostPlaces || len(l.Angles) > mostPlaces {
		return badAt("levels", "levels and directions", strconv.Itoa(len(l.Levels))+" and "+strconv.Itoa(2+len(l.Angles)), "one level or more, 64 of each at most")
	}
	if err := lengthLimits(0, namedLimit{"size", l.Size}, namedLimit{"mean", l.Mean}, namedLimit{"outOfRound", l.OutOfRound},
		namedLimit{"ridge", l.Ridge}); err != nil {
		return err
	}
	if err := lengthLimits(-largest, namedLimit{"taper", l.Taper}, namedLimit{"wear", l.Wear}, namedLimit{"choke", l.Choke}); err != nil {
		return err
	}
	if l.TorquePlate > RecordedNo || l.CapsTorqued > RecordedNo {
		return badAt("torquePlate", "torque plate or caps", "(unknown)", "yes, no or not recorded")
	}
	if err := l.checkSurvey(); err != nil {
		return err
	}
	// Limits that contradict each other are slips, and are listed as such.
	bare := l.boreLimits()
	for m := range BoreMeasure(boreMeasures) {
		if s := bare.spec(m); s.Validate() != nil {
			*s = tolerance.Spec{}
		}
	}
	if err := bare.Validate(); err != nil {
		return inspection.At(l.ruleField(), err)
	}
	return l.checkBoring(cylinders)
}

// spec is where the limits of a measure stand.
func (l *BoreLimits) spec(m BoreMeasure) *tolerance.Spec {
	return [boreMeasures]*tolerance.Spec{
		MeasureSize: &l.Size, MeasureMean: &l.Mean, MeasureOutOfRound: &l.OutOfRound, MeasureTaper: &l.Taper,
		MeasureWear: &l.Wear, MeasureChoke: &l.Choke, MeasureRidge: &l.Ridge,
	}[m]
}

// ruleField is where a rule is wrong, once the limits themselves are right.
func (l *LimitsBores) ruleField() string {
	if l.RidgeCounted == RidgeNotStated && !l.Ridge.IsZero() && l.TaperRule < taperRules && l.TaperPer >= 0 && (l.TaperRule != TaperPerLength || l.TaperPer > 0) {
		return "ridgeCounted"
	}
	return "taperPer"
}

// boreLimits are the limits as surveys judge by them.
func (l *LimitsBores) boreLimits() BoreLimits {
	return BoreLimits{
		Size: l.Size.Spec(), Mean: l.Mean.Spec(), OutOfRound: l.OutOfRound.Spec(), Taper: l.Taper.Spec(),
		TaperRule: l.TaperRule, TaperPer: l.TaperPer, Wear: l.Wear.Spec(), Choke: l.Choke.Spec(),
		Ridge: l.Ridge.Spec(), RidgeCounted: l.RidgeCounted, TorquePlate: l.TorquePlate, CapsTorqued: l.CapsTorqued,
	}
}

// printed are the limits of a measure as printed.
func (l *LimitsBores) printed(m BoreMeasure) inspection.Limit {
	return [boreMeasures]inspection.Limit{
		MeasureSize: l.Size, MeasureMean: l.Mean, MeasureOutOfRound: l.OutOfRound, MeasureTaper: l.Taper,
		MeasureWear: l.Wear, MeasureChoke: l.Choke, MeasureRidge: l.Ridge,
	}[m]
}

// boreMeasurePaths are where the limits of the measures stand.
var boreMeasurePaths = [boreMeasures]string{
	MeasureSize: "size", MeasureMean: "mean", MeasureOutOfRound: "outOfRound", MeasureTaper: "taper",
	MeasureWear: "wear", MeasureChoke: "choke", MeasureRidge: "ridge",
}

// survey is an empty survey of one bore, as the limits ask for it.
func (l *LimitsBores) survey() BoreSurvey {
	s := BoreSurvey{Levels: l.Levels, Headings: append([]units.Angle{AlongCrank, AcrossCrank}, l.Angles...), Gauge: l.Gauge}
	s.Readings = make([]BoreReading, len(s.Levels)*len(s.Headings))
	return s
}

// checkSurvey refuses levels, directions and a gauge that make no survey.
func (l *LimitsBores) checkSurvey() error {
	s := l.survey()
	if err := s.validate(); err != nil {
		return inspection.At("levels", err)
	}
	g := l.Gauge
	g.Step, g.Range = 0, tolerance.Band{} // the reading below is not one
	if _, err := g.Reading(l.Standard-g.Setting.Standard+g.Setting.Reading, s.Block); err != nil {
		return inspection.At("gauge", err)
	}
	if err := l.Gauge.Validate(); err != nil {
		return inspection.At("gauge", err)
	}
	return nil
}

// checkBoring refuses kits and a plan that can't be, by choosing for bores that
// are as new.
func (l *LimitsBores) checkBoring(cylinders int) error {
	if l.Surface > BareAlloy {
		return badAt("surface", "bore surface", "(unknown)", "one that has a name")
	}
	if len(l.Kits) == 0 {
		return inspection.At("plan", l.Plan.check())
	}
	if len(l.Kits) > mostPlaces {
		return badAt("kits", "kits", strconv.Itoa(len(l.Kits)), "64 at most")
	}
	job := l.job()
	for range cylinders {
		job.Bores = append(job.Bores, l.wornBore("", l.Standard))
	}
	for i := range job.Bores {
		job.Bores[i].Greatest = tolerance.Exactly(l.Standard)
	}
	if _, err := ChooseOversize(&job); err != nil {
		return inspection.At("kits", err)
	}
	return nil
}

// job is an oversize job without its bores.
func (l *LimitsBores) job() OversizeJob {
	return OversizeJob{Standard: l.Standard, Kits: l.Kits, Clearance: l.Clearance, Plan: l.Plan, Liner: l.Liner, Boring: l.Boring}
}

func (l *LimitsBores) wornBore(where string, finished units.Length) WornBore {
	return WornBore{Where: where, Finished: finished, Surface: l.Surface, Process: l.Process}
}
