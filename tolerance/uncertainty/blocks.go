package uncertainty

import "fmt"

// BlockTrials is how many trials one block of a simulation has.
const BlockTrials = 10_000

// mostBlocks bounds a simulation to 10⁸ trials, which take 800 MB.
const mostBlocks = 10_000

// Blocks says which blocks of a simulation to run: those from From up to, but
// not including, To. Each block has [BlockTrials] trials and random numbers
// of its own, made of the seed and its number. So a caller may run the blocks
// in parts, side by side or one after the other, and join the samples: the
// result is the same, to the last digit, as of one run.
type Blocks struct {
	Seed     uint64 // of the random numbers: the same gives the same sample
	From, To int
}

// Trials is enough blocks for n trials: n is rounded up to whole blocks.
func Trials(seed uint64, n int) Blocks {
	if n <= 0 {
		return Blocks{Seed: seed}
	}
	return Blocks{Seed: seed, To: min((n-1)/BlockTrials, mostBlocks) + 1}
}

// Len is the number of trials, 0 for blocks that aren't in order or are too
// many.
func (b Blocks) Len() int {
	if b.check("length") != nil {
		return 0
	}
	return (b.To - b.From) * BlockTrials
}

// Split divides the blocks into so many parts of nearly the same length, none
// of them empty: fewer parts where there aren't enough blocks.
func (b Blocks) Split(parts int) []Blocks {
	n := b.To - b.From
	parts = min(parts, n)
	if parts < 1 {
		return nil
	}
	out := make([]Blocks, parts)
	for i := range out {
		out[i] = Blocks{Seed: b.Seed, From: b.From + n/parts*i + min(i, n%parts)}
		out[i].To = out[i].From + n/parts
		if i < n%parts {
			out[i].To++
		}
	}
	return out
}

// Stream is the random numbers of one block.
func (b Blocks) Stream(block int) *Stream {
	s := newStream(b.Seed, block)
	return &s
}

func (b Blocks) check(op string) error {
	if b.From < 0 || b.To <= b.From || b.To-b.From > mostBlocks {
		return refuse(op, "", "blocks", fmt.Sprintf("%d to %d", b.From, b.To), ErrBlocks, fmt.Sprintf("from 0 upwards, at least one and at most %d", mostBlocks))
	}
	return nil
}
