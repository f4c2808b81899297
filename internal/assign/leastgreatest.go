package assign

import "math"

// leastGreatest is the least cost that the dearest of as many pairs as can be
// made may have. Pairs are added one at a time, each along the path, from any
// row without a column to any column without a row, whose dearest pair is
// cheapest. However many pairs there are then, the dearest is as cheap as it can
// be: with all pairs up to the best cost for one more, there is a path.
func (s *Solver) leastGreatest() int64 {
	greatest := int64(math.MinInt64)
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
