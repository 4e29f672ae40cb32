package window

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage/repository"
)

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
