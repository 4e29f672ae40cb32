// Package raster draws gonum/plot's vg graphics into an *image.RGBA, fast
// enough to be redone on every frame of a window.
//
// A [Canvas] is a vg.Canvas and a vg.CanvasSizer: anything that draws through
// vg, such as a plot.Plot, draws on it unchanged. Coordinates are points
// (1/72 inch) with the origin in the bottom left corner and y up; the
// resolution given to [New] turns them into pixels. Shapes are anti-aliased
// by exact area coverage on a grid of 1/64 pixel and blended in 8 bits.
//
// Partial coverages of one shape add up within a pixel, so two of its edges on
// the same line make that line darker than one.
//
// Where vg leaves a choice open:
//   - Paths are filled by the non-zero winding rule; open pieces are closed.
//   - Line widths and dashes follow the transform, as in PDF and SVG: they are
//     multiplied by the square root of its area scale.
//   - A path component with a coordinate that is not finite is dropped and the
//     path breaks there. Up to 1e75 pixels count as finite.
//   - Text is set with kerning, unhinted and at fractional pixel positions, so
//     that its advance is that of font.Face.Width.
//
// A Canvas serves one goroutine at a time. Any number of canvases may be used
// at once; they share one lock-free cache of glyph outlines.
//
// The scan conversion is done by github.com/golang/freetype/raster, which is
// used under the FreeType License (FTL).
package raster
