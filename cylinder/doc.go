// Package cylinder holds what is measured on a cylinder block: bores, mating
// faces, liners, the main bearing tunnel, and the volumes that follow.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass.
package cylinder
