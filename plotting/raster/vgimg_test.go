package raster_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"bowline/plotting/raster"
)

// The pictures of gonum's own raster canvas (gonum/plot v0.17.0, vg/vgimg, drawn
// by git.sr.ht/~sbinet/gg) are the outside check of everything here. It shares
// the scan conversion, but neither the flattening of curves, the stroking, the
// dashes, the text nor the blending.

// picture is something to draw both ways, and how far the results may differ.
type picture struct {
	name string
	draw func(vg.CanvasSizer)
	mean float64 // Largest mean difference over the touched pixels [levels].
	far  float64 // Largest fraction of touched pixels more than 40 levels apart.
}

var pictures = []picture{
	{"lines", func(c vg.CanvasSizer) {
		for i := range 12 {
			a := float64(i)
			c.SetLineWidth(vg.Length(0.3 + 0.4*a))
			c.Stroke(polyline(20+5*a, 20, 280-20*a, 130))
		}
	}, 2, 0},
	{"polyline with round joins", func(c vg.CanvasSizer) {
		c.SetLineWidth(9)
		c.Stroke(polyline(20, 20, 90, 120, 120, 30, 250, 40, 160, 60, 260, 130))
	}, 1, 0},
	{"dashes with offset", func(c vg.CanvasSizer) {
		for i := range 8 {
			c.SetLineDash([]vg.Length{7, 3, 2, 3}, vg.Length(2.5*float64(i)))
			c.SetLineWidth(vg.Length(0.7 + 0.5*float64(i)))
			c.Stroke(polyline(20, 20+15*float64(i), 150, 15+15*float64(i), 280, 35+12*float64(i)))
		}
	}, 2, 0},
	{"dashes with negative offset", func(c vg.CanvasSizer) {
		c.SetLineDash([]vg.Length{9, 4}, -5)
		c.SetLineWidth(3)
		c.Stroke(polyline(20, 20, 280, 120))
	}, 2, 0},
	{"one dash length", func(c vg.CanvasSizer) {
		c.SetLineDash([]vg.Length{6}, 2)
		c.Stroke(polyline(20, 20, 280, 120))
	}, 3.5, 0},
	{"arcs", func(c vg.CanvasSizer) {
		for i := range 6 {
			a := float64(i)
			var p vg.Path
			p.Move(pt(40+40*a, 30))
			p.Arc(pt(40+40*a, 60), 18, 0.3*a, 1+0.9*a)
			c.SetLineWidth(vg.Length(1 + 0.5*a))
			c.Stroke(p)
			var q vg.Path
			q.Arc(pt(40+40*a, 115), 15, a, -1-0.8*a)
			q.Close()
			c.Fill(q)
		}
	}, 2, 0},
	{"curves", func(c vg.CanvasSizer) {
		var p vg.Path
		p.Move(pt(20, 20))
		p.QuadTo(pt(80, 160), pt(140, 30))
		p.CubeTo(pt(170, -40), pt(200, 190), pt(270, 60))
		c.SetLineWidth(2)
		c.Stroke(p)
		var q vg.Path
		q.Move(pt(30, 120))
		q.CubeTo(pt(60, 60), pt(100, 160), pt(130, 110))
		q.QuadTo(pt(80, 130), pt(30, 120))
		q.Close()
		c.Fill(q)
	}, 2, 0},
	{"translucent fills", func(c vg.CanvasSizer) {
		for i, col := range []color.Color{
			color.NRGBA{R: 200, G: 40, B: 20, A: 90}, color.NRGBA{R: 20, G: 160, B: 40, A: 130}, color.NRGBA{B: 220, A: 200},
		} {
			a := float64(i)
			c.SetColor(col)
			c.Fill(polygon(30+50*a, 20, 150+50*a, 40.5, 120+50*a, 130, 20+40*a, 100))
			c.Fill(circle(100+40*a, 70, 40))
		}
	}, 0.5, 0},
	{"star of both windings", func(c vg.CanvasSizer) {
		c.Fill(polygon(150, 140, 120, 20, 210, 100, 90, 100, 180, 20))
		c.Fill(append(polygon(20, 20, 80, 20, 80, 120, 20, 120), polygon(40, 40, 40, 80, 60, 80, 60, 40)...))
	}, 0.1, 0},
	{"transforms", func(c vg.CanvasSizer) {
		c.Translate(pt(150, 70))
		for range 7 {
			c.Push()
			c.Rotate(0.4)
			c.SetColor(color.RGBA{R: 120, A: 255})
			c.Stroke(polyline(20, 0, 60, 8))
			c.Pop()
			c.Rotate(2 * math.Pi / 7)
			c.Scale(1, -1)
			c.Fill(polygon(30, 20, 50, 20, 44, 31))
		}
	}, 2, 0},
	// gonum's canvas rounds every point of an outline and every advance to 1/64
	// pixel and draws curves with fewer chords. It reads kerning in font units as
	// 1/64 pixels, whatever the size, so these strings have no kerned pairs.
	{"text", func(c vg.CanvasSizer) {
		for i, size := range []vg.Length{6, 8, 10, 14, 24} {
			c.FillString(sans(size), pt(20, 15+22*float64(i)), "ghmnou 20.5 mm (chassis)")
		}
	}, 9, 0.005},
	// Turned glyphs are resampled from upright ones there, which blurs them.
	{"turned text", func(c vg.CanvasSizer) {
		c.Translate(pt(40, 20))
		c.Rotate(0.4)
		c.FillString(sans(20), pt(0, 0), "chassis mm")
		c.Rotate(math.Pi/2 - 0.4)
		c.FillString(sans(14), pt(0, -5), "chassis")
	}, 35, 0.3},
	{"chart", drawChart, 8, 0.04},
	{"chart without text", func(c vg.CanvasSizer) {
		p := newChart()
		for _, s := range []*draw.TextStyle{
			&p.Title.TextStyle, &p.X.Label.TextStyle, &p.Y.Label.TextStyle,
			&p.X.Tick.Label, &p.Y.Tick.Label, &p.Legend.TextStyle,
		} {
			s.Color = color.Transparent
		}
		p.Draw(draw.New(c))
	}, 2.5, 0},
	{"side view", newSideView().draw, 2.5, 0.01},
}

