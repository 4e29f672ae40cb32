package inputs

import (
	"math"
	"strings"

	"bowline/model/car"
	"bowline/model/units"
)

// Significant digits of a number.
const (
	shownDigits   = 6  // while it is not being edited: more than any shop measures
	editedDigits  = 8  // while it is: as many as an entry has room for
	steppedDigits = 12 // after a step: without what rounding leaves behind them
)

// value is what one entry shows and changes.
type value interface {
	// text writes the value, with more digits while it is being edited.
	text(v view, full bool) string
	// parse turns what was typed into a change of the car, or says what is
	// wrong with it.
	parse(typed string, v view) (change func(*car.Car), err error)
	// stepped returns what the typed text becomes n steps up, if there are steps.
	stepped(typed string, n int, v view) (text string, ok bool)
}

// number is one number of the car.
type number struct {
	quantity units.Quantity
	in       func(*car.Car) *float64
	optional bool
	fallback float64 // what an empty text stands for if it is optional, in SI
	ruled    bool    // zero is left blank: a rule gives the value then
	thin     bool    // too small for the usual step
}

func (n *number) text(v view, full bool) string {
	x := v.units.FromSI(n.quantity, *n.in(v.car))
	if n.ruled && x == 0 {
		return ""
	}
	if full {
		return digits(x, editedDigits)
	}
	return digits(x, shownDigits)
}

func (n *number) parse(typed string, v view) (func(*car.Car), error) {
	x, err := n.read(typed, v)
	if err != nil {
		return nil, err
	}
	return func(c *car.Car) { *n.in(c) = x }, nil
}

func (n *number) read(typed string, v view) (float64, error) {
	if n.optional && strings.TrimSpace(typed) == "" {
		return n.fallback, nil
	}
	if typed == n.text(v, true) {
		return *n.in(v.car), nil // to the last bit
	}
	return ParseNumber(typed, n.quantity, v.units, *n.in(v.car))
}

// steps are what the arrow keys change a quantity by, in shop units.
var steps = [...]map[units.Quantity]float64{
	units.US: {units.Length: 1.0 / 16, units.Mass: 5, units.SpringRate: 5, units.Torque: 10, units.Speed: 50, units.Angle: 0.25, units.Percent: 5},
	units.SI: {units.Length: 1, units.Mass: 2, units.SpringRate: 1, units.Torque: 10, units.Speed: 50, units.Angle: 0.25, units.Percent: 5},
}

func (n *number) stepped(typed string, count int, v view) (string, bool) {
	x, err := n.read(typed, v)
	if err != nil || n.ruled && x == 0 {
		return "", false
	}
	shop := v.units.FromSI(n.quantity, x)
	step := steps[v.units][n.quantity]
	if step == 0 || n.thin {
		// The second digit; none for zero.
		step = math.Pow(10, math.Floor(math.Log10(math.Abs(shop)))-1)
	}
	if step == 0 {
		return "", false
	}
	return digits(shop+float64(count)*step, steppedDigits), true
}

// words is one text of the car or of one of its setups.
type words struct {
	in    func(c *car.Car, setup int) *string
	clash func(typed string, v view) error // what speaks against a text, may be nil
}

func (w *words) text(v view, _ bool) string { return *w.in(v.car, v.setup) }

func (w *words) parse(typed string, v view) (func(*car.Car), error) {
	typed = strings.TrimSpace(typed)
	if w.clash != nil {
		if err := w.clash(typed, v); err != nil {
			return nil, err
		}
	}
	return func(c *car.Car) { *w.in(c, v.setup) = typed }, nil
}

func (*words) stepped(string, int, view) (string, bool) { return "", false }

// nothing is the value of what has gone from the car.
type nothing struct{}

func (nothing) text(view, bool) string { return "" }

func (nothing) parse(string, view) (func(*car.Car), error) { return func(*car.Car) {}, nil }

func (nothing) stepped(string, int, view) (string, bool) { return "", false }
