package analyzer

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
)

// isQuantity reports whether t is one of the quantities of package units, or a
// type parameter that can be nothing else.
func isQuantity(t types.Type) bool {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		pkg := t.Obj().Pkg()
		if pkg == nil || pkg.Path() != unitsPath {
			return false
		}
		b, ok := t.Underlying().(*types.Basic)
		return ok && b.Kind() == types.Int64
	case *types.TypeParam:
		return onlyQuantities(t.Constraint())
	}
	return false
}

// onlyQuantities reports whether every type in the type set of the constraint t
// is a quantity. One embedded element that admits nothing else is enough, since
// a constraint's elements intersect.
func onlyQuantities(t types.Type) bool {
	set, ok := t.Underlying().(*types.Interface)
	if !ok {
		return isQuantity(t)
	}
	for e := range set.EmbeddedTypes() {
		union, ok := types.Unalias(e).(*types.Union)
		if !ok {
			if onlyQuantities(e) {
				return true
			}
			continue
		}
		all := union.Len() > 0
		for term := range union.Terms() {
			all = all && onlyQuantities(term.Type())
		}
		if all {
			return true
		}
	}
	return false
}

func untyped(t types.Type) bool {
	b, ok := t.(*types.Basic)
	return ok && b.Info()&types.IsUntyped != 0
}

// dimensioned reports whether e stands for a quantity, whatever its Go type,
// rather than for a plain number. A conversion does not change which.
func (c *checker) dimensioned(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return c.dimensioned(e.X)
	case *ast.BasicLit:
		return false
	case *ast.Ident, *ast.SelectorExpr:
		if k := c.untypedConst(e); k != nil {
			if init, ok := c.inits[k]; ok {
				return c.dimensioned(init)
			}
			return isScale(k)
		}
	case *ast.UnaryExpr:
		switch e.Op {
		case token.ADD, token.SUB, token.XOR:
			return c.dimensioned(e.X)
		}
	case *ast.BinaryExpr:
		x, y := c.dimensioned(e.X), c.dimensioned(e.Y)
		switch e.Op {
		case token.MUL, token.ADD, token.SUB, token.OR, token.XOR, token.AND_NOT:
			return x || y
		case token.QUO:
			return x != y
		case token.REM, token.AND: // l % 2 asks whether l is odd
			return x && y
		case token.SHL, token.SHR:
			return x
		}
	case *ast.CallExpr:
		if to, ok := c.conversion(e); ok && isNumber(to) {
			return c.dimensioned(e.Args[0])
		}
		if c.minOrMax(e) {
			return slices.ContainsFunc(e.Args, c.dimensioned)
		}
	}
	t := c.info.TypeOf(e)
	return t != nil && isQuantity(t)
}

// bare reports whether e is a number written out with no unit: an untyped
// constant made of literals alone.
func (c *checker) bare(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return c.bare(e.X)
	case *ast.BasicLit:
		return e.Kind != token.STRING
	case *ast.Ident:
		if k := c.untypedConst(e); k != nil {
			init, ok := c.inits[k]
			return ok && c.bare(init)
		}
	case *ast.UnaryExpr:
		return c.bare(e.X)
	case *ast.BinaryExpr:
		return arithmetic(e.Op) && c.bare(e.X) && c.bare(e.Y)
	case *ast.CallExpr:
		if !c.minOrMax(e) {
			return false
		}
		for _, a := range e.Args {
			if !c.bare(a) {
				return false
			}
		}
		return true
	}
	return false
}

// untypedConst is the untyped numeric constant that e names, or nil.
func (c *checker) untypedConst(e ast.Expr) *types.Const {
	var id *ast.Ident
	switch e := e.(type) {
	case *ast.Ident:
		id = e
	case *ast.SelectorExpr:
		id = e.Sel
	default:
		return nil
	}
	k, ok := c.info.Uses[id].(*types.Const)
	if !ok || !untyped(k.Type()) || k.Type().(*types.Basic).Info()&types.IsNumeric == 0 {
		return nil
	}
	return k
}

// isScale reports whether k is one of the scales of package units, such as
// units.MM: its exported untyped constants.
func isScale(k *types.Const) bool {
	return k.Pkg() != nil && k.Pkg().Path() == unitsPath && k.Exported()
}

// conversion is the type that the call converts to, if it is a conversion.
func (c *checker) conversion(e *ast.CallExpr) (types.Type, bool) {
	tv := c.info.Types[e.Fun]
	return tv.Type, tv.IsType() && len(e.Args) == 1
}

func (c *checker) minOrMax(e *ast.CallExpr) bool {
	id, ok := ast.Unparen(e.Fun).(*ast.Ident)
	if !ok {
		return false
	}
	b, ok := c.info.Uses[id].(*types.Builtin)
	return ok && (b.Name() == "min" || b.Name() == "max")
}

func isNumber(t types.Type) bool {
	if isQuantity(t) {
		return true
	}
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsNumeric != 0
}

func isInteger(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsInteger != 0
}

func arithmetic(op token.Token) bool {
	switch op {
	case token.ADD, token.SUB, token.MUL, token.QUO, token.REM,
		token.AND, token.OR, token.XOR, token.AND_NOT, token.SHL, token.SHR:
		return true
	}
	return false
}

// value is e's constant value, or nil.
func (c *checker) value(e ast.Expr) constant.Value {
	return c.info.Types[e].Value
}
