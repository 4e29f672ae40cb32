package scene

import (
	"context"
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

func everyone(int) bool { return true }

// ranking searches a car and ranks what is found.
func ranking(t testing.TB, c *car.Car, w holes.Wishes) []holes.Place {
	t.Helper()
	table, err := holes.Search(context.Background(), c, carfile.Stock(), holes.Options{Travels: 5})
	if err != nil {
		t.Fatal(err)
	}
	return holes.Rank(table, c, 0, holes.TargetOf(c), w)
}

// clouded returns the cloud of the reference car's combinations, with nothing
// marked.
func clouded(t testing.TB, r *analysis.Result) *Cloud {
	t.Helper()
	c := &Cloud{Present: -1, Pointed: -1, Picked: -1}
	c.Fill(ranking(t, r.Car, holes.Wishes{}), everyone, r.Car.Check.TargetAntiSquat, false)
	return c
}

// show builds and projects the car with options.
func show(r *analysis.Result, o Options) *Picture {
	p := new(Picture)
	p.Project(Build(nil, r, &r.Ride, o), FitLink(800, 600, r))
	return p
}

func swarmOf(t *testing.T, p *Picture) Drawn {
	t.Helper()
	for _, d := range p.Drawn {
		if d.Shape == Swarm {
			return d
		}
	}
	t.Fatal("no dots are drawn")
	return Drawn{}
}

// Each combination's dot stands where an analysis of a car in these holes puts
// the instant center.
func TestDotsAreInstantCenters(t *testing.T) {
	r := reference(t)
	o := options()
	o.Cloud = clouded(t, r)
	p := show(r, o)
	swarm := swarmOf(t, p)
	if len(swarm.Points) != 36 {
		t.Fatalf("%d dots of 36", len(swarm.Points))
	}
	for i, at := range swarm.Points {
		c := r.Car.Clone()
		c.Setups[0].Holes = o.Cloud.dots[i].place.Holes()
		q, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if want := p.View.Screen(q.Ride.InstantCenter); r2.Norm(r2.Sub(at, want)) > 1e-6 {
			t.Errorf("holes %v: dot at %v, instant center at %v", c.Setups[0].Holes, at, want)
		}
	}
}

func TestWithoutACloudNothingIsDrawnOfIt(t *testing.T) {
	r := reference(t)
	p := show(r, options())
	if n := len(find(p, Dot)) + len(find(p, TargetRay)); n != 0 || p.legend() != nil {
		t.Errorf("%d items", n)
	}
	o := options()
	o.Cloud = new(Cloud)
	if p := show(r, o); len(find(p, Dot)) != 0 || p.legend() != nil {
		t.Error("an empty cloud is drawn")
	}
}

// What is filtered out or breaks a wish stands behind the rest and is drawn
// fainter; of an older car all do.
func TestRuledOutDotsStandBack(t *testing.T) {
	r := reference(t)
	places := ranking(t, r.Car, holes.Wishes{OneBar: true})
	var c Cloud
	listed := func(index int) bool { return index%3 == 0 }
	c.Fill(places, listed, [2]float64{1, 1.6}, false)
	if c.faint == 0 || c.faint == len(c.dots) {
		t.Fatalf("%d of %d dots stand back: the test proves nothing", c.faint, len(c.dots))
	}
	for i, d := range c.dots {
		want := d.place.Unmet != 0 || !listed(d.place.Index)
		if d.faint != want || (i < c.faint) != want {
			t.Errorf("dot %d, holes %v: stands back %v, want %v", i, d.place.Holes(), d.faint, want)
		}
	}
	// The best one is on top.
	if top := c.dots[len(c.dots)-1].place; top.Unmet != 0 || slices.ContainsFunc(c.dots[c.faint:], func(d dot) bool { return d.place.Rank < top.Rank }) {
		t.Errorf("on top is rank %d", top.Rank)
	}
	c.Fill(places, everyone, [2]float64{1, 1.6}, true)
	if c.faint != len(c.dots) {
		t.Errorf("of an older car %d of %d dots stand back", c.faint, len(c.dots))
	}
}

func TestPickingDots(t *testing.T) {
	r := reference(t)
	o := options()
	o.Cloud = clouded(t, r)
	p := show(r, o)
	swarm := swarmOf(t, p)
	id := func(i int) ID { return ID{Kind: Dot, Index: o.Cloud.dots[i].place.Index} }
	for i, at := range swarm.Points {
		// The nearest of all dots, found one by one.
		for _, d := range []r2.Vec{{}, {X: 3, Y: -2}, {X: -1, Y: 5}, {X: 20, Y: 20}} {
			from := r2.Add(at, d)
			best := 0
			for j, q := range swarm.Points {
				if r2.Norm(r2.Sub(q, from)) < r2.Norm(r2.Sub(swarm.Points[best], from)) {
					best = j
				}
			}
			got := p.Pick(from)
			near := r2.Norm(r2.Sub(swarm.Points[best], from)) <= dotPick
			if near != (got.Kind == Dot) || near && r2.Norm(r2.Sub(swarm.Points[best], swarm.Points[indexOf(o.Cloud, got)])) > 1e-9 {
				t.Errorf("beside dot %d by %v: picked %+v, nearest is %+v", i, d, got, id(best))
			}
			if behind := p.PickBehind(from); behind.Kind == Dot {
				t.Errorf("behind the dots is %+v", behind)
			}
		}
	}
	// The present instant center's sign does not hide its dot.
	ic := p.View.Screen(r.Ride.InstantCenter)
	if got := p.Pick(ic); got.Kind != Dot || p.PickBehind(ic).Kind != InstantCenter {
		t.Errorf("at the instant center is %+v", got)
	}
}

func indexOf(c *Cloud, id ID) int {
	i, _ := c.find(id.Index)
	return i
}

// A pivot is taken hold of even where a dot is nearer to the pointer.
func TestPivotsComeBeforeDots(t *testing.T) {
	r := reference(t)
	o := options()
	o.Cloud = clouded(t, r)
	pivot := r.Ride.Pose.Ground.Point(r.Ride.Pose.ChassisLower)
	for i := range o.Cloud.points {
		o.Cloud.points[i] = r2.Add(pivot, r2.Vec{X: 0.01})
	}
	p := show(r, o)
	for _, at := range []r2.Vec{p.View.Screen(pivot), r2.Add(p.View.Screen(o.Cloud.points[0]), r2.Vec{X: 1})} {
		if got := p.Pick(at); got.Kind != Pivot || got.Row != car.ChassisLower {
			t.Errorf("at %v: picked %+v", at, got)
		}
	}
}

func TestMarkedDots(t *testing.T) {
	r := reference(t)
	o := options()
	c := clouded(t, r)
	o.Cloud = c
	c.Present, c.Picked, c.Pointed = c.dots[2].place.Index, c.dots[9].place.Index, c.dots[20].place.Index
	p := show(r, o)
	swarm := swarmOf(t, p)
	for shape, i := range map[Shape]int{Disc: 2, Diamond: 9, Sight: 20} {
		n := 0
		for _, d := range p.Drawn {
			if d.ID.Kind == Dot && d.Shape == shape {
				n++
				if r2.Norm(r2.Sub(d.Points[0], swarm.Points[i])) > 1e-9 || d.Radius < 5 {
					t.Errorf("shape %d at %v with radius %v, dot at %v", shape, d.Points[0], d.Radius, swarm.Points[i])
				}
			}
		}
		if n != 2 { // on a wider stroke of the background's color
			t.Errorf("shape %d is drawn %d times", shape, n)
		}
	}
	words := labels(p, Dot)
	pointed := c.dots[20].place
	if len(words) != 2 || words[0] != c.dots[9].place.Holes().String() || !strings.HasPrefix(words[1], pointed.Holes().String()+"  IC ") || !strings.Contains(words[1], "anti-squat") {
		t.Errorf("labels %q", words)
	}
	// Under the pointer the tag says it.
	o.Hot = ID{Kind: Dot, Index: c.Pointed}
	if words := labels(show(r, o), Dot); len(words) != 1 {
		t.Errorf("with the pointer there the labels are %q", words)
	}
	// An unknown one has no mark.
	c.Pointed, c.Picked, c.Present = -1, 10000, -1
	if n := len(find(show(r, o), Dot)); n != 1 {
		t.Errorf("%d items", n)
	}
}

// labels returns the words at items of a kind.
func labels(p *Picture, kind Kind) []string {
	var words []string
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.Shape == Label {
			words = append(words, d.Text)
		}
	}
	return words
}

