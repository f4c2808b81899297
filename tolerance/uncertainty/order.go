package uncertainty

import "slices"

// order sorts x, which holds no not-a-numbers. Simulated values are spread
// smoothly: put into buckets of about four by where they lie between the
// least and the greatest, they are nearly in order. A bucket that took many
// is divided again.
func order(x []float64) {
	bucketSort(x, make([]float64, len(x)), make([]uint32, len(x)), 8)
}

// bucketSort sorts x with the help of as much room, dividing depth times at
// most.
func bucketSort(x, room []float64, place []uint32, depth int) {
	const few, each = 24, 4
	n := len(x)
	if n <= few {
		insertionSort(x)
		return
	}
	least, greatest := x[0], x[0]
	for _, v := range x {
		least, greatest = min(least, v), max(greatest, v)
	}
	buckets := n / each
	scale := float64(buckets-1) / (greatest - least)
	if depth == 0 || n < 200 || !(scale > 0) || scale-scale != 0 {
		slices.Sort(x)
		return
	}
	// ends[k] is where bucket k begins; after the values are in, where it ends.
	ends := make([]uint32, buckets+1)
	for i, v := range x {
		k := uint32((v - least) * scale)
		place[i] = k
		ends[k+1]++
	}
	for k := 1; k <= buckets; k++ {
		ends[k] += ends[k-1]
	}
	for i, v := range x {
		k := place[i]
		room[ends[k]] = v
		ends[k]++
	}
	copy(x, room)
	begin := uint32(0)
	for _, end := range ends[:buckets] {
		bucketSort(x[begin:end], room[begin:end], place[begin:end], depth-1)
		begin = end
	}
}

func insertionSort(x []float64) {
	for i := 1; i < len(x); i++ {
		v, j := x[i], i
		for ; j > 0 && x[j-1] > v; j-- {
			x[j] = x[j-1]
		}
		x[j] = v
	}
}

// merge joins two sorted slices.
func merge(a, b []float64) []float64 {
	out := make([]float64, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if b[0] < a[0] {
			out, b = append(out, b[0]), b[1:]
		} else {
			out, a = append(out, a[0]), a[1:]
		}
	}
	return append(append(out, a...), b...)
}
