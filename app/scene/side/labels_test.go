package side_test

import (
	"fmt"
	"image"
	"math"
	"testing"

	"bowline/app/document"
	"bowline/app/runner/runnertest"
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/study"
	"bowline/assets"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/gonum/spatial/r2"
)

// launching studies the launch of an example car.
func launching(t testing.TB, name string) *study.Study {
	t.Helper()
	data, err := assets.Cars.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Decode("car.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	queue := runnertest.NewQueue()
	s := study.New(document.New(carfile.Stock(), t.TempDir(), file), study.Options{Library: carfile.Stock(), Post: queue.Post})
	t.Cleanup(s.Close)
	s.SetLaunching(true)
	queue.Settle(s.Busy)
	return s
}

// Over the whole launch of every example car, at sizes from a small window's to a
// large one's and in both fits, labels lie neither on each other nor on pivots,
// instant center or center of gravity nor beyond the picture, no leader runs
// through another label, and none jumps that could have stayed.
func TestLabelsKeepClearOverALaunch(t *testing.T) {
	sizes := []r2.Vec{{X: 467, Y: 260}, {X: 820, Y: 420}, {X: 1500, Y: 800}}
	for _, name := range assets.CarNames() {
		s := launching(t, name)
		v := side.New(s)
		for _, size := range sizes {
			for _, fit := range []int{side.FitBars, side.FitCar} {
				w := &watch{t: t, what: fmt.Sprintf("%s, %v × %v, fit %d", name, size.X, size.Y, fit)}
				view := v.Fits()[fit].Framing(size.X, size.Y).View
				var list scene.List
				var p scene.Picture
				for i := 0; i < len(s.Launch().Time); i += 10 {
					s.SetTime(s.Launch().Time[i])
					v.Fill(&list, scene.Pointer{})
					p.Project(list.Items, view)
					w.see(&p, s.Time())
				}
				t.Logf("%s: %d pictures, %d labels, %d left out, %d jumps", w.what, w.pictures, w.labels, w.leftOut, w.jumps)
				if w.jumps > w.pictures/10 {
					t.Errorf("%s: labels jump %d times in %d pictures", w.what, w.jumps, w.pictures)
				}
			}
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
	picture := scene.Box{Right: p.View.Width, Bottom: p.View.Height}
	for i, l := range p.Labels {
		if !l.Box.Within(picture) {
			w.t.Errorf("%s at %.3f s: %q stands at %v", w.what, time, l.Text, l.Box)
		}
		if on := covered(p, l.Box, 0); on != "" {
			w.t.Errorf("%s at %.3f s: %q at %v covers %s", w.what, time, l.Text, l.Box, on)
		}
		for j, other := range p.Labels {
			if i == j {
				continue
			}
			if l.Box.Meets(other.Box) {
				w.t.Errorf("%s at %.3f s: %q and %q lie on each other", w.what, time, l.Text, other.Text)
			}
			for k := 1; k < 100 && l.Leader[0] != l.Leader[1]; k++ {
				if at := r2.Add(l.Leader[0], r2.Scale(float64(k)/100, r2.Sub(l.Leader[1], l.Leader[0]))); other.Box.Holds(at) {
					w.t.Errorf("%s at %.3f s: the leader of %q runs through %q", w.what, time, l.Text, other.Text)
					break
				}
			}
		}
	}
	for _, id := range p.LeftOut {
		if id.Kind == scene.UpperBar || id.Kind == scene.LowerBar || id.Kind == scene.InstantCenter {
			w.t.Errorf("%s at %.3f s: the label of kind %d is left out", w.what, time, id.Kind)
		}
	}
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
		for k := range 100 {
			if other.ID != now.ID && was.Box.Grown(near).Holds(r2.Add(other.Leader[0], r2.Scale(float64(k)/100, r2.Sub(other.Leader[1], other.Leader[0])))) {
				blocked = "a leader"
			}
		}
	}
	stretched := away(was.Box, now.Point) > far+away(now.Box, now.Point)
	if blocked == "" && !stretched {
		w.t.Errorf("%s at %.3f s: %q jumps by %.0f px from %v to %v", w.what, time, now.Text, went, was.Box, now.Box)
	}
}

// away returns how far a point is from a box.
func away(b scene.Box, p r2.Vec) float64 {
	return math.Hypot(math.Max(0, math.Max(b.Left-p.X, p.X-b.Right)), math.Max(0, math.Max(b.Top-p.Y, p.Y-b.Bottom)))
}

// covered names what a box covers of what no label may, or comes near to.
func covered(p *scene.Picture, b scene.Box, near float64) string {
	for i := range p.Drawn {
		d := &p.Drawn[i]
		if d.ID.Ghost > 0 || d.Shape == scene.Label || d.Pick == 0 {
			continue
		}
		switch d.ID.Kind {
		case scene.Pivot, scene.InstantCenter, scene.CG, scene.Hole:
			if d.ID.Kind == scene.Hole && near == 0 {
				continue
			}
			if b.Grown(d.Radius + near).Holds(d.Points[0]) {
				return fmt.Sprintf("kind %d at %v", d.ID.Kind, d.Points[0])
			}
		case scene.UpperBar, scene.LowerBar:
			if near == 0 {
				continue
			}
			for k := range 100 {
				if b.Grown(d.Thick/2 + near).Holds(r2.Add(d.Points[0], r2.Scale(float64(k)/100, r2.Sub(d.Points[len(d.Points)-1], d.Points[0])))) {
					return "a bar"
				}
			}
		}
	}
	return ""
}

// A picture of a launch that plays, listed, placed and drawn.
func BenchmarkPlaying(b *testing.B) {
	s := launching(b, "cars/saltgrass-7.toml")
	v := side.New(s)
	view := v.Fits()[side.FitCar].Framing(820, 420).View
	img, renderer := image.NewRGBA(image.Rect(0, 0, 820, 420)), scene.NewRenderer()
	var list scene.List
	var p scene.Picture
	for _, part := range []string{"list", "place", "all"} {
		b.Run(part, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				if part != "place" || i == 0 {
					s.SetTime(s.Launch().Time[i*5%len(s.Launch().Time)])
					v.Fill(&list, scene.Pointer{})
				}
				if part != "list" {
					p.Project(list.Items, view)
				}
				if part == "all" {
					renderer.Draw(img, 1, &p, units.US, &palette.Dark)
				}
			}
		})
	}
}
