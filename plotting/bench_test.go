package plotting

import (
	"image"
	"testing"

	"bowline/plotting/palette"
)

// benchmarkDraw builds and draws charts into one reused image.
func benchmarkDraw(b *testing.B, w, h int, dpi float64, build func() []*Chart) {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	var r Renderer
	b.ReportAllocs()
	for b.Loop() {
		for _, c := range build() {
			if _, err := r.Draw(img, dpi, c, Style{Palette: palette.Light}, Mark(0.02)); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkForces(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*Chart { return []*Chart{Forces(r)} })
}

func BenchmarkForcesDouble(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 1400, 800, 192, func() []*Chart { return []*Chart{Forces(r)} })
}

func BenchmarkAllCharts(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*Chart { return Charts(r, nil) })
}

// BenchmarkMarker moves the marker over a chart that stays.
func BenchmarkMarker(b *testing.B) {
	c := Forces(analyze(b, saltgrass()))
	benchmarkDraw(b, 700, 400, 96, func() []*Chart { return []*Chart{c} })
}

// BenchmarkLaunchCharts builds and draws the three charts of a launch.
func BenchmarkLaunchCharts(b *testing.B) {
	l, r := launched(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*Chart { return LaunchCharts(l, r, nil, nil) })
}
