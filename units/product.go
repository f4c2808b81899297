package units

import "math/bits"

// volumeStep is how many cubic picometres one quantum of volume has.
const volumeStep = 10_000_000_000_000_000_000

// BoxVolume is length·width·height: the product is exact, and rounded once
// to the quantum of volume (10⁻¹¹ cm³), nearest, ties to even. The sign is
// that of the product. Beyond ±23 m³, or where a length is out of range, the
// result is out of range.
func BoxVolume(length, width, height Length) Volume {
	return BoxVolumeRound(length, width, height, NearestEven)
}

// BoxVolumeRound is [BoxVolume] rounded by the rule.
func BoxVolumeRound(length, width, height Length, r Rounding) Volume {
	if !length.InRange() || !width.InRange() || !height.InRange() {
		return outOfRange
	}
	negative := (length < 0) != (width < 0) != (height < 0)
	top, hi, lo := product(length, width, height)
	if top != 0 || hi >= volumeStep {
		return outOfRange
	}
	q, rem := bits.Div64(hi, lo, volumeStep)
	if q > limit {
		return outOfRange
	}
	return Volume(signedResult(r.roundQuo(q, rem, volumeStep, negative), negative))
}

// CylinderVolume is π/4·bore²·height, bore being the diameter: the swept
// volume of one cylinder where the height is the stroke, a gasket's or a
// deck's share of the chamber where it is their height. It is the correctly
// rounded value to the quantum of volume (10⁻¹¹ cm³). The height may be
// negative, as where a piston stands proud; a negative bore, a volume beyond
// ±23 m³ or a length out of range gives a result out of range.
func CylinderVolume(bore, height Length) Volume {
	return CylinderVolumeRound(bore, height, NearestEven)
}

// CylinderVolumeRound is [CylinderVolume] rounded by the rule.
func CylinderVolumeRound(bore, height Length, r Rounding) Volume {
	if bore < 0 || !bore.InRange() || !height.InRange() {
		return outOfRange
	}
	if bore == 0 || height == 0 {
		return 0
	}
	top, hi, lo := product(bore, bore, height)
	if top != 0 {
		return outOfRange
	}
	// The words are of π·2^318, which is π/4·2^320: a whole number of words.
	w := timesPi(hi, lo)
	return Volume(roundPi(w[0], w[1], w[2]>>63, volumeStep, height < 0, r))
}

// product is |a·b·c| in three words, most significant first.
func product(a, b, c Length) (top, hi, lo uint64) {
	abHi, abLo := bits.Mul64(magnitude(int64(a)), magnitude(int64(b)))
	m := magnitude(int64(c))
	carry, lo := bits.Mul64(abLo, m)
	top, hi = bits.Mul64(abHi, m)
	hi, carry = bits.Add64(hi, carry, 0)
	return top + carry, hi, lo
}
