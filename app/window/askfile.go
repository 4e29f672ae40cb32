package window

import (
	"fmt"
	"os"
	"path/filepath"

	"bowline/app/panel"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/storage/repository"
)

// askFile asks under a title for a file to write, beginning with a name in the car's folder,
// and hands on its path, which gets the ending of name when it has none. The
// files listed are those of an extension; empty lists all. Nothing is written
// by the asking itself.
func (w *Window) askFile(title, extension, name string, then func(path string)) {
	d := dialog.NewFileSave(func(f fyne.URIWriteCloser, err error) {
		if err != nil || f == nil {
			w.fail(err)
			return
		}
		w.fail(f.Close())
		w.named(f.URI().Path(), filepath.Ext(name), then)
	}, w.window)
	d.SetTitleText(title)
	d.SetFileName(name)
	if extension != "" {
		d.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
	}
	w.placeDialog(d)
}

// named goes on with a path that the person has chosen. Of a file that is
// there the dialog has asked already, unless an ending is put to its name.
func (w *Window) named(path, ending string, then func(path string)) {
	if filepath.Ext(path) != "" {
		then(path)
		return
	}
	path += ending
	if _, err := os.Stat(path); err != nil {
		then(path)
		return
	}
	w.ask("Replace the file", path+" is there already.",
		panel.Answer{Name: "Replace it", Do: func() { then(path) }}, panel.Answer{Name: "Cancel"})
}

// diskFiles is the toolkit's own way to files.
type diskFiles interface {
	repository.WritableRepository
	repository.ListableRepository
	repository.HierarchicalRepository
}

// patientFiles are files on disk that are not emptied by a dialog which asks
// where to save: the window writes its files itself, as a whole or not at all.
type patientFiles struct{ diskFiles }

// Writer implements repository.WritableRepository.
func (p patientFiles) Writer(u fyne.URI) (fyne.URIWriteCloser, error) {
	return &patientWriter{files: p.diskFiles, uri: u}, nil
}

// patientWriter opens its file when something is written.
type patientWriter struct {
	files diskFiles
	uri   fyne.URI
	open  fyne.URIWriteCloser // nil until then
}

// URI implements fyne.URIWriteCloser.
func (w *patientWriter) URI() fyne.URI { return w.uri }

// Write implements io.Writer.
func (w *patientWriter) Write(data []byte) (int, error) {
	if w.open == nil {
		f, err := w.files.Writer(w.uri)
		if err != nil {
			return 0, err
		}
		w.open = f
	}
	return w.open.Write(data)
}

// Close implements io.Closer.
func (w *patientWriter) Close() error {
	if w.open == nil {
		return nil
	}
	return w.open.Close()
}

// keepFiles puts patientFiles in the place of the toolkit's files.
func keepFiles() error {
	r, err := repository.ForScheme("file")
	if err != nil {
		return err
	}
	switch files := r.(type) {
	case patientFiles:
		return nil
	case diskFiles:
		repository.Register("file", patientFiles{files})
		return nil
	}
	return fmt.Errorf("files cannot be asked for: the toolkit reaches them by a %T", r)
}
