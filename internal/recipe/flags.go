package recipe

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// The exit codes of a recipe.
const (
	Answered = 0
	Refused  = 1
)

// A Func is what a recipe's main calls and its test too.
type Func func(args []string, in io.Reader, out, errs io.Writer) int

// A Set is the flags of a recipe. Define them as with package flag, with the
// word for the value in back quotes: "the `gap` as measured".
type Set struct {
	*flag.FlagSet
	purpose string
	words   string // what words may follow the flags
	most    int    // how many
	errs    io.Writer
}

// Flags begins the flags of the recipe of that name. The purpose is the question
// it answers; what is wrong is written to errs.
func Flags(name, purpose string, errs io.Writer) *Set {
	s := &Set{FlagSet: flag.NewFlagSet(name, flag.ContinueOnError), purpose: purpose, errs: errs}
	s.SetOutput(io.Discard) // the texts below stand for the flag package's own
	return s
}

// Words lets up to most words follow the flags, for Args, and names them in the
// help: flags.Words("FILE", 1). Without it there may be none, so that a value
// whose flag was forgotten is not passed over.
func (s *Set) Words(names string, most int) { s.words, s.most = names, most }

// Parse reads the flags. It reports whether the recipe is done, with its exit
// code: after -h, which writes the help to out, and after a mistake.
func (s *Set) Parse(args []string, out io.Writer) (exit int, done bool) {
	err := s.FlagSet.Parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		io.WriteString(out, s.help())
		return Answered, true
	case err != nil:
		text := err.Error()
		if name, ok := strings.CutPrefix(text, "flag provided but not defined: "); ok {
			text = "there is no flag " + name
		}
		return s.Fail(fmt.Errorf("%s (-h lists the flags)", short(text))), true
	case s.NArg() > s.most:
		return s.Fail(fmt.Errorf("%q follows the flags and belongs to none (-h lists the flags)", short(s.Arg(s.most)))), true
	}
	return Answered, false
}

// Fail writes what is wrong to errs, after the recipe's name, and gives the exit
// code for it.
func (s *Set) Fail(err error) int {
	fmt.Fprintf(s.errs, "%s: %v\n", s.Name(), err)
	return Refused
}

// help is the text of -h.
func (s *Set) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n", s.Name(), s.purpose)
	type line struct{ flag, usage string }
	lines := []line{{"-h", "this help"}}
	s.VisitAll(func(f *flag.Flag) {
		value, usage := flag.UnquoteUsage(f)
		if value != "" {
			value = " " + value
		}
		switch f.DefValue {
		case "", "0", "false":
		default:
			usage += ", if not given " + f.DefValue
		}
		lines = append(lines, line{"-" + f.Name + value, usage})
	})
	fmt.Fprintf(&b, "Use: %s", s.Name())
	if len(lines) > 1 {
		b.WriteString(" [flags]")
	}
	if s.words != "" {
		b.WriteString(" " + s.words)
	}
	b.WriteString("\n\n")
	width := 0
	for _, l := range lines {
		width = max(width, utf8.RuneCountInString(l.flag))
	}
	for _, l := range lines {
		blanks := strings.Repeat(" ", width-utf8.RuneCountInString(l.flag))
		fmt.Fprintf(&b, "  %s%s  %s\n", l.flag, blanks, l.usage)
	}
	fmt.Fprintf(&b, "\nExit code: %d with an answer, whatever the verdict; %d if the input can't be used.\n", Answered, Refused)
	return b.String()
}

// short cuts a text that holds a piece of the command line.
func short(text string) string {
	const most = 240
	if len(text) <= most {
		return text
	}
	end := most
	for !utf8.RuneStart(text[end]) {
		end--
	}
	return text[:end] + "…"
}
