package plotting

import (
	"image/color"

	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/palette"
)

// nearEvent is how far from an event, over the length of the launch, a marker still
// stands in it: the breadth of its mark.
const nearEvent = 0.004

// eventful is what a chart over a launch is about, with what happens at the time in
// its readout.
type eventful struct {
	chart.Subject
	over overTime
}

// Readout implements chart.Subject.
func (e eventful) Readout(time float64, s units.System) []chart.Reading {
	lines := e.Subject.Readout(time, s)
	m, ok := e.over.at(time)
	if !ok {
		return lines
	}
	near := nearEvent * e.over.end()
	for _, event := range e.over.l.Events {
		if m.time >= event.From-near && m.time <= event.To+near {
			lines = append(lines, chart.Reading{Name: eventName(event), Event: true})
		}
	}
	return lines
}

// events marks what happens in the launch, wheelspin by a band for as long as it
// lasts; the first of a kind and side has a label.
func (o overTime) events() []chart.Event {
	list := make([]chart.Event, len(o.l.Events))
	known := map[string]bool{}
	for i, e := range o.l.Events {
		mark := &list[i]
		*mark = chart.Event{Ink: chart.MutedInk, From: e.From, To: e.To, Band: e.Kind == launch.Wheelspin}
		if mark.Band {
			mark.Ink = spinInk
		}
		if name := eventName(e); !known[name] {
			known[name], mark.Caption = true, chart.Caption{Head: name}
		}
	}
	return list
}

func spinInk(p *palette.Palette) color.RGBA { return p.Bad }

// eventName names an event: "left rear topped out".
func eventName(e launch.Event) string {
	name := [...]string{
		launch.Wheelspin: "wheelspin", launch.ToppedOut: "rear topped out", launch.Bottomed: "rear bottomed",
		launch.TireUnloaded: "rear tire light", launch.WheelieBarDown: "wheelie bar", launch.FrontWheelsOff: "front wheels up",
		launch.AtRevLimit: "rev limit",
	}[e.Kind]
	if e.Sided {
		return e.Side.String() + " " + name
	}
	return name
}
