package feeler

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
)

// String is the zone in words, with what narrows it and what would close it.
func (z BlindZone) String() string {
	limits := make([]string, len(z.Limits))
	for i, l := range z.Limits {
		limits[i] = lengthText(l)
	}
	var s strings.Builder
	s.WriteString(z.Bracket.String() + " holds " + strings.Join(limits, " and ") + "; ")
	switch {
	case len(z.Stacks) == 0:
		s.WriteString("no stack of up to " + strconv.Itoa(z.Most) + " blades lies in it")
	case len(z.Left) == 0:
		s.WriteString(stacksText(z.Stacks) + " closes it")
	default:
		s.WriteString(stacksText(z.Stacks) + " leaves " + bracketsText(z.Left))
	}
	for _, r := range z.Remedies {
		s.WriteString("; a blade of " + lengthText(r.Limit))
		if len(r.Left) == 0 {
			s.WriteString(" would close it")
		} else {
			s.WriteString(" would leave " + bracketsText(r.Left))
		}
	}
	return s.String() + "; or measure the parts by micrometer"
}

func stacksText(stacks []Stack) string {
	names := make([]string, len(stacks))
	for i, st := range stacks {
		names[i] = st.String()
	}
	return strings.Join(names, " and ")
}

func bracketsText(brackets []tolerance.Bracket) string {
	names := make([]string, len(brackets))
	for i, b := range brackets {
		names[i] = b.String()
	}
	return strings.Join(names, " and ")
}
