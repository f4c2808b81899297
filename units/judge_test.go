package units

import (
	"math/big"
	"regexp"
	"strings"
	"unicode/utf8"
)

// A judge is a second parser: slow, readable, on fractions of any size, with
// names and sizes of its own. The parsers must say what it says.
type judge struct {
	quantum string            // in the base unit
	sizes   map[string]string // of each unit in the base unit, or "value − zero, size"
	below   map[string]string // unit that may follow another
	refused string
	least   string // in the base unit; none where empty
}

const (
	lengthNames = "mm MM millimetre millimetres millimeter millimeters=1 in in. IN IN. inch inches INCH \" ″ ” ''=25.4 " +
		"µm μm um micrometre micrometres micrometer micrometers micron microns=0.001 thou THOU=0.0254 cm CM=10 " +
		"m metre metres meter meters=1000 nm nanometre nanometres=0.000001 pm picometre picometres=0.000000001 " +
		"µin μin uin microinch microinches=0.0000254 ft ft. foot feet=304.8"
	angleNames  = "° º deg degree degrees=3600 ′ ' ’ arcmin min=60 ″ \" ” '' arcsec sec=1"
	volumeNames = "cm³ cm3 cc ml mL=1 in³ in3 cu_in cu._in. cubic_inches=16.387064 L l litre litres dm³ dm3=1000 mm³ mm3=0.001"
	massNames   = "g gram grams=1 kg kilogram kilograms=1000 oz oz. ounce ounces=28.349523125 " +
		"lb lb. lbs lbs. pound pounds=453.59237 grain grains=0.06479891 mg milligram milligrams=0.001"
	forceNames    = "N newton newtons=1 lbf=4.4482216152605 kgf kp=9.80665 kN=1000"
	pressureNames = "kPa=0.64516 bar=64.516 psi PSI lbf/in² lbf/in2 lb/in² lb/in2=4.4482216152605 MPa N/mm² N/mm2=645.16 " +
		"kgf/cm² kgf/cm2 kg/cm² kg/cm2=63.26858314 N/in² N/in2=1"
	rateNames       = "N/mm=25.4 lbf/in lb/in=4.4482216152605 kgf/mm kg/mm=249.08891 N/in=1"
	differenceNames = "K kelvin kelvins C° °C=9 F° °F=5"
)

var judges = map[string]*judge{
	"length":                 {quantum: "0.000000001", sizes: names(lengthNames), below: map[string]string{"304.8": "25.4"}, refused: "mil mils tenth tenths"},
	"angle":                  {quantum: "0.000001", sizes: names(angleNames), below: map[string]string{"3600": "60", "60": "1"}, refused: "mil mils"},
	"volume":                 {quantum: "0.00000000001", sizes: names(volumeNames)},
	"mass":                   {quantum: "0.000000000001", sizes: names(massNames), below: map[string]string{"453.59237": "28.349523125"}, refused: "gr gr."},
	"force":                  {quantum: "0.000000000000005", sizes: names(forceNames), refused: "lb lbs kg g"},
	"pressure":               {quantum: "0.000000000000005", sizes: names(pressureNames)},
	"spring rate":            {quantum: "0.000000000000005", sizes: names(rateNames)},
	"temperature difference": {quantum: "0.000000001", sizes: names(differenceNames)},
	// In ninths of a kelvin from 0 °C.
	"temperature": {quantum: "0.000000001", sizes: names("C °C ºC ℃ degC deg_C celsius=9 F °F ºF ℉ degF deg_F fahrenheit=5-160 K kelvin kelvins=9-2458.35"),
		refused: "° deg", least: "-2458.35"},
}

func names(list string) map[string]string {
	sizes := map[string]string{}
	var waiting []string
	for word := range strings.FieldsSeq(list) {
		name, size, last := word, "", false
		if i := strings.LastIndex(word, "="); i >= 0 {
			name, size, last = word[:i], word[i+1:], true
		}
		waiting = append(waiting, strings.ReplaceAll(name, "_", " "))
		if last {
			for _, w := range waiting {
				sizes[w] = size
			}
			waiting = nil
		}
	}
	return sizes
}

const blank = `[ \t\x{a0}\x{2007}\x{2009}\x{202f}]`

var (
	mixedForm = regexp.MustCompile(`^([0-9]+)(?:-|` + blank + `+)([0-9]+)/([0-9]*)`)
	spaced    = regexp.MustCompile(`^[0-9]+` + blank + `+[0-9]`)
	fraction  = regexp.MustCompile(`^()([0-9]+)/([0-9]*)`)
	decimals  = regexp.MustCompile(`^([0-9]*)([.,])([0-9]*)([.,]?)`)
	whole     = regexp.MustCompile(`^[0-9]+`)
	thousands = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
	trailing  = regexp.MustCompile(blank + `+$`)
	blanks    = regexp.MustCompile(`^` + blank + `*`)
	signs     = regexp.MustCompile(`^(?:[-+−]` + blank + `*)?`)
	exponent  = regexp.MustCompile(`^[eE]([-+]|$)`)
)

