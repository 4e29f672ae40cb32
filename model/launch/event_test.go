package launch

import (
	"math"
	"slices"
	"testing"

	"bowline/model/car"

	"gonum.org/v1/gonum/spatial/r3"
)

// happenings finds the events of a kind and side in the values at every step, of
// which NaN says that nothing happens; the greatest counts.
func happenings(r *Result, kind EventKind, sided bool, side Side, value func(i int) float64) []Event {
	var found []Event
	for i, t := range r.Time {
		v := value(i)
		if math.IsNaN(v) {
			continue
		}
		if n := len(found); n == 0 || t-found[n-1].To > 0.02 {
			found = append(found, Event{Kind: kind, Sided: sided, Side: side, From: t, Value: v, Time: t})
		}
		e := &found[len(found)-1]
		if e.To = t; v > e.Value {
			e.Value, e.Time = v, t
		}
	}
	return found
}

// expected finds all events of a launch, every step of which is in its history, from
// where things are in its frames.
func expected(r *Result) []Event {
	p := &r.Parameters
	above := func(x, least float64) float64 {
		if x > least {
			return x
		}
		return math.NaN()
	}
	light := 0.1 * (r.Static.RearLoad[Left] + r.Static.RearLoad[Right]) / 2
	var all []Event
	for _, side := range Sides {
		c := &p.Coils[side]
		long := func(i int) float64 {
			return r3.Norm(r3.Sub(r.Frames[i].Chassis.At(c.Chassis), r.Frames[i].Axle.At(c.Axle)))
		}
		all = append(all, happenings(r, ToppedOut, true, side, func(i int) float64 { return above(c.Stop*(long(i)-c.Longest), light) })...)
		all = append(all, happenings(r, Bottomed, true, side, func(i int) float64 { return above(c.Stop*(c.Shortest-long(i)), light) })...)
		for _, e := range happenings(r, TireUnloaded, true, side, func(i int) float64 { return above(-r.RearLoad[side][i], -light) }) {
			e.Value = math.Abs(e.Value)
			all = append(all, e)
		}
	}
	all = append(all, happenings(r, Wheelspin, false, Left, func(i int) float64 {
		return above(max(r.Slip[Left][i], r.Slip[Right][i]), p.RearTires[Left].PeakSlip)
	})...)
	all = append(all, happenings(r, WheelieBarDown, false, Left, func(i int) float64 { return above(r.WheelieBar[i], 0) })...)
	all = append(all, happenings(r, FrontWheelsOff, false, Left, func(i int) float64 {
		if r.FrontLoad[Left][i]+r.FrontLoad[Right][i] > 0 {
			return math.NaN()
		}
		f := &r.Frames[i]
		return max(f.FrontWheels[Left].Z-p.Corners[Left].Radius, f.FrontWheels[Right].Z-p.Corners[Right].Radius)
	})...)
	limit := p.Drive.Torque[len(p.Drive.Torque)-2].Speed
	return append(all, happenings(r, AtRevLimit, false, Left, func(i int) float64 { return above(r.Engine[i], math.Nextafter(limit, 0)) })...)
}

