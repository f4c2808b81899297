package analyzer

import (
	"go/ast"
	"go/constant"
	"go/token"
	"strings"

	"golang.org/x/tools/go/analysis"
	"golang.org/x/tools/go/ast/inspector"
)

// checkTruncation reports a division of whole constants that leaves a
// remainder, in an expression that is a quantity or uses a scale.
func (c *checker) checkTruncation(cur inspector.Cursor, e *ast.BinaryExpr) {
	if !c.truncates(e) || !c.countsQuanta(cur, c.value(e)) {
		return
	}
	c.report(e, c.truncationFix(cur, e),
		"%s is %s: whole constants divide to a whole number; %s", text(e), c.value(e), c.instead(e))
}

// checkTruncatedName reports the use in such an expression of a constant that
// was cut short where it was declared: const ratio = 25 / 64.
func (c *checker) checkTruncatedName(cur inspector.Cursor, id *ast.Ident) {
	k := c.untypedConst(id)
	if k == nil {
		return
	}
	e, ok := ast.Unparen(c.inits[k]).(*ast.BinaryExpr)
	if !ok || e.Op != token.QUO || !c.truncates(e) || c.usesScale(e) { // a scale is reported there
		return
	}
	if c.countsQuanta(cur, k.Val()) {
		c.report(id, nil, "%s, declared as %s, is %s: whole constants divide to a whole number; %s",
			id.Name, text(e), k.Val(), c.instead(e))
	}
}

// countsQuanta reports whether the quotient at cur, of value v, is part of an
// expression that is a quantity or uses a scale. Where that is so only because a
// constant is converted, as in units.Length(math.MaxInt64/2), quanta are meant,
// and only a quotient of 0 is refused.
func (c *checker) countsQuanta(cur inspector.Cursor, v constant.Value) bool {
	for {
		top := whole(cur)
		e := top.Node().(ast.Expr)
		if c.usesScale(e) || c.holdsQuantity(e) {
			return true
		}
		cur = outer(top)
		call, ok := cur.Node().(*ast.CallExpr)
		if !ok {
			return c.becomesQuantity(e)
		}
		to, ok := c.conversion(call)
		if !ok || !isNumber(to) {
			return c.becomesQuantity(e)
		}
		if isQuantity(to) {
			return c.value(e) == nil || constant.Sign(v) == 0
		}
	}
}

// truncates reports whether e divides whole constants with a remainder.
func (c *checker) truncates(e *ast.BinaryExpr) bool {
	x, y := c.value(e.X), c.value(e.Y)
	if x == nil || y == nil || !isInteger(c.info.TypeOf(e.X)) || !isInteger(c.info.TypeOf(e.Y)) {
		return false
	}
	return constant.Sign(constant.BinaryOp(constant.ToInt(x), token.REM, constant.ToInt(y))) != 0
}

func (c *checker) instead(e *ast.BinaryExpr) string {
	if c.bare(e) {
		return "multiply first and divide last, or write " + pointed(e) + " with a scale such as units.MM"
	}
	return "write the decimal that is meant, or divide so that nothing is left over"
}

// pointed is the quotient e with a decimal point in its dividend, which makes
// it an exact fraction.
func pointed(e *ast.BinaryExpr) string {
	x := text(e.X)
	if isDecimal(e.X) {
		return x + ".0/" + text(e.Y)
	}
	return "1.0*" + x + "/" + text(e.Y)
}

func isDecimal(e ast.Expr) bool {
	lit, ok := e.(*ast.BasicLit)
	return ok && lit.Kind == token.INT && (lit.Value == "0" || !strings.HasPrefix(lit.Value, "0"))
}

// truncationFix is the correction, where it is certain to compile, to keep every
// type, and to give exactly what was written.
func (c *checker) truncationFix(cur inspector.Cursor, e *ast.BinaryExpr) []analysis.SuggestedFix {
	top := whole(cur).Node().(ast.Expr)
	if isDecimal(e.X) && c.becomesQuantity(top) && c.allUntyped(top) && c.isWhole(top) {
		return fix("Make the fraction exact", insert(e.X.End(), ".0"))
	}
	m, ok := outer(cur).Node().(*ast.BinaryExpr)
	if !ok || m.Op != token.MUL || ast.Unparen(m.X) != e || !c.isWhole(m) {
		return nil
	}
	s := text(m.Y) + "/" + text(e.Y)
	if text(e.X) != "1" {
		s = text(e.X) + "*" + s
	}
	return fix("Multiply first, divide last",
		analysis.TextEdit{Pos: m.Pos(), End: m.End(), NewText: []byte(s)})
}

// isWhole reports whether the exact value of the constant expression e is a
// whole number.
func (c *checker) isWhole(e ast.Expr) bool {
	v := c.exact(e)
	return v != nil && constant.ToInt(v).Kind() == constant.Int
}

// allUntyped reports whether every operand in e is an untyped constant, so that
// a decimal point in one makes the whole a fraction.
func (c *checker) allUntyped(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return c.allUntyped(e.X)
	case *ast.UnaryExpr:
		return c.allUntyped(e.X)
	case *ast.BinaryExpr:
		return c.allUntyped(e.X) && c.allUntyped(e.Y)
	case *ast.BasicLit:
		return true
	}
	return c.untypedConst(e) != nil
}
