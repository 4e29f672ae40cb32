package side_test

import (
	"context"
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// Forward is to the right and up is up; how far left something is cannot be seen.
func TestPlane(t *testing.T) {
	v := scene.View{Plane: side.Plane, Width: 100, Height: 100, Scale: 10}
	for _, y := range []float64{0, -0.7, 0.7} {
		if p := v.Screen(r3.Vec{X: 1, Y: y, Z: 1}); p != (r2.Vec{X: 60, Y: 40}) {
			t.Errorf("one meter ahead and up, %v m to the left, is drawn at %v", y, p)
		}
	}
}

// Pivots are where the file's holes are, and as far to the right of the middle as
// half of what the file says the bars are apart.
func TestPivotsAreWhereTheFileSays(t *testing.T) {
	r := reference(t)
	p := picture(r, &r.Ride, options())
	for row, want := range map[car.Row]r3.Vec{
		car.ChassisUpper: {X: 22.5 * inch, Y: -r.Car.Chassis.SpreadUpper / 2, Z: 17 * inch},
		car.ChassisLower: {X: 25.5 * inch, Y: -r.Car.Chassis.SpreadLower / 2, Z: 11.5 * inch},
		car.HousingUpper: {X: 2.5 * inch, Y: -r.Car.Housing.SpreadUpper / 2, Z: 22.5 * inch},
		car.HousingLower: {X: 2.5 * inch, Y: -r.Car.Housing.SpreadLower / 2, Z: 11 * inch},
	} {
		n := 0
		for _, d := range find(p, scene.Pivot) {
			if d.ID.Row != row {
				continue
			}
			n++
			if got := d.Item.Points[0]; r3.Norm(r3.Sub(got, want)) > 1e-9 || d.ID.Side != scene.Both {
				t.Errorf("%s: at %v on side %v, want %v", row, got, d.ID.Side, want)
			}
			if drawn, ok := p.Pivot(row); !ok || r2.Norm(r2.Sub(drawn, p.View.Screen(want))) > 1e-6 {
				t.Errorf("%s: drawn at %v, want %v", row, drawn, p.View.Screen(want))
			}
		}
		if n != 1 {
			t.Errorf("%s: %d pivots", row, n)
		}
	}
}

// Tires and springs are as far from the middle as the car file says, on both sides; what
// the side view's geometry consists of is in the middle.
func TestDepth(t *testing.T) {
	r := demo(t)
	c := r.Car
	p := picture(r, &r.Ride, options())
	for kind, y := range map[scene.Kind]float64{
		scene.RearTire: c.Body.TrackRear / 2, scene.FrontTire: c.Body.TrackFront / 2, scene.Spring: c.Launch.Suspension.RearSpread / 2,
		scene.InstantCenter: 0, scene.CG: 0, scene.ActionLine: 0, scene.BarLine: 0, scene.TargetBox: 0, scene.Ground: 0,
	} {
		least, most := map[scene.Side]float64{}, map[scene.Side]float64{}
		for _, d := range find(p, kind) {
			for _, q := range d.Item.Points {
				if _, ok := least[d.ID.Side]; !ok {
					least[d.ID.Side], most[d.ID.Side] = q.Y, q.Y
				}
				least[d.ID.Side], most[d.ID.Side] = min(least[d.ID.Side], q.Y), max(most[d.ID.Side], q.Y)
			}
		}
		want := map[scene.Side]float64{scene.Left: y, scene.Right: -y}
		if y == 0 {
			want = map[scene.Side]float64{scene.Both: 0}
		}
		for side, y := range want {
			// A tire reaches out from its middle to one side in front of the eye.
			if len(least) != len(want) || y < least[side]-1e-9 || y > most[side]+1e-9 {
				t.Errorf("kind %v, side %v: from %v to %v to the left, want %v among them", kind, side, least[side], most[side], y)
			}
		}
	}
}

// A bar is a tube of its diameter on the line between its holes.
func TestBarsRunBetweenTheirHoles(t *testing.T) {
	r := demo(t)
	c := r.Car
	p := picture(r, &r.Ride, options())
	for _, row := range []car.Row{car.ChassisUpper, car.ChassisLower} {
		rear, kind, chassis, housing := car.HousingUpper, scene.UpperBar, c.Chassis.SpreadUpper, c.Housing.SpreadUpper
		if row == car.ChassisLower {
			rear, kind, chassis, housing = car.HousingLower, scene.LowerBar, c.Chassis.SpreadLower, c.Housing.SpreadLower
		}
		for side, y := range map[scene.Side]float64{scene.Left: 0.5, scene.Right: -0.5} {
			front, back := row.Hole(c, 0), rear.Hole(c, 0)
			from := r3.Vec{X: back.X, Y: y * housing, Z: back.Y + c.Tires.RearRadius}
			along := r3.Unit(r3.Sub(r3.Vec{X: front.X, Y: y * chassis, Z: front.Y}, from))
			tube := tubeOf(t, p, kind, side)
			for _, end := range tube.Item.Points {
				if off := r3.Norm(r3.Cross(along, r3.Sub(end, from))); off > 1e-9 {
					t.Errorf("kind %v, side %v: an end is %v m off the line between the holes", kind, side, off)
				}
			}
			if want := row.Pair().Bar(c).OD; tube.Girth != want {
				t.Errorf("kind %v, side %v: it is %v m thick, want %v", kind, side, tube.Girth, want)
			}
		}
	}
}

// tubeOf returns the tube of a bar of the car shown, which is what is picked of it.
func tubeOf(t *testing.T, p *scene.Picture, kind scene.Kind, side scene.Side) scene.Drawn {
	t.Helper()
	for _, d := range find(p, kind) {
		if d.ID.Side == side && d.Pick > 0 {
			return d
		}
	}
	t.Fatalf("there is no bar of kind %v on side %v", kind, side)
	return scene.Drawn{}
}

// struck returns whether a bar is marked as beyond its limit.
func struck(p *scene.Picture, kind scene.Kind, side scene.Side) bool {
	return slices.ContainsFunc(find(p, kind), func(d scene.Drawn) bool { return d.ID.Side == side && d.Stroke == scene.Bad })
}

// filled returns the part of a bar's tube that is filled, from the housing on, and its color.
func filled(t *testing.T, p *scene.Picture, kind scene.Kind, side scene.Side) (part float64, color scene.Color) {
	t.Helper()
	tube := tubeOf(t, p, kind, side)
	whole := r3.Norm(r3.Sub(tube.Item.Points[1], tube.Item.Points[0]))
	for _, d := range find(p, kind) {
		if d.ID.Side == side && d.Pick == 0 && d.Girth > 0 && (d.Stroke == scene.Push || d.Stroke == scene.Pull) {
			return r3.Norm(r3.Sub(d.Item.Points[1], d.Item.Points[0])) / whole, d.Stroke
		}
	}
	return 0, scene.Slack
}

// arrows returns which way the heads on a bar point.
func arrows(p *scene.Picture, kind scene.Kind, side scene.Side) int {
	for _, d := range find(p, kind) {
		if d.ID.Side == side && d.Arrows != 0 {
			return d.Arrows
		}
	}
	return 0
}

func TestBarsTellPushFromPull(t *testing.T) {
	r := reference(t)
	p := picture(r, &r.Ride, options())
	for _, side := range []scene.Side{scene.Left, scene.Right} {
		for kind, want := range map[scene.Kind]struct {
			pair   car.Pair
			color  scene.Color
			arrows int
		}{scene.UpperBar: {car.Upper, scene.Pull, -1}, scene.LowerBar: {car.Lower, scene.Push, 1}} {
			use, _ := r.Use(want.pair, analysis.Hit, &r.Ride)
			part, color := filled(t, p, kind, side)
			if color != want.color || arrows(p, kind, side) != want.arrows || math.Abs(part-use.Share) > 1e-9 {
				t.Errorf("kind %v: %v of it filled in %v, heads %d; its share is %v", kind, part, color, arrows(p, kind, side), use.Share)
			}
			if struck(p, kind, side) {
				t.Errorf("kind %v: a bar within its limit is marked", kind)
			}
			if got := labelColor(p, kind); got != want.color {
				t.Errorf("kind %v: its numbers are in %v", kind, got)
			}
		}
	}
	q := edited(t, r, func(c *car.Car) { c.Check.Factor = 10 })
	over := picture(q, &q.Ride, options())
	if part, _ := filled(t, over, scene.LowerBar, scene.Right); part != 1 || !struck(over, scene.LowerBar, scene.Right) {
		t.Errorf("a bar beyond its limit is filled by %v, not marked", part)
	}
	if got := labelColor(over, scene.LowerBar); got != scene.Bad {
		t.Errorf("the numbers of a bar beyond its limit are in %v", got)
	}
	// One that is within it here and beyond it elsewhere is marked too, and says where.
	o := options()
	o.Most = r.Envelope(nil)
	o.Most[launch.LowerRight][column.Push] = analysis.Demand{Bar: launch.LowerRight, Way: column.Push, Source: analysis.FromLaunch, Force: 1, Share: 1.57, Time: 0.054}
	p = picture(r, &r.Ride, o)
	if !struck(p, scene.LowerBar, scene.Right) || labelColor(p, scene.LowerBar) != scene.Bad || !strings.Contains(strings.Join(labels(p, scene.LowerBar), ""), "157 %") {
		t.Errorf("a bar beyond its limit in the launch is not marked: %q", labels(p, scene.LowerBar))
	}
	if struck(p, scene.LowerBar, scene.Left) || struck(p, scene.UpperBar, scene.Right) {
		t.Error("a bar within its limit is marked")
	}
	said := side.Describe(scene.ID{Kind: scene.LowerBar}, r, &r.Ride, o)
	if last := said[len(said)-1]; !strings.Contains(last, "157 %") {
		t.Errorf("under the pointer it says %q", said)
	}
}

// Bar lines end in the instant center, the line of action goes through it, and
// the 100 % line ends at the height of the center of gravity above the front
// contact: 19.5 in and 105 in.
func TestLinesMeetInTheInstantCenter(t *testing.T) {
	r := reference(t)
	p := picture(r, &r.Ride, options())
	ic := find(p, scene.InstantCenter)[0].Item.Points[0]
	if d := apart(ic, at(41.25, 11.84)); d > 0.01*inch {
		t.Errorf("the instant center is %v m from where it is to be", d)
	}
	for _, l := range find(p, scene.BarLine) {
		if end := l.Item.Points[1]; apart(end, ic) > 1e-9 {
			t.Errorf("bar line ends at %v, instant center is at %v", end, ic)
		}
	}
	action := find(p, scene.ActionLine)[0].Item.Points
	if d := r3.Norm(r3.Cross(r3.Unit(r3.Sub(action[1], action[0])), r3.Sub(ic, action[0]))); d > 1e-9 {
		t.Errorf("the line of action misses the instant center by %v m", d)
	}
	if whole := find(p, scene.WholeLine)[0].Item.Points; apart(whole[1], at(105, 19.5)) > 1e-9 {
		t.Errorf("the 100 %% line ends at %v", whole[1])
	}
}

// Away from ride height the bars stand as a ghost where they were there.
func TestRideHeightShowsOnlyAwayFromIt(t *testing.T) {
	r := reference(t)
	if n := len(find(picture(r, &r.Ride, options()), scene.RideHeight)); n != 0 {
		t.Errorf("%d ghost items at ride height", n)
	}
	found := find(picture(r, &r.Travel[0], options()), scene.RideHeight)
	bars := 0
	for _, d := range found {
		if len(d.Points) == 2 {
			want := [][2]r3.Vec{{at(2.5, 22.5), at(22.5, 17)}, {at(2.5, 11), at(25.5, 11.5)}}[bars]
			if bars++; apart(d.Item.Points[0], want[0]) > 1e-9 || apart(d.Item.Points[1], want[1]) > 1e-9 {
				t.Errorf("a bar is from %v to %v, want %v", d.Item.Points[0], d.Item.Points[1], want)
			}
		}
	}
	if bars != 2 {
		t.Errorf("%d bars at full droop", bars)
	}
}

func TestPicking(t *testing.T) {
	r := reference(t)
	p := picture(r, &r.Ride, options())
	on := func(x, z float64) r2.Vec { return p.View.Screen(at(x, z)) }
	for _, c := range []struct {
		what string
		at   r2.Vec
		want scene.ID
	}{
		{"pivot", on(25.5, 11.5), scene.ID{Kind: scene.Pivot, Row: car.ChassisLower, Index: 1}},
		{"pivot from the side", r2.Add(on(22.5, 17), r2.Vec{X: 7}), scene.ID{Kind: scene.Pivot, Row: car.ChassisUpper, Index: 2}},
		{"free hole", on(22.5, 18.5), scene.ID{Kind: scene.Hole, Row: car.ChassisUpper, Index: 0}},
		{"housing hole", on(2.5, 10.25), scene.ID{Kind: scene.Hole, Row: car.HousingLower, Index: 1}},
		{"upper bar", on(12.5, 19.75), scene.ID{Kind: scene.UpperBar, Side: scene.Right}},
		{"lower bar", on(14, 11.25), scene.ID{Kind: scene.LowerBar, Side: scene.Right}},
		{"instant center", on(41.25, 11.84), scene.ID{Kind: scene.InstantCenter}},
		{"tire", on(-14, 16), scene.ID{Kind: scene.RearTire, Side: scene.Right}},
		{"chassis plate", on(24.2, 14.5), scene.ID{Kind: scene.ChassisBody, Side: scene.Right}},
		{"nothing", on(33, 33), scene.ID{}},
	} {
		if got := p.Pick(c.at); got != c.want {
			t.Errorf("%s at %.0f: picked %+v, want %+v", c.what, c.at, got, c.want)
		}
	}
}

// A list is filled anew in the memory of the one before, with the same items.
func TestAListKeepsItsMemory(t *testing.T) {
	r := reference(t)
	var l scene.List
	side.Build(&l, r, &r.Ride, options())
	want := picture(r, &r.Ride, options())
	side.Build(&l, r, &r.Travel[0], options())
	side.Build(&l, r, &r.Ride, options())
	if len(l.Items) != len(want.Drawn) {
		t.Fatalf("%d items, at first %d", len(l.Items), len(want.Drawn))
	}
	for i := range l.Items {
		if a, b := l.Items[i], want.Drawn[i]; a.ID != b.ID || a.Shape != b.Shape || len(a.Points) != len(b.Points) || r3.Norm(r3.Sub(a.Points[0], b.Item.Points[0])) > 1e-12 {
			t.Errorf("item %d is %+v, at first %+v", i, a, *b.Item)
		}
	}
}

// Crossing, parallel and upright bars, odd travels and views draw without a
// panic or a coordinate that is no number, and bracket plates hold their holes.
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
		p := project(q, s, options(), side.ViewOfBars(200, 150, q))
		var holes []scene.Drawn
		for _, d := range p.Drawn {
			for _, at := range d.Points {
				if math.IsNaN(at.X+at.Y) || math.IsInf(at.X+at.Y, 0) {
					t.Fatalf("%+v is drawn at %v", d.ID, at)
				}
			}
			if d.ID.Kind == scene.Hole || d.ID.Kind == scene.Pivot {
				holes = append(holes, d)
			}
		}
		for kind, stroke := range map[scene.Kind]scene.Color{scene.ChassisBody: scene.Chassis, scene.HousingBody: scene.Housing} {
			for _, d := range find(p, kind) {
				if d.Shape == scene.Area && d.Stroke == stroke {
					for _, h := range holes {
						if h.ID.Row.OnChassis() == (kind == scene.ChassisBody) {
							holds(t, d.Item.Points, h.Item.Points[0])
						}
					}
				}
			}
		}
		renderer.Draw(img, 1, p, units.SI, &palette.Dark)
	})
}

