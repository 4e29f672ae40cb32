package side

import (
	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// loads returns what the bars carry, by launch.RodID.
func (b *builder) loads() (loads [len(launch.Bars)]parts.BarLoad) {
	for _, bar := range launch.Bars {
		tension, unknown := b.tension(bar)
		loads[bar] = parts.Loaded(b.result, &b.options.Most, bar, tension, unknown)
	}
	return loads
}

// tension returns what a bar carries [N], and true where nothing holds the axle.
func (b *builder) tension(bar launch.RodID) (n float64, unknown bool) {
	if l := b.options.Launch; l != nil {
		return l.Tension[bar.Pair()][bar.Side()], false
	}
	load := b.options.Case.Of(&b.station.Loads)
	if !load.Balanced {
		return 0, true
	}
	return analysis.Tension(bar.Pair(), load), false
}

// barLabels words what the bars carry.
func (b *builder) barLabels() {
	for _, pair := range car.Pairs {
		housing, chassis := b.ends(pair)
		text, color := b.barWords(pair)
		b.label(barID(pair, 0), r3.Scale(0.5, r3.Add(housing, chassis)), words.Capital(pair.Bars()), text, color, barBeside[pair], scene.Foremost)
	}
}

// barBeside is where the words of bars stand best: the upper ones' above, behind the
// lower ones' below.
var barBeside = [...]r2.Vec{car.Upper: {X: -0.3, Y: 1}, car.Lower: {X: 0.3, Y: -1}}

// barID names the bars of a pair, of the car shown or of a ghost.
func barID(pair car.Pair, ghost int) scene.ID {
	return scene.ID{Kind: [...]scene.Kind{scene.UpperBar, scene.LowerBar}[pair], Ghost: ghost}
}

// far is how far the left-hand bars, which are farther from the eye, are drawn
// from the right-hand ones [px].
var far = r2.Vec{X: -7, Y: -7}

// barWords says what the bars of a pair carry, in the color of that of the right-hand one.
func (b *builder) barWords(pair car.Pair) (text string, color scene.Color) {
	right := launch.RodID(2*pair) + 1
	tension, unknown := b.tension(right)
	if unknown {
		return "no force", scene.Slack
	}
	text = b.loadWords(pair, tension)
	switch {
	case tension > 0:
		color = scene.Pull
	case tension < 0:
		color = scene.Push
	default:
		color = scene.Slack
	}
	if b.options.Launch != nil {
		left, _ := b.tension(right.Opposite())
		return "left " + b.loadWords(pair, left) + "; right " + text, color
	}
	use, _ := b.result.Hold(pair, tension)
	if most := b.options.most(barID(pair, 0)); most.Share > 1 && most.Share > use.Share {
		text += "; " + words.Most(most, b.options.Units)
	}
	return text, color
}

// loadWords says what a tension is of what the bars of a pair may carry.
func (b *builder) loadWords(pair car.Pair, tension float64) string {
	use, way := b.result.Hold(pair, tension)
	return words.LoadAndShare(way, use, b.options.Units)
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
