package assign

// far is beyond every distance.
const far = 1<<63 - 1

// leastSum brings the rows in one at a time, each by a shortest path. At every
// step, and so at the end, each pair costs at least what its row and column are
// priced at, and a pair that is made costs exactly that; no column's price is
// above 0, that of a column without a row is 0, and no row's is above s.out, that
// of a row kept out being s.out.
func (s *Solver) leastSum() {
	clear(s.rowPrice)
	clear(s.colPrice)
	for row := range s.rows {
		s.bringIn(row)
	}
}

// bringIn gives row a column, or leaves it or another row without, by the
// shortest of all paths that end at a column without a row or at a row that is
// put out. Columns that are not reached within that distance keep their prices.
func (s *Solver) bringIn(first int) {
	for j := range s.distance {
		s.distance[j], s.seen[j] = far, false
	}
	s.queue = s.queue[:0] // the columns passed, nearest first
	row, walked := first, int64(0)
	put, end := first, s.out // the row to put out, and how far that is
	var free int
	for {
		if d := walked + s.out - s.rowPrice[row]; d < end {
			put, end = row, d
		}
		next := s.reach(row, walked)
		if next == None || s.distance[next] >= end {
			free = None
			break
		}
		if s.rowOf[next] == None {
			free, end = next, s.distance[next]
			break
		}
		s.seen[next] = true
		s.queue = append(s.queue, next)
		row, walked = s.rowOf[next], s.distance[next]
	}
	s.rowPrice[first] += end
	for _, j := range s.queue {
		s.rowPrice[s.rowOf[j]] += end - s.distance[j]
		s.colPrice[j] -= end - s.distance[j]
	}
	j := free
	if free == None {
		// The row put out hands its column on. It is never reached again.
		j = s.columnOf[put]
		s.columnOf[put] = None
	}
	for j != None {
		row := s.before[j]
		s.rowOf[j] = row
		s.columnOf[row], j = j, s.columnOf[row]
	}
}

// reach shortens the distances of the columns by way of row, which is walked
// away, and gives the nearest one not yet seen.
func (s *Solver) reach(row int, walked int64) (nearest int) {
	cost := s.cost[row*s.cols:][:s.cols]
	distance, price, seen := s.distance[:len(cost)], s.colPrice[:len(cost)], s.seen[:len(cost)]
	base := walked - s.rowPrice[row] - s.least
	nearest, least := None, int64(far)
	for j, c := range cost {
		if seen[j] {
			continue
		}
		d := distance[j]
		if c <= s.limit {
			if by := base + c - price[j]; by < d {
				d = by
				distance[j], s.before[j] = d, row
			}
		}
		if d < least {
			nearest, least = j, d
		}
	}
	return nearest
}
