package raster_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"

	"bowline/plotting/raster"
)

// number draws coordinates, angles and lengths: mostly near the image, at times
// anything a float64 can hold.
var number = rapid.Custom(func(t *rapid.T) float64 {
	switch rapid.IntRange(0, 9).Draw(t, "kind") {
	case 0:
		return rapid.SampledFrom([]float64{
			math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64,
			0, math.Copysign(0, -1), 1e75, -1e74, 1e38, -1e20, 1e12, -1 << 25, 1 << 31,
		}).Draw(t, "extreme")
	case 1:
		return math.Copysign(math.Exp(rapid.Float64Range(-30, 180).Draw(t, "exponent")), rapid.Float64Range(-1, 1).Draw(t, "sign"))
	case 2:
		return float64(rapid.IntRange(-5, 70).Draw(t, "whole"))
	}
	return rapid.Float64Range(-60, 120).Draw(t, "near")
})

// length draws a number as a length.
func length(t *rapid.T, label string) vg.Length { return vg.Length(number.Draw(t, label)) }

// drawPoint draws a point.
func drawPoint(t *rapid.T) vg.Point { return vg.Point{X: length(t, "x"), Y: length(t, "y")} }

// drawPath draws a path of any components in any order.
func drawPath(t *rapid.T) vg.Path {
	var p vg.Path
	for range rapid.IntRange(0, 12).Draw(t, "components") {
		switch rapid.IntRange(0, 6).Draw(t, "component") {
		case 0:
			p.Move(drawPoint(t))
		case 1, 2:
			p.Line(drawPoint(t))
		case 3:
			p.Arc(drawPoint(t), length(t, "radius"), number.Draw(t, "start"), number.Draw(t, "sweep"))
		case 4:
			p.QuadTo(drawPoint(t), drawPoint(t))
		case 5:
			p.CubeTo(drawPoint(t), drawPoint(t), drawPoint(t))
		case 6:
			p.Close()
		}
	}
	return p
}

// drawStep does one thing to the canvas.
func drawStep(t *rapid.T, c *raster.Canvas) {
	switch rapid.IntRange(0, 11).Draw(t, "step") {
	case 0:
		c.SetLineWidth(length(t, "width"))
	case 1:
		pattern := make([]vg.Length, rapid.IntRange(0, 5).Draw(t, "dashes"))
		for i := range pattern {
			pattern[i] = length(t, "dash")
			if rapid.Bool().Draw(t, "positive") {
				pattern[i] = vg.Length(math.Abs(float64(pattern[i])))
			}
		}
		c.SetLineDash(pattern, length(t, "offset"))
	case 2:
		c.SetColor(color.NRGBA{R: 250, G: rapid.Byte().Draw(t, "green"), A: rapid.Byte().Draw(t, "alpha")})
	case 3:
		c.SetLineCap(raster.LineCap(rapid.IntRange(0, 1).Draw(t, "cap")))
	case 4:
		c.Push()
		c.Rotate(number.Draw(t, "angle"))
	case 5:
		c.Push()
		c.Translate(drawPoint(t))
	case 6:
		c.Push()
		c.Scale(number.Draw(t, "sx"), number.Draw(t, "sy"))
	case 7:
		c.FillString(sans(length(t, "size")), drawPoint(t), "AV.g")
	case 8, 9:
		c.Stroke(drawPath(t))
	default:
		c.Fill(drawPath(t))
	}
}

// checkCanvas draws anything: nothing may panic, run on without end, reach
// beyond the image, or leave a pixel that is no color.
func checkCanvas(t *rapid.T) {
	whole := image.NewRGBA(image.Rect(-9, -7, 60, 50))
	for i := range whole.Pix {
		whole.Pix[i] = 0x5a
	}
	inner := image.Rect(0, 0, 41, 33)
	c := raster.New(whole.SubImage(inner).(*image.RGBA), rapid.SampledFrom([]float64{72, 96, 250}).Draw(t, "dpi"))
	c.Clear(color.White)
	for range rapid.IntRange(1, 12).Draw(t, "steps") {
		drawStep(t, c)
	}
	for y := -7; y < 50; y++ {
		for x := -9; x < 60; x++ {
			got := whole.RGBAAt(x, y)
			if !image.Pt(x, y).In(inner) {
				if got != (color.RGBA{R: 0x5a, G: 0x5a, B: 0x5a, A: 0x5a}) {
					t.Fatalf("pixel %d, %d outside the image is %v", x, y, got)
				}
			} else if got.A != 255 {
				t.Fatalf("pixel %d, %d of an opaque picture is %v", x, y, got)
			}
		}
	}
}

func TestAnythingCanBeDrawn(t *testing.T) { rapid.Check(t, checkCanvas) }

func FuzzAnythingCanBeDrawn(f *testing.F) { f.Fuzz(rapid.MakeFuzz(checkCanvas)) }

// Lines from far away cross the image where they should.
func TestFarLines(t *testing.T) {
	for _, far := range []float64{1e3, 1e6, 1e9, 1e15, 1e30, 1e70} {
		// Level, upright, and through the center at the slope one.
		c, img := pixels(40, 40)
		c.SetLineWidth(2)
		c.Stroke(polyline(-far, 10, far, 10))
		c.Stroke(polyline(30, far, 30, -far))
		near(t, "level", dark(img, 5, 29)+dark(img, 5, 30), 2, 2*level)
		near(t, "upright", dark(img, 29, 20)+dark(img, 30, 20), 2, 2*level)
		near(t, "area", darkArea(img), 2*40+2*40-4, 0.1)

		c, img = pixels(40, 40)
		c.Fill(polygon(-far, -far, far, -far, far, 10, -far, 10))
		near(t, "filled", darkArea(img), 400, 0.1)

		// Further out, a float64 no longer tells the line from its neighbors.
		if far < 1e12 {
			c, img = pixels(40, 40)
			c.SetLineWidth(2)
			c.Stroke(polyline(-far, -far, far, far))
			near(t, "sloping", dark(img, 20, 19), 1, level)
			// Half of it is dashed away.
			c, img = pixels(40, 40)
			c.SetLineDash([]vg.Length{2, 2}, 0)
			c.Stroke(polyline(-far, -far, far, far))
			near(t, "dashed", darkArea(img), 40*math.Sqrt2/2, 2)
		}
	}
}
