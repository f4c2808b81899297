package crank

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
)

func boltCheck() BoltCheck {
	return BoltCheck{
		Where: "rod 3, bolt 1", AsNew: floatOf("62.10 ±0.005 mm"), Free: floatOf("62.11 ±0.005 mm"), Tightened: floatOf("62.25 ±0.005 mm"),
		Stretch: tolerance.Spec{New: tolerance.MustParseBand("0.12–0.16 mm")},
		Length:  tolerance.Spec{Wear: tolerance.MustParseBand("max 62.15 mm")},
		Growth:  tolerance.Spec{Wear: tolerance.MustParseBand("max 0.025 mm")},
	}
}

func TestBoltCheck(t *testing.T) {
	r, err := boltCheck().Assess()
	require.NoError(t, err)
	require.Len(t, r.Findings, 3)
	require.False(t, r.Renew)
	require.Contains(t, r.Next, "within the wear limits")
	for _, c := range []struct {
		name, next string
		renew      bool
		spoil      func(*BoltCheck)
	}{
		{"yield", "used once", true, func(c *BoltCheck) { c.Yield, c.Used = true, true }},
		{"new to yield", "within the wear limits", false, func(c *BoltCheck) { c.Yield = true }},
		{"long", "renew: free length is out", true, func(c *BoltCheck) {
			c.Free, c.Tightened, c.AsNew = floatOf("62.2 mm"), tolerance.Bracket{}, tolerance.Bracket{}
		}},
		{"grown", "renew: growth is out", true, func(c *BoltCheck) { c.Free, c.Tightened = floatOf("62.14 mm"), tolerance.Bracket{} }},
		{"overstretched", "loosen the bolt", false, func(c *BoltCheck) { c.Tightened = floatOf("62.30 mm") }},
		{"open", "not a pass", false, func(c *BoltCheck) { c.Growth.Wear = tolerance.MustParseBand("max 0.015 mm") }},
		{"no limits", "no limits were given", false, func(c *BoltCheck) {
			c.Stretch, c.Length, c.Growth = tolerance.Spec{}, tolerance.Spec{}, tolerance.Spec{}
		}},
	} {
		x := boltCheck()
		c.spoil(&x)
		r, err := x.Assess()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next, c.name)
		require.Equal(t, c.renew, r.Renew, c.name)
	}
	for name, spoil := range map[string]func(*BoltCheck){
		"nothing":  func(c *BoltCheck) { c.Free = tolerance.Bracket{} },
		"negative": func(c *BoltCheck) { c.Free = floatOf("-1 mm") },
		"shorter":  func(c *BoltCheck) { c.Tightened = floatOf("62 mm") },
		"as new":   func(c *BoltCheck) { c.AsNew = floatOf("0 mm") },
		"limits":   func(c *BoltCheck) { c.Length.New = tolerance.MustParseBand("max 63 mm") },
	} {
		x := boltCheck()
		spoil(&x)
		_, err := x.Assess()
		require.Error(t, err, name)
	}
}
