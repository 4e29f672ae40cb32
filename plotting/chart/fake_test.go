package chart_test

import (
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/plotter"
)

var light = chart.Style{Palette: palette.Light}

// fake is a subject that says what it is told to.
type fake struct {
	readings []chart.Reading
	rows     [][2]float64
}

func (f fake) Readout(float64, units.System) []chart.Reading { return f.readings }
func (f fake) Place(float64) chart.Place                     { return chart.Place{} }
func (f fake) PositionAt(*chart.Layout, float64, float64) (at, off float64, ok bool) {
	return 0, 0, false
}

func (f fake) ReadoutAt(*chart.Layout, float64, float64, units.System) []chart.Reading { return nil }

func (f fake) Table(s units.System, setup string) chart.Table {
	t := chart.NewTable(s, setup)
	t.Key("time", "", units.Time)
	t.Add("x", "", units.Time)
	for _, row := range f.rows {
		t.Row(row[0])
		t.Cell(row[1], true)
	}
	return t.Table
}

// made returns a chart of a setup with axes that show what is given.
func made(setup string, x, y chart.Axis, about chart.Subject) *chart.Chart {
	return &chart.Chart{
		Key: "fake", Title: "Fake", Setups: []string{setup}, X: x, Y: y, Subject: about,
		Lines: []chart.Line{{Name: setup, Ink: chart.PlainInk, Runs: []plotter.XYs{{{X: x.Sight.Min, Y: y.Sight.Min}, {X: x.Sight.Max, Y: y.Sight.Max}}}}},
	}
}

// axis shows a span of lengths [m].
func axis(from, to float64) chart.Axis {
	return chart.Axis{Label: "Length", Quantity: units.Length, Sight: chart.Between(from, to), Least: 1e-9}
}
