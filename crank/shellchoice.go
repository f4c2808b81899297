package crank

import (
	"cmp"
	"errors"
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ErrShellSearch is the kind of error where a stock is so short, and halves may be
// mixed so freely, that the best way to share it out isn't found in a reasonable
// time.
var ErrShellSearch = errors.New("crank: too many ways to share out the shells")

// A ShellSearchError says how many ways were looked at.
type ShellSearchError struct {
	Steps int // before it was given up
}

// Error says what to do about it.
func (e *ShellSearchError) Error() string {
	return ErrShellSearch.Error() + ": gave up after " + strconv.Itoa(e.Steps) + " steps; mix only halves that differ by one step, or count more shells"
}

// Unwrap gives [ErrShellSearch].
func (e *ShellSearchError) Unwrap() error { return ErrShellSearch }

// mostShellSteps takes about a second.
const mostShellSteps = 20_000_000

// A shellWay is one pair of halves for one bearing.
type shellWay struct {
	clearance    tolerance.Bracket
	distance     units.Length
	out          int // 1 where it isn't in band for certain
	upper, lower int16
	verdict      tolerance.Verdict
}

// nearer puts the better way first: in band for certain, nearer to the aim, halves
// of one class, the greater clearance, the first in stock.
func (a *shellWay) nearer(b *shellWay) int {
	if c := a.out - b.out; c != 0 {
		return c
	}
	if c := cmp.Compare(a.distance, b.distance); c != 0 {
		return c
	}
	if a.upper == a.lower != (b.upper == b.lower) {
		if a.upper == a.lower {
			return -1
		}
		return 1
	}
	lo, _ := a.clearance.Lower()
	other, _ := b.clearance.Lower()
	if c := cmp.Compare(other, lo); c != 0 {
		return c
	}
	if c := cmp.Compare(a.upper, b.upper); c != 0 {
		return c
	}
	return cmp.Compare(a.lower, b.lower)
}

// ChooseShells shares out the shells in stock so that as many clearances as can be
// are in the wanted band for certain; of all ways to do that it takes the one with
// the least greatest distance from the aim, and of those the one with the least
// sum of distances. It is exact: the best ways of each bearing are tried together,
// and what can't come out better is left out, nothing else.
//
// Of two ways as near it takes halves of one class before mixed ones, and the
// greater clearance before the lesser. A bearing whose clearance isn't in band gets
// its shells all the same, with the verdict that they don't do.
//
// It fails with an [InputError] where the job can't be, or there are fewer halves
// than bearings, and with a [ShellSearchError] where it takes too long.
func ChooseShells(j *ShellJob) (ShellChoice, error) {
	if err := j.check(); err != nil {
		return ShellChoice{}, err
	}
	s := shellSearch{job: j, ways: make([][]shellWay, len(j.Bearings))}
	pairs := s.pairs()
	if len(pairs) == 0 {
		return ShellChoice{}, &InputError{"shells in stock", "(no pair)", "an upper and a lower half that go together"}
	}
	all := make([]shellWay, len(pairs)*len(j.Bearings))
	for i := range j.Bearings {
		s.ways[i] = all[i*len(pairs) : (i+1)*len(pairs) : (i+1)*len(pairs)]
		s.fill(i, pairs)
	}
	if s.picked = make([]int, len(j.Bearings)); !s.firstChoices() {
		if err := s.share(); err != nil {
			return ShellChoice{}, err
		}
	}
	c := ShellChoice{Picks: make([]ShellPick, len(j.Bearings))}
	for i, k := range s.picked {
		w := &s.ways[i][k]
		c.Picks[i] = ShellPick{int(w.upper), int(w.lower), w.clearance, w.verdict, w.distance}
		c.InBand += 1 - w.out
		c.Greatest = max(c.Greatest, w.distance)
		c.Sum += w.distance
	}
	return c, nil
}

type shellSearch struct {
	job    *ShellJob
	ways   [][]shellWay
	picked []int // the answer, by bearing
	now    []int
	left   [2][MostBearings]int // halves left of each class: uppers, lowers
	order  [][]int16            // of each bearing, its ways from the nearest
	bound  []shellScore         // the best that those from here on could come to
	best   shellScore
	found  bool
	steps  int
}

// A shellScore is what ways are compared by, in this order.
type shellScore struct {
	out           int
	greatest, sum units.Length
}

func (a shellScore) compare(b shellScore) int {
	return cmp.Or(cmp.Compare(a.out, b.out), cmp.Compare(a.greatest, b.greatest), cmp.Compare(a.sum, b.sum))
}

func (a shellScore) with(b shellScore) shellScore {
	return shellScore{a.out + b.out, max(a.greatest, b.greatest), a.sum + b.sum}
}

type shellPair struct {
	wall         tolerance.Bracket // both together
	upper, lower int16
}

// pairs are all pairs of halves that go together and are in stock.
func (s *shellSearch) pairs() []shellPair {
	j := s.job
	pairs := make([]shellPair, 0, len(j.Classes)*len(j.Classes))
	for u := range j.Classes {
		for l := range j.Classes {
			a, b := &j.Classes[u], &j.Classes[l]
			if u != l {
				if !j.Mixed {
					continue
				}
				if j.MostStep > 0 {
					x, _ := a.Wall.Middle()
					y, _ := b.Wall.Middle()
					if x.Sub(y).Abs() > j.MostStep {
						continue
					}
				}
			}
			if s.stock(0, u) > 0 && s.stock(1, l) > 0 {
				pairs = append(pairs, shellPair{a.Wall.Add(b.Wall), int16(u), int16(l)})
			}
		}
	}
	return pairs
}

// stock is how many halves of a class there are; more than there are bearings count
// as that.
func (s *shellSearch) stock(side, class int) int {
	h := s.job.Classes[class].Uppers
	if side == 1 {
		h = s.job.Classes[class].Lowers
	}
	if !h.Known {
		return len(s.job.Bearings)
	}
	return min(h.Pieces, len(s.job.Bearings))
}

// fill works out every pair for a bearing.
func (s *shellSearch) fill(i int, pairs []shellPair) {
	b, wanted := &s.job.Bearings[i], &s.job.Wanted
	room := b.Housing.Sub(b.Journal)
	for k := range pairs {
		w := &s.ways[i][k]
		w.clearance = room.Sub(pairs[k].wall)
		w.upper, w.lower = pairs[k].upper, pairs[k].lower
		lo, hi := journalEnds(w.clearance)
		w.distance = max(hi-wanted.Aim, wanted.Aim-lo)
		if w.verdict = wanted.Band.Judge(w.clearance); w.verdict != tolerance.Within {
			w.out = 1
		}
	}
}

// firstChoices gives each bearing its nearest pair, and reports whether the stock
// allows that.
func (s *shellSearch) firstChoices() bool {
	for i := range s.ways {
		best := 0
		for k := range s.ways[i] {
			if s.ways[i][k].nearer(&s.ways[i][best]) < 0 {
				best = k
			}
		}
		s.picked[i] = best
	}
	for side := range s.left {
		for c := range s.job.Classes {
			s.left[side][c] = s.stock(side, c)
		}
	}
	short := false
	for i, k := range s.picked {
		w := &s.ways[i][k]
		s.left[0][w.upper]--
		s.left[1][w.lower]--
		short = short || s.left[0][w.upper] < 0 || s.left[1][w.lower] < 0
	}
	return !short
}

// share finds the best way to share out a stock that is short.
func (s *shellSearch) share() error {
	n := len(s.ways)
	halves := [2]int{}
	for side := range s.left {
		for c := range s.job.Classes {
			s.left[side][c] = s.stock(side, c)
			halves[side] += s.left[side][c]
		}
	}
	if least := min(halves[0], halves[1]); least < n {
		return &InputError{"shells in stock", strconv.Itoa(least) + " pairs", "a pair for each of " + strconv.Itoa(n) + " bearings"}
	}
	s.order, s.now, s.bound = make([][]int16, n), make([]int, n), make([]shellScore, n+1)
	places := make([]int16, n*len(s.ways[0]))
	for i, ways := range s.ways {
		s.order[i] = places[i*len(ways) : (i+1)*len(ways)]
		for k := range ways {
			s.order[i][k] = int16(k)
		}
		slices.SortFunc(s.order[i], func(a, b int16) int { return ways[a].nearer(&ways[b]) })
	}
	for i := n - 1; i >= 0; i-- {
		w := &s.ways[i][s.order[i][0]]
		s.bound[i] = s.bound[i+1].with(shellScore{w.out, w.distance, w.distance})
	}
	s.try(0, shellScore{})
	switch {
	case s.steps > mostShellSteps:
		return &ShellSearchError{s.steps}
	case !s.found:
		return &InputError{"shells in stock", "(too few)", "halves that go together for all of " + strconv.Itoa(n) + " bearings"}
	}
	return nil
}

// try gives the bearings from i on their shells, in every way that may come out
// better than the best so far.
func (s *shellSearch) try(i int, so shellScore) {
	if i == len(s.order) {
		s.best, s.found = so, true
		copy(s.picked, s.now)
		return
	}
	for _, k := range s.order[i] {
		w := &s.ways[i][k]
		if s.steps++; s.steps > mostShellSteps {
			return
		}
		here := so.with(shellScore{w.out, w.distance, w.distance})
		// The ways are in order, so none after this one does better either.
		if s.found && here.with(s.bound[i+1]).compare(s.best) >= 0 {
			return
		}
		if s.left[0][w.upper] == 0 || s.left[1][w.lower] == 0 {
			continue
		}
		s.left[0][w.upper]--
		s.left[1][w.lower]--
		s.now[i] = int(k)
		s.try(i+1, here)
		s.left[0][w.upper]++
		s.left[1][w.lower]++
	}
}
