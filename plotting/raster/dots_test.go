package raster_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"bowline/plotting/raster"

	"gonum.org/v1/plot/vg"
)

var blackInk = color.RGBA{A: 255}

// A dot covers the area of its circle, wherever its center is in a pixel.
func TestDotCoversItsCircle(t *testing.T) {
	for _, r := range []float64{0.8, 1.9, 2.6, 7, 15.9, 16.1, 40} {
		for i := range 20 {
			c, img := pixels(110, 110)
			c.Dot(pt(50+0.137*float64(i), 52+0.291*float64(i)), vg.Length(r), blackInk)
			// Rounding of coverage to 8 bits along the rim.
			near(t, "area", darkArea(img), math.Pi*r*r, 0.01*math.Pi*r*r+0.03*r)
		}
	}
}

// A dot looks as the same circle does when it is filled, but for the rounding
// of its place, in any color, at the edges and beyond them.
func TestDotsLookLikeCircles(t *testing.T) {
	for _, ink := range []color.RGBA{blackInk, {R: 90, G: 20, B: 60, A: 120}} {
		for i := range 60 {
			x, y, r := -3+1.37*float64(i), 83-1.43*float64(i), 1.5+0.05*float64(i)
			dot, onDots := pixels(80, 80)
			dot.Dot(pt(x, y), vg.Length(r), ink)
			fill, onFills := pixels(80, 80)
			fill.SetColor(ink)
			fill.Fill(circle(x, y, r))
			// A place 1/32 px off changes coverage by that much each way.
			if d := differenceOf(onDots, onFills); d.max > 17 {
				t.Fatalf("at %v, %v with radius %v in %v: %+v", x, y, r, ink, d)
			}
		}
	}
}

// The center is where the transform takes it and the radius grows with it.
func TestDotFollowsTheTransform(t *testing.T) {
	c, img := pixels(60, 60)
	c.Push()
	c.Translate(pt(10, 20))
	c.Scale(2, 2)
	c.Dot(pt(10, 5), 3, blackInk)
	c.Pop()
	near(t, "area", darkArea(img), math.Pi*36, 1.5)
	// y counts from the lower edge.
	if dark(img, 30, 25) < 1-level || dark(img, 30, 34) < 1-level || dark(img, 30, 23) > level || dark(img, 30, 36) > level {
		t.Error("the dot is not where it should be")
	}
}

func TestDotsThatDrawNothing(t *testing.T) {
	c, img := pixels(40, 40)
	for _, r := range []float64{0, -1, math.NaN()} {
		c.Dot(pt(20, 20), vg.Length(r), blackInk)
	}
	c.Dot(pt(math.NaN(), 20), 3, blackInk)
	c.Dot(pt(math.Inf(1), 20), 3, blackInk)
	c.Dot(pt(20, -1e9), 3, blackInk)
	near(t, "area", darkArea(img), 0, 0)
}

// More radii than are kept are drawn as well as the first one, and the color
// for other drawing stays.
func TestDotsBeyondWhatIsKept(t *testing.T) {
	c, img := pixels(60, 60)
	first := func() *image.RGBA {
		c.Clear(color.White)
		c.Dot(pt(20.3, 20.7), 2.5, blackInk)
		kept := image.NewRGBA(img.Rect)
		copy(kept.Pix, img.Pix)
		return kept
	}
	before := first()
	c.SetColor(color.RGBA{R: 255, A: 255})
	for i := range 100 {
		c.Dot(pt(30, 30), vg.Length(1+0.2*float64(i)), blackInk)
	}
	if d := differenceOf(before, first()); d.max > 0 {
		t.Errorf("the first dot looks different: %+v", d)
	}
	c.Fill(polygon(40, 40, 50, 40, 50, 50, 40, 50))
	if got := img.RGBAAt(45, 15); got != (color.RGBA{R: 255, A: 255}) {
		t.Errorf("filled in %v", got)
	}
}

// Dots take no memory once their radius is known at every place in a pixel.
func TestDotsTakeNoMemory(t *testing.T) {
	c, _ := pixels(200, 200)
	draw := func() {
		for i := range 512 {
			c.Dot(pt(float64(i%16)*(1+1.0/16)+10, float64(i/16)*(1+1.0/16)+10), 2.6, blackInk)
		}
	}
	draw()
	if n := testing.AllocsPerRun(20, draw); n > 0 {
		t.Errorf("%v allocations", n)
	}
}

// BenchmarkDots draws as many dots as a car with four rows of eight, eight, six
// and six holes has combinations.
func BenchmarkDots(b *testing.B) {
	for name, scale := range map[string]int{"1x": 1, "2x": 2} {
		b.Run(name, func(b *testing.B) {
			img := image.NewRGBA(image.Rect(0, 0, 1280*scale, 800*scale))
			c := raster.New(img, float64(72*scale))
			b.ReportAllocs()
			places := make([]vg.Point, 2304)
			for i := range places {
				places[i] = pt(math.Mod(float64(i)*37.31, 1280), math.Mod(float64(i)*11.77, 800))
			}
			for b.Loop() {
				for _, at := range places {
					c.Dot(at, 2.6, blackInk)
				}
			}
		})
	}
}
