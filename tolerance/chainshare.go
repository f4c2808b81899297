package tolerance

// WorstCaseShares are the parts that the links have in the width of the worst
// case, in their order: each link's tolerance times its sensitivity, over the
// sum of all. They add up to 1, but for the rounding of float64.
//
// It fails with a [ChainError] where c is not valid, a link lacks a limit, or
// nothing has a tolerance.
func (c ChainOf[Q]) WorstCaseShares() ([]float64, error) {
	return c.shares(func(l *LinkOf[Q], width float64) float64 { return width })
}

// VarianceShares are the parts that the links have in the variance of the
// closing size, in their order. They add up to 1, but for the rounding of
// float64. To halve the scatter of a link takes away three quarters of its
// share: the greatest share is where a finer tolerance pays.
//
// It fails as [ChainOf.WorstCaseShares] does, and where a link has no scatter.
func (c ChainOf[Q]) VarianceShares() ([]float64, error) {
	if err := c.scattered(-1, 1); err != nil {
		return nil, err
	}
	return c.shares(func(l *LinkOf[Q], width float64) float64 { return width * width / l.squared() })
}

func (c ChainOf[Q]) shares(of func(l *LinkOf[Q], width float64) float64) ([]float64, error) {
	if err := c.Validate(); err != nil {
		return nil, err
	}
	shares := make([]float64, len(c.Links))
	sum := 0.0
	for i := range c.Links {
		l := &c.Links[i]
		if l.Band.limits.loEnd == Absent || l.Band.limits.hiEnd == Absent {
			return nil, c.refuse(i, "band", ErrNoLimit, "a limit on both sides")
		}
		width := float64(l.Band.limits.hi - l.Band.limits.lo)
		shares[i] = of(l, width*l.Sensitivity.Float())
		if shares[i] < 0 {
			shares[i] = -shares[i]
		}
		sum += shares[i]
	}
	if sum == 0 {
		return nil, &ChainError{Link: -1, Field: "bands", Kind: ErrNoTolerance, Want: "at least one link that may differ"}
	}
	for i := range shares {
		shares[i] /= sum
	}
	return shares, nil
}
