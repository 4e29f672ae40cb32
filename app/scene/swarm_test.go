package scene

import (
	"image"
	"math"
	"testing"

	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// swarm returns an item with n dots in rows over a picture of 1280 × 800 that
// shows a meter in 800 px, with values all along the colors' scale.
func swarm(n int) (Item, View) {
	dots := &Dots{Scale: palette.Scale{Target: [2]float64{1, 1.6}, Low: 0.4, High: 2.2}, Title: "Anti-squat", Figure: func(x float64) string { return units.US.FigureExact(units.Percent, x) }}
	item := Item{ID: ID{Kind: Combination}, Shape: Swarm, Radius: 0.007, Pick: 6, Dots: dots}
	across := int(math.Sqrt(1.6*float64(n))) + 1
	for i := range n {
		part := float64(i) / float64(n)
		x, y := float64(i%across)/float64(across), float64(i/across)*1.6/float64(across)
		item.Points = append(item.Points, r3.Vec{X: 1.5 * x, Z: 0.95 * y})
		dots.List = append(dots.List, Dot{Index: 3 * i, Value: 2.5 * part, HasValue: i%50 != 0, Faint: i%3 == 0})
	}
	plane := Plane{Right: r3.Vec{X: 1}, Up: r3.Vec{Z: 1}, Across: "x", Upright: "z"}
	return item, View{Plane: plane, Width: 1280, Height: 800, Scale: 800, Middle: r2.Vec{X: 0.8, Y: 0.5}}
}

// Once every place in a pixel has been seen, dots take no memory.
func TestDotsTakeNoMemory(t *testing.T) {
	item, v := swarm(2304)
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 1280, 800))
	var p Picture
	items := []Item{item}
	project := func() { p.Project(items, v) }
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

// BenchmarkCloud places, draws and picks from 2,304 dots, at the size that the
// side view has in a large window.
func BenchmarkCloud(b *testing.B) {
	item, v := swarm(2304)
	for name, scale := range map[string]int{"1x": 1, "2x": 2} {
		b.Run(name, func(b *testing.B) {
			renderer := NewRenderer()
			img := image.NewRGBA(image.Rect(0, 0, 1280*scale, 800*scale))
			var p Picture
			items := []Item{item}
			p.Project(items, v)
			renderer.Draw(img, float64(scale), &p, units.US, &palette.Light)
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				p.Project(items, v)
				p.Pick(r2.Vec{X: float64(i % 1280), Y: 500})
				renderer.swarm(&p.Drawn[0], &palette.Light)
			}
		})
	}
}
