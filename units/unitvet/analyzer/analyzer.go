package analyzer

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"

	"golang.org/x/tools/go/analysis"
	"golang.org/x/tools/go/analysis/passes/inspect"
	"golang.org/x/tools/go/ast/inspector"
)

// unitsPath is the package whose quantities are checked.
const unitsPath = "github.com/tenthou/tenthou/units"

// Analyzer is the check.
var Analyzer = &analysis.Analyzer{
	Name: "unitvet",
	Doc: `refuse arithmetic on units that compiles but can't be meant

It reports the product of two quantities, the quotient of two kept as a
quantity, a division of whole constants that drops its remainder, and a bare
number where a quantity is meant.`,
	URL:      "https://pkg.go.dev/github.com/tenthou/tenthou/units/unitvet/analyzer",
	Requires: []*analysis.Analyzer{inspect.Analyzer},
	Run:      run,
}

// checker is the check of one package.
type checker struct {
	pass *analysis.Pass
	info *types.Info
	// inits has the expression behind each untyped constant of the package.
	inits map[*types.Const]ast.Expr
}

func run(pass *analysis.Pass) (any, error) {
	switch pass.Pkg.Path() {
	case unitsPath, unitsPath + "_test": // there, a bare count of quanta is the subject
		return nil, nil
	}
	root := pass.ResultOf[inspect.Analyzer].(*inspector.Inspector).Root()
	c := &checker{pass: pass, info: pass.TypesInfo, inits: make(map[*types.Const]ast.Expr)}
	for cur := range root.Preorder((*ast.ValueSpec)(nil)) {
		c.recordConstants(cur.Node().(*ast.ValueSpec))
	}
	for file := range root.Children() {
		if ast.IsGenerated(file.Node().(*ast.File)) {
			continue
		}
		for cur := range file.Preorder() {
			c.check(cur)
		}
	}
	return nil, nil
}

func (c *checker) recordConstants(spec *ast.ValueSpec) {
	for i, name := range spec.Names {
		k, ok := c.info.Defs[name].(*types.Const)
		if ok && untyped(k.Type()) && i < len(spec.Values) {
			c.inits[k] = spec.Values[i]
		}
	}
}

func (c *checker) check(cur inspector.Cursor) {
	switch n := cur.Node().(type) {
	case *ast.BinaryExpr:
		switch n.Op {
		case token.MUL:
			c.checkProduct(cur, n)
		case token.QUO:
			if !c.checkRatio(cur, n) {
				c.checkTruncation(cur, n)
			}
		}
	case *ast.AssignStmt:
		c.checkAssignOp(n)
	case *ast.IncDecStmt:
		c.checkStep(n)
	case *ast.Ident:
		c.checkTruncatedName(cur, n)
	}
	if e, ok := cur.Node().(ast.Expr); ok {
		c.checkBare(cur, e)
	}
}

func (c *checker) report(n ast.Node, fixes []analysis.SuggestedFix, format string, args ...any) {
	c.pass.Report(analysis.Diagnostic{
		Pos: n.Pos(), End: n.End(),
		Message:        fmt.Sprintf(format, args...),
		SuggestedFixes: fixes,
	})
}

// typeName is the type as a program writes it: units.Length.
func typeName(t types.Type) string {
	return types.TypeString(t, (*types.Package).Name)
}
