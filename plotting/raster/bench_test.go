package raster_test

import (
	"image"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"

	"bowline/plotting/raster"
)

// benchmark runs draw on a reused image, by this package and by vgimg.
func benchmark(b *testing.B, w, h int, dpi float64, draw func(vg.CanvasSizer)) {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	b.Run("raster", func(b *testing.B) {
		b.ReportAllocs()
		c := raster.New(img, dpi)
		for b.Loop() {
			c.Reset(img, dpi)
			draw(c)
		}
	})
	if dpi != vgimg.DefaultDPI {
		return
	}
	b.Run("vgimg", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			draw(onImage(img))
		}
	})
}

// BenchmarkChart builds and draws a chart of 700 x 400 pixels.
func BenchmarkChart(b *testing.B) { benchmark(b, 700, 400, 96, drawChart) }

// BenchmarkChartDouble is the chart at twice the resolution.
func BenchmarkChartDouble(b *testing.B) { benchmark(b, 1400, 800, 192, drawChart) }

// BenchmarkSideView draws 186 primitives into 1000 x 600 pixels.
func BenchmarkSideView(b *testing.B) { benchmark(b, 1000, 600, 96, newSideView().draw) }

// BenchmarkSideViewDouble is the scene at twice the resolution.
func BenchmarkSideViewDouble(b *testing.B) { benchmark(b, 2000, 1200, 192, newSideView().draw) }
