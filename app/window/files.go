package window

import (
	"errors"
	"path/filepath"
	"strings"

	"bowline/app/document"
	"bowline/app/panel"
	"bowline/assets"
	"bowline/model/carfile"
	"bowline/model/stock"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
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
	w.place(d)
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

// quit closes the window, asking about unsaved changes.
func (w *Window) quit() {
	w.leave(func() {
		w.keepLayout()
		w.doc.Close()
		w.window.Close()
	})
}
