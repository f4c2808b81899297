package instrument

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Setting is how an instrument was set, or found to read: on which standard,
// and what it read there. The zero value is closed anvils that read 0.
type Setting struct {
	Standard units.Length `json:"standard,omitzero"` // its size at 20 °C, by its certificate
	Error    units.Length `json:"error,omitzero"`    // ± of that size
	Reading  units.Length `json:"reading,omitzero"`  // what the instrument reads on it
	Thermal  Thermal      `json:"thermal,omitzero"`  // of the standard while it was read
}

// An Instrument is what readings are taken with. It is plain data of the user's,
// as JSON:
//
//	{"name": "micrometer 2", "range": "25–50 mm", "step": "0.01 mm", "error": "0.004 mm",
//	 "setting": {"standard": "25 mm", "error": "0.001 mm", "reading": "25 mm"}}
type Instrument struct {
	Name string `json:"name"` // for reports and errors
	// Range is what it can show; the zero Band is anything.
	Range tolerance.Band `json:"range,omitzero"`
	// Step is the resolution: the finest step that is read. Readings are
	// whole steps, so half a step either way is not known. Where the permissible
	// error has it already, or readings are exact, it is zero.
	Step units.Length `json:"step,omitzero"`
	// Error is the permissible error, ±, of any one reading, beyond the
	// rounding to a step and what comes from the setting.
	Error units.Length `json:"error,omitzero"`
	// Setting is on which standard it was set, and what it read there.
	Setting Setting `json:"setting,omitzero"`
	// Thermal is that of the scale, while setting and measuring.
	Thermal Thermal `json:"thermal,omitzero"`
	// Together says that scale, standard and part lay together until they were
	// at one temperature. It need not be known exactly: what is off is then off
	// for all three, and steel measured with steel hardly feels it. All three
	// must give the same temperature and error.
	Together bool `json:"together,omitzero"`
}

// Validate refuses, with an [InputError], an error or a step below zero, a
// setting between two steps, and coefficients and temperatures that no body has.
func (in Instrument) Validate() error {
	s := &in.Setting
	for _, x := range [...]struct {
		field string
		value units.Length
	}{{"step", in.Step}, {"error", in.Error}, {"setting, error of the standard", s.Error}, {"setting, standard", s.Standard}} {
		switch {
		case !x.value.InRange():
			return refuse(in.Name, x.field, x.value.String(), ErrRange, "within the range of a length")
		case x.value < 0:
			return refuse(in.Name, x.field, x.value.String(), ErrNegative, "0 mm or more")
		}
	}
	if !in.Range.InRange() {
		return refuse(in.Name, "range", in.Range.String(), ErrRange, "limits within the range of a length")
	}
	if err := in.onStep("setting, reading", s.Reading); err != nil {
		return err
	}
	if err := in.Thermal.check(in.Name, "scale"); err != nil {
		return err
	}
	return s.Thermal.check(in.Name, "standard")
}

// onStep refuses what the scale can't show.
func (in *Instrument) onStep(field string, x units.Length) error {
	switch {
	case !x.InRange():
		return refuse(in.Name, field, x.String(), ErrRange, "within the range of a length")
	case in.Step > 0 && x%in.Step != 0:
		return refuse(in.Name, field, x.String(), ErrStep, "a whole number of steps of "+in.Step.String())
	}
	return nil
}

// take checks everything that a reading needs.
func (in *Instrument) take(field string, x units.Length, part *Thermal) error {
	if err := in.Validate(); err != nil {
		return err
	}
	if err := part.check(in.Name, "part"); err != nil {
		return err
	}
	if in.Together {
		same := func(t *Thermal) bool { return t.Above == in.Thermal.Above && t.AboveError == in.Thermal.AboveError }
		if !same(part) || in.Setting.Standard != 0 && !same(&in.Setting.Thermal) {
			return refuse(in.Name, "together", "", ErrTogether, "the same temperature and error for scale, standard and part")
		}
	}
	return in.shows(field, x)
}

func (in *Instrument) shows(field string, x units.Length) error {
	if err := in.onStep(field, x); err != nil {
		return err
	}
	if !in.Range.IsZero() && !in.Range.Allows(x) {
		return refuse(in.Name, field, x.String(), ErrOutside, in.Range.String())
	}
	return nil
}

// ZeroError is the zero error found on the setting standard, the reading of the
// standard minus its size, with all at 20 °C.
func (in Instrument) ZeroError() units.Length {
	return ZeroError(in.Setting.Reading, in.Setting.Standard)
}

// half is half a step, rounded up to the picometre.
func (in *Instrument) half() units.Length { return (in.Step + units.Picometre) / 2 }

// common is what may be off, either way, in every reading of one setting alike,
// and individual what may be off in each by itself.
func (in *Instrument) common() units.Length     { return in.Setting.Error.Add(in.half()) }
func (in *Instrument) individual() units.Length { return in.Error.Add(in.half()) }

// Corrected is a reading corrected.
type Corrected struct {
	Reading units.Length      `json:"reading"` // as it was read
	Size    units.Length      `json:"size"`    // where nothing is off, at 20 °C
	Bracket tolerance.Bracket `json:"bracket"` // what the size may be
}

// Reading corrects a reading x of a part: the zero error is taken off, and the
// size brought to 20 °C; the zero Thermal is a part at 20 °C. The bracket holds
// the size for all errors that the instrument and the temperatures may have.
//
// It fails with an [InputError] where the instrument is not valid, x is between
// two steps or outside its range, or the result is out of range.
func (in Instrument) Reading(x units.Length, part Thermal) (Corrected, error) {
	if err := in.take("reading", x, &part); err != nil {
		return Corrected{}, err
	}
	return in.correct("reading", x, &part)
}

func (in *Instrument) correct(field string, x units.Length, part *Thermal) (Corrected, error) {
	exact := in.exact(x, part)
	middle, err := exact.bracket(in.Name, field)
	if err != nil {
		return Corrected{}, err
	}
	size, _ := middle.Middle()
	// The setting's rounding and the reading's go the same way at worst.
	off := in.individual().Add(in.half())
	m := in.model(part)
	m.shown = around(x.Sub(in.Setting.Reading), off)
	m.standard = around(in.Setting.Standard, in.Setting.Error)
	b, err := m.bracket(in.Name, field)
	if err != nil {
		return Corrected{}, err
	}
	return Corrected{x, size, b}, nil
}

// model has the temperatures, and no lengths yet.
func (in *Instrument) model(part *Thermal) model {
	return model{scale: in.Thermal, ofStandard: in.Setting.Thermal, part: *part, together: in.Together}
}

// exact is the model where nothing is off.
func (in *Instrument) exact(x units.Length, part *Thermal) model {
	m := in.model(part)
	for _, t := range []*Thermal{&m.scale, &m.ofStandard, &m.part} {
		t.PerKelvinError, t.AboveError = 0, 0
	}
	m.shown = around(x.Sub(in.Setting.Reading), 0)
	m.standard = around(in.Setting.Standard, 0)
	return m
}

// around is q either way.
func around(q, off units.Length) [2]units.Length { return [2]units.Length{q.Sub(off), q.Add(off)} }
