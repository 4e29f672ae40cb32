package words

import (
	"fmt"

	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// Events says what happens in a launch, one sentence for all events of a kind and
// side, in the order in which they begin: when first, for how long in all, and how
// much at most.
func Events(r *launch.Result, s units.System) []string {
	var said []string
	for i, e := range r.Events {
		if all, first := spells(r.Events, i); first {
			said = append(said, event(e, all, s))
		}
	}
	if r.Holds > 0 {
		said = append(said, fmt.Sprintf("The tires would just hold %s of engine torque at launch speed.", s.Format(units.Torque, r.Holds)))
	}
	return said
}

// spell is what several events of a kind and side have in common.
type spell struct {
	duration float64 // of all together [s]
	most     launch.Event
	count    int
}

// spells gathers the events that are of one kind and side with the event at an
// index, and reports whether that is the first of them.
func spells(events []launch.Event, at int) (all spell, first bool) {
	e := events[at]
	first = true
	for i, o := range events {
		if o.Kind != e.Kind || o.Side != e.Side {
			continue
		}
		if i < at {
			first = false
		}
		all.duration += o.To - o.From
		if all.count++; all.count == 1 || beyond(o, all.most) {
			all.most = o
		}
	}
	return all, first
}

// beyond reports whether an event came to more than another of its kind: to less
// load where a tire is nearly unloaded.
func beyond(e, other launch.Event) bool {
	if e.Kind == launch.TireUnloaded {
		return e.Value < other.Value
	}
	return e.Value > other.Value
}

// event says one kind of event.
func event(e launch.Event, all spell, s units.System) string {
	value := s.Format(e.Kind.Quantity(), all.most.Value)
	side := ""
	if e.Sided {
		side = e.Side.String() + " "
	}
	what, most := "", ""
	switch e.Kind {
	case launch.Wheelspin:
		what, most = "rear tires spin past their peak grip", "up to "+units.WholePercent(all.most.Value)+" slip"
	case launch.ToppedOut:
		what, most = side+"rear topped out", "its stop takes up to "+value
	case launch.Bottomed:
		what, most = side+"rear bottomed", "its stop takes up to "+value
	case launch.TireUnloaded:
		what, most = side+"rear tire nearly unloaded", "down to "+value
	case launch.WheelieBarDown:
		what, most = "wheelie bar carries", "up to "+value
	case launch.FrontWheelsOff:
		what, most = "front wheels off the ground", "up to "+value
	case launch.AtRevLimit:
		what, most = "engine at its rev limit", "up to "+value
	}
	times := ""
	if all.count > 1 {
		times = fmt.Sprintf(" in %d spells", all.count)
	}
	seconds := func(t float64) string { return s.Format(units.Time, t) }
	return Capital(fmt.Sprintf("%s from %s, for %s%s: %s at %s.", what, seconds(e.From), seconds(all.duration), times, most, seconds(all.most.Time)))
}

// EventCaption names an event in few letters, as on a time line: "left bottoms".
func EventCaption(e launch.Event) string {
	name := [...]string{
		launch.Wheelspin: "wheelspin", launch.ToppedOut: "tops out", launch.Bottomed: "bottoms", launch.TireUnloaded: "tire light",
		launch.WheelieBarDown: "wheelie bar", launch.FrontWheelsOff: "wheels up", launch.AtRevLimit: "rev limit",
	}[e.Kind]
	if e.Sided {
		return e.Side.String() + " " + name
	}
	return name
}

// PeakCaption names the greatest force of a bar in one direction in few letters: "LR
// peak push".
func PeakCaption(bar launch.RodID, way column.Direction) string {
	return fmt.Sprintf("%s peak %s", BarInitials()[bar], way)
}
