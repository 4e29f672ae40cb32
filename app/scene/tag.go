package scene

import (
	"math"
	"slices"

	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// Tag is a small box of words that stands on the picture.
type Tag struct {
	At    r2.Vec // what the box stands beside [px]
	Lines []string
	Fixed bool     // it stands in a corner of the picture
	Clear []r2.Vec // of a fixed box: what it is not to cover [px]

	box Box
}

// Tag puts the name of what is under the pointer beside it.
func (p *Picture) Tag(pointer r2.Vec, lines []string) {
	if len(lines) > 0 {
		p.put(Tag{At: pointer, Lines: lines})
	}
}

// Coordinates writes where the pointer is, from the rear contact, into the
// lower right corner of a view along an axis of the car.
func (p *Picture) Coordinates(pointer r2.Vec, u units.System) {
	if lines := p.coordinates(nil, pointer, u); lines != nil {
		p.put(Tag{Lines: lines, Fixed: true})
	}
}

// Held writes into a corner what is dragged and where the pointer is, from the
// rear contact. The corner is one away from the pointer and the instant center.
func (p *Picture) Held(lines []string, pointer r2.Vec, u units.System) {
	tag := Tag{Lines: p.coordinates(lines, pointer, u), Fixed: true, Clear: []r2.Vec{pointer}}
	if at, ok := p.Find(ID{Kind: InstantCenter}); ok {
		tag.Clear = append(tag.Clear, at)
	}
	p.put(tag)
}

// coordinates adds to lines where a screen point is.
func (p *Picture) coordinates(lines []string, at r2.Vec, u units.System) []string {
	plane := &p.View.Plane
	if !plane.measured() {
		return lines
	}
	w := p.View.onPlane(at)
	return append(lines, plane.Across+" "+u.Format(units.Length, w.X)+"   "+plane.Upright+" "+u.Format(units.Length, w.Y))
}

// Sizes of a tag [px].
const (
	tagPad    = 6.0
	tagLine   = 15.0
	tagBeside = 16.0
	tagEdge   = 6.0  // of a fixed one, from the picture's edge
	tagClear  = 20.0 // around what a fixed one is not to cover
)

// corner returns the upper left corner of a fixed box: in the lower right of the
// picture, or in the next corner where it covers nothing that it is to keep clear
// of. The upper right, where the legend stands, is none of them.
func (t *Tag) corner(width, height float64, v View) r2.Vec {
	right, low := math.Max(0, v.Width-tagEdge-width), math.Max(0, v.Height-tagEdge-height)
	corners := [...]r2.Vec{{X: right, Y: low}, {X: tagEdge, Y: tagEdge}, {X: tagEdge, Y: low}}
	for _, c := range corners {
		b := Box{c.X - tagClear, c.Y - tagClear, c.X + width + tagClear, c.Y + height + tagClear}
		if !slices.ContainsFunc(t.Clear, b.Holds) {
			return c
		}
	}
	return corners[0]
}

// put gives a tag its box and adds it. Labels make room for one in a corner.
func (p *Picture) put(t Tag) {
	letters := p.letters()
	width := 0.0
	for _, s := range t.Lines {
		width = math.Max(width, letters.width(letters.plain, s))
	}
	width += 2 * tagPad
	height := tagLine*float64(len(t.Lines)) + 2*tagPad - (tagLine - Letter)
	corner := p.besidePointer(t.At, width, height)
	if t.Fixed {
		corner = t.corner(width, height, p.View)
	}
	t.box = Box{corner.X, corner.Y, corner.X + width, corner.Y + height}
	p.Tags = append(p.Tags, t)
	if t.Fixed {
		p.arrange()
	}
}

// besidePointer returns the upper left corner of a box beside the pointer, on that side of
// it where the box is in the picture and covers no label, or else just in the picture.
func (p *Picture) besidePointer(at r2.Vec, width, height float64) r2.Vec {
	right, low := at.X+tagBeside, at.Y+tagBeside
	left, high := math.Max(0, at.X-tagBeside-width), math.Max(0, at.Y-tagBeside-height)
	if right+width > p.View.Width {
		right = left
	}
	if low+height > p.View.Height {
		low = high
	}
	for _, c := range [...]r2.Vec{{X: right, Y: low}, {X: left, Y: low}, {X: right, Y: high}, {X: left, Y: high}} {
		b := Box{c.X, c.Y, c.X + width, c.Y + height}
		if !slices.ContainsFunc(p.Labels, func(l Placed) bool { return b.Meets(l.Box) }) && !b.Holds(at) {
			return c
		}
	}
	return r2.Vec{X: right, Y: low}
}

// tag draws a box of words.
func (r *Renderer) tag(t *Tag, colors *palette.Palette) {
	r.plate(t.box.Left, t.box.Top, t.box.Right-t.box.Left, t.box.Bottom-t.box.Top, colors.Raised)
	r.outline(Muted, 1, colors)
	for i, s := range t.Lines {
		c := Ink
		if i > 0 {
			c = Muted
		}
		r.say(r2.Vec{X: t.box.Left + tagPad, Y: t.box.Top + tagPad + 0.8*Letter + tagLine*float64(i)}, s, r.letters.plain, c, colors)
	}
}
