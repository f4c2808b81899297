package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A Source is one cause of doubt: a setting ring's error, the scatter of a
// reading, an unknown temperature. It belongs to whoever made it: two sources
// are the same only where they are one and the same *Source, whatever they
// are called. Everything calculated from an estimate shares its sources, so
// what two results have in common cancels in their difference.
//
// Two different sources are independent of each other. A Source doesn't
// change once it is made, and may be used from several goroutines.
type Source struct {
	name    string
	unit    string  // the unit that spread is shown in
	size    float64 // how many of spread's own unit make one of those
	spread  float64 // standard uncertainty; of a quantity, in quanta
	freedom Freedom
	shape   Shape
}

// Name is what its maker called it.
func (s *Source) Name() string { return s.name }

// Unit is the symbol of the unit that its standard uncertainty is in: the
// first unit of a quantity ("mm" for lengths), or what a plain number was
// said to be in.
func (s *Source) Unit() string { return s.unit }

// Shape is how its values are spread.
func (s *Source) Shape() Shape { return s.shape }

// Freedom is the degrees of freedom of its standard uncertainty.
func (s *Source) Freedom() Freedom { return s.freedom }

// StandardUncertainty is its standard deviation, in its unit.
func (s *Source) StandardUncertainty() float64 { return s.spread / s.size }

// newSource checks what all constructors have in common. width is the
// standard deviation of a normal shape, else the half-width.
func newSource(op, name, unit string, size float64, shape Shape, width float64, freedom []Freedom) (*Source, error) {
	f := Infinite()
	switch {
	case len(freedom) > 1:
		return nil, refuse(op, name, "degrees of freedom", len(freedom), ErrFreedom, "at most one value")
	case len(freedom) == 1:
		f = freedom[0]
	}
	field := "half-width"
	if shape == NormalShape {
		field = "standard uncertainty"
	}
	switch {
	case int(shape) >= len(shapeNames):
		return nil, refuse(op, name, "shape", int(shape), ErrSyntax, "one of the shapes of this package")
	case width-width != 0:
		return nil, refuse(op, name, field, width, ErrNotFinite, "zero or more")
	case width < 0:
		return nil, refuse(op, name, field, width/size, ErrUncertainty, "zero or more")
	case math.IsNaN(float64(f)):
		return nil, refuse(op, name, "degrees of freedom", float64(f), ErrNotFinite, "above 0, or infinite")
	case !(f > 0):
		return nil, refuse(op, name, "degrees of freedom", float64(f), ErrFreedom, "above 0, or infinite")
	}
	return &Source{name: name, unit: unit, size: size, spread: shape.StandardUncertainty(width), freedom: f, shape: shape}, nil
}

// quantaIn is how many quanta of Q one unit u holds. The zero of a
// temperature scale doesn't enter: uncertainties are differences.
func quantaIn[Q units.Quantity](u units.Unit[Q]) float64 {
	one, _ := units.Nearest(1, u) // both lie in every quantity's range
	zero, _ := units.Nearest(0, u)
	return float64(one - zero)
}

// isTemperature tells the one quantity that isn't added or multiplied.
func isTemperature[Q units.Quantity]() bool {
	_, is := any(Q(0)).(units.Temperature)
	return is
}
