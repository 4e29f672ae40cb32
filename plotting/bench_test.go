package plotting_test

import (
	"image"
	"testing"

	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/palette"
)

// benchmarkDraw builds and draws charts into one reused image.
func benchmarkDraw(b *testing.B, w, h int, dpi float64, build func() []*chart.Chart) {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	var r chart.Renderer
	b.ReportAllocs()
	for b.Loop() {
		for _, c := range build() {
			if _, err := r.Draw(img, dpi, c, chart.Style{Palette: palette.Light}, chart.Mark(0.02)); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkForces(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return []*chart.Chart{plotting.BarForce(plotting.Of(r, nil))} })
}

func BenchmarkForcesDouble(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 1400, 800, 192, func() []*chart.Chart { return []*chart.Chart{plotting.BarForce(plotting.Of(r, nil))} })
}

func BenchmarkAllCharts(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return overTravels(plotting.Of(r, nil)) })
}

// BenchmarkMarker moves the marker over a chart that stays.
func BenchmarkMarker(b *testing.B) {
	c := plotting.BarForce(plotting.Of(analyze(b, saltgrass()), nil))
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return []*chart.Chart{c} })
}

// BenchmarkLaunchCharts builds and draws the charts of a launch.
func BenchmarkLaunchCharts(b *testing.B) {
	l, r := launched(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return overLaunch(plotting.Of(r, l)) })
}

// BenchmarkCompared builds and draws each chart of two setups.
func BenchmarkCompared(b *testing.B) {
	list := setups(b, "baseline", "more bite")
	for _, kind := range plotting.Kinds()[:8] {
		b.Run(string(kind.Key), func(b *testing.B) {
			benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return []*chart.Chart{kind.Make(list[0], list[1])} })
		})
	}
}
