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
	"bowline/model/holes"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
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

// cloudOf returns the cloud of a car's combinations, with nothing marked.
func cloudOf(t testing.TB, r *analysis.Result) *side.Cloud {
	t.Helper()
	c := &side.Cloud{Present: -1, Pointed: -1, Picked: -1}
	c.Fill(ranking(t, r.Car, holes.Wishes{}), everyone, r.Car.Check.TargetAntiSquat, false)
	return c
}

// withCloud are options that show a cloud.
func withCloud(c *side.Cloud) side.Options {
	o := options()
	o.Cloud = c
	return o
}

// swarmOf returns the dots that are drawn.
func swarmOf(t testing.TB, p *scene.Picture) scene.Drawn {
	t.Helper()
	for _, d := range p.Drawn {
		if d.Shape == scene.Swarm {
			return d
		}
	}
	t.Fatal("no dots are drawn")
	return scene.Drawn{}
}

// crowded shows the reference car with all its dots in one place of the side
// view.
func crowded(t testing.TB, o side.Options, place r3.Vec) *scene.Picture {
	t.Helper()
	r := reference(t)
	o.Cloud = cloudOf(t, r)
	p := picture(r, &r.Ride, o)
	var items []scene.Item
	for _, d := range p.Drawn {
		items = append(items, *d.Item)
	}
	points := swarmOf(t, p).Item.Points
	for i := range points {
		points[i] = place
	}
	p.Project(items, p.View)
	return p
}

// Each combination's dot stands where an analysis of a car in these holes puts
// the instant center, and its color stands for the anti-squat found there.
func TestDotsAreInstantCenters(t *testing.T) {
	r := reference(t)
	o := withCloud(cloudOf(t, r))
	swarm := swarmOf(t, picture(r, &r.Ride, o))
	if len(swarm.Points) != 36 || len(swarm.Dots.List) != 36 {
		t.Fatalf("%d dots of 36", len(swarm.Points))
	}
	for i, dot := range swarm.Dots.List {
		place, ok := o.Cloud.Place(dot.Index)
		if !ok {
			t.Fatalf("dot %d is of no combination", i)
		}
		q := edited(t, r, func(c *car.Car) { c.Setups[0].Holes = place.Holes() })
		if d := apart(swarm.Item.Points[i], seen(q.Ride.InstantCenter)); d > 1e-9 {
			t.Errorf("holes %v: the dot is %v m from the instant center", place.Holes(), d)
		}
		if dot.HasValue != q.Ride.HasAntiSquat || math.Abs(dot.Value-q.Ride.AntiSquat) > 1e-9 {
			t.Errorf("holes %v: anti-squat %v, the dot stands for %v", place.Holes(), q.Ride.AntiSquat, dot.Value)
		}
	}
}

func TestWithoutACloudNothingIsDrawnOfIt(t *testing.T) {
	r := reference(t)
	for _, o := range []side.Options{options(), withCloud(new(side.Cloud))} {
		p := picture(r, &r.Ride, o)
		if n := len(find(p, scene.Combination)) + len(find(p, scene.TargetRay)); n != 0 {
			t.Errorf("%d items", n)
		}
	}
}

// What is filtered out or breaks a wish stands behind the rest and is drawn
// fainter, as the legend says; of an older car all does.
func TestRuledOutDotsStandBack(t *testing.T) {
	r := reference(t)
	places := ranking(t, r.Car, holes.Wishes{OneBar: true})
	listed := func(index int) bool { return index%3 == 0 }
	c := new(side.Cloud)
	dots := func() *scene.Dots { return swarmOf(t, picture(r, &r.Ride, withCloud(c))).Dots }
	c.Fill(places, listed, [2]float64{1, 1.6}, false)
	faint := 0
	for i, d := range dots().List {
		place, _ := c.Place(d.Index)
		if want := place.Unmet != 0 || !listed(place.Index); d.Faint != want {
			t.Errorf("dot %d, holes %v: stands back %v, want %v", i, place.Holes(), d.Faint, want)
		}
		if d.Faint {
			if faint++; faint != i+1 {
				t.Errorf("dot %d stands back in front of one that does not", i)
			}
		}
	}
	list := dots().List
	if faint == 0 || faint == len(list) {
		t.Fatalf("%d of %d dots stand back: the test proves nothing", faint, len(list))
	}
	if title := dots().Title; !strings.Contains(title, "faint") {
		t.Errorf("the legend is %q", title)
	}
	// The best one is on top.
	rank := func(d scene.Dot) int {
		place, _ := c.Place(d.Index)
		return place.Rank
	}
	top := list[len(list)-1]
	if slices.ContainsFunc(list[faint:], func(d scene.Dot) bool { return rank(d) < rank(top) }) {
		t.Errorf("on top is rank %d", rank(top))
	}
	c.Fill(places, everyone, [2]float64{1, 1.6}, true)
	if i := slices.IndexFunc(dots().List, func(d scene.Dot) bool { return !d.Faint }); i >= 0 {
		t.Errorf("dot %d of an older car does not stand back", i)
	}
	if title := cloudDots(t, cloudOf(t, r)).Title; strings.Contains(title, "faint") {
		t.Errorf("without faint dots the legend is %q", title)
	}
}

