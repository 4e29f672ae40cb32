package document

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"bowline/model/carfile"
)

// edited returns a document with the car file at path, edited and autosaved.
func edited(t testing.TB, path string) *Document {
	t.Helper()
	d := opened(t, path)
	apply(t, d, torque(900))
	must(t, d.Autosave())
	return d
}

// exists reports whether there is a file.
func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// age sets a file's time back.
func age(t testing.TB, path string, by time.Duration) time.Time {
	t.Helper()
	when := time.Now().Add(-by).Truncate(time.Second)
	must(t, os.Chtimes(path, when, when))
	return when
}

// timeOf returns when a file was written.
func timeOf(t testing.TB, path string) time.Time {
	t.Helper()
	info, err := os.Stat(path)
	must(t, err)
	return info.ModTime()
}

func TestRecoverAfterACrash(t *testing.T) {
	path := carFile(t)
	crashed := edited(t, path)
	r, ok := Recoverable(path)
	if !ok || r.Path != path || r.File != path+".recover" || !r.Time.Equal(timeOf(t, r.File)) {
		t.Fatalf("recoverable %v: %+v", ok, r)
	}
	if !bytes.Equal(read(t, path), fixture(t)) {
		t.Error("autosave touched the car's own file")
	}

	d := newDocument(t)
	must(t, d.Recover(r))
	if !reflect.DeepEqual(d.Car(), crashed.Car()) || d.Path() != path || !d.Modified() || d.UndoLabel() != "" {
		t.Errorf("path %q, modified %v, undo %q, torque %v", d.Path(), d.Modified(), d.UndoLabel(), d.Car().Drive.Torque)
	}
	if !exists(r.File) {
		t.Error("the recovery file went before the car was saved")
	}
	must(t, d.Save())
	if exists(r.File) || opened(t, path).Car().Drive.Torque != 900 {
		t.Error("not saved, or the recovery file stays")
	}
}

func TestNothingToRecover(t *testing.T) {
	for name, leave := range map[string]func(t *testing.T, path string){
		"never edited":              func(t *testing.T, path string) { must(t, opened(t, path).Autosave()) },
		"saved":                     func(t *testing.T, path string) { must(t, edited(t, path).Save()) },
		"saved elsewhere":           func(t *testing.T, path string) { must(t, edited(t, path).SaveAs(path+"2")) },
		"closed":                    func(t *testing.T, path string) { edited(t, path).Close() },
		"another opened":            func(t *testing.T, path string) { must(t, edited(t, path).OpenBytes("demo", fixture(t))) },
		"undone":                    func(t *testing.T, path string) { d := edited(t, path); d.Undo(); must(t, d.Autosave()) },
		"recovered and closed":      func(t *testing.T, path string) { recovered(t, path).Close() },
		"recovered in the same":     func(t *testing.T, path string) { d := edited(t, path); recoverIn(t, d, path); d.Close() },
		"discarded":                 func(t *testing.T, path string) { edited(t, path); r, _ := Recoverable(path); must(t, r.Discard()) },
		"a tick after it is closed": func(t *testing.T, path string) { d := edited(t, path); d.Close(); must(t, d.Autosave()) },
	} {
		t.Run(name, func(t *testing.T) {
			path := carFile(t)
			leave(t, path)
			if r, ok := Recoverable(path); ok || exists(path+".recover") {
				t.Errorf("recoverable %v: %+v", ok, r)
			}
		})
	}
}

func recoverIn(t testing.TB, d *Document, path string) {
	t.Helper()
	r, ok := Recoverable(path)
	if !ok {
		t.Fatal("nothing to recover")
	}
	must(t, d.Recover(r))
	if !exists(r.File) {
		t.Error("the recovery file is gone")
	}
}

func recovered(t testing.TB, path string) *Document {
	t.Helper()
	edited(t, path)
	d := newDocument(t)
	recoverIn(t, d, path)
	return d
}

