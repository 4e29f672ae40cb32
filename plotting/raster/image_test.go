package raster_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gonum.org/v1/plot/vg"

	"bowline/plotting/raster"
)

// checks is an image of 8 x 4 pixels, all different, whose bounds do not begin
// at the origin.
func checks() *image.RGBA {
	img := image.NewRGBA(image.Rect(5, -3, 13, 1))
	for y := -3; y < 1; y++ {
		for x := 5; x < 13; x++ {
			img.SetRGBA(x, y, color.RGBA{R: uint8(20 * x), G: uint8(60 * (y + 3)), B: uint8(15*x + 10*y), A: 255})
		}
	}
	return img
}

// rect is a rectangle of plain numbers.
func rect(x0, y0, x1, y1 float64) vg.Rectangle { return vg.Rectangle{Min: pt(x0, y0), Max: pt(x1, y1)} }

// At its own size on whole pixels an image is copied, the first row on top.
func TestImageAtItsSize(t *testing.T) {
	c, img := pixels(20, 10)
	c.DrawImage(rect(6, 2, 14, 6), checks())
	for y := range 10 {
		for x := range 20 {
			want := color.RGBA{R: 255, G: 255, B: 255, A: 255}
			if x >= 6 && x < 14 && y >= 4 && y < 8 {
				want = checks().RGBAAt(5+x-6, -3+y-4)
			}
			if got := img.RGBAAt(x, y); got != want {
				t.Fatalf("pixel %d, %d is %v, want %v", x, y, got, want)
			}
		}
	}
}

// Transforms move, turn and mirror the image: its pixels, enlarged to blocks
// of 10 x 10, are found where their centers go.
func TestImageIsTransformed(t *testing.T) {
	src := checks()
	for name, transform := range map[string]func(*raster.Canvas){
		"moved":    func(c *raster.Canvas) { c.Translate(pt(100.5, 100.25)) },
		"turned":   func(c *raster.Canvas) { c.Translate(pt(100, 100)); c.Rotate(1.1) },
		"mirrored": func(c *raster.Canvas) { c.Translate(pt(100, 100)); c.Scale(-1, 1) },
		"sheared":  func(c *raster.Canvas) { c.Translate(pt(100, 100)); c.Rotate(0.4); c.Scale(1.2, 0.7); c.Rotate(0.5) },
	} {
		c, img := pixels(200, 200)
		transform(c)
		c.Push()
		c.DrawImage(rect(-40, -20, 40, 20), src)
		c.Pop()
		for j := range 4 {
			for i := range 8 {
				// A dot at the center of the block tells where it went.
				d, dots := pixels(200, 200)
				transform(d)
				d.Fill(circle(-35+10*float64(i), 15-10*float64(j), 1.5))
				x, y := darkest(dots)
				got, want := img.RGBAAt(x, y), src.RGBAAt(5+i, -3+j)
				// Bilinear: within a pixel of the center, a tenth of the
				// difference to the neighbors.
				for _, ch := range [][2]uint8{{got.R, want.R}, {got.G, want.G}, {got.B, want.B}} {
					near(t, name, float64(ch[0]), float64(ch[1]), 12)
				}
			}
		}
	}
}

// darkest returns the darkest pixel.
func darkest(img *image.RGBA) (bx, by int) {
	best := -1.0
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if v := dark(img, x, y); v > best {
				best, bx, by = v, x, y
			}
		}
	}
	return bx, by
}

func TestImageLikeGonum(t *testing.T) {
	// gonum's canvas misplaces an image whose bounds do not begin at the origin.
	src := image.NewRGBA(image.Rect(0, 0, 8, 4))
	for i, v := range checks().Pix {
		src.Pix[i] = v
	}
	for name, draw := range map[string]func(vg.CanvasSizer){
		"enlarged": func(c vg.CanvasSizer) { c.DrawImage(rect(20, 20, 180, 90), src) },
		"reduced":  func(c vg.CanvasSizer) { c.DrawImage(rect(20, 20, 22.25, 21.5), src) },
	} {
		if d := drawBoth(300, 150, draw, draw); d.mean > 1 || d.far > 0 {
			t.Errorf("%s: %+v", name, d)
		}
	}
}

// A translucent image blends.
func TestTranslucentImage(t *testing.T) {
	src := image.NewNRGBA(image.Rect(0, 0, 2, 2))
	for i := range 4 {
		src.SetNRGBA(i%2, i/2, color.NRGBA{R: 200, A: 128})
	}
	for _, side := range []float64{2, 7} {
		c, img := pixels(10, 10)
		c.DrawImage(rect(1, 1, 1+side, 1+side), src)
		got := img.RGBAAt(2, 7)
		near(t, "red", float64(got.R), 200*128.0/255+127, 2)
		near(t, "green", float64(got.G), 127, 2)
	}
}

func TestImageThatIsNotDrawn(t *testing.T) {
	nan := math.NaN()
	for _, r := range []vg.Rectangle{
		rect(3, 3, 3, 8), rect(3, 3, 8, 3), rect(nan, 3, 8, 8), rect(0, 0, math.Inf(1), 5), rect(0, 0, 1e-9, 1e-9),
		rect(-1e12, -1e12, 1e12, 1e12), rect(400, 400, 500, 500), rect(1e15, 0, 1e15+8, 4), rect(-5e8, 1, -4e8, 2),
	} {
		c, img := pixels(10, 10)
		c.DrawImage(r, checks())
		near(t, "area", darkArea(img), 0, 0)
		c.DrawImage(rect(0, 0, 10, 10), image.NewRGBA(image.Rectangle{}))
		c.DrawImage(rect(0, 0, 10, 10), image.Black)
		near(t, "area", darkArea(img), 0, 0)
	}
}
