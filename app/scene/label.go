package scene

import (
	"math"

	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// nearEdge is how near the picture's edge a point may be and still have its
// words [px]; the sign it stands at is cut off there.
const nearEdge = 14

// Arrows to what is beyond the picture.
const (
	toLeft  = "←"
	toRight = "→"
	upward  = "↑"
	below   = "↓"
)

// kept brings the point of a label that is beyond the picture to its edge and
// returns an arrow that points there.
func kept(at r2.Vec, w, h float64) (r2.Vec, string) {
	const inset = nearEdge + 1
	in := r2.Vec{X: math.Max(inset, math.Min(w-inset, at.X)), Y: math.Max(inset, math.Min(h-inset, at.Y))}
	switch d := r2.Sub(at, in); {
	case math.Abs(d.X) < nearEdge && math.Abs(d.Y) < nearEdge:
		return in, ""
	case math.Abs(d.Y) > math.Abs(d.X) && d.Y < 0:
		return in, upward
	case math.Abs(d.Y) > math.Abs(d.X):
		return in, below
	case d.X < 0:
		return in, toLeft
	}
	return in, toRight
}

// platePad is how far the plate behind words reaches beyond them [px].
const platePad = 1.5

// labels draws labels over all else, leaders first.
func (r *Renderer) labels(p *Picture, colors *palette.Palette) {
	for i := range p.Labels {
		if l := &p.Labels[i]; l.Leader[0] != l.Leader[1] {
			r.path = r.path[:0]
			r.path.Move(r.at(l.Leader[0]))
			r.path.Line(r.at(l.Leader[1]))
			r.outline(l.Stroke, 1, colors)
		}
	}
	for i := range p.Labels {
		r.label(&p.Labels[i], colors)
	}
}

// label draws a name over numbers on a plate, or one line over a veil.
func (r *Renderer) label(l *Placed, colors *palette.Palette) {
	b := l.Box
	width, height := b.Right-b.Left, b.Bottom-b.Top
	if l.Figure == "" {
		r.plate(b.Left, b.Top, width, height, r.veil(colors.Background))
		r.named(l, r2.Vec{X: b.Left + lineAside, Y: b.Top + lineAbove + 0.8*Letter}, b.Right-lineAside, r.letters.plain, l.Stroke, colors)
		return
	}
	r.rounded(b)
	r.color(colors.Raised)
	r.canvas.Fill(r.path)
	r.outline(l.Stroke, 1, colors)
	at := r2.Vec{X: b.Left + plateAside, Y: b.Top + plateAbove + 0.85*Letter}
	r.named(l, at, b.Right-plateAside, r.letters.bold, Ink, colors)
	r.say(r2.Vec{X: at.X, Y: at.Y + labelLine}, l.Figure, r.letters.plain, l.Stroke, colors)
}

// named writes a label's name from a point up to an edge, with the arrow to what is
// beyond the picture before it, or after it where it points to the right.
func (r *Renderer) named(l *Placed, at r2.Vec, edge float64, face font.Face, c Color, colors *palette.Palette) {
	switch l.Toward {
	case "":
	case toRight:
		r.say(r2.Vec{X: edge - r.letters.width(r.letters.plain, toRight), Y: at.Y}, toRight, r.letters.plain, c, colors)
	default:
		r.say(at, l.Toward, r.letters.plain, c, colors)
		at.X += r.letters.width(r.letters.plain, l.Toward) + arrowGap
	}
	r.say(at, l.Text, face, c, colors)
}

// say writes words from a point of their baseline on.
func (r *Renderer) say(at r2.Vec, text string, face font.Face, c Color, colors *palette.Palette) {
	r.color(c.In(colors))
	r.canvas.FillString(face, r.at(at), text)
}

// outline draws the current path as a line.
func (r *Renderer) outline(c Color, width float64, colors *palette.Palette) {
	r.color(c.In(colors))
	r.canvas.SetLineWidth(vg.Length(width))
	r.canvas.SetLineDash(nil, 0)
	r.canvas.Stroke(r.path)
}

// roundness is the radius of a plate's corners [px].
const roundness = 3.0

// rounded has a box with round corners be the current path, on whole pixels.
func (r *Renderer) rounded(b Box) {
	const half = 0.5
	low, high := r.at(r2.Vec{X: b.Left + half, Y: b.Bottom - half}), r.at(r2.Vec{X: b.Right - half, Y: b.Top + half})
	c := vg.Length(roundness)
	r.path = r.path[:0]
	r.path.Move(vg.Point{X: high.X, Y: low.Y + c})
	r.path.Arc(vg.Point{X: high.X - c, Y: high.Y - c}, c, 0, math.Pi/2)
	r.path.Arc(vg.Point{X: low.X + c, Y: high.Y - c}, c, math.Pi/2, math.Pi/2)
	r.path.Arc(vg.Point{X: low.X + c, Y: low.Y + c}, c, math.Pi, math.Pi/2)
	r.path.Arc(vg.Point{X: high.X - c, Y: low.Y + c}, c, 3*math.Pi/2, math.Pi/2)
	r.path.Close()
}
