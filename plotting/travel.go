package plotting

import (
	"math"
	"strings"

	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting/chart"

	"gonum.org/v1/plot/plotter"
)

// travelAxis is the x axis of everything shown over rear travel.
func travelAxis(r *analysis.Result) chart.Axis {
	first, last := &r.Travel[0], &r.Travel[len(r.Travel)-1]
	return chart.Axis{
		Label: "Rear travel", Quantity: units.Length, Low: "droop", High: "bump", Tight: true,
		Sight: chart.Between(first.Pose.Travel, last.Pose.Travel), Least: 1e-3,
	}
}

// overTravel is what charts over rear travel have in common.
type overTravel struct{ r *analysis.Result }

// PositionAt reads the travel off the x axis; beyond its ends it is the end.
func (o overTravel) PositionAt(l *chart.Layout, px, py float64) (at, off float64, ok bool) {
	list := o.r.Travel
	at, off = l.Along(chart.Between(list[0].Pose.Travel, list[len(list)-1].Pose.Travel), px, py)
	return at, off, true
}

func (o overTravel) ReadoutAt(*chart.Layout, float64, float64, units.System) []chart.Reading {
	return nil
}

// at returns the car at any travel, and false where the bars do not close.
func (o overTravel) at(travel float64) (*analysis.Station, bool) {
	s, err := o.r.At(travel, o.r.Options.FrontTravel)
	return &s, err == nil
}

// runs collects the points of a curve over the stations, broken where there
// is no value and wherever broken says so between two stations.
func runs(stations []analysis.Station, point func(*analysis.Station) (plotter.XY, bool), broken func(a, b *analysis.Station) bool) []plotter.XYs {
	var list []plotter.XYs
	open := false
	for i := range stations {
		at, ok := point(&stations[i])
		if open && ok && broken != nil && broken(&stations[i-1], &stations[i]) {
			open = false
		}
		switch {
		case ok && open:
			last := len(list) - 1
			list[last] = append(list[last], at)
		case ok:
			list = append(list, append(make(plotter.XYs, 0, len(stations)-i), at))
		}
		open = ok
	}
	return list
}

// where names the travels at which something holds, as in "0.50 in droop to
// 1.20 in bump". It is empty when that is nowhere.
func where(stations []analysis.Station, s units.System, holds func(*analysis.Station) bool) string {
	return stretches(len(stations), func(i int) bool { return holds(&stations[i]) }, func(first, last int) string {
		return s.Travels(stations[first].Pose.Travel, stations[last].Pose.Travel)
	})
}

// stretches names the first two stretches of n places in which something holds,
// and whether there are more. It is empty when it holds nowhere.
func stretches(n int, holds func(i int) bool, name func(first, last int) string) string {
	var parts []string
	for i := 0; i < n; i++ {
		if !holds(i) {
			continue
		}
		first := i
		for i+1 < n && holds(i+1) {
			i++
		}
		parts = append(parts, name(first, i))
	}
	if len(parts) > 2 {
		parts = append(parts[:2], "elsewhere")
	}
	return strings.Join(parts, " and ")
}

// worst returns the value largest in magnitude among those given.
func worst(values ...float64) float64 {
	var found float64
	for _, v := range values {
		if math.Abs(v) > math.Abs(found) {
			found = v
		}
	}
	return found
}
