package report_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/app/words"
	"bowline/model/assumptions"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"
)

// handmadeWorth is what assumptions of a launch that never was are worth.
func handmadeWorth() []assumptions.Worth {
	const rollInertia = 1000 * lbf / 9.80665 * 144 * inch * inch
	return []assumptions.Worth{
		{
			Assumption: assumptions.Assumption{
				Path: "tires.sliding_grip", Name: "Sliding grip", Quantity: units.Number, Value: 0.75,
				Changes: []assumptions.Change{{Kind: assumptions.Moved, Value: 1}, {Kind: assumptions.Halved, Value: 0.375}},
			},
			Effects: []assumptions.Effect{{Share: 0.301, Launch: 0.4125, Time: -0.064, Timed: true}, {Share: -0.0725, Outcome: launch.TimeUp}},
		},
		{
			Assumption: assumptions.Assumption{
				Path: "car.roll_inertia", Name: "Roll inertia", Quantity: units.SpinInertia, Value: rollInertia,
				Changes: []assumptions.Change{{Kind: assumptions.Doubled, Value: 2 * rollInertia}, {Kind: assumptions.Halved, Value: rollInertia / 2}},
			},
			Effects: []assumptions.Effect{{Time: 0.0005, Timed: true}, {Timed: true}},
		},
		{
			Assumption: assumptions.Assumption{
				Path: "drive.direction", Name: "Engine turns, seen from the front", Choice: "clockwise",
				Changes: []assumptions.Change{{Kind: assumptions.Other, Choice: "counterclockwise"}},
			},
			Effects: []assumptions.Effect{{Timed: true}},
		},
	}
}

// worthOf is handmadeWorth for a launch.
func worthOf(l *launch.Result) []assumptions.Worth {
	if l == nil {
		return nil
	}
	return handmadeWorth()
}

func TestJSONOfAssumptions(t *testing.T) {
	r, l := handmade(t)
	for s, unit := range map[units.System]float64{units.US: 1, units.SI: lbf / 9.80665 * 144 * inch * inch} {
		list := documentOf(t, r, l, s).Launch.Assumed
		grip, roll, turns := list[0], list[1], list[2]
		if grip.Path != "tires.sliding_grip" || grip.Name != "Sliding grip" || *grip.Value != 0.75 || len(grip.Changes) != 2 {
			t.Errorf("%v: %+v", s, grip)
		}
		to, half := grip.Changes[0], grip.Changes[1]
		if to.Kind != "moved" || *to.Value != 1 || to.WorstShare != 0.301 || to.LaunchShare != 0.4125 || *to.SixtyFeet != -0.064 || to.Outcome != "finished" {
			t.Errorf("%v: %+v", s, to)
		}
		if half.Kind != "halved" || half.WorstShare != -0.0725 || half.SixtyFeet != nil || half.Outcome != launch.TimeUp.String() {
			t.Errorf("%v: %+v", s, half)
		}
		near(t, "roll inertia", *roll.Value, 1000*unit, 1e-6*unit)
		near(t, "twice of it", *roll.Changes[0].Value, 2000*unit, 1e-6*unit)
		if roll.Unit != s.Symbol(units.SpinInertia) || turns.Value != nil || turns.Choice != "clockwise" || turns.Changes[0].Value != nil || turns.Changes[0].Said != "counterclockwise" {
			t.Errorf("%v: %+v, %+v", s, roll, turns)
		}
	}
}

// Where nobody has found what the assumptions are worth, they are listed all the same.
func TestAssumptionsWithoutWorth(t *testing.T) {
	r, _ := load(t, reference)
	l, err := launch.Run(t.Context(), r.Car, 0, carfile.Stock(), launch.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := report.WriteText(&out, r, l, nil, units.US); err != nil {
		t.Fatal(err)
	}
	data := report.NewDocument(r, l, nil, units.US).Launch.Assumed
	want := assumptions.Of(l)
	if len(data) != len(want) || len(want) == 0 {
		t.Fatalf("%d assumptions, want %d", len(data), len(want))
	}
	for i, a := range want {
		if data[i].Path != a.Path || len(data[i].Changes) != 0 {
			t.Errorf("%+v, want %s", data[i], a.Path)
		}
		if a.Choice == "" && a.Quantity == units.SpringRate && math.Abs(*data[i].Value-units.US.FromSI(a.Quantity, a.Value)) > 1e-6 {
			t.Errorf("%s: %v", a.Path, *data[i].Value)
		}
		if text := "  " + a.Name + " "; !strings.Contains(out.String(), text) || !strings.Contains(out.String(), words.Assumed(a, units.US)) {
			t.Errorf("the text does not say %q", text)
		}
	}
}
