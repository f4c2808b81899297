package analyzer

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"

	"golang.org/x/tools/go/ast/inspector"
)

// whole is the arithmetic expression that the one at cur is part of: the
// outermost that holds it with nothing but operators and parentheses between.
func whole(cur inspector.Cursor) inspector.Cursor {
	for {
		up := cur.Parent()
		switch n := up.Node().(type) {
		case *ast.ParenExpr, *ast.UnaryExpr:
		case *ast.BinaryExpr:
			if !arithmetic(n.Op) {
				return cur
			}
		default:
			return cur
		}
		cur = up
	}
}

// outer is the node around the expression at cur, parentheses aside.
func outer(cur inspector.Cursor) inspector.Cursor {
	for {
		cur = cur.Parent()
		if _, ok := cur.Node().(*ast.ParenExpr); !ok {
			return cur
		}
	}
}

// asQuantity reports whether e ends up with a quantity's Go type: by itself, or,
// where it is an untyped constant, by way of the expression it is part of.
func (c *checker) asQuantity(cur inspector.Cursor, e ast.Expr) (types.Type, bool) {
	t := c.info.TypeOf(e)
	if t != nil && untyped(t) {
		t = c.info.TypeOf(whole(cur).Node().(ast.Expr))
	}
	return t, t != nil && isQuantity(t)
}

// usesScale reports whether e is arithmetic on one of the scales.
func (c *checker) usesScale(e ast.Expr) (found bool) {
	ast.Inspect(e, func(n ast.Node) bool {
		if x, ok := n.(ast.Expr); ok {
			found = found || c.untypedConst(x) != nil && c.dimensioned(x)
		}
		return !found
	})
	return found
}

// becomesQuantity reports whether e has a quantity's Go type, its own or that
// of the place where it stands.
func (c *checker) becomesQuantity(e ast.Expr) bool {
	t := c.info.TypeOf(e)
	return t != nil && isQuantity(t)
}

// holdsQuantity reports whether an operand in the arithmetic of e has a
// quantity's Go type.
func (c *checker) holdsQuantity(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return c.holdsQuantity(e.X)
	case *ast.UnaryExpr:
		return c.holdsQuantity(e.X)
	case *ast.BinaryExpr:
		return c.holdsQuantity(e.X) || c.holdsQuantity(e.Y)
	case *ast.BasicLit: // 5 takes the type of what it stands beside
		return false
	}
	return c.becomesQuantity(e)
}

// exact is the value that the constant expression e would have if its divisions
// kept their fractions, or nil if it isn't made of the four operations.
func (c *checker) exact(e ast.Expr) constant.Value {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return c.exact(e.X)
	case *ast.UnaryExpr:
		if v := c.exact(e.X); v != nil && (e.Op == token.ADD || e.Op == token.SUB) {
			return constant.UnaryOp(e.Op, v, 0)
		}
		return nil
	case *ast.BinaryExpr:
		x, y := c.exact(e.X), c.exact(e.Y)
		if x == nil || y == nil {
			return nil
		}
		switch e.Op {
		case token.ADD, token.SUB, token.MUL, token.QUO: // go/constant divides integers to a fraction
			return constant.BinaryOp(x, e.Op, y)
		}
		return nil
	}
	if v := c.value(e); v != nil && (v.Kind() == constant.Int || v.Kind() == constant.Float) {
		return v
	}
	return nil
}
