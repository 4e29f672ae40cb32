package side

import (
	"math"

	"bowline/app/scene"
	"bowline/app/scene/parts"
	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/launch"
	"bowline/model/units"

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
		name, figure, color := b.barWords(pair)
		b.label(barID(pair, 0), r3.Scale(0.5, r3.Add(housing, chassis)), name, figure, color, barBeside[pair], scene.Foremost)
		if b.options.Launch != nil {
			b.keepRoom("left 8,888 · right 8,888 lb — 88 %")
		}
	}
}

// barBeside is where the words of bars stand best: those of the upper ones above,
// those of the lower ones below.
var barBeside = [...]r2.Vec{car.Upper: {X: -0.3, Y: 1}, car.Lower: {X: 0.3, Y: -1}}

// barID names the bars of a pair, of the car shown or of a ghost.
func barID(pair car.Pair, ghost int) scene.ID {
	return scene.ID{Kind: [...]scene.Kind{scene.UpperBar, scene.LowerBar}[pair], Ghost: ghost}
}

// far is how far the left-hand bars, which are farther from the eye, are drawn
// from the right-hand ones [px].
var far = r2.Vec{X: -7, Y: -7}

// barWords names the bars of a pair with what they do, and writes their forces with
// the greater of their shares, in the color of that bar or of what is beyond its limit.
func (b *builder) barWords(pair car.Pair) (name, figure string, color scene.Color) {
	name = words.Capital(pair.Bars())
	right := launch.RodID(2*pair) + 1
	tension, unknown := b.tension(right)
	if unknown {
		return name, "no force", scene.Slack
	}
	u := b.options.Units
	use, way := b.result.Hold(pair, tension)
	if b.options.Launch == nil {
		figure = u.Format(units.Force, use.Force) + " — " + units.Share(use.Share)
		color = parts.NumberColor(tension, use.Share)
		if most := b.options.most(barID(pair, 0)); most.Share > 1 && most.Share > use.Share {
			figure += "; " + words.Most(most, u)
			color = scene.Bad
		}
		return name + " " + way.String(), figure, color
	}
	left, _ := b.tension(right.Opposite())
	leftUse, leftWay := b.result.Hold(pair, left)
	leftForce, rightForce := u.Figure(units.Force, leftUse.Force, 0), u.Format(units.Force, use.Force)
	if way == leftWay {
		name += " " + way.String()
	} else {
		leftForce, rightForce = leftWay.String()+" "+leftForce, way.String()+" "+rightForce
	}
	color = parts.NumberColor(tension, use.Share)
	if leftUse.Share > use.Share {
		color = parts.NumberColor(left, leftUse.Share)
	}
	return name, "left " + leftForce + " · right " + rightForce + " — " + units.Share(math.Max(use.Share, leftUse.Share)), color
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