func TestARecoveryFileThatIsNotOffered(t *testing.T) {
	path := carFile(t)
	edited(t, path)
	age(t, path+".recover", time.Hour)
	if _, ok := Recoverable(path); ok {
		t.Error("one older than the car's file is offered")
	}
	must(t, os.WriteFile(path+".recover", fixture(t), 0o600))
	if _, ok := Recoverable(path); ok {
		t.Error("one that holds the same as the car's file is offered")
	}
	must(t, os.Remove(path+".recover"))
	must(t, os.Mkdir(path+".recover", 0o700))
	if _, ok := Recoverable(path); ok {
		t.Error("a folder is offered")
	}
}

func TestAutosaveWritesOnlyWhatIsNew(t *testing.T) {
	path := carFile(t)
	d := edited(t, path)
	file := path + ".recover"
	old := age(t, file, time.Minute)
	must(t, d.Autosave())
	apply(t, d, torque(901))
	apply(t, d, torque(900))
	must(t, d.Autosave())
	if !timeOf(t, file).Equal(old) {
		t.Error("written again without need")
	}
	d.Begin("Drag")
	apply(t, d, torque(901))
	must(t, d.Autosave())
	if !timeOf(t, file).Equal(old) {
		t.Error("written in the middle of a drag")
	}
	d.End()
	must(t, d.Autosave())
	if timeOf(t, file).Equal(old) || opened(t, file).Car().Drive.Torque != 901 {
		t.Error("not written after a change")
	}
	for d.Undo() {
	}
	must(t, d.Autosave())
	if exists(file) {
		t.Error("not removed after undoing to the saved car")
	}
	for d.Redo() {
	}
	must(t, d.Autosave())
	if !exists(file) || opened(t, file).Car().Drive.Torque != 901 {
		t.Error("not written after undoing to the saved car and redoing")
	}
}

func TestARecoveryFileOfAnotherStays(t *testing.T) {
	path := carFile(t)
	d := edited(t, path)
	foreign := bytes.Replace(fixture(t), []byte("780"), []byte("781"), 1)
	must(t, os.WriteFile(path+".recover", foreign, 0o600))
	d.Close()
	if !exists(path + ".recover") {
		t.Error("removed what another had written")
	}
	opened(t, path).Close()
	if !exists(path + ".recover") {
		t.Error("removed what was left by a crash")
	}
}

func TestRecoveryOutlivesAFailingSave(t *testing.T) {
	path := carFile(t)
	d := edited(t, path)
	must(t, os.Remove(path))
	must(t, os.MkdirAll(filepath.Join(path, "in the way"), 0o700))
	if d.Save() == nil || d.Overwrite() == nil {
		t.Fatal("saved over a folder")
	}
	if !exists(path+".recover") || !d.Modified() {
		t.Error("the recovery file is gone")
	}
}

func TestAutosaveWithoutAPath(t *testing.T) {
	d := newDocument(t)
	folder := filepath.Dir(d.recovery.fallback)
	if list := Unsaved(folder); len(list) != 0 {
		t.Fatalf("unsaved %v before anything was kept", list)
	}
	apply(t, d, torque(900))
	must(t, d.Autosave())
	must(t, os.WriteFile(filepath.Join(folder, "notes.txt"), nil, 0o600))
	list := Unsaved(folder)
	if len(list) != 1 || list[0].Path != "" {
		t.Fatalf("unsaved %+v", list)
	}

	later := newDocument(t)
	must(t, later.Recover(list[0]))
	if later.Path() != "" || !later.Modified() || later.Car().Drive.Torque != 900 {
		t.Errorf("path %q, modified %v, torque %v", later.Path(), later.Modified(), later.Car().Drive.Torque)
	}
	apply(t, later, torque(901))
	must(t, later.Autosave())
	if list := Unsaved(folder); len(list) != 1 || opened(t, list[0].File).Car().Drive.Torque != 901 {
		t.Errorf("unsaved %+v after another edit, want the same file", list)
	}
	path := filepath.Join(t.TempDir(), "car.toml")
	must(t, later.SaveAs(path))
	if list := Unsaved(folder); len(list) != 0 {
		t.Errorf("unsaved %+v after saving", list)
	}
	apply(t, later, torque(902))
	must(t, later.Autosave())
	if _, ok := Recoverable(path); !ok || len(Unsaved(folder)) != 0 {
		t.Error("not kept beside the new file")
	}
}

