package piston

import "github.com/tenthou/tenthou/tolerance"

// SkirtHotClearance is what heat makes of a clearance, in mm on the diameter:
//
//	clearance·(1 + p) + bore·(b − p)
//
// where b and p are the growths of bore and skirt, coefficient times rise. It
// is bore·(1 + b) − skirt·(1 + p) with the skirt written as bore − clearance,
// so a clearance from a pull test serves as well as one from micrometers.
// Clearance and bore are in mm as measured, the coefficients per kelvin, the
// rises in kelvins from where both were measured.
//
// It is of two bodies each at one temperature, free to expand. A skirt is
// cooler below than above, and one with struts or slots grows less across the
// thrust faces than its alloy would.
func SkirtHotClearance[R tolerance.Real[R]](clearance, bore, borePerK, boreRise, skirtPerK, skirtRise R) R {
	skirt := skirtPerK.Mul(skirtRise)
	return clearance.Add(clearance.Mul(skirt)).Add(bore.Mul(borePerK.Mul(boreRise).Sub(skirt)))
}

// SkirtColdClearance is the clearance in mm, where both were measured, that
// leaves a wanted clearance when hot: the inverse of [SkirtHotClearance].
func SkirtColdClearance[R tolerance.Real[R]](hot, bore, borePerK, boreRise, skirtPerK, skirtRise R) R {
	skirt := skirtPerK.Mul(skirtRise)
	return hot.Add(bore.Mul(skirt.Sub(borePerK.Mul(boreRise)))).Quo(skirt.Add(skirt.Const(1)))
}

// SkirtRiseFor is by how many kelvins a skirt may be warmer than it was measured
// at and still have a clearance in a bore that has warmed by its own:
// [SkirtHotClearance] solved for the skirt's rise. With a hot clearance of 0 it
// is where the piston closes up.
func SkirtRiseFor[R tolerance.Real[R]](hot, clearance, bore, borePerK, boreRise, skirtPerK R) R {
	grown := bore.Mul(borePerK).Mul(boreRise)
	return clearance.Add(grown).Sub(hot).Quo(bore.Sub(clearance).Mul(skirtPerK))
}

// SkirtBoreRiseFor is by how many kelvins a bore must be warmer than it was
// measured at for a skirt that has warmed by its own to have a clearance:
// [SkirtHotClearance] solved for the bore's rise. A bore that warms more slowly
// than that is scuffed by a cold start at full load.
func SkirtBoreRiseFor[R tolerance.Real[R]](hot, clearance, bore, borePerK, skirtPerK, skirtRise R) R {
	grown := bore.Sub(clearance).Mul(skirtPerK).Mul(skirtRise)
	return hot.Sub(clearance).Add(grown).Quo(bore.Mul(borePerK))
}

// SkirtRiseTogether is by how many kelvins bore and skirt may warm alike and
// still have a clearance: [SkirtHotClearance] with one rise, solved for it. It
// is below zero, or out of range, where warming together opens the clearance.
func SkirtRiseTogether[R tolerance.Real[R]](hot, clearance, bore, borePerK, skirtPerK R) R {
	closing := bore.Mul(skirtPerK.Sub(borePerK)).Sub(clearance.Mul(skirtPerK))
	return clearance.Sub(hot).Quo(closing)
}
