package units_test

import "github.com/tenthou/tenthou/units"

var quanta = []units.Length{1, 2, 3}