// Cars made so that each kind of thing happens: what the launch notes of it is what
// its history and frames say.
func TestEvents(t *testing.T) {
	strong := "../../testdata/reference.toml"
	seven := "../../assets/cars/saltgrass-7.toml"
	for _, c := range []struct {
		name, path string
		change     func(*car.Car)
		want       []EventKind
		never      []EventKind
	}{
		{"a gentle start", seven, func(c *car.Car) { c.Drive.Torque *= 0.15 }, nil, EventKinds[:]},
		{"too much torque", seven, func(c *car.Car) { c.Launch.Engine.Ramp = nil }, []EventKind{Wheelspin, FrontWheelsOff, WheelieBarDown, AtRevLimit}, []EventKind{Bottomed}},
		{"nothing holds the nose", strong, func(*car.Car) {}, []EventKind{FrontWheelsOff, ToppedOut, TireUnloaded}, []EventKind{WheelieBarDown}},
		{"no droop", seven, func(c *car.Car) { c.Springs.RearDroop = 0.01; c.Drive.Torque *= 0.5 }, []EventKind{ToppedOut}, []EventKind{Bottomed}},
		{"squat without bump travel", seven, func(c *car.Car) {
			c.Springs.RearBump, c.Drive.Torque = 0.002, 0.4*c.Drive.Torque
			for i := range c.Chassis.Upper {
				c.Chassis.Upper[i].Y = 23 * inch // the bars run together behind the car
			}
		}, []EventKind{Bottomed}, []EventKind{ToppedOut}},
		{"a low rev limit", seven, func(c *car.Car) { c.Launch.Engine.Ramp, c.Launch.Engine.RevLimit = nil, 1.01*c.Drive.Speed }, []EventKind{AtRevLimit}, nil},
		{"preload that unloads the right rear", seven, func(c *car.Car) {
			c.Launch.Suspension.RearAntiRoll = 0
			c.Setups[0].Turns = car.Turns{UpperLeft: -6, UpperRight: 6, LowerLeft: 6, LowerRight: -6}
			c.Drive.Torque *= 0.4
		}, []EventKind{TireUnloaded}, nil},
	} {
		d := read(t, c.path)
		c.change(d)
		r := run(t, d, Options{Output: 0.5e-3, Substeps: 1})
		if len(r.Time) < 100 {
			t.Fatalf("%s: %v", c.name, r.Outcome)
		}
		kinds := map[EventKind]bool{}
		for _, e := range r.Events {
			kinds[e.Kind] = true
		}
		for _, kind := range c.want {
			if !kinds[kind] {
				t.Errorf("%s: no %v", c.name, kind)
			}
		}
		for _, kind := range c.never {
			if kinds[kind] {
				t.Errorf("%s: %v", c.name, kind)
			}
		}
		want := expected(r)
		if len(want) != len(r.Events) {
			t.Errorf("%s: %d events, want %d: %v, want %v", c.name, len(r.Events), len(want), r.Events, want)
			continue
		}
		if !slices.IsSortedFunc(r.Events, func(a, b Event) int { return int(math.Copysign(1, a.From-b.From)) }) {
			t.Errorf("%s: out of order: %v", c.name, r.Events)
		}
		for _, e := range r.Events {
			if !slices.ContainsFunc(want, func(w Event) bool {
				same := e.Kind == w.Kind && e.Sided == w.Sided && e.Side == w.Side && e.From == w.From && e.To == w.To
				return same && math.Abs(e.Value-w.Value) <= 1e-6*math.Abs(w.Value)+1e-9 && math.Abs(e.Time-w.Time) < 2e-3
			}) {
				t.Errorf("%s: %v is none of %v", c.name, e, want)
			}
		}
	}
}

// The example cars make a good pass: the tires spin briefly as they are hit, then hook to
// the end, and no tire is unloaded.
func TestExampleCarsHook(t *testing.T) {
	for _, path := range exampleCars[1:] { // The first is no example car but the tests' own.
		r := run(t, read(t, path), Options{})
		spins := r.Of(Wheelspin)
		if r.Outcome != Finished || len(spins) != 1 || spins[0].To > 0.5 {
			t.Errorf("%s: %v, wheelspin %+v", path, r.Outcome, spins)
		}
		for _, kind := range []EventKind{Bottomed, TireUnloaded, AtRevLimit} {
			if e := r.Of(kind); len(e) > 0 {
				t.Errorf("%s: %+v", path, e)
			}
		}
	}
}

// With the torque that the tires just hold nothing spins, with a little more they
// do. Without wheelspin nothing is looked for.
func TestTorqueThatTheTiresHold(t *testing.T) {
	for _, path := range exampleCars {
		c := read(t, path)
		r := run(t, c, Options{Hold: true})
		if !(r.Holds > 0 && r.Holds < c.Drive.Torque) {
			t.Fatalf("%s: holds %v of %v N·m", c.Body.Name, r.Holds, c.Drive.Torque)
		}
		whole := c.Drive.Torque
		c.Drive.Torque = r.Holds
		if held := run(t, c, Options{Hold: true}); held.spun() || held.Holds != 0 {
			t.Errorf("%s spins with the torque that its tires hold; %v", c.Body.Name, held.Holds)
		}
		if c.Drive.Torque = r.Holds + 0.004*whole; !run(t, c, Options{}).spun() {
			t.Errorf("%s does not spin with more than its tires hold", c.Body.Name)
		}
	}
}

func TestExtremes(t *testing.T) {
	h := History{Time: []float64{0, 0.1, 0.2, 0.3}}
	if got, want := h.Extremes([]float64{1, -3, 7, -3}), (Extremes{-3, 7, 0.1, 0.2}); got != want {
		t.Errorf("%v, want %v", got, want)
	}
	if got := h.Extremes(nil); got != (Extremes{}) {
		t.Errorf("%v of nothing", got)
	}
}