// sizeOf returns the pixels of a picture: those of the benchmarks, or 400 x 200.
func sizeOf(name string) (w, h int) {
	switch name {
	case "chart", "chart without text":
		return 700, 400
	case "side view":
		return 1000, 600
	}
	return 400, 200
}

// drawBoth draws the two versions of a picture.
func drawBoth(w, h int, ours, theirs func(vg.CanvasSizer)) difference {
	a := image.NewRGBA(image.Rect(0, 0, w, h))
	c := raster.New(a, 96)
	c.Clear(color.White)
	ours(c)
	b := image.NewRGBA(a.Rect)
	theirs(onImage(b))
	return differenceOf(a, b)
}

func TestLooksLikeGonum(t *testing.T) {
	for _, p := range pictures {
		t.Run(p.name, func(t *testing.T) {
			w, h := sizeOf(p.name)
			d := drawBoth(w, h, p.draw, p.draw)
			if d.mean > p.mean || d.far > p.far {
				t.Errorf("mean difference %.2f levels with %.2f %% of pixels far off, want at most %.2f and %.2f %%",
					d.mean, 100*d.far, p.mean, 100*p.far)
			}
		})
	}
}

// A comparison that cannot tell small mistakes is worth nothing: each of these
// must exceed the tolerance of the picture it belongs to.
func TestComparisonSeesMistakes(t *testing.T) {
	dashed := func(offset, width vg.Length) func(vg.CanvasSizer) {
		return func(c vg.CanvasSizer) {
			c.SetLineDash([]vg.Length{7, 3, 2, 3}, offset)
			c.SetLineWidth(width)
			c.Stroke(polyline(20, 20, 280, 120))
		}
	}
	text := func(x float64, s string) func(vg.CanvasSizer) {
		return func(c vg.CanvasSizer) { c.FillString(sans(10), pt(x, 20), s) }
	}
	for _, m := range []struct {
		picture      string
		ours, theirs func(vg.CanvasSizer)
	}{
		{"dashes with offset", dashed(0.5, 2), dashed(0, 2)},
		{"dashes with offset", dashed(0, 2), dashed(0, 2.2)},
		{"lines", shifted(0.1, 0, dashed(0, 2)), dashed(0, 2)},
		{"translucent fills", filled(127), filled(129)},
		{"text", text(20.25, "chassis"), text(20, "chassis")},
		{"text", text(20, "chassis 5"), text(20, "chassis 6")},
		{"turned text", turned(0.44), turned(0.4)},
	} {
		d := drawBoth(400, 200, m.ours, m.theirs)
		for _, p := range pictures {
			if p.name == m.picture && d.mean <= p.mean && d.far <= p.far {
				t.Errorf("%s: a mistake passes with a difference of %+v", m.picture, d)
			}
		}
	}
}

// shifted moves a drawing by a distance in points.
func shifted(x, y float64, draw func(vg.CanvasSizer)) func(vg.CanvasSizer) {
	return func(c vg.CanvasSizer) {
		c.Translate(pt(x, y))
		draw(c)
	}
}

// filled fills a square with a translucent color.
func filled(alpha uint8) func(vg.CanvasSizer) {
	return func(c vg.CanvasSizer) {
		c.SetColor(color.NRGBA{R: 40, G: 60, B: 90, A: alpha})
		c.Fill(polygon(20, 20, 120, 20, 120, 110, 20, 110))
	}
}

// turned writes a text at an angle.
func turned(angle float64) func(vg.CanvasSizer) {
	return func(c vg.CanvasSizer) {
		c.Translate(pt(40, 20))
		c.Rotate(angle)
		c.FillString(sans(20), vg.Point{}, "chassis mm")
	}
}
