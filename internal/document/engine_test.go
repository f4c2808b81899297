package document_test

import (
	"encoding/json"
	"errors"
	"strconv"
	"strings"
)

// An engine of invented readings: what the benchmarks and the examples read.

// size is a stand-in for a length with its unit, in micrometres.
type size int64

var errNoUnit = errors.New("no unit")

func (s size) MarshalText() ([]byte, error) {
	b := []byte(nil)
	if s < 0 {
		b, s = append(b, '-'), -s
	}
	b = strconv.AppendInt(b, int64(s)/1000, 10)
	fraction := strconv.Itoa(int(s)%1000 + 1000)
	return append(b, "."+fraction[1:]+" mm"...), nil
}

func (s *size) UnmarshalText(text []byte) error {
	number, ok := strings.CutSuffix(string(text), " mm")
	if !ok {
		return errNoUnit
	}
	whole, fraction, _ := strings.Cut(strings.TrimPrefix(number, "-"), ".")
	if len(fraction) > 3 || strings.HasPrefix(whole, "-") {
		return errors.New("not whole micrometres")
	}
	n, err := strconv.ParseInt(whole+fraction+"000"[len(fraction):], 10, 64)
	if err != nil {
		return err
	}
	if strings.HasPrefix(number, "-") {
		n = -n
	}
	*s = size(n)
	return nil
}

type engine struct {
	Schema    int             `json:"schema"`
	Job       string          `json:"job"`
	Tools     map[string]size `json:"tools"`
	Cylinders []bore          `json:"cylinders"`
	Grooves   []groove        `json:"grooves"`
	Journals  []journal       `json:"journals"`
}

type bore struct {
	Number int     `json:"number"`
	Levels []level `json:"levels"`
	Remark string  `json:"remark,omitempty"`
}

type level struct {
	Depth  size `json:"depth"`
	Across size `json:"across"`
	Along  size `json:"along"`
}

type groove struct {
	place
	Ring   string  `json:"ring"`
	Trials []trial `json:"trials"`
	Limit  *size   `json:"limit"`
}

type place struct {
	Cylinder int `json:"cylinder"`
	Groove   int `json:"groove"`
}

type trial struct {
	Blade  size    `json:"blade"`
	Enters bool    `json:"enters"`
	Pull   float64 `json:"pull_n,omitempty"`
}

type journal struct {
	Kind     string  `json:"kind"`
	Readings [4]size `json:"readings"`
}

// invented gives an engine of ten cylinders: some 530 readings, 30 kB.
func invented() engine {
	e := engine{Schema: 1, Job: "demo", Tools: map[string]size{"bore gauge": 10, "micrometer": 2}}
	limit := size(70)
	for c := range 10 {
		b := bore{Number: c + 1}
		for l := range 5 {
			b.Levels = append(b.Levels, level{Depth: size(10000 + 25000*l), Across: size(86012 + 3*l + c), Along: size(86004 + 2*l)})
		}
		e.Cylinders = append(e.Cylinders, b)
		for g := range 3 {
			r := groove{place: place{Cylinder: c + 1, Groove: g + 1}, Ring: []string{"top", "second", "oil"}[g], Limit: &limit}
			for t := range 6 {
				r.Trials = append(r.Trials, trial{Blade: size(30 + 10*t), Enters: t < 4, Pull: 1.5 + float64(t)})
			}
			e.Grooves = append(e.Grooves, r)
		}
	}
	for j := range 13 {
		kind := "main"
		if j >= 5 {
			kind = "crankpin"
		}
		e.Journals = append(e.Journals, journal{Kind: kind, Readings: [4]size{55981, 55978, 55980, 55977}})
	}
	return e
}

// written gives the document of an engine as a person would keep it: indented.
func written(e engine) []byte {
	data, err := json.MarshalIndent(e, "", "  ")
	if err != nil {
		panic(err)
	}
	return data
}
