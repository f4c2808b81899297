package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SpringSpread is how far the springs of a set differ: the greatest less the
// least of each measure.
type SpringSpread struct {
	Free      tolerance.Bracket `json:"free,omitzero"` // of the free lengths; zero where not all were measured
	Load      LoadBracket       `json:"load,omitzero"` // of the loads at one height
	Rate      RateBracket       `json:"rate,omitzero"` // of the rates
	Weakest   int               `json:"weakest"`       // the spring of the least load, by the middles of what is known
	Strongest int               `json:"strongest"`     // the spring of the greatest load
}

// SpringSetSpread finds how far the springs of a set differ in free length, in
// load at one and the same height, and in rate. It fails with an [InputError]
// where the set is empty, and as [Spring.LoadAt] does.
func SpringSetSpread(set []Spring, height tolerance.Bracket) (SpringSpread, error) {
	if len(set) == 0 {
		return SpringSpread{}, &InputError{"springs", "none", "one or more"}
	}
	var out SpringSpread
	var loads []LoadBracket
	var rates []RateBracket
	var frees []tolerance.Bracket
	var least, greatest units.Force
	for i, s := range set {
		at := inputText(s.Where)
		if at == "" {
			at = fmt.Sprint("spring ", i+1)
		}
		load, err := s.LoadAt(height)
		if err != nil {
			return SpringSpread{}, fmt.Errorf("%s: %w", at, err)
		}
		sorted := s.sorted()
		rate, err := SpringRateBetween(sorted[0], sorted[len(sorted)-1])
		if err != nil {
			return SpringSpread{}, fmt.Errorf("%s: %w", at, err)
		}
		if m, _ := load.Middle(); i == 0 || m < least {
			least, out.Weakest = m, i
		}
		if m, _ := load.Middle(); i == 0 || m > greatest {
			greatest, out.Strongest = m, i
		}
		loads, rates = append(loads, load), append(rates, rate)
		if !s.Free.IsZero() {
			if err := inputBracket(at+", free length", s.Free, units.Picometre); err != nil {
				return SpringSpread{}, err
			}
			frees = append(frees, s.Free)
		}
	}
	out.Load, out.Rate = loads[0].Spread(loads[1:]...), rates[0].Spread(rates[1:]...)
	if len(frees) == len(set) {
		out.Free = frees[0].Spread(frees[1:]...)
	}
	return out, nil
}
