package assign

import (
	"math"
	"slices"
)

// leastGreatest is the least cost that the dearest of as many pairs as can be
// made may have. Pairs are added one at a time, each along the path, from any
// row without a column to any column without a row, whose dearest pair is
// cheapest. The dearest pair never gets dearer than the answer: while there are
// fewer pairs, none of them dearer, there is a path among pairs up to the answer.
//
// So any pairs that can't be dearer than the answer do to begin with: those of
// the least sum that are within what every answer reaches.
func (s *Solver) leastGreatest() int64 {
	s.leastSum()
	greatest := s.reached()
	for i, j := range s.columnOf {
		if j != None && s.cost[i*s.cols+j] > greatest {
			s.columnOf[i], s.rowOf[j] = None, None
		}
	}
	for {
		free := s.cheapestPath()
		if free == None {
			s.unpair()
			return greatest
		}
		greatest = max(greatest, s.distance[free])
		for j := free; j != None; {
			row := s.before[j]
			s.rowOf[j] = row
			s.columnOf[row], j = j, s.columnOf[row]
		}
	}
}

// reached is a cost that the dearest of as many pairs as are made now reaches
// at the least: where every row has a column, the cheapest pair of each row, and
// the same for columns.
func (s *Solver) reached() int64 {
	least := int64(math.MinInt64)
	pairs := 0
	for _, j := range s.columnOf {
		if j != None {
			pairs++
		}
	}
	if pairs == s.rows {
		for i := range s.rows {
			least = max(least, slices.Min(s.cost[i*s.cols:][:s.cols]))
		}
	}
	if pairs == s.cols {
		copy(s.distance, s.cost)
		for i := range s.rows {
			for j, c := range s.cost[i*s.cols:][:s.cols] {
				s.distance[j] = min(s.distance[j], c)
			}
		}
		least = max(least, slices.Max(s.distance))
	}
	return least
}

// cheapestPath gives the column without a row that the cheapest path leads to,
// distance holding the path's dearest pair.
func (s *Solver) cheapestPath() int {
	for j := range s.distance {
		s.distance[j], s.seen[j] = far, false
	}
	for row, j := range s.columnOf {
		if j == None {
			s.reachDear(row, math.MinInt64)
		}
	}
	for {
		next := None
		for j, d := range s.distance {
			// Of two as dear, one without a row ends the search.
			if !s.seen[j] && d < far && (next == None || d < s.distance[next] || d == s.distance[next] && s.rowOf[j] == None) {
				next = j
			}
		}
		if next == None || s.rowOf[next] == None {
			return next
		}
		s.seen[next] = true
		s.reachDear(s.rowOf[next], s.distance[next])
	}
}

// reachDear makes the columns' paths cheaper by way of row.
func (s *Solver) reachDear(row int, dearest int64) {
	cost := s.cost[row*s.cols:][:s.cols]
	distance, seen := s.distance[:len(cost)], s.seen[:len(cost)]
	for j, c := range cost {
		if c = max(c, dearest); c < distance[j] && !seen[j] {
			distance[j], s.before[j] = c, row
		}
	}
}