func TestDotsNameThemselves(t *testing.T) {
	r := reference(t)
	o := options()
	o.Cloud = clouded(t, r)
	present := -1
	for i := range o.Cloud.dots {
		if p := o.Cloud.dots[i].place; p.Present {
			present = p.Index
		}
	}
	// The car's own figures of its first setup, from its analysis.
	words := strings.Join(Describe(ID{Kind: Dot, Index: present}, r, &r.Ride, o), "; ")
	share := 0.0
	for _, pair := range car.Pairs {
		for _, w := range r.Worst[pair] {
			share = math.Max(share, w.Share)
		}
	}
	for _, want := range []string{
		"Holes 3·2·1·1, the present ones", "IC " + units.US.Format(units.Length, r.Ride.InstantCenter.X) + " ahead",
		"anti-squat " + units.US.Format(units.Percent, r.Ride.AntiSquat), "largest load " + strings.TrimSuffix(units.SI.Format(units.Force, 100*share), " N") + " %",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("%q lacks %q", words, want)
		}
	}
	if strings.Contains(words, "ride height") || strings.Contains(words, "click") {
		t.Error(words)
	}
	other := o.Cloud.dots[0].place.Index
	words = strings.Join(Describe(ID{Kind: Dot, Index: other}, r, &r.Travel[0], o), "; ")
	if !strings.Contains(words, "both at ride height") || !strings.Contains(words, "double click") {
		t.Error(words)
	}
	o.Cloud.Outdated = true
	if words := strings.Join(Describe(ID{Kind: Dot, Index: other}, r, &r.Ride, o), "; "); !strings.Contains(words, "before the last edit") {
		t.Error(words)
	}
	for _, none := range []Options{o, options()} {
		if words := Describe(ID{Kind: Dot, Index: 10000}, r, &r.Ride, none); words != nil {
			t.Errorf("a dot that is not there is %q", words)
		}
	}
}

