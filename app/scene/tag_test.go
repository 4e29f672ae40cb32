package scene

import (
	"image"
	"image/color"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// What is written during a drag stands in a corner where it covers neither the
// pointer nor the instant center.
func TestWhatIsHeldIsNamedInAFreeCorner(t *testing.T) {
	v := View{Width: 800, Height: 600, Scale: 400}
	low, up, left := r2.Vec{X: 720, Y: 570}, r2.Vec{X: 60, Y: 30}, r2.Vec{X: 60, Y: 570}
	for _, c := range []struct {
		pointer, center r2.Vec
		want            r2.Vec // upper left corner of a box of 200 × 60 px
	}{
		{r2.Vec{X: 400, Y: 300}, r2.Vec{X: 500, Y: 200}, r2.Vec{X: 594, Y: 534}},
		{low, r2.Vec{X: 500, Y: 200}, r2.Vec{X: 6, Y: 6}},
		{r2.Vec{X: 500, Y: 200}, low, r2.Vec{X: 6, Y: 6}},
		{r2.Vec{X: 580, Y: 520}, up, r2.Vec{X: 6, Y: 534}}, // near counts too
		{left, low, r2.Vec{X: 6, Y: 6}},
	} {
		p := Picture{View: v}
		p.Held([]string{"a hole"}, c.pointer, units.US, c.center)
		tag := p.Tags[0]
		if got := tag.corner(200, 60, v); got != c.want || !tag.Fixed || len(tag.Lines) != 2 || !strings.HasPrefix(tag.Lines[1], "x ") {
			t.Errorf("pointer %v, center %v: %q at %v, want %v", c.pointer, c.center, tag.Lines, got, c.want)
		}
	}
	// Where the pointer is is written into the same corner all the time.
	p := Picture{View: v}
	p.Coordinates(low, units.US)
	if got := p.Tags[0].corner(200, 60, v); got != (r2.Vec{X: 594, Y: 534}) {
		t.Errorf("coordinates at %v", got)
	}
}

// While something is dragged it is named without what a drag would do.
func TestADragNeedsNoAdvice(t *testing.T) {
	r := reference(t)
	o := options()
	o.Tuning = true
	for _, id := range []ID{
		{Kind: Pivot, Row: car.ChassisLower, Index: 1}, {Kind: Hole, Row: car.ChassisLower},
		{Kind: ChassisBody}, {Kind: HousingBody}, {Kind: TargetBox, Index: int(AllEdges)}, {Kind: TargetBox, Index: int(RearEdge)},
	} {
		hover := Describe(id, r, &r.Ride, o)
		held := o
		held.Held = true
		drag := Describe(id, r, &r.Ride, held)
		if !strings.Contains(hover[len(hover)-1], "drag") || slices.ContainsFunc(drag, func(s string) bool { return strings.Contains(s, "drag") }) || len(drag) == 0 || drag[0] != hover[0] {
			t.Errorf("%+v: at rest %q, held %q", id, hover, drag)
		}
	}
}

// Among dots the plates behind words let nothing through.
func TestWordsAmongDotsStandOnOpaquePlates(t *testing.T) {
	r := reference(t)
	o := options()
	o.Cloud = clouded(t, r)
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		renderer := NewRenderer()
		img := image.NewRGBA(image.Rect(0, 0, 800, 600))
		renderer.Draw(img, 1, show(r, o), units.US, colors)
		for _, c := range []color.RGBA{colors.Background, colors.Raised} {
			if got := renderer.veil(c); got != color.Color(c) {
				t.Errorf("%s: with dots a plate is %v", theme, got)
			}
		}
		// The corner of the instant center's plate, with all dots right there.
		box := renderer.placed[len(renderer.placed)-1]
		v := FitLink(800, 600, r)
		crowd := clouded(t, r)
		for i := range crowd.points {
			crowd.points[i] = v.World(r2.Vec{X: box.left + 2, Y: box.top + 2})
		}
		crowded := o
		crowded.Cloud = crowd
		renderer.Draw(img, 1, show(r, crowded), units.US, colors)
		if got := img.RGBAAt(int(box.left)+2, int(box.top)+2); got != colors.Background {
			t.Errorf("%s: a dot shows through a label's plate as %v", theme, got)
		}
		renderer.Draw(img, 1, show(r, options()), units.US, colors)
		if _, _, _, a := renderer.veil(colors.Background).RGBA(); a == 0xffff {
			t.Errorf("%s: without dots lines do not show through", theme)
		}
	}
}
