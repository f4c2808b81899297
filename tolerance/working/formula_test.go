package working_test

import (
	"fmt"
	"math/rand/v2"

	"github.com/tenthou/tenthou/tolerance"
)

// A formula is one made up at random, to be read as several kinds of number.
type formula struct {
	op       int
	num, den int64
	input    int
	name     bool
	args     []*formula
}

const (
	input = iota
	add
	sub
	abs
	least
	greatest
	spread
	scale
	scalePi
	mulDiv
	share
	kinds
)

// arity is how many operands each kind has; that of spread differs.
var arity = [kinds]int{0, 2, 2, 1, 2, 2, 0, 1, 1, 3, 3}

// madeUp makes a formula of so many inputs, with factors up to most.
func madeUp(r *rand.Rand, depth, inputs int, most int64) *formula {
	f := &formula{op: r.IntN(kinds), input: r.IntN(inputs)}
	if depth == 0 {
		f.op = input
		return f
	}
	if f.op == input && r.IntN(3) > 0 {
		f.op = add
	}
	n := arity[f.op]
	if f.op == spread {
		n = 1 + r.IntN(4)
	}
	for range n {
		f.args = append(f.args, madeUp(r, depth-1, inputs, most))
	}
	f.num, f.den = factor(r, most), factor(r, most)
	if f.den == 0 {
		f.den = 1
	}
	f.name = f.op != input && r.IntN(4) == 0
	return f
}

func factor(r *rand.Rand, most int64) int64 {
	switch r.IntN(8) {
	case 0:
		return -1 - r.Int64N(9)
	case 1, 2, 3:
		return 1
	case 4:
		return r.Int64N(most)
	}
	return 1 + r.Int64N(9)
}

// read works the formula out. What has a name in it is handed to named.
func read[N tolerance.Number[N]](f *formula, in []N, named func(N) N) N {
	var a [5]N
	for i, g := range f.args {
		a[i] = read(g, in, named)
	}
	var n N
	switch f.op {
	case input:
		return in[f.input]
	case add:
		n = a[0].Add(a[1])
	case sub:
		n = a[0].Sub(a[1])
	case abs:
		n = a[0].Abs()
	case least:
		n = a[0].Min(a[1])
	case greatest:
		n = a[0].Max(a[1])
	case spread:
		n = a[0].Spread(a[1:len(f.args)]...)
	case scale:
		n = a[0].Scale(f.num, f.den)
	case scalePi:
		n = a[0].ScalePi(f.num, f.den)
	case mulDiv:
		n = a[0].MulDiv(a[1], a[2])
	case share:
		n = a[0].Share(a[1], a[2])
	}
	if f.name {
		return named(n)
	}
	return n
}

func asItIs[N any](n N) N { return n }

func (f *formula) String() string {
	return fmt.Sprintf("{%d %d/%d in%d %v %v}", f.op, f.num, f.den, f.input, f.name, f.args)
}
