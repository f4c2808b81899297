package piston

// ComparePulls reads the same trials by several rules, and gives each rule's
// answer under its name, in the rules' order. A rule that the trials don't suit
// gives none, and says why in PullReading.Refused. Disagree are the pairs of
// answers, by their places, that can't both be true; with any of them, go by
// the rule of the engine's own manual or measure bore and skirt, and never by
// the middle of two rules.
func ComparePulls(rules []PullRule, trials ...PullTrial) (readings []PullReading, disagree [][2]int) {
	for i := range rules {
		r, err := rules[i].Read(trials...)
		if err != nil {
			r.Refused, r.Told = err.Error(), false
		}
		readings = append(readings, r)
	}
	for i := range readings {
		for j := range i {
			if a, b := &readings[j], &readings[i]; a.Told && b.Told {
				if _, ok := a.Clearance.Intersect(b.Clearance); !ok {
					disagree = append(disagree, [2]int{j, i})
				}
			}
		}
	}
	return readings, disagree
}
