// Package svg builds small, plain pictures of measurements as SVG: a few lines,
// curves and words that print, and that a reader who can't see them has in
// words.
//
//	p := svg.New(120, 160, "Cylinder 1", "The bore, 500 times exaggerated, within its limits.")
//	p.Line(svg.Limit, 20, 10, 20, 150)
//	p.Polyline(svg.Measured, points)
//	p.Text(svg.Start, 22, 14, "limit 86.10 mm")
//	os.Stdout.Write(p.Bytes())
//
// Every picture has a title and a description, which assistive technology reads
// out. What a line means is told by its dashes and marks, never by its colour
// alone: [Measured] is thick with a mark at each point, [Limit] is dashed,
// [Reference] is a chain line, [Guide] thin. Lines are black on white in print
// and on a light page and white on black on a dark one; the picture brings its
// own background, so it is readable wherever it stands.
//
// Units are millimetres, from the top left corner, y downward. Numbers are
// written to a thousandth, so that a picture is the same on every machine. A
// number that none is (not finite, or beyond 10⁶) is left out with the
// element that it is in. Text is escaped; control characters become blanks.
//
// The form is SVG 1.1 (W3C) with the title, desc and ARIA attributes of SVG 2.
package svg
