package side

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/units"

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
func show(r *analysis.Result, o Options) *scene.Picture {
	p := new(scene.Picture)
	p.Project(Build(nil, r, &r.Ride, o), FitLink(800, 600, r))
	return p
}

func swarmOf(t *testing.T, p *scene.Picture) scene.Drawn {
	t.Helper()
	for _, d := range p.Drawn {
		if d.Shape == scene.Swarm {
			return d
		}
	}
	t.Fatal("no dots are drawn")
	return scene.Drawn{}
}

// Each combination's dot stands where an analysis of a car in these holes puts
// the instant center, and its color stands for the anti-squat found there.
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
		c.Setups[0].Holes = o.Cloud.places[i].Holes()
		q, err := analysis.Run(context.Background(), c, carfile.Stock(), analysis.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if want := p.View.Screen(q.Ride.InstantCenter); r2.Norm(r2.Sub(at, want)) > 1e-6 {
			t.Errorf("holes %v: dot at %v, instant center at %v", c.Setups[0].Holes, at, want)
		}
		if dot := swarm.Dots.List[i]; dot.HasValue != q.Ride.HasAntiSquat || math.Abs(dot.Value-q.Ride.AntiSquat) > 1e-9 {
			t.Errorf("holes %v: anti-squat %v, the dot stands for %v", c.Setups[0].Holes, q.Ride.AntiSquat, dot.Value)
		}
	}
}

func TestWithoutACloudNothingIsDrawnOfIt(t *testing.T) {
	r := reference(t)
	p := show(r, options())
	if n := len(find(p, scene.Combination)) + len(find(p, scene.TargetRay)); n != 0 {
		t.Errorf("%d items", n)
	}
	o := options()
	o.Cloud = new(Cloud)
	if p := show(r, o); len(find(p, scene.Combination)) != 0 {
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
	if c.faint == 0 || c.faint == len(c.places) {
		t.Fatalf("%d of %d dots stand back: the test proves nothing", c.faint, len(c.places))
	}
	for i, p := range c.places {
		want := p.Unmet != 0 || !listed(p.Index)
		if faint := c.dots.List[i].Faint; faint != want || (i < c.faint) != want {
			t.Errorf("dot %d, holes %v: stands back %v, want %v", i, p.Holes(), faint, want)
		}
	}
	// The best one is on top.
	if top := c.places[len(c.places)-1]; top.Unmet != 0 || slices.ContainsFunc(c.places[c.faint:], func(p *holes.Place) bool { return p.Rank < top.Rank }) {
		t.Errorf("on top is rank %d", top.Rank)
	}
	c.Fill(places, everyone, [2]float64{1, 1.6}, true)
	if c.faint != len(c.places) {
		t.Errorf("of an older car %d of %d dots stand back", c.faint, len(c.places))
	}
}

func TestPickingDots(t *testing.T) {
	r := reference(t)
	o := options()
	o.Cloud = clouded(t, r)
	p := show(r, o)
	swarm := swarmOf(t, p)
	id := func(i int) scene.ID { return scene.ID{Kind: scene.Combination, Index: o.Cloud.places[i].Index} }
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
			if near != (got.Kind == scene.Combination) || near && r2.Norm(r2.Sub(swarm.Points[best], swarm.Points[indexOf(o.Cloud, got)])) > 1e-9 {
				t.Errorf("beside dot %d by %v: picked %+v, nearest is %+v", i, d, got, id(best))
			}
			if behind := p.PickBehind(from); behind.Kind == scene.Combination {
				t.Errorf("behind the dots is %+v", behind)
			}
		}
	}
	// The present instant center's sign does not hide its dot.
	ic := p.View.Screen(r.Ride.InstantCenter)
	if got := p.Pick(ic); got.Kind != scene.Combination || p.PickBehind(ic).Kind != scene.InstantCenter {
		t.Errorf("at the instant center is %+v", got)
	}
}

func indexOf(c *Cloud, id scene.ID) int {
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
		if got := p.Pick(at); got.Kind != scene.Pivot || got.Row != car.ChassisLower {
			t.Errorf("at %v: picked %+v", at, got)
		}
	}
}

func TestMarkedDots(t *testing.T) {
	r := reference(t)
	o := options()
	c := clouded(t, r)
	o.Cloud = c
	c.Present, c.Picked, c.Pointed = c.places[2].Index, c.places[9].Index, c.places[20].Index
	p := show(r, o)
	swarm := swarmOf(t, p)
	for shape, i := range map[scene.Shape]int{scene.Disc: 2, scene.Diamond: 9, scene.Sight: 20} {
		n := 0
		for _, d := range p.Drawn {
			if d.ID.Kind == scene.Combination && d.Shape == shape {
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
	words := labels(p, scene.Combination)
	pointed := c.places[20]
	if len(words) != 2 || words[0] != c.places[9].Holes().String() || !strings.HasPrefix(words[1], pointed.Holes().String()+"  IC ") || !strings.Contains(words[1], "anti-squat") {
		t.Errorf("labels %q", words)
	}
	// Under the pointer the tag says it.
	o.Hot = scene.ID{Kind: scene.Combination, Index: c.Pointed}
	if words := labels(show(r, o), scene.Combination); len(words) != 1 {
		t.Errorf("with the pointer there the labels are %q", words)
	}
	// An unknown one has no mark.
	c.Pointed, c.Picked, c.Present = -1, 10000, -1
	if n := len(find(show(r, o), scene.Combination)); n != 1 {
		t.Errorf("%d items", n)
	}
}

// labels returns the words at items of a kind.
func labels(p *scene.Picture, kind scene.Kind) []string {
	var words []string
	for _, d := range p.Drawn {
		if d.ID.Kind == kind && d.Shape == scene.Label {
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
	for i := range o.Cloud.places {
		if p := o.Cloud.places[i]; p.Present {
			present = p.Index
		}
	}
	// The car's own figures of its first setup, from its analysis.
	words := strings.Join(Describe(scene.ID{Kind: scene.Combination, Index: present}, r, &r.Ride, o), "; ")
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
	other := o.Cloud.places[0].Index
	words = strings.Join(Describe(scene.ID{Kind: scene.Combination, Index: other}, r, &r.Travel[0], o), "; ")
	if !strings.Contains(words, "both at ride height") || !strings.Contains(words, "double click") {
		t.Error(words)
	}
	o.Cloud.Outdated = true
	if words := strings.Join(Describe(scene.ID{Kind: scene.Combination, Index: other}, r, &r.Ride, o), "; "); !strings.Contains(words, "before the last edit") {
		t.Error(words)
	}
	for _, none := range []Options{o, options()} {
		if words := Describe(scene.ID{Kind: scene.Combination, Index: 10000}, r, &r.Ride, none); words != nil {
			t.Errorf("a dot that is not there is %q", words)
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
		if c.dots.Scale.Low != want[0] || c.dots.Scale.High != want[1] || c.dots.Scale.Target != target {
			t.Errorf("target %v: scale %+v", target, c.dots.Scale)
		}
	}
}
