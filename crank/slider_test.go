package crank

import (
	"fmt"
	"github.com/tenthou/tenthou/tolerance"
	"math"
	"testing"
)

func BenchmarkSlider(b *testing.B) {
	s := Slider[tolerance.Float]{Throw: 43, Rod: 143.5, Offset: 0.8}
	b.Run("lib=tenthou/op=position", func(b *testing.B) {
		a := tolerance.Float(0)
		c := s.Curve()
		for b.Loop() {
			sinkF = c.Position(a)
			a += 0.01
		}
	})
	b.Run("lib=tenthou/op=positioninline", func(b *testing.B) {
		a := tolerance.Float(0)
		for b.Loop() {
			sinkF = PistonPosition(s.Throw, s.Rod, a)
			a += 0.01
		}
	})
	b.Run("lib=tenthou/op=acc", func(b *testing.B) {
		a := tolerance.Float(0)
		for b.Loop() {
			sinkF = s.Acceleration(a)
			a += 0.01
		}
	})
	b.Run("lib=math/op=position", func(b *testing.B) {
		a := 0.0
		for b.Loop() {
			r, l := 43.0, 143.5
			sn, c := math.Sincos(a)
			sinkF = tolerance.Float(r + l - r*c - math.Sqrt(l*l-r*r*sn*sn))
			a += 0.01
		}
	})
	fmt.Println(s.Stroke(), s.Position(0), s.Position(s.BottomAngle()), s.AngleAfterTop(s.Position(1)), s.AngleBeforeTop(s.Position(-1)))
}

var sinkF tolerance.Float
