package raster_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gonum.org/v1/plot/vg"

	"bowline/plotting/raster"
)

// The coverage of a pixel is the area of the shape within it.
func TestCoverageOfAPixel(t *testing.T) {
	for _, k := range []struct {
		name string
		path vg.Path
		want float64
	}{
		{"left half", polygon(1, 1, 1.5, 1, 1.5, 2, 1, 2), 0.5},
		{"lower half", polygon(1, 1, 2, 1, 2, 1.5, 1, 1.5), 0.5},
		{"all", polygon(1, 1, 2, 1, 2, 2, 1, 2), 1},
		{"more than all", polygon(0, 0, 3, 0, 3, 3, 0, 3), 1},
		{"quarter within", polygon(1.25, 1.25, 1.75, 1.25, 1.75, 1.75, 1.25, 1.75), 0.25},
		{"sliver of 1/16", polygon(1.5, 1, 1.5625, 1, 1.5625, 2, 1.5, 2), 1.0 / 16},
		{"triangle", polygon(1, 1, 2, 1, 1, 2), 0.5},
		{"small triangle", polygon(1, 1, 1.5, 1, 1, 1.5), 0.125},
		{"trapezoid", polygon(1, 1, 2, 1, 2, 1.25, 1, 1.75), 0.5},
		{"wound twice", append(polygon(0, 0, 3, 0, 3, 3, 0, 3), polygon(1, 1, 2, 1, 2, 2, 1, 2)...), 1},
		{"wound both ways", append(polygon(0, 0, 3, 0, 3, 3, 0, 3), polygon(1, 1, 1, 2, 2, 2, 2, 1)...), 0},
		{"open", polyline(1, 1, 2, 1, 1, 2), 0.5},
		{"touching from outside", polygon(0, 0, 1, 0, 1, 3, 0, 3), 0},
		{"beyond the image", polygon(-1e9, -1e9, 1.5, -1e9, 1.5, 1e9, -1e9, 1e9), 0.5},
		{"turned far beyond the image", polygon(1, 1, 1+1e6, 1, 1+1e6, 1+1e6), 0.5},
	} {
		c, img := pixels(3, 3)
		c.Fill(k.path)
		near(t, k.name, dark(img, 1, 1), k.want, level)
	}
}

// A rectangle takes a fast path; one corner more makes it take the general one.
func TestRectangleIsFilledLikeAnyPolygon(t *testing.T) {
	edges := []float64{-7.3, 0, 0.5, 1, 1.015625, 3.3, 3.9, 6, 7.75, 9.5, 12, 30}
	for _, col := range []color.Color{color.Black, color.NRGBA{R: 200, G: 30, B: 90, A: 140}} {
		for i, x0 := range edges {
			for _, x1 := range edges[i:] {
				for j, y0 := range edges {
					for _, y1 := range edges[j:] {
						a, fast := pixels(12, 12)
						a.SetColor(col)
						a.Fill(polygon(x0, y0, x1, y0, x1, y1, x0, y1))
						b, general := pixels(12, 12)
						b.SetColor(col)
						b.Fill(polygon(x0, y0, (x0+x1)/2, y0, x1, y0, x1, y1, x0, y1))
						if d := differenceOf(fast, general); d.max > 0 {
							t.Fatalf("rectangle %v to %v, %v to %v: %+v", x0, x1, y0, y1, d)
						}
					}
				}
			}
		}
	}
}

func TestAreas(t *testing.T) {
	for _, k := range []struct {
		name string
		path vg.Path
		want float64
	}{
		{"disc", circle(50, 50, 30), math.Pi * 30 * 30},
		{"small disc", circle(50.3, 50.6, 3), math.Pi * 3 * 3},
		{"sector", sector(50, 50, 40, 0.3, 1.1), 40 * 40 * 1.1 / 2},
		{"sector the other way", sector(50, 50, 40, 0.3, -1.1), 40 * 40 * 1.1 / 2},
		// Under a parabola: two thirds of width times height, the control point
		// standing twice as high as the vertex.
		{"parabola", quadratic(10, 10, 50, 130, 90, 10), 2.0 / 3 * 80 * 60},
		{"the parabola as a cubic", cubicOf(10, 10, 50, 130, 90, 10), 2.0 / 3 * 80 * 60},
	} {
		c, img := pixels(100, 100)
		c.Fill(k.path)
		near(t, k.name, darkArea(img), k.want, 0.002*k.want)
	}
}

