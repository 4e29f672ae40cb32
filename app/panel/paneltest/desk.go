// Package paneltest runs a panel with a small host in place of the window: a
// document, a study, and a person before it.
package paneltest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"bowline/app/document"
	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/look"
	"bowline/app/panel"
	"bowline/app/runner/runnertest"
	"bowline/app/study"
	"bowline/assets"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// Inch is an inch [m].
const Inch = 0.0254

// Desk is a panel on show, alone in a window.
type Desk struct {
	Doc   *document.Document
	Study *study.Study
	Panel panel.Panel

	// Said is what the panel has said last; empty is the hint.
	Said string

	// Printed are the holes that it has asked a card for.
	Printed []car.Holes

	// Asked is the question that waits for an answer; nil for none.
	Asked *Question

	T testing.TB

	window fyne.Window
	queue  *runnertest.Queue
	hidden bool
	behind bool // the study has changed since the panel was refreshed
}

// Question is what a panel asks the person.
type Question struct {
	Title, Text string
	answers     []panel.Answer
}

// Size is that of the room beside the side view in a window of the first size.
var Size = fyne.NewSize(PageWidth, 600)

// Demo puts a panel on show for the demo car, as it is made by New of its
// package.
func Demo(t testing.TB, make func(panel.Host) panel.Panel) *Desk {
	t.Helper()
	return show(t, make, demo(t))
}

// Reference puts a panel on show for a copy of the reference car's file.
func Reference(t testing.TB, make func(panel.Host) panel.Panel) *Desk {
	t.Helper()
	d := show(t, make, demo(t))
	data, err := os.ReadFile(reference())
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "number7.toml")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := d.Doc.Open(path); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	return d
}

