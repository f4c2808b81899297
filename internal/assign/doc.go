// Package assign pairs rows with columns, each used once at the most, so that
// the pairs cost least: which piston goes in which bore.
//
// # What is solved
//
// A table gives each pair of a row and a column a whole-number cost, or says
// that the pair is [Forbidden]. It need not be square. A [Solver] makes as many
// pairs as can be made and, among all the ways to make that many,
//
//   - [Solver.LeastSum] takes the one with the least sum of costs;
//   - [Solver.LeastGreatest] takes the one whose greatest cost is least, and
//     among those the one with the least sum.
//
// Where several ways are equally good, the answer is the one that gives row 0
// the lowest column, then row 1 the lowest it can have, and so on; a row that
// gets a column comes before the same row without. So the answer depends on the
// table alone, not on how it was found.
//
// # How
//
// Rows come in one at a time, each by the shortest augmenting path over costs
// reduced by prices of rows and columns. A row may stay out at a cost beyond any
// sum. The prices of the end prove the answer: a pairing is best if and only if
// it uses pairs that cost exactly their prices, and every column that has a
// price. The search for the lowest columns walks along such pairs.
//
// The greatest cost is found in the same way, a path counting as its dearest
// pair; dearer pairs are then left out of the least sum.
//
// # Accuracy
//
// Whole numbers only: the answer is exact. Nothing overflows, since the number
// of pairs times the greatest cost is kept below 2^59; prices and paths then
// stay within 2^62.
//
// # Time and memory
//
// The time grows at most with rows² × columns, for each of the three steps. A
// Solver keeps its working memory, 16 bytes a row and 58 bytes a column, so that
// a second problem of the same size allocates nothing. It copies nothing of the
// table and doesn't change it.
//
// # Errors
//
// An [InputError] names an empty table, a table of another size than its rows
// times columns, and a cost out of range.
//
// # Sources
//
// The shortest augmenting path method is that of Jonker and Volgenant,
// Computing 38 (1987), pp. 325–340; that a shortest augmenting path keeps the
// pairing best is by Edmonds and Karp, J. ACM 19 (1972), pp. 248–264; both from
// memory. The tests compare with a general-purpose library and with every way of
// pairing.
package assign
