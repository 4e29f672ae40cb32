package window

import (
	"os"
	"path/filepath"
	"strings"

	"bowline/app/document"
	"bowline/app/panel"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"
)

// dialogs are the questions that the window asks and the errors that it shows.
type dialogs struct {
	window fyne.Window
	doc    *document.Document
	mild   func() // the answer that Escape gives; nil without a question
}

// fail shows an error with all its lines.
func (d *dialogs) fail(err error) {
	if err == nil {
		return
	}
	text := widget.NewLabel(err.Error())
	text.Wrapping = fyne.TextWrapWord
	scroll := container.NewVScroll(text)
	scroll.SetMinSize(fyne.NewSize(620, float32(min(320, 60+40*strings.Count(err.Error(), "\n")))))
	d.tell("This did not work", scroll)
}

// tell shows something until it is closed.
func (d *dialogs) tell(title string, o fyne.CanvasObject) {
	box := dialog.NewCustom(title, "Close", o, d.window)
	box.SetOnClosed(func() { d.mild = nil })
	d.mild = box.Hide
	box.Show()
}

// ask shows a question with an answer for each button; the last is the mild
// one.
func (d *dialogs) ask(title, question string, answers ...panel.Answer) {
	text := widget.NewLabel(question)
	text.Wrapping = fyne.TextWrapWord
	box := dialog.NewCustomWithoutButtons(title, container.New(wide(460), text), d.window)
	buttons := make([]fyne.CanvasObject, len(answers))
	for i, a := range answers {
		give := func() {
			box.Hide()
			d.mild = nil
			if a.Do != nil {
				a.Do()
			}
		}
		b := widget.NewButton(a.Name, give)
		d.mild = give // of the last answer, in the end
		if i == 0 {
			b.Importance = widget.HighImportance
		}
		buttons[i] = b
	}
	box.SetButtons(buttons)
	box.Show()
}

// typedKey gives the mild answer to a question on Escape.
func (d *dialogs) typedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape && d.mild != nil && d.asking() {
		d.mild()
	}
}

// asking reports whether a question waits for its answer.
func (d *dialogs) asking() bool {
	_, modal := d.window.Canvas().Overlays().Top().(*widget.PopUp)
	return modal
}

// askFile asks under a title for a file to write, beginning with a name in the
// car's folder, and hands on its path, which gets the ending of name when it has
// none. The files listed are those of an extension; empty lists all. Nothing is
// written by the asking itself.
func (d *dialogs) askFile(title, extension, name string, then func(path string)) {
	box := dialog.NewFileSave(func(f fyne.URIWriteCloser, err error) {
		if err != nil || f == nil {
			d.fail(err)
			return
		}
		d.fail(f.Close())
		d.named(f.URI().Path(), filepath.Ext(name), then)
	}, d.window)
	box.SetTitleText(title)
	box.SetFileName(name)
	if extension != "" {
		box.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
	}
	d.place(box)
}

// named goes on with a path that the person has chosen. Of a file that is
// there the dialog has asked already, unless an ending is put to its name.
func (d *dialogs) named(path, ending string, then func(path string)) {
	if filepath.Ext(path) != "" {
		then(path)
		return
	}
	path += ending
	if _, err := os.Stat(path); err != nil {
		then(path)
		return
	}
	d.ask("Replace the file", path+" is there already.",
		panel.Answer{Name: "Replace it", Do: func() { then(path) }}, panel.Answer{Name: "Cancel"})
}

// place opens a file dialog large and in the car's folder.
func (d *dialogs) place(box *dialog.FileDialog) {
	if p := d.doc.Path(); p != "" {
		if folder, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(p))); err == nil {
			box.SetLocation(folder)
		}
	}
	box.Resize(fyne.NewSize(820, 560))
	box.Show()
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
