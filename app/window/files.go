package window

import (
	"errors"
	"path/filepath"
	"strings"
	"time"

	"bowline/app/document"
	"bowline/app/panel"
	"bowline/app/report"
	"bowline/assets"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/stock"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"
)

// demoFile reads the embedded demo car.
func demoFile(library stock.Library) (*carfile.File, error) {
	data, err := assets.Cars.ReadFile(assets.DemoCar)
	if err != nil {
		return nil, err
	}
	return carfile.Decode(filepath.Base(assets.DemoCar), data, library)
}

// openExample loads one of the embedded cars.
func (w *Window) openExample(name string) {
	data, err := assets.Cars.ReadFile(name)
	if err == nil {
		err = w.doc.OpenBytes(filepath.Base(name), data)
	}
	w.fail(err)
}

// open loads a car file, offering what a crash has left of it.
func (w *Window) open(path string) {
	left, found := document.Recoverable(path)
	if err := w.doc.Open(path); err != nil {
		w.fail(err)
	} else {
		w.remember()
	}
	if found {
		w.offer(left)
	}
}

// remember puts the document's file at the head of the recent ones.
func (w *Window) remember() {
	if err := w.recent.Add(w.doc.Path()); err != nil {
		w.say("The list of recent files could not be kept: " + err.Error())
	}
	w.remake()
}

// fail shows an error with all its lines.
func (w *Window) fail(err error) {
	if err == nil {
		return
	}
	text := widget.NewLabel(err.Error())
	text.Wrapping = fyne.TextWrapWord
	box := container.NewVScroll(text)
	box.SetMinSize(fyne.NewSize(620, float32(min(320, 60+40*strings.Count(err.Error(), "\n")))))
	d := dialog.NewCustom("This did not work", "Close", box, w.window)
	d.SetOnClosed(func() { w.mild = nil })
	w.mild = d.Hide
	d.Show()
}

// ask shows a question with an answer for each button; the last is the mild
// one.
func (w *Window) ask(title, question string, answers ...panel.Answer) {
	text := widget.NewLabel(question)
	text.Wrapping = fyne.TextWrapWord
	d := dialog.NewCustomWithoutButtons(title, container.New(wide(460), text), w.window)
	buttons := make([]fyne.CanvasObject, len(answers))
	for i, a := range answers {
		give := func() {
			d.Hide()
			w.mild = nil
			if a.Do != nil {
				a.Do()
			}
		}
		b := widget.NewButton(a.Name, give)
		w.mild = give // of the last answer, in the end
		if i == 0 {
			b.Importance = widget.HighImportance
		}
		buttons[i] = b
	}
	d.SetButtons(buttons)
	d.Show()
}

// typedKey gives the mild answer to a question on Escape.
func (w *Window) typedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape && w.mild != nil && w.asking() {
		w.mild()
	}
}

// asking reports whether a question waits for its answer.
func (w *Window) asking() bool {
	_, modal := w.window.Canvas().Overlays().Top().(*widget.PopUp)
	return modal
}

// wide gives its object at least a width.
type wide float32

// MinSize implements fyne.Layout.
func (l wide) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().Max(fyne.NewSize(float32(l), 0))
}

// Layout implements fyne.Layout.
func (l wide) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(size)
}

// pendingWords say why nothing is done while a typed value is refused.
const pendingWords = "A value typed is refused; correct it or press Escape there first."

// settled takes what has been typed and not been taken yet, and reports whether
// that is allowed.
func (w *Window) settled() bool {
	if !w.inputs.CommitPending() || !w.panels.commitPending() {
		w.say(pendingWords)
		return false
	}
	return true
}

// leave asks about what panels hold and about unsaved changes before it goes on.
func (w *Window) leave(then func()) {
	if !w.settled() {
		return
	}
	w.panels.leave(func() { w.leaveCar(then) })
}

// leaveCar asks about unsaved changes before it goes on.
func (w *Window) leaveCar(then func()) {
	if !w.doc.Modified() {
		then()
		return
	}
	w.ask("Unsaved changes", w.doc.Car().Body.Name+" has changes that are not saved.",
		panel.Answer{Name: "Save", Do: func() { w.save(then) }},
		panel.Answer{Name: "Discard changes", Do: then},
		panel.Answer{Name: "Keep editing"})
}

