// Package window is Bowline's window: it puts the inputs, the side view and
// the panels side by side, and holds menus, files and manners.
package window

import (
	"time"

	"bowline/app/charts"
	"bowline/app/controls"
	"bowline/app/document"
	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/app/look"
	"bowline/app/panel"
	"bowline/app/runner"
	"bowline/app/scene/around"
	"bowline/app/scene/side"
	"bowline/app/stage"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Options are what the command line says.
type Options struct {
	Path     string // car file to open; empty opens the demo car
	StateLog string // file that a line is added to after each frame; empty for none
	Folder   string // where recovery files and the list of recent files are kept
	Library  stock.Library

	// Post hands a function to the goroutine that owns the window; nil is
	// fyne.Do.
	Post func(func())
}

// Window is the program's one window.
type Window struct {
	dialogs
	app    fyne.App
	study  *study.Study
	recent *document.Recent
	post   func(func()) // to the goroutine that owns the window

	panels *panels
	soon   *runner.Soon // refreshes the panel on show
	inputs *inputs.Panel
	view   *stage.Stage
	bar    *controls.Toolbar
	charts *charts.Charts
	travel *controls.TravelBar
	clock  *controls.TimeBar
	below  *fyne.Container // one of them, under the side view
	status *widget.Label
	split  splits
	stage  *fyne.Container // the side view with its bars
	right  *fyne.Container // the panels' words
	proof  *fyne.Container // evidence of the panel on show
	menu   menu
	stop   chan struct{}
}

// Preferences that the window keeps.
const (
	prefWidth  = "width"
	prefHeight = "height"
	prefOpen   = "open"
	prefMode   = "mode"
	prefForces = "forces"
)

// First sizes: the window fits a small laptop's screen.
const (
	firstWidth  = 1280
	firstHeight = 760
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
		dialogs: dialogs{window: app.NewWindow("Bowline"), doc: document.New(o.Library, o.Folder, demo)},
		app:     app,
		recent:  document.LoadRecent(o.Folder),
		post:    o.Post,
		stop:    make(chan struct{}),
	}
	if w.post == nil {
		w.post = fyne.Do
	}
	w.study = study.New(w.doc, study.Options{Library: o.Library, Post: w.post})
	w.study.SetForces(app.Preferences().Bool(prefForces))
	w.build(o)
	w.study.Listen(w.follow)
	w.window.SetCloseIntercept(func() {
		if !w.asking() {
			w.quit()
		}
	})
	w.window.SetOnDropped(w.dropped)
	w.window.Canvas().SetOnTypedKey(w.typedKey)
	w.window.Canvas().SetOnTypedRune(w.typedRune)
	app.Settings().AddListener(func(fyne.Settings) { w.charts.Draw() })
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
	views := []controls.View{{Name: "Side", Viewpoint: side.New(w.study)}, {Name: "Top", Viewpoint: around.New(w.study, around.Above)}, {Name: "Rear", Viewpoint: around.New(w.study, around.Behind)}, {Name: "3-D", Viewpoint: around.New(w.study, around.Around)}}
	w.view = stage.New(w.study, views[0].Viewpoint, look.Current)
	w.view.Refused = w.refused
	w.view.Clicked = w.showInputs
	w.inputs.Said = w.say
	w.inputs.Attended = func(path string) { w.view.Light(thingOf(path, w.doc.Car(), w.doc.Setup())) }
	w.charts = charts.New(w.study, w.post, func() []chart.Key { return w.panels.current().Charts() }, w.export)
	w.status = widget.NewLabel(hint)
	w.status.Truncation = fyne.TextTruncateEllipsis

	w.panels = newPanels(panel.Host{
		Study: w.study, Chart: func(key chart.Key) fyne.CanvasObject { return w.charts.View(key) },
		Say: w.say, Refused: w.refused, Ask: w.ask, Later: w.later, PrintCard: w.printCard,
	}, w.turned)
	w.clock = controls.NewTimeBar(w.study)
	w.travel, w.below = controls.NewTravelBar(w.study), container.NewStack()
	w.clock.Axis, w.travel.Axis = w.charts.LaunchAxis, w.charts.TravelAxis
	w.charts.Presented = func() {
		w.clock.Realign()
		w.travel.Realign()
	}
	w.view.Keys = w.clock.Press
	w.proof = container.NewStack()
	w.panels.open(w.panels.named(firstPanel))
	w.choose()
	w.want()
	w.soon = runner.NewSoon(w.post, w.refresh)
	w.bar = controls.NewToolbar(w.study, w.view, views...)
	w.bar.Launched = w.launched
	w.stage = controls.NewMiddle(w.bar, w.view, w.below)
	caution := form.NewProse(chart.Caution, theme.SizeNameCaptionText, theme.ColorNameForeground, fyne.TextStyle{Italic: true})
	w.right = container.NewBorder(nil, caution, nil, nil, w.panels.tabs)
	p := w.app.Preferences()
	w.split.build(w.inputs, w.stage, w.proof, w.right, p)
	w.window.SetContent(container.NewBorder(nil, w.status, nil, nil, w.split.inputs))
	w.window.SetPadded(false)
	w.window.Resize(fyne.NewSize(float32(p.FloatWithFallback(prefWidth, firstWidth)), float32(p.FloatWithFallback(prefHeight, firstHeight))))
}

