package valvetrain

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
)

func stemAll(s ...string) (all []tolerance.Bracket) {
	for _, x := range s {
		all = append(all, stemAt(x))
	}
	return all
}

// camSurveyed is an invented camshaft: lobe 2 has lost 0.10 mm of lift.
func camSurveyed() CamSurvey {
	lobe := func(where string, heights ...string) CamLobe {
		return CamLobe{Where: where, Heights: stemAll(heights...), Bases: stemAll("36.00 ±0.005 mm"),
			NewHeight: stemAt("44.60 mm"), NewBase: stemAt("36.00 mm"),
			HeightLimits: stemWorn("min 44.45 mm"), LiftLimits: stemWorn("min 8.4 mm"), LossLimits: stemWorn("max 0.15 mm"), TaperLimits: stemWorn("max 0.08 mm")}
	}
	journal := func(where, runOut string) CamJournal {
		j := CamJournal{Where: where, Journals: stemAll("28.96 ±0.002 mm", "28.955 ±0.002 mm"), Bearings: stemAll("29.01 ±0.003 mm"),
			JournalLimits: stemWorn("min 28.94 mm"), RoundLimits: stemWorn("max 0.02 mm"), BearingLimits: stemWorn("max 29.05 mm"),
			ClearanceLimits: stemWorn("max 0.10 mm"), RunOutLimits: stemWorn("max 0.05 mm")}
		if runOut != "" {
			j.RunOut = stemAt(runOut)
		}
		return j
	}
	return CamSurvey{Where: "inlet camshaft", EndFloat: stemAt("0.12 ±0.01 mm"), EndFloatLimits: stemWorn("max 0.20 mm"),
		Lobes:    []CamLobe{lobe("inlet 1", "44.58 ±0.005 mm", "44.59 ±0.005 mm"), lobe("inlet 2", "44.50 ±0.005 mm", "44.54 ±0.005 mm")},
		Journals: []CamJournal{journal("journal 1", ""), journal("journal 2", "0.03 ±0.002 mm"), journal("journal 3", "")}}
}

func TestCamSurvey(t *testing.T) {
	r, err := camSurveyed().Inspect()
	require.NoError(t, err)
	require.Equal(t, 1, r.LowLobe)
	lobe := r.Lobes[1]
	require.Equal(t, stemAt("[8.49 mm, 8.51 mm]"), lobe.Lift.Least)
	require.Equal(t, stemAt("[0.09 mm, 0.11 mm]"), lobe.Loss.Greatest)
	require.Equal(t, stemAt("[0.095 mm, 0.105 mm]"), lobe.Wear)
	require.Equal(t, stemAt("[-0.005 mm, 0.005 mm]"), lobe.BaseWear)
	require.Equal(t, stemAt("[0.03 mm, 0.05 mm]"), lobe.Taper.Greatest)
	require.Equal(t, tolerance.Usable, lobe.Lift.Standing)
	j := r.Journals[1]
	require.Equal(t, stemAt("[0.014 mm, 0.016 mm]"), j.Bend)
	require.Equal(t, stemAt("[0.001 mm, 0.009 mm]"), j.OutOfRound.Greatest)
	require.Equal(t, stemAt("[0.045 mm, 0.055 mm]"), j.Clearance.Least)
	require.Equal(t, stemAt("[0.05 mm, 0.06 mm]"), j.Clearance.Greatest)
	require.Equal(t, tolerance.Usable, r.EndFloat.Standing)
	require.Empty(t, r.Notes)
	require.Contains(t, r.Next, "none by these limits")
}

// Every remedy is named, in the order in which they are done, and what can't
// tell says what would settle it.
func TestCamSurveyNext(t *testing.T) {
	for _, c := range []struct {
		spoil func(*CamSurvey)
		next  string
	}{
		{func(s *CamSurvey) { s.Lobes[1].LossLimits = stemWorn("max 0.05 mm") }, "renew or regrind the camshaft, for inlet 2"},
		{func(s *CamSurvey) { s.Lobes[0].HeightLimits = stemWorn("min 44.6 mm") }, "for inlet 1"},
		{func(s *CamSurvey) { s.Journals[1].RunOut = stemAt("0.06 mm") }, "straighten or renew"},
		{func(s *CamSurvey) { s.Journals[2].JournalLimits = stemWorn("min 28.97 mm") }, "regrind the camshaft, for journal 3"},
		{func(s *CamSurvey) { s.Journals[0].ClearanceLimits = stemWorn("max 0.03 mm") }, "renew the bearing"},
		{func(s *CamSurvey) { s.EndFloatLimits = stemWorn("max 0.1 mm") }, "thrust plate"},
		{func(s *CamSurvey) { s.EndFloatLimits = stemWorn("max 0.12 mm") }, "end float of the camshaft, inlet camshaft: "},
		{func(s *CamSurvey) { s.Lobes[1].LossLimits = stemWorn("max 0.10 mm") }, "lift lost by wear, inlet 2: "},
	} {
		s := camSurveyed()
		c.spoil(&s)
		r, err := s.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
}

func TestCamSurveyNotes(t *testing.T) {
	s := camSurveyed()
	s.Lobes[0].NewBase, s.Lobes[0].Heights = tolerance.Bracket{}, s.Lobes[0].Heights[:1]
	s.Journals[0].Journals, s.Journals[0].Bearings = s.Journals[0].Journals[:1], nil
	s.Journals[1].RunOut, s.EndFloat = tolerance.Bracket{}, tolerance.Bracket{}
	r, err := s.Inspect()
	require.NoError(t, err)
	require.Len(t, r.Notes, 6)
	require.Zero(t, r.Lobes[0].Taper)
	require.Zero(t, r.Lobes[0].Loss)
	require.NotZero(t, r.Lobes[0].Wear)
	require.Zero(t, r.Journals[0].Clearance)
	// Bases at each place count with the height beside them.
	s.Lobes[1].Bases = stemAll("35.98 mm", "36.02 mm")
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("[8.515 mm, 8.525 mm]"), r.Lobes[1].Lift.Least)
	// Without lobes none is low.
	s.Lobes = nil
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, -1, r.LowLobe)
}

