// Package vectors reads the test vectors in testdata: worked examples as plain
// text that a machinist can read and a test can't half read.
//
// # A vector file
//
//	# source: 7 CFR 51.322
//	# kind: published
//	# count: 2
//	# Inches to millimetres at one place. A line like this is a remark.
//	columns: value; unit; places; rule; expected
//	1/16 in ; mm ; 1 ; away ; 1.6
//	3/4 in  ; mm ; 1 ; away ; 19.1 # 19.05 exactly: half to even gives 19.0
//
// The header has a source, a kind and a count of the cases; then come the
// names of the columns, then one case a line. Cells stand between semicolons,
// blanks around them don't count, and none is empty: a dash means that there is
// no value. A note may follow the last cell, set off by a # between blanks.
// Blank lines and lines that begin with # may stand anywhere.
//
// Two column names have a meaning of their own: id names the case, and no two
// have the same; source overrides the file's source for one case (a dash keeps
// it).
//
// # Kinds
//
// A file lies in the folder of its kind: published (a standard, a handbook, a
// data set), reference (computed by a general-purpose library, with the script
// beside it), practice (common practice of the trade, without a source, or from
// memory, as the file says), demo (invented).
//
// # Nothing slips
//
// [Read] refuses a file whose count differs from its header's, a line with too
// few or too many cells, two columns of one name, two cases with one id or the
// same cells, and a header line that is missing, doubled or too late. A test
// that asks for a column the file doesn't have fails; so does one that leaves a
// column of a case unread. [File.Each] logs how many cases ran.
//
// # Accuracy
//
// [Case.Near] compares exactly, as fractions: a cell as printed (16.2037) stands
// for everything that rounds to it, half a unit of its last place on either
// side; "16.2037 ± 0.001" and "16.2 ± 0.5 %" state their tolerance.
//
// # Errors
//
// Each is an [*Error] and reads file:line: what is wrong. A test fails with the
// same file:line of the case.
package vectors
