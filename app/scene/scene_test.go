package scene

import (
	"context"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

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
	return analyzed(t, "../../testdata/reference.toml")
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
func picture(t testing.TB, r *analysis.Result, s *analysis.Station) *Picture {
	t.Helper()
	p := new(Picture)
	p.Project(Build(nil, r, s, options()), FitLink(800, 600, r))
	return p
}

// find returns the drawn items of a kind.
func find(p *Picture, kind Kind) []Drawn {
	var found []Drawn
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.Shape != Label {
			found = append(found, d)
		}
	}
	return found
}

func TestViewGoesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		v := View{Width: 800, Height: 600, Scale: f("scale", 30, 3000), Middle: r2.Vec{X: f("x", -2, 2), Y: f("z", -2, 2)}}
		p := r2.Vec{X: f("px", 0, 800), Y: f("py", 0, 600)}
		if back := v.Screen(v.World(p)); r2.Norm(r2.Sub(back, p)) > 1e-6 {
			t.Fatalf("%v came back as %v", p, back)
		}
		// Zoom keeps the point under the pointer, pan follows it.
		if z := v.Zoomed(f("factor", 0.2, 5), p); r2.Norm(r2.Sub(z.World(p), v.World(p))) > 1e-9 {
			t.Fatal("zoom moved the point under the pointer")
		}
		d := r2.Vec{X: 12, Y: -7}
		if m := v.Panned(d); r2.Norm(r2.Sub(m.Screen(v.World(p)), r2.Add(p, d))) > 1e-6 {
			t.Fatal("pan left the pointer")
		}
	})
}

func TestForwardIsRightAndUpIsUp(t *testing.T) {
	v := View{Width: 100, Height: 100, Scale: 10}
	if p := v.Screen(r2.Vec{X: 1, Y: 1}); p != (r2.Vec{X: 60, Y: 40}) {
		t.Errorf("one meter ahead and up is drawn at %v", p)
	}
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
	upper, lower := find(p, UpperBar), find(p, LowerBar)
	u, l := upper[len(upper)-1], lower[len(lower)-1]
	if u.Stroke != Pull || u.Arrows != -1 || l.Stroke != Push || l.Arrows != 1 {
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
	if lower := find(picture(t, q, &q.Ride), LowerBar); len(lower) != 2 || lower[0].Stroke != Bad {
		t.Error("a bar beyond its limit is not marked")
	}
}

func TestLinesMeetInTheInstantCenter(t *testing.T) {
	r := reference(t)
	p := picture(t, r, &r.Ride)
	ic := find(p, InstantCenter)[0].Points[0]
	for _, l := range find(p, BarLine) {
		if end := l.Points[1]; r2.Norm(r2.Sub(end, ic)) > 1e-6 {
			t.Errorf("bar line ends at %v, instant center is at %v", end, ic)
		}
	}
	action := find(p, ActionLine)[0].Points
	if d := toSegment(ic, action[0], action[1]); d > 1e-6 {
		t.Errorf("the line of action misses the instant center by %v px", d)
	}
	whole := find(p, WholeLine)[0].Points
	if want := p.View.Screen(r2.Vec{X: 105 * inch, Y: 19.5 * inch}); r2.Norm(r2.Sub(whole[1], want)) > 1e-6 {
		t.Errorf("the 100 %% line ends at %v, want %v", whole[1], want)
	}
}

func TestGhostShowsOnlyAwayFromRideHeight(t *testing.T) {
	r := reference(t)
	if n := len(find(picture(t, r, &r.Ride), RideHeight)); n != 0 {
		t.Errorf("%d ghost items at ride height", n)
	}
	if n := len(find(picture(t, r, &r.Travel[0]), RideHeight)); n == 0 {
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
		want ID
	}{
		{"pivot", world(25.5, 11.5), ID{Pivot, car.ChassisLower, 1}},
		{"pivot from the side", r2.Add(world(22.5, 17), r2.Vec{X: 7}), ID{Pivot, car.ChassisUpper, 2}},
		{"free hole", world(22.5, 18.5), ID{Hole, car.ChassisUpper, 0}},
		{"housing hole", world(2.5, 10.25), ID{Hole, car.HousingLower, 1}},
		{"upper bar", world(12.5, 19.75), ID{Kind: UpperBar}},
		{"lower bar", world(14, 11.25), ID{Kind: LowerBar}},
		{"instant center", world(41.25, 11.84), ID{Kind: InstantCenter}},
		{"tire", world(-14, 16), ID{Kind: RearTire}},
		{"chassis plate", world(24.2, 14.5), ID{Kind: ChassisBody}},
		{"nothing", world(33, 33), ID{}},
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
	words := strings.Join(Describe(ID{Kind: LowerBar}, r, &r.Ride, options()), "; ")
	if !strings.Contains(words, "23.01 in pin to pin") || !strings.Contains(words, "push 9,475 lb each (hit)") {
		t.Error(words)
	}
}

func TestHolesTellTheirPlaceInWords(t *testing.T) {
	r := reference(t)
	for id, want := range map[ID]string{
		{Pivot, car.HousingLower, 0}: "2.5 in forward, 5 in below the axle",
		{Hole, car.HousingUpper, 1}:  "2.5 in forward, 5.75 in above the axle",
		{Hole, car.ChassisUpper, 0}:  "22.5 in forward, 18.5 in above the ground",
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
	renderer := NewRenderer()
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
		var p Picture
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
	NewRenderer().Draw(img, 2, p, units.US, &palette.Light)
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

func TestTagStaysInsideThePicture(t *testing.T) {
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 300, 200))
	p := Picture{View: View{Width: 300, Height: 200, Scale: 100}}
	p.Tag(r2.Vec{X: 295, Y: 195}, []string{"a few words", "and some more"})
	renderer.Draw(img, 1, &p, units.US, &palette.Light)
	raised := 0
	for y := range 200 {
		for x := range 300 {
			if img.RGBAAt(x, y) == palette.Light.Raised {
				raised++
			}
		}
	}
	if raised < 1500 {
		t.Errorf("only %d pixels of the tag are in sight", raised)
	}
}

// A pivot's move, all of it: analysis, scene and drawing at the size that the
// side view has in a large window.
func BenchmarkDragFrame(b *testing.B) {
	r := reference(b)
	lib := carfile.Stock()
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 1280, 800))
	var items []Item
	var p Picture
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

// Labels whose places overlap stand one above the other; one whose point is at
// the very edge, where its sign is cut off, is left out.
func TestLabelsKeepClearOfEachOther(t *testing.T) {
	renderer := NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 300, 200))
	label := func(x, y float64, text string) Drawn {
		return Drawn{Item: &Item{Shape: Label, Text: text, Size: letter, Stroke: Ink}, Points: []r2.Vec{{X: x, Y: y}}}
	}
	p := Picture{View: View{Width: 300, Height: 200, Scale: 100}, Drawn: []Drawn{label(100, 100, "the first of two"), label(110, 104, "the second"), label(295, 50, "cut off")}}
	renderer.Draw(img, 1, &p, units.US, &palette.Light)
	// The grid's numbers are not among them.
	if len(renderer.placed) != 2 {
		t.Fatalf("%d labels are placed", len(renderer.placed))
	}
	if a, b := renderer.placed[0], renderer.placed[1]; a.meets(b) || math.Abs(a.top-b.top) > 4*letter {
		t.Errorf("labels at %+v and %+v", a, b)
	}
}
