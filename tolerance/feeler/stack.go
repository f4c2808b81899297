package feeler

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// MaxStack is the most blades that are laid together.
const MaxStack = 8

const stackSizes = "1 to 8 blades"

// A Stack is blades of one set laid together, each of them once. It holds no
// memory of its own. The zero Stack has no blades. Stacks of one Set value
// compare with ==.
type Stack struct {
	Target units.Length // what was asked for; of blades chosen by hand, Total
	Total  units.Length // of the thicknesses

	set   *setData
	index [MaxStack]uint8 // the thickest first
	n     uint8
}

// Stack is the stack of up to so many blades (1 to [MaxStack]) whose total is
// nearest the target: the exact optimum. Of equally near ones it is that of
// the fewest blades; of those, the one with the thickest blade, then with the
// thickest second blade, and so on. It allocates nothing.
//
// It fails with a [StackError]: for a number of blades or a target out of
// range, for a set without blades, and where the search would take more than 270
// million steps (about a second), which it does with large sets alone: one of 32
// blades never takes half as many.
func (s Set) Stack(target units.Length, most int) (Stack, error) {
	return s.stack(target, most, nearest)
}

// StackAtMost is [Set.Stack] with a total that is not above the target.
func (s Set) StackAtMost(target units.Length, most int) (Stack, error) {
	return s.stack(target, most, atMost)
}

// StackAtLeast is [Set.Stack] with a total that is not below the target.
func (s Set) StackAtLeast(target units.Length, most int) (Stack, error) {
	return s.stack(target, most, atLeast)
}

func (s Set) stack(target units.Length, most int, f fit) (Stack, error) {
	d := s.d
	switch {
	case most < 1 || most > MaxStack:
		return Stack{}, &StackError{Target: target, Most: most, Kind: ErrSize, Want: stackSizes}
	case target < 0 || target > MaxStackThickness:
		return Stack{}, &StackError{Target: target, Most: most, Kind: ErrThickness, Want: "0 to " + MaxStackThickness.String()}
	case d == nil:
		return Stack{}, &StackError{Target: target, Most: most, Kind: ErrEmpty, Want: "a set of blades"}
	}
	q := search{a: d.thick, sums: d.sums, target: target, fit: f, least: leastMiss(target, d.grid, f)}
	switch found, err := q.run(min(most, len(d.thick))); {
	case err != nil:
		return Stack{}, &StackError{Target: target, Most: most, Kind: err, Want: "fewer blades"}
	case !found:
		return Stack{}, &StackError{Target: target, Most: most, Kind: ErrNoStack, Want: f.want()}
	}
	st := Stack{Target: target, set: d, index: q.best, n: uint8(q.bestLen)}
	st.settle()
	return st, nil
}

// settle takes, of blades that are equally thick, those known best, and sums.
func (st *Stack) settle() {
	a := st.set.thick
	for i := uint8(0); i < st.n; {
		k := i + 1
		for k < st.n && a[st.index[k]] == a[st.index[i]] {
			k++
		}
		first := st.index[i]
		for first > 0 && a[first-1] == a[first] {
			first--
		}
		for j := i; j < k; j++ {
			st.index[j] = first + (k - 1 - j)
		}
		i = k
	}
	st.Total = 0
	for _, i := range st.index[:st.n] {
		st.Total += a[i]
	}
}

// Together lays the blades with these marks together, each once. It fails with
// a [MarkError] for a mark that the set lacks and a [StackError] where a blade
// is asked for more often than the set has it.
func (s Set) Together(marks ...string) (Stack, error) {
	if len(marks) < 1 || len(marks) > MaxStack {
		return Stack{}, &StackError{Most: len(marks), Kind: ErrSize, Want: stackSizes}
	}
	st := Stack{set: s.data()}
	var used [MaxBlades]bool
	for _, mark := range marks {
		i, err := s.Index(mark)
		if err != nil {
			return Stack{}, err
		}
		// A blade that is alike will do for one that is used.
		t := st.set.thick[i]
		for i < len(used) && used[i] {
			i++
		}
		if i >= s.Len() || st.set.thick[i] != t {
			return Stack{}, &StackError{Target: t, Most: len(marks), Kind: ErrNoStack, Want: "each blade once"}
		}
		used[i] = true
		k := st.n
		for ; k > 0 && st.set.thick[st.index[k-1]] < t; k-- {
			st.index[k] = st.index[k-1]
		}
		st.index[k] = uint8(i)
		st.n++
		st.Total += t
	}
	st.Target = st.Total
	return st, nil
}

// Len is the number of blades.
func (st Stack) Len() int { return int(st.n) }

// At is blade i of the stack, the thickest being 0. Where there is none it is
// the zero Blade.
func (st Stack) At(i int) Blade {
	if uint(i) < uint(st.n) {
		return st.set.blades[st.index[i]]
	}
	return Blade{}
}

// Off is the total less the target.
func (st Stack) Off() units.Length { return st.Total - st.Target }

// WorstError is the sum of the blades' errors: the total lies within ± this.
func (st Stack) WorstError() units.Length {
	sum := units.Length(0)
	for _, i := range st.index[:st.n] {
		sum += st.set.blades[i].Error
	}
	return sum
}

// RootSumSquareError is the root of the sum of the squares of the blades'
// errors, rounded up to the picometre. It is what to expect of errors that are
// independent of each other, not a bound.
func (st Stack) RootSumSquareError() units.Length {
	sum := uint64(0) // at most 8·10^18
	for _, i := range st.index[:st.n] {
		e := uint64(st.set.blades[i].Error)
		sum += e * e
	}
	return rootUp(sum)
}

// Trial is the trial of the blades laid together, with the sum of their errors.
func (st Stack) Trial(feel Feel) Trial {
	return Trial{Blade: st.MarkText(), Thickness: st.Total, Error: st.WorstError(), Feel: feel}
}

// MarkText is the first marks of the blades, ".015 in + .0025 in".
func (st Stack) MarkText() string {
	var b strings.Builder
	for k, i := range st.index[:st.n] {
		if k > 0 {
			b.WriteString(" + ")
		}
		b.WriteString(st.set.trials[i].Blade)
	}
	return b.String()
}

// String is the stack with its total: ".015 in + .0025 in = 0.4445 mm".
func (st Stack) String() string {
	if st.n == 0 {
		return "no blades"
	}
	return st.MarkText() + " = " + st.Total.String()
}

// MarshalText writes what [Stack.MarkText] gives.
func (st Stack) MarshalText() ([]byte, error) { return []byte(st.MarkText()), nil }
