package scene

import (
	"math"

	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// Tag is a small box of words that stands on the picture.
type Tag struct {
	At    r2.Vec // what the box stands beside [px]
	Lines []string
	Fixed bool // At is the box's lower right corner
}

// Tag puts the name of what is under the pointer beside it.
func (p *Picture) Tag(pointer r2.Vec, lines []string) {
	if len(lines) > 0 {
		p.Tags = append(p.Tags, Tag{At: pointer, Lines: lines})
	}
}

// Coordinates writes where the pointer is, from the rear contact, into the
// lower right corner.
func (p *Picture) Coordinates(pointer r2.Vec, u units.System) {
	at := p.View.World(pointer)
	text := "x " + u.Format(units.Length, at.X) + "   z " + u.Format(units.Length, at.Y)
	p.Tags = append(p.Tags, Tag{At: r2.Vec{X: p.View.Width - 6, Y: p.View.Height - 6}, Lines: []string{text}, Fixed: true})
}

// Sizes of a tag [px].
const (
	tagPad    = 6.0
	tagLine   = 15.0
	tagBeside = 16.0
)

// tag draws a box of words, kept inside the picture.
func (r *Renderer) tag(t *Tag, v View, colors *palette.Palette) {
	face := r.face(letter)
	width := 0.0
	for _, s := range t.Lines {
		width = math.Max(width, float64(face.Width(s)))
	}
	width += 2 * tagPad
	height := tagLine*float64(len(t.Lines)) + 2*tagPad - (tagLine - letter)
	corner := r2.Add(t.At, r2.Vec{X: tagBeside, Y: tagBeside})
	if t.Fixed {
		corner = r2.Sub(t.At, r2.Vec{X: width, Y: height})
	}
	// A box that would leave the picture goes to the pointer's other side.
	if corner.X+width > v.Width {
		corner.X = math.Max(0, t.At.X-tagBeside-width)
	}
	if corner.Y+height > v.Height {
		corner.Y = math.Max(0, t.At.Y-tagBeside-height)
	}
	r.plate(corner.X, corner.Y, width, height, colors.Raised)
	r.canvas.SetColor(colors.Muted)
	r.canvas.SetLineWidth(1)
	r.canvas.SetLineDash(nil, 0)
	r.canvas.Stroke(r.path)
	for i, s := range t.Lines {
		r.canvas.SetColor(colors.Ink)
		if i > 0 {
			r.canvas.SetColor(colors.Muted)
		}
		p := r.at(r2.Vec{X: corner.X + tagPad, Y: corner.Y + tagPad + 0.8*letter + tagLine*float64(i)})
		r.canvas.FillString(face, vg.Point{X: p.X, Y: p.Y}, s)
	}
}
