package scene_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"testing"

	"bowline/app/scene"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// in is a view of a width and height, without a grid, in which the origin is in
// the middle and a meter is 100 px.
func in(width, height float64) scene.View {
	return scene.View{Plane: ungraded, Width: width, Height: height, Scale: 100}
}

// pixels places a point by its distance from the middle of such a view [px].
func pixels(right, up float64) r3.Vec { return r3.Vec{X: right / 100, Z: up / 100} }

// label is words at a place.
func label(at r3.Vec, text string, c scene.Color) scene.Item {
	return scene.Item{Shape: scene.Label, Points: []r3.Vec{at}, Text: text, Stroke: c}
}

// paint draws items.
func paint(v scene.View, colors *palette.Palette, items ...scene.Item) *image.RGBA {
	var p scene.Picture
	p.Project(items, v)
	return draw(&p, 1, colors)
}

// draw draws a picture.
func draw(p *scene.Picture, scale int, colors *palette.Palette) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, int(p.View.Width)*scale, int(p.View.Height)*scale))
	scene.NewRenderer().Draw(img, float64(scale), p, units.US, colors)
	return img
}

// where returns the box around all pixels of a color and how many there are.
func where(img *image.RGBA, c color.RGBA) (box image.Rectangle, count int) {
	return such(img, img.Rect, func(p color.RGBA) bool { return p == c })
}

// inked returns the box around all pixels of letters of a color, whose edges run
// out into the background, and how many there are.
func inked(img *image.RGBA, ink, background color.RGBA) (box image.Rectangle, count int) {
	return such(img, img.Rect, func(p color.RGBA) bool { return inkOf(p, ink, background) })
}

// inkOf reports whether a color is a mixture of an ink and a background with some
// of the ink in it.
func inkOf(p, ink, background color.RGBA) bool {
	from := func(c color.RGBA) r3.Vec {
		return r3.Vec{X: float64(c.R) - float64(background.R), Y: float64(c.G) - float64(background.G), Z: float64(c.B) - float64(background.B)}
	}
	d, whole := from(p), from(ink)
	part := r3.Dot(d, whole) / r3.Norm2(whole)
	return part > 0.1 && r3.Norm(r3.Sub(d, r3.Scale(part, whole))) < 4
}

// such returns the box around the pixels within a rectangle that pass a test and
// how many there are.
func such(img *image.RGBA, in image.Rectangle, is func(color.RGBA) bool) (box image.Rectangle, count int) {
	for y := in.Min.Y; y < in.Max.Y; y++ {
		for x := in.Min.X; x < in.Max.X; x++ {
			if is(img.RGBAAt(x, y)) {
				box, count = box.Union(image.Rect(x, y, x+1, y+1)), count+1
			}
		}
	}
	return box, count
}

func TestATagStaysInsideThePicture(t *testing.T) {
	want := image.Point{}
	for _, at := range []r2.Vec{{X: 150, Y: 100}, {X: 295, Y: 195}, {X: 295, Y: 5}, {X: 5, Y: 195}} {
		p := scene.Picture{View: in(300, 200)}
		p.Tag(at, []string{"a few words", "and some more"})
		box, n := where(draw(&p, 1, &palette.Light), palette.Light.Raised)
		if want == (image.Point{}) {
			want = box.Size()
		}
		if box.Size() != want || n < 1500 {
			t.Errorf("at %v: %d pixels of the tag are in sight, in %v", at, n, box)
		}
	}
}

// Labels of things beside each other keep clear of both, so that every letter is in
// sight; one whose point is at the very edge, where its sign is cut off, is left out.
func TestLabelsKeepClearOfEachOther(t *testing.T) {
	v, colors := in(300, 200), &palette.Light
	first, second := label(pixels(-50, 0), "the first of two", scene.Push), label(pixels(-40, -4), "the second", scene.Pull)
	ink := func(c color.RGBA, items ...scene.Item) (image.Rectangle, int) {
		return inked(paint(v, colors, items...), c, colors.Background)
	}
	_, alone := ink(colors.Push, first)
	_, other := ink(colors.Pull, second)
	both := []scene.Item{first, second, label(pixels(145, 50), "cut off", scene.Good)}
	above, n := ink(colors.Push, both...)
	below, m := ink(colors.Pull, both...)
	if alone == 0 || other == 0 || n != alone || m != other {
		t.Errorf("of the first label %d of %d pixels are in sight, of the second %d of %d", n, alone, m, other)
	}
	if above.Overlaps(below) || math.Abs(float64(above.Min.Y-below.Min.Y)) > 4*scene.Letter {
		t.Errorf("labels at %v and %v", above, below)
	}
	if box, n := ink(colors.Good, both...); n > 0 {
		t.Errorf("a label of what is cut off stands at %v", box)
	}
}

