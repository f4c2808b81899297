package crank

import "github.com/tenthou/tenthou/tolerance"

// ReliefRate is a spring's rate from its free length, and its load at a height:
// load/(free − height). Newtons and millimetres give N/mm.
func ReliefRate[R tolerance.Real[R]](load, free, height R) R { return load.Quo(free.Sub(height)) }

// ReliefRateByTwo is a spring's rate from its loads at two heights, the second
// the lower: (load₂ − load₁)/(height₁ − height₂). It doesn't need the free
// length, which the ends of the coils blur.
func ReliefRateByTwo[R tolerance.Real[R]](load1, height1, load2, height2 R) R {
	return load2.Sub(load1).Quo(height1.Sub(height2))
}

// ReliefLoad is a spring's load at a height: rate·(free − height). It undoes
// [ReliefRate].
func ReliefLoad[R tolerance.Real[R]](rate, free, height R) R { return rate.Mul(free.Sub(height)) }

// ReliefHeight is the height at which a spring has a load: free − load/rate. It
// undoes [ReliefLoad].
func ReliefHeight[R tolerance.Real[R]](load, rate, free R) R { return free.Sub(load.Quo(rate)) }

// ReliefPressureMPa is the pressure in megapascals at which a relief valve
// opens, from its spring's load in newtons with the valve shut and the diameter
// in millimetres that the oil acts on then: of the seat for a ball or a cone,
// of the bore for a plunger. It is the difference across the valve. 0.1 MPa is
// 1 bar, 14.5 psi.
func ReliefPressureMPa[R tolerance.Real[R]](loadN, diameterMM R) R {
	return loadN.Quo(diameterMM.Const(pi / 4).Mul(diameterMM.Mul(diameterMM)))
}

// ReliefLoadN is the spring's load in newtons that opens a relief valve of a
// diameter in millimetres at a pressure in megapascals. It undoes
// [ReliefPressureMPa].
func ReliefLoadN[R tolerance.Real[R]](pressureMPa, diameterMM R) R {
	return diameterMM.Const(pi / 4).Mul(diameterMM.Mul(diameterMM)).Mul(pressureMPa)
}

// ReliefShim is the thickness in millimetres of a shim under the spring that
// changes the opening pressure by so much, in megapascals: the change of load
// over the rate in N/mm. Below zero it is to be taken away. A worn bearing's
// low oil pressure isn't mended by it: the valve is shut then.
func ReliefShim[R tolerance.Real[R]](changeMPa, diameterMM, ratePerMM R) R {
	return ReliefLoadN(changeMPa, diameterMM).Quo(ratePerMM)
}
