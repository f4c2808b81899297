package feeler

// The sets below are habits of the trade, not a standard's: BS 957:2008 covers
// 0.03 to 1.00 mm and .0015 to .025 in and DIN 2275:2014 the common 0.05 to
// 1.00 mm, but which blades make up a set is each maker's choice. Read the
// blades you have.

const (
	metricSource   = "catalogue habit, from memory"
	imperialSource = "common retail marking, from memory; the millimetres are the inch size rounded to 0.001 mm"
)

// StandardSets are the sets of this package, for choosing one by its name.
func StandardSets() []Set {
	return []Set{Metric8(), Metric13(), Metric20(), Imperial26(), Imperial32()}
}

// Metric8 is a set of 8 metric blades, 0.05 to 0.50 mm (catalogue habit, from
// memory).
func Metric8() Set {
	return standard("metric 8", metricSource, "0.05 mm", "0.10 mm", "0.15 mm", "0.20 mm", "0.25 mm", "0.30 mm", "0.40 mm", "0.50 mm")
}

// Metric13 is a set of 13 metric blades: 0.05 to 0.30 mm by 0.05, then to
// 1.00 mm by 0.10 (catalogue habit, from memory).
func Metric13() Set {
	return standard("metric 13", metricSource, "0.05 mm", "0.10 mm", "0.15 mm", "0.20 mm", "0.25 mm", "0.30 mm",
		"0.40 mm", "0.50 mm", "0.60 mm", "0.70 mm", "0.80 mm", "0.90 mm", "1.00 mm")
}

// Metric20 is a set of 20 metric blades, 0.05 to 1.00 mm by 0.05 (catalogue
// habit, from memory).
func Metric20() Set {
	return standard("metric 20", metricSource, "0.05 mm", "0.10 mm", "0.15 mm", "0.20 mm", "0.25 mm", "0.30 mm", "0.35 mm", "0.40 mm",
		"0.45 mm", "0.50 mm", "0.55 mm", "0.60 mm", "0.65 mm", "0.70 mm", "0.75 mm", "0.80 mm", "0.85 mm", "0.90 mm", "0.95 mm", "1.00 mm")
}

// Imperial26 is a set of 26 dual-marked inch blades, .0015 to .025 in: the
// thinnest of [Imperial32] (common retail marking, from memory).
func Imperial26() Set { return standard("imperial 26", imperialSource, imperial[:26]...) }

// Imperial32 is a set of 32 dual-marked inch blades, .0015 to .040 in (common
// retail marking, from memory).
func Imperial32() Set { return standard("imperial 32", imperialSource, imperial[:]...) }

var imperial = [...]string{
	".0015 in / 0.038 mm", ".002 in / 0.051 mm", ".0025 in / 0.064 mm", ".003 in / 0.076 mm", ".004 in / 0.102 mm",
	".005 in / 0.127 mm", ".006 in / 0.152 mm", ".007 in / 0.178 mm", ".008 in / 0.203 mm", ".009 in / 0.229 mm",
	".010 in / 0.254 mm", ".011 in / 0.279 mm", ".012 in / 0.305 mm", ".013 in / 0.330 mm", ".014 in / 0.356 mm",
	".015 in / 0.381 mm", ".016 in / 0.406 mm", ".017 in / 0.432 mm", ".018 in / 0.457 mm", ".019 in / 0.483 mm",
	".020 in / 0.508 mm", ".021 in / 0.533 mm", ".022 in / 0.559 mm", ".023 in / 0.584 mm", ".024 in / 0.610 mm",
	".025 in / 0.635 mm", ".026 in / 0.660 mm", ".028 in / 0.711 mm", ".030 in / 0.762 mm", ".032 in / 0.813 mm",
	".035 in / 0.889 mm", ".040 in / 1.016 mm",
}

// standard makes a set of the blades written here, which a test reads too.
func standard(name, source string, texts ...string) Set {
	blades := make([]Blade, len(texts))
	for i, t := range texts {
		blades[i], _ = ParseBlade(t)
	}
	s, _ := NewSet(name, source, blades...)
	return s
}
