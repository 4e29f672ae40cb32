package side

import (
	"slices"
	"strings"

	"bowline/app/scene"
	"bowline/model/analysis"
	"bowline/model/holes"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Cloud is where the instant centers of combinations of holes are at ride
// height. Fill makes it ready; the zero value is empty.
type Cloud struct {
	Present, Pointed, Picked int  // indices of combinations, below zero none
	Outdated                 bool // they belong to the car as it was before an edit

	By    *holes.Column // what the dots' colors stand for; nil for anti-squat at ride height
	Units units.System  // that the legend of By is in

	points []r3.Vec       // ground frame at ride height, back to front [m]
	places []*holes.Place // of the points
	dots   scene.Dots     // likewise; those filtered out, breaking a wish or of an older car are faint
	faint  int            // how many of them are
	most   *extent
}

// Fill makes the cloud one of places by rank, colored by By or around the target for
// anti-squat. Those not listed and those that break a wish stand back. It reuses
// the cloud's memory and refers to the places.
func (c *Cloud) Fill(places []holes.Place, listed func(index int) bool, target [2]float64, outdated bool) {
	c.points, c.places, c.most, c.Outdated = c.points[:0], c.places[:0], nil, outdated
	list := c.dots.List[:0]
	c.dots = c.colored(places, target)
	for _, faint := range []bool{true, false} {
		for i := len(places) - 1; i >= 0; i-- {
			p := &places[i]
			k := p.Combination()
			if !k.Usable() || !k.HasInstantCenter || (outdated || p.Unmet != 0 || !listed(p.Index)) != faint {
				continue
			}
			c.points = append(c.points, across(k.InstantCenter, 0))
			c.places = append(c.places, p)
			x, ok := c.value(p)
			list = append(list, scene.Dot{Index: p.Index, Value: x, HasValue: ok, Faint: faint})
		}
		if faint {
			c.faint = len(c.places)
		}
	}
	c.dots.List = list
	if c.faint > 0 {
		c.dots.Title += "; faint: ruled out"
	}
}

// Empty reports whether the cloud has no dots.
func (c *Cloud) Empty() bool { return len(c.points) == 0 }

// find returns the number of the dot of a combination.
func (c *Cloud) find(index int) (int, bool) {
	if c == nil || index < 0 {
		return 0, false
	}
	i := slices.IndexFunc(c.dots.List, func(d scene.Dot) bool { return d.Index == index })
	return i, i >= 0
}

// Place returns the place of a combination that has a dot.
func (c *Cloud) Place(index int) (*holes.Place, bool) {
	i, ok := c.find(index)
	if !ok {
		return nil, false
	}
	return c.places[i], true
}

// mostOf is the part of the dots, in the middle of each direction, that a fitted
// view shows.
const mostOf = 0.95

// extent is the box around most of a cloud's dots within a larger one.
type extent struct {
	within [2]r2.Vec // corners of the larger box [m]
	found  [2]r2.Vec // corners of the smaller one [m]
	ok     bool      // there are dots within
}

// bounds returns corners around most of the dots between two corners that do not
// stand back, or of all there if all do, and false without dots.
func (c *Cloud) bounds(least, greatest r2.Vec) (low, high r2.Vec, ok bool) {
	if c == nil {
		return low, high, false
	}
	if within := [2]r2.Vec{least, greatest}; c.most == nil || c.most.within != within {
		shown := c.points[c.faint:]
		if len(shown) == 0 {
			shown = c.points
		}
		c.most = extentOf(shown, within)
	}
	return c.most.found[0], c.most.found[1], c.most.ok
}

// extentOf returns the box around most of the points that are within another.
func extentOf(points []r3.Vec, within [2]r2.Vec) *extent {
	e := &extent{within: within}
	var side [2][]float64
	for _, p := range points {
		if p.X >= within[0].X && p.X <= within[1].X && p.Z >= within[0].Y && p.Z <= within[1].Y {
			side[0], side[1] = append(side[0], p.X), append(side[1], p.Z)
		}
	}
	n := len(side[0])
	if n == 0 {
		return e
	}
	cut := int(float64(n) * (1 - mostOf) / 2)
	for _, s := range side {
		slices.Sort(s)
	}
	e.found = [2]r2.Vec{{X: side[0][cut], Y: side[1][cut]}, {X: side[0][n-1-cut], Y: side[1][n-1-cut]}}
	e.ok = true
	return e
}

// dotReach is the radius of a dot where the view is not far in or out [m].
const dotReach = 0.27 * units.Inch

// How near a dot a pointer must come, and the sizes of the marks around some of
// them [px].
const (
	dotPick     = 6.0
	presentMark = 9.5
	pickedMark  = 10.0
	pointedMark = 6.5
)

// cloud draws the dots.
func (b *builder) cloud() {
	c := b.options.Cloud
	if c == nil || len(c.points) == 0 {
		return
	}
	b.add(scene.Item{ID: scene.ID{Kind: scene.Combination}, Shape: scene.Swarm, Points: c.points, Radius: dotReach, Pick: dotPick, Dots: &c.dots})
}

// cloudMarks draws the signs of the present combination, a ring, of the one
// picked, a diamond, and of the one pointed at, a sight.
func (b *builder) cloudMarks() {
	c := b.options.Cloud
	if c == nil {
		return
	}
	for _, m := range []struct {
		index int
		shape scene.Shape
		size  float64
		color scene.Color
	}{{c.Present, scene.Disc, presentMark, scene.Ink}, {c.Picked, scene.Diamond, pickedMark, scene.Ink}, {c.Pointed, scene.Sight, pointedMark, scene.Ink}} {
		i, ok := c.find(m.index)
		if !ok {
			continue
		}
		at, id := c.points[i:i+1], scene.ID{Kind: scene.Combination, Index: m.index}
		b.add(scene.Item{ID: id, Shape: m.shape, Points: at, Pixels: m.size, Stroke: scene.Background, Width: 4})
		b.add(scene.Item{ID: id, Shape: m.shape, Points: at, Pixels: m.size, Stroke: m.color, Width: line})
		place := c.places[i]
		switch {
		case m.shape == scene.Sight && b.options.Hot.Kind != scene.Combination: // else the tag beside the pointer names it
			name, figure := centerText(place, b.options.Units)
			b.label(id, at[0], name, figure, scene.Ink, r2.Vec{Y: -1}, scene.Foremost)
			b.stay()
		case m.shape == scene.Diamond && c.Pointed != c.Picked:
			b.label(id, at[0], place.Holes().String(), "", scene.Ink, r2.Vec{Y: 1}, scene.Foremost)
		}
	}
}

// centerText names a place with its anti-squat, and writes its instant center.
func centerText(p *holes.Place, u units.System) (name, figure string) {
	c := p.Combination()
	name = p.Holes().String()
	if c.HasAntiSquat {
		name += ", anti-squat " + units.WholePercent(c.AntiSquat)
	}
	return name, "IC " + centerWords(c.InstantCenter, u)
}

// describe names a combination.
func (c *Cloud) describe(index int, s *analysis.Station, o Options) []string {
	p, ok := c.Place(index)
	if !ok {
		return nil
	}
	k := p.Combination()
	length := func(x float64) string { return o.Units.Format(units.Length, x) }
	first := "Holes " + p.Holes().String()
	if p.Present {
		first += ", the present ones"
	}
	squat := "anti-squat has no value"
	if k.HasAntiSquat {
		squat = "anti-squat " + o.Units.Format(units.Percent, k.AntiSquat)
	}
	lines := []string{
		first,
		squat + ", IC " + length(k.InstantCenter.X) + " ahead, " + length(k.InstantCenter.Y) + " up",
		"largest load " + units.Share(k.Highest()) + " of its limit",
	}
	if o.away(s) {
		lines[1] += ", both at ride height"
	}
	if c.By != nil {
		lines = append(lines, strings.ReplaceAll(c.By.Title, "\n", " ")+" "+c.By.Text(p, o.Units))
	}
	switch i, _ := c.find(index); {
	case c.Outdated:
		lines = append(lines, "as the car was before the last edit")
	case p.Unmet != 0:
		lines = append(lines, "stands back: a wish is not met")
	case c.dots.List[i].Faint:
		lines = append(lines, "stands back: a condition is not met")
	}
	if p.Present {
		return lines
	}
	return append(lines, "click for a closer look, double click to use them")
}
