package cylinder

// A LinerExpansion is a material's coefficient of linear expansion.
type LinerExpansion struct {
	Material string  `json:"material"` // "grey iron"
	PerK     float64 `json:"perK"`     // per kelvin, about room temperature
	Source   string  `json:"source"`   // where the figure is from
}

const (
	textbook   = "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6"
	fromMemory = "from memory"
)

// LinerExpansions are the coefficients of what blocks and liners are made of,
// each with its source. The maker's own figure governs: castings of one name
// differ by a millionth per kelvin and more.
func LinerExpansions() []LinerExpansion {
	return []LinerExpansion{
		{"grey iron", 11.4e-6, fromMemory},
		{"ductile iron 60-40-18", 11.2e-6, textbook},
		{"ductile iron 80-55-06", 10.6e-6, textbook},
		{"carbon steel", 11.7e-6, fromMemory},
		{"cast aluminium 356.0", 21.5e-6, textbook},
		{"aluminium 2024", 22.9e-6, textbook},
		{"aluminium 6061", 23.6e-6, textbook},
		{"leaded tin bronze C93200", 18.0e-6, textbook},
	}
}

// LinerExpansionOf is the coefficient of the material of that name; ok is
// false where the list has none.
func LinerExpansionOf(material string) (e LinerExpansion, ok bool) {
	for _, e := range LinerExpansions() {
		if e.Material == material {
			return e, true
		}
	}
	return LinerExpansion{}, false
}