// reference finds the reference car from any package of the module.
func reference() string {
	up := "."
	for {
		if path := filepath.Join(up, "testdata", "reference.toml"); exists(path) {
			return path
		}
		up = filepath.Join(up, "..")
	}
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

func demo(t testing.TB) *carfile.File {
	t.Helper()
	data, err := assets.Cars.ReadFile(assets.DemoCar)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Decode(filepath.Base(assets.DemoCar), data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return file
}

func show(t testing.TB, make func(panel.Host) panel.Panel, file *carfile.File) *Desk {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	library := carfile.Stock()
	d := &Desk{T: t, Doc: document.New(library, t.TempDir(), file), queue: runnertest.NewQueue()}
	d.Study = study.New(d.Doc, study.Options{Library: library, Post: d.queue.Post})
	t.Cleanup(d.Study.Close)
	d.Study.Listen(func(study.Change) { d.behind = true })
	page := form.NewPage()
	d.Panel = make(panel.Host{
		Study: d.Study, Page: page,
		Chart:     func(chart.Key) fyne.CanvasObject { return canvas.NewRectangle(nil) },
		Say:       func(text string) { d.Said = text },
		Refused:   func(p []car.Problem) { d.Said = "Not there: " + p[0].String() },
		Ask:       d.ask,
		Later:     func(_ time.Duration, run func()) { d.queue.Post(run) },
		PrintCard: func(to car.Holes) { d.Printed = append(d.Printed, to) },
	})
	page.Add(d.Panel.Words(), d.Panel.Evidence())
	object := page.Object()
	d.window = test.NewTempWindow(t, object)
	d.window.SetPadded(false)
	d.window.Resize(Size)
	d.Settle()
	return d
}

// Settle waits for what is wanted, and shows what has changed.
func (d *Desk) Settle() {
	d.T.Helper()
	if !d.hidden {
		d.Study.Want(d.Panel.Wants())
	}
	for {
		d.queue.Settle(d.Study.Busy)
		if d.hidden || !d.behind {
			return
		}
		d.behind = false
		d.Panel.Refresh()
	}
}

// Wait waits until something comes back from a worker, and runs that.
func (d *Desk) Wait() {
	d.queue.Wait()
	for d.queue.Step() {
	}
}

// Hide has the person look at something else, or back at the panel.
func (d *Desk) Hide(on bool) {
	d.T.Helper()
	d.hidden, d.behind = on, true
	if on {
		d.Study.Want(0)
	}
	d.Settle()
}

// Canvas returns what the panel is drawn on.
func (d *Desk) Canvas() fyne.Canvas { return d.window.Canvas() }

// Resize gives the panel other room.
func (d *Desk) Resize(width, height float32) { d.window.Resize(fyne.NewSize(width, height)) }

// Tap taps a button and lets all follow.
func (d *Desk) Tap(b fyne.Tappable) {
	d.T.Helper()
	test.Tap(b)
	d.Settle()
}

// Edit makes a small change of the car.
func (d *Desk) Edit() {
	d.T.Helper()
	if p := d.Doc.Apply("CG height", func(c *car.Car) { c.Body.CGHeight += 0.25 * Inch }); p != nil {
		d.T.Fatal(p)
	}
	d.Settle()
}

// Undo takes the car's last step back.
func (d *Desk) Undo() {
	d.T.Helper()
	d.Doc.Undo()
	d.Settle()
}

// Example opens one of the example cars.
func (d *Desk) Example(name string) {
	d.T.Helper()
	data, err := assets.Cars.ReadFile(name)
	if err != nil {
		d.T.Fatal(err)
	}
	if err := d.Doc.OpenBytes(filepath.Base(name), data); err != nil {
		d.T.Fatal(err)
	}
	d.Settle()
}

// Reopen opens the car's file again.
func (d *Desk) Reopen() {
	d.T.Helper()
	if err := d.Doc.Open(d.Doc.Path()); err != nil {
		d.T.Fatal(err)
	}
	d.Settle()
}

// Log puts runs into the log of a setup.
func (d *Desk) Log(setup int, runs ...car.Run) {
	d.T.Helper()
	for _, r := range runs {
		if p := d.Doc.LogRun(setup, r); p != nil {
			d.T.Fatal(p)
		}
	}
	d.Settle()
}

// WantNoQuestion sees to it that nothing is asked.
func (d *Desk) WantNoQuestion() {
	d.T.Helper()
	if d.Asked != nil {
		d.T.Errorf("it asks %q", d.Asked.Text)
	}
}

// WantSaid compares what the panel has said last.
func (d *Desk) WantSaid(want string) {
	d.T.Helper()
	if d.Said != want {
		d.T.Errorf("it says %q, want %q", d.Said, want)
	}
}

func (d *Desk) ask(title, question string, answers ...panel.Answer) {
	d.Asked = &Question{title, question, answers}
}

// Answer answers the question that waits.
func (d *Desk) Answer(name string) {
	d.T.Helper()
	q := d.Asked
	if q == nil {
		d.T.Fatalf("nothing is asked that %q would answer", name)
	}
	for _, a := range q.answers {
		if a.Name == name {
			d.Asked = nil
			if a.Do != nil {
				a.Do()
			}
			d.Settle()
			return
		}
	}
	d.T.Fatalf("%q is no answer to %q", name, q.Text)
}

// Button returns the button with a text that can be seen in an object.
func Button(t testing.TB, in fyne.CanvasObject, text string) *widget.Button {
	t.Helper()
	for _, o := range screen.Seen(in) {
		if b, ok := o.(*widget.Button); ok && b.Text == text {
			return b
		}
	}
	t.Fatalf("there is no button %q", text)
	return nil
}

// Texts writes the words of labels and prose that can be seen in an object, one
// a line.
func Texts(in fyne.CanvasObject) string {
	var list []string
	for _, o := range screen.Seen(in) {
		switch o := o.(type) {
		case interface{ String() string }:
			list = append(list, o.String())
		case interface{ Text() string }:
			list = append(list, o.Text())
		}
	}
	return strings.Join(list, "\n")
}