// value reads s; the result is in quanta, within ±most of them. A number
// without a unit is in the unit def, where there is one.
func (j *judge) value(s, def string, most *big.Rat) (*big.Rat, error) {
	if len(s) > 256 {
		return nil, ErrSyntax
	}
	s = s[len(blanks.FindString(s)):]
	sign := signs.FindString(s)
	s = s[len(sign):]
	total := new(big.Rat)
	above := "" // the size of the part before
	for {
		number, last, rest, err := j.number(s)
		if err != nil {
			return nil, err
		}
		size, rest, err := j.unit(rest, def, above != "")
		if err != nil {
			return nil, err
		}
		size, zero, _ := strings.Cut(size, "-")
		part := new(big.Rat).Mul(number, rat(size))
		part.Quo(part, rat(j.quantum))
		if part.Cmp(rat("4611686018427387905")) >= 0 {
			return nil, ErrRange
		}
		if !part.IsInt() {
			return nil, ErrTooFine
		}
		if above != "" {
			if j.below[above] != size || part.Cmp(new(big.Rat).Quo(rat(above), rat(j.quantum))) >= 0 {
				return nil, ErrSyntax
			}
		}
		if total.Add(total, part); rest == "" {
			if strings.HasPrefix(sign, "-") || strings.HasPrefix(sign, "−") {
				total.Neg(total)
			}
			if zero != "" {
				total.Sub(total, new(big.Rat).Quo(rat(zero), rat(j.quantum)))
			}
			if new(big.Rat).Abs(total).Cmp(most) > 0 || j.least != "" && total.Cmp(new(big.Rat).Quo(rat(j.least), rat(j.quantum))) < 0 {
				return nil, ErrRange
			}
			return total, nil
		}
		if last {
			return nil, ErrSyntax
		}
		above, s = size, rest
	}
}

// number reads a number; last says that no other part may follow it.
func (j *judge) number(s string) (number *big.Rat, last bool, rest string, err error) {
	m := mixedForm.FindStringSubmatch(s)
	if m == nil {
		m = fraction.FindStringSubmatch(s)
	}
	if m != nil {
		if len(m[1]) > 13 {
			return nil, false, "", ErrRange
		}
		if m[3] == "" || len(m[2]) > 9 || len(m[3]) > 9 {
			return nil, false, "", ErrSyntax
		}
		over, under := rat(m[2]), rat(m[3])
		if under.Sign() == 0 || under.Cmp(rat("65535")) > 0 || m[1] != "" && over.Cmp(under) >= 0 {
			return nil, false, "", ErrSyntax
		}
		return new(big.Rat).Add(rat("0"+m[1]), over.Quo(over, under)), true, s[len(m[0]):], nil
	}
	if m := decimals.FindStringSubmatch(s); m != nil {
		switch {
		case m[1]+m[3] == "" || m[4] != "":
			return nil, false, "", ErrSyntax
		case thousands.MatchString(m[0]):
			return nil, false, "", ErrAmbiguous
		}
		return rat("0" + m[1] + "." + m[3] + "0"), m[3] != "", s[len(m[0]):], nil
	}
	if spaced.MatchString(s) || !whole.MatchString(s) {
		return nil, false, "", ErrSyntax
	}
	m0 := whole.FindString(s)
	return rat(m0), false, s[len(m0):], nil
}

// unit reads a unit and gives its size.
func (j *judge) unit(s, def string, follows bool) (size, rest string, err error) {
	s = s[len(blanks.FindString(s)):]
	if size, ok := j.sizes[trailing.ReplaceAllString(s, "")]; ok {
		return size, "", nil
	}
	name, rest := s, ""
	if i := strings.IndexAny(s, "0123456789"); i >= 0 {
		name, rest = s[:i], s[i:]
	}
	name = trailing.ReplaceAllString(name, "")
	size, ok := j.sizes[name]
	switch {
	case ok:
		return size, rest, nil
	case name == "" && def != "" && !follows:
		return j.sizes[def], rest, nil
	case name == "":
		return "", "", ErrNoUnit
	case strings.Contains(" "+j.refused+" ", " "+name+" "):
		return "", "", ErrAmbiguous
	case !utf8.ValidString(name) || strings.ContainsAny(name[:1], "/-+.,") || exponent.MatchString(name):
		return "", "", ErrSyntax
	}
	return "", "", ErrUnknownUnit
}
