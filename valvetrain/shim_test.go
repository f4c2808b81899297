package valvetrain

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// shimHead draws a head whose sizes are whole micrometres.
func shimHead(r *rand.Rand, valves, drawer int, disturb, ratios bool) ShimHead {
	um := func(lo, hi int, end tolerance.End) tolerance.Bracket {
		b, err := tolerance.NewInterval(units.Length(lo)*units.Micrometre, tolerance.Closed, units.Length(hi)*units.Micrometre, end)
		if err != nil {
			panic(err)
		}
		return b
	}
	base, spread := 2300, 60
	if r.IntN(2) == 0 { // shims close together, which suit more valves
		base, spread = 2480, 12
	}
	shim := func() tolerance.Bracket {
		m, e := base+10*r.IntN(spread)+r.IntN(3)-1, r.IntN(3)
		return um(m-e, m+e, tolerance.Closed)
	}
	h := ShimHead{Disturb: disturb, Set: feeler.Metric20()}
	for range valves {
		lo, width := 100+10*r.IntN(30), 10*(1+r.IntN(3))
		least := 150 + 50*r.IntN(3)
		if r.IntN(3) == 0 { // in band, or near it
			lo = least + 10*r.IntN(4)
		}
		v := ShimValve{Where: "v", Measured: um(lo, lo+width, tolerance.Open), Shim: shim(), Wanted: tolerance.BandFrom(um(least, least+50+10*r.IntN(3), tolerance.Closed))}
		switch r.IntN(20) {
		case 0:
			v.Measured = stemAt("[0.5 mm, ∞)")
		case 1:
			v.Measured = um(0, 50, tolerance.Open)
		case 2:
			v.Shim = tolerance.Bracket{}
		case 3:
			v.Measured = um(lo, lo+80, tolerance.Open)
		}
		if r.IntN(5) == 0 {
			v.Aim = units.Length(least+10) * units.Micrometre
		}
		if ratios {
			v.Ratio = []tolerance.Ratio{{}, {Num: 1, Den: 1}, {Num: 3, Den: 2}, {Num: 13, Den: 9}, {Num: 2, Den: 3}}[r.IntN(5)]
		}
		h.Valves = append(h.Valves, v)
	}
	for range drawer {
		h.Drawer = append(h.Drawer, ShimPiece{"spare", shim()})
	}
	step := []int{10, 20, 50}[r.IntN(3)]
	for at := 2350; at < 2700+r.IntN(150); at += step {
		if r.IntN(8) > 0 {
			h.Series = append(h.Series, ShimPiece{"size", um(at-3, at+3, tolerance.Closed)})
		}
	}
	return h
}

func BenchmarkShimPlan(b *testing.B) {
	for _, c := range []struct {
		name           string
		valves, drawer int
		disturb        bool
	}{{"16", 16, 4, false}, {"16disturb", 16, 4, true}, {"32", 32, 10, false}, {"32disturb", 32, 10, true}, {"64disturb", 64, 30, true}} {
		r := rand.New(rand.NewPCG(7, 7))
		heads := make([]ShimHead, 40)
		for i := range heads {
			heads[i] = shimHead(r, c.valves, c.drawer, c.disturb, false)
		}
		b.Run("lib=tenthou/op=plan"+c.name, func(b *testing.B) {
			b.ReportAllocs()
			var p ShimPlanner
			i := 0
			for b.Loop() {
				if _, err := p.Plan(&heads[i%len(heads)]); err != nil {
					b.Fatal(err)
				}
				i++
			}
		})
	}
	// Against trying every way, on a small head.
	r := rand.New(rand.NewPCG(8, 7))
	small := shimHead(r, 4, 3, true, false)
	b.Run("lib=everyway/op=plan4", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			shimEveryWay(&small)
		}
	})
	b.Run("lib=tenthou/op=plan4", func(b *testing.B) {
		b.ReportAllocs()
		var p ShimPlanner
		for b.Loop() {
			if _, err := p.Plan(&small); err != nil {
				b.Fatal(err)
			}
		}
	})
	// Every valve out of band, every shim suiting most valves.
	for _, valves := range []int{16, 32} {
		var crowd ShimHead
		for i := range valves {
			at := units.Length(2500+7*i%90) * units.Micrometre
			crowd.Valves = append(crowd.Valves, ShimValve{Measured: tolerance.Exactly(units.Length(310+11*i%80) * units.Micrometre), Shim: tolerance.Exactly(at), Wanted: tolerance.MustParseBand("0.15–0.30 mm")})
			crowd.Drawer = append(crowd.Drawer, ShimPiece{"spare", tolerance.Exactly(at + 60*units.Micrometre)})
		}
		b.Run(fmt.Sprintf("lib=tenthou/op=crowd%d", valves), func(b *testing.B) {
			b.ReportAllocs()
			var p ShimPlanner
			for b.Loop() {
				if _, err := p.Plan(&crowd); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
