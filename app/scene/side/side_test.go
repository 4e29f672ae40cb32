package side

import (
	"context"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

const inch = 0.0254

// reference analyzes the reference car.
func reference(t testing.TB) *analysis.Result {
	t.Helper()
	return analyzed(t, "../../../testdata/reference.toml")
}

// analyzed analyzes the car of a file.
func analyzed(t testing.TB, path string) *analysis.Result {
	t.Helper()
	f, err := carfile.Read(path, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(context.Background(), f.Car, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func options() Options { return Options{Case: analysis.Hit, Labels: true, Selected: car.ChassisLower} }

// picture builds and projects a station into a view of the whole link.
func picture(t testing.TB, r *analysis.Result, s *analysis.Station) *scene.Picture {
	t.Helper()
	p := new(scene.Picture)
	p.Project(Build(nil, r, s, options()), FitLink(800, 600, r))
	return p
}

// find returns the drawn items of a kind.
func find(p *scene.Picture, kind scene.Kind) []scene.Drawn {
	var found []scene.Drawn
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.Shape != scene.Label {
			found = append(found, d)
		}
	}
	return found
}

// Pivots stand where the file's holes are, to scale.
func TestPivotsAreDrawnToScale(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	at := func(row car.Row) r2.Vec {
		q, ok := p.Pivot(row)
		if !ok {
			t.Fatalf("no pivot in the %s row", row)
		}
		return q
	}
	scale := p.View.Scale
	for _, c := range []struct {
		a, b   car.Row
		dx, dz float64 // from a to b [in]
	}{
		{car.HousingUpper, car.ChassisUpper, 20, -5.5},
		{car.HousingLower, car.ChassisLower, 23, 0.5},
		{car.HousingLower, car.HousingUpper, 0, 11.5},
	} {
		d := r2.Sub(at(c.b), at(c.a))
		if math.Abs(d.X-c.dx*inch*scale) > 1e-6 || math.Abs(d.Y+c.dz*inch*scale) > 1e-6 {
			t.Errorf("%s to %s: %v px", c.a, c.b, d)
		}
	}
}

func TestBarsTellPushFromPull(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	upper, lower := find(p, scene.UpperBar), find(p, scene.LowerBar)
	u, l := upper[len(upper)-1], lower[len(lower)-1]
	if u.Stroke != scene.Pull || u.Arrows != -1 || l.Stroke != scene.Push || l.Arrows != 1 {
		t.Errorf("upper %v, %d; lower %v, %d", u.Stroke, u.Arrows, l.Stroke, l.Arrows)
	}
	if !(l.Width > u.Width) {
		t.Error("the bar nearer to its limit is not drawn wider")
	}
	over := r.Car.Clone()
	over.Check.Factor = 10
	q, err := analysis.Run(context.Background(), over, carfile.Stock(), analysis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if lower := find(picture(t, q, &q.Ride), scene.LowerBar); len(lower) != 2 || lower[0].Stroke != scene.Bad {
		t.Error("a bar beyond its limit is not marked")
	}
}

func TestLinesMeetInTheInstantCenter(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	ic := find(p, scene.InstantCenter)[0].Points[0]
	for _, l := range find(p, scene.BarLine) {
		if end := l.Points[1]; r2.Norm(r2.Sub(end, ic)) > 1e-6 {
			t.Errorf("bar line ends at %v, instant center is at %v", end, ic)
		}
	}
	action := find(p, scene.ActionLine)[0].Points
	along := r2.Unit(r2.Sub(action[1], action[0]))
	if d := math.Abs(r2.Cross(along, r2.Sub(ic, action[0]))); d > 1e-6 {
		t.Errorf("the line of action misses the instant center by %v px", d)
	}
	whole := find(p, scene.WholeLine)[0].Points
	if want := p.View.Screen(r2.Vec{X: 105 * inch, Y: 19.5 * inch}); r2.Norm(r2.Sub(whole[1], want)) > 1e-6 {
		t.Errorf("the 100 %% line ends at %v, want %v", whole[1], want)
	}
}

func TestGhostShowsOnlyAwayFromRideHeight(t *testing.T) {
	r := reference(t)
	if n := len(find(picture(t, r, &r.Ride), scene.RideHeight)); n != 0 {
		t.Errorf("%d ghost items at ride height", n)
	}
	if n := len(find(picture(t, r, &r.Travel[0]), scene.RideHeight)); n == 0 {
		t.Error("no ghost at full droop")
	}
}

func TestPicking(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	world := func(x, z float64) r2.Vec { return p.View.Screen(r2.Vec{X: x * inch, Y: z * inch}) }
	for _, c := range []struct {
		what string
		at   r2.Vec
		want scene.ID
	}{
		{"pivot", world(25.5, 11.5), scene.ID{Kind: scene.Pivot, Row: car.ChassisLower, Index: 1}},
		{"pivot from the side", r2.Add(world(22.5, 17), r2.Vec{X: 7}), scene.ID{Kind: scene.Pivot, Row: car.ChassisUpper, Index: 2}},
		{"free hole", world(22.5, 18.5), scene.ID{Kind: scene.Hole, Row: car.ChassisUpper, Index: 0}},
		{"housing hole", world(2.5, 10.25), scene.ID{Kind: scene.Hole, Row: car.HousingLower, Index: 1}},
		{"upper bar", world(12.5, 19.75), scene.ID{Kind: scene.UpperBar}},
		{"lower bar", world(14, 11.25), scene.ID{Kind: scene.LowerBar}},
		{"instant center", world(41.25, 11.84), scene.ID{Kind: scene.InstantCenter}},
		{"tire", world(-14, 16), scene.ID{Kind: scene.RearTire}},
		{"chassis plate", world(24.2, 14.5), scene.ID{Kind: scene.ChassisBody}},
		{"nothing", world(33, 33), scene.ID{}},
	} {
		if got := p.Pick(c.at); got != c.want {
			t.Errorf("%s at %.0f: picked %+v, want %+v", c.what, c.at, got, c.want)
		}
	}
}

// Whatever can be picked has a name.
func TestEverythingNamesItself(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	for _, d := range p.Drawn {
		if d.Pick > 0 && len(Describe(d.ID, r, &r.Ride, options())) == 0 {
			t.Errorf("%+v has no name", d.ID)
		}
	}
	words := strings.Join(Describe(scene.ID{Kind: scene.LowerBar}, r, &r.Ride, options()), "; ")
	if !strings.Contains(words, "23.01 in pin to pin") || !strings.Contains(words, "push 9,475 lb each (hit)") {
		t.Error(words)
	}
}

func TestHolesTellTheirPlaceInWords(t *testing.T) {
	r := reference(t)
	for id, want := range map[scene.ID]string{
		{Kind: scene.Pivot, Row: car.HousingLower, Index: 0}: "2.5 in forward, 5 in below the axle",
		{Kind: scene.Hole, Row: car.HousingUpper, Index: 1}:  "2.5 in forward, 5.75 in above the axle",
		{Kind: scene.Hole, Row: car.ChassisUpper, Index: 0}:  "22.5 in forward, 18.5 in above the ground",
	} {
		if got := Describe(id, r, &r.Ride, options()); got[1] != want {
			t.Errorf("%+v: %q, want %q", id, got[1], want)
		}
	}
}

// Crossing, parallel and upright bars, odd travels and views draw without a
// panic or a coordinate that is no number.
func TestOddCarsDraw(t *testing.T) {
	r := reference(t)
	renderer := scene.NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 200, 150))
	rapid.Check(t, func(t *rapid.T) {
		c := r.Car.Clone()
		for _, row := range car.Rows {
			for i := range *row.In(c) {
				h := &(*row.In(c))[i]
				h.X += rapid.Float64Range(-0.3, 0.3).Draw(t, "x")
				h.Y += rapid.Float64Range(-0.3, 0.3).Draw(t, "z")
			}
		}
		if len(c.Validate(carfile.Stock(), units.US)) > 0 {
			return
		}
		q, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
		if err != nil {
			t.Fatal(err)
		}
		s := &q.Travel[rapid.IntRange(0, len(q.Travel)-1).Draw(t, "travel")]
		var p scene.Picture
		p.Project(Build(nil, q, s, options()), FitLink(200, 150, q))
		for _, d := range p.Drawn {
			for _, at := range d.Points {
				if math.IsNaN(at.X+at.Y) || math.IsInf(at.X+at.Y, 0) {
					t.Fatalf("%+v is drawn at %v", d.ID, at)
				}
			}
		}
		renderer.Draw(img, 1, &p, units.SI, &palette.Dark)
	})
}

// The pixels of a bar have its color and the background its own.
func TestRendererPaintsThePicture(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	img := image.NewRGBA(image.Rect(0, 0, 1600, 1200))
	scene.NewRenderer().Draw(img, 2, p, units.US, &palette.Light)
	at := func(x, z float64) color.RGBA {
		q := p.View.Screen(r2.Vec{X: x * inch, Y: z * inch})
		return img.RGBAAt(int(2*q.X), int(2*q.Y))
	}
	if got := at(14, 11.25); got != palette.Light.Push {
		t.Errorf("the lower bar is painted %v", got)
	}
	if got := at(12.5, 19.75); got != palette.Light.Pull {
		t.Errorf("the upper bar is painted %v", got)
	}
	if got := at(-6, 27); got != palette.Light.Tire {
		t.Errorf("the tire is painted %v", got)
	}
}

func TestHullIsConvexAndHoldsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []r2.Vec
		for range rapid.IntRange(3, 30).Draw(t, "points") {
			points = append(points, r2.Vec{X: rapid.Float64Range(-1, 1).Draw(t, "x"), Y: rapid.Float64Range(-1, 1).Draw(t, "y")})
		}
		h := hull(append([]r2.Vec(nil), points...))
		for i := range h {
			a, b := h[i], h[(i+1)%len(h)]
			for _, p := range points {
				if r2.Cross(r2.Sub(b, a), r2.Sub(p, a)) < -1e-9 {
					t.Fatalf("%v lies outside of the edge %v to %v", p, a, b)
				}
			}
		}
	})
}

// A pivot's move, all of it: analysis, scene and drawing at the size that the
// side view has in a large window.
func BenchmarkDragFrame(b *testing.B) {
	r := reference(b)
	lib := carfile.Stock()
	renderer := scene.NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 1280, 800))
	var items []scene.Item
	var p scene.Picture
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		c := r.Car.Clone()
		c.Chassis.Lower[1].Y += 0.01 * math.Sin(float64(i))
		q, err := analysis.Run(context.Background(), c, lib, analysis.Options{})
		if err != nil {
			b.Fatal(err)
		}
		items = Build(items, q, &q.Ride, options())
		p.Project(items, FitLink(1280, 800, q))
		renderer.Draw(img, 1, &p, units.US, &palette.Light)
	}
}
