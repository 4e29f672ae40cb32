package report

import (
	"encoding/csv"
	"io"
	"strings"

	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"
)

// outcome is a line of the summary of a launch, in shop units; what is nil is left
// empty.
type outcome struct {
	name, side      string
	quantity        units.Quantity
	value, time     *float64
	from, to, share *float64
}

// WriteLaunchSummaryCSV writes what a Document's launch came to as a table: a header,
// then one line for each of its times, each bar's greatest pull and push, how the
// front wheels left the ground, the torque that the tires just hold, and what
// happened. A cell is empty where there is nothing to say.
func WriteLaunchSummaryCSV(w io.Writer, r *analysis.Result, l *launch.Result, s units.System) error {
	b := builder{r, s}
	d := b.launch(l, nil)
	list := []outcome{
		{name: "sixty_ft", quantity: units.Time, value: d.SixtyFeet},
		{name: "from_release", quantity: units.Time, value: d.FromRelease},
		{name: "rollout", quantity: units.Length, value: &d.Rollout},
	}
	for _, bar := range launch.Bars {
		p, name := d.Peaks.of(bar), strings.ReplaceAll(strings.TrimSuffix(bar.String(), "bar"), " ", "_")
		list = append(list,
			outcome{name: name + "pull", quantity: units.Force, value: &p.Pull, time: &p.PullTime, share: &p.PullShare},
			outcome{name: name + "push", quantity: units.Force, value: &p.Push, time: &p.PushTime, share: &p.PushShare})
	}
	lift := &d.FrontLift
	list = append(list,
		outcome{name: "front_lift_height", quantity: units.Length, value: &lift.Height, time: &lift.Time},
		outcome{name: "front_lift_start", quantity: units.Time, value: &lift.Start},
		outcome{name: "front_lift_duration", quantity: units.Time, value: &lift.Duration})
	if l.Holds > 0 {
		holds := b.shop(units.Torque, l.Holds)
		list = append(list, outcome{name: "holds", quantity: units.Torque, value: &holds})
	}
	for i := range d.Events {
		e := &d.Events[i]
		list = append(list, outcome{name: e.Kind, side: e.Side, quantity: l.Events[i].Kind.Quantity(), value: &e.Value, time: &e.Time, from: &e.From, to: &e.To})
	}
	lines := [][]string{{"figure", "side", "value", "unit", "t [s]", "from [s]", "to [s]", "share"}}
	for _, o := range list {
		lines = append(lines, []string{o.name, o.side, number(o.value), plainUnit(o.quantity, s), number(o.time), number(o.from), number(o.to), number(o.share)})
	}
	return csv.NewWriter(w).WriteAll(lines)
}
