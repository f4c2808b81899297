package assign

import (
	"errors"
	"fmt"
	"math"
)

// Forbidden is the cost of a pair that may not be made.
const Forbidden = math.MaxInt64

// None is the column of a row that has none.
const None = -1

// The kinds of [InputError], for errors.Is.
var (
	// ErrEmpty is a table without rows or columns.
	ErrEmpty = errors.New("nothing to pair")
	// ErrSize is a table that has not rows × columns costs.
	ErrSize = errors.New("not a cost for every pair")
	// ErrCost is a cost so great that sums could overflow.
	ErrCost = errors.New("cost out of range")
)

// An InputError says what is wrong with a table.
type InputError struct {
	Rows, Cols int
	Costs      int   // how many were given
	At         int   // which cost is out of range, counted from 0
	Cost       int64 // that cost
	Kind       error // ErrEmpty, ErrSize or ErrCost
}

func (e *InputError) Error() string {
	switch e.Kind {
	case ErrCost:
		return fmt.Sprintf("assign: row %d, column %d: cost %d: %v; %d pairs of that cost must stay below 2^59 together, or the pair be Forbidden",
			e.At/max(e.Cols, 1), e.At%max(e.Cols, 1), e.Cost, e.Kind, min(e.Rows, e.Cols))
	case ErrSize:
		return fmt.Sprintf("assign: %d costs for %d rows and %d columns: %v", e.Costs, e.Rows, e.Cols, e.Kind)
	}
	return fmt.Sprintf("assign: %d rows and %d columns: %v; at least one of each", e.Rows, e.Cols, e.Kind)
}

// Unwrap gives the kind.
func (e *InputError) Unwrap() error { return e.Kind }

// An Answer says what a pairing comes to. Of no pairs, Sum and Greatest are 0.
type Answer struct {
	Pairs    int   // as many as can be made
	Sum      int64 // of their costs
	Greatest int64 // of their costs
}

// A Solver solves one problem after another in the same memory. The zero value
// is ready. Two goroutines can't use one at the same time.
type Solver struct {
	rows, cols int
	cost       []int64 // the caller's, row after row
	limit      int64   // dearer pairs are forbidden
	least      int64   // the least allowed cost, which the others are counted from
	out        int64   // the cost of staying out

	rowPrice, colPrice []int64
	columnOf, rowOf    []int // None where there is none
	distance           []int64
	before             []int // the row, or among ties the column, before a column on its path
	seen               []bool
	queue              []int

	// Among ties, the way back from a column that its row leaves.
	onward []int
	passed []bool
	line   []int
}

// LeastSum makes as many pairs as can be made at the least sum. cost holds
// rows × cols costs, row after row. It appends to dst the column of each row, or
// [None].
func (s *Solver) LeastSum(dst []int, rows, cols int, cost []int64) ([]int, Answer, error) {
	if err := s.take(rows, cols, cost); err != nil {
		return dst, Answer{}, err
	}
	return s.finish(dst)
}

// LeastGreatest makes as many pairs as can be made, with the least greatest
// cost, and among such pairings with the least sum. It takes and gives what
// [Solver.LeastSum] does.
func (s *Solver) LeastGreatest(dst []int, rows, cols int, cost []int64) ([]int, Answer, error) {
	if err := s.take(rows, cols, cost); err != nil {
		return dst, Answer{}, err
	}
	s.limit = s.leastGreatest()
	return s.finish(dst)
}

// take checks the table and makes ready for it.
func (s *Solver) take(rows, cols int, cost []int64) error {
	fail := func(kind error) error {
		return &InputError{Rows: rows, Cols: cols, Costs: len(cost), Kind: kind}
	}
	if rows <= 0 || cols <= 0 {
		return fail(ErrEmpty)
	}
	if len(cost)%rows != 0 || len(cost)/rows != cols {
		return fail(ErrSize)
	}
	pairs := int64(min(rows, cols))
	most := int64(1<<59-1) / pairs
	least, greatest := int64(math.MaxInt64), int64(math.MinInt64)
	for i, c := range cost {
		if c == Forbidden {
			continue
		}
		if c > most || c < -most {
			return &InputError{Rows: rows, Cols: cols, Costs: len(cost), At: i, Cost: c, Kind: ErrCost}
		}
		least, greatest = min(least, c), max(greatest, c)
	}
	if least > greatest { // every pair is forbidden
		least, greatest = 0, 0
	}
	s.out = pairs*(greatest-least) + 1
	s.rows, s.cols, s.cost, s.limit, s.least = rows, cols, cost, Forbidden-1, least
	s.rowPrice, s.columnOf = room(s.rowPrice, rows), room(s.columnOf, rows)
	s.colPrice, s.rowOf = room(s.colPrice, cols), room(s.rowOf, cols)
	s.distance, s.before, s.seen = room(s.distance, cols), room(s.before, cols), room(s.seen, cols)
	s.onward, s.passed = room(s.onward, cols), room(s.passed, cols)
	s.queue, s.line = room(s.queue, cols)[:0], room(s.line, cols)[:0]
	s.unpair()
	return nil
}

func room[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

func (s *Solver) unpair() {
	for i := range s.columnOf {
		s.columnOf[i] = None
	}
	for j := range s.rowOf {
		s.rowOf[j] = None
	}
}

// finish solves, and hands the answer over.
func (s *Solver) finish(dst []int) ([]int, Answer, error) {
	s.leastSum()
	s.settleTies()
	var a Answer
	for i, j := range s.columnOf {
		if j == None {
			continue
		}
		c := s.cost[i*s.cols+j]
		if a.Pairs == 0 || c > a.Greatest {
			a.Greatest = c
		}
		a.Pairs++
		a.Sum += c
	}
	s.cost = nil // the caller's again
	return append(dst, s.columnOf...), a, nil
}
