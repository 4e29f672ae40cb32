package window

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"

	"bowline/app/chartview"
	"bowline/app/look"
	"bowline/app/runner"
	"bowline/model/analysis"
	"bowline/model/carfile"
	"bowline/model/launch"
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
	result, other *analysis.Result // other: of the setup held against; nil for none
	launch        *launch.Result   // nil for none
	otherLaunch   *launch.Result
}

// drawn returns what is looked at now.
func (c *charts) drawn() drawn {
	s := c.window.study
	d := drawn{result: s.Result(), launch: s.Launch()}
	if other := otherOf(s); other != nil {
		d.other, d.otherLaunch = other.Result, other.Launch
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
	for _, drawn := range (drawn{result: w.study.Result()}).all() {
		c.views[drawn.Key] = chartview.New(drawn.Key, host)
	}
	// Charts of the launch stand at a time rather than a travel.
	host.At, host.SetAt = w.study.Time, w.study.SetTime
	for _, key := range launchCharts {
		c.views[key] = chartview.New(key, host)
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
	if p.drawn != job.drawn {
		p.drawn, p.charts = job.drawn, map[chart.Key]*chart.Chart{}
		for _, c := range job.all() {
			p.charts[c.Key] = c
		}
	}
	pictures := map[chart.Key]chartview.Picture{}
	for key, s := range job.sheets {
		drawn := p.charts[key]
		if drawn == nil {
			continue // the first launch is not there yet
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

// all returns the charts of one or two setups, of the car's run log and of
// the launch, if there is one.
func (d drawn) all() []*chart.Chart {
	list := append(plotting.Charts(d.result, d.other), plotting.SixtyFoot(d.result.Car, d.result.Options.Setup))
	return append(list, plotting.LaunchCharts(d.launch, d.result, d.otherLaunch, d.other)...)
}

// apply shows pictures.
func (c *charts) apply(pictures map[chart.Key]chartview.Picture) {
	for key, p := range pictures {
		c.views[key].Present(p)
	}
}

// close ends the worker.
func (c *charts) close() { c.worker.Close() }

// current returns the charts of what is looked at; those of the launch only
// when there is one of this car.
func (c *charts) current() []*chart.Chart {
	d := c.drawn()
	if c.window.currentLaunch() == nil {
		d.launch, d.otherLaunch = nil, nil
	}
	return d.all()
}

// chart returns the chart of the current result.
func (c *charts) chart(key chart.Key) *chart.Chart {
	for _, drawn := range c.current() {
		if drawn.Key == key {
			return drawn
		}
	}
	return nil
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
	for _, drawn := range w.charts.current() {
		if drawn.Key == plotting.SixtyFootKey && !plotting.Timed(w.study.Result().Car) {
			continue // an empty log
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