// Dots have the color of their anti-squat, and so has the legend's bar, in both
// themes and at both resolutions.
func TestCloudIsPainted(t *testing.T) {
	r := reference(t)
	o := options()
	o.Labels = false
	c := clouded(t, r)
	// One dot alone, where nothing else is drawn.
	c.points, c.dots = c.points[:1], c.dots[:1]
	c.points[0] = r2.Vec{X: 33 * inch, Y: 30 * inch}
	o.Cloud = c
	p := show(r, o)
	for theme, colors := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		for scale := 1; scale <= 2; scale++ {
			img := image.NewRGBA(image.Rect(0, 0, 800*scale, 600*scale))
			renderer := NewRenderer()
			paint := func() { renderer.Draw(img, float64(scale), p, units.US, colors) }
			at := func(q r2.Vec) color.RGBA { return img.RGBAAt(int(float64(scale)*q.X), int(float64(scale)*q.Y)) }
			c.dots[0].faint = false
			paint()
			want := c.scale.Shade(&colors.Squat, c.dots[0].place.Combination().AntiSquat)
			if got := at(p.View.Screen(c.points[0])); got != want {
				t.Errorf("%s %d×: the dot is %v, want %v", theme, scale, got, want)
			}
			c.dots[0].faint = true
			paint()
			if got := at(p.View.Screen(c.points[0])); got == want || got == colors.Background {
				t.Errorf("%s %d×: standing back the dot is %v", theme, scale, got)
			}
			frame := legendBox(p.View)
			bar := func(part float64) color.RGBA {
				return at(r2.Vec{X: frame.left + legendPad + part*(legendWidth-2*legendPad), Y: frame.top + 23 + legendBar/2})
			}
			s := colors.Squat
			for part, want := range map[float64]color.RGBA{0.004: s.Below[palette.Shades-1], 0.5: s.Inside, 0.99: s.Above[palette.Shades-1]} {
				if got := bar(part); got != want {
					t.Errorf("%s %d×: the legend's bar at %v is %v, want %v", theme, scale, part, got, want)
				}
			}
		}
	}
}

// The colors' scale has round ends and a width, whatever the target.
func TestScaleSuitsTheTarget(t *testing.T) {
	for target, want := range map[[2]float64][2]float64{
		{1, 1.6}:       {0.4, 2.2},
		{1.2, 1.21}:    {1, 1.41},
		{-0.3, 0.1}:    {-0.7, 0.5},
		{0.987, 1.332}: {0.64, 1.68},
	} {
		var c Cloud
		c.Fill(nil, everyone, target, false)
		if c.scale.Low != want[0] || c.scale.High != want[1] || c.scale.Target != target {
			t.Errorf("target %v: scale %+v", target, c.scale)
		}
	}
}

func TestALabelBeyondThePictureStaysAtItsEdge(t *testing.T) {
	for at, want := range map[r2.Vec]string{
		{X: 400, Y: 300}: "here", {X: 900, Y: 300}: "here →", {X: -50, Y: 20}: "← here", {X: 400, Y: -80}: "↑ here", {X: 420, Y: 2000}: "↓ here",
	} {
		in, text := kept(at, "here", 800, 600)
		if text != want || in.X < nearEdge || in.X > 800-nearEdge || in.Y < nearEdge || in.Y > 600-nearEdge {
			t.Errorf("from %v: %q at %v", at, text, in)
		}
	}
}
