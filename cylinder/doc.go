// Package cylinder holds what is measured on a cylinder block: bores, mating
// faces, liners, the main bearing tunnel, and the volumes that follow.
//
// # Liners
//
// A wet liner stands in a counterbore and protrudes above the block face, so
// that the gasket grips it:
//
//	        ┌────────┐ ↕ protrusion
//	────────┤ flange ├──────── block face
//	        │        │ ↕ counterbore depth
//	        └─┐ shim ┌┘
//
//	protrusion = flange + shim − counterbore depth
//
// [WetLiners] judges protrusion, its variation round a liner, and the step
// between neighbours; [WetLiners.ChooseShims] finds the shims that bring all
// of them within their limits at once, or says what stands in the way. Read
// protrusion with the liner clamped as the manual says.
//
// A dry liner is held by interference. [DryLiner] judges it from the measured
// bore and liner, with the contact pressure and hoop stresses of two rings of
// different materials by Lamé's equations; [DropIn] says how hot the block or
// how cold the liner must be to drop in. Heat in an oven, never with a flame,
// and wear gloves. Dry ice and liquid nitrogen displace the air (asphyxia) and
// burn by cold. Pressed parts can jump or shatter: stand behind a guard. A
// caustic tank dissolves an alloy block, and burns skin and eyes.
//
// # Main bearing tunnel
//
// [MainTunnel] judges size, ovality and taper of every housing, with the caps
// torqued and the shells out; [TunnelLine] judges how the saddles line up, by
// heights or by blades under a straight-edge. [LineHone] says what the least
// line hone takes at each crown and cap, and how far the crank rises: every
// piston rises with it, so the deck clearance shrinks by as much.
//
// # Before the strip
//
// [CompressionTest] and [LeakageTest] compare the cylinders with one another
// and with the manual's limits, and give each pattern as a [Pointer]: it
// points, it never proves. Disable fuel and ignition for compression; in a
// leakage test the air turns the crank, so leave no tool on it.
//
// Lamé's solution is checked against a boundary-value problem and a textbook
// (Bhavikatti, Strength of Materials, example 8.8.17; the temperature printed
// there is worked out on the wrong diameter, on the right one it is 41.67 °C),
// the line of saddles against a linear programme, the choice of shims against
// enumeration. What patterns point to is common practice.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass.
package cylinder
