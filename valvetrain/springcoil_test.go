package valvetrain

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
)

func TestSpringCoil(t *testing.T) {
	c := SpringCoil{Form: Cylindrical, Ends: SquaredGround, Wire: stemAt("4 mm"), Outside: stemAt("30 mm"), Total: tolerance.Ratio{Num: 25, Den: 4}, ShearMPa: 79300}
	for _, e := range []struct {
		ends   SpringEnds
		active tolerance.Ratio
		solid  string
	}{
		{Plain, tolerance.Ratio{Num: 25, Den: 4}, "29 mm"}, {PlainGround, tolerance.Ratio{Num: 21, Den: 4}, "[23 mm, 25 mm]"},
		{Squared, tolerance.Ratio{Num: 17, Den: 4}, "[29 mm, 31 mm]"}, {SquaredGround, tolerance.Ratio{Num: 17, Den: 4}, "[23 mm, 25 mm]"},
	} {
		c.Ends = e.ends
		n, err := c.Active()
		require.NoError(t, err)
		require.Equal(t, e.active, n)
		s, err := c.Solid()
		require.NoError(t, err)
		require.Equal(t, stemAt(e.solid), s)
	}
	c.Ends = SquaredGround
	for _, form := range []SpringForm{Conical, Progressive} {
		c.Form = form
		_, err := c.Rate()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, form.String())
	}
	_, err := c.Solid()
	require.NoError(t, err, "progressive coils still stand on one another")
	c.Form = Conical
	_, err = c.Solid()
	require.ErrorIs(t, err, ErrInput)
	c.Form = Cylindrical
	for _, b := range []struct {
		spoil func(*SpringCoil)
		says  string
	}{
		{func(c *SpringCoil) { c.Form = 0 }, "form"}, {func(c *SpringCoil) { c.Ends = 9 }, "ends"},
		{func(c *SpringCoil) { c.ShearMPa = 79.3 }, "79.3 GPa"}, {func(c *SpringCoil) { c.ShearMPa = math.NaN() }, "shear modulus"},
		{func(c *SpringCoil) { c.Total = tolerance.Ratio{} }, "total coils"}, {func(c *SpringCoil) { c.Total = tolerance.Whole(2) }, "lie dead"},
		{func(c *SpringCoil) { c.Wire = stemAt("0 mm") }, "wire"}, {func(c *SpringCoil) { c.Outside = stemAt("8 mm") }, "two wires"},
		{func(c *SpringCoil) { c.Wire, c.Outside = stemAt("4 m"), stemAt("8.1 m") }, "within range"},
	} {
		x := c
		b.spoil(&x)
		_, err := x.Rate()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, b.says)
		if b.says != "within range" {
			_, err = x.Active()
			require.ErrorIs(t, err, ErrInput)
		}
		if b.says != "within range" && b.says != "lie dead" {
			_, err = x.Solid()
			require.ErrorIs(t, err, ErrInput)
		}
	}
	// With a wire that isn't exact the rate holds every wire's.
	c.Wire, c.Outside = stemAt("4 ±0.02 mm"), stemAt("30 ±0.1 mm")
	wide, err := c.Rate()
	require.NoError(t, err)
	for _, w := range []string{"3.98 mm", "4 mm", "4.02 mm"} {
		for _, o := range []string{"29.9 mm", "30.1 mm"} {
			x := c
			x.Wire, x.Outside = stemAt(w), stemAt(o)
			one, err := x.Rate()
			require.NoError(t, err)
			require.True(t, one.Within(wide))
		}
	}
}

func TestSpringNames(t *testing.T) {
	for f := UnstatedForm; f <= Progressive; f++ {
		text, err := f.MarshalText()
		require.NoError(t, err)
		var back SpringForm
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, f, back)
	}
	for e := UnstatedEnds; e <= SquaredGround; e++ {
		text, err := e.MarshalText()
		require.NoError(t, err)
		var back SpringEnds
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, e, back)
	}
	require.Contains(t, SpringForm(99).String(), "99")
	require.Contains(t, SpringEnds(99).String(), "99")
	require.ErrorIs(t, new(SpringForm).UnmarshalText([]byte("beehive")), ErrInput)
	require.ErrorIs(t, new(SpringEnds).UnmarshalText([]byte("pigtail")), ErrInput)
}
