package crank

import "strings"

import "strconv"

// A PumpKind is how an oil pump is built. The zero value is GearPump.
type PumpKind uint8

// The kinds.
const (
	GearPump     PumpKind = iota // two gears side by side
	RotorPump                    // a lobed inner rotor in an outer one that has a lobe more
	CrescentPump                 // an inner gear in an outer one, with a crescent between them
)

var pumpKinds = [...]string{"gear", "rotor", "crescent"}

// A PumpMeasure is what is measured on an oil pump. The zero value is PumpTip.
type PumpMeasure uint8

// The measures.
const (
	PumpTip      PumpMeasure = iota // tips: of teeth to the body, of rotors' lobes to each other, of teeth to the crescent
	PumpBody                        // of the outer rotor or gear to the body
	PumpSide                        // end clearance: of gears or rotors to the cover, by straight-edge
	PumpBacklash                    // between the teeth of two gears
	PumpCover                       // how deep the cover is worn, by straight-edge
	PumpShaft                       // of the shaft in its bush
	PumpPlunger                     // of the relief valve's plunger in its bore
)

var pumpMeasures = [...]string{"tip clearance", "body clearance", "end clearance", "backlash", "cover wear", "shaft clearance", "relief plunger clearance"}

// A PumpRemedy is what follows for one measure. The zero value is
// PumpMeasureAgain.
type PumpRemedy uint8

// The remedies.
const (
	PumpMeasureAgain PumpRemedy = iota // the readings don't settle it: not a pass
	PumpReUse                          // within its limits
	PumpAskManual                      // no limit is given that decides
	PumpFreeUp                         // too tight: dirt, a burr, the wrong part
	PumpRenewGears                     // gears or rotors, as a set
	PumpFaceBody                       // take the body's face down, or renew the pump
	PumpFaceCover                      // take the cover's face down, or renew it
	PumpRebush                         // the shaft's bush, or the shaft
	PumpRenewValve                     // the relief valve's plunger, or its housing
)

var pumpRemedies = [...]string{"measure again", "re-use", "ask the manual", "too tight: clean it, look for burrs and check the parts", "renew the gears as a set",
	"take the body's face down if the manual allows, else renew the pump", "take the cover's face down if the manual allows, else renew the cover", "renew the bush or the shaft", "renew the relief plunger or its housing"}

func pumpWord[T ~uint8](names []string, i T) string {
	if int(i) >= len(names) {
		i = 0
	}
	return names[i]
}

func pumpRead[T ~uint8](field string, names []string, text []byte, into *T) error {
	var want strings.Builder
	want.WriteString("one of")
	for i, n := range names {
		if n == string(text) {
			*into = T(i)
			return nil
		}
		if i > 0 {
			want.WriteString(",")
		}
		want.WriteString(" " + strconv.Quote(n))
	}
	return &InputError{field, strconv.Quote(bobweightName(string(text), "")), want.String()}
}

// String is the kind in words.
func (k PumpKind) String() string { return pumpWord(pumpKinds[:], k) }

// MarshalText writes what String gives.
func (k PumpKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *PumpKind) UnmarshalText(text []byte) error {
	return pumpRead("kind of pump", pumpKinds[:], text, k)
}

// String is the measure in words.
func (m PumpMeasure) String() string { return pumpWord(pumpMeasures[:], m) }

// MarshalText writes what String gives.
func (m PumpMeasure) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *PumpMeasure) UnmarshalText(text []byte) error {
	return pumpRead("measure of a pump", pumpMeasures[:], text, m)
}

// String is the remedy in words.
func (r PumpRemedy) String() string { return pumpWord(pumpRemedies[:], r) }

// MarshalText writes what String gives.
func (r PumpRemedy) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *PumpRemedy) UnmarshalText(text []byte) error {
	return pumpRead("remedy", pumpRemedies[:], text, r)
}
