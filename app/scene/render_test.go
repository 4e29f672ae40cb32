package scene

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestTagStaysInsideThePicture(t *testing.T) {
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 300, 200))
	p := Picture{View: View{Width: 300, Height: 200, Scale: 100}}
	p.Tag(r2.Vec{X: 295, Y: 195}, []string{"a few words", "and some more"})
	renderer.Draw(img, 1, &p, units.US, &palette.Light)
	raised := 0
	for y := range 200 {
		for x := range 300 {
			if img.RGBAAt(x, y) == palette.Light.Raised {
				raised++
			}
		}
	}
	if raised < 1500 {
		t.Errorf("only %d pixels of the tag are in sight", raised)
	}
}

// Labels whose places overlap stand one above the other; one whose point is at
// the very edge, where its sign is cut off, is left out.
func TestLabelsKeepClearOfEachOther(t *testing.T) {
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 300, 200))
	label := func(x, y float64, text string) Drawn {
		return Drawn{Item: &Item{Shape: Label, Text: text, Size: Letter, Stroke: Ink}, Points: []r2.Vec{{X: x, Y: y}}}
	}
	p := Picture{View: View{Width: 300, Height: 200, Scale: 100}, Drawn: []Drawn{label(100, 100, "the first of two"), label(110, 104, "the second"), label(295, 50, "cut off")}}
	renderer.Draw(img, 1, &p, units.US, &palette.Light)
	// The grid's numbers are not among them.
	if len(renderer.placed) != 2 {
		t.Fatalf("%d labels are placed", len(renderer.placed))
	}
	if a, b := renderer.placed[0], renderer.placed[1]; a.meets(b) || math.Abs(a.top-b.top) > 4*Letter {
		t.Errorf("labels at %+v and %+v", a, b)
	}
}

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

func TestALabelBeyondThePictureStaysAtItsEdge(t *testing.T) {
	for at, want := range map[r2.Vec]string{
		{X: 400, Y: 300}: "here", {X: 900, Y: 300}: "here →", {X: -50, Y: 20}: "← here", {X: 400, Y: -80}: "↑ here", {X: 420, Y: 2000}: "↓ here",
	} {
		in, text := kept(at, "here", 800, 600)
		if text != want || in.X < nearEdge || in.X > 800-nearEdge || in.Y < nearEdge || in.Y > 600-nearEdge {
			t.Errorf("from %v: %q at %v", at, text, in)
		}
	}
}

// crowd returns a picture of 800 × 600 with words in its middle and a hundred
// dots at one place.
func crowd(at r2.Vec) *Picture {
	dots := &Dots{Scale: palette.Scale{Target: [2]float64{1, 1.6}, Low: 0.4, High: 2.2}}
	items := []Item{
		{Shape: Swarm, Radius: 0.05, Dots: dots},
		{Shape: Label, Points: []r2.Vec{{}}, Text: "words", Size: Letter, Stroke: Ink},
	}
	for range 100 {
		items[0].Points, dots.List = append(items[0].Points, at), append(dots.List, Dot{Value: 0.3, HasValue: true})
	}
	p := new(Picture)
	p.Project(items, View{Width: 800, Height: 600, Scale: 100})
	return p
}

// Among dots the plates behind words let nothing through; without dots lines show
// through.
func TestWordsAmongDotsStandOnOpaquePlates(t *testing.T) {
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		renderer := NewRenderer()
		img := image.NewRGBA(image.Rect(0, 0, 800, 600))
		renderer.Draw(img, 1, crowd(r2.Vec{X: 2}), units.US, colors)
		for _, c := range []color.RGBA{colors.Background, colors.Raised} {
			if got := renderer.veil(c); got != color.Color(c) {
				t.Errorf("%s: with dots a plate is %v", theme, got)
			}
		}
		// The corner of the words' plate, with all dots right there.
		box := renderer.placed[len(renderer.placed)-1]
		corner := r2.Vec{X: box.left + 2, Y: box.top + 2}
		v := View{Width: 800, Height: 600, Scale: 100}
		renderer.Draw(img, 1, crowd(v.World(corner)), units.US, colors)
		if got := img.RGBAAt(int(corner.X), int(corner.Y)); got != colors.Background {
			t.Errorf("%s: a dot shows through a label's plate as %v", theme, got)
		}
		renderer.Draw(img, 1, &Picture{View: v}, units.US, colors)
		if _, _, _, a := renderer.veil(colors.Background).RGBA(); a == 0xffff {
			t.Errorf("%s: without dots lines do not show through", theme)
		}
	}
}

// Dots have the color of their value, and so has the legend's bar, in both themes
// and at both resolutions.
func TestDotsArePainted(t *testing.T) {
	dots := &Dots{Scale: palette.Scale{Target: [2]float64{1, 1.6}, Low: 0.4, High: 2.2}, List: make([]Dot, 1)}
	items := []Item{{Shape: Swarm, Points: []r2.Vec{{X: 0.33, Y: 0.3}}, Radius: 0.05, Dots: dots}}
	var p Picture
	p.Project(items, View{Width: 800, Height: 600, Scale: 100})
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		s := colors.Squat
		for scale := 1; scale <= 2; scale++ {
			img := image.NewRGBA(image.Rect(0, 0, 800*scale, 600*scale))
			renderer := NewRenderer()
			at := func(q r2.Vec) color.RGBA { return img.RGBAAt(int(float64(scale)*q.X), int(float64(scale)*q.Y)) }
			for dot, want := range map[Dot]color.RGBA{
				{Value: 0.1, HasValue: true}: s.Below[palette.Shades-1], {Value: 1.2, HasValue: true}: s.Inside,
				{Value: 3, HasValue: true}: s.Above[palette.Shades-1], {}: colors.Slack,
			} {
				for _, faint := range []bool{false, true} {
					dot.Faint = faint
					dots.List[0] = dot
					renderer.Draw(img, float64(scale), &p, units.US, colors)
					if got := at(p.Drawn[0].Points[0]); (got == want) == faint || got == colors.Background {
						t.Errorf("%s %d×: the dot %+v is %v, want %v", theme, scale, dot, got, want)
					}
				}
			}
			frame := legendBox(p.View)
			for part, want := range map[float64]color.RGBA{0.004: s.Below[palette.Shades-1], 0.5: s.Inside, 0.99: s.Above[palette.Shades-1]} {
				if got := at(r2.Vec{X: frame.left + legendPad + part*(legendWidth-2*legendPad), Y: frame.top + 23 + legendBar/2}); got != want {
					t.Errorf("%s %d×: the legend's bar at %v is %v, want %v", theme, scale, part, got, want)
				}
			}
		}
	}
}
