package analyzer

import (
	"go/ast"
	"go/token"
	"go/types"

	"golang.org/x/tools/go/analysis"
	"golang.org/x/tools/go/ast/inspector"
)

// checkRatio reports a quotient of two quantities that stays a quantity, or
// that loses its fraction on the way to a floating-point number, and a plain
// number divided by a quantity. It reports whether it found one.
func (c *checker) checkRatio(cur inspector.Cursor, e *ast.BinaryExpr) bool {
	t := c.info.TypeOf(e)
	if t == nil || !isQuantity(t) || !c.dimensioned(e.Y) {
		return false
	}
	if !c.dimensioned(e.X) {
		c.report(e, nil, "%s divided by %s, a plain number by a quantity, is not a %s",
			operand(e.X), operand(e.Y), typeName(t))
		return true
	}
	if m, ok := outer(cur).Node().(*ast.BinaryExpr); ok && m.Op == token.MUL && c.allUntyped(e) {
		return false // units.IN/units.THOU*units.Micrometre is 1000 micrometres, and exact
	}
	call, ok := outer(cur).Node().(*ast.CallExpr)
	if !ok {
		c.reportRatio(e, t, e.X, e.Y)
		return true
	}
	to, ok := c.conversion(call)
	switch {
	case !ok || isQuantity(to) || !isNumber(to):
		c.reportRatio(e, t, e.X, e.Y)
	case isInteger(to):
		return false
	default:
		f := text(call.Fun)
		c.report(e, floatFix(outer(cur), call, e),
			"%s drops its fraction before %s sees it: write %s(%s) / %s(%s)",
			text(e), f, f, argument(e.X), f, argument(e.Y))
	}
	return true
}

func (c *checker) reportRatio(at ast.Node, t types.Type, x, y ast.Expr) {
	c.report(at, nil, "%s divided by %s is a plain number, not a %s: write int64(%s / %s) for whole times, float64(%s) / float64(%s) for the ratio",
		operand(x), operand(y), typeName(t), operand(x), operand(y), argument(x), argument(y))
}

// floatFix makes float64(a / b) into float64(a) / float64(b), in parentheses
// where an operator beside it might bind to only a part.
func floatFix(cur inspector.Cursor, call *ast.CallExpr, e *ast.BinaryExpr) []analysis.SuggestedFix {
	if call.Args[0] != e {
		return nil
	}
	edits := []analysis.TextEdit{
		insert(e.X.End(), ")"),
		insert(e.Y.Pos(), text(call.Fun)+"("),
	}
	switch cur.Parent().Node().(type) {
	case *ast.BinaryExpr, *ast.UnaryExpr:
		edits = append(edits, insert(call.Pos(), "("), insert(call.End(), ")"))
	}
	return fix("Divide after converting", edits...)
}

func fix(message string, edits ...analysis.TextEdit) []analysis.SuggestedFix {
	return []analysis.SuggestedFix{{Message: message, TextEdits: edits}}
}

func insert(at token.Pos, s string) analysis.TextEdit {
	return analysis.TextEdit{Pos: at, End: at, NewText: []byte(s)}
}
