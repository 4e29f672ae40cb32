package raster_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"git.sr.ht/~sbinet/gg"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"

	"bowline/plotting/raster"
)

// onImage returns gonum's own raster canvas on an existing image, which it
// turns white.
func onImage(img *image.RGBA) *vgimg.Canvas {
	ctx := gg.NewContextForRGBA(img)
	ctx.SetLineCapButt()
	ctx.InvertY()
	return vgimg.NewWith(vgimg.UseImageWithContext(img, ctx))
}

// pixels returns a canvas on a white image of w x h pixels with a resolution
// of one pixel per point, so that tests count in pixels.
func pixels(w, h int) (*raster.Canvas, *image.RGBA) {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	c := raster.New(img, vg.Inch.Points())
	c.Clear(color.White)
	return c, img
}

// pt is a vg.Point of plain numbers.
func pt(x, y float64) vg.Point { return vg.Point{X: vg.Length(x), Y: vg.Length(y)} }

// polyline returns the path through the points given as x, y, x, y, ...
func polyline(xy ...float64) vg.Path {
	var p vg.Path
	p.Move(pt(xy[0], xy[1]))
	for i := 2; i < len(xy); i += 2 {
		p.Line(pt(xy[i], xy[i+1]))
	}
	return p
}

// polygon returns the closed path through the points.
func polygon(xy ...float64) vg.Path {
	p := polyline(xy...)
	p.Close()
	return p
}

// circle returns the path of a full circle.
func circle(x, y, r float64) vg.Path {
	var p vg.Path
	p.Arc(pt(x, y), vg.Length(r), 0, 2*math.Pi)
	p.Close()
	return p
}

// dark returns how far a pixel of a black drawing on white is covered, 0 to 1,
// counting rows from the top.
func dark(img *image.RGBA, x, y int) float64 {
	return float64(255-img.RGBAAt(x, y).G) / 255
}

// darkArea returns the area covered by a black drawing on white [px²].
func darkArea(img *image.RGBA) float64 {
	sum := 0.0
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			sum += dark(img, x, y)
		}
	}
	return sum
}

// near fails the test unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.5g, want %.5g within %.2g", what, got, want, tol)
	}
}

// level is the error of one 8-bit level, twice: that of rounding coverage and of
// rounding the blend.
const level = 2.0 / 255

// difference says how far two pictures differ, over the pixels that are not
// white in both.
type difference struct {
	mean float64 // Mean absolute difference of a color channel [levels of 255].
	far  float64 // Fraction of pixels with a channel more than 40 levels apart.
	max  int     // Largest difference of a channel [levels].
}

// differenceOf compares two pictures of the same size.
func differenceOf(a, b *image.RGBA) difference {
	var d difference
	touched, far, sum := 0, 0, 0
	white := color.RGBA{R: 255, G: 255, B: 255, A: 255}
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			p, q := a.RGBAAt(x+a.Rect.Min.X, y+a.Rect.Min.Y), b.RGBAAt(x+b.Rect.Min.X, y+b.Rect.Min.Y)
			if p == white && q == white {
				continue
			}
			touched++
			worst := 0
			for _, pair := range [][2]uint8{{p.R, q.R}, {p.G, q.G}, {p.B, q.B}} {
				diff := max(int(pair[0])-int(pair[1]), int(pair[1])-int(pair[0]))
				sum += diff
				worst = max(worst, diff)
			}
			if worst > 40 {
				far++
			}
			d.max = max(d.max, worst)
		}
	}
	if touched > 0 {
		d.mean = float64(sum) / float64(3*touched)
		d.far = float64(far) / float64(touched)
	}
	return d
}
