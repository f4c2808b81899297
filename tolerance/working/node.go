package working

// An op is what a node of a formula does.
type op uint8

const (
	opConstant op = iota // the zero node is exactly 0
	opGiven
	opSame // a second name for a term that has one
	opAdd
	opSub
	opAbs
	opMin
	opMax
	opSpread
	opScale
	opScalePi
	opMulDiv
	opShare
	// These are of real numbers alone.
	opMul
	opQuo
	opSqrt
	opSin
	opCos
	opAtan2
)

// A node is one operation of a formula, with the value that the quantity's
// own method gave for it. Nodes never change once made, so formulas share
// them freely.
type node struct {
	op       op
	size     uint32 // operands and operations when written in one line, up to sizeMax
	value    int64  // in quanta, or the bits of a float64
	num, den int64  // of Scale and ScalePi
	words    string
	symbol   string
	unit     string // of a real number
	args     []*node
	few      [3]*node // where args has no more than three
}

// zero is what an empty term stands for.
var zero = &node{size: 1}

const (
	// sizeMax is where counting the operands of a line stops.
	sizeMax = 1 << 24
	// lineMax is the most operands and operations that one line shows.
	lineMax = 2000
	// nodesMax is the most operations that one solution has.
	nodesMax = 10_000
)

func operation(op op, value int64, args ...*node) *node {
	n := &node{op: op, value: value, size: 1}
	n.args = append(n.few[:0], args...)
	for _, a := range args {
		n.size += a.shown()
		if n.size > sizeMax {
			n.size = sizeMax
		}
	}
	switch op {
	case opSpread: // each operand stands in max and in min
		n.size = min(2*n.size, sizeMax)
	case opShare: // the part stands above and below the division
		n.size = min(n.size+args[1].shown(), sizeMax)
	}
	return n
}

// named reports whether lines show the node by name.
func (n *node) named() bool { return n.words != "" || n.symbol != "" }

// leaf reports whether nothing is calculated in the node.
func (n *node) leaf() bool { return n.op <= opGiven }

// shown is how many operands the node puts into the line that it stands in.
func (n *node) shown() uint32 {
	if n.leaf() || n.named() {
		return 1
	}
	return n.size
}

// name gives the node a name. One that has a name keeps it, and the new one
// is a line of its own that says they are the same.
func (n *node) name(words, symbol string) *node {
	words, symbol = clean(words), clean(symbol)
	if words == "" && symbol == "" {
		return n
	}
	if n.named() {
		n = operation(opSame, n.value, n)
	} else {
		named := *n
		named.args = append(named.few[:0], n.args...)
		n = &named
	}
	if n.op == opConstant {
		n.op = opGiven
	}
	n.words, n.symbol = words, symbol
	return n
}

// label is what an error calls the node.
func (n *node) label() string {
	switch {
	case n.words != "":
		return n.words
	case n.symbol != "":
		return n.symbol
	}
	return "result"
}
