package form

import "math"

// side is the most unknowns that a basis or a fit here has.
const side = 6

// matrix is a small square matrix; the number of rows in use goes with it.
type matrix [side][side]float64

// invert gives the inverse of the first n rows and columns, by elimination
// with row pivoting. ok is false where the matrix is singular to rounding.
func (m *matrix) invert(n int) (inv matrix, ok bool) {
	a := *m
	scale := 0.0
	for i := range n {
		inv[i][i] = 1
		for j := range n {
			scale = max(scale, math.Abs(a[i][j]))
		}
	}
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		pivot := a[p][c]
		if !(math.Abs(pivot) > 1e-14*scale) {
			return inv, false
		}
		a[p], a[c] = a[c], a[p]
		inv[p], inv[c] = inv[c], inv[p]
		for j := range n {
			a[c][j] /= pivot
			inv[c][j] /= pivot
		}
		for r := range n {
			f := a[r][c]
			if r == c || f == 0 {
				continue
			}
			for j := range n {
				a[r][j] -= f * a[c][j]
				inv[r][j] -= f * inv[c][j]
			}
		}
	}
	return inv, true
}

// times is the product of the first n rows with a column.
func (m *matrix) times(n int, v *[side]float64) (out [side]float64) {
	for i := range n {
		for j := range n {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}

// transposedTimes is the product of the transpose with a column.
func (m *matrix) transposedTimes(n int, v *[side]float64) (out [side]float64) {
	for i := range n {
		for j := range n {
			out[j] += m[i][j] * v[i]
		}
	}
	return out
}