// cloudDots returns the dots of a cloud as they are drawn.
func cloudDots(t testing.TB, c *side.Cloud) *scene.Dots {
	r := reference(t)
	return swarmOf(t, picture(r, &r.Ride, withCloud(c))).Dots
}

func TestPickingDots(t *testing.T) {
	r := reference(t)
	o := withCloud(cloudOf(t, r))
	o.Labels = false // which would be over some
	p := picture(r, &r.Ride, o)
	swarm := swarmOf(t, p)
	number := func(id scene.ID) int {
		return slices.IndexFunc(swarm.Dots.List, func(d scene.Dot) bool { return d.Index == id.Index })
	}
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
			near := r2.Norm(r2.Sub(swarm.Points[best], from)) <= swarm.Pick
			if near != (got.Kind == scene.Combination) || near && r2.Norm(r2.Sub(swarm.Points[best], swarm.Points[number(got)])) > 1e-9 {
				t.Errorf("beside dot %d by %v: picked %+v, nearest is dot %d", i, d, got, best)
			}
			if behind := p.PickBehind(from); behind.Kind == scene.Combination {
				t.Errorf("behind the dots is %+v", behind)
			}
		}
	}
	// The present instant center's sign does not hide its dot.
	ic := p.View.Screen(seen(r.Ride.InstantCenter))
	if got := p.Pick(ic); got.Kind != scene.Combination || p.PickBehind(ic).Kind != scene.InstantCenter {
		t.Errorf("at the instant center is %+v", got)
	}
}

// A pivot is taken hold of even where a dot is nearer to the pointer.
func TestPivotsComeBeforeDots(t *testing.T) {
	pivot := at(25.5, 11.5)
	dot := r3.Add(pivot, r3.Vec{X: 0.01})
	p := crowded(t, options(), dot)
	for _, at := range []r2.Vec{p.View.Screen(pivot), r2.Add(p.View.Screen(dot), r2.Vec{X: 1})} {
		if got := p.Pick(at); got.Kind != scene.Pivot || got.Row != car.ChassisLower {
			t.Errorf("at %v: picked %+v", at, got)
		}
	}
}

// The present combination is ringed, the one picked has a diamond and the one
// pointed at a sight; they are named, the one under the pointer by the tag.
func TestMarkedDots(t *testing.T) {
	r := reference(t)
	c := cloudOf(t, r)
	o := withCloud(c)
	swarm := swarmOf(t, picture(r, &r.Ride, o))
	index := func(i int) int { return swarm.Dots.List[i].Index }
	c.Present, c.Picked, c.Pointed = index(2), index(9), index(20)
	p := picture(r, &r.Ride, o)
	for shape, i := range map[scene.Shape]int{scene.Disc: 2, scene.Diamond: 9, scene.Sight: 20} {
		n := 0
		for _, d := range p.Drawn {
			if d.ID.Kind == scene.Combination && d.Shape == shape {
				n++
				if d.ID.Index != index(i) || apart(d.Item.Points[0], swarm.Item.Points[i]) > 1e-9 || d.Radius < 5 {
					t.Errorf("shape %d at %v with radius %v, dot at %v", shape, d.Points[0], d.Radius, swarm.Points[i])
				}
			}
		}
		if n == 0 {
			t.Errorf("shape %d is not drawn", shape)
		}
	}
	words := labels(p, scene.Combination)
	picked, _ := c.Place(c.Picked)
	pointed, _ := c.Place(c.Pointed)
	if len(words) != 2 || words[0] != picked.Holes().String() || !strings.HasPrefix(words[1], pointed.Holes().String()+", anti-squat ") || !strings.Contains(words[1], " IC ") {
		t.Errorf("labels %q", words)
	}
	// Under the pointer the tag says it.
	o.Hot = scene.ID{Kind: scene.Combination, Index: c.Pointed}
	if words := labels(picture(r, &r.Ride, o), scene.Combination); len(words) != 1 {
		t.Errorf("with the pointer there the labels are %q", words)
	}
	// An unknown one has no mark.
	c.Pointed, c.Picked, c.Present = -1, 10000, -1
	if n := len(find(picture(r, &r.Ride, o), scene.Combination)); n != 1 {
		t.Errorf("%d items", n)
	}
}

func TestDotsNameThemselves(t *testing.T) {
	r := reference(t)
	c := cloudOf(t, r)
	o := withCloud(c)
	present, other := -1, -1
	for _, d := range cloudDots(t, c).List {
		if place, _ := c.Place(d.Index); place.Present {
			present = d.Index
		} else {
			other = d.Index
		}
	}
	// The car's own figures of its first setup, from its analysis.
	words := say(scene.ID{Kind: scene.Combination, Index: present}, r, &r.Ride, o)
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
	id := scene.ID{Kind: scene.Combination, Index: other}
	if words := say(id, r, &r.Travel[0], o); !strings.Contains(words, "both at ride height") || !strings.Contains(words, "double click") {
		t.Error(words)
	}
	c.Outdated = true
	if words := say(id, r, &r.Ride, o); !strings.Contains(words, "before the last edit") {
		t.Error(words)
	}
	if words := side.Describe(scene.ID{Kind: scene.Combination, Index: 10000}, r, &r.Ride, o); words != nil {
		t.Errorf("a dot that is not there is %q", words)
	}
}

