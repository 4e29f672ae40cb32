package scene

import (
	"math"

	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// Sizes of the legend of the dots' colors [px].
const (
	legendWidth  = 236.0
	legendHeight = 56.0
	legendEdge   = 8.0 // from the picture's edge
	legendPad    = 8.0
	legendBar    = 9.0  // height of the bar of colors
	legendWord   = 40.0 // room for the word below the target
	frameWidth   = 1.6  // of the line around the target
)

// dots returns the dots whose colors need a legend, or nil.
func (p *Picture) dots() *Dots {
	for i := range p.Drawn {
		if d := &p.Drawn[i]; d.Shape == Swarm {
			return d.Dots
		}
	}
	return nil
}

// legendBox is where the legend stands: in the upper right corner.
func legendBox(v View) Box {
	left := math.Max(0, v.Width-legendEdge-legendWidth)
	return Box{left, legendEdge, left + legendWidth, legendEdge + legendHeight}
}

// legend draws the bar of the dots' colors with its middle marked on it and
// figures along it.
func (r *Renderer) legend(dots *Dots, v View, colors *palette.Palette) {
	frame := legendBox(v)
	r.plate(frame.Left, frame.Top, legendWidth, legendHeight, r.veil(colors.Raised))
	left, width, top := frame.Left+legendPad, legendWidth-2*legendPad, frame.Top+23
	scale := dots.Scale
	along := func(x float64) float64 { return left + width*(x-scale.Low)/(scale.High-scale.Low) }

	// Each shade from where it ends to the target, so that they leave no seams.
	for i := palette.Shades - 1; i >= 0; i-- {
		part := float64(i+1) / palette.Shades
		low, high := scale.Target[0]-part*(scale.Target[0]-scale.Low), scale.Target[1]+part*(scale.High-scale.Target[1])
		r.plate(along(low), top, along(scale.Target[0])-along(low), legendBar, colors.Squat.Below[i])
		r.plate(along(scale.Target[1]), top, along(high)-along(scale.Target[1]), legendBar, colors.Squat.Above[i])
	}
	r.plate(along(scale.Target[0]), top, along(scale.Target[1])-along(scale.Target[0]), legendBar, colors.Squat.Inside)
	r.frame(along(scale.Target[0]), top-3, along(scale.Target[1]), top+legendBar+3, colors)

	foot := frame.Top + legendHeight - legendPad
	r.caption(left, frame.Top+legendPad+8, dots.Title, 0, Ink, colors)
	r.caption(left, foot, "≤ "+dots.Figure(scale.Low), 0, Muted, colors)
	r.caption(left+width, foot, "≥ "+dots.Figure(scale.High), 1, Muted, colors)
	from, to := along(scale.Target[0]), along(scale.Target[1])
	if from == to {
		r.caption(left+width, frame.Top+legendPad+8, dots.Mark+" "+dots.Figure(scale.Target[0]), 1, Ink, colors)
		return
	}
	// Beside the target's ends, so that they keep apart however narrow it is.
	r.caption(from-3, foot, dots.Figure(scale.Target[0]), 1, Ink, colors)
	r.caption(to+3, foot, dots.Figure(scale.Target[1]), 0, Ink, colors)
	if to-from > legendWord {
		r.caption((from+to)/2, foot, dots.Mark, 0.5, Ink, colors)
	}
}

// frame outlines a rectangle [px].
func (r *Renderer) frame(x0, y0, x1, y1 float64, colors *palette.Palette) {
	r.path = r.path[:0]
	r.path.Move(r.at(r2.Vec{X: x0, Y: y0}))
	r.path.Line(r.at(r2.Vec{X: x1, Y: y0}))
	r.path.Line(r.at(r2.Vec{X: x1, Y: y1}))
	r.path.Line(r.at(r2.Vec{X: x0, Y: y1}))
	r.path.Close()
	r.outline(Ink, frameWidth, colors)
}

// caption writes small words of which a part is left of x; y is their baseline
// [px].
func (r *Renderer) caption(x, y float64, text string, part float64, c Color, colors *palette.Palette) {
	r.say(r2.Vec{X: x - part*r.letters.width(r.letters.small, text), Y: y}, text, r.letters.small, c, colors)
}
