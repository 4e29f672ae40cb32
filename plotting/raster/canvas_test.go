package raster_test

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"

	"bowline/plotting/raster"
)

func TestSize(t *testing.T) {
	img := image.NewRGBA(image.Rect(3, 4, 3+192, 4+48))
	c := raster.New(img, 96)
	w, h := c.Size()
	near(t, "width", w.Points(), 144, 1e-12)
	near(t, "height", h.Points(), 36, 1e-12)
}

// The whole state is saved and restored.
func TestPushAndPop(t *testing.T) {
	draw := func(c *raster.Canvas) {
		c.Stroke(polyline(5, 5, 40, 30, 60, 5))
		c.Fill(circle(70, 20, 6))
	}
	setUp := func(c *raster.Canvas) {
		c.Translate(pt(3, 2))
		c.SetColor(color.RGBA{R: 200, A: 255})
		c.SetLineWidth(5)
		c.SetLineDash([]vg.Length{12, 6}, 3)
		c.SetLineCap(raster.RoundCap)
	}
	a, want := pixels(100, 50)
	setUp(a)
	draw(a)
	b, got := pixels(100, 50)
	setUp(b)
	b.Push()
	b.Push()
	b.Rotate(0.3)
	b.Scale(2, 3)
	b.Translate(pt(8, 9))
	b.SetColor(nil)
	b.SetLineWidth(1)
	b.SetLineDash(nil, 0)
	b.SetLineCap(raster.ButtCap)
	b.Pop()
	b.Pop()
	draw(b)
	if !bytes.Equal(got.Pix, want.Pix) {
		t.Error("the state after Pop is not that before Push")
	}
	// Reset brings back the state of a new canvas.
	b.Push()
	b.Reset(got, 72)
	b.Clear(color.White)
	draw(b)
	c, fresh := pixels(100, 50)
	draw(c)
	if !bytes.Equal(got.Pix, fresh.Pix) {
		t.Error("the state after Reset is not that of a new canvas")
	}
}

// Transforms apply to what is drawn after them, innermost last.
func TestTransformOrder(t *testing.T) {
	c, img := pixels(100, 100)
	c.Translate(pt(50, 20))
	c.Rotate(math.Pi / 2)
	c.Scale(2, 1)
	// x runs up from (50, 20), twice as long; y runs left.
	c.Fill(polygon(10, 0, 20, 0, 20, 5, 10, 5))
	near(t, "area", darkArea(img), 20*5, 0.1)
	for _, at := range []image.Point{{45, 100 - 60}, {49, 100 - 41}, {46, 100 - 50}} {
		near(t, "inside", dark(img, at.X, at.Y), 1, level)
	}
}

func TestColors(t *testing.T) {
	for _, k := range []struct {
		col  color.Color
		want color.RGBA
	}{
		{nil, color.RGBA{A: 255}},
		{color.White, color.RGBA{R: 255, G: 255, B: 255, A: 255}},
		{color.NRGBA{R: 255, G: 128, A: 128}, color.RGBA{R: 128, G: 64, A: 128}},
		{color.Transparent, color.RGBA{}},
	} {
		img := image.NewRGBA(image.Rect(0, 0, 9, 3))
		c := raster.New(img, 72)
		c.Clear(k.col)
		for y := range 3 {
			for x := range 9 {
				if got := img.RGBAAt(x, y); got != k.want {
					t.Fatalf("%v at %d, %d: %v, want %v", k.col, x, y, got, k.want)
				}
			}
		}
		c.Clear(color.Transparent)
		c.SetColor(k.col)
		c.Fill(polygon(0, 0, 9, 0, 9, 3, 0, 3))
		if got := img.RGBAAt(4, 1); got != k.want {
			t.Errorf("%v filled: %v, want %v", k.col, got, k.want)
		}
	}
}

