// Package crank holds what is measured on a crankshaft, its bearings and its
// rods.
//
// # Errors
//
// What can't be is an [InputError], which names the field, the value and what was
// expected. No function panics.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass.
package crank
