package words_test

import (
	"slices"
	"testing"

	"bowline/app/words"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

func TestEvents(t *testing.T) {
	for _, c := range []struct {
		of   launch.Event
		want string
	}{
		{launch.Event{Kind: launch.Wheelspin, Value: 0.884}, "Rear tires spin past their peak grip from 0.031 s, for 0.500 s: up to 88 % slip at 0.273 s."},
		{launch.Event{Kind: launch.ToppedOut, Sided: true, Side: launch.Right, Value: 563 * lbf}, "Right rear topped out from 0.031 s, for 0.500 s: its stop takes up to 563 lb at 0.273 s."},
		{launch.Event{Kind: launch.Bottomed, Sided: true, Value: 563 * lbf}, "Left rear bottomed from 0.031 s, for 0.500 s: its stop takes up to 563 lb at 0.273 s."},
		{launch.Event{Kind: launch.TireUnloaded, Sided: true, Value: 12 * lbf}, "Left rear tire nearly unloaded from 0.031 s, for 0.500 s: down to 12 lb at 0.273 s."},
		{launch.Event{Kind: launch.WheelieBarDown, Value: 448 * lbf}, "Wheelie bar carries from 0.031 s, for 0.500 s: up to 448 lb at 0.273 s."},
		{launch.Event{Kind: launch.FrontWheelsOff, Value: 13.04 * inch}, "Front wheels off the ground from 0.031 s, for 0.500 s: up to 13.04 in at 0.273 s."},
		{launch.Event{Kind: launch.AtRevLimit, Value: units.US.ToSI(units.Speed, 8853)}, "Engine at its rev limit from 0.031 s, for 0.500 s: up to 8,853 rpm at 0.273 s."},
	} {
		c.of.From, c.of.To, c.of.Time = 0.031, 0.531, 0.273
		got := words.Events(&launch.Result{Events: []launch.Event{c.of}}, units.US)
		if !slices.Equal(got, []string{c.want}) {
			t.Errorf("%v: %q, want %q", c.of.Kind, got, c.want)
		}
	}
}

// Spells of a kind are one sentence with the most of them; left and right are not.
func TestEventsOfAKindAreToldTogether(t *testing.T) {
	unloaded := func(side launch.Side, from, load float64) launch.Event {
		return launch.Event{Kind: launch.TireUnloaded, Sided: true, Side: side, From: from, To: from + 0.1, Value: load * lbf, Time: from + 0.05}
	}
	r := &launch.Result{Holds: 532 * lbf * units.Foot, Events: []launch.Event{unloaded(launch.Left, 0.2, 20), unloaded(launch.Right, 0.3, 9), unloaded(launch.Left, 0.5, 5), unloaded(launch.Left, 0.8, 30)}}
	want := []string{
		"Left rear tire nearly unloaded from 0.200 s, for 0.300 s in 3 spells: down to 5 lb at 0.550 s.",
		"Right rear tire nearly unloaded from 0.300 s, for 0.100 s: down to 9 lb at 0.350 s.",
		"The tires would just hold 532 lb-ft of engine torque at launch speed.",
	}
	if got := words.Events(r, units.US); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := words.Events(&launch.Result{}, units.SI); len(got) != 0 {
		t.Errorf("nothing happened: %q", got)
	}
}

// Every kind has words of its own.
func TestEveryKindOfEventIsTold(t *testing.T) {
	said := map[string]launch.EventKind{}
	for _, k := range launch.EventKinds {
		text := words.Events(&launch.Result{Events: []launch.Event{{Kind: k, Value: 1}}}, units.SI)[0]
		if other, had := said[text]; had || len(text) < 30 {
			t.Errorf("%v: %q, as %v", k, text, other)
		}
		said[text] = k
	}
}

// On a time line every kind and side of an event and every peak has a short name of its
// own.
func TestCaptionsOfATimeLine(t *testing.T) {
	said := map[string]bool{}
	name := func(text string) {
		if said[text] || text == "" || len(text) > 18 {
			t.Errorf("%q, said already: %v", text, said[text])
		}
		said[text] = true
	}
	for _, k := range launch.EventKinds {
		name(words.EventCaption(launch.Event{Kind: k}))
		name(words.EventCaption(launch.Event{Kind: k, Sided: true, Side: launch.Right}))
	}
	for _, b := range launch.Bars {
		name(words.PeakCaption(b, column.Pull))
		name(words.PeakCaption(b, column.Push))
	}
	if got, want := words.PeakCaption(launch.LowerRight, column.Push), "LR peak push"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