// The colors' scale has round ends and a width, whatever the target.
func TestScaleSuitsTheTarget(t *testing.T) {
	r := reference(t)
	places := ranking(t, r.Car, holes.Wishes{})
	for target, want := range map[[2]float64][2]float64{
		{1, 1.6}:       {0.4, 2.2},
		{1.2, 1.21}:    {1, 1.41},
		{-0.3, 0.1}:    {-0.7, 0.5},
		{0.987, 1.332}: {0.64, 1.68},
	} {
		c := new(side.Cloud)
		c.Fill(places, everyone, target, false)
		if s := cloudDots(t, c).Scale; s.Low != want[0] || s.High != want[1] || s.Target != target {
			t.Errorf("target %v: scale %+v", target, s)
		}
	}
}

// Outline, word and handles of the target stand above the dots, and so do the
// marks of some of them; the fill, which would change their colors, is below.
func TestTheTargetStandsAboveTheDots(t *testing.T) {
	r := reference(t)
	o := withCloud(cloudOf(t, r))
	o.Tuning, o.Hot = true, scene.ID{Kind: scene.TargetBox, Index: int(side.AllEdges)}
	o.Cloud.Present = cloudDots(t, o.Cloud).List[3].Index
	swarm, fill, outline, handles, marks := -1, -1, -1, 0, 0
	p := picture(r, &r.Ride, o)
	for i, d := range p.Drawn {
		switch {
		case d.Shape == scene.Swarm:
			swarm = i
		case d.ID.Kind == scene.TargetBox && d.Fill == scene.Target:
			fill = i
		case d.ID.Kind == scene.TargetBox && d.Shape == scene.Area && d.Stroke == scene.Good:
			outline = i
		case swarm < 0:
		case d.ID.Kind == scene.TargetBox && d.Shape == scene.Disc:
			handles++
		case d.ID.Kind == scene.Combination && d.Shape == scene.Disc, d.ID.Kind == scene.InstantCenter && d.Shape == scene.Disc:
			marks++
		}
	}
	if fill < 0 || fill > swarm || outline < swarm || handles != 8 || marks < 2 {
		t.Errorf("fill %d, dots %d, outline %d; above the dots are %d handles and %d marks", fill, swarm, outline, handles, marks)
	}
	if words := labels(p, scene.TargetBox); !slices.Equal(words, []string{"target"}) {
		t.Errorf("labels %q", words)
	}
	// Dots right under the outline, on the rear edge, do not show through.
	edge := at(40, 11.6)
	o.Labels, o.Hot, o.Cloud = false, scene.ID{}, nil
	var seen [2][3]color.RGBA
	for i, place := range []r3.Vec{edge, {X: -1}} {
		p := crowded(t, o, place)
		img := image.NewRGBA(image.Rect(0, 0, 800, 600))
		scene.NewRenderer().Draw(img, 1, p, units.US, &palette.Light)
		q := p.View.Screen(edge)
		for j := range seen[i] {
			seen[i][j] = img.RGBAAt(int(q.X)-1+j, int(q.Y))
		}
	}
	if seen[0] != seen[1] || seen[0][0] == seen[0][1] && seen[0][1] == seen[0][2] {
		t.Errorf("the outline on a dot is %v, elsewhere %v", seen[0], seen[1])
	}
}

// Pressing at the target's edge or a handle takes hold of that, so that is what
// stands under the pointer there, even on a dot; within the box dots come first.
func TestTheTargetsEdgesComeBeforeDots(t *testing.T) {
	r := reference(t)
	o := withCloud(cloudOf(t, r))
	o.Tuning = true
	for _, c := range []struct {
		dot  r3.Vec
		want side.Edges // 0 for the dot
		say  string
	}{
		{at(40, 8), side.RearEdge, "Target for the instant center, rear edge"},
		{at(43, 14), side.UpperEdge, "Target for the instant center, upper edge"},
		{at(60, 6), side.FrontEdge | side.LowerEdge, "Target for the instant center, front lower corner"},
		{at(55, 9), 0, "Holes "},
	} {
		p := crowded(t, o, c.dot)
		got := p.Pick(p.View.Screen(c.dot))
		want := got.Kind == scene.Combination
		if c.want != 0 {
			want = got == scene.ID{Kind: scene.TargetBox, Index: int(c.want)}
		}
		if words := say(got, r, &r.Ride, o); !want || !strings.HasPrefix(words, c.say) {
			t.Errorf("at %v: %+v, %q; want edges %b", c.dot, got, words, c.want)
		}
		if behind := p.PickBehind(p.View.Screen(c.dot)); behind.Kind != scene.TargetBox || c.want != 0 && behind != got {
			t.Errorf("at %v: behind the dot is %+v", c.dot, behind)
		}
	}
}
