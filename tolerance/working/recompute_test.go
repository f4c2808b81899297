package working_test

import (
	"errors"
	"fmt"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"math"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance/working"
)

// The judge of every printed line: it reads the text, turns it into a Go
// expression, and works that out with go/constant, which shares nothing with
// the package.

// π to 110 digits, from mpmath 1.3.0 (mp.pi).
const piText = "3.14159265358979323846264338327950288419716939937510582097494459230781640628620899862803482534211706798214808651"

// expression turns a printed line into a Go expression. units are the symbols
// that may stand behind numbers.
func expression(line string, units []string) (string, error) {
	var b strings.Builder
	operand := true  // an operand is expected, so a bar opens
	var opened []int // where brackets did
	closed := 0      // where the last one that closed had opened
	for line != "" {
		r, n := utf8.DecodeRuneInString(line)
		switch {
		case r == ' ':
		case r >= '0' && r <= '9' || r == '.':
			if !operand {
				return "", fmt.Errorf("a number where an operation is expected: %q", line)
			}
			n = strings.IndexFunc(line, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
			if n < 0 {
				n = len(line)
			}
			b.WriteString(line[:n])
			for _, u := range units {
				if behind := strings.TrimPrefix(line[n:], " "); strings.HasPrefix(behind, u) {
					n = len(line) - len(behind) + len(u)
					break
				}
			}
			operand = false
		case r == '√':
			b.WriteString("sqrt")
		case r >= 'a' && r <= 'z':
			n = strings.Index(line, "(")
			if n < 0 || !strings.Contains(" min max sin cos atan2 ", " "+line[:n]+" ") {
				return "", fmt.Errorf("a strange name %q", line)
			}
			b.WriteString(line[:n])
		case r == 'π':
			b.WriteString("pi")
			operand = false
		case r == '|' && operand:
			b.WriteString("abs(")
		case r == '|':
			b.WriteString(")")
		case r == '²':
			text := b.String()
			b.Reset()
			b.WriteString(text[:closed] + "(" + text[closed:] + "*" + text[closed:] + ")")
		case strings.ContainsRune("×÷−", r):
			b.WriteString(map[rune]string{'×': " * ", '÷': " / ", '−': " - "}[r])
			operand = true
		case strings.ContainsRune("+(,", r):
			if r == '(' {
				opened = append(opened, b.Len())
			}
			b.WriteRune(r)
			operand = true
		case r == ')' && len(opened) > 0:
			closed, opened = opened[len(opened)-1], opened[:len(opened)-1]
			b.WriteRune(r)
			operand = false
		default:
			return "", fmt.Errorf("a strange character %q", line)
		}
		line = line[n:]
	}
	return b.String(), nil
}

// workOut is the value of a printed line.
func workOut(line string, units ...string) (v constant.Value, err error) {
	text, err := expression(line, units)
	if err != nil {
		return nil, err
	}
	tree, err := parser.ParseExpr(text)
	if err != nil {
		return nil, fmt.Errorf("%q: %w", text, err)
	}
	return value(tree)
}

func value(e ast.Expr) (constant.Value, error) {
	switch e := e.(type) {
	case *ast.BasicLit:
		return constant.MakeFromLiteral(e.Value, e.Kind, 0), nil
	case *ast.Ident:
		if e.Name == "pi" {
			return constant.MakeFromLiteral(piText, token.FLOAT, 0), nil
		}
	case *ast.ParenExpr:
		return value(e.X)
	case *ast.UnaryExpr:
		v, err := value(e.X)
		if err != nil {
			return nil, err
		}
		return constant.UnaryOp(e.Op, v, 0), nil
	case *ast.BinaryExpr:
		a, err := value(e.X)
		if err != nil {
			return nil, err
		}
		b, err := value(e.Y)
		if err != nil {
			return nil, err
		}
		if e.Op == token.QUO && constant.Sign(b) == 0 {
			return nil, errors.New("division by zero")
		}
		return constant.BinaryOp(a, e.Op, b), nil
	case *ast.CallExpr:
		args := make([]constant.Value, len(e.Args))
		for i, a := range e.Args {
			v, err := value(a)
			if err != nil {
				return nil, err
			}
			args[i] = v
		}
		return call(e.Fun.(*ast.Ident).Name, args), nil
	}
	return nil, fmt.Errorf("%T", e)
}

func call(name string, args []constant.Value) constant.Value {
	float := func(i int) float64 { x, _ := constant.Float64Val(args[i]); return x }
	best := args[0]
	switch name {
	case "abs":
		if constant.Sign(best) < 0 {
			return constant.UnaryOp(token.SUB, best, 0)
		}
	case "min", "max":
		for _, v := range args[1:] {
			if constant.Compare(v, map[string]token.Token{"min": token.LSS, "max": token.GTR}[name], best) {
				best = v
			}
		}
	case "sqrt":
		return constant.MakeFloat64(math.Sqrt(float(0)))
	case "sin":
		return constant.MakeFloat64(math.Sin(float(0)))
	case "cos":
		return constant.MakeFloat64(math.Cos(float(0)))
	case "atan2":
		return constant.MakeFloat64(math.Atan2(float(0), float(1)))
	}
	return best
}

// recompute says where a step's numbers don't give its result, to the last
// digit printed.
func recompute(st working.Step, units ...string) error {
	got, err := workOut(st.Numbers, units...)
	if err != nil {
		return fmt.Errorf("%s: %w", st.Numbers, err)
	}
	want, err := workOut(st.Result, units...)
	if err != nil {
		return fmt.Errorf("%s: %w", st.Result, err)
	}
	digits := digitsOf(st.Result)
	_, decimals, _ := strings.Cut(digits, ".")
	if len(decimals) != st.Places {
		return fmt.Errorf("%s has not %d places", st.Result, st.Places)
	}
	// Twice the difference, in units of the last place.
	twice := constant.BinaryOp(constant.BinaryOp(got, token.SUB, want), token.MUL, constant.MakeFromLiteral("2"+strings.Repeat("0", st.Places), token.INT, 0))
	if constant.Sign(twice) < 0 {
		twice = constant.UnaryOp(token.SUB, twice, 0)
	}
	one := constant.MakeInt64(1)
	even := strings.ContainsRune("02468", rune(digits[len(digits)-1]))
	if constant.Compare(twice, token.GTR, one) || constant.Compare(twice, token.EQL, one) && !even {
		return fmt.Errorf("%s gives %s, not %s", st.Numbers, got.ExactString(), st.Result)
	}
	return nil
}
