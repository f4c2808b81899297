package generated

import "github.com/tenthou/tenthou/units"

var l units.Length = five // want `five has no unit`
