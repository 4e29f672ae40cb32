package scene

import (
	"image"
	"testing"

	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// demo analyzes the car with the most combinations among the examples.
func demo(t testing.TB) *analysis.Result {
	t.Helper()
	return analyzed(t, "../../assets/cars/saltgrass-7.toml")
}

// Once every place in a pixel has been seen, dots take no memory.
func TestDotsTakeNoMemory(t *testing.T) {
	r := demo(t)
	c := clouded(t, r)
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 1280, 800))
	var p Picture
	items := []Item{{ID: ID{Kind: Dot}, Shape: Swarm, Points: c.points, Radius: dotReach, Pick: dotPick, Cloud: c}}
	project := func() { p.Project(items, FitCloud(1280, 800, r, c)) }
	project()
	renderer.Draw(img, 1, &p, units.US, &palette.Light)
	if n := testing.AllocsPerRun(20, func() { renderer.swarm(&p.Drawn[0], &palette.Light) }); n > 0 {
		t.Errorf("%v allocations in drawing", n)
	}
	if n := testing.AllocsPerRun(20, project); n > 0 {
		t.Errorf("%v allocations in placing", n)
	}
	if n := testing.AllocsPerRun(20, func() { p.Pick(r2.Vec{X: 700, Y: 500}) }); n > 0 {
		t.Errorf("%v allocations in picking", n)
	}
}

// BenchmarkCloud places, draws and picks from the 2,304 dots of a demo car, at
// the size that the side view has in a large window.
func BenchmarkCloud(b *testing.B) {
	r := demo(b)
	c := clouded(b, r)
	for name, scale := range map[string]int{"1x": 1, "2x": 2} {
		b.Run(name, func(b *testing.B) {
			renderer := NewRenderer()
			img := image.NewRGBA(image.Rect(0, 0, 1280*scale, 800*scale))
			var p Picture
			items := []Item{{ID: ID{Kind: Dot}, Shape: Swarm, Points: c.points, Radius: dotReach, Pick: dotPick, Cloud: c}}
			p.Project(items, FitCloud(1280, 800, r, c))
			renderer.Draw(img, float64(scale), &p, units.US, &palette.Light)
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				p.Project(items, FitCloud(1280, 800, r, c))
				p.Pick(r2.Vec{X: float64(i % 1280), Y: 500})
				renderer.swarm(&p.Drawn[0], &palette.Light)
			}
		})
	}
}
