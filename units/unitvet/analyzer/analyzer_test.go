package analyzer_test

import (
	"testing"

	"golang.org/x/tools/go/analysis"
	"golang.org/x/tools/go/analysis/analysistest"

	"github.com/tenthou/tenthou/units/unitvet/analyzer"
)

// TestRules checks each rule on a package of its own that holds both what is
// refused, marked with a "want" comment, and what passes.
func TestRules(t *testing.T) {
	for _, pkg := range []string{
		"product", "ratio", "truncation", "bare", "generic", "generated", "scaled",
		"github.com/tenthou/tenthou/units",
	} {
		t.Run(pkg, func(t *testing.T) {
			analysistest.Run(t, analysistest.TestData(), analyzer.Analyzer, pkg)
		})
	}
}

// TestFixes checks that each correction offered compiles and reads as in the
// golden file.
func TestFixes(t *testing.T) {
	analysistest.RunWithSuggestedFixes(t, analysistest.TestData(), analyzer.Analyzer, "fixes")
}

func TestAnalyzerIsValid(t *testing.T) {
	if err := analysis.Validate([]*analysis.Analyzer{analyzer.Analyzer}); err != nil {
		t.Error(err)
	}
}
