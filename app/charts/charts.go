// Package charts holds the views of all charts and the worker that draws them.
package charts

import (
	"context"
	"image"
	"slices"

	"bowline/app/chartview"
	"bowline/app/look"
	"bowline/app/runner"
	"bowline/app/study"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/palette"
)

// Charts draws the charts on show on one worker, the newest state first, and
// hands them to their views.
type Charts struct {
	study  *study.Study
	shown  func() []chart.Key // the charts on show
	views  map[chart.Key]*chartview.View
	worker *runner.Runner[chartJob, map[chart.Key]chartview.Picture]
	pen    pen

	// Presented, if set, is called when charts have new pictures.
	Presented func()
}

// chartJob is what to draw.
type chartJob struct {
	drawn
	units  units.System
	colors *palette.Palette
	sheets map[chart.Key]sheet
}

// drawn is what charts are made of. Results never change, so equal ones have
// the same charts.
type drawn struct {
	first  plotting.Setup
	others []plotting.Setup // that the first one is compared with
}

func (d drawn) equal(o drawn) bool { return d.first == o.first && slices.Equal(d.others, o.others) }

// drawn returns what is looked at now.
func (c *Charts) drawn() drawn {
	s := c.study
	d := drawn{first: plotting.Of(s.Result(), s.Launch())}
	for _, o := range s.Others() {
		d.others = append(d.others, plotting.Setup{Name: o.Name, Result: o.Result, Launch: o.Launch})
	}
	return d
}

// sheet is one picture wanted.
type sheet struct {
	size  image.Point
	dpi   float64
	frame chart.Frame
	at    float64 // where the marker stands: a travel [m] or a time [s]
}

// pen belongs to the worker: what it draws with and what it drew last.
type pen struct {
	drawn
	charts    map[chart.Key]*chart.Chart
	renderers map[chart.Key]*chart.Renderer
	images    map[chart.Key]*[2]*image.RGBA // the second is on screen
}

// New returns the charts of a study, none of them drawn yet. shown returns those
// on show; export is asked for a file of one.
func New(s *study.Study, post func(func()), shown func() []chart.Key, export func(chart.Key)) *Charts {
	c := &Charts{
		study: s, shown: shown,
		views: map[chart.Key]*chartview.View{},
		pen:   pen{renderers: map[chart.Key]*chart.Renderer{}, images: map[chart.Key]*[2]*image.RGBA{}},
	}
	c.worker = runner.New(c.pen.draw, post, c.apply)
	host := chartview.Host{
		At: s.Travel, Visit: s.VisitTravel, Stay: s.StayAtTravel, Leave: s.LeaveTravel,
		Units: s.Units, Resized: c.Draw, Export: export,
	}
	for _, kind := range plotting.Kinds() {
		at := host
		if kind.Over == plotting.AtTime {
			at.At, at.Visit, at.Stay, at.Leave = s.Time, s.VisitTime, s.StayAtTime, s.LeaveTime
		}
		c.views[kind.Key] = chartview.New(kind.Key, at)
	}
	return c
}

// View returns the view of a chart.
func (c *Charts) View(key chart.Key) *chartview.View { return c.views[key] }

// LaunchAxis returns where on the window's canvas the chart over the launch that is on
// show has the start of the launch and its end [px]; false while none is.
func (c *Charts) LaunchAxis() (start, end float64, ok bool) {
	return c.axis(0, c.study.LaunchEnd(), func(k plotting.Kind) bool { return k.Over == plotting.AtTime })
}

// TravelAxis returns where on the window's canvas the chart over travel that is on show has
// full droop and full bump of the rear [px]; false while none is.
func (c *Charts) TravelAxis() (droop, bump float64, ok bool) {
	k := c.study.Document().Car().Springs
	return c.axis(-k.RearDroop, k.RearBump, func(k plotting.Kind) bool { return k.Key == plotting.BarForceKey || k.Key == plotting.AntiSquatKey })
}

// axis returns where a chart on show of some kinds has two positions.
func (c *Charts) axis(from, to float64, of func(plotting.Kind) bool) (start, end float64, ok bool) {
	for _, kind := range plotting.Kinds() {
		if !of(kind) || !slices.Contains(c.shown(), kind.Key) {
			continue
		}
		if start, ok = c.views[kind.Key].Place(from); ok {
			end, _ = c.views[kind.Key].Place(to)
			return start, end, true
		}
	}
	return 0, 0, false
}

// Draw asks for new pictures of what is looked at now.
func (c *Charts) Draw() {
	s := c.study
	job := chartJob{drawn: c.drawn(), units: s.Units(), colors: look.Current(), sheets: map[chart.Key]sheet{}}
	for _, key := range c.shown() {
		v := c.views[key]
		if size, dpi := v.Want(); size != (image.Point{}) {
			job.sheets[key] = sheet{size: size, dpi: dpi, frame: v.Frame(), at: v.At()}
		}
	}
	if len(job.sheets) > 0 {
		c.worker.Submit(job)
	}
}

// draw makes the pictures of a job; it runs on the worker.
func (p *pen) draw(_ context.Context, job chartJob) map[chart.Key]chartview.Picture {
	if !p.drawn.equal(job.drawn) {
		p.drawn, p.charts = job.drawn, map[chart.Key]*chart.Chart{}
	}
	pictures := map[chart.Key]chartview.Picture{}
	for key, s := range job.sheets {
		drawn := p.charts[key]
		if drawn == nil {
			if drawn = plotting.New(key, job.first, job.others...); drawn == nil {
				continue // the first launch is not there yet
			}
			p.charts[key] = drawn
		}
		if p.renderers[key] == nil {
			p.renderers[key], p.images[key] = new(chart.Renderer), new([2]*image.RGBA)
		}
		// The worker goes on only when the last picture is on screen, so the
		// one shown before that is free.
		images := p.images[key]
		img := images[0]
		if img == nil || img.Rect.Size() != s.size {
			img = image.NewRGBA(image.Rectangle{Max: s.size})
		}
		images[0], images[1] = images[1], img
		style := chart.Style{Palette: *job.colors, Units: job.units, Frame: s.frame}
		// A view too small for its chart shows the background.
		layout, _ := p.renderers[key].Draw(img, s.dpi, drawn, style, chart.Mark(s.at))
		pictures[key] = chartview.Picture{Image: img, Chart: drawn, Layout: layout}
	}
	return pictures
}

// apply shows pictures.
func (c *Charts) apply(pictures map[chart.Key]chartview.Picture) {
	for key, p := range pictures {
		c.views[key].Present(p)
	}
	if c.Presented != nil {
		c.Presented()
	}
}

// Busy reports whether pictures are being drawn.
func (c *Charts) Busy() bool { return c.worker.Busy() }

// Close ends the worker.
func (c *Charts) Close() { c.worker.Close() }

// current returns what is looked at, with launches only when there is one of this
// car.
func (c *Charts) current() drawn {
	d := c.drawn()
	if c.study.LaunchOutdated() {
		d.first.Launch = nil
	}
	return d
}

// All returns all charts of what is looked at; those over a launch only when
// there is one of this car.
func (c *Charts) All() []*chart.Chart {
	d := c.current()
	return plotting.All(d.first, d.others...)
}

// Chart returns one of them; nil where it is over a launch that is not there.
func (c *Charts) Chart(key chart.Key) *chart.Chart {
	d := c.current()
	return plotting.New(key, d.first, d.others...)
}
