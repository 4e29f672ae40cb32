package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
)

// Fonts with cubic outlines are rare: a disc of four of them stands for those.
// A control point at 0.5523 of the radius gives a disc within 0.03 % (common
// practice).
func TestCubicGlyph(t *testing.T) {
	const r, k = 30, 30 * 0.5523
	g := &glyph{curves: []curve{
		{start: true, pts: [3]point{{r, 0}}},
		{controls: 2, pts: [3]point{{r, k}, {k, r}, {0, r}}},
		{controls: 2, pts: [3]point{{-k, r}, {-r, k}, {-r, 0}}},
		{controls: 2, pts: [3]point{{-r, -k}, {-k, -r}, {0, -r}}},
		{controls: 2, pts: [3]point{{k, -r}, {r, -k}, {r, 0}}},
	}}
	img := image.NewRGBA(image.Rect(0, 0, 80, 80))
	c := New(img, 72)
	c.SetColor(color.Black)
	c.path.glyph(g, affine{xx: 1, yy: 1, x0: 40, y0: 40}, c.view)
	c.fill(&c.path, 0, len(c.path.pieces))
	area := 0.0
	for i := 3; i < len(img.Pix); i += 4 {
		area += float64(img.Pix[i]) / 255
	}
	if want := math.Pi * r * r; math.Abs(area-want) > 0.002*want {
		t.Errorf("area %v, want %v", area, want)
	}
}

// Glyphs a font does not have are blank, and cost no panic.
func TestMissingGlyphs(t *testing.T) {
	f, err := opentype.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	tf := typefaceOf(f)
	var buf sfnt.Buffer
	for _, x := range []sfnt.GlyphIndex{sfnt.GlyphIndex(f.NumGlyphs()), math.MaxUint16} {
		if g := tf.glyph(&buf, x); g.advance != 0 || len(g.curves) != 0 {
			t.Errorf("glyph %d is %+v", x, g)
		}
		if g := tf.load(&buf, x); g.advance != 0 || len(g.curves) != 0 {
			t.Errorf("glyph %d is %+v", x, g)
		}
		if k := tf.kern(&buf, x, 1); k != 0 {
			t.Errorf("glyph %d is kerned by %d", x, k)
		}
	}
	if typefaceOf(f) != tf {
		t.Error("a font has two caches")
	}
}

// What is stored under a pair of glyphs comes back for that pair only, and
// pairs seldom displace one another.
func TestSlots(t *testing.T) {
	var s slots
	if _, ok := s.get(0); ok {
		t.Error("an empty cache knows a key")
	}
	const n = 64
	key := func(i int) uint32 { return uint32(3+i/n)<<16 | uint32(3+i%n) }
	for i := range n * n {
		s.put(key(i), uint16(7*i))
		if v, ok := s.get(key(i)); !ok || v != uint16(7*i) {
			t.Fatalf("pair %d: %d, %v", i, v, ok)
		}
	}
	kept := 0
	for i := range n * n {
		if v, ok := s.get(key(i)); ok {
			kept++
			if v != uint16(7*i) {
				t.Fatalf("pair %d: %d", i, v)
			}
		}
	}
	if kept < 2500 || kept > len(s) {
		t.Errorf("%d of %d pairs are kept", kept, n*n)
	}
}