func TestCamSurveyRefuses(t *testing.T) {
	clash := tolerance.Spec{New: tolerance.MustParseBand("max 0.1 mm"), Wear: tolerance.MustParseBand("max 0.05 mm")}
	for _, c := range []struct {
		spoil func(*CamSurvey)
		says  string
	}{
		{func(s *CamSurvey) { *s = CamSurvey{} }, "camshaft without readings"},
		{func(s *CamSurvey) { s.Lobes[0].Heights = nil }, "lobe height, inlet 1"},
		{func(s *CamSurvey) { s.Lobes[0].Bases = nil }, "base circle, inlet 1"},
		{func(s *CamSurvey) { s.Lobes[0].Bases = stemAll("36 mm", "36 mm", "36 mm") }, "base circle, inlet 1 3 readings"},
		{func(s *CamSurvey) { s.Lobes[0].Bases = stemAll("45 mm") }, "below the height"},
		{func(s *CamSurvey) { s.Lobes[0].Heights[0] = stemAt("[44 mm, ∞)") }, "with a least and a greatest"},
		{func(s *CamSurvey) { s.Lobes[0].NewHeight = stemAt("-1 mm") }, "new lobe height"},
		{func(s *CamSurvey) { s.Lobes[0].NewBase = stemAt("45 mm") }, "new base circle"},
		{func(s *CamSurvey) { s.Lobes[0].HeightLimits = clash }, "limits of the lobe height"},
		{func(s *CamSurvey) { s.Lobes[0].LiftLimits = clash }, "limits of the lobe lift"},
		{func(s *CamSurvey) { s.Lobes[0].LossLimits = clash }, "limits of the lift lost"},
		{func(s *CamSurvey) { s.Lobes[0].TaperLimits = clash }, "limits of the taper"},
		{func(s *CamSurvey) { s.Journals[0].Journals = nil }, "camshaft journal"},
		{func(s *CamSurvey) { s.Journals[0].Journals, s.Journals[0].Bearings = nil, nil }, "camshaft journal, journal 1"},
		{func(s *CamSurvey) { s.Journals[0].Bearings = nil; s.Journals[0].JournalLimits = clash }, "limits of the camshaft journal"},
		{func(s *CamSurvey) { s.Journals[0].Bearings = stemAll("-1 mm") }, "camshaft bearing"},
		{func(s *CamSurvey) { s.Journals[0].Bearings = stemAll("28 mm") }, "below its camshaft bearing"},
		{func(s *CamSurvey) { s.Journals[0].ClearanceLimits = clash }, "limits of the camshaft bearing clearance"},
		{func(s *CamSurvey) { s.Journals[0].RoundLimits = clash }, "limits of the out-of-round"},
		{func(s *CamSurvey) { s.Journals[0].RunOut = stemAt("-0.1 mm") }, "run-out, journal 1"},
		{func(s *CamSurvey) { s.Journals[1].RunOutLimits = clash }, "limits of the run-out"},
		{func(s *CamSurvey) { s.EndFloat = stemAt("-0.1 mm") }, "end float"},
		{func(s *CamSurvey) { s.EndFloatLimits = clash }, "limits of the end float"},
	} {
		s := camSurveyed()
		c.spoil(&s)
		_, err := s.Inspect()
		require.ErrorIs(t, err, ErrInput, c.says)
		require.ErrorContains(t, err, c.says)
	}
}

