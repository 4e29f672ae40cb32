package document

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"reflect"

	"bowline/model/car"
	"bowline/model/carfile"
)

var (
	// ErrNoPath is returned when a car without a path is saved: ask for one
	// and use SaveAs.
	ErrNoPath = errors.New("the car has no file yet")
	// ErrChangedOnDisk is returned when a save would overwrite what another
	// program has written: ask, then use Overwrite, SaveAs or Open.
	ErrChangedOnDisk = errors.New("the file has changed on disk since it was opened")
)

// Path returns the absolute path of the car's file; empty when it has none.
func (d *Document) Path() string { return d.path }

// Modified reports whether the car differs from the saved one. Undoing back to
// the saved car ends it.
func (d *Document) Modified() bool { return !reflect.DeepEqual(d.now.car, d.saved) }

// Open loads a car file in place of the current car, whose undo steps and
// recovery file go: ask first when it is Modified. Ask as well when something
// is Recoverable of the file at path, since the next Autosave takes its place.
// When Open fails, which it does as reading a file and carfile.Decode do,
// nothing changes.
func (d *Document) Open(path string) error {
	file, data, err := d.read(path)
	if err != nil {
		return err
	}
	absolute, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	d.load(file, absolute, data, file.Car)
	return nil
}

// OpenBytes loads a car that has no path, such as a demo, as Open does. The
// name stands in messages.
func (d *Document) OpenBytes(name string, data []byte) error {
	file, err := carfile.Decode(name, data, d.library)
	if err != nil {
		return err
	}
	d.load(file, "", nil, file.Car)
	return nil
}

// load puts the car of file in place of the current one.
func (d *Document) load(file *carfile.File, path string, disk []byte, saved *car.Car) {
	d.mayChange()
	d.recovery.drop()
	d.now = state{car: file.Car}
	d.units = file.Units
	d.history, d.drag = history{}, nil
	d.file, d.path, d.disk, d.saved = file, path, disk, saved
	d.loads++
	d.tell()
}

// read reads a car file.
func (d *Document) read(path string) (*carfile.File, []byte, error) {
	data, err := carfile.ReadAll(path)
	if err != nil {
		return nil, nil, err
	}
	file, err := carfile.Decode(path, data, d.library)
	return file, data, err
}

// Save writes the car to its file. Without a path it fails with ErrNoPath; with
// ErrChangedOnDisk when the file is not as it was when it was opened or saved
// last. After an error the car is still Modified and its recovery file stays.
func (d *Document) Save() error {
	if d.path == "" {
		return ErrNoPath
	}
	switch disk, err := carfile.ReadAll(d.path); {
	case errors.Is(err, fs.ErrNotExist):
		// Nothing can be lost.
	case err != nil:
		return err
	case !bytes.Equal(disk, d.disk):
		return fmt.Errorf("%s: %w", d.path, ErrChangedOnDisk)
	}
	return d.Overwrite()
}

// Overwrite is Save without the check that the file is unchanged on disk.
func (d *Document) Overwrite() error {
	if d.path == "" {
		return ErrNoPath
	}
	return d.SaveAs(d.path)
}

// SaveAs writes the car to the file at path, replacing what is there, and makes it
// the car's file.
func (d *Document) SaveAs(path string) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	data, err := d.file.Encode(d.now.car)
	if err != nil {
		return err
	}
	d.mayChange()
	if err := carfile.Write(path, data); err != nil {
		return err
	}
	d.recovery.drop()
	d.path, d.disk, d.saved = path, data, d.now.car
	d.tell()
	return nil
}
