package assign

// settleTies turns a best pairing into the best one with the lowest columns for
// the first rows. Every best pairing uses pairs that cost exactly their prices,
// puts out only rows whose price is s.out, and leaves out no column whose price
// is below 0.
//
// From one best pairing to another leads a chain: row i takes column j, the row
// that had j takes another, and so on. It closes when a row takes what i had.
// Or it ends, at a column that no row had or at a row that goes out; then what i
// had is taken by yet another row, and so on back to a row that comes in or a
// column that goes without. If those two halves met, the chain would close.
func (s *Solver) settleTies() {
	for i := range s.rows {
		s.lower(i)
	}
}

// tight reports whether the pair costs exactly its prices.
func (s *Solver) tight(row, col int) bool {
	c := s.cost[row*s.cols+col]
	return c <= s.limit && c-s.least == s.rowPrice[row]+s.colPrice[col]
}

// lower gives row i the lowest column that the rows after it can spare.
func (s *Solver) lower(i int) {
	now := s.columnOf[i]
	most := s.cols
	if now != None {
		most = now
	}
	started, asked, spare := false, false, true
	var incoming, from int
	for j := range most {
		if !s.tight(i, j) {
			continue
		}
		if !started {
			clear(s.seen)
			started = true
		}
		last, out := s.hand(i, j)
		if last == None {
			continue
		}
		if last != now && now != None {
			if !asked {
				incoming, from, spare = s.refill(i, now)
				asked = true
			}
			if !spare {
				continue
			}
			s.takeOver(incoming, from, now)
		}
		s.shift(i, last, out)
		return
	}
}

// hand looks for a chain that begins with row i taking column first, and gives
// its last column and the row that goes out there, if one does. It gives i's own
// column where the chain closes, and [None] where there is no chain. A column
// seen once need not be seen again for i: what it leads to wouldn't do.
func (s *Solver) hand(i, first int) (last, out int) {
	last, out = None, None
	if s.seen[first] {
		return last, out
	}
	s.seen[first] = true
	s.before[first] = None
	s.queue = append(s.queue[:0], first)
	for at := 0; at < len(s.queue); at++ {
		j := s.queue[at]
		row := s.rowOf[j]
		switch {
		case row == i:
			return j, None
		case row == None:
			last, out = j, None
			continue
		case row < i:
			continue
		case s.rowPrice[row] == s.out:
			last, out = j, row
		}
		for k := range s.cols {
			if !s.seen[k] && s.tight(row, k) {
				s.seen[k] = true
				s.before[k] = j
				s.queue = append(s.queue, k)
			}
		}
	}
	return last, out
}

// refill looks for what becomes of column now when row i leaves it: a chain of
// rows after i move over, from the column from, which is left without a row or
// taken by the row incoming.
func (s *Solver) refill(i, now int) (incoming, from int, ok bool) {
	clear(s.passed)
	s.passed[now] = true
	s.line = append(s.line[:0], now)
	for at := 0; at < len(s.line); at++ {
		j := s.line[at]
		if s.colPrice[j] == 0 {
			return None, j, true
		}
		for row := i + 1; row < s.rows; row++ {
			k := s.columnOf[row]
			if k != None && s.passed[k] || !s.tight(row, j) {
				continue
			}
			if k == None {
				return row, j, true
			}
			s.passed[k] = true
			s.onward[k] = j
			s.line = append(s.line, k)
		}
	}
	return None, None, false
}

// takeOver moves the rows of a chain that refill found.
func (s *Solver) takeOver(incoming, from, now int) {
	for row, j := incoming, from; ; j = s.onward[j] {
		had := s.rowOf[j]
		s.rowOf[j] = row
		if row != None {
			s.columnOf[row] = j
		}
		if j == now {
			return
		}
		row = had
	}
}

// shift moves each row on the chain that ends at column last one column along,
// puts out the row out, if there is one, and gives i the chain's first column.
func (s *Solver) shift(i, last, out int) {
	if out != None {
		s.columnOf[out] = None
	}
	j := last
	for s.before[j] != None {
		from := s.before[j]
		row := s.rowOf[from]
		s.columnOf[row], s.rowOf[j] = j, row
		j = from
	}
	s.columnOf[i], s.rowOf[j] = j, i
}