// A canvas on part of an image leaves the rest alone.
func TestPartOfAnImage(t *testing.T) {
	whole := image.NewRGBA(image.Rect(-10, -10, 90, 70))
	inner := image.Rect(13, 7, 64, 48)
	c := raster.New(whole.SubImage(inner).(*image.RGBA), 72)
	c.Clear(color.White)
	c.Fill(polygon(-100, -100, 200, -100, 200, 300))
	c.SetColor(color.NRGBA{R: 255, A: 100})
	c.Fill(polygon(-100, -100, 200, -100, 200, 300, -100, 300))
	c.SetLineWidth(30)
	c.Stroke(circle(20, 20, 30))
	c.FillString(sans(60), pt(-10, 10), "part")
	for y := -10; y < 70; y++ {
		for x := -10; x < 90; x++ {
			got := whole.RGBAAt(x, y)
			if in := image.Pt(x, y).In(inner); in != (got.A == 255) {
				t.Fatalf("pixel %d, %d is %v", x, y, got)
			}
		}
	}
}

func TestEmptyImage(t *testing.T) {
	for _, r := range []image.Rectangle{{}, image.Rect(0, 0, 0, 10), image.Rect(0, 0, 10, 0)} {
		c := raster.New(image.NewRGBA(r), 96)
		c.Clear(color.White)
		newSideView().draw(c)
	}
}

// The largest images are drawn on right to their far corner.
func TestLargestImages(t *testing.T) {
	const side = 32768
	for _, size := range []image.Point{{side, 20}, {20, side}} {
		c, img := pixels(size.X, size.Y)
		w, h := float64(size.X), float64(size.Y)
		c.Fill(polygon(w-10, 0, w, 0, w, 10))
		c.Fill(polygon(0, h, 10, h, 0, h-10))
		c.FillString(sans(12), pt(w-20, 4), "l")
		near(t, "lower right", darkArea(img.SubImage(image.Rect(size.X-10, size.Y-10, size.X, size.Y)).(*image.RGBA)), 50, 0.1)
		near(t, "upper left", darkArea(img.SubImage(image.Rect(0, 0, 10, 10)).(*image.RGBA)), 50, 0.1)
	}
}

// Programming errors are named.
func TestPanics(t *testing.T) {
	c, _ := pixels(10, 10)
	img := image.NewRGBA(image.Rect(0, 0, 10, 10))
	for want, f := range map[string]func(){
		"nil image":          func() { raster.New(nil, 96) },
		"resolution of 0":    func() { raster.New(img, 0) },
		"resolution of -1":   func() { raster.New(img, -1) },
		"resolution of NaN":  func() { raster.New(img, math.NaN()) },
		"resolution of +Inf": func() { raster.New(img, math.Inf(1)) },
		"image of (32769,1)": func() { raster.New(image.NewRGBA(image.Rect(0, 0, 32769, 1)), 96) },
		"Pop without Push":   func() { c.Pop() },
		"unknown path":       func() { c.Fill(append(polyline(1, 1, 5, 5), vg.PathComp{Type: 77})) },
		"0 control points":   func() { c.Stroke(append(polyline(1, 1, 5, 5), vg.PathComp{Type: vg.CurveComp})) },
		"want 1 or 2":        func() { c.Fill(vg.Path{{Type: vg.CurveComp, Control: make([]vg.Point, 3)}}) },
	} {
		func() {
			defer func() {
				if got, ok := recover().(string); !ok || !strings.Contains(got, want) {
					t.Errorf("panic %q, want one that says %q", got, want)
				}
			}()
			f()
		}()
	}
}

// Drawing allocates nothing once the scratch memory has grown.
func TestAllocations(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 1000, 600))
	c := raster.New(img, 96)
	scene := newSideView()
	frame := func() {
		c.Reset(img, 96)
		scene.draw(c)
	}
	frame()
	if n := testing.AllocsPerRun(5, frame); n > 0 {
		t.Errorf("%v allocations per frame", n)
	}
}