func TestUnsavedNewestFirst(t *testing.T) {
	var files []string
	folder := t.TempDir()
	file, err := carfile.Decode("saltgrass.toml", fixture(t), carfile.Stock())
	must(t, err)
	for i := range 3 {
		d := New(carfile.Stock(), folder, file)
		apply(t, d, torque(900))
		must(t, d.Autosave())
		files = append(files, d.recovery.fallback)
		age(t, d.recovery.fallback, []time.Duration{2, 3, 1}[i]*time.Hour)
	}
	list := Unsaved(folder)
	if len(list) != 3 || list[0].File != files[2] || list[1].File != files[0] || list[2].File != files[1] {
		t.Errorf("%+v of %v", list, files)
	}
}

func TestAutosaveWhereTheCarsFolderTakesNoFiles(t *testing.T) {
	path := carFile(t)
	d := edited(t, path)
	apply(t, d, torque(901))
	blockFolder(t, filepath.Dir(path))
	must(t, d.Autosave())
	folder := filepath.Dir(d.recovery.fallback)
	list := Unsaved(folder)
	if len(list) != 1 || opened(t, list[0].File).Car().Drive.Torque != 901 {
		t.Fatalf("unsaved %+v", list)
	}
	apply(t, d, torque(902))
	blockFolder(t, folder)
	if d.Autosave() == nil {
		t.Error("no error although nothing could be written")
	}
	if !d.Modified() || d.Car().Drive.Torque != 902 {
		t.Error("the car is gone")
	}
	must(t, os.Remove(folder))
	must(t, d.Autosave())
	if list := Unsaved(folder); len(list) != 1 {
		t.Error("not tried again")
	}
	must(t, d.SaveAs(filepath.Join(t.TempDir(), "car.toml")))
	if list := Unsaved(folder); len(list) != 0 {
		t.Errorf("unsaved %+v after saving", list)
	}
}

func TestRecoverWithoutTheCarsFile(t *testing.T) {
	path := carFile(t)
	edited(t, path)
	must(t, os.Remove(path))
	d := newDocument(t)
	recoverIn(t, d, path)
	if !d.Modified() || d.Path() != path {
		t.Errorf("modified %v, path %q", d.Modified(), d.Path())
	}
	must(t, d.Save())
}

func TestRecoverBesideAFileThatCannotBeRead(t *testing.T) {
	path := carFile(t)
	edited(t, path)
	must(t, os.WriteFile(path, []byte("schema = 1 # in the middle of something"), 0o600))
	age(t, path, time.Hour)
	d := newDocument(t)
	recoverIn(t, d, path)
	if err := d.Save(); !errors.Is(err, ErrChangedOnDisk) {
		t.Errorf("Save: %v", err)
	}
	must(t, d.Overwrite())
}

func TestRecoverThatFailsChangesNothing(t *testing.T) {
	path := carFile(t)
	must(t, os.WriteFile(path+".recover", []byte("schema = 1"), 0o600))
	r, ok := Recoverable(path)
	if !ok {
		t.Fatal("not offered")
	}
	d := newDocument(t)
	car := d.Car()
	var problems carfile.Problems
	if err := d.Recover(r); !errors.As(err, &problems) {
		t.Errorf("Recover: %v", err)
	}
	if d.Car() != car || d.Path() != "" || !exists(r.File) {
		t.Error("the document changed or the recovery file is gone")
	}
}

func BenchmarkAutosave(b *testing.B) {
	d := opened(b, carFile(b))
	for i := 0; b.Loop(); i++ {
		apply(b, d, torque(900+float64(i%2)))
		must(b, d.Autosave())
	}
}
