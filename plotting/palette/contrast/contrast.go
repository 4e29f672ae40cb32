// Package contrast tells how well two colors are told apart, for tests of what
// is drawn.
package contrast

import (
	"image/color"
	"math"
)

// Ratio returns the contrast ratio of two opaque sRGB colors, 1 to 21 (W3C, Web
// Content Accessibility Guidelines 2.1, definition "contrast ratio").
func Ratio(a, b color.Color) float64 {
	x, y := Luminance(a), Luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// Luminance returns the relative luminance of an opaque sRGB color, 0 to 1
// (same guidelines, definition "relative luminance").
func Luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	linear := func(x uint32) float64 {
		v := float64(x) / 0xffff
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}