// Limits that manuals print, on them and just past them.
func TestCamPublished(t *testing.T) {
	vectors.Load(t, "published/valvetrain_camshaft.txt").Each(t, func(t *testing.T, c vectors.Case) {
		var spec tolerance.Spec
		if c.Has("new") {
			spec.New = tolerance.MustParseBand(c.Text("new"))
		}
		if c.Has("wear") {
			spec.Wear = tolerance.MustParseBand(c.Text("wear"))
		}
		read := stemAt(c.Text("reading"))
		journal := CamJournal{Where: "2", Journals: stemAll("2 in")}
		s := CamSurvey{Journals: []CamJournal{journal}}
		pick := func(r CamReport) tolerance.Finding { return r.Journals[0].RunOut }
		switch c.Choice("measure", "runout", "clearance", "height") {
		case "runout":
			s.Journals[0].RunOut, s.Journals[0].RunOutLimits = read, spec
		case "clearance":
			s.Journals[0].Bearings, s.Journals[0].ClearanceLimits = []tolerance.Bracket{CamBearingFor(stemAt("2 in"), read)}, spec
			pick = func(r CamReport) tolerance.Finding { return r.Journals[0].Clearance }
		case "height":
			s.Lobes = []CamLobe{{Where: "1", Heights: []tolerance.Bracket{read}, Bases: stemAll("30 mm"), HeightLimits: spec}}
			pick = func(r CamReport) tolerance.Finding { return r.Lobes[0].Height }
		}
		r, err := s.Inspect()
		require.NoError(t, err)
		require.Equal(t, tolerance.Standing(c.Int("standing")), pick(r).Standing)
	})
}

func camPivot() RockerPivot {
	return RockerPivot{Where: "rocker 3", Shafts: stemAll("15.97 ±0.002 mm", "15.98 ±0.002 mm"), Bushes: stemAll("16.02 ±0.003 mm"), Unworn: stemAt("15.985 ±0.002 mm"),
		ShaftLimits: stemWorn("min 15.95 mm"), BushLimits: stemWorn("max 16.05 mm"), ClearanceLimits: stemWorn("max 0.08 mm"), WearLimits: stemWorn("max 0.03 mm")}
}

func camFollower() FollowerFit {
	return FollowerFit{Where: "exhaust 2", Followers: stemAll("25.97 ±0.002 mm"), Bores: stemAll("26.01 ±0.002 mm", "26.02 ±0.002 mm"),
		FollowerLimits: stemWorn("min 25.95 mm"), BoreLimits: stemWorn("max 26.03 mm"), ClearanceLimits: stemWorn("max 0.07 mm")}
}

func TestRockerPivot(t *testing.T) {
	r, err := camPivot().Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("[0.035 mm, 0.045 mm]"), r.Clearance.Least)
	require.Equal(t, stemAt("[0.045 mm, 0.055 mm]"), r.Clearance.Greatest)
	require.Equal(t, stemAt("[0.011 mm, 0.019 mm]"), r.Wear.Greatest)
	require.Contains(t, r.Next, "none")
	for _, c := range []struct {
		spoil func(*RockerPivot)
		next  string
	}{
		{func(p *RockerPivot) { p.WearLimits = stemWorn("max 0.01 mm") }, "renew or turn the shaft"},
		{func(p *RockerPivot) { p.BushLimits = stemWorn("max 16.01 mm") }, "renew the bush"},
		{func(p *RockerPivot) { p.ClearanceLimits = stemWorn("max 0.05 mm") }, "rocker-to-shaft clearance, rocker 3: "},
	} {
		p := camPivot()
		c.spoil(&p)
		r, err := p.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	p := camPivot()
	p.Unworn = tolerance.Bracket{}
	r, err = p.Inspect()
	require.NoError(t, err)
	require.Zero(t, r.Wear)
	require.Len(t, r.Notes, 1)
	clash := tolerance.Spec{New: tolerance.MustParseBand("max 0.1 mm"), Wear: tolerance.MustParseBand("max 0.05 mm")}
	for _, spoil := range []func(*RockerPivot){
		func(p *RockerPivot) { p.Shafts = nil }, func(p *RockerPivot) { p.Bushes = nil },
		func(p *RockerPivot) { p.Unworn = stemAt("-1 mm") }, func(p *RockerPivot) { p.WearLimits = clash },
		func(p *RockerPivot) { p.Shafts = stemAll("17 mm") },
	} {
		p := camPivot()
		spoil(&p)
		_, err := p.Inspect()
		require.ErrorIs(t, err, ErrInput)
	}
}

func TestFollowerFit(t *testing.T) {
	r, err := camFollower().Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("[0.046 mm, 0.054 mm]"), r.Clearance.Greatest)
	require.Contains(t, r.Next, "none")
	for _, c := range []struct {
		spoil func(*FollowerFit)
		next  string
	}{
		{func(f *FollowerFit) { f.FollowerLimits = stemWorn("min 25.98 mm") }, "renew the follower"},
		{func(f *FollowerFit) { f.BoreLimits = stemWorn("max 26.01 mm") }, "oversize follower"},
		{func(f *FollowerFit) { f.ClearanceLimits = stemWorn("max 0.05 mm") }, "follower-to-bore clearance"},
	} {
		f := camFollower()
		c.spoil(&f)
		r, err := f.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	f := camFollower()
	f.Bores = nil
	_, err = f.Inspect()
	require.ErrorIs(t, err, ErrInput)
}
