package units

// Dual writes the length in millimetres and, in brackets, in inches as inch
// tools are marked: 0.0635 mm (.0025 in). Each takes 0 to 18 places, or
// [AllPlaces]; what had to be rounded (to nearest, ties to even) is marked:
// 0.07 mm (≈.0028 in).
func (l Length) Dual(mmPlaces, inPlaces int) string {
	return string(l.AppendDual(make([]byte, 0, 48), mmPlaces, inPlaces))
}

// AppendDual appends what [Length.Dual] writes.
func (l Length) AppendDual(dst []byte, mmPlaces, inPlaces int) []byte {
	if !l.InRange() {
		dst, _ = l.Append(dst, Style[Length]{})
		return dst
	}
	dst = l.appendMarked(dst, Style[Length]{Unit: InMillimetres, Places: mmPlaces})
	dst = append(dst, " ("...)
	dst = l.appendMarked(dst, Style[Length]{Unit: InInches, Places: inPlaces, Point: true})
	return append(dst, ')')
}

func (l Length) appendMarked(dst []byte, s Style[Length]) []byte {
	const mark = "≈"
	start := len(dst)
	out, exact := l.Append(append(dst, mark...), s)
	if exact {
		copy(out[start:], out[start+len(mark):])
		out = out[:len(out)-len(mark)]
	}
	return out
}