// save writes the car to its file, asking for one where it has none.
func (w *Window) save(then func()) {
	if !w.settled() {
		return
	}
	err := w.doc.Save()
	switch {
	case errors.Is(err, document.ErrNoPath):
		w.saveAs(then)
	case errors.Is(err, document.ErrChangedOnDisk):
		w.ask("Changed on disk", "Another program has written "+w.doc.Path()+" since it was opened.",
			panel.Answer{Name: "Save under another name", Do: func() { w.saveAs(then) }},
			panel.Answer{Name: "Overwrite it", Do: func() { w.saved(w.doc.Overwrite(), then) }},
			panel.Answer{Name: "Keep editing"})
	default:
		w.saved(err, then)
	}
}

// saved goes on after a save.
func (w *Window) saved(err error, then func()) {
	if err != nil {
		w.fail(err)
		return
	}
	w.remember()
	w.say("Saved " + w.doc.Path())
	if then != nil {
		then()
	}
}

// saveAs asks where to save.
func (w *Window) saveAs(then func()) {
	w.askFile("Save the car as", "", w.fileName()+".toml", func(path string) { w.saved(w.doc.SaveAs(path), then) })
}

// fileName makes a file stem of the car's name.
func (w *Window) fileName() string {
	if p := w.doc.Path(); p != "" {
		return strings.TrimSuffix(filepath.Base(p), filepath.Ext(p))
	}
	stem := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r == ' ':
			return '-'
		}
		return -1
	}, strings.ToLower(w.doc.Car().Body.Name))
	if stem == "" {
		return "car"
	}
	return stem
}

// askOpen asks for a car file to open.
func (w *Window) askOpen() {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil || f == nil {
			w.fail(err)
			return
		}
		path := f.URI().Path()
		w.fail(f.Close())
		w.open(path)
	}, w.window)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".toml"}))
	w.placeDialog(d)
}

// placeDialog opens a file dialog large and in the car's folder.
func (w *Window) placeDialog(d *dialog.FileDialog) {
	if p := w.doc.Path(); p != "" {
		if folder, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(p))); err == nil {
			d.SetLocation(folder)
		}
	}
	d.Resize(fyne.NewSize(820, 560))
	d.Show()
}

// dropped opens a file dropped on the window.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) {
	if len(files) == 0 {
		return
	}
	w.leave(func() {
		w.open(files[0].Path())
		if len(files) > 1 {
			w.say("One car at a time: only the first of the files dropped was opened.")
		}
	})
}

// offer asks whether to take what a crash has left.
func (w *Window) offer(r document.Recovery) {
	name := "A car that was never saved"
	if r.Path != "" {
		name = r.Path
	}
	w.ask("Unsaved work found", name+" has unsaved work of "+r.Time.Format("2 January 2006, 15:04")+", kept when Bowline ended without closing it.",
		panel.Answer{Name: "Take it up", Do: func() { w.fail(w.doc.Recover(r)) }},
		panel.Answer{Name: "Delete it", Do: func() { w.fail(r.Discard()) }})
}

// currentLaunch returns the launch of the car as it is; nil when there is none.
func (w *Window) currentLaunch() *launch.Result {
	if w.study.LaunchOutdated() {
		return nil
	}
	return w.study.Launch()
}

// printReport asks for a file and writes the report's pages.
func (w *Window) printReport() {
	if !w.settled() {
		return
	}
	w.askFile("Report as PDF", ".pdf", w.fileName()+".pdf", func(path string) {
		if err := report.SavePDF(path, w.study.Result(), w.currentLaunch(), w.study.Units(), time.Now()); err != nil {
			w.fail(err)
			return
		}
		w.say("Report written to " + path)
	})
}

// quit closes the window, asking about unsaved changes.
func (w *Window) quit() {
	w.leave(func() {
		w.keepLayout()
		w.doc.Close()
		w.window.Close()
	})
}
