// Package window is Bowline's window: it puts the inputs, the side view and
// the panels side by side, and holds menus, files and manners.
package window

import (
	"time"

	"bowline/app/document"
	"bowline/app/inputs"
	"bowline/app/look"
	"bowline/app/readout"
	"bowline/app/runner"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Options are what the command line says.
type Options struct {
	Path     string // car file to open; empty opens the demo car
	StateLog string // file that a line is added to after each picture; empty for none
	Folder   string // where recovery files and the list of recent files are kept
	Library  stock.Library

	// Post hands a function to the goroutine that owns the window; nil is
	// fyne.Do.
	Post func(func())
}

// Window is the program's one window.
type Window struct {
	app    fyne.App
	window fyne.Window
	doc    *document.Document
	study  *study.Study
	recent *document.Recent
	post   func(func()) // to the goroutine that owns the window

	panels [panelCount]panel
	tabs   *container.AppTabs
	tune   *tunePages
	holes  *holesPanel
	shown  int          // index of the panel on show
	soon   *runner.Soon // refreshes the panel on show
	choose func()       // shows what belongs to the tab and to travel or launch
	inputs *inputs.Panel
	view   *stage.Stage
	charts *charts
	clock  *timeBar
	status *widget.Label
	panes  *container.Split // inputs | rest
	center *container.Split // side view | panels
	menu   menu
	stop   chan struct{}
	mild   func() // the answer that Escape gives; nil without a question
}

// Preferences that the window keeps.
const (
	prefWidth  = "width"
	prefHeight = "height"
	prefLeft   = "left"
	prefRight  = "right"
	prefOpen   = "open"
	prefMode   = "mode"
)

// First sizes: the window fits a small laptop's screen.
const (
	firstWidth  = 1280
	firstHeight = 760
	firstLeft   = 0.225
	firstRight  = 0.56
)

// New makes the window of an app, with the demo car or the file asked for.
// What keeps a file from being opened is shown in the window.
func New(app fyne.App, o Options) (*Window, error) {
	app.Settings().SetTheme(look.New(look.Mode(app.Preferences().String(prefMode))))
	if err := keepFiles(); err != nil {
		return nil, err
	}
	demo, err := demoFile(o.Library)
	if err != nil {
		return nil, err
	}
	w := &Window{
		app:    app,
		window: app.NewWindow("Bowline"),
		doc:    document.New(o.Library, o.Folder, demo),
		recent: document.LoadRecent(o.Folder),
		post:   o.Post,
		stop:   make(chan struct{}),
	}
	if w.post == nil {
		w.post = fyne.Do
	}
	w.study = study.New(w.doc, study.Options{Library: o.Library, Post: w.post})
	w.build(o)
	w.study.Listen(w.follow)
	w.window.SetCloseIntercept(func() {
		if !w.asking() {
			w.quit()
		}
	})
	w.window.SetOnDropped(w.dropped)
	w.window.Canvas().SetOnTypedKey(w.typedKey)
	app.Settings().AddListener(func(fyne.Settings) { w.charts.submit() })
	w.retitle()
	w.remake()
	if o.StateLog != "" {
		w.logStates(o.StateLog)
	}
	if o.Path != "" {
		w.open(o.Path)
	} else {
		w.offerLeft(o.Folder)
	}
	return w, nil
}

// offerLeft offers what a crash has left: of a car without a file, or of the
// one that was open last.
func (w *Window) offerLeft(folder string) {
	if left := document.Unsaved(folder); len(left) > 0 {
		w.offer(left[0])
		return
	}
	if recent := w.recent.Paths(); len(recent) > 0 {
		if left, found := document.Recoverable(recent[0]); found {
			w.offer(left)
		}
	}
}

// build lays the window out.
func (w *Window) build(o Options) {
	w.inputs = inputs.New(w.doc, o.Library)
	w.inputs.Later = w.later
	w.inputs.SetOpenSections(w.app.Preferences().StringListWithFallback(prefOpen, []string{inputs.TitleSetup}))
	w.view = stage.New(w.study, side.New(w.study), look.Current)
	w.view.Refused = w.refused
	w.charts = newCharts(w)
	w.status = widget.NewLabel(hint)
	w.status.Truncation = fyne.TextTruncateEllipsis

	here := newHerePanel(w.study, w.charts.views[plotting.AntiSquatKey], w.charts.views[plotting.CenterPathKey])
	setups := newSetupsPanel(w)
	w.holes = newHolesPanel(w)
	w.holes.target.inputs.Later = w.later
	check := newCheckPanel(w.study, w.charts.views[plotting.BarForceKey], w.charts.views[plotting.BowKey])
	run := newLaunchPanel(w.study, w.charts.views[plotting.LaunchBarsKey], w.charts.views[plotting.LaunchAttitudeKey], w.charts.views[plotting.LaunchTiresKey])
	w.panels = [panelCount]panel{panelHere: here, panelHoles: w.holes, panelSetups: setups, panelCheck: check, panelLaunch: run}
	turned := func() {}
	w.tune = newTunePages(here, w.holes, setups, func() { turned() })
	loads, below := container.NewStack(), container.NewStack()
	w.tabs = container.NewAppTabs(container.NewTabItem("Tune", w.tune.tabs), container.NewTabItem("Check", steady(loads)))
	travel := newTravelBar(w.study).object
	w.clock = newTimeBar(w.study, w.post)
	w.choose = func() {
		launching := w.study.Launching()
		switch {
		case w.tabs.SelectedIndex() == 0:
			w.shown = w.tune.shown()
		case launching:
			w.shown = panelLaunch
		default:
			w.shown = panelCheck
		}
		if launching {
			swap(loads, run.object)
			swap(below, w.clock.object)
		} else {
			swap(loads, check.object)
			swap(below, travel)
			w.clock.pause()
		}
	}
	turned = func() {
		w.choose()
		w.want()
		w.refresh()
	}
	w.tabs.OnSelected = func(*container.TabItem) { turned() }
	w.tabs.SelectIndex(1)
	w.choose()
	w.want()
	w.soon = runner.NewSoon(w.post, w.refresh)
	middle := newMiddle(newToolbar(w.study, w.view), w.view, below)
	caution := readout.NewProse(chart.Caution, theme.SizeNameCaptionText, theme.ColorNameForeground, fyne.TextStyle{Italic: true})
	w.center = container.NewHSplit(steady(middle), container.NewBorder(nil, caution, nil, nil, w.tabs))
	w.panes = container.NewHSplit(steady(w.inputs), w.center)
	p := w.app.Preferences()
	w.panes.SetOffset(p.FloatWithFallback(prefLeft, firstLeft))
	w.center.SetOffset(p.FloatWithFallback(prefRight, firstRight))
	w.window.SetContent(container.NewBorder(nil, w.status, nil, nil, w.panes))
	w.window.SetPadded(false)
	w.window.Resize(fyne.NewSize(float32(p.FloatWithFallback(prefWidth, firstWidth)), float32(p.FloatWithFallback(prefHeight, firstHeight))))
}

// later has a function run after a while by the goroutine that owns the window.
func (w *Window) later(after time.Duration, run func()) {
	time.AfterFunc(after, func() { w.post(run) })
}

// swap puts an object in place of what a stack holds.
func swap(stack *fyne.Container, o fyne.CanvasObject) {
	if len(stack.Objects) == 1 && stack.Objects[0] == o {
		return
	}
	stack.Objects = []fyne.CanvasObject{o}
	stack.Refresh()
}

// The panels.
const (
	panelHere = iota
	panelHoles
	panelSetups
	panelCheck
	panelLaunch
	panelCount
)

// panel is what a tab or a page of it holds.
type panel interface {
	refresh()            // writes words and numbers
	charts() []chart.Key // keys of its charts
	wants() study.Wants  // what it wants computed
}

// refresh brings the panel on show and its charts up to date.
func (w *Window) refresh() {
	w.panels[w.shown].refresh()
	w.charts.submit()
}

// ShowAndRun shows the window and returns when it is closed.
func (w *Window) ShowAndRun() {
	tick := time.NewTicker(autosaveEvery)
	go w.autosave(tick.C)
	w.window.ShowAndRun()
	tick.Stop()
	close(w.stop)
	w.charts.close()
	w.study.Close()
}

// Content returns the window's canvas, for tests.
func (w *Window) Content() fyne.Canvas { return w.window.Canvas() }

// want declares what the panel on show wants computed.
func (w *Window) want() { w.study.Want(w.panels[w.shown].wants()) }

// follow keeps the panel on show, title and menu up to date.
func (w *Window) follow(c study.Change) {
	if c.Has(study.Choice) {
		w.choose()
		w.study.Then(w.want)
	}
	if c.Has(study.LaunchFailed) {
		err := w.study.LaunchError()
		w.study.Then(func() { w.fail(err) })
	}
	if c&^(study.File|study.History) != 0 {
		w.soon.Ask()
	}
	if c.Has(study.File | study.Car) {
		w.retitle()
	}
	if c.Has(study.History | study.Loaded | study.Units) {
		w.menu.refresh(w)
	}
	if c.Has(study.Car | study.Setup) {
		w.say("")
	}
}

// retitle writes the car's name into the title.
func (w *Window) retitle() {
	if title := w.doc.Title() + " — Bowline"; title != w.window.Title() {
		w.window.SetTitle(title)
	}
}

// hint stands under the panes while there is nothing to say.
const hint = "Drag a bar's end to another hole. With Shift, or with Move holes ticked, the hole itself moves. Arrow keys move the selected hole by 1/16 in or 1 mm."

// say writes a line under the panes; without one, the hint.
func (w *Window) say(text string) {
	if text == "" {
		text = hint
	}
	if w.status.Text != text {
		w.status.SetText(text)
	}
}

// refused tells why an edit in the side view was not taken.
func (w *Window) refused(problems []car.Problem) {
	text := ""
	if len(problems) > 0 {
		text = "Not there: " + problems[0].String()
	}
	w.say(text)
}

// autosaveEvery is how often a changed car is kept for the case of a crash.
const autosaveEvery = 15 * time.Second

// autosave keeps the car at every tick until the window closes.
func (w *Window) autosave(tick <-chan time.Time) {
	for {
		select {
		case <-w.stop:
			return
		case <-tick:
			w.post(func() {
				if err := w.doc.Autosave(); err != nil {
					w.say("The car could not be kept for a crash: " + err.Error())
				}
			})
		}
	}
}

// keepLayout stores sizes for the next start.
func (w *Window) keepLayout() {
	p, size := w.app.Preferences(), w.window.Canvas().Size()
	p.SetFloat(prefWidth, float64(size.Width))
	p.SetFloat(prefHeight, float64(size.Height))
	p.SetFloat(prefLeft, w.panes.Offset)
	p.SetFloat(prefRight, w.center.Offset)
	p.SetStringList(prefOpen, w.inputs.OpenSections())
}
