package uncertainty

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SimulateChain draws the closing size of a dimension chain: in each trial a
// part for every link, from its lot, by the scatter that the link states, each
// by itself. The parts of a normal lot may lie outside their band, as many as
// its Sigmas leaves out.
//
// It tells what the worst case and the root-sum-square don't: the shortest
// interval that holds a part of all assemblies ([SampleOf.Shortest]), and how
// many fall in a wanted band ([SampleOf.Conformance]), whatever the scatters.
// With many links of like tolerance it comes to the root-sum-square; with few,
// or one that outweighs the rest, it needn't.
//
// The blocks are independent: a caller may run them side by side and join
// the samples with [JoinOf], and the result is the same. Trials are float64,
// within a quantum of the exact sum while the sizes are below 9 m.
//
// Blocks that aren't in order are an [ErrBlocks]. A chain that isn't valid, a
// link without a scatter or without a limit on both sides, and a closing size
// out of range give the [tolerance.ChainError] of [tolerance.ChainOf.RootSumSquare].
func SimulateChain[Q units.Quantity](b Blocks, c tolerance.ChainOf[Q]) (SampleOf[Q], error) {
	if err := b.check("chain simulation"); err != nil {
		return SampleOf[Q]{}, err
	}
	root, err := c.RootSumSquare(1)
	if err != nil {
		return SampleOf[Q]{}, err
	}
	middle, lots := float64(root.Centre), lotsOf(c)
	out := make([]float64, b.Len())
	drawn := make([]float64, batch)
	for at := 0; at < len(out); at += batch {
		block := b.From + at/BlockTrials
		if at%BlockTrials == 0 {
			lots.stream = newStream(b.Seed, block)
		}
		lots.draw(out[at:at+batch], drawn)
		for t := range batch {
			out[at+t] += middle
		}
	}
	order(out)
	return SampleOf[Q]{Sample{sorted: out, blocks: []Blocks{b}}}, nil
}

// A lot is what one link adds to the closing size, about its middle.
type lot struct {
	shape Shape
	each  float64 // standard deviation, in quanta of the closing size
}

type chainLots struct {
	stream Stream
	lots   []lot
}

// lotsOf takes a chain that RootSumSquare has found complete.
func lotsOf[Q units.Quantity](c tolerance.ChainOf[Q]) chainLots {
	l := chainLots{lots: make([]lot, len(c.Links))}
	for i, link := range c.Links {
		lo, _ := link.Band.Lower()
		hi, _ := link.Band.Upper()
		half := float64(hi-lo) / 2 * link.Sensitivity.Float()
		switch link.Scatter {
		case tolerance.RectangularScatter:
			l.lots[i] = lot{RectangularShape, RectangularShape.StandardUncertainty(half)}
		case tolerance.TriangularScatter:
			l.lots[i] = lot{TriangularShape, TriangularShape.StandardUncertainty(half)}
		case tolerance.UShapedScatter:
			l.lots[i] = lot{UShape, UShape.StandardUncertainty(half)}
		default:
			l.lots[i] = lot{NormalShape, half / link.Sigmas}
		}
	}
	return l
}

// draw adds one part of each lot to each of the closing sizes.
func (l *chainLots) draw(closing, drawn []float64) {
	for _, lot := range l.lots {
		l.stream.Fill(drawn, lot.shape, 0)
		for t, z := range drawn {
			closing[t] += float64(lot.each * z)
		}
	}
}
