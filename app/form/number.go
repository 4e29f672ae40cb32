package form

import (
	"math"
	"strings"

	"bowline/model/units"
)

// Significant digits of a number.
const (
	shownDigits   = 6  // while it is not being edited: more than any shop measures
	editedDigits  = 8  // while it is: as many as an entry has room for
	steppedDigits = 12 // after a step: without what rounding leaves behind them
)

// Number is a number of a quantity, shown and typed in the units of the moment.
type Number struct {
	Quantity units.Quantity
	Units    func() units.System
	Get      func() float64          // in SI
	Set      func(x float64) []Fault // likewise

	Optional bool    // may be left empty
	Default  float64 // what an empty text stands for, in SI

	// Given reports whether the value is one that somebody has typed. One that is not is
	// left blank, with the default as a placeholder, until it is typed; Clear is called
	// for a text that is emptied. Both nil: the value is always shown.
	Given func() bool
	Clear func() []Fault

	Blank bool    // zero is left blank and has no steps
	Fine  bool    // is stepped in its second digit
	Step  float64 // of the arrow keys, in shop units; 0 takes the usual one
}

// NewNumber returns the entry of a number of the document.
func NewNumber(n Number) *Entry {
	e := NewEntry()
	e.Document = true
	e.Get, e.Take, e.Step = n.text, n.take, n.step
	if n.Given != nil {
		e.Hint = func() string { return digits(n.Units().FromSI(n.Quantity, n.Default), shownDigits) }
	}
	return e
}

func (n Number) text(edited bool) string {
	x := n.Units().FromSI(n.Quantity, n.Get())
	if n.Blank && x == 0 || n.Given != nil && !n.Given() {
		return ""
	}
	if edited {
		return digits(x, editedDigits)
	}
	return digits(x, shownDigits)
}

func (n Number) take(typed string) []Fault {
	if n.Given != nil && strings.TrimSpace(typed) == "" {
		return n.Clear()
	}
	x, err := n.read(typed)
	if err != nil {
		return Wrong(err.Error())
	}
	return n.Set(x)
}

func (n Number) read(typed string) (float64, error) {
	if n.Optional && strings.TrimSpace(typed) == "" {
		return n.Default, nil
	}
	if typed == n.text(true) {
		return n.Get(), nil // to the last bit
	}
	return ParseNumber(typed, n.Quantity, n.Units(), n.Get())
}

// steps are what the arrow keys change a quantity by, in shop units.
var steps = [...]map[units.Quantity]float64{
	units.US: {units.Length: 1.0 / 16, units.Mass: 5, units.SpringRate: 5, units.Torque: 10, units.Speed: 50, units.Angle: 0.25, units.Percent: 5},
	units.SI: {units.Length: 1, units.Mass: 2, units.SpringRate: 1, units.Torque: 10, units.Speed: 50, units.Angle: 0.25, units.Percent: 5},
}

func (n Number) step(typed string, count int) (string, bool) {
	x, err := n.read(typed)
	if err != nil || n.Blank && x == 0 {
		return "", false
	}
	shop := n.Units().FromSI(n.Quantity, x)
	if n.Step != 0 {
		// Such a step may be no short decimal.
		return digits(shop+float64(count)*n.Step, shownDigits), true
	}
	step := steps[n.Units()][n.Quantity]
	if step == 0 || n.Fine {
		// The second digit; none for zero.
		step = math.Pow(10, math.Floor(math.Log10(math.Abs(shop)))-1)
	}
	if step == 0 {
		return "", false
	}
	return digits(shop+float64(count)*step, steppedDigits), true
}

// NewText returns the entry of a text of the document, which is taken without
// spaces around it.
func NewText(get func() string, set func(text string) []Fault) *Entry {
	e := NewEntry()
	e.Document = true
	e.Get = func(bool) string { return get() }
	e.Take = func(typed string) []Fault { return set(strings.TrimSpace(typed)) }
	return e
}
