package tolerance_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The judge of bands and specs works on a grid of small whole numbers: with
// all ends on the grid, every value of the number line is judged as the grid
// point that it is, or as the half between two grid points. It counts in
// halves and tries them all.

var kindsOfEnd = []End{Absent, Open, Closed}

// grid gives the halves from below 0 to above n.
func grid(n int) (halves []int) {
	for h := -1; h <= 2*n+1; h++ {
		halves = append(halves, h)
	}
	return halves
}

// past the lower end, past the upper end, in halves.
func pastLower(h int, lo units.Length, end End) bool {
	return end != Absent && (h < 2*int(lo) || h == 2*int(lo) && end == Open)
}

func pastUpper(h int, hi units.Length, end End) bool {
	return end != Absent && (h > 2*int(hi) || h == 2*int(hi) && end == Open)
}

func in(h int, i Bracket) bool { return !below(h, i) && !above(h, i) }

func below(h int, i Bracket) bool { lo, end := i.Lower(); return pastLower(h, lo, end) }

func above(h int, i Bracket) bool { hi, end := i.Upper(); return pastUpper(h, hi, end) }

// values are the halves that lie in i.
func values(halves []int, i Bracket) (list []int) {
	for _, h := range halves {
		if in(h, i) {
			list = append(list, h)
		}
	}
	return list
}

// intervals are all intervals with ends from 0 to n.
func intervals(t *testing.T, n int) (list []Bracket) {
	halves := grid(n)
	for _, loEnd := range kindsOfEnd {
		for _, hiEnd := range kindsOfEnd {
			for lo := range units.Length(n + 1) {
				for hi := range units.Length(n + 1) {
					i, err := NewInterval(lo, loEnd, hi, hiEnd)
					_, bandErr := NewBand(lo, loEnd, hi, hiEnd)
					any := slices.ContainsFunc(halves, func(h int) bool { return !pastLower(h, lo, loEnd) && !pastUpper(h, hi, hiEnd) })
					if !any {
						require.ErrorIs(t, err, ErrOrder)
						require.ErrorIs(t, bandErr, ErrOrder)
						continue
					}
					require.NoError(t, err)
					require.NoError(t, bandErr)
					if !slices.Contains(list, i) {
						list = append(list, i)
					}
				}
			}
		}
	}
	return list
}

func TestBand_judgeGrid(t *testing.T) {
	const n = 6
	halves := grid(n)
	all := intervals(t, n)
	require.Len(t, all, 1+4*(n+1)+7+4*(n+1)*n/2) // none, one and both ends; 7 single values
	for _, i := range all {
		b := BandFrom(i)
		for _, x := range all {
			inside, under, over := true, true, true
			for _, h := range values(halves, x) {
				inside = inside && in(h, i)
				under = under && below(h, i)
				over = over && above(h, i)
			}
			want := Undecided
			switch {
			case i.IsZero():
			case inside:
				want = Within
			case under:
				want = Below
			case over:
				want = Above
			}
			require.Equal(t, want, b.Judge(x), "%v against %v", x, b)
			require.Equal(t, inside, x.Within(i), "%v within %v", x, i)

			both, ok := i.Intersect(x)
			common := values(halves, i)
			common = slices.DeleteFunc(common, func(h int) bool { return !in(h, x) })
			require.Equal(t, len(common) > 0, ok)
			require.Equal(t, ok, both.InRange())
			if ok {
				require.Equal(t, common, values(halves, both), "%v and %v", i, x)
			}

			d := Compare(b, BandFrom(x))
			for _, h := range halves {
				only := func(list []Bracket) bool {
					return slices.ContainsFunc(list, func(i Bracket) bool { return in(h, i) })
				}
				require.Equal(t, in(h, i) && !in(h, x), only(d.OnlyFirst))
				require.Equal(t, in(h, x) && !in(h, i), only(d.OnlySecond))
			}
			require.LessOrEqual(t, len(d.OnlyFirst), 2)
			require.Equal(t, i == x, d.Same())
		}
		for q := range units.Length(n + 1) {
			require.Equal(t, in(2*int(q), i), i.Contains(q))
			require.Equal(t, in(2*int(q), i) && !b.IsZero(), b.Allows(q))
		}
	}
}

// choices calls visit with the least and the greatest of every choice of one
// value from each station.
func choices(halves []int, stations []Bracket, visit func(least, greatest int)) {
	if len(stations) == 1 {
		for _, h := range values(halves, stations[0]) {
			visit(h, h)
		}
		return
	}
	for _, h := range values(halves, stations[0]) {
		choices(halves, stations[1:], func(least, greatest int) { visit(min(least, h), max(greatest, h)) })
	}
}

