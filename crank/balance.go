package crank

import "github.com/tenthou/tenthou/tolerance"

// BalanceMass is the mass at a radius opposite the crankpin that balances what
// rotates on it and a factor's part of what reciprocates:
// (rotating + factor·reciprocating)·throw/radius. Masses in one unit give it in
// that unit; throw and radius (of the balance mass's centre) are in one unit.
func BalanceMass[R tolerance.Real[R]](rotating, reciprocating, factor, throw, radius R) R {
	return rotating.Add(factor.Mul(reciprocating)).Mul(throw).Quo(radius)
}

// BalanceFactorOf is the factor that a balance mass at a radius comes to. It
// undoes [BalanceMass].
func BalanceFactorOf[R tolerance.Real[R]](mass, rotating, reciprocating, throw, radius R) R {
	return mass.Mul(radius).Quo(throw).Sub(rotating).Quo(reciprocating)
}

// BalanceForceN is the unbalanced primary force in newtons of one piston, part
// of whose reciprocating mass is balanced on the crankshaft: m·throw·ω²·√((1−c)²·cos²θ
// + c²·sin²θ), from the mass in kilograms, the throw in metres, the
// crankshaft's revolutions per minute, the factor c and the crank angle from
// top dead centre in radians. Along the cylinder the part 1−c is left, across
// it the part c is new; with c = 1/2 the force is half of m·throw·ω² at every
// angle. Secondary forces come on top.
func BalanceForceN[R tolerance.Real[R]](reciprocatingKG, throwM, rpm, factor, angle R) R {
	along := factor.Const(1).Sub(factor).Mul(angle.Cos())
	across := factor.Mul(angle.Sin())
	share := along.Mul(along).Add(across.Mul(across)).Sqrt()
	omega := balanceOmega(rpm)
	return reciprocatingKG.Mul(throwM).Mul(omega).Mul(omega).Mul(share)
}

// balanceOmega is the speed in radians per second of revolutions per minute.
func balanceOmega[R tolerance.Real[R]](rpm R) R {
	return rpm.Const(pi).Mul(rpm).Quo(rpm.Const(30))
}
