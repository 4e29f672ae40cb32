package launch

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"bowline/model/units"
)

// EventKind is a kind of thing that happens in a launch.
type EventKind int

// The kinds, each with what an Event's Value of it is.
const (
	Wheelspin      EventKind = iota // a rear tire slips beyond its peak grip; greatest driving slip [1]
	ToppedOut                       // a rear spring is on its droop stop; greatest force of the stop [N]
	Bottomed                        // a rear spring is on its bump stop; greatest force of the stop [N]
	TireUnloaded                    // a rear tire is nearly unloaded; least load [N]
	WheelieBarDown                  // the wheelie bar carries; greatest load [N]
	FrontWheelsOff                  // neither front tire touches the ground; greatest height of either [m]
	AtRevLimit                      // the engine is at or beyond its rev limit; greatest speed [rad/s]

	eventKinds = iota
)

// EventKinds lists all kinds.
var EventKinds = [eventKinds]EventKind{Wheelspin, ToppedOut, Bottomed, TireUnloaded, WheelieBarDown, FrontWheelsOff, AtRevLimit}

// String returns the kind's name for files, as in "topped_out".
func (k EventKind) String() string {
	if k < 0 || k >= eventKinds {
		return fmt.Sprintf("EventKind(%d)", int(k))
	}
	return [...]string{"wheelspin", "topped_out", "bottomed", "tire_unloaded", "wheelie_bar", "front_wheels_off", "rev_limit"}[k]
}

// Quantity returns what the Value of an event of the kind is.
func (k EventKind) Quantity() units.Quantity {
	return [...]units.Quantity{units.Number, units.Force, units.Force, units.Force, units.Force, units.Length, units.Speed}[k]
}

// Event is one thing that happened, from its first step of the integration to its
// last.
type Event struct {
	Kind  EventKind
	Sided bool // it is of one side, Side; otherwise of both or of the car
	Side  Side
	From  float64 // [s]
	To    float64 // [s]; the end of the launch where it lasts that long
	Value float64 // the most or the least that it came to, as Kind says
	Time  float64 // when that was [s]
}

// Of returns the events of a kind, in the order in which they began.
func (r *Result) Of(kind EventKind) []Event {
	var list []Event
	for _, e := range r.Events {
		if e.Kind == kind {
			list = append(list, e)
		}
	}
	return list
}

const (
	// noticeable is a part of a rear tire's load at rest: a stop counts that takes
	// more, and a tire is nearly unloaded that carries less [1]. Assumption.
	noticeable = 0.1
	// eventGap is the time within which two events of a kind and side count as one
	// [s]: assumption.
	eventGap = 0.02
	// usualEvents is room for the events of one launch.
	usualEvents = 32
)

// watch notes events while a launch runs.
type watch struct {
	events []Event
	latest [eventKinds][2]int // index of the latest event by kind and side, counted from 1; 0 for none
	light  float64            // noticeable load of a rear tire [N]
	limit  float64            // the engine's rev limit [rad/s]
}

func newWatch(m *model, rest *Static) watch {
	return watch{
		events: make([]Event, 0, usualEvents),
		light:  noticeable * (rest.RearLoad[Left] + rest.RearLoad[Right]) / 2,
		limit:  m.Drive.revLimit(),
	}
}

// revLimit is the speed from which the engine's torque falls to nothing, infinite
// where it never does [rad/s].
func (d *Drive) revLimit() float64 {
	if last := len(d.Torque) - 1; last > 0 && d.Torque[last].Torque == 0 {
		return d.Torque[last-1].Speed
	}
	return math.Inf(1)
}

// note notes what happens at an instant.
func (w *watch) note(m *model, t float64, s *state, i *instant) {
	if slip, spins := m.spins(s); spins {
		w.add(Wheelspin, false, Left, t, slip)
	}
	for k := range m.RearTires {
		c := &m.Coils[k]
		if force := stop(c.Stop, i.reach[k]-c.Longest); force > w.light {
			w.add(ToppedOut, true, Side(k), t, force)
		}
		if force := stop(c.Stop, c.Shortest-i.reach[k]); force > w.light {
			w.add(Bottomed, true, Side(k), t, force)
		}
		if i.tires[k].load < w.light {
			w.add(TireUnloaded, true, Side(k), t, -i.tires[k].load)
		}
	}
	if i.wheelie > 0 {
		w.add(WheelieBarDown, false, Left, t, i.wheelie)
	}
	if front := &i.corners; front[Left].load == 0 && front[Right].load == 0 {
		w.add(FrontWheelsOff, false, Left, t, max(front[Left].height-m.Corners[Left].Radius, front[Right].height-m.Corners[Right].Radius))
	}
	if s.engine >= w.limit {
		w.add(AtRevLimit, false, Left, t, s.engine)
	}
}

// spins returns the greater driving slip of both rear tires, and reports whether it is
// beyond that of their peak grip.
func (m *model) spins(s *state) (slip float64, beyond bool) {
	left, right := &m.RearTires[Left], &m.RearTires[Right]
	slip = max(s.wheel.stretch[Left]/left.Relaxation, s.wheel.stretch[Right]/right.Relaxation)
	return slip, slip > min(left.PeakSlip, right.PeakSlip)
}

// add begins the event of a kind and side at a time, or extends the latest one, with
// a value of which the greatest counts. It returns the event.
func (w *watch) add(kind EventKind, sided bool, side Side, t, value float64) *Event {
	at := &w.latest[kind][side]
	if *at == 0 || t-w.events[*at-1].To > eventGap {
		w.events = append(w.events, Event{Kind: kind, Sided: sided, Side: side, From: t, Value: value, Time: t})
		*at = len(w.events)
	}
	e := &w.events[*at-1]
	if e.To = t; value > e.Value {
		e.Value, e.Time = value, t
	}
	return e
}

// done returns the events in the order in which they began.
func (w *watch) done() []Event {
	for k := range w.events {
		if e := &w.events[k]; e.Kind == TireUnloaded {
			e.Value = -e.Value + 0 // the least load, which is no negative zero
		}
	}
	slices.SortStableFunc(w.events, func(a, b Event) int { return cmp.Compare(a.From, b.From) })
	return w.events
}
