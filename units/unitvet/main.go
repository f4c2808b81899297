// Unitvet reports arithmetic on the quantities of package
// github.com/tenthou/tenthou/units that compiles but can't be meant: a length
// times a length, a bare number where a length is wanted, a fraction that Go
// divides to zero.
//
// It checks the packages it is given, or runs under go vet:
//
//	unitvet ./...
//	go vet -vettool=$(which unitvet) ./...
//
// It prints one line a fault, and exits with a status other than 0 when there
// is any. With -fix it makes the corrections that are certain. Package
// analyzer says what is refused.
package main

import (
	"golang.org/x/tools/go/analysis/singlechecker"

	"github.com/tenthou/tenthou/units/unitvet/analyzer"
)

func main() { singlechecker.Main(analyzer.Analyzer) }
