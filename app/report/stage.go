package report

import (
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/plotting/paper"

	"gonum.org/v1/plot/vg"
)

// Size of the picture of the stage: across the page, in letters a little smaller than on
// screen [px].
const (
	stageWidth  = 780.0
	stageHeight = 330.0
)

// stage draws the car in the hit case at ride height, fitted to the four-link, as the side view
// shows it.
func (l *sheets) stage(w writer) {
	var list scene.List
	o := side.Options{Units: w.units, Case: analysis.Hit, Most: w.Envelope(w.launch), Labels: true, Selected: -1}
	side.Build(&list, w.Result, &w.Ride, o)
	var p scene.Picture
	p.Project(list.Items, side.ViewOfBars(stageWidth, stageHeight, w.Result))
	scale := (l.width - 2*margin).Points() / stageWidth
	height := vg.Length(scale * stageHeight)
	l.need(height + airBefore)
	l.y -= airBefore + height
	corner := vg.Point{X: margin, Y: l.y}
	l.draw(func(on *paper.Canvas) {
		on.Push()
		on.Translate(corner)
		on.Scale(scale, scale)
		on.Clip(vg.Rectangle{Max: vg.Point{X: stageWidth, Y: stageHeight}})
		scene.NewRenderer().DrawPage(on, &p, scene.Foot{}, w.units, ink)
		on.EndClip()
		on.Pop()
	})
}
