package crank

import "github.com/tenthou/tenthou/tolerance"

// GramMillimetresPerOunceInch is how many g·mm are one oz·in, the other unit of
// unbalance: 28.349523125 × 25.4, exactly.
const GramMillimetresPerOunceInch = 720.077887375

// UnbalanceAllowedGMM is the permissible residual unbalance of a rigid rotor in
// g·mm, from its balance quality grade G in mm/s, its mass in kilograms and the
// highest speed it runs at, in revolutions per minute (ISO 21940-11):
//
//	U = 1000·G·m/ω,  ω = π·rpm/30
//
// The shop's U = 9549·G·m/rpm is the same with 30000/π = 9549.297 cut short,
// 0.003 % less. Grades are the user's to give: see [UnbalanceGrades].
func UnbalanceAllowedGMM[R tolerance.Real[R]](gradeMMPS, massKG, rpm R) R {
	return gradeMMPS.Const(1000).Mul(gradeMMPS).Mul(massKG).Quo(balanceOmega(rpm))
}

// UnbalanceEccentricityUM is the permissible distance of a rotor's mass centre
// from its axis in micrometres, which is its permissible unbalance in g·mm for
// each kilogram: 1000·G/ω. The grade is this distance in millimetres times the
// speed in radians per second, whatever the rotor.
func UnbalanceEccentricityUM[R tolerance.Real[R]](gradeMMPS, rpm R) R {
	return gradeMMPS.Const(1000).Mul(gradeMMPS).Quo(balanceOmega(rpm))
}

// UnbalanceGrade is the balance quality grade in mm/s that an unbalance in g·mm
// comes to on a rotor of a mass in kilograms at revolutions per minute. It
// undoes [UnbalanceAllowedGMM].
func UnbalanceGrade[R tolerance.Real[R]](unbalanceGMM, massKG, rpm R) R {
	return unbalanceGMM.Mul(balanceOmega(rpm)).Quo(massKG.Const(1000).Mul(massKG))
}

// UnbalanceRPM is the speed in revolutions per minute up to which an unbalance
// in g·mm keeps within a grade in mm/s on a rotor of a mass in kilograms. It
// undoes [UnbalanceAllowedGMM].
func UnbalanceRPM[R tolerance.Real[R]](unbalanceGMM, gradeMMPS, massKG R) R {
	return gradeMMPS.Const(30_000).Mul(gradeMMPS).Mul(massKG).Quo(gradeMMPS.Const(pi).Mul(unbalanceGMM))
}

// UnbalanceForceN is the force in newtons with which an unbalance in g·mm turns
// at revolutions per minute: U·ω², U in kg·m. It grows with the square of the
// speed.
func UnbalanceForceN[R tolerance.Real[R]](unbalanceGMM, rpm R) R {
	omega := balanceOmega(rpm)
	return unbalanceGMM.Mul(omega).Mul(omega).Quo(rpm.Const(1_000_000))
}

// UnbalanceAt is the part of an unbalance (or of what is allowed of it) that
// acts in plane a, where it stands at a place along the shaft and the other
// plane is b: U·(b−place)/(b−a), by the lever. Places are along the shaft from
// one datum, in one unit. Between the planes it is the ISO 21940-11 split of
// the permissible unbalance, U·L_B/L, place being that of the mass centre; for
// a place outside b it is below zero: a couple acts, and its size counts.
func UnbalanceAt[R tolerance.Real[R]](unbalance, place, a, b R) R {
	return unbalance.Mul(b.Sub(place)).Quo(b.Sub(a))
}

// UnbalanceGrades are the grades of ISO 21940-11 in mm/s, each 2.5 times the one
// before: from memory. Which one a crankshaft is balanced to is for the engine's
// maker to say; the standard's table of machines isn't repeated here.
func UnbalanceGrades() []float64 {
	return []float64{0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000}
}
