package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An OversizeOption is one way to repair a block: all bores to one kit's size,
// with a liner in those that don't clean up at it.
type OversizeOption struct {
	Kit   int   `json:"kit"`   // in [OversizeChoice].Kits
	Lined []int `json:"lined"` // the bores, by their places, that need a liner
	Open  []int `json:"open"`  // those that may or may not
	// LinersStand is whether the walls read are thick enough for a liner's
	// outside; Within where that isn't known or no bore is lined.
	LinersStand tolerance.Verdict `json:"linersStand"`
	// Enough is whether so many of the kit are in stock.
	Enough tolerance.Verdict `json:"enough"`
	// Total is for pistons, boring and liners, the bores that are open counted
	// as not lined; not given where one of the prices isn't.
	Total Price `json:"total"`
}

// options are the kits up to the least that needs no liner: a larger one wastes
// a rebore.
func (j *OversizeJob) options(c *OversizeChoice) []OversizeOption {
	var options []OversizeOption
	for k := range c.Kits {
		o := OversizeOption{Kit: k, LinersStand: tolerance.Within}
		for i := range c.Bores {
			f := &c.Bores[i].Fits[k]
			switch {
			case f.Allowed == tolerance.Below:
				o.Kit = -1 // no bore may be so large, lined or not: its pistons don't fit less
			case f.Fits == tolerance.Below:
				o.Lined = append(o.Lined, i)
				o.LinersStand = both(o.LinersStand, j.linerStands(i, &c.Bores[i]))
			case f.Fits == tolerance.Undecided:
				o.Open = append(o.Open, i)
			}
		}
		if o.Kit < 0 {
			continue
		}
		n := len(c.Bores)
		o.Enough = c.Kits[k].Stock.enough(n)
		o.Total = PriceOf(0).plus(c.Kits[k].Price, n).plus(j.Boring, n).plus(j.Liner.Price, len(o.Lined))
		options = append(options, o)
		if len(o.Lined) == 0 && len(o.Open) == 0 {
			break
		}
	}
	return options
}

// linerStands is whether a bore's walls are thick enough when it is bored for
// a liner, about the original axis.
func (j *OversizeJob) linerStands(i int, c *BoreChoice) tolerance.Verdict {
	b := &j.Bores[i]
	if j.Liner.Outside == 0 || len(b.Sonic) == 0 {
		return tolerance.Within
	}
	largest, _, _, err := LargestByWall(b, BoreCentre{}, max(j.Plan.LeastWall, units.Picometre))
	if err != nil || largest < j.Liner.Outside {
		return tolerance.Below
	}
	return tolerance.Within
}
