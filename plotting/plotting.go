// Package plotting makes the charts of a result.
package plotting

import (
	"image/color"
	"slices"

	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/plotting/chart"
	"bowline/plotting/palette"
)

// Setup is a setup of a car and what came of it.
type Setup struct {
	Name   string // in titles, legends and columns
	Result *analysis.Result
	Launch *launch.Result // of the same car and setup; nil for none
}

// Of returns the setup that a result and a launch, nil for none, are of.
func Of(r *analysis.Result, l *launch.Result) Setup {
	return Setup{Name: r.Car.Setups[r.Options.Setup].Name, Result: r, Launch: l}
}

// Position is what a place along a chart stands for.
type Position int

// The positions.
const (
	AtTravel  Position = iota // a rear travel [m]
	AtTime                    // a time of the launch [s]
	AtNothing                 // what is pointed at has no place in the car's movement
)

// Kind is a chart that can be made of a setup, and of several laid over each
// other.
type Kind struct {
	Key  chart.Key
	Name string   // short, as on a tab
	Over Position // of its marker
	Make func(first Setup, others ...Setup) *chart.Chart
}

// Kinds lists all charts that there are, in the order in which they are shown and
// printed.
func Kinds() []Kind {
	return []Kind{
		{BarForceKey, "Bar force", AtTravel, BarForce},
		{AntiSquatKey, "Anti-squat", AtTravel, AntiSquat},
		{CenterPathKey, "IC path", AtTravel, CenterPath},
		{BowKey, "Bow", AtTravel, Bow},
		{LaunchBarsKey, "Bar force", AtTime, LaunchBars},
		{LaunchWheelsKey, "Wheel speed", AtTime, LaunchWheels},
		{LaunchAttitudeKey, "Pitch and travel", AtTime, LaunchAttitude},
		{LaunchTiresKey, "Tire load", AtTime, LaunchTires},
		{SixtyFootKey, "60 ft", AtNothing, func(s Setup, _ ...Setup) *chart.Chart { return SixtyFoot(s.Result.Car, s.Result.Options.Setup) }},
	}
}

// New makes one chart of a setup, with further ones laid over it. It returns nil
// for a chart of the launch where the first setup has none; further setups
// without a launch are left out of it.
func New(key chart.Key, first Setup, others ...Setup) *chart.Chart {
	for _, k := range Kinds() {
		switch {
		case k.Key != key:
		case k.Over != AtTime:
			return k.Make(first, others...)
		case first.Launch != nil:
			return k.Make(first, slices.DeleteFunc(slices.Clone(others), func(s Setup) bool { return s.Launch == nil })...)
		}
	}
	return nil
}

// All makes all charts that New makes of a setup, with further ones laid over it.
func All(first Setup, others ...Setup) []*chart.Chart {
	var list []*chart.Chart
	for _, k := range Kinds() {
		if c := New(k.Key, first, others...); c != nil {
			list = append(list, c)
		}
	}
	return list
}

// compare makes a chart of each setup, given all others, and lays them over each
// other.
func compare(first Setup, others []Setup, make func(s Setup, beside []Setup) *chart.Chart) *chart.Chart {
	all := append([]Setup{first}, others...)
	charts := []*chart.Chart{}
	for i := range all {
		charts = append(charts, make(all[i], slices.Delete(slices.Clone(all), i, i+1)))
	}
	return chart.Compare(charts...)
}

// newChart starts a chart of a setup.
func newChart(s Setup, key chart.Key, title string, about chart.Subject) *chart.Chart {
	return &chart.Chart{
		Key: key, Title: title, Subject: about,
		Subtitle: s.Result.Car.Body.Name + " — " + s.Name, Setups: []string{s.Name},
	}
}

func centerInk(p *palette.Palette) color.RGBA { return p.Center }
func pushInk(p *palette.Palette) color.RGBA   { return p.Push }
func pullInk(p *palette.Palette) color.RGBA   { return p.Pull }
func rearInk(p *palette.Palette) color.RGBA   { return p.Center }
func frontInk(p *palette.Palette) color.RGBA  { return p.Whole }
func wholeInk(p *palette.Palette) color.RGBA  { return p.Whole }

// sentence puts a sentence together unless its middle is empty.
func sentence(before, middle, after string) string {
	if middle == "" {
		return ""
	}
	return before + middle + after
}
