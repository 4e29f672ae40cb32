package side

import (
	"math"

	"bowline/app/scene"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// bars draws the bars, colored and widened by what they carry.
func (b *builder) bars() {
	for _, pair := range car.Pairs {
		housing, chassis := b.ends(pair)
		item := scene.Item{ID: barID(pair, 0), Points: b.list.Points(housing, chassis), Pick: closePick}
		text, color := "", scene.Slack
		if b.options.Launch != nil {
			text, color = b.bothSides(item, pair)
		} else {
			text, color = b.oneSide(item, pair)
		}
		b.label(item.ID, r3.Scale(0.5, r3.Add(housing, chassis)), words.Capital(pair.Bars()), text, color, barBeside[pair], scene.Foremost)
	}
}

// barBeside is where the words of bars stand best: the upper ones' above, behind the
// lower ones' below.
var barBeside = [...]r2.Vec{car.Upper: {X: -0.3, Y: 1}, car.Lower: {X: 0.3, Y: -1}}

// barID names the bars of a pair, of the car shown or of a ghost.
func barID(pair car.Pair, ghost int) scene.ID {
	return scene.ID{Kind: [...]scene.Kind{scene.UpperBar, scene.LowerBar}[pair], Ghost: ghost}
}

// oneSide draws a bar that stands for left and right, and words its force.
func (b *builder) oneSide(item scene.Item, pair car.Pair) (text string, color scene.Color) {
	load := b.options.Case.Of(&b.station.Loads)
	if !load.Balanced {
		item.Stroke, item.Width = scene.Slack, barLeast
		b.add(item)
		return "no force", scene.Slack
	}
	return b.loaded(item, pair, analysis.Tension(pair, load))
}

// far is how far the left-hand bars, which are farther from the eye, are drawn
// from the right-hand ones [px].
var far = r2.Vec{X: -7, Y: -7}

// bothSides draws the left-hand bar behind the right-hand one and words both
// forces.
func (b *builder) bothSides(item scene.Item, pair car.Pair) (text string, color scene.Color) {
	tension := b.options.Launch.Tension[pair]
	left := item
	left.ID.Side, item.ID.Side = scene.Left, scene.Right
	left.Points = b.list.Points(left.Points...)
	for i := range left.Points {
		left.Points[i].Y *= -1
	}
	left.Shift, left.Pick = far, 0
	leftText, _ := b.loaded(left, pair, tension[0])
	rightText, color := b.loaded(item, pair, tension[1])
	return "left " + leftText + "; right " + rightText, color
}

// loaded draws a bar under a tension [N] and words its force.
func (b *builder) loaded(item scene.Item, pair car.Pair, tension float64) (text string, color scene.Color) {
	use, way := b.result.Hold(pair, tension)
	most := b.options.most(item.ID)
	item.Stroke = scene.Slack
	switch {
	case tension > 0:
		item.Stroke, item.Arrows = scene.Pull, -1
	case tension < 0:
		item.Stroke, item.Arrows = scene.Push, 1
	}
	item.Width = barLeast + barSpan*math.Min(use.Share, 1)
	if use.Share > 1 || most.Share > 1 {
		b.add(scene.Item{ID: item.ID, Points: item.Points, Stroke: scene.Bad, Width: item.Width + 6, Shift: item.Shift})
	}
	b.add(item)
	text = words.LoadAndShare(way, use, b.options.Units)
	if b.options.Launch == nil && most.Share > 1 && most.Share > use.Share {
		text += "; " + words.Most(most, b.options.Units)
	}
	return text, item.Stroke
}

// most returns the most that is asked of a bar by its ID; of both bars of a pair where
// they are drawn as one.
func (o *Options) most(id scene.ID) analysis.Demand {
	left := launch.RodID(2 * id.Pair())
	right := left.Opposite()
	l, r := o.Most.Of(left), o.Most.Of(right)
	if id.Side == scene.Right || id.Side != scene.Left && r.Share > l.Share {
		return r
	}
	return l
}
