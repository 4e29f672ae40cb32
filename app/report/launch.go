package report

import (
	"fmt"
	"strings"

	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
)

// launchSections tell of the launch; none without one.
func (w writer) launchSections() []section {
	switch {
	case w.launch == nil:
		return nil
	case len(w.launch.Time) == 0:
		return []section{{title: "Launch", lines: []string{words.LaunchVerdict(w.launch, w.units)}}}
	}
	sections := []section{w.run()}
	if events := words.Events(w.launch, w.units); len(events) > 0 {
		sections = append(sections, section{title: "Launch: what happens", list: true, lines: events})
	}
	sections = append(sections, w.peaks(), w.preload())
	if list := assumedIn(w.launch, w.worth); len(list) > 0 {
		sections = append(sections, w.assumed(list))
	}
	return sections
}

// run tells how the launch went.
func (w writer) run() section {
	l := w.launch
	s := section{title: "Launch", lines: []string{words.LaunchVerdict(l, w.units)}}
	last := len(l.Time) - 1
	s.table.fact("outcome", fmt.Sprintf("%s after %s and %s", l.Outcome, w.time(l.Time[last]), words.Come(l.Distance[last], w.units)))
	sixty, release := "not reached", "not reached"
	if overSixtyFeet(l) {
		sixty, release = w.time(l.Elapsed), w.time(l.FromRelease)
	}
	s.table.fact("60 ft", sixty)
	s.table.fact("60 ft from release", release)
	s.table.fact("front wheels", words.FrontLift(l.Lift, w.units))
	return s
}

// time writes a time.
func (w writer) time(t float64) string { return w.units.Format(units.Time, t) }

// peaks lists what each bar comes to carry in the launch.
func (w writer) peaks() section {
	s := section{title: "Launch: peak force of each bar", table: table{columns: []heading{{"bar", ""}}, groups: []group{{"", 1}}}}
	ways := []column.Direction{column.Pull, column.Push}
	for _, d := range ways {
		s.table.groups = append(s.table.groups, group{d.String(), 3})
		s.table.columns = append(s.table.columns, heading{"force", w.units.Symbol(units.Force)}, heading{"at", w.units.Symbol(units.Time)}, heading{"of what it may", "%"})
	}
	for _, bar := range launch.Bars {
		row := []cell{said(bar.String())}
		for _, d := range ways {
			row = append(row, w.peak(bar, d)...)
		}
		s.table.rows = append(s.table.rows, row)
	}
	return s
}

// peak are the cells of a bar's peak in a direction.
func (w writer) peak(bar launch.RodID, d column.Direction) []cell {
	p := &w.launch.Peaks[bar]
	force, at := p.Pull, p.PullTime
	if d == column.Push {
		force, at = p.Push, p.PushTime
	}
	if force == 0 {
		return []cell{said("never"), {}, {}}
	}
	share := cell{figure: units.ShareFigure(force / w.Limit(bar.Pair(), d).Allowable)}
	return []cell{w.number(units.Force, force), w.number(units.Time, at), share}
}

// preload tells what bars and tires carry before the start, and what a turn of
// each bar changes.
func (w writer) preload() section {
	l := w.launch
	force := w.units.Symbol(units.Force)
	s := section{title: "Launch: preload", lines: []string{words.Preload(w.Result, l, w.units) + " A turn the other way does the opposite of what the table says."}}
	s.table.groups = []group{{"", 3}, {"for one turn longer", 5}}
	s.table.columns = []heading{
		{"bar", ""}, {"turns set", ""}, {"at rest", force},
		{"rear left", force}, {"rear right", force}, {"front left", force}, {"front right", force}, {"this bar", force},
	}
	change := func(by float64) cell { return w.signed(units.Force, by, "more", "less") }
	for _, bar := range launch.Bars {
		by := &l.PerTurn[bar]
		s.table.rows = append(s.table.rows, []cell{
			said(bar.String()), w.turns(*car.BarTurns[bar].Of(&w.setup().Turns)), w.pull(l.Static.Tension[bar]),
			change(by.RearLoad[launch.Left]), change(by.RearLoad[launch.Right]),
			change(by.FrontLoad[launch.Left]), change(by.FrontLoad[launch.Right]),
			w.pull(by.Tension[bar]),
		})
	}
	return s
}

// turns are the turns that a bar is longer or shorter by.
func (w writer) turns(n float64) cell {
	c := w.signed(units.Number, n, "longer", "shorter")
	if n == 0 {
		return said("none")
	}
	if strings.Contains(c.figure, ".") {
		c.figure = strings.TrimRight(strings.TrimRight(c.figure, "0"), ".")
	}
	return c
}
