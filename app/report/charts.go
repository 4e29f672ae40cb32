package report

import (
	"slices"

	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/paper"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// chartHeight lets two charts stand on a page [pt].
const chartHeight = 312

// charts returns all charts of a car and its launch that have something to show.
func charts(r *analysis.Result, l *launch.Result) []*chart.Chart {
	return slices.DeleteFunc(plotting.All(plotting.Of(r, l)), func(c *chart.Chart) bool { return c.Blank })
}

// charts adds charts as wide as the text, two to a page.
func (l *sheets) charts(list []*chart.Chart, s units.System) {
	for _, c := range list {
		l.need(airBefore + chartHeight)
		l.y -= airBefore
		area := vg.Rectangle{Min: vg.Point{X: margin, Y: l.y - chartHeight}, Max: vg.Point{X: l.width - margin, Y: l.y}}
		style := chart.Style{Palette: *ink, Units: s}
		style.Palette.Background = white
		l.draw(func(p *paper.Canvas) {
			c.Draw(draw.Canvas{Canvas: p, Rectangle: area}, style)
		})
		l.y -= chartHeight
	}
}
