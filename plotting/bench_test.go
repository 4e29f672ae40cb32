package plotting

import (
	"image"
	"testing"

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
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return []*chart.Chart{Forces(r)} })
}

func BenchmarkForcesDouble(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 1400, 800, 192, func() []*chart.Chart { return []*chart.Chart{Forces(r)} })
}

func BenchmarkAllCharts(b *testing.B) {
	r := analyze(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return Charts(r, nil) })
}

// BenchmarkMarker moves the marker over a chart that stays.
func BenchmarkMarker(b *testing.B) {
	c := Forces(analyze(b, saltgrass()))
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return []*chart.Chart{c} })
}

// BenchmarkLaunchCharts builds and draws the three charts of a launch.
func BenchmarkLaunchCharts(b *testing.B) {
	l, r := launched(b, saltgrass())
	benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return LaunchCharts(l, r, nil, nil) })
}

// BenchmarkCompared builds and draws each chart of two setups.
func BenchmarkCompared(b *testing.B) {
	x := twoSetups(b, "baseline", "more bite")
	bars, others := launchBars{overTime{x.l}, x.r}, launchBars{overTime{x.otherLaunch}, x.other}
	for _, build := range []func() *chart.Chart{
		func() *chart.Chart { return chart.Compare(forcesBeside(x.r, x.other), forcesBeside(x.other, x.r)) },
		func() *chart.Chart { return chart.Compare(AntiSquat(x.r), AntiSquat(x.other)) },
		func() *chart.Chart { return chart.Compare(CenterPath(x.r), CenterPath(x.other)) },
		func() *chart.Chart { return chart.Compare(Bow(x.r), Bow(x.other)) },
		func() *chart.Chart { return chart.Compare(bars.chart(&others), others.chart(&bars)) },
		func() *chart.Chart {
			return chart.Compare(launchAttitudeOf(x.l, x.r, true), launchAttitudeOf(x.otherLaunch, x.other, true))
		},
		func() *chart.Chart { return compareTires(x.l, x.r, x.otherLaunch, x.other) },
	} {
		b.Run(string(build().Key), func(b *testing.B) {
			benchmarkDraw(b, 700, 400, 96, func() []*chart.Chart { return []*chart.Chart{build()} })
		})
	}
}
