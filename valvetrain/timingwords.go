package valvetrain

import (
	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/units"
)

// A TimedValve says which valve events are of. The zero value is the inlet
// valve.
type TimedValve uint8

// The valves of a four-stroke engine.
const (
	InletValve   TimedValve = iota // opens about top, closes after bottom dead centre
	ExhaustValve                   // opens before bottom, closes about top dead centre
)

var timedValveNames = []string{"inlet", "exhaust"}

// String is the valve in one word.
func (v TimedValve) String() string { return words.Of(timedValveNames, v) }

// MarshalText writes what String gives.
func (v TimedValve) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// UnmarshalText reads what String gives.
func (v *TimedValve) UnmarshalText(text []byte) error {
	if want, ok := words.Read(timedValveNames, text, v); !ok {
		return &InputError{"valve", inputText(string(text)), want}
	}
	return nil
}

// A TimingSide says where a lift is measured. The zero value is the valve.
type TimingSide uint8

// The sides of a rocker. With a bucket they differ by the clearance alone.
const (
	AtValve    TimingSide = iota // on the valve or its retainer, clearance set
	AtFollower                   // on the cam follower, which moves before the clearance is taken up
)

var timingSideNames = []string{"at the valve", "at the follower"}

// String is the side in words.
func (s TimingSide) String() string { return words.Of(timingSideNames, s) }

// MarshalText writes what String gives.
func (s TimingSide) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *TimingSide) UnmarshalText(text []byte) error {
	if want, ok := words.Read(timingSideNames, text, s); !ok {
		return &InputError{"side of the rocker", inputText(string(text)), want}
	}
	return nil
}

// A TimingLift is the lift that events are taken at, without which they mean
// little: 10 or 20 degrees lie between 0.1 mm and 1 mm of lift. The zero value
// is the valve's first move.
type TimingLift struct {
	Lift units.Length `json:"lift"` // 0 mm or more
	Side TimingSide   `json:"side"` // where it is measured
}

// String is the lift with its side: "1 mm at the valve".
func (l TimingLift) String() string { return l.Lift.String() + " " + l.Side.String() }
