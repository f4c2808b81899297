package analyzer

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"

	"golang.org/x/tools/go/ast/edge"
	"golang.org/x/tools/go/ast/inspector"
)

// checkBare reports a number with no unit that the compiler made a quantity.
func (c *checker) checkBare(cur inspector.Cursor, e ast.Expr) {
	v := c.value(e)
	if v == nil || !c.bare(e) || constant.Sign(v) == 0 {
		return
	}
	if c.bareOperand(cur) || c.scales(cur) {
		return
	}
	if t, ok := c.asQuantity(cur, e); ok {
		s := argument(e)
		c.report(e, nil, "%s has no unit: write %s, or %s(%s) if quanta are meant",
			s, suggestion(t, operand(ast.Unparen(e))), typeName(t), s)
	}
}

// bareOperand reports whether the expression at cur is part of a larger one
// that is itself a number with no unit, and is reported instead.
func (c *checker) bareOperand(cur inspector.Cursor) bool {
	up, ok := cur.Parent().Node().(ast.Expr)
	return ok && c.bare(up)
}

// scales reports whether the number at cur has no need of a unit where it
// stands: a factor, a divisor, a count of bits, a term beside another plain
// number, or the operand of a conversion.
func (c *checker) scales(cur inspector.Cursor) bool {
	switch up := cur.Parent().Node().(type) {
	case *ast.BinaryExpr:
		other := up.Y
		if k, _ := cur.ParentEdge(); k == edge.BinaryExpr_Y {
			other = up.X
		}
		switch up.Op {
		case token.ADD, token.SUB,
			token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ:
			return !c.dimensioned(other)
		}
		return true
	case *ast.AssignStmt:
		return up.Tok != token.ASSIGN && up.Tok != token.DEFINE &&
			up.Tok != token.ADD_ASSIGN && up.Tok != token.SUB_ASSIGN
	case *ast.CallExpr:
		if c.minOrMax(up) {
			return !c.dimensioned(up)
		}
		_, ok := c.conversion(up)
		return ok
	}
	return false
}

// suggestion is the number s with a unit of type t, as an example of what to
// write: s*units.Millimetre for a length.
func suggestion(t types.Type, s string) string {
	unit := exampleUnit(t)
	if unit == "" {
		return s + " times a unit"
	}
	return s + "*" + unit + " or whichever unit it is in"
}

// exampleUnits has the unit that a message suggests for each type.
var exampleUnits = map[string]string{
	"Length":                "Millimetre",
	"Angle":                 "Degree",
	"Volume":                "CubicCentimetre",
	"Mass":                  "Gram",
	"Force":                 "Newton",
	"Pressure":              "Kilopascal",
	"SpringRate":            "NewtonPerMillimetre",
	"Temperature":           "CELSIUS",
	"TemperatureDifference": "Kelvin",
}

// exampleUnit names a unit of type t that package units has, or is empty.
func exampleUnit(t types.Type) string {
	named, ok := types.Unalias(t).(*types.Named)
	if !ok {
		return ""
	}
	pkg := named.Obj().Pkg()
	name := exampleUnits[named.Obj().Name()]
	if _, ok := pkg.Scope().Lookup(name).(*types.Const); !ok {
		return ""
	}
	return pkg.Name() + "." + name
}

// text is e as it is written.
func text(e ast.Expr) string { return types.ExprString(e) }

// operand is e as it can stand beside any operator.
func operand(e ast.Expr) string {
	if _, ok := e.(*ast.BinaryExpr); ok {
		return "(" + text(e) + ")"
	}
	return text(e)
}

// argument is e as it can stand in a call.
func argument(e ast.Expr) string { return text(ast.Unparen(e)) }
