package document

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"bowline/model/carfile"
)

// carFile writes the fixture to a new folder and returns its path.
func carFile(t testing.TB) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "car.toml")
	must(t, os.WriteFile(path, fixture(t), 0o600))
	return path
}

// opened returns a document with the car file at path.
func opened(t testing.TB, path string) *Document {
	t.Helper()
	d := newDocument(t)
	must(t, d.Open(path))
	return d
}

// read returns what a file holds.
func read(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	must(t, err)
	return data
}

// blockFolder puts a file in the place of a folder, so that nothing in it can be read or written, by nobody.
func blockFolder(t testing.TB, folder string) {
	t.Helper()
	must(t, os.RemoveAll(folder))
	must(t, os.WriteFile(folder, nil, 0o600))
}

func TestSaveAndOpen(t *testing.T) {
	path := carFile(t)
	d := opened(t, path)
	if d.Path() != path || d.Modified() {
		t.Errorf("path %q, modified %v", d.Path(), d.Modified())
	}
	apply(t, d, torque(1234.5678901234567))
	must(t, d.Save())
	if d.Modified() {
		t.Error("modified after saving")
	}
	if again := opened(t, path); !reflect.DeepEqual(again.Car(), d.Car()) {
		t.Errorf("read %+v\nsaved %+v", again.Car(), d.Car())
	}
	apply(t, d, torque(900))
	must(t, d.Save()) // The file on disk is the one saved last, not the one opened.
}

func TestOpenTakesARelativePath(t *testing.T) {
	path := carFile(t)
	d := newDocument(t)
	t.Chdir(filepath.Dir(path))
	must(t, d.Open("car.toml"))
	if d.Path() != path {
		t.Errorf("path %q, want %q", d.Path(), path)
	}
	must(t, d.SaveAs("other.toml"))
	if want := filepath.Join(filepath.Dir(path), "other.toml"); d.Path() != want {
		t.Errorf("path %q, want %q", d.Path(), want)
	}
}

func TestOpenThatFailsChangesNothing(t *testing.T) {
	d := opened(t, carFile(t))
	apply(t, d, torque(900))
	must(t, d.Autosave())
	heard := hear(d)
	car, path, revision := d.Car(), d.Path(), d.Revision()
	folder := t.TempDir()
	wrong := filepath.Join(folder, "wrong.toml")
	must(t, os.WriteFile(wrong, bytes.Replace(fixture(t), []byte("wheelbase = 105"), []byte("wheelbase = -105"), 1), 0o600))
	huge := filepath.Join(folder, "huge.toml")
	must(t, os.WriteFile(huge, append(fixture(t), bytes.Repeat([]byte("#\n"), carfile.MaxSize/2)...), 0o600))
	var problems carfile.Problems
	if err := d.Open(wrong); !errors.As(err, &problems) || problems[0].File != wrong {
		t.Errorf("a wrong car: %v", err)
	}
	if err := d.Open(huge); !errors.As(err, &problems) {
		t.Errorf("a file over the limit: %v", err)
	}
	if err := d.Open(filepath.Join(folder, "none.toml")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a missing file: %v", err)
	}
	if err := d.Open(folder); err == nil {
		t.Error("a folder was opened")
	}
	if err := d.OpenBytes("demo", []byte("schema")); !errors.As(err, &problems) || problems[0].File != "demo" {
		t.Errorf("wrong bytes: %v", err)
	}
	if d.Car() != car || d.Path() != path || d.Revision() != revision || d.UndoLabel() == "" || len(*heard) > 0 {
		t.Error("the document changed")
	}
	if _, ok := Recoverable(path); !ok {
		t.Error("the recovery file is gone")
	}
}

func TestOpenReplacesTheCar(t *testing.T) {
	d := newDocument(t)
	d.SelectSetup(2)
	apply(t, d, torque(900))
	must(t, d.Open(carFile(t)))
	if d.Setup() != 0 || d.UndoLabel() != "" || d.Undo() || d.Modified() {
		t.Errorf("setup %d, undo %q, modified %v after opening", d.Setup(), d.UndoLabel(), d.Modified())
	}
	must(t, d.OpenBytes("demo", fixture(t)))
	if d.Path() != "" || d.Modified() {
		t.Errorf("path %q, modified %v", d.Path(), d.Modified())
	}
}

func TestSaveWithoutAPath(t *testing.T) {
	d := newDocument(t)
	if err := d.Save(); !errors.Is(err, ErrNoPath) {
		t.Errorf("Save: %v", err)
	}
	if err := d.Overwrite(); !errors.Is(err, ErrNoPath) {
		t.Errorf("Overwrite: %v", err)
	}
}

func TestSaveNoticesAChangeOnDisk(t *testing.T) {
	path := carFile(t)
	d := opened(t, path)
	apply(t, d, torque(900))
	// The same size and time, so that only what the file holds tells.
	info, err := os.Stat(path)
	must(t, err)
	foreign := bytes.Replace(fixture(t), []byte("torque = 780"), []byte("torque = 781"), 1)
	must(t, os.WriteFile(path, foreign, 0o600))
	must(t, os.Chtimes(path, info.ModTime(), info.ModTime()))
	err = d.Save()
	if !errors.Is(err, ErrChangedOnDisk) || !strings.Contains(err.Error(), path) {
		t.Fatalf("Save: %v", err)
	}
	if !d.Modified() || !bytes.Equal(read(t, path), foreign) {
		t.Errorf("modified %v after a refused save; the file is overwritten: %v", d.Modified(), !bytes.Equal(read(t, path), foreign))
	}
	must(t, d.Overwrite())
	if d.Modified() || opened(t, path).Car().Drive.Torque != 900 {
		t.Error("not overwritten")
	}
	must(t, d.Save())
}

func TestSaveDoesNotMindTimes(t *testing.T) {
	path := carFile(t)
	d := opened(t, path)
	apply(t, d, torque(900))
	later := time.Now().Add(time.Hour)
	must(t, os.Chtimes(path, later, later))
	must(t, d.Save())
}

func TestSaveAfterTheFileWasDeleted(t *testing.T) {
	path := carFile(t)
	d := opened(t, path)
	apply(t, d, torque(900))
	must(t, os.Remove(path))
	must(t, d.Save())
	if opened(t, path).Car().Drive.Torque != 900 {
		t.Error("not saved")
	}
}

func TestSaveThatFails(t *testing.T) {
	path := carFile(t)
	d := opened(t, path)
	apply(t, d, torque(900))
	heard := hear(d)
	blockFolder(t, filepath.Dir(path))
	if d.Save() == nil || d.Overwrite() == nil || d.SaveAs(filepath.Join(filepath.Dir(path), "other.toml")) == nil {
		t.Error("saved into a folder that is none")
	}
	if !d.Modified() || d.Path() != path || d.UndoLabel() == "" || len(*heard) > 0 {
		t.Errorf("modified %v, path %q, undo %q, heard %b", d.Modified(), d.Path(), d.UndoLabel(), *heard)
	}
}
