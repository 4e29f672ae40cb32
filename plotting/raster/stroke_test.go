package raster_test

import (
	"math"
	"testing"

	"gonum.org/v1/plot/vg"

	"bowline/plotting/raster"
)

// Areas of lines of half width h in closed form. A right angle of two legs of
// length l covers two rectangles of 2·h·l, less h² where they overlap, plus what
// the join adds outside.
func TestStrokeAreas(t *testing.T) {
	const l, h = 60.0, 5.0
	corner := polyline(15, 15, 15+l, 15, 15+l, 15+l)
	square := polygon(20, 20, 20+l, 20, 20+l, 20+l, 20, 20+l)
	straight := polyline(20, 20, 20+l, 20)
	slanted := polyline(20, 20, 20+0.6*l, 20+0.8*l)
	ring := circle(50, 50, 30)
	for _, k := range []struct {
		name string
		path vg.Path
		cap  raster.LineCap
		want float64
	}{
		{"butt cap", straight, raster.ButtCap, 2 * h * l},
		{"round cap", straight, raster.RoundCap, 2*h*l + math.Pi*h*h},
		{"slanted butt cap", slanted, raster.ButtCap, 2 * h * l},
		{"slanted round cap", slanted, raster.RoundCap, 2*h*l + math.Pi*h*h},
		{"round join", corner, raster.ButtCap, 4*h*l - h*h + math.Pi*h*h/4},
		{"closed, rounded", square, raster.ButtCap, (l+2*h)*(l+2*h) - (l-2*h)*(l-2*h) - (4-math.Pi)*h*h},
		{"ring", ring, raster.ButtCap, 2 * math.Pi * 30 * 2 * h},
		{"disc from a short arc", circle(50, 50, 2), raster.ButtCap, math.Pi * 7 * 7},
		{"point, butt cap", polyline(50, 50, 50, 50), raster.ButtCap, 0},
		{"point, round cap", polyline(50, 50, 50, 50), raster.RoundCap, math.Pi * h * h},
		{"closed point, round cap", polygon(50, 50, 50, 50), raster.RoundCap, math.Pi * h * h},
		{"empty", nil, raster.RoundCap, 0},
		{"only a move", polyline(50, 50), raster.RoundCap, 0},
		{"only a close", vg.Path{{Type: vg.CloseComp}}, raster.RoundCap, 0},
	} {
		c, img := pixels(100, 100)
		c.SetLineWidth(2 * h)
		c.SetLineCap(k.cap)
		c.Stroke(k.path)
		near(t, k.name, darkArea(img), k.want, 0.002*k.want)
	}
}

// A line that turns back on itself ends round, on both of its sides.
func TestHairpin(t *testing.T) {
	c, img := pixels(100, 100)
	c.SetLineWidth(10)
	c.Stroke(polyline(20, 50, 80, 50, 20, 50))
	// The rim of the half disc lies twice in the outline.
	near(t, "area", darkArea(img), 10*60+math.Pi*25/2, math.Pi*5*0.5)
}

// A closed line that leaves the image keeps its corners there, the first one
// included.
func TestClosedLineBeyondTheImage(t *testing.T) {
	for start := range 4 {
		corners := []float64{10, 10, 1e6, 10, 1e6, 1e6, 10, 1e6}
		corners = append(corners[2*start:], corners[:2*start]...)
		c, img := pixels(60, 60)
		c.SetLineWidth(8)
		c.Stroke(polygon(corners...))
		near(t, "corner", darkArea(img), 54*54-46*46-(4-math.Pi)*4, 0.1)
	}
}

// A line of one pixel is sharp when it runs through pixel centers, and half as
// dark on two rows when it runs between them.
func TestLineOnTheGrid(t *testing.T) {
	c, img := pixels(20, 20)
	c.Stroke(polyline(2, 5.5, 18, 5.5))
	c.Stroke(polyline(2, 12, 18, 12))
	for row, want := range map[int]float64{13: 0, 14: 1, 15: 0, 6: 0, 7: 0.5, 8: 0.5, 9: 0} {
		near(t, "row", dark(img, 10, row), want, level)
	}
}

func TestHairlines(t *testing.T) {
	for _, k := range []struct{ width, want float64 }{
		{0.5, 0.5}, {0.25, 0.25}, {0.1, 0.25}, {1e-300, 0.25}, {0, 0}, {-1, 0}, {math.NaN(), 0}, {math.Inf(1), 0},
	} {
		c, img := pixels(20, 20)
		c.SetLineWidth(vg.Length(k.width))
		c.Stroke(polyline(0, 5.5, 20, 5.5))
		near(t, "hairline", dark(img, 10, 14), k.want, level)
	}
}

// Widths and dashes follow the transform.
func TestStrokeIsScaled(t *testing.T) {
	c, img := pixels(40, 40)
	c.Scale(2, 2)
	c.SetLineWidth(3)
	c.SetLineDash([]vg.Length{4, 2}, 0)
	c.Stroke(polyline(0, 10, 20, 10))
	// Dashes of 8 and gaps of 4 pixels, 6 pixels wide.
	near(t, "area", darkArea(img), 6*(8+8+8+4), 0.5)
	near(t, "dash", dark(img, 7, 20), 1, level)
	near(t, "gap", dark(img, 8, 20), 0, level)
}