// A label that stays stands at the edge where its point left the picture, with
// an arrow to it that is drawn.
func TestALabelBeyondThePictureStaysAtItsEdge(t *testing.T) {
	v, colors := in(800, 600), &palette.Light
	for at, want := range map[r3.Vec]struct {
		toward string
		near   r2.Vec // [px]
	}{
		pixels(0, 0):      {"", r2.Vec{X: 400, Y: 300}},
		pixels(500, 0):    {"→", r2.Vec{X: 800, Y: 300}},
		pixels(-450, 280): {"←", r2.Vec{X: 0, Y: 20}},
		pixels(0, 380):    {"↑", r2.Vec{X: 400, Y: 0}},
		pixels(20, -1700): {"↓", r2.Vec{X: 420, Y: 600}},
	} {
		item := label(at, "here", scene.Push)
		item.Stays = true
		var p scene.Picture
		p.Project([]scene.Item{item}, v)
		if len(p.Labels) != 1 || p.Labels[0].Toward != want.toward {
			t.Fatalf("labels %+v, want an arrow %q", p.Labels, want.toward)
		}
		box, n := inked(draw(&p, 1, colors), colors.Push, colors.Background)
		if d := math.Hypot(float64(box.Min.X+box.Max.X)/2-want.near.X, float64(box.Min.Y+box.Max.Y)/2-want.near.Y); n == 0 || d > 60 {
			t.Errorf("%q stands at %v", want.toward, box)
		}
		_, bare := inked(paint(v, colors, label(pixels(0, 0), "here", scene.Push)), colors.Push, colors.Background)
		if (n > bare+5) != (want.toward != "") {
			t.Errorf("%q: %d pixels of ink, the word has %d", want.toward, n, bare)
		}
	}
}

// What is written during a drag stands in a corner where it covers neither the
// pointer nor the instant center.
func TestWhatIsHeldIsNamedInAFreeCorner(t *testing.T) {
	v := in(800, 600)
	v.Plane = sidePlane
	low, up, left := r2.Vec{X: 720, Y: 570}, r2.Vec{X: 60, Y: 30}, r2.Vec{X: 60, Y: 570}
	lowRight, upLeft, lowLeft := r2.Vec{X: 800, Y: 600}, r2.Vec{}, r2.Vec{Y: 600}
	for _, c := range []struct{ pointer, center, want r2.Vec }{
		{r2.Vec{X: 400, Y: 300}, r2.Vec{X: 500, Y: 200}, lowRight},
		{low, r2.Vec{X: 500, Y: 200}, upLeft},
		{r2.Vec{X: 500, Y: 200}, low, upLeft},
		{r2.Vec{X: 655, Y: 545}, up, lowLeft}, // near counts too
		{left, low, upLeft},
	} {
		var p scene.Picture
		p.Project([]scene.Item{{ID: scene.ID{Kind: scene.InstantCenter}, Shape: scene.Disc, Points: []r3.Vec{v.World(c.center)}, Pick: 5}}, v)
		p.Held([]string{"a hole"}, c.pointer, units.US)
		tag := p.Tags[0]
		box, _ := where(draw(&p, 1, &palette.Light), palette.Light.Raised)
		corner := r2.Vec{X: float64(box.Min.X), Y: float64(box.Min.Y)}
		if c.want.X > 0 {
			corner.X = float64(box.Max.X)
		}
		if c.want.Y > 0 {
			corner.Y = float64(box.Max.Y)
		}
		if r2.Norm(r2.Sub(corner, c.want)) > 12 || len(tag.Lines) != 2 || tag.Lines[0] != "a hole" {
			t.Errorf("pointer %v, center %v: %q at %v, want the corner %v", c.pointer, c.center, tag.Lines, box, c.want)
		}
	}
	// Where the pointer is is written into the same corner all the time.
	p := scene.Picture{View: v}
	p.Coordinates(low, units.US)
	if box, _ := where(draw(&p, 1, &palette.Light), palette.Light.Raised); box.Max.X < 790 || box.Max.Y < 590 {
		t.Errorf("coordinates at %v", box)
	}
}

