package chart

import (
	"image/color"
	"math"

	"bowline/plotting/palette"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Line widths at scale 1 [pt].
const (
	lineWidth = 1.4
	ruleWidth = 1.0
	hairWidth = 0.75
	edgeWidth = 0.6
)

// patterns are the dashes of each line of the first setup at scale 1 [pt].
var patterns = [...][]vg.Length{Solid: nil, Dashed: {4, 2.5}, Long: {10, 4}, Fine: {1.5, 2.5}}

// furtherPatterns are those of a further setup's lines, which no line of the first
// has.
var furtherPatterns = [...][]vg.Length{Solid: {1.8, 1.8}, Dashed: {5, 2, 1.2, 2}, Long: {9, 2, 1.2, 2, 1.2, 2}, Fine: {1, 4}}

const (
	// furtherWidth is the width of further setups' lines over the first one's.
	furtherWidth = 0.68
	// ghost is how much of its color a line of the third setup keeps over the
	// background; each two setups on it is as much again.
	ghost = 0.55
	// faintArea and strongArea are how much of its ink an area has.
	faintArea  = 0.15
	strongArea = 0.35
)

// hair returns the look of a thin line.
func (p *picture) hair(c color.Color) draw.LineStyle {
	return draw.LineStyle{Color: c, Width: hairWidth * p.scale}
}

// stroke returns the look of a line of a setup. Further setups' lines are thin;
// dash and strength tell them apart: the second one's are dotted, the third one's
// drawn like the first one's but pale, the fourth one's dotted and pale.
func (p *picture) stroke(i Ink, d Dash, width float64, setup int) draw.LineStyle {
	lengths := patterns[d]
	if setup%2 == 1 {
		lengths = furtherPatterns[d]
	}
	if setup > 0 {
		width *= furtherWidth
	}
	pattern := make([]vg.Length, len(lengths))
	for j, x := range lengths {
		pattern[j] = x * p.scale
	}
	return draw.LineStyle{Color: p.inkOf(i, setup), Width: vg.Length(width) * p.scale, Dashes: pattern}
}

// usual returns a factor whose zero value is 1.
func usual(factor float64) float64 {
	if factor == 0 {
		return 1
	}
	return factor
}

// ink returns a color of the style's palette.
func (p *picture) ink(i Ink) color.RGBA { return i(&p.style.Palette) }

// inkOf returns a color for a setup's lines and points.
func (p *picture) inkOf(i Ink, setup int) color.RGBA {
	return p.mixed(i, math.Pow(ghost, float64(setup/2)))
}

// mixed returns a part of a color over the background.
func (p *picture) mixed(i Ink, part float64) color.RGBA {
	c, b := p.ink(i), p.style.Palette.Background
	mix := func(over, under uint8) uint8 {
		return uint8(math.Round(part*float64(over) + (1-part)*float64(under)))
	}
	return color.RGBA{R: mix(c.R, b.R), G: mix(c.G, b.G), B: mix(c.B, b.B), A: 255}
}

// fill returns the color of a region.
func (p *picture) fill(r *Region) color.RGBA {
	if r.Shade {
		return p.style.Palette.Raised
	}
	return targetFill(&p.style.Palette)
}

// areaFill returns the color of an area.
func (p *picture) areaFill(a *Area) color.RGBA {
	if a.Strong {
		return p.mixed(a.Ink, strongArea)
	}
	return p.mixed(a.Ink, faintArea)
}

// targetFill is the target's translucent color on the background, opaque so
// that it looks the same in every format.
func targetFill(p *palette.Palette) color.RGBA {
	mix := func(over, under, alpha uint8) uint8 {
		return over + uint8(uint32(under)*uint32(255-alpha)/255)
	}
	t, b := p.Target, p.Background
	return color.RGBA{R: mix(t.R, b.R, t.A), G: mix(t.G, b.G, t.A), B: mix(t.B, b.B, t.A), A: 255}
}
