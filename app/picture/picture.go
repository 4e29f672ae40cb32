// Package picture draws the stage for files: one picture as PNG or SVG, or the launch as a
// moving GIF, each with what it shows and the caution below. It needs no display.
package picture

import (
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"slices"
	"strings"

	"bowline/app/document"
	"bowline/app/runner"
	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/app/scene/side"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/carfile"
	"bowline/model/stock"
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Views are the names of the views that a picture can show.
var Views = []string{"side", "top", "rear", "3d"}

// Size is that of a picture without its foot [px].
type Size struct{ Width, Height int }

// The sizes that are taken [px], and the usual one.
const (
	leastSize, mostSize = 200, 4000
)

// Usual and UsualMovie are the sizes when nothing else is asked for.
var Usual, UsualMovie = Size{1200, 620}, Size{820, 420}

// Check refuses a size that is too small to see anything in or too large to be made.
func (s Size) Check() error {
	if min(s.Width, s.Height) < leastSize || max(s.Width, s.Height) > mostSize {
		return fmt.Errorf("a picture of %d × %d pixels is refused; give from %d to %d each way, as in 1200x620", s.Width, s.Height, leastSize, mostSize)
	}
	return nil
}

// Studio looks at a setup of a car with nobody before it. End it with Close.
type Studio struct {
	study    *study.Study
	queue    *runner.Queue
	view     scene.Viewpoint
	renderer *scene.Renderer
	list     scene.List
	picture  scene.Picture
}

// New returns a studio that looks at a setup of a car file in a unit system from one of the
// Views.
func New(file *carfile.File, setup int, library stock.Library, u units.System, view string) (*Studio, error) {
	at := slices.Index(Views, view)
	if at < 0 {
		return nil, fmt.Errorf("there is no view %q; give one of %s", view, strings.Join(Views, ", "))
	}
	s := &Studio{queue: runner.NewQueue(), renderer: scene.NewRenderer()}
	doc := document.New(library, "", file)
	doc.SelectSetup(setup)
	doc.SetUnits(u)
	s.study = study.New(doc, study.Options{Library: library, Post: s.queue.Post})
	s.study.Want(study.WantsLaunch)
	s.queue.Settle(s.study.Busy)
	if err := s.study.LaunchError(); err != nil {
		s.Close()
		return nil, err
	}
	if at == 0 {
		s.view = side.New(s.study)
	} else {
		s.view = around.New(s.study, []around.From{around.Above, around.Behind, around.Around}[at-1])
	}
	return s, nil
}

// Close ends the studio.
func (s *Studio) Close() { s.study.Close() }

// Stand puts the car at a rear travel [m]; it refuses one beyond the stops.
func (s *Studio) Stand(travel float64) error {
	k := s.study.Document().Car().Springs
	if u := s.study.Units(); !(travel >= -k.RearDroop && travel <= k.RearBump) {
		return fmt.Errorf("the rear does not travel that far: %s; it goes from %s to %s", u.Travel(travel), u.Travel(-k.RearDroop), u.Travel(k.RearBump))
	}
	s.study.SetLaunching(false)
	s.study.SetTravel(travel)
	return nil
}

// Launch puts the car at an instant of its launch [s]; it refuses one that the launch does
// not have.
func (s *Studio) Launch(at float64) error {
	s.study.SetLaunching(true)
	if end := s.study.LaunchEnd(); end == 0 || !(at >= 0 && at <= end) {
		return fmt.Errorf("the launch has no instant at %.3f s; it goes from 0 to %.3f s", at, end)
	}
	s.study.SetTime(at)
	return nil
}

// fit arranges the picture: a launch and the views around show the whole car, a travel the
// four-link.
func (s *Studio) fit(size Size) {
	fit := 0
	if s.study.Launching() {
		fit = 1
	}
	s.view.Fill(&s.list, scene.Pointer{})
	s.picture.Project(s.list.Items, s.view.Fits()[fit].Framing(float64(size.Width), float64(size.Height)).View)
}

// FootOf says what of a study is shown, with the caution.
func FootOf(s *study.Study) scene.Foot {
	u, doc := s.Units(), s.Document()
	title := fmt.Sprintf("%s, setup %q: ", doc.Car().Body.Name, doc.Car().Setups[doc.Setup()].Name)
	if i, ok := s.Instant(); ok {
		title += fmt.Sprintf("launch, %s, %s", u.Format(units.Time, s.Time()), words.Come(s.Launch().Distance[i], u))
	} else {
		title += fmt.Sprintf("%s case, %s", s.Case(), u.Travel(s.Travel()))
	}
	return scene.Foot{Title: title, Small: chart.Caution}
}

// scale is how many pixels of a PNG there are to one of the picture, so that letters are
// crisp on paper too.
const scale = 2

// WritePNG writes the picture of a size, with twice as many pixels each way.
func (s *Studio) WritePNG(w io.Writer, size Size) error {
	s.fit(size)
	return WritePNG(w, s.renderer, &s.picture, FootOf(s.study), s.study.Units())
}

// WriteSVG writes the picture of a size as a drawing.
func (s *Studio) WriteSVG(w io.Writer, size Size) error {
	s.fit(size)
	return WriteSVG(w, s.renderer, &s.picture, FootOf(s.study), s.study.Units())
}

// WritePNG writes a picture with its foot, with twice as many pixels each way.
func WritePNG(w io.Writer, r *scene.Renderer, p *scene.Picture, foot scene.Foot, u units.System) error {
	return png.Encode(w, drawn(r, p, foot, u, scale))
}

// drawn draws a picture with its foot.
func drawn(r *scene.Renderer, p *scene.Picture, foot scene.Foot, u units.System, scale float64) *image.RGBA {
	high := p.View.Height + r.FootHeight(foot, p.View.Width)
	img := image.NewRGBA(image.Rect(0, 0, int(scale*p.View.Width), int(math.Ceil(scale*high))))
	r.DrawSheet(img, scale, p, foot, u, &palette.Light)
	return img
}

// WriteSVG writes a picture with its foot as a drawing.
func WriteSVG(w io.Writer, r *scene.Renderer, p *scene.Picture, foot scene.Foot, u units.System) error {
	canvas := vgsvg.New(vg.Length(p.View.Width), vg.Length(p.View.Height+r.FootHeight(foot, p.View.Width)))
	r.DrawPage(canvas, p, foot, u, &palette.Light)
	return chart.WriteSVG(w, canvas)
}