// verdicts gathers the one verdict, or Undecided.
type verdicts struct {
	v    Verdict
	many bool
}

func (s *verdicts) add(v Verdict) {
	s.many = s.many || s.v != Undecided && s.v != v
	s.v = v
}

func (s *verdicts) one() Verdict {
	if s.many {
		return Undecided
	}
	return s.v
}

func TestBand_judgeAllGrid(t *testing.T) {
	const n = 4
	halves := grid(n)
	all := intervals(t, n)
	r := rand.New(rand.NewPCG(5, 7))
	count := map[Sides]int{}
	for range 20_000 {
		b := all[r.IntN(len(all))]
		stations := make([]Bracket, 1+r.IntN(3))
		for k := range stations {
			stations[k] = all[r.IntN(len(all))]
		}
		var low, high verdicts
		choices(halves, stations, func(least, greatest int) {
			l, g := Within, Within
			if below(least, b) {
				l = Below
			}
			if above(greatest, b) {
				g = Above
			}
			low.add(l)
			high.add(g)
		})
		want := Sides{low.one(), high.one()}
		if b.IsZero() {
			want = Sides{}
		}
		require.Equal(t, want, BandFrom(b).JudgeAll(stations...), "%v against %v", stations, b)
		count[want]++
	}
	t.Log(count)
	require.Len(t, count, 9, "every pair of verdicts came up")
}

// standing of one part of which the extremes are known exactly.
func standing(s Spec, least, greatest int) Standing {
	wear, fresh := s.Wear.Interval(), s.New.Interval()
	_, lowWear := wear.Lower()
	_, highWear := wear.Upper()
	switch {
	case below(least, wear) || above(greatest, wear):
		return PastWearLimit
	case below(least, fresh) && lowWear == Absent, above(greatest, fresh) && highWear == Absent:
		return OutsideNewBand
	case below(least, fresh), above(greatest, fresh), fresh.IsZero():
		return Usable
	}
	return AsNew
}

func TestSpec_standGrid(t *testing.T) {
	const n = 3
	halves := grid(n)
	all := intervals(t, n)
	r := rand.New(rand.NewPCG(11, 13))
	count := map[Standing]int{}
	check := func(s Spec, stations ...Bracket) {
		best, worst := PastWearLimit, CantTell
		choices(halves, stations, func(least, greatest int) {
			v := standing(s, least, greatest)
			best, worst = min(best, v), max(worst, v)
		})
		want := CantTell
		switch {
		case s.IsZero():
		case best == worst:
			want = best
		case worst == Usable:
			want = Usable
		}
		require.Equal(t, want, s.StandAll(stations...), "%v against %+v", stations, s)
		count[want]++
	}
	for _, fresh := range all {
		for _, wear := range all {
			s := Spec{New: BandFrom(fresh), Wear: BandFrom(wear)}
			for _, x := range all {
				check(s, x)
				require.Equal(t, s.StandAll(x), s.Stand(x))
			}
			for range 12 {
				check(s, all[r.IntN(len(all))], all[r.IntN(len(all))], all[r.IntN(len(all))])
			}
		}
	}
	t.Log(count)
	require.Len(t, count, 5)
}

func TestSpec_validateGrid(t *testing.T) {
	const n = 4
	halves := grid(n)
	all := intervals(t, n)
	refused := 0
	for _, fresh := range all {
		for _, wear := range all {
			_, freshLow := fresh.Lower()
			_, freshHigh := fresh.Upper()
			_, wearLow := wear.Lower()
			_, wearHigh := wear.Upper()
			reaches, meet := false, false
			for _, h := range halves {
				reaches = reaches ||
					freshLow != Absent && wearLow != Absent && !below(h, fresh) && below(h, wear) ||
					freshHigh != Absent && wearHigh != Absent && !above(h, fresh) && above(h, wear)
				meet = meet || in(h, fresh) && in(h, wear)
			}
			err := Spec{New: BandFrom(fresh), Wear: BandFrom(wear)}.Validate()
			if reaches || !meet {
				require.ErrorIs(t, err, ErrSpec, "%v, %v", fresh, wear)
				refused++
			} else {
				require.NoError(t, err, "%v, %v", fresh, wear)
			}
		}
	}
	require.Greater(t, refused, 1000)
}