// holds checks that a plate turns left all around and that a hole in it keeps half
// an inch to its edge.
func holds(t *rapid.T, plate []r3.Vec, hole r3.Vec) {
	for i, a := range plate {
		edge := r3.Unit(r3.Sub(plate[(i+1)%len(plate)], a))
		edge.Y = 0
		to := r3.Sub(hole, a)
		if inward := edge.X*to.Z - edge.Z*to.X; inward < 0.5*inch*math.Hypot(edge.X, edge.Z) {
			t.Fatalf("the hole at %v is %v m inside the plate's edge", hole, inward)
		}
	}
}

// The pixels of a bar have its color and the background its own.
func TestRendererPaintsThePicture(t *testing.T) {
	r := reference(t)
	p := picture(r, &r.Ride, options())
	img := image.NewRGBA(image.Rect(0, 0, 1600, 1200))
	scene.NewRenderer().Draw(img, 2, p, units.US, &palette.Light)
	pixel := func(x, z float64) color.RGBA {
		q := p.View.Screen(at(x, z))
		return img.RGBAAt(int(2*q.X), int(2*q.Y))
	}
	if got := pixel(14, 11.25); got != palette.Light.Push {
		t.Errorf("the lower bar is painted %v", got)
	}
	if got := pixel(12.5, 19.75); got != palette.Light.Pull {
		t.Errorf("the upper bar is painted %v", got)
	}
	if got := pixel(-6, 27); got != palette.Light.Tire {
		t.Errorf("the tire is painted %v", got)
	}
}

// A pivot's move, all of it: analysis, scene and drawing at the size that the
// side view has in a large window.
func BenchmarkDragFrame(b *testing.B) {
	r := reference(b)
	lib := carfile.Stock()
	renderer := scene.NewRenderer()
	img := image.NewRGBA(image.Rect(0, 0, 1280, 800))
	var l scene.List
	var p scene.Picture
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		c := r.Car.Clone()
		c.Chassis.Lower[1].Y += 0.01 * math.Sin(float64(i))
		q, err := analysis.Run(context.Background(), c, lib, analysis.Options{})
		if err != nil {
			b.Fatal(err)
		}
		side.Build(&l, q, &q.Ride, options())
		p.Project(l.Items, side.ViewOfBars(1280, 800, q))
		renderer.Draw(img, 1, &p, units.US, &palette.Light)
	}
}

// BenchmarkBuild lists what is drawn of a car and places it.
func BenchmarkBuild(b *testing.B) {
	r := demo(b)
	var l scene.List
	var p scene.Picture
	v := side.ViewOfBars(1280, 800, r)
	b.ReportAllocs()
	for b.Loop() {
		side.Build(&l, r, &r.Ride, options())
		p.Project(l.Items, v)
	}
}
