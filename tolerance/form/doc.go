// Package form holds measures of form: the reference circles of a round
// profile and its lobes, the straightness of a line, the flatness of a face,
// and what V-blocks and two-point gauges show and hide.
//
// It is begun and promises nothing yet: names may change, and not every part
// is documented.
package form
