package side_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

const inch = 0.0254

// reference analyzes the car that expected values are taken from: axle centerline
// 16 in above the ground, and in its first setup the pivots
//
//	upper chassis (22.5, 17.0)   lower chassis (25.5, 11.5)
//	upper housing ( 2.5, 22.5)   lower housing ( 2.5, 11.0)   [in]
func reference(t testing.TB) *analysis.Result {
	t.Helper()
	return analyzed(t, "../../../testdata/reference.toml")
}

// demo analyzes the car with the most combinations among the examples.
func demo(t testing.TB) *analysis.Result {
	t.Helper()
	return analyzed(t, "../../../assets/cars/saltgrass-7.toml")
}

// analyzed analyzes the car of a file.
func analyzed(t testing.TB, path string) *analysis.Result {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return run(t, f.Car, 0)
}

// run analyzes a setup of a car.
func run(t testing.TB, c *car.Car, setup int) *analysis.Result {
	t.Helper()
	r, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{Setup: setup})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// edited analyzes a car after a change.
func edited(t testing.TB, r *analysis.Result, change func(*car.Car)) *analysis.Result {
	t.Helper()
	c := r.Car.Clone()
	change(c)
	return run(t, c, 0)
}

func options() side.Options {
	return side.Options{Case: analysis.Hit, Labels: true, Selected: car.ChassisLower}
}

// picture shows a station of a result, fitted to the bars.
func picture(r *analysis.Result, s *analysis.Station, o side.Options) *scene.Picture {
	return project(r, s, o, side.ViewOfBars(800, 600, r))
}

// project shows a station of a result in a view.
func project(r *analysis.Result, s *analysis.Station, o side.Options, v scene.View) *scene.Picture {
	var l scene.List
	side.Build(&l, r, s, o)
	p := new(scene.Picture)
	p.Project(l.Items, v)
	return p
}

// find returns what is drawn of a kind, but for words: of the car itself, not of
// its ghosts.
func find(p *scene.Picture, kind scene.Kind) []scene.Drawn { return findGhost(p, kind, 0) }

// findGhost returns what is drawn of a kind of a ghost.
func findGhost(p *scene.Picture, kind scene.Kind, ghost int) []scene.Drawn {
	var found []scene.Drawn
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.ID.Ghost == ghost && d.Shape != scene.Label {
			found = append(found, d)
		}
	}
	return found
}

// labels returns the words at items of a kind.
func labels(p *scene.Picture, kind scene.Kind) []string {
	var words []string
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.Shape == scene.Label {
			words = append(words, strings.TrimSpace(d.Text+" "+d.Figure))
		}
	}
	return words
}

// labelColor returns the color of the numbers at items of a kind.
func labelColor(p *scene.Picture, kind scene.Kind) scene.Color {
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.Shape == scene.Label {
			return d.Stroke
		}
	}
	return scene.None
}

// at returns a place of the side view given in inches.
func at(x, z float64) r3.Vec { return r3.Vec{X: x * inch, Z: z * inch} }

// seen turns a point of the side view into the ground's frame.
func seen(p r2.Vec) r3.Vec { return r3.Vec{X: p.X, Z: p.Y} }

// apart returns how far two places are from each other as they are seen [m].
func apart(a, b r3.Vec) float64 { return math.Hypot(a.X-b.X, a.Z-b.Z) }

// say joins the lines that name an item.
func say(id scene.ID, r *analysis.Result, s *analysis.Station, o side.Options) string {
	return strings.Join(side.Describe(id, r, s, o), "; ")
}