// later has a function run after a while by the goroutine that owns the window.
func (w *Window) later(after time.Duration, run func()) {
	time.AfterFunc(after, func() { w.post(run) })
}

// choose puts on show what belongs to the tab and page chosen and to travel or
// launch.
func (w *Window) choose() {
	launching := w.study.Launching()
	w.panels.choose(launching)
	swap(w.proof, w.panels.current().Evidence())
	if launching {
		swap(w.below, w.clock.Object)
		w.clock.Realign()
	} else {
		swap(w.below, w.travel.Object)
	}
}

// turned shows another tab or page.
func (w *Window) turned() {
	w.choose()
	w.want()
	w.refresh()
}

// want has computed what the panel on show wants, and the launch, which the side view
// shows the bars' share of the limit in.
func (w *Window) want() { w.study.Want(w.panels.current().Wants() | study.WantsLaunch) }

// show puts a panel on show.
func (w *Window) show(index int) {
	w.panels.open(index)
	if when := registry[index].when; when != always {
		was := w.study.Launching()
		w.study.SetLaunching(when == inLaunch)
		if !was && w.study.Launching() {
			w.launched()
		}
	}
}

// launched plays the launch that a person has just chosen, and gives the keyboard to
// the stage.
func (w *Window) launched() {
	w.window.Canvas().Focus(w.view)
	w.clock.Restart()
}

// typedKey takes a key that nothing has the focus for: the mild answer to a question on
// Escape, or else it is the time line's.
func (w *Window) typedKey(e *fyne.KeyEvent) {
	if w.window.Canvas().Overlays().Top() != nil {
		w.dialogs.typedKey(e)
	} else {
		w.clock.TypedKey(e)
	}
}

// typedRune takes a letter that nothing has the focus for.
func (w *Window) typedRune(r rune) {
	if w.window.Canvas().Overlays().Top() == nil {
		w.clock.TypedRune(r)
	}
}

// refresh brings the panel on show and its charts up to date.
func (w *Window) refresh() {
	w.panels.current().Refresh()
	w.charts.Draw()
}

// ShowAndRun shows the window and returns when it is closed.
func (w *Window) ShowAndRun() {
	tick := time.NewTicker(autosaveEvery)
	go w.autosave(tick.C)
	w.window.ShowAndRun()
	tick.Stop()
	close(w.stop)
	w.charts.Close()
	w.study.Close()
}

// Content returns the window's canvas, for tests.
func (w *Window) Content() fyne.Canvas { return w.window.Canvas() }

// follow keeps the panel on show, title and menu up to date.
func (w *Window) follow(c study.Change) {
	if c.Has(study.Choice) {
		w.menu.refreshForces(w)
		w.choose()
		w.study.Then(w.want)
		if w.status.Text == hint || w.status.Text == launchHint {
			w.say("")
		}
	}
	if c.Has(study.LaunchFailed) {
		err := w.study.LaunchError()
		w.study.Then(func() { w.fail(err) })
	}
	if c&^study.File != 0 {
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

// launchHint stands there while the launch is looked at.
const launchHint = "Space plays and pauses. Left and right go 1 ms on or back, with Shift ten; Page up and Page down from mark to mark; Up and down play faster and slower."

// say writes a line under the panes; without one, the hint.
func (w *Window) say(text string) {
	switch {
	case text != "":
	case w.study.Launching():
		text = launchHint
	default:
		text = hint
	}
	if w.status.Text != text {
		w.status.SetText(text)
	}
}

// refused says why an edit in the side view was not taken.
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
	w.split.keep(p)
	p.SetFloat(prefWidth, float64(size.Width))
	p.SetFloat(prefHeight, float64(size.Height))
	p.SetStringList(prefOpen, w.inputs.OpenSections())
}
