package crank

import "github.com/tenthou/tenthou/tolerance"

// A DrillHole is a drilled balancing hole: a cylinder and the cone of the
// drill's point. Lengths are plain numbers in millimetres, angles in radians,
// densities in g/cm³, masses come out in grams and unbalances in g·mm.
//
//	    mouth
//	──┐       ┌──      ┬         ┬
//	  │       │     Depth, of    │
//	  │       │      the full    │ to the point
//	  │       │      diameter    │
//	  └╲     ╱┘        ┴         │
//	    ╲   ╱  Point: the angle  │
//	     ╲ ╱   between the sides ┴
//
// A drawing's depth is most often that of the full diameter, a depth stop's
// that of the point: they differ by the point's height, 0.30 diameters at
// 118°. Wear eye protection, clamp the shaft, plug its oil holes against chips,
// and never drill into an oil way, a fillet or a journal, or deeper than the
// maker allows: metal can't be put back.
type DrillHole[R tolerance.Real[R]] struct {
	Diameter R // mm
	Depth    R // of the full diameter, mm
	Point    R // included angle of the drill's point, radians: 118° is 2.0595
}

// PointHeight is the height of the drill's point: diameter/2/tan(point/2).
func (h DrillHole[R]) PointHeight() R {
	half := h.Point.Quo(h.Point.Const(2))
	return h.Diameter.Quo(h.Point.Const(2)).Mul(half.Cos()).Quo(half.Sin())
}

// DepthToPoint is the depth of the full diameter and the point's height.
func (h DrillHole[R]) DepthToPoint() R { return h.Depth.Add(h.PointHeight()) }

// area is that of the full diameter.
func (h DrillHole[R]) area() R {
	return h.Diameter.Const(pi / 4).Mul(h.Diameter.Mul(h.Diameter))
}

// Volume is that of the hole under a flat mouth in mm³: [DrillVolume].
func (h DrillHole[R]) Volume() R { return DrillVolume(h.Diameter, h.Depth, h.PointHeight()) }

// CentroidDepth is how deep the centre of what was drilled out lies under a
// flat mouth: [DrillCentroidDepth].
func (h DrillHole[R]) CentroidDepth() R { return DrillCentroidDepth(h.Depth, h.PointHeight()) }

// DrillVolume is the volume of a hole under a flat mouth in mm³, from its
// diameter, the depth of that, and the height of the drill's point:
// π/4·diameter²·(depth + height/3).
func DrillVolume[R tolerance.Real[R]](diameter, depth, height R) R {
	return diameter.Const(pi / 4).Mul(diameter.Mul(diameter)).Mul(depth.Add(height.Quo(height.Const(3))))
}

// DrillCentroidDepth is how deep the centre of what was drilled out lies under
// a flat mouth, from the depth h of the full diameter and the height c of the
// drill's point: (h²/2 + c/3·(h + c/4))/(h + c/3). It moves inward as the hole
// gets deeper.
func DrillCentroidDepth[R tolerance.Real[R]](depth, height R) R {
	third := height.Quo(height.Const(3))
	moment := depth.Mul(depth).Quo(depth.Const(2)).Add(third.Mul(depth.Add(height.Quo(height.Const(4)))))
	return moment.Quo(depth.Add(third))
}

// DrillRimGMM is the unbalance in g·mm that a hole in a round rim does not take
// away, for the metal that is missing at its mouth: density·area·diameter²/32,
// whatever the rim's radius. [DrillHole.RadialRimGMM] has it taken off.
func DrillRimGMM[R tolerance.Real[R]](densityGPerCM3, diameter R) R {
	square := diameter.Mul(diameter)
	return densityGPerCM3.Mul(diameter.Const(pi / 4).Mul(square).Mul(square)).Quo(diameter.Const(32_000))
}

// MassG is what was drilled out of metal of a density, in grams.
func (h DrillHole[R]) MassG(densityGPerCM3 R) R {
	return densityGPerCM3.Mul(h.Volume()).Quo(densityGPerCM3.Const(1000))
}

// RadialGMM is the unbalance that the hole takes away where it is drilled
// towards the shaft's axis from a flat mouth at a radius: mass·(radius −
// centroid depth). The deeper, the less each millimetre does.
func (h DrillHole[R]) RadialGMM(densityGPerCM3, radius R) R {
	return h.MassG(densityGPerCM3).Mul(radius.Sub(h.CentroidDepth()))
}

// RadialRimGMM is [DrillHole.RadialGMM] in a round rim, about the shaft's axis
// with the radius given, with the depth measured at the hole's middle. The rim
// falls away from there; what is missing between its highest point and the
// rim has the moment area·diameter²/32, whatever the radius. It is exact where
// the full diameter reaches below the whole mouth.
func (h DrillHole[R]) RadialRimGMM(densityGPerCM3, radius R) R {
	return h.RadialGMM(densityGPerCM3, radius).Sub(DrillRimGMM(densityGPerCM3, h.Diameter))
}

// AxialGMM is the unbalance that the hole takes away where it is drilled along
// the shaft at a radius: mass·radius.
func (h DrillHole[R]) AxialGMM(densityGPerCM3, radius R) R {
	return h.MassG(densityGPerCM3).Mul(radius)
}

// DrillRadialDepth is the depth of the full diameter that takes away an
// unbalance in g·mm, drilled towards the shaft's axis from a flat mouth. It
// undoes [DrillHole.RadialGMM], whose hole h needs no depth. With the point's height c,
// the radius R and the moment M = unbalance/density/area it is the lesser root
// of
//
//	depth²/2 − (R − c/3)·depth + M − c/3·(R − c/4) = 0
//
// Below zero the point alone takes away too much. Where even a hole to the
// shaft's axis doesn't do, it is out of range.
func DrillRadialDepth[R tolerance.Real[R]](unbalanceGMM, densityGPerCM3, radius R, hole DrillHole[R]) R {
	return hole.radialDepth(unbalanceGMM, densityGPerCM3, radius, radius.Const(0))
}

// DrillRimDepth undoes [DrillHole.RadialRimGMM], as [DrillRadialDepth] does for
// a flat mouth.
func DrillRimDepth[R tolerance.Real[R]](unbalanceGMM, densityGPerCM3, radius R, hole DrillHole[R]) R {
	return hole.radialDepth(unbalanceGMM, densityGPerCM3, radius, hole.Diameter.Mul(hole.Diameter).Quo(radius.Const(32)))
}

func (h DrillHole[R]) radialDepth(unbalance, density, radius, fallen R) R {
	c := h.PointHeight()
	third := c.Quo(c.Const(3))
	wanted := unbalance.Const(1000).Mul(unbalance).Quo(density.Mul(h.area())).Add(fallen)
	rest := wanted.Sub(third.Mul(radius.Sub(c.Quo(c.Const(4)))))
	reach := radius.Sub(third)
	// The lesser root, without the difference that cancels.
	two := rest.Const(2)
	return two.Mul(rest).Quo(reach.Add(reach.Mul(reach).Sub(two.Mul(rest)).Sqrt()))
}

// DrillAxialDepth is the depth of the full diameter that takes away an
// unbalance in g·mm, drilled along the shaft at a radius. It undoes
// [DrillHole.AxialGMM], whose hole needs no depth.
func DrillAxialDepth[R tolerance.Real[R]](unbalanceGMM, densityGPerCM3, radius R, hole DrillHole[R]) R {
	moment := unbalanceGMM.Const(1000).Mul(unbalanceGMM).Quo(densityGPerCM3.Mul(radius))
	return moment.Quo(hole.area()).Sub(hole.PointHeight().Quo(radius.Const(3)))
}
