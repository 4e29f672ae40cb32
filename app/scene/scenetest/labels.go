// Package scenetest tests what a viewpoint shows.
package scenetest

import (
	"fmt"
	"math"
	"testing"

	"bowline/app/scene"
	"bowline/app/study"

	"gonum.org/v1/gonum/spatial/r2"
)

// PlayLabels plays the launch of a study, every tenth instant of it, in a small, a middle
// and a large picture and each of a viewpoint's fits. It is an error when labels lie on each
// other, on pivots, instant center or center of gravity, or beyond the picture, when a
// leader runs through another label, when one of a bar or the instant center is left out,
// and when one jumps that could have stayed.
func PlayLabels(t *testing.T, s *study.Study, v scene.Viewpoint) {
	t.Helper()
	for _, size := range []r2.Vec{{X: 467, Y: 260}, {X: 820, Y: 420}, {X: 1500, Y: 800}} {
		for fit, f := range v.Fits() {
			w := &watch{t: t, what: fmt.Sprintf("%v × %v, fit %d", size.X, size.Y, fit)}
			view := f.Framing(size.X, size.Y).View
			var list scene.List
			var p scene.Picture
			for i := 0; i < len(s.Launch().Time); i += 10 {
				s.SetTime(s.Launch().Time[i])
				v.Fill(&list, scene.Pointer{})
				p.Project(list.Items, view)
				w.see(&p, s.Time())
			}
			t.Logf("%s: %d pictures, %d labels, %d left out, %d jumps", w.what, w.pictures, w.labels, w.leftOut, w.jumps)
			if w.labels < 2*w.pictures || w.jumps > w.pictures/10 {
				t.Errorf("%s: %d labels in %d pictures jump %d times", w.what, w.labels, w.pictures, w.jumps)
			}
		}
	}
}

// CheckLabels reports what is wrong with the labels of a picture by itself.
func CheckLabels(t *testing.T, p *scene.Picture, what string) {
	t.Helper()
	picture := scene.Box{Right: p.View.Width, Bottom: p.View.Height}
	for i, l := range p.Labels {
		if !l.Box.Within(picture) {
			t.Errorf("%s: %q stands at %v", what, l.Text, l.Box)
		}
		if on := covered(p, l.Box, 0); on != "" {
			t.Errorf("%s: %q at %v covers %s", what, l.Text, l.Box, on)
		}
		for j, other := range p.Labels {
			if i == j {
				continue
			}
			if l.Box.Meets(other.Box) {
				t.Errorf("%s: %q and %q lie on each other", what, l.Text, other.Text)
			}
			if l.Leader[0] != l.Leader[1] && runs(l.Leader[0], l.Leader[1], other.Box) {
				t.Errorf("%s: the leader of %q runs through %q", what, l.Text, other.Text)
			}
		}
	}
	for _, id := range p.LeftOut {
		if id.Ghost == 0 && (id.Kind == scene.UpperBar || id.Kind == scene.LowerBar || id.Kind == scene.InstantCenter) {
			t.Errorf("%s: the label of kind %d is left out", what, id.Kind)
		}
	}
}

// watch looks at the labels of one picture after another.
type watch struct {
	t                                *testing.T
	what                             string
	before                           []scene.Placed
	pictures, labels, leftOut, jumps int
}

func (w *watch) see(p *scene.Picture, time float64) {
	w.t.Helper()
	CheckLabels(w.t, p, fmt.Sprintf("%s at %.3f s", w.what, time))
	w.pictures, w.labels, w.leftOut = w.pictures+1, w.labels+len(p.Labels), w.leftOut+len(p.LeftOut)
	for _, l := range p.Labels {
		for _, was := range w.before {
			if was.ID == l.ID {
				w.compare(p, l, was, time)
			}
		}
	}
	w.before = append(w.before[:0], p.Labels...)
}

// compare counts a jump from one picture to the next and refuses one that need not be.
func (w *watch) compare(p *scene.Picture, now, was scene.Placed, time float64) {
	w.t.Helper()
	const step, near, far = 16, 8, 40 // [px]
	grown := now.Box.Right - now.Box.Left - (was.Box.Right - was.Box.Left)
	if grown > 0 && was.Box.Right+grown > p.View.Width-near {
		return // its words are longer now and would leave the picture
	}
	went := math.Hypot(math.Min(math.Abs(now.Box.Left-was.Box.Left), math.Abs(now.Box.Right-was.Box.Right)), now.Box.Top-was.Box.Top)
	if went <= step+r2.Norm(r2.Sub(now.Point, was.Point)) {
		return
	}
	w.jumps++
	was.Box.Right += math.Max(grown, 0)
	blocked := covered(p, was.Box, near)
	for _, other := range p.Labels {
		if other.ID != now.ID && other.Box.Meets(was.Box.Grown(near)) {
			blocked = other.Text
		}
		if other.ID != now.ID && runs(other.Leader[0], other.Leader[1], was.Box.Grown(near)) {
			blocked = "the leader of another"
		}
		if other.ID != now.ID && runs(nearest(was.Box, now.Point), now.Point, other.Box.Grown(near)) {
			blocked = "another in the way of its leader"
		}
	}
	stretched := away(was.Box, now.Point) > far+away(now.Box, now.Point)
	if blocked == "" && !stretched {
		w.t.Errorf("%s at %.3f s: %q jumps by %.0f px from %v to %v", w.what, time, now.Text, went, was.Box, now.Box)
	}
}

// runs reports whether a line runs through a box.
func runs(from, to r2.Vec, b scene.Box) bool {
	for k := 1; k < 100; k++ {
		if b.Holds(r2.Add(from, r2.Scale(float64(k)/100, r2.Sub(to, from)))) {
			return true
		}
	}
	return false
}

// nearest returns the point of a box nearest to another point.
func nearest(b scene.Box, p r2.Vec) r2.Vec {
	return r2.Vec{X: math.Max(b.Left, math.Min(b.Right, p.X)), Y: math.Max(b.Top, math.Min(b.Bottom, p.Y))}
}

// away returns how far a point is from a box.
func away(b scene.Box, p r2.Vec) float64 { return r2.Norm(r2.Sub(p, nearest(b, p))) }

// covered names what a box covers of what no label may, or comes near to.
func covered(p *scene.Picture, b scene.Box, near float64) string {
	for i := range p.Drawn {
		d := &p.Drawn[i]
		if d.ID.Ghost > 0 || d.Shape == scene.Label || d.Pick == 0 {
			continue
		}
		switch k := d.ID.Kind; {
		case k == scene.Pivot || k == scene.InstantCenter || k == scene.CG || k == scene.Hole && near > 0:
			if b.Grown(d.Radius + near).Holds(d.Points[0]) {
				return fmt.Sprintf("kind %d at %v", d.ID.Kind, d.Points[0])
			}
		case near > 0 && (k == scene.UpperBar || k == scene.LowerBar || d.Shape == scene.Force):
			for j := 1; j < len(d.Points); j++ {
				if runs(d.Points[j-1], d.Points[j], b.Grown(d.Thick/2+near)) {
					return "a bar or a force"
				}
			}
		}
	}
	return ""
}
