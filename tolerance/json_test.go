package tolerance_test

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestJSON(t *testing.T) {
	same := func(v, into any, want string) {
		t.Helper()
		data, err := json.Marshal(v)
		require.NoError(t, err)
		require.JSONEq(t, want, string(data))
		require.NoError(t, json.Unmarshal(data, into))
	}
	var i Bracket
	same(bracket("[.0025 in, .003 in)"), &i, `"[0.0635 mm, 0.0762 mm)"`)
	require.Equal(t, bracket("[.0025 in, .003 in)"), i)
	same(Bracket{}, &i, `"(−∞, ∞)"`)
	require.True(t, i.IsZero())
	var b Band
	same(MustParseBand("renew at .004 in or more"), &b, `"less than 0.1016 mm"`)
	require.Equal(t, LessThan(4*units.Thou), b)

	p, err := ParsePrinted(" 0.030 –  0.070 mm")
	require.NoError(t, err)
	var q Printed
	same(p, &q, `"0.030 – 0.070 mm"`)
	require.Equal(t, p, q)
	require.Equal(t, "0.030 – 0.070 mm", p.String())
	require.Equal(t, "0.030 mm", q.Least.String())
	require.Equal(t, "0.070 mm", q.Greatest.String())
	q.BandOf = AtMost(units.Millimetre) // no longer what was read
	require.Equal(t, "max 1 mm", q.String())
	text, err := q.AppendText([]byte("limit "))
	require.NoError(t, err)
	require.Equal(t, "limit max 1 mm", string(text))
	same(Printed{}, &q, `"no limit"`)
	require.Equal(t, Printed{}, q)
	calculated, err := ParsePrinted("2.5 ±0.02 mm")
	require.NoError(t, err)
	require.Zero(t, calculated.Least)

	both := Spec{New: MustParseBand("0.03–0.07 mm"), Wear: MustParseBand("max 0.10 mm"), NewMating: WithNewPart, WearMating: WithUsedPart}
	var s Spec
	same(both, &s, `{"new":"0.03–0.07 mm","wear":"max 0.1 mm","newMating":"with a new mating part","wearMating":"with the used mating part"}`)
	require.Equal(t, both, s)
	s = Spec{}
	same(Spec{New: both.New}, &s, `{"new":"0.03–0.07 mm"}`)
	require.Equal(t, Spec{New: both.New}, s)
	same(Spec{}, &s, `{}`)

	for v := Undecided; v <= Above; v++ {
		var w Verdict
		same(v, &w, `"`+v.String()+`"`)
		require.Equal(t, v, w)
	}
	for v := CantTell; v <= PastWearLimit; v++ {
		var w Standing
		same(v, &w, `"`+v.String()+`"`)
		require.Equal(t, v, w)
	}
	for v := MatingUnstated; v <= WithUsedPart; v++ {
		w := Mating(99)
		same(v, &w, `"`+v.String()+`"`)
		require.Equal(t, v, w)
	}
	var sides Sides
	same(Sides{Below, Above}, &sides, `{"least":"below","greatest":"above"}`)
	require.Equal(t, Sides{Below, Above}, sides)

	f, err := Assess("side clearance", "piston 2, top groove", both, bracket("0.02 mm"), bracket("[0.09 mm, 0.11 mm)"))
	require.NoError(t, err)
	var g Finding
	same(f, &g, `{"measure":"side clearance","where":"piston 2, top groove","least":"0.02 mm","greatest":"[0.09 mm, 0.11 mm)",
		"spec":{"new":"0.03–0.07 mm","wear":"max 0.1 mm","newMating":"with a new mating part","wearMating":"with the used mating part"},
		"newBand":{"least":"below","greatest":"above"},"wearBand":{"least":"within","greatest":"undecided"},"standing":"can't tell",
		"margin":"-0.01 mm","unsettled":["0.1 mm"],"settle":"find out whether the greatest is more than 0.1 mm"}`)
	require.Empty(t, cmp.Diff(f, g, cmpopts.EquateComparable(Bracket{}, Band{})))

	for _, v := range []any{Exactly(outOfRange), AtMost(outOfRange), Printed{BandOf: AtMost(outOfRange)}} {
		_, err := json.Marshal(v)
		require.ErrorIs(t, err, ErrRange)
	}
	require.Equal(t, "out of range", Exactly(outOfRange).String())
	require.Equal(t, "out of range", Exactly(outOfRange).Text(units.InInches, 4))
	require.Equal(t, "out of range", AtMost(outOfRange).String())
	require.Equal(t, "out of range", AtMost(outOfRange).Text(units.InInches, 4))
}