// An arc of any number of turns is a circle, whose rim adds up.
func TestArcOfManyTurns(t *testing.T) {
	for _, sweep := range []float64{7, -50, 1e9, -1e300} {
		c, img := pixels(100, 100)
		c.Fill(circleOf(50, 50, 30, sweep))
		near(t, "disc", darkArea(img), math.Pi*30*30, 2*math.Pi*30*0.5)
	}
}

// sector returns a slice of a disc.
func sector(x, y, r, start, sweep float64) vg.Path {
	var p vg.Path
	p.Move(pt(x, y))
	p.Arc(pt(x, y), vg.Length(r), start, sweep)
	p.Close()
	return p
}

// circleOf returns a path that runs around a circle for an angle.
func circleOf(x, y, r, sweep float64) vg.Path {
	var p vg.Path
	p.Arc(pt(x, y), vg.Length(r), 0, sweep)
	return p
}

// quadratic returns a quadratic Bézier curve.
func quadratic(x0, y0, x1, y1, x2, y2 float64) vg.Path {
	var p vg.Path
	p.Move(pt(x0, y0))
	p.QuadTo(pt(x1, y1), pt(x2, y2))
	return p
}

// cubicOf returns the same curve of degree three: its control points lie two
// thirds of the way to the one of degree two.
func cubicOf(x0, y0, x1, y1, x2, y2 float64) vg.Path {
	var p vg.Path
	p.Move(pt(x0, y0))
	p.CubeTo(pt(x0+2*(x1-x0)/3, y0+2*(y1-y0)/3), pt(x2+2*(x1-x2)/3, y2+2*(y1-y2)/3), pt(x2, y2))
	return p
}

// A disc so large that its rim is a straight line: x = 5.5 within 10^-4 px.
func TestRimOfAHugeDisc(t *testing.T) {
	const r = 1e7
	for _, path := range []vg.Path{circle(5.5-r, 20, r), circle(5.5-r, 20.3, r)} {
		c, img := pixels(10, 40)
		c.Fill(path)
		for y := range 40 {
			near(t, "inside", dark(img, 4, y), 1, level)
			// The rim may stray by the flatness of 1/32 px.
			near(t, "rim", dark(img, 5, y), 0.5, 1.0/32+level)
			near(t, "outside", dark(img, 6, y), 0, 0)
		}
	}
}

// What a small image shows of a large drawing is the same as that part of the
// large image.
func TestClippingDoesNotShow(t *testing.T) {
	draw := func(c *raster.Canvas) {
		for i := range 40 {
			a := float64(i)
			c.SetColor(color.NRGBA{R: uint8(5 * i), G: uint8(200 - 4*i), B: 120, A: 180})
			x, y := 150+140*math.Sin(2.1*a), 150+140*math.Cos(1.7*a)
			c.Fill(polygon(x, y, 150-y/2, x, y+20, 300-x))
			c.Fill(circle(y, x, 3+a))
			c.SetLineWidth(vg.Length(0.5 + a/4))
			c.SetLineCap(raster.LineCap(i % 2))
			c.SetLineDash([][]vg.Length{nil, {9, 5}, {0, 7, 3}}[i%3], vg.Length(a))
			c.Stroke(polyline(x, y, y, x, 300-x, y))
			c.Stroke(circle(x, y, 10+2*a))
			c.FillString(sans(18), pt(x, y), "clip")
		}
	}
	large := image.NewRGBA(image.Rect(0, 0, 300, 300))
	c := raster.New(large, 72)
	c.Clear(color.White)
	draw(c)
	for _, at := range []image.Point{{120, 120}, {0, 250}, {240, 10}, {133, 71}} {
		part := image.Rectangle{Min: at, Max: at.Add(image.Pt(50, 40))}
		small := image.NewRGBA(part)
		c := raster.New(small, 72)
		c.Clear(color.White)
		// The lower left corner of the part becomes the origin.
		c.Translate(pt(-float64(part.Min.X), -float64(300-part.Max.Y)))
		draw(c)
		d := differenceOf(small, large.SubImage(part).(*image.RGBA))
		// Edges cut at the border are rounded anew to 1/64 px, once per shape.
		if d.max > 12 || d.mean > 0.1 {
			t.Errorf("part at %v: %+v", at, d)
		}
	}
}

