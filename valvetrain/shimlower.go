package valvetrain

import "github.com/tenthou/tenthou/internal/assign"

// shimNone is no row or no column.
const shimNone = -1

// lower brings the greatest distance of the best assignment down as far as the sum
// of the distances, and all steps above it, allow. It leaves the assignment as it
// is where nothing is gained.
//
// How: prices of the columns, made from the best assignment, mark the pairs that
// any assignment as good can use (those that cost exactly their prices) and the
// columns that it must use (those with a price). Within these, the pairs that are
// farthest off are dropped and the assignment is mended by alternating paths, as
// long as it can be. The last table that could be is then solved for the first
// valves' first shims and the fewest on the tight side.
func (p *ShimPlanner) lower(rows, cols int) error {
	p.price(rows, cols)
	p.columnOf = append(p.columnOf[:0], p.best...)
	gained := false
	limit := int64(0)
	for {
		greatest := int64(0)
		for i, j := range p.columnOf {
			greatest = max(greatest, p.off[i*cols+j])
		}
		if gained {
			limit = greatest
		}
		if greatest == 0 || !p.mend(rows, cols, greatest) {
			break
		}
		gained = true
	}
	if !gained {
		return nil
	}
	for at := range p.cost {
		if !p.even[at] || p.off[at] > limit {
			p.cost[at] = assign.Forbidden
		}
	}
	var err error
	p.best, _, err = p.solver.LeastSum(p.best[:0], rows, cols, p.cost)
	return err
}

// price finds the greatest column prices, none above 0, at which no pair costs
// less than the prices of its row and column and the pairs of the best assignment
// cost exactly that; and so which pairs are even with their prices. The lowest
// step, which counts the tight sides, is left out.
func (p *ShimPlanner) price(rows, cols int) {
	lowest := int64(rows + 1)
	p.columnPrice = shimRoom(p.columnPrice, cols)
	clear(p.columnPrice)
	p.rowPrice = shimRoom(p.rowPrice, rows)
	p.base = shimRoom(p.base, rows*cols)
	for at, c := range p.cost {
		p.base[at] = c
		if c != assign.Forbidden {
			p.base[at] = c / lowest
		}
	}
	for changed := true; changed; {
		changed = false
		for i, own := range p.best {
			line := p.base[i*cols:][:cols]
			price := line[own] - p.columnPrice[own]
			p.rowPrice[i] = price
			for j, c := range line {
				if c != assign.Forbidden && c-price < p.columnPrice[j] {
					p.columnPrice[j], changed = c-price, true
				}
			}
		}
	}
	if cap(p.even) < rows*cols {
		p.even = make([]bool, rows*cols)
	}
	p.even = p.even[:rows*cols]
	for i := range rows {
		for j := range cols {
			at := i*cols + j
			p.even[at] = p.base[at] != assign.Forbidden && p.base[at] == p.rowPrice[i]+p.columnPrice[j]
		}
	}
}

// mend drops every pair as far off as limit from the assignment and finds another
// without such pairs that is as good; where there is none it reports so, and
// p.columnOf is of no more use.
func (p *ShimPlanner) mend(rows, cols int, limit int64) bool {
	p.rowOf, p.from = shimInts(p.rowOf, cols), shimInts(p.from, cols)
	for j := range p.rowOf {
		p.rowOf[j] = shimNone
	}
	for i, j := range p.columnOf {
		if p.off[i*cols+j] >= limit {
			p.columnOf[i] = shimNone
		} else {
			p.rowOf[j] = i
		}
	}
	for i := range rows {
		if p.columnOf[i] == shimNone && !p.place(i, cols, limit) {
			return false
		}
	}
	for j := range cols {
		if p.rowOf[j] == shimNone && p.columnPrice[j] < 0 && !p.cover(j, rows, cols, limit) {
			return false
		}
	}
	return true
}

// place gives row first a column, by a path over rows that hand theirs on to a
// column that nobody has.
func (p *ShimPlanner) place(first, cols int, limit int64) bool {
	for j := range p.from {
		p.from[j] = shimNone
	}
	p.queue = append(p.queue[:0], first)
	for at := 0; at < len(p.queue); at++ {
		i := p.queue[at]
		for j := range cols {
			if p.from[j] != shimNone || !p.even[i*cols+j] || p.off[i*cols+j] >= limit {
				continue
			}
			p.from[j] = i
			if next := p.rowOf[j]; next != shimNone {
				p.queue = append(p.queue, next)
				continue
			}
			for j != shimNone {
				row := p.from[j]
				p.rowOf[j] = row
				j, p.columnOf[row] = p.columnOf[row], j
			}
			return true
		}
	}
	return false
}

// cover gives column first a row, by a path over columns that lose theirs to one
// that may go without.
func (p *ShimPlanner) cover(first, rows, cols int, limit int64) bool {
	for j := range p.from {
		p.from[j] = shimNone
	}
	p.from[first] = first
	p.queue = append(p.queue[:0], first)
	for at := 0; at < len(p.queue); at++ {
		j := p.queue[at]
		for i := range rows {
			other := p.columnOf[i]
			if p.from[other] != shimNone || !p.even[i*cols+j] || p.off[i*cols+j] >= limit {
				continue
			}
			p.from[other] = j
			if p.columnPrice[other] < 0 {
				p.queue = append(p.queue, other)
				continue
			}
			row := i
			p.rowOf[other] = shimNone
			for lost := other; lost != first; {
				gains := p.from[lost]
				p.columnOf[row] = gains
				row, p.rowOf[gains] = p.rowOf[gains], row
				lost = gains
			}
			return true
		}
	}
	return false
}

func shimInts(s []int, n int) []int {
	if cap(s) < n {
		return make([]int, n)
	}
	return s[:n]
}
