package raster_test

import (
	"testing"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

func TestTextWidthIsThatOfTheFont(t *testing.T) {
	c, _ := pixels(10, 10)
	for _, text := range []string{"AVATo", "11.", "Länge Ωµ±", "no glyph \U0001F3C1", "bad \xff byte", ""} {
		for _, size := range []vg.Length{7, 12.5, 30} {
			f := sans(size)
			near(t, text, c.TextWidth(f, text).Points(), f.Width(text).Points(), 1e-9)
		}
	}
	if w := c.TextWidth(font.Face{Font: font.Font{Size: 10}}, "no font"); w != 0 {
		t.Errorf("without a font the width is %v", w)
	}
}
