package raster_test

import (
	"fmt"
	"image"
	"image/color"
	"testing"

	"bowline/plotting/raster"

	"gonum.org/v1/plot/vg"
)

// A hair's turn keeps text from being stamped: the outlines are filled where
// they are.
const hair = 1e-12

// Stamped text looks like filled outlines but for the rounding of its place,
// in any color, at the image's edges and beyond them.
func TestStampsLookLikeOutlines(t *testing.T) {
	for _, ink := range []color.Color{color.Black, color.NRGBA{R: 200, G: 30, B: 90, A: 120}} {
		for i := range 60 {
			at := pt(-8+float64(i)*3.37, -5+float64(i)*1.13)
			draw := func(angle float64) *image.RGBA {
				img := image.NewRGBA(image.Rect(0, 0, 180, 60))
				c := raster.New(img, 72)
				c.Clear(color.White)
				c.Rotate(angle)
				c.SetColor(ink)
				c.FillString(sans(11), at, "Squat 104.5 %")
				return img
			}
			if d := differenceOf(draw(0), draw(hair)); d.max > 17 {
				t.Fatalf("at %v in %v: %+v", at, ink, d)
			}
		}
	}
}

// Text that runs out of the image leaves the same pixels inside as on a larger
// one.
func TestStampsAreClippedAtTheEdges(t *testing.T) {
	draw := func(size, shift int) *image.RGBA {
		img := image.NewRGBA(image.Rect(0, 0, size, size))
		c := raster.New(img, 72)
		c.Clear(color.White)
		for i := range 5 {
			// y counts from the lower edge: both images have it at the same pixel.
			c.FillString(sans(14), pt(-9+float64(shift), float64(-4+9*i+shift)), "WAVE mph")
		}
		return img
	}
	const n, margin = 40, 30
	small, large := draw(n, 0), draw(n+2*margin, margin)
	dark := 0
	for y := range n {
		for x := range n {
			if got, want := small.RGBAAt(x, y), large.RGBAAt(x+margin, y+margin); got != want {
				t.Fatalf("pixel %d, %d is %v, on the larger image %v", x, y, got, want)
			}
			if small.RGBAAt(x, y).R < 128 {
				dark++
			}
		}
	}
	if dark < 100 {
		t.Errorf("only %d dark pixels: the test proves nothing", dark)
	}
}

// More letters, sizes and places than are kept are drawn as well as the first
// ones.
func TestStampsBeyondWhatIsKept(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 200, 40))
	c := raster.New(img, 72)
	first := func() *image.RGBA {
		c.Clear(color.White)
		c.FillString(sans(12), pt(3.3, 12.2), "Housing 2.5")
		kept := image.NewRGBA(img.Rect)
		copy(kept.Pix, img.Pix)
		return kept
	}
	before := first()
	for size := range 20 {
		c.FillString(sans(vg.Length(8+size)), pt(1, 5), "size")
	}
	for i := range 5000 {
		c.FillString(sans(12), pt(float64(i%97)*0.137, float64(i%89)*0.331), fmt.Sprint(i))
	}
	if d := differenceOf(before, first()); d.max > 0 {
		t.Errorf("the first text looks different: %+v", d)
	}
}

// Stamped text takes no memory once its letters are known.
func TestStampsTakeNoMemory(t *testing.T) {
	c, _ := pixels(200, 40)
	f := sans(12)
	draw := func() { c.FillString(f, pt(3, 12), "Lower bars 9,475 lb") }
	draw()
	if n := testing.AllocsPerRun(20, draw); n > 0 {
		t.Errorf("%v allocations", n)
	}
}