// Coordinates are those of the axes that the view shows squarely; at an angle
// there are none, nor a grid.
func TestCoordinatesAreOfTheViewsAxes(t *testing.T) {
	top := scene.Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Across: "x", Upright: "y"}
	for plane, want := range map[scene.Plane]string{sidePlane: "x 10.00 in   z −5.00 in", top: "x 10.00 in   y −5.00 in", slanted: ""} {
		p := scene.Picture{View: scene.View{Plane: plane, Width: 300, Height: 200, Scale: 100}}
		p.Coordinates(r2.Vec{X: 150 + 25.4, Y: 100 + 12.7}, units.US)
		if len(p.Tags) != min(1, len(want)) || len(p.Tags) == 1 && p.Tags[0].Lines[0] != want {
			t.Errorf("tags %+v, want %q", p.Tags, want)
		}
		p.Tags = nil
		if _, n := where(draw(&p, 1, &palette.Light), palette.Light.Grid); (n > 0) != (want != "") {
			t.Errorf("%q: %d pixels of a grid", want, n)
		}
	}
}

// crowd is dots side by side over a part of a view [px from its middle].
func crowd(right, up float64) scene.Item {
	dots := &scene.Dots{Scale: palette.Scale{Target: [2]float64{1, 1.6}, Low: 0.4, High: 2.2}, Figure: plain}
	item := scene.Item{Shape: scene.Swarm, Radius: 0.05, Dots: dots}
	for x := -40.0; x <= 40; x += 2 {
		for y := -40.0; y <= 40; y += 2 {
			item.Points, dots.List = append(item.Points, pixels(right+x, up+y)), append(dots.List, scene.Dot{Value: 0.1, HasValue: true})
		}
	}
	return item
}

// Words go beside dots where there is room, and where there is none the plates behind
// them let nothing through; without dots lines show through.
func TestWordsAmongDots(t *testing.T) {
	v, small := in(800, 600), in(240, 130)
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		words := label(pixels(0, 0), "words", scene.Ink)
		var beside, among scene.Picture
		beside.Project([]scene.Item{crowd(0, 0), words}, v)
		crowded := scene.Box{Left: 400 - 40, Top: 300 - 40, Right: 400 + 40, Bottom: 300 + 40}
		if b := beside.Labels[0].Box; b.Meets(crowded) {
			t.Errorf("%s: words stand at %v on dots", theme, b)
		}
		dotted := func(p *scene.Picture, items ...scene.Item) (dots, ink int) {
			p.Project(items, small)
			b := p.Labels[0].Box
			box := image.Rect(int(b.Left), int(b.Top), int(b.Right), int(b.Bottom))
			img := draw(p, 1, colors)
			_, dots = such(img, box, func(c color.RGBA) bool { return c == colors.Squat.Below[palette.Shades-1] })
			_, ink = such(img, box, func(c color.RGBA) bool { return inkOf(c, colors.Ink, colors.Background) })
			return dots, ink
		}
		if dots, ink := dotted(&among, crowd(-80, -25), crowd(0, -25), crowd(80, -25), label(pixels(0, -25), "words", scene.Ink)); dots > 0 || ink < 40 {
			t.Errorf("%s: on the words' plate are %d pixels of dots and %d of ink", theme, dots, ink)
		}
		var lined scene.Picture
		lines := make([]scene.Item, 65)
		for i := range lines {
			lines[i] = scene.Item{Points: []r3.Vec{pixels(-130, float64(2*i-65)), pixels(130, float64(2*i-65))}, Stroke: scene.Push, Width: 2}
		}
		lined.Project(append(lines, words), small)
		b := lined.Labels[0].Box
		if _, n := such(draw(&lined, 1, colors), image.Rect(int(b.Left)+1, int(b.Top)+1, int(b.Right)-1, int(b.Bottom)-1), func(c color.RGBA) bool { return c == colors.Background }); n > 0 {
			t.Errorf("%s: lines do not show through at %d pixels", theme, n)
		}
	}
}

