// Package assumptions lists what the side view and the launch of a car rest on
// although the car does not say it, and finds what each assumption is worth: how the
// worst share of what a bar may carry and the 60-ft time change when it is changed.
package assumptions

import (
	"fmt"

	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"
)

// Assumption is an entry of the car file that the car leaves out and the run needs.
type Assumption struct {
	Path     string         // of the entry in the car file
	Name     string         // on screen, as its input is called
	Quantity units.Quantity // of Value
	Value    float64        // that is assumed, in SI
	Choice   string         // that is assumed, of an entry that is no number; then Value is 0
	Changes  []Change       // by which it is tried out, one or two
}

// Change is another value of an assumption.
type Change struct {
	Kind   Kind
	Value  float64 // that it takes, in SI; of a choice 0
	Choice string  // that it takes, of Other

	make func(*car.Car)
}

// Kind is a kind of change.
type Kind int

// The kinds. Doubled and Halved are for every number that may be doubled and halved;
// one that would leave its range that way is Moved to the end of the range. What is
// neither number nor choice has kinds of its own.
const (
	Doubled   Kind = iota
	Halved         // half the value
	Moved          // to Value
	Other          // the other choice
	Falling        // an engine torque that falls to half from the launch speed to the rev limit
	Unscaled       // the torque of the curve as it is written
	CGToLeft       // the whole car's CG Value to the left
	CGToRight      // the whole car's CG Value to the right
)

// String returns the name of the kind.
func (k Kind) String() string {
	if k < Doubled || k > CGToRight {
		return fmt.Sprintf("Kind(%d)", int(k))
	}
	return [...]string{"doubled", "halved", "moved", "other", "falling", "unscaled", "to the left", "to the right"}[k]
}

// Of returns a copy of c with the change made.
func (ch Change) Of(c *car.Car) *car.Car {
	d := c.Clone()
	ch.make(d)
	return d
}

// Of lists the assumptions of a launch of a car and of the side view of its setup, in
// the order of the car file. There are none where no launch was built: after
// launch.Simulate, and with the outcome NotHeld.
func Of(r *launch.Result) []Assumption {
	if r.Car == nil || r.Outcome == launch.NotHeld {
		return nil
	}
	f := finder{car: r.Car, setup: r.Setup, run: &r.Parameters}
	for _, section := range car.Sections {
		for _, field := range section.Fields {
			if about, ok := numbers[field.Path]; ok {
				f.number(section, field, about)
			}
		}
		for _, find := range others[section.Table] {
			find(&f)
		}
	}
	return f.found
}

// finder collects assumptions.
type finder struct {
	car   *car.Car
	setup int
	run   *launch.Parameters
	found []Assumption
}

// add notes an assumption that can be tried out.
func (f *finder) add(a Assumption) {
	if len(a.Changes) > 0 {
		f.found = append(f.found, a)
	}
}