// Colors blend by "source over destination" on premultiplied values.
func TestBlending(t *testing.T) {
	below := []color.RGBA{{}, {R: 255, G: 255, B: 255, A: 255}, {A: 255}, {R: 10, G: 60, B: 90, A: 120}, {R: 77, G: 200, B: 3, A: 255}}
	above := []color.NRGBA{{A: 255}, {R: 255, G: 10, B: 40, A: 255}, {R: 255, G: 120, B: 1, A: 128}, {G: 255, A: 1}, {R: 90, G: 90, B: 90, A: 254}, {}}
	const half = 0.5 // Coverage of the pixel at the edge.
	for _, dst := range below {
		for _, src := range above {
			img := image.NewRGBA(image.Rect(0, 0, 40, 2))
			c := raster.New(img, 72)
			c.Clear(dst)
			c.SetColor(src)
			c.Fill(polygon(0, 0, 20.5, 0, 20.5, 2, 0, 2))
			for x, cover := range map[int]float64{3: 1, 19: 1, 20: half, 21: 0} {
				alpha := float64(src.A) / 255 * cover
				over := func(s, d uint8, what string) {
					t.Helper()
					got := map[string]uint8{"r": img.RGBAAt(x, 1).R, "g": img.RGBAAt(x, 1).G, "b": img.RGBAAt(x, 1).B, "a": img.RGBAAt(x, 1).A}[what]
					near(t, what, float64(got), alpha*float64(s)+(1-alpha)*float64(d), 1.6)
				}
				over(src.R, dst.R, "r")
				over(src.G, dst.G, "g")
				over(src.B, dst.B, "b")
				over(255, dst.A, "a")
			}
		}
	}
}

// A color whose channels exceed its alpha is no color; it must not spill from
// one channel into the next.
func TestImpossibleColor(t *testing.T) {
	c, img := pixels(4, 4)
	c.SetColor(color.RGBA{R: 255, G: 255, B: 0, A: 40})
	c.Fill(polygon(0, 0, 4, 0, 0, 4))
	for y := range 4 {
		for x := range 4 {
			if p := img.RGBAAt(x, y); p.A != 255 || p.B > p.R {
				t.Errorf("pixel %d, %d is %v", x, y, p)
			}
		}
	}
}

// A component that is not finite breaks the path: what follows starts anew.
func TestBrokenPaths(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, bad := range []vg.Path{
		polyline(nan, 5)[:1], polyline(5, inf)[:1], polyline(0, 0, nan, 3)[1:], polyline(0, 0, 3, -inf)[1:],
		polyline(0, 0, 1e80, 3)[1:],
		circleOf(nan, 3, 4, 1), circleOf(3, 3, inf, 1), circleOf(3, 3, 4, nan), circleOf(3, 3, 4, inf),
		quadratic(0, 0, nan, 1, 2, 2)[1:], cubicOf(0, 0, 1, 1, 2, inf)[1:],
	} {
		c, img := pixels(60, 10)
		path := polyline(0, 5, 20, 5)
		path = append(path, bad...)
		path = append(path, polyline(40, 5, 60, 5)[0:]...)
		path[len(path)-2].Type = vg.LineComp
		c.SetLineWidth(2)
		c.Stroke(path)
		near(t, "before", dark(img, 10, 4), 1, level)
		near(t, "gap", darkArea(img), 20*2+20*2, 0.1)
		near(t, "after", dark(img, 50, 4), 1, level)
		c.Fill(path)
	}
}
