package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
)

// A ShimDoubt is why a valve can't be told.
type ShimDoubt uint8

// The doubts. The zero value is NoShimDoubt.
const (
	// NoShimDoubt: nothing stands against planning the valve.
	NoShimDoubt ShimDoubt = iota
	// NoUpperEnd: every blade tried went in, so the clearance may be any more.
	NoUpperEnd
	// NoLowerEnd: no blade went in. The cam may be holding the valve open, and
	// how far, no blade tells.
	NoLowerEnd
	// ShimNotMeasured: the shim under it is known by its mark at most.
	ShimNotMeasured
	// BracketTooWide: clearance and shim leave more room than the band has.
	BracketTooWide
	// NoShimSuits: no shim in hand is left for it, and the series has none.
	NoShimSuits
	// OnBothSides: its clearance lies on both sides of a limit, so that it may be
	// in band as it is. The plan gives it another shim, with which it is for
	// certain.
	OnBothSides
)

var shimDoubtNames = []string{"none", "no upper end", "no lower end", "shim not measured", "bracket too wide", "no shim suits", "on both sides of a limit"}

// String is the doubt in words.
func (d ShimDoubt) String() string { return words.Of(shimDoubtNames, d) }

// MarshalText writes what String gives.
func (d ShimDoubt) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (d *ShimDoubt) UnmarshalText(text []byte) error {
	if want, ok := words.Read(shimDoubtNames, text, d); !ok {
		return &InputError{"doubt about a shim", strconv.Quote(inputText(string(text))), want}
	}
	return nil
}

// A ShimUnsure is a valve that can't be told, and what would settle it. It is not
// a pass.
type ShimUnsure struct {
	Valve  int       `json:"valve"`  // its place in the head's list
	Where  string    `json:"where"`  // its name
	Doubt  ShimDoubt `json:"doubt"`  // why
	Fitted bool      `json:"fitted"` // whether the plan gives it a shim with which it is in band for certain
	// Needed is every shim that would bring it into the band; zero where none does
	// for certain.
	Needed tolerance.Bracket `json:"needed,omitzero"`
	Blade  string            `json:"blade,omitempty"` // the blade, or the blades laid together, to try
	// Sure reports whether the blade settles it whichever way it goes.
	Sure   bool   `json:"sure,omitempty"`
	Settle string `json:"settle"` // what to do
}

// shimDoubt is what stands against planning a valve, whatever shims there are. A
// clearance from 0 up is one that took no blade.
func (v *ShimValve) shimDoubt() ShimDoubt {
	lo, loEnd := v.Measured.Lower()
	_, hiEnd := v.Measured.Upper()
	switch {
	case hiEnd == tolerance.Absent:
		return NoUpperEnd
	case loEnd == tolerance.Absent || lo == 0:
		return NoLowerEnd
	case v.Shim.IsZero():
		return ShimNotMeasured
	}
	return NoShimDoubt
}

// unsure lists the valves that can't be told.
func (h *ShimHead) unsure(moves []ShimMove) []ShimUnsure {
	var list []ShimUnsure
	for i := range moves {
		m, v := &moves[i], &h.Valves[i]
		u := ShimUnsure{Valve: i, Where: m.Where}
		switch {
		case m.Action == ShimStays || m.Action != ShimStaysOpen && m.Now != tolerance.Undecided:
			continue
		case m.Action != ShimStaysOpen:
			u.Doubt, u.Fitted = OnBothSides, true
		default:
			if u.Doubt = v.shimDoubt(); u.Doubt == NoShimDoubt {
				u.Doubt = NoShimSuits
				if _, ok := v.Window(); !ok {
					u.Doubt = BracketTooWide
				}
			}
		}
		if w, ok := v.Window(); ok {
			u.Needed = w
		}
		h.settle(v, &u)
		list = append(list, u)
	}
	return list
}
