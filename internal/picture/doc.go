// Package picture draws findings: each bracket against its band, on one line of
// sizes, so that what is undecided is seen to lie across a limit.
//
//	measured        ■━━━━━━━○
//	                ╎       ╎
//	new      |- - - - - - -|
//	wear     ◁- - - - - - - - - - - - -|
//
// A closed end is a square, an open one a ring, one that is absent a triangle
// that points onward. No meaning rests on colour.
package picture
