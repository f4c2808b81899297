// Package valvetrain holds what is measured on a cylinder head's working parts
// and on the drive of its camshaft: guides and stems, valves, seats, springs,
// valve clearance, camshafts, timing, and the way from piston to valve.
//
// # Errors
//
// What can't be is an [InputError], which names the field, the value and what
// was expected. No function panics.
//
// # Safety
//
// A valve spring under load, and the collets it holds, can leave the bench at
// the height of an eye: wear eye protection, use the compressor the maker names,
// and never stand in line with the spring. A sodium-filled valve is never cut,
// drilled or ground into: sodium burns in air and explodes with water. Dust of
// seats and guides of beryllium alloy harms the lungs for life: don't grind or
// ream them dry, and not at all without the precautions of their maker.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass.
package valvetrain
