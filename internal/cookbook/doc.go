// Package cookbook makes the index of the recipes from the recipes themselves:
// their doc comments give the question and whom it is for, their code the
// functions that they use. A test of the recipes compares the index with what
// stands in the file, so that it can't fall behind.
//
// A recipe's doc comment begins "Name answers: …?" and has paragraphs that begin
// with each of "Method:", "Source:", "For:" and "Caution:".
package cookbook
