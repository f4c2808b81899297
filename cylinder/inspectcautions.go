package cylinder

// The cautions of this package.
const (
	cautionCompression = "Before an engine is cranked with a plug or an injector out: disable fuel and ignition, keep hands and clothes from belts and fan, and stand clear of the open holes. A wet test is not for a diesel unless its maker describes one."
	cautionLeakage     = "The air of a leakage test turns the crank: leave no bar or spanner on it, and keep clear of belts and fan. Open no hot cooling system."
	cautionLift        = "A block or a head is lifted with a hoist and its own eyes, or with help, never alone by hand; set a head down on wood."
	cautionBoring      = "Boring, honing and skimming throw dust and oil mist: guard eyes and lungs, keep sleeves and gloves off the spindle. Wash bores until a white cloth stays clean."
	cautionLiners      = "Heat for a liner with an oven, never with a flame. Dry ice and liquid nitrogen push the air out of a closed room and burn by cold; pressed parts can jump or shatter."
)

// cautions are those that apply: what is still to be measured, and what is to
// be done.
func (x *inspecting) cautions() {
	l := &x.in.limits
	add := func(applies bool, text string) {
		if applies {
			x.report.Cautions = append(x.report.Cautions, text)
		}
	}
	add(l.Strip != nil && l.Strip.compression() && !x.stripped, cautionCompression)
	add(l.Strip != nil && l.Strip.leakage() && !x.stripped, cautionLeakage)
	add(l.Block != nil || l.Face != nil || l.Head != nil || l.Tunnel != nil || l.Bores != nil, cautionLift)
	add(x.cut, cautionBoring)
	liner := false
	for i := range x.report.Orders {
		liner = liner || x.report.Orders[i].What == "repair liners" || x.report.Orders[i].What == whatLiners
	}
	add(liner, cautionLiners)
}

// whatLiners is what is ordered where wet liners are past their limits.
const whatLiners = "liners with pistons and rings"
