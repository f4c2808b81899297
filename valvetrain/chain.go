package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ChainStretch is how much longer a run of chain is than its links make new:
// measured length − links × pitch. The chain hangs or lies pulled straight by the
// load that the engine maker's manual names; the longer the run, the finer the
// answer.
//
//	o══o──o══o──o══o
//	├──────────────┤   over 5 links, pin to pin
//
// Worn pins and bushes make each outer link longer, so that a run of an even
// number of links is read.
func ChainStretch[N tolerance.Number[N]](length, pitch N, links int) N {
	return length.Sub(pitch.Scale(int64(links), 1))
}

// ChainLength is the length of a run of chain elongated by some part of its own:
// links × pitch × (1 + elongation). With a manual's greatest elongation it is the
// length at which the chain is worn out.
func ChainLength[N tolerance.Number[N]](pitch N, links int, elongation tolerance.Ratio) N {
	run := pitch.Scale(int64(links), 1)
	if !elongation.Valid() {
		return run.Scale(1, 0)
	}
	return run.Add(run.Scale(elongation.Num, elongation.Den))
}

// ChainElongation is a chain's wear as a percentage of its length when new:
// 100·(length − links·pitch)/(links·pitch), lengths in one unit.
func ChainElongation[R tolerance.Real[R]](length, pitch, links R) R {
	run := links.Mul(pitch)
	return length.Const(100).Mul(length.Sub(run)).Quo(run)
}

// ChainOverRollers is the length of a run from pin to pin, from the length over the
// outsides of its end rollers: over − roller diameter.
func ChainOverRollers[N tolerance.Number[N]](over, roller N) N { return over.Sub(roller) }

// ChainBetweenJaws is the length of a run from pin to pin, from the lengths over
// the outsides and between the insides of the same two rollers: half of their sum.
// The rollers' diameter drops out, worn or not (common practice).
func ChainBetweenJaws[N tolerance.Number[N]](outside, inside N) N {
	return outside.Add(inside).Scale(1, 2)
}

// ChainLinks is how many links a run is long, a worn one too: the one whole number n
// with a length between n pitches and those elongated by the most that wear can
// have given, as a part. A chain never shortens. It fails with an [InputError]
// where no number fits, so that a wrong pitch shows, and where several do, as over
// a run so long that its wear can add up to a link: then they are to be counted.
func ChainLinks(length tolerance.Bracket, pitch units.Length, most tolerance.Ratio) (int, error) {
	if err := chainPitch(pitch); err != nil {
		return 0, err
	}
	if err := inputBracket("length of the run", length, units.Picometre); err != nil {
		return 0, err
	}
	if most.Sign() < 0 || !most.Valid() || most.Num > most.Den/10 || most.Den > ratioParts {
		return 0, &InputError{"greatest elongation", most.String(), "from 0 to a tenth: 1/100 for one per cent"}
	}
	lo, hi := inputEnds(length)
	worn := pitch.Add(units.ScaleRound(pitch, most.Num, most.Den, units.Up))
	from, to := int64((lo+worn-units.Picometre)/worn), int64(hi/pitch)
	switch {
	case to < 1 || from > to:
		return 0, &InputError{"length of the run", length.String(), "a whole number of links of " + pitch.String() + ", worn by " + most.String() + " of it at the most"}
	case from < to:
		return 0, &InputError{"length of the run", length.String(), fmt.Sprintf("that of one number of links: worn by up to %v of it, %d to %d links are as long; count them", most, from, to)}
	}
	return int(to), nil
}

// ChainDeflection is how far the middle of a free straight run can be pressed
// aside, from its line: √((s + x)² − s²)/2, with the straight distance s between
// the points where it meets the sprockets and the slack x in the run, in one unit.
// A dial or rule that sees it pressed to either side reads twice as much.
//
// Why: pressed in the middle it makes two equal straight halves, each √(s²/4 + d²)
// long, together s + x. The chain's weight, and its bend over the teeth, are left
// out.
func ChainDeflection[R tolerance.Real[R]](span, slack R) R {
	two := span.Const(2)
	return slack.Mul(two.Mul(span).Add(slack)).Sqrt().Quo(two)
}

// ChainSlack is the slack in a run whose middle can be pressed aside by d from its
// line: √(s² + 4d²) − s, the inverse of [ChainDeflection].
func ChainSlack[R tolerance.Real[R]](span, deflection R) R {
	four := deflection.Const(4).Mul(deflection).Mul(deflection)
	return four.Quo(span.Mul(span).Add(four).Sqrt().Add(span))
}

// ChainRetard is how far a chain that has grown longer lets the driven sprocket lag,
// in degrees of that sprocket: 360·x/(teeth·pitch), x being how much the pulling
// run between the sprockets has grown, in the pitch's unit. A camshaft's sprocket
// at half speed lags twice as many degrees of the crankshaft.
func ChainRetard[R tolerance.Real[R]](growth, teeth, pitch R) R {
	return growth.Const(360).Mul(growth).Quo(teeth.Mul(pitch))
}

// ChainGrowth is how much the pulling run has grown if the driven sprocket lags so
// many of its own degrees: the inverse of [ChainRetard].
func ChainGrowth[R tolerance.Real[R]](degrees, teeth, pitch R) R {
	return degrees.Mul(teeth).Mul(pitch).Quo(degrees.Const(360))
}

func chainPitch(pitch units.Length) error {
	if pitch < units.Millimetre || pitch > 200*units.Millimetre {
		return &InputError{"pitch of the chain", pitch.String(), "from 1 mm to 200 mm"}
	}
	return nil
}
