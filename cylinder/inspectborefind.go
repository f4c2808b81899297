package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// boreNotes enters what stands against a pass beside the figures.
func (x *inspecting) boreNotes(b *boreSeen, s *BoreSurvey) {
	t := &b.tally
	n := len(s.Headings)
	for _, note := range b.report.Notes {
		switch note.Kind {
		case SuspectReading:
			k := note.At.Level*n + note.At.Heading
			x.slip(t, inspection.Slip{Path: x.in.bores.places[b.index][k], What: t.where + ", " + x.in.bores.stations[k], Text: note.Detail})
		case SmallerThanFinished, FinishedOversize:
			t.stands(note.Text(s), "find out what it was last finished to")
		case WearUnknown:
			t.stands(note.Text(s), "find out what it was last finished to, or gauge it below the ring travel")
		case TorquePlateNotStated, TorquePlateDiffers, CapsNotStated, CapsDiffer:
			t.stands(note.Text(s), "gauge it as the limits ask, and write it down")
		}
	}
}

// boreFindings enters what is judged of one bore.
func (x *inspecting) boreFindings(b *boreSeen, s *BoreSurvey) error {
	t, ready := &b.tally, x.in.bores
	n := len(s.Headings)
	for m := range BoreMeasure(boreMeasures) {
		judged := &ready.measures[m]
		if !judged.asked() {
			continue
		}
		least, greatest, known := b.limits.measured(&b.report, m)
		if !known {
			if t.missing == 0 && m != MeasureWear {
				t.stands(judged.name+" isn't known from what was read", "read it as the limits ask")
			}
			continue
		}
		if b.c.Oversize != 0 && (m == MeasureSize || m == MeasureMean) {
			at := *judged
			if at.spec = moved(at.spec, b.c.Oversize); !at.other.IsZero() {
				at.other = moved(at.other, b.c.Oversize)
			}
			judged = &at
		}
		f, err := x.judge(t, judged, t.where, x.in.paths[b.index], least, greatest)
		if err != nil {
			return err
		}
		if f == nil {
			continue
		}
		if settle := s.settle(f, m); settle != "" {
			f.Settle = settle
		}
		x.report.Findings[len(x.report.Findings)-1].Path = ready.path(b, m, f, n)
		at := ""
		if linerRank(f.Standing) >= rankOpen {
			at = s.place(&b.report, m, b.limits.TaperRule)
		}
		x.note(t, f.Standing, !f.Spec.New.IsZero(), f.Settle, at)
	}
	return nil
}

// path is where the reading that decides a measure stands.
func (r *boresReady) path(b *boreSeen, m BoreMeasure, f *tolerance.Finding, n int) string {
	switch m {
	case MeasureSize, MeasureWear:
		at := b.report.Greatest.At
		if m == MeasureSize && (f.New.Least == tolerance.Below || f.Wear.Least == tolerance.Below) {
			at = b.report.Least.At
		}
		return r.places[b.index][at.Level*n+at.Heading]
	case MeasureOutOfRound:
		return r.levels[b.index][b.report.OutOfRound.At.Level]
	}
	return r.levels[b.index][0]
}
