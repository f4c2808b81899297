package proofread_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// flagged is a suspicion without its quantity.
type flagged struct {
	kind     string
	sentence string
	should   []string // what each explanation would put in its place
	undone   []string
}

func flags[Q units.Quantity](results ...proofread.ResultOf[Q]) (out []flagged) {
	for _, r := range results {
		if !r.Flagged() {
			continue
		}
		f := flagged{kind: r.Likeliest().Kind.String(), sentence: r.String()}
		for _, s := range r.Slips {
			f.should = append(f.should, s.Correct.String())
			f.undone = append(f.undone, s.Undone.String())
		}
		out = append(out, f)
	}
	return out
}

// check runs the check that a published case asks for.
func check(t *testing.T, c vectors.Case) []flagged {
	text := c.Text("text")
	second := c.Has("second")
	switch c.Choice("check", "pair", "limits", "column", "angle", "lift", "ratio") {
	case "pair":
		p, err := proofread.ParsePair(text)
		require.NoError(t, err)
		r, err := proofread.CheckPair(p)
		require.NoError(t, err)
		return flags(r)
	case "limits":
		l, err := proofread.ParseLimits(text)
		require.NoError(t, err)
		r, err := proofread.CheckLimits(l)
		require.NoError(t, err)
		return flags(r.Results...)
	case "column":
		l, err := proofread.ParseColumn(text)
		require.NoError(t, err)
		r, err := proofread.CheckColumn(l)
		require.NoError(t, err)
		return flags(r.Results...)
	case "angle":
		p, err := proofread.ParsePairIn(text, units.InDegrees, units.InDegrees)
		require.NoError(t, err)
		r, err := proofread.CheckPair(p)
		require.NoError(t, err)
		return flags(r)
	case "lift":
		l, err := proofread.ParseColumn(text)
		require.NoError(t, err)
		r, err := proofread.CheckLift(l, proofread.Column{})
		require.NoError(t, err)
		return flags(r.Results...)
	}
	require.True(t, second)
	from, err := proofread.ParsePair(text)
	require.NoError(t, err)
	to, err := proofread.ParsePair(c.Text("second"))
	require.NoError(t, err)
	r, err := proofread.CheckRelated(from, to, proofread.Ratio{Num: 1, Den: 1, Pi: true})
	require.NoError(t, err)
	return flags(r.Results...)
}

// Every published slip is flagged, each by the name it shows, and what it
// should be is among the explanations: as the first of them but for a fraction.
func TestPublishedSlips(t *testing.T) {
	file := vectors.Load(t, "published/slips_government_manuals.txt")
	require.Len(t, file.Rows, 16)
	file.Each(t, func(t *testing.T, c vectors.Case) {
		got := check(t, c)
		for _, f := range got {
			t.Log(f.sentence)
		}
		var kinds []string
		for _, f := range got {
			kinds = append(kinds, f.kind)
		}
		require.Equal(t, c.Text("kind"), strings.Join(kinds, ", "))
		first := c.Bool("first")
		should := strings.Split(c.Text("correct"), ", ")
		require.Len(t, should, len(got))
		for i, want := range should {
			if want == "-" {
				continue
			}
			among := append([]string{got[i].should[0]}, got[i].undone[0])
			if !first {
				among = got[i].should[1:]
			}
			require.True(t, anyAgrees(t, want, among), "%s: %q", want, among)
		}
	})
}

// anyAgrees reports whether one of the figures is the wanted one, to the places
// that both show.
func anyAgrees(t *testing.T, want string, among []string) bool {
	for _, text := range among {
		if strings.HasSuffix(want, "°") {
			if text == want {
				return true
			}
			continue
		}
		p, err := proofread.ParsePair(want + " (" + text + ")")
		require.NoError(t, err)
		r, err := proofread.CheckPair(p)
		require.NoError(t, err)
		if p.First.Unit == p.Second.Unit && !r.Flagged() {
			return true
		}
	}
	return false
}
