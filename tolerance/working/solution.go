package working

import "unicode/utf8"

// A Solution is a formula written out, as plain data: what was given, and the
// steps, the last of which has the answer. [Solve] makes one; Text and
// Markdown print it.
type Solution struct {
	Inputs []Input `json:"inputs"` // as they are first used
	Steps  []Step  `json:"steps"`  // in order
}

// An Input is a quantity that was given by name, as the lines show it.
type Input struct {
	Words  string `json:"words,omitempty"`  // groove width; empty where it has none
	Symbol string `json:"symbol,omitempty"` // w; empty where it has none
	Number string `json:"number"`           // 1.560 mm, as the lines have it
	Exact  bool   `json:"exact"`            // Number is exactly what was given
	Held   string `json:"held"`             // what was given, exactly, in a unit that can say it
}

// A Step is one line of a solution: in words, in symbols, in numbers, and its
// result. Numbers, worked out exactly and rounded to Places (to nearest, ties
// to even), gives Result to the last digit.
type Step struct {
	Name    string `json:"name,omitempty"`    // of what is calculated; empty where it has none
	Symbol  string `json:"symbol,omitempty"`  // of what is calculated; empty where it has none
	Words   string `json:"words,omitempty"`   // groove width − ring height
	Symbols string `json:"symbols,omitempty"` // w − h
	Numbers string `json:"numbers,omitempty"` // 1.560 mm − 1.505 mm
	Result  string `json:"result"`            // 0.055 mm
	Places  int    `json:"places"`            // decimal places of Result
	// NumbersExact: none of the numbers is rounded.
	NumbersExact bool `json:"numbersExact"`
	// Exact: Result is exactly what the formula gives for what was given;
	// nothing was rounded on the way.
	Exact bool `json:"exact"`
}

// Text is the solution for a page of fixed-width letters. An equals sign says
// that what follows is exact, ≈ that it is rounded.
func (s Solution) Text() string { return string(s.AppendText(nil)) }

// AppendText appends what [Solution.Text] gives.
func (s Solution) AppendText(dst []byte) []byte { return s.append(dst, plain{}) }

// A page is how lines are set.
type page interface {
	title(dst []byte, s string) []byte  // the name of what is calculated
	body(dst []byte, s string) []byte   // anything else
	answer(dst []byte, s string) []byte // a result
	next(dst []byte, indent int) []byte // a further line of the same paragraph
}

// plain is a page of fixed-width letters.
type plain struct{}

func (plain) title(dst []byte, s string) []byte  { return append(dst, s...) }
func (plain) body(dst []byte, s string) []byte   { return append(dst, s...) }
func (plain) answer(dst []byte, s string) []byte { return append(dst, s...) }
func (plain) next(dst []byte, indent int) []byte {
	dst = append(dst, '\n')
	for range indent {
		dst = append(dst, ' ')
	}
	return dst
}

func (s Solution) append(dst []byte, p page) []byte {
	start := len(dst)
	for _, in := range s.Inputs {
		if in.Exact {
			continue
		}
		if len(dst) > start {
			dst = p.next(dst, 0)
		}
		dst = p.body(dst, both(in.Words, " ", in.Symbol)+" ≈ "+in.Number+" (exactly "+in.Held+")")
	}
	for _, st := range s.Steps {
		if len(dst) > start {
			dst = append(dst, "\n\n"...)
		}
		dst = st.append(dst, p)
	}
	if len(dst) > start {
		dst = append(dst, '\n')
	}
	return dst
}

// both joins two texts; where one is empty or they are the same, one stands
// alone.
func both(a, between, b string) string {
	switch {
	case a == "" || a == b:
		return b
	case b == "":
		return a
	}
	return a + between + b
}

func mark(exact bool) string {
	if exact {
		return "= "
	}
	return "≈ "
}

// indentMax is the deepest that lines stand in to clear the symbol above.
const indentMax = 12

func (st Step) append(dst []byte, p page) []byte {
	start := len(dst)
	if st.Name == "" && st.Words == st.Result {
		return p.answer(dst, st.Result) // a constant
	}
	indent := 2
	if n := utf8.RuneCountInString(st.Symbol) + 1; st.Symbol != "" && n <= indentMax {
		indent = n
	}
	if st.Name != "" {
		dst = p.title(dst, st.Name)
		if st.Words != "" {
			dst = p.body(dst, " = "+st.Words)
		}
	} else if st.Symbol == "" {
		dst = p.body(dst, st.Words)
	}
	symbol := st.Symbol
	if symbol == "" {
		symbol = st.Name
	}
	if symbol != st.Name || st.Symbols != st.Words {
		if len(dst) > start {
			dst = p.next(dst, 0)
		}
		dst = p.body(dst, both(symbol, " = ", st.Symbols))
	}
	if st.Numbers != "" && st.Numbers != st.Symbols && st.Numbers != st.Result {
		dst = p.next(dst, indent)
		dst = p.body(dst, mark(st.NumbersExact)+st.Numbers)
	}
	return p.answer(p.body(p.next(dst, indent), mark(st.Exact)), st.Result)
}
