package analyzer

import (
	"go/ast"
	"go/token"
	"go/types"

	"golang.org/x/tools/go/ast/inspector"
)

// checkProduct reports the product of two quantities.
func (c *checker) checkProduct(cur inspector.Cursor, e *ast.BinaryExpr) {
	t, ok := c.asQuantity(cur, e)
	if ok && c.dimensioned(e.X) && c.dimensioned(e.Y) {
		c.reportProduct(e, t, text(e.X), text(e.Y))
	}
}

func (c *checker) reportProduct(at ast.Node, t types.Type, x, y string) {
	name := typeName(t)
	c.report(at, nil, "%s times %s is a product of two quantities, not a %s: make one factor a plain number, as in 3*x or %s(n)*x, or multiply as float64",
		x, y, name, name)
}

// checkAssignOp reports a *= b and a /= b for two quantities.
func (c *checker) checkAssignOp(s *ast.AssignStmt) {
	if s.Tok != token.MUL_ASSIGN && s.Tok != token.QUO_ASSIGN {
		return
	}
	x, y := s.Lhs[0], s.Rhs[0]
	t := c.info.TypeOf(x)
	if t == nil || !isQuantity(t) || !c.dimensioned(y) {
		return
	}
	if s.Tok == token.MUL_ASSIGN {
		c.reportProduct(s, t, operand(x), operand(y))
		return
	}
	c.reportRatio(s, t, x, y)
}

// checkStep reports x++ and x-- for a quantity.
func (c *checker) checkStep(s *ast.IncDecStmt) {
	t := c.info.TypeOf(s.X)
	if t == nil || !isQuantity(t) {
		return
	}
	op := "+="
	if s.Tok == token.DEC {
		op = "-="
	}
	x := text(s.X)
	c.report(s, nil, "%s%s steps by one quantum: write %s %s %s", x, s.Tok, x, op, suggestion(t, "1"))
}
