package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

const units0 units.Length = 0

var (
	inMillimetres = units.InMillimetres
	inDegrees     = units.InDegrees
)

// inspectSound tells a bracket with both ends, none below nothing.
func inspectSound(b tolerance.Bracket) bool { return inputBracket("", b, 0) == nil }

// guideBySize is what puts a guide right, where it is worn.
func (c *inspectRun) guideBySize(k *inspectKind, p *inspectPlace, v *inspectVerdict, newValve bool) {
	for _, f := range [...]*tolerance.Finding{p.bore, p.bell, p.round, p.clear, p.rock} {
		v.past(f, inspection.Replace, false, "")
	}
	if v.d.Action != inspection.Replace || p.guide.suspect != "" {
		return
	}
	worn := inspectWorst(p.bore, p.bell, p.round)
	because := v.d.Because
	whole := p.guide.missing == 0 && !p.bores[0].IsZero()
	switch {
	case !whole && inspectPast(p.rock) && !inspectPast(p.clear) && worn == nil:
		c.guideByRocking(k, p, v, newValve)
	case !whole:
		// What is known is past its limits: which way puts it right takes all of it.
		v.d.Action, v.wait = inspection.ReUse, "take "+inspectFirst(&p.guide)+": the widest place says what the reamer must clean up"
	case worn == nil && !inspectPast(p.rock) && c.newStemServes(k, p):
		p.newStem = true
		v.d = inspection.Decision{Step: v.d.Step, Part: v.d.Part, Where: v.d.Where, Action: inspection.ReUse,
			Because: "with a new valve's stem the clearance is " + p.clearAfter.String() + "; as it is, " + because}
	default:
		c.chooseGuide(k, p, v, newValve)
	}
}

// inspectPast tells a finding past its wear limit.
func inspectPast(f *tolerance.Finding) bool { return f != nil && f.Standing == tolerance.PastWearLimit }

// inspectWorst is the first finding past its wear limit.
func inspectWorst(findings ...*tolerance.Finding) *tolerance.Finding {
	for _, f := range findings {
		if inspectPast(f) {
			return f
		}
	}
	return nil
}

// newStemServes tells that a valve with a new stem alone brings the clearance
// back within its limits, whatever stem it has.
func (c *inspectRun) newStemServes(k *inspectKind, p *inspectPlace) bool {
	if k.newStem.IsZero() || p.clear == nil {
		return false
	}
	tight, loose := GuideClearance(p.bores[0], k.newStem), GuideClearance(p.bores[1], k.newStem)
	if s := p.clear.Spec.StandAll(tight, loose); s != tolerance.AsNew && s != tolerance.Usable {
		return false
	}
	p.clearAfter = inspectSpan(tight, loose)
	return true
}

// inspectSpan is from the least of one bracket to the greatest of another.
func inspectSpan(least, greatest tolerance.Bracket) tolerance.Bracket {
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	b, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	if err != nil {
		return greatest
	}
	return b
}

// wantedClearance is the band that a guide is brought back to.
func (g *LimitsGuide) wantedClearance() tolerance.Band {
	if !g.Clearance.New.IsZero() {
		return g.Clearance.New.BandOf
	}
	return g.Clearance.Wear.BandOf
}

// chooseGuide takes the way of least work that the stock allows.
func (c *inspectRun) chooseGuide(k *inspectKind, p *inspectPlace, v *inspectVerdict, newValve bool) {
	g := k.limits.Guide
	stem := inspectSpan(p.stems[0], p.stems[1])
	if (newValve || p.stems[0].IsZero()) && !k.newStem.IsZero() {
		stem = k.newStem
	}
	if len(g.Stock) == 0 || stem.IsZero() || g.wantedClearance().IsZero() {
		v.d.Settle = "the engine maker's manual says whether it is relined, reamed for a larger stem, or renewed: nothing is given of what is in stock"
		return
	}
	need := GuideNeed{Where: p.guide.where, Bores: p.bores[:], Stem: stem, Clearance: g.wantedClearance(), LeastCut: g.LeastCut, Outside: g.Outside, LeastWall: g.LeastWall}
	options := make([]GuideOption, len(g.Stock))
	for i, o := range g.Stock {
		options[i] = GuideOption(o)
	}
	choice, err := ChooseGuideRepair(need, options)
	if err != nil {
		c.fail(&p.guide, "", err)
		return
	}
	if choice.Chosen < 0 {
		v.d.Settle = choice.Next
		for _, t := range choice.Trials {
			if t.Cleans != tolerance.Below && t.Wall != tolerance.Below && t.Fits == tolerance.Undecided {
				v.d.Action, v.wait = inspection.ReUse, choice.Next
				return
			}
		}
		return
	}
	c.takeWay(k, p, v, choice.Chosen, choice.Trials[choice.Chosen].Clearance)
}

// takeWay writes a chosen way into the decision.
func (c *inspectRun) takeWay(k *inspectKind, p *inspectPlace, v *inspectVerdict, chosen int, clearance tolerance.Bracket) {
	p.way, p.clearAfter = &k.limits.Guide.Stock[chosen], clearance
	v.d.Size = p.way.Name
	switch p.way.Way {
	case OversizeStem:
		v.d.Action = inspection.ReconditionTo
	case GuideLiner:
		v.d.Action = inspection.Repair
	}
}

// guideByRocking decides on a guide of which the dial's travel alone is known,
// and the stem: with a sound stem it is the guide that is worn.
func (c *inspectRun) guideByRocking(k *inspectKind, p *inspectPlace, v *inspectVerdict, newValve bool) {
	g := k.limits.Guide
	apart := "measure the stem and the guide's bore apart, to see which of them is worn, before either is renewed"
	if p.stem == nil || p.valve.missing > 0 && p.stems[0].IsZero() || newValve || inspectBad(p.stem) || p.stem.Standing == tolerance.CantTell {
		v.d.Action, v.wait = inspection.ReUse, apart
		return
	}
	for i := range g.Stock {
		o := &g.Stock[i]
		if o.Way != NewGuide {
			continue
		}
		stem := o.Stem
		if stem.IsZero() {
			stem = inspectSpan(p.stems[0], p.stems[1])
		}
		clearance := GuideClearance(o.Finished, stem)
		if w := g.wantedClearance(); w.IsZero() || w.Judge(clearance) == tolerance.Within {
			v.d.Because = inspectJoin(v.d.Because, "its stem is sound, so the guide is worn")
			c.takeWay(k, p, v, i, clearance)
			return
		}
	}
	v.d.Because = inspectJoin(v.d.Because, "its stem is sound, so the guide is worn")
	v.d.Settle = "measure its bore: that tells whether a liner or a larger stem serves too"
}

// predictGuide is the clearance once the guide is right.
func (c *inspectRun) predictGuide(k *inspectKind, p *inspectPlace) {
	if p.clearAfter.IsZero() || p.way == nil && !p.newStem {
		return
	}
	c.predict(inspection.StepGuides, p.guide.where, &k.clear, p.clearAfter)
}

// predict is a measure as it will be, against its limits.
func (c *inspectRun) predict(step inspection.Step, where string, m *inspectMeasure[units.Length], after tolerance.Bracket) {
	f, err := tolerance.Assess(m.name, where, m.spec, after)
	if err == nil {
		c.out.Predicted = append(c.out.Predicted, inspection.Found(step, "", f))
	}
}
