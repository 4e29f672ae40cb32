package window

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"bowline/app/chartview"
	"bowline/app/look"
	"bowline/app/runner"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
)

// charts draws the charts of the panel on show on one worker, the newest state
// first, and hands them to their views.
type charts struct {
	window *Window
	views  map[chart.Key]*chartview.View
	worker *runner.Runner[chartJob, map[chart.Key]chartview.Picture]
	pen    pen
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
func (c *charts) drawn() drawn {
	s := c.window.study
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

// newCharts returns the charts of a window, none of them drawn yet.
func newCharts(w *Window) *charts {
	c := &charts{
		window: w,
		views:  map[chart.Key]*chartview.View{},
		pen:    pen{renderers: map[chart.Key]*chart.Renderer{}, images: map[chart.Key]*[2]*image.RGBA{}},
	}
	c.worker = runner.New(c.pen.draw, w.post, c.apply)
	host := chartview.Host{
		At: w.study.Travel, SetAt: w.study.SetTravel, Units: w.study.Units,
		Resized: c.submit, Export: c.export,
	}
	for _, kind := range plotting.Kinds() {
		at := host
		if kind.Over == plotting.AtTime {
			at.At, at.SetAt = w.study.Time, w.study.SetTime
		}
		c.views[kind.Key] = chartview.New(kind.Key, at)
	}
	return c
}

// submit asks for new pictures of what is looked at now.
func (c *charts) submit() {
	s := c.window.study
	job := chartJob{drawn: c.drawn(), units: s.Units(), colors: look.Current(), sheets: map[chart.Key]sheet{}}
	for _, key := range c.window.panels[c.window.shown].charts() {
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
func (c *charts) apply(pictures map[chart.Key]chartview.Picture) {
	for key, p := range pictures {
		c.views[key].Present(p)
	}
}

// close ends the worker.
func (c *charts) close() { c.worker.Close() }

// current returns what is looked at, with launches only when there is one of this
// car.
func (c *charts) current() drawn {
	d := c.drawn()
	if c.window.currentLaunch() == nil {
		d.first.Launch = nil
	}
	return d
}

// chart returns the chart of the current result; nil where it is over a launch
// that is not there.
func (c *charts) chart(key chart.Key) *chart.Chart {
	d := c.current()
	return plotting.New(key, d.first, d.others...)
}

// export asks for a file and writes one chart; the ending of the name chooses
// the format.
func (c *charts) export(key chart.Key) {
	w := c.window
	if !w.settled() {
		return
	}
	drawn := c.chart(key)
	if drawn == nil {
		w.say("The launch of this car is still being computed.")
		return
	}
	w.askFile("Export the chart as .pdf, .svg, .png or .csv", "", w.fileName()+"-"+string(key)+".pdf", func(path string) {
		if err := c.write(path, drawn); err != nil {
			w.fail(err)
			return
		}
		w.say("Exported " + path)
	})
}

// write exports a chart to a file.
func (c *charts) write(path string, drawn *chart.Chart) error {
	format := chart.Format(strings.TrimPrefix(strings.ToLower(filepath.Ext(path)), "."))
	var data bytes.Buffer
	if err := chart.Export(&data, format, drawn, chart.Style{Units: c.window.study.Units()}, chart.Sheet{}); err != nil {
		return err
	}
	return carfile.Write(path, data.Bytes())
}

// exportAll asks for a folder and writes every chart in every format.
func (w *Window) exportAll() {
	if !w.settled() {
		return
	}
	d := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err != nil || folder == nil {
			w.fail(err)
			return
		}
		w.exportTo(folder.Path())
	}, w.window)
	d.SetTitleText("Export all charts into a folder")
	d.SetConfirmText("Export here")
	w.placeDialog(d)
}

// exportTo writes every chart in every format, asking before files are
// replaced.
func (w *Window) exportTo(folder string) {
	files := map[string]*chart.Chart{}
	taken := 0
	current := w.charts.current()
	for _, drawn := range plotting.All(current.first, current.others...) {
		if drawn.Blank {
			continue
		}
		for _, format := range chart.Formats {
			path := filepath.Join(folder, w.fileName()+"-"+string(drawn.Key)+"."+string(format))
			files[path] = drawn
			if _, err := os.Stat(path); err == nil {
				taken++
			}
		}
	}
	write := func() {
		for path, drawn := range files {
			if err := w.charts.write(path, drawn); err != nil {
				w.fail(err)
				return
			}
		}
		w.say(fmt.Sprintf("Exported %d files to %s", len(files), folder))
	}
	if taken == 0 {
		write()
		return
	}
	w.ask("Replace files", fmt.Sprintf("%s has %d of these %d files already.", folder, taken, len(files)),
		answer{"Replace them", write}, answer{"Cancel", nil})
}
