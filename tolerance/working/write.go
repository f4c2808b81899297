package working

import (
	"strconv"
	"unicode"
)

// A mode is what a line shows of the things it names.
type mode uint8

const (
	inWords mode = iota
	inSymbols
	inNumbers
)

// How tightly an operation binds: what binds less than its place asks for
// stands in brackets.
const (
	loose   = iota // sums
	tight          // products
	tighter        // what stands alone
)

// A writer writes formulas.
type writer struct {
	plan *plan
	mode mode
	dst  []byte
}

// formula writes what n is calculated from.
func (p *plan) formula(n *node, m mode) string {
	w := writer{plan: p, mode: m}
	w.operation(n, loose, true)
	return string(w.dst)
}

func (w *writer) text(s string) { w.dst = append(w.dst, s...) }

// operand writes n where something stands that binds at least as the place
// asks for. At the start of a line or a bracket a minus sign needs no
// brackets.
func (w *writer) operand(n *node, place int, start bool) {
	it := w.plan.items[n]
	if it == nil {
		w.operation(n, place, start)
		return
	}
	w.single(w.plan.show(it, w.mode), start)
}

func (w *writer) single(text string, start bool) {
	if start || len(text) < len(minusSign) || text[:len(minusSign)] != minusSign {
		w.text(text)
		return
	}
	w.text("(" + text + ")")
}

// show is what a line has in the place of an item.
func (p *plan) show(it *item, m mode) string {
	if it.sign != "" {
		return it.sign
	}
	names := [2]string{it.words, it.symbol}
	if m == inSymbols {
		names = [2]string{it.symbol, it.words}
	}
	for _, name := range names {
		if name != "" && m != inNumbers {
			return name
		}
	}
	if m == inNumbers || it.fixed {
		f := form{}
		if m == inNumbers {
			f = p.ruler.substitutions
		}
		return p.ruler.number(it.node, it.places, f)
	}
	return p.ruler.exactly(it.node)
}

func binds(n *node) int {
	switch n.op {
	case opAdd, opSub, opSpread:
		return loose
	case opMul:
		if square(n) {
			return tighter
		}
		return tight
	case opScale, opScalePi, opMulDiv, opShare, opQuo:
		return tight
	}
	return tighter
}

func (w *writer) operation(n *node, place int, start bool) {
	if binds(n) < place {
		w.text("(")
		defer w.text(")")
		start = true
	}
	switch n.op {
	case opAdd:
		w.operand(n.args[0], loose, start)
		w.text(" + ")
		w.operand(n.args[1], loose, false)
	case opSub:
		w.operand(n.args[0], loose, start)
		w.text(" − ")
		w.operand(n.args[1], tight, false)
	case opAbs:
		if w.mode == inWords {
			w.text("magnitude of ")
			w.list(n.args)
			break
		}
		w.text("|")
		w.operand(n.args[0], loose, true)
		w.text("|")
	case opMin, opMax, opSpread:
		w.extremes(n)
	case opScale, opScalePi:
		w.scale(n, start)
	case opMulDiv:
		w.operand(n.args[0], tighter, start)
		w.text(" × ")
		w.operand(n.args[1], tighter, false)
		w.text(" ÷ ")
		w.operand(n.args[2], tighter, false)
	case opShare:
		w.operand(n.args[0], tighter, start)
		w.text(" × ")
		w.operand(n.args[1], tighter, false)
		w.text(" ÷ (")
		w.operand(n.args[1], loose, true)
		w.text(" + ")
		w.operand(n.args[2], loose, false)
		w.text(")")
	case opSame:
		w.operand(n.args[0], place, start)
	case opMul, opQuo:
		w.product(n, start)
	default:
		w.text(functions[n.op][min(w.mode, inSymbols)])
		w.list(n.args)
	}
}

// functions are the names of what is written as one, in words and in signs.
var functions = map[op][2]string{
	opSqrt:  {"square root of ", "√"},
	opSin:   {"sine of ", "sin"},
	opCos:   {"cosine of ", "cos"},
	opAtan2: {"direction of ", "atan2"},
}

// square reports whether n is something times itself.
func square(n *node) bool { return n.op == opMul && n.args[0] == n.args[1] }

// isWord reports whether a name can take a ² without brackets.
func isWord(s string) bool {
	for _, r := range s {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && (r < '₀' || r > '₉') && r != '_' {
			return false
		}
	}
	return true
}

// product writes a × b × c, a × b ÷ c, (a)², and brackets in all other cases.
func (w *writer) product(n *node, start bool) {
	if square(n) {
		if it := w.plan.items[n.args[0]]; it != nil && it.node.named() && w.mode != inNumbers && isWord(w.plan.show(it, w.mode)) {
			w.text(w.plan.show(it, w.mode))
		} else {
			w.list(n.args[:1])
		}
		w.text("²")
		return
	}
	left := tighter
	if n.args[0].op == opMul {
		left = tight
	}
	w.operand(n.args[0], left, start)
	if n.op == opMul {
		w.text(" × ")
	} else {
		w.text(" ÷ ")
	}
	w.operand(n.args[1], tighter, false)
}

func (w *writer) extremes(n *node) {
	least, greatest := "min", "max"
	if w.mode == inWords {
		least, greatest = "least of ", "greatest of "
	}
	switch n.op {
	case opMin:
		w.text(least)
	case opMax:
		w.text(greatest)
	case opSpread:
		w.text(greatest)
		w.list(n.args)
		w.text(" − ")
		w.text(least)
	}
	w.list(n.args)
}

func (w *writer) list(args []*node) {
	w.text("(")
	for i, a := range args {
		if i > 0 {
			w.text(", ")
		}
		w.operand(a, loose, true)
	}
	w.text(")")
}

// scale writes 2 × a, a ÷ 2, a × 2 ÷ 3, π × a ÷ 4 and the like.
func (w *writer) scale(n *node, start bool) {
	num, den := n.num, n.den
	switch {
	case n.op == opScalePi:
		w.text("π × ")
		start = false
	case den == 1:
		w.whole(num, start)
		w.text(" × ")
		w.operand(n.args[0], tighter, false)
		return
	}
	w.operand(n.args[0], tighter, start)
	if num != 1 {
		w.text(" × ")
		w.whole(num, false)
	}
	if den != 1 {
		w.text(" ÷ ")
		w.whole(den, false)
	}
}

func (w *writer) whole(v int64, start bool) { w.single(minus(strconv.FormatInt(v, 10)), start) }
