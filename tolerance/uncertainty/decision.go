package uncertainty

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Manner says what a decision rule does with a reading too near a limit for
// its uncertainty.
type Manner uint8

// The manners of decision rules.
const (
	// PlainAcceptance goes by the reading alone (JCGM 106, 8.2). Near a
	// limit it is wrong about as often as right.
	PlainAcceptance Manner = iota
	// GuardedAcceptance accepts only what is proved to conform, and rejects
	// the rest (JCGM 106, 8.3.2): it protects whoever uses the part.
	GuardedAcceptance
	// GuardedRejection rejects only what is proved not to conform, and
	// accepts the rest (JCGM 106, 8.3.3): it protects whoever made the part.
	GuardedRejection
	// Proof accepts what is proved to conform and rejects what is proved not
	// to (ISO 14253-1): between them it doesn't decide.
	Proof
)

var mannerNames = []string{"plain acceptance", "guarded acceptance", "guarded rejection", "proof"}

// String is the manner in words.
func (m Manner) String() string {
	if int(m) >= len(mannerNames) {
		m = PlainAcceptance
	}
	return mannerNames[m]
}

// MarshalText writes what String gives.
func (m Manner) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *Manner) UnmarshalText(text []byte) error { return readWord("manner", mannerNames, text, m) }

// A Rule is a decision rule: its manner, and how many standard uncertainties
// its guard band is wide. It is agreed before anything is measured. The factor
// is taken as it is: where few readings make the uncertainty, one for their
// degrees of freedom ([StudentT], one-sided) is wider than the usual 1.65.
type Rule struct {
	Manner Manner  `json:"manner"` // on which side of the limits the guard band lies
	Factor float64 `json:"factor"` // of the standard uncertainty; plain acceptance has none
}

// The guard band of ISO 14253-1 in standard uncertainties.
const (
	// Factor1998 is that of the first edition: the expanded uncertainty with
	// a coverage factor of 2.
	Factor1998 = 2.0
	// Factor2017 is that of the third edition, for a conformance probability
	// of 95 % where the uncertainty is small against the band.
	Factor2017 = 1.65
)

// ISO14253 is the rule of ISO 14253-1:2017 with its default conformance
// probability of 95 %. Before the third edition the factor was [Factor1998].
func ISO14253() Rule { return Rule{Manner: Proof, Factor: Factor2017} }

// A Decision is what follows from a rule.
type Decision uint8

// The decisions. The zero value is not decided, which is not a pass.
const (
	NotDecided Decision = iota
	Accept
	Reject
)

var decisionNames = []string{"not decided", "accept", "reject"}

// String is the decision in words.
func (d Decision) String() string {
	if int(d) >= len(decisionNames) {
		d = NotDecided
	}
	return decisionNames[d]
}

// MarshalText writes what String gives.
func (d Decision) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what String gives.
func (d *Decision) UnmarshalText(text []byte) error {
	return readWord("decision", decisionNames, text, d)
}

// A JudgementOf is a decision and what it rests on. It is plain data.
type JudgementOf[Q units.Quantity] struct {
	Decision Decision          `json:"decision"` // accept, reject, or not decided
	Verdict  tolerance.Verdict `json:"verdict"`  // of the reading with its guard band, by tolerance.BandOf.Judge
	Guard    Q                 `json:"guard"`    // the guard band, rounded up to the quantum
	// Conforms is the probability that the part conforms, and Risk the
	// probability that the decision is wrong for it (the specific risk of
	// JCGM 106, 3.3.13 and 3.3.14); 0.5 at most where nothing is decided.
	Conforms float64 `json:"conforms"`
	Risk     float64 `json:"risk"` // of being wrong
}

// Decide judges an estimate against a band by a rule: the reading ± its guard
// band is judged by [tolerance.BandOf.Judge]. A reading whose guard band just
// touches the limit from within is proved to conform where the limit itself
// is allowed.
//
// A rule whose factor is negative or isn't finite is an [ErrFactor], a band
// that asks nothing an [ErrNoLimit], and values out of range an [ErrRange].
func Decide[Q units.Quantity](r Rule, e EstimateOf[Q], b tolerance.BandOf[Q]) (JudgementOf[Q], error) {
	const op = "decision"
	var none JudgementOf[Q]
	if !(r.Factor >= 0) || math.IsInf(r.Factor, 0) || int(r.Manner) >= len(mannerNames) {
		return none, refuse(op, "", "factor of the rule", r.Factor, ErrFactor, "zero or more, in one of the manners of this package")
	}
	if !e.InRange() {
		return none, refuse(op, "", "estimate", "", ErrRange, "an estimate in range")
	}
	if err := checkBand(op, b, 0); err != nil {
		return none, err
	}
	factor := r.Factor
	if r.Manner == PlainAcceptance {
		factor = 0
	}
	j := JudgementOf[Q]{Guard: quanta[Q](math.Ceil(factor * e.spread()))}
	x := around(e.value, float64(j.Guard))
	if !x.InRange() {
		return none, refuse(op, "", "guard band", "", ErrRange, "a guard band in range")
	}
	j.Verdict = b.Judge(x)
	j.Decision = r.Manner.decide(j.Verdict)
	j.Conforms, j.Risk = e.odds(b)
	switch j.Decision {
	case Reject:
		j.Risk = j.Conforms
	case NotDecided:
		j.Risk = min(j.Conforms, j.Risk)
	}
	return j, nil
}

// decide turns the verdict on a reading with its guard band into a decision.
func (m Manner) decide(v tolerance.Verdict) Decision {
	conforms, fails := v == tolerance.Within, v == tolerance.Below || v == tolerance.Above
	switch {
	case conforms || m == GuardedRejection && !fails:
		return Accept
	case fails || m == GuardedAcceptance || m == PlainAcceptance:
		return Reject
	}
	return NotDecided
}

// odds are the probabilities that what was measured lies in the band and that
// it doesn't.
func (e *EstimateOf[Q]) odds(b tolerance.BandOf[Q]) (in, out float64) {
	u := e.spread()
	switch {
	case u > 0:
		return inside(e.value, b, u, float64(e.Freedom()))
	case b.Allows(e.value):
		return 1, 0
	}
	return 0, 1
}

// Text says the decision and what it rests on: "accept: within, guard band
// 0.033 mm; conforms with 99.7 %, risk 0.30 %".
func (j JudgementOf[Q]) Text(u units.Unit[Q]) string {
	g, _ := units.Append(nil, j.Guard, units.Style[Q]{Unit: u, Places: units.AllPlaces})
	conforms := j.Conforms
	if j.Risk > 0 {
		conforms = min(conforms, 1-0x1p-53) // 1 as rounded, not for certain
	}
	return j.Decision.String() + ": " + j.Verdict.String() + " with a guard band of " + string(g) +
		"; conforms with " + probability(conforms) + ", risk " + probability(j.Risk)
}

// String is [JudgementOf.Text] in the first unit of the quantity.
func (j JudgementOf[Q]) String() string { return j.Text(units.Unit[Q](0)) }

// probability writes p in percent so that neither 0 nor 100 % is said of what
// is neither.
func probability(p float64) string {
	switch {
	case p > 0.9999 && p < 1:
		return "over 99.99 %"
	case p > 0 && p < 0.0001:
		return "under 0.01 %"
	case p > 0.1 && p < 0.9:
		return strconv.FormatFloat(100*p, 'f', 1, 64) + " %"
	case p == 0 || p == 1:
		return strconv.FormatFloat(100*p, 'f', 0, 64) + " %"
	}
	return strconv.FormatFloat(100*p, 'f', 2, 64) + " %"
}