// covered says whether a place along a line lies in a dash, by walking the
// pattern, repeated forever both ways, in steps of a hundredth.
func covered(at float64, pattern []float64, offset float64) bool {
	var steps []bool
	for range 2 {
		for _, l := range pattern {
			on := len(steps) == 0 || !steps[len(steps)-1]
			for range int(math.Round(l * 100)) {
				steps = append(steps, on)
			}
		}
	}
	i := int(math.Floor((at+offset)*100)) % len(steps)
	if i < 0 {
		i += len(steps)
	}
	return steps[i]
}

func TestDashes(t *testing.T) {
	for _, k := range []struct {
		pattern []float64
		offset  float64
	}{
		{[]float64{5, 3}, 0}, {[]float64{5, 3}, 2}, {[]float64{5, 3}, 6}, {[]float64{5, 3}, -1}, {[]float64{5, 3}, 8e6 + 3},
		{[]float64{5, 3}, -8e6 + 3}, {[]float64{4}, 0}, {[]float64{4}, 3}, {[]float64{5, 2, 1}, 0}, {[]float64{5, 2, 1}, 9},
		{[]float64{5, 2, 1}, -7}, {[]float64{6, 2, 1, 2, 1, 2}, 4}, {[]float64{1, 1}, 0}, {[]float64{30, 3}, 10},
	} {
		pattern := make([]vg.Length, len(k.pattern))
		for i, l := range k.pattern {
			pattern[i] = vg.Length(l)
		}
		// Straight, in pieces, and beginning far outside the image.
		for name, path := range map[string]vg.Path{
			"straight": polyline(0, 5.5, 60, 5.5),
			"pieces":   polyline(0, 5.5, 7.3, 5.5, 7.3, 5.5, 31, 5.5, 60, 5.5),
			"outside":  polyline(-240000, 5.5, 240000, 5.5),
			"corner":   polyline(0, 5.5-240000, 0, 5.5, 60, 5.5),
		} {
			start := map[string]float64{"outside": 240000, "corner": 240000}[name]
			c, img := pixels(60, 10)
			c.SetLineDash(pattern, vg.Length(k.offset))
			c.Stroke(path)
			for x := 1; x < 60; x++ {
				want := 0.0
				if covered(start+float64(x)+0.5, k.pattern, k.offset) {
					want = 1
				}
				near(t, name, dark(img, x, 4), want, level)
			}
			if t.Failed() {
				t.Fatalf("%s with pattern %v from %v", name, k.pattern, k.offset)
			}
		}
	}
}

// Patterns that cannot be drawn give a solid line.
func TestUnusableDashes(t *testing.T) {
	nan, inf := vg.Length(math.NaN()), vg.Length(math.Inf(1))
	for _, pattern := range [][]vg.Length{nil, {}, {0}, {0, 0}, {-3, 5}, {3, -5}, {nan, 3}, {inf, 3}, {1e-9, 1e-9}, {1e80}} {
		c, img := pixels(30, 5)
		c.SetLineDash(pattern, 0)
		c.Stroke(polyline(0, 2.5, 30, 2.5))
		near(t, "solid line", darkArea(img), 30, 0.01)
	}
	c, img := pixels(30, 5)
	c.SetLineDash([]vg.Length{3, 3}, nan)
	c.Stroke(polyline(0, 2.5, 30, 2.5))
	near(t, "unknown offset", darkArea(img), 30, 0.01)
}

// So many dashes that they cannot be seen are drawn for a while, then not.
func TestEndlessDashes(t *testing.T) {
	c, img := pixels(30, 5)
	c.SetLineWidth(4e6)
	c.SetLineDash([]vg.Length{1, 1}, 0)
	c.Stroke(polyline(-1e6, 2.5, 1e6, 2.5))
	near(t, "solid", darkArea(img), 30*5, 0.1)
}

// Dashes without length show as their caps.
func TestDots(t *testing.T) {
	c, img := pixels(100, 20)
	c.SetLineWidth(6)
	c.SetLineCap(raster.RoundCap)
	c.SetLineDash([]vg.Length{0, 10}, 5)
	c.Stroke(polyline(0, 10, 100, 10))
	near(t, "ten dots", darkArea(img), 10*math.Pi*9, 1)
	near(t, "dot", dark(img, 5, 10), 1, level)
	near(t, "between", dark(img, 10, 10), 0, level)
}

// The pattern belongs to the canvas once it is set.
func TestDashPatternIsCopied(t *testing.T) {
	c, img := pixels(40, 5)
	pattern := []vg.Length{5, 5}
	c.SetLineDash(pattern, 0)
	pattern[1] = 1
	c.Stroke(polyline(0, 2.5, 40, 2.5))
	near(t, "gap", dark(img, 8, 2), 0, level)
	// More patterns than are remembered.
	for i := range 200 {
		c.SetLineDash([]vg.Length{1, vg.Length(i)}, 0)
	}
	c.Push()
	c.SetLineDash([]vg.Length{3, 4}, 0)
	c.Pop()
	c, img = pixels(40, 5)
	c.SetLineDash([]vg.Length{1, 199}, 0)
	c.Stroke(polyline(0, 2.5, 40, 2.5))
	near(t, "one dash", darkArea(img), 1, 0.01)
}