// Dots have the color of their value, and so has the legend's bar, from low to
// high, in both themes and at both resolutions.
func TestDotsArePainted(t *testing.T) {
	dots := &scene.Dots{Scale: palette.Scale{Target: [2]float64{1, 1.6}, Low: 0.4, High: 2.2}, List: make([]scene.Dot, 1), Title: "Anti-squat", Figure: plain}
	var p scene.Picture
	p.Project([]scene.Item{{Shape: scene.Swarm, Points: []r3.Vec{pixels(33, 30)}, Radius: 0.05, Dots: dots}}, in(800, 600))
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		s := colors.Squat
		for scale := 1; scale <= 2; scale++ {
			for dot, want := range map[scene.Dot]color.RGBA{
				{Value: 0.1, HasValue: true}: s.Below[palette.Shades-1], {Value: 1.2, HasValue: true}: s.Inside,
				{Value: 3, HasValue: true}: s.Above[palette.Shades-1], {}: colors.Slack,
			} {
				for _, faint := range []bool{false, true} {
					dot.Faint = faint
					dots.List[0] = dot
					img := draw(&p, scale, colors)
					at := r2.Scale(float64(scale), p.Drawn[0].Points[0])
					if got := img.RGBAAt(int(at.X), int(at.Y)); (got == want) == faint || got == colors.Background {
						t.Errorf("%s %d×: the dot %+v is %v, want %v", theme, scale, dot, got, want)
					}
				}
			}
			dots.List[0] = scene.Dot{}
			img := draw(&p, scale, colors)
			low, _ := where(img, s.Below[palette.Shades-1])
			inside, _ := where(img, s.Inside)
			high, _ := where(img, s.Above[palette.Shades-1])
			if low.Empty() || inside.Empty() || high.Empty() || low.Max.X > inside.Min.X || inside.Max.X > high.Min.X || low.Min.Y != high.Min.Y || low.Min.X < img.Rect.Dx()/2 || low.Max.Y > img.Rect.Dy()/4 {
				t.Errorf("%s %d×: the legend's bar begins at %v, has the target at %v and ends at %v", theme, scale, low, inside, high)
			}
		}
	}
}

// plain writes a value of the legend.
func plain(x float64) string { return fmt.Sprint(x) }

// What is lit has an outline in the accent color around all of it: a line on both its
// sides, a disc all around.
func TestWhatIsLitHasAnOutline(t *testing.T) {
	for _, c := range []struct {
		name     string
		item     scene.Item
		from, to int // that the outline reaches up and down, from the middle [px]
	}{
		{"tube", scene.Item{Points: []r3.Vec{pixels(-30, 0), pixels(30, 0)}, Girth: 0.1, Stroke: scene.Tire, Edge: scene.Ink}, 6, 9},
		{"line", scene.Item{Points: []r3.Vec{pixels(-30, 0), pixels(30, 0)}, Width: 2, Stroke: scene.Tire}, 2, 5},
		{"disc", scene.Item{Shape: scene.Disc, Points: []r3.Vec{{}}, Radius: 0.2, Fill: scene.Tire, Stroke: scene.Ink, Width: 2}, 22, 25},
	} {
		c.item.ID, c.item.Pick = scene.ID{Kind: scene.Locator}, 4
		list := &scene.List{}
		list.Add(c.item)
		list.Light(scene.ID{Kind: scene.Spring})
		if _, n := where(paint(in(100, 100), &palette.Light, list.Items...), palette.Light.Accent); n > 0 {
			t.Errorf("%s: an outline of something else", c.name)
		}
		list.Light(scene.ID{Kind: scene.Locator, Side: scene.Left})
		box, _ := where(paint(in(100, 100), &palette.Light, list.Items...), palette.Light.Accent)
		if up, down := 50-box.Min.Y, box.Max.Y-50; up < c.from || up > c.to || down < c.from || down > c.to {
			t.Errorf("%s: the outline reaches %d px up and %d px down, want %d to %d", c.name, up, down, c.from, c.to)
		}
	}
}
