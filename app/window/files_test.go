package window

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bowline/assets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
)

func TestTheFirstStartOpensTheDemoCar(t *testing.T) {
	d := newDesk(t)
	d.wantTitle("Saltgrass No. 7 — Bowline")
	d.wantNoQuestion()
	if d.doc.Path() != "" || d.doc.Modified() {
		t.Errorf("path %q, modified %v", d.doc.Path(), d.doc.Modified())
	}
}

func TestAFileOfTheCommandLineIsOpened(t *testing.T) {
	d, path := openDesk(t)
	d.wantTitle("Reference — Bowline")
	d.wantNoQuestion()
	if d.doc.Path() != path {
		t.Errorf("path %q, want %q", d.doc.Path(), path)
	}
}

func TestTheTitleMarksWhatIsNotSaved(t *testing.T) {
	d, _ := openDesk(t)
	d.edit()
	d.wantTitle("Reference • — Bowline")
	d.choose("Edit", "Undo")
	d.wantTitle("Reference — Bowline")
	d.choose("Edit", "Redo")
	d.wantTitle("Reference • — Bowline")
	d.choose("File", "Save")
	d.wantTitle("Reference — Bowline")
}

// A broken file shows all that is wrong with it, and the car stays.
func TestABrokenFileIsRefused(t *testing.T) {
	path := carFile(t)
	text := read(t, path)
	text = strings.Replace(text, "wheelbase = 105.0", "wheelbase = 1050.0", 1)
	text = strings.Replace(text, "grip = 2.6", "gripp = 2.6", 1)
	text = strings.Replace(text, "chassis_lower = 2", "chassis_lower = 9", 1)
	write(t, path, text)

	d, _ := openDesk(t)
	before := d.doc.Car()
	d.open(path)
	d.wantAsked("This did not work", "car.wheelbase", "gripp", "chassis_lower", filepath.Base(path))
	if d.doc.Car() != before {
		t.Error("the car has changed")
	}
	d.wantTitle("Reference — Bowline")
	d.answer("Close")
	d.wantNoQuestion()

	// At the start the demo car stays behind the message.
	d = sitDown(t, test.NewTempApp(t), Options{Path: path})
	d.wantAsked("car.wheelbase", "gripp")
	d.wantTitle("Saltgrass No. 7 — Bowline")
}

func TestAMissingFileIsRefused(t *testing.T) {
	d, path := openDesk(t)
	d.open(path + "x")
	d.wantAsked(path+"x", "no such file")
	if d.doc.Path() != path {
		t.Errorf("path %q", d.doc.Path())
	}
}

func TestLeavingAnUnchangedCarAsksNothing(t *testing.T) {
	d, _ := openDesk(t)
	left := 0
	d.leave(func() { left++ })
	d.wantNoQuestion()
	if left != 1 {
		t.Errorf("left %d times", left)
	}
}

func TestLeavingAChangedCarAsks(t *testing.T) {
	for _, c := range []struct {
		answer      string
		left, saved bool
	}{{"Save", true, true}, {"Discard changes", true, false}, {"Keep editing", false, false}} {
		t.Run(c.answer, func(t *testing.T) {
			d, path := openDesk(t)
			before := read(t, path)
			d.edit()
			left := false
			d.leave(func() { left = true })
			d.wantAsked("Unsaved changes", "Reference has changes that are not saved.")
			if left {
				t.Fatal("left before the answer")
			}
			d.answer(c.answer)
			d.wantNoQuestion()
			if left != c.left || (read(t, path) != before) != c.saved || d.doc.Modified() == c.saved {
				t.Errorf("left %v, saved %v, modified %v", left, read(t, path) != before, d.doc.Modified())
			}
		})
	}
}

// A new car has no file yet: saving asks for one first, and leaving waits.
func TestSavingACarWithoutAFile(t *testing.T) {
	d := newDesk(t)
	d.edit()
	left := false
	d.leave(func() { left = true })
	d.answer("Save")
	if left || d.question() == nil {
		t.Fatalf("left %v; the dialog says %q", left, d.asked())
	}
	d.answer("Cancel")
	if left || !d.doc.Modified() {
		t.Error("canceled, the window left or saved the car")
	}
}

func TestSaveAs(t *testing.T) {
	d, path := openDesk(t)
	before := read(t, path)
	d.edit()
	d.choose("File", "Save as…")
	d.name("other")
	want := filepath.Join(filepath.Dir(path), "other.toml")
	if d.doc.Path() != want || !strings.Contains(read(t, want), "cg_height = 19.75") || read(t, path) != before {
		t.Errorf("path %q, want %q", d.doc.Path(), want)
	}
	if !missing(filepath.Join(filepath.Dir(path), "other")) {
		t.Error("a file without ending was left behind")
	}
	d.wantSaid("Saved " + want)
}

// Asking where to save leaves a file that is there as it is until the person
// has agreed and all of it is written.
func TestSaveAsOverAFile(t *testing.T) {
	d, path := openDesk(t)
	other := filepath.Join(filepath.Dir(path), "other.toml")
	write(t, other, "# mine\n")
	d.edit()

	// A name without ending: the window asks.
	d.choose("File", "Save as…")
	d.name("other")
	d.wantAsked("other.toml is there already")
	d.answer("Cancel")
	if read(t, other) != "# mine\n" || d.doc.Path() != path {
		t.Errorf("canceled, the file holds %q; path %q", read(t, other), d.doc.Path())
	}

	// The whole name: the dialog asks.
	d.choose("File", "Save as…")
	d.name("other.toml")
	if read(t, other) != "# mine\n" {
		t.Fatalf("before the answer the file holds %q", read(t, other))
	}
	d.answer("Yes")
	if d.doc.Path() != other || !strings.Contains(read(t, other), "cg_height = 19.75") {
		t.Errorf("path %q, file %q", d.doc.Path(), read(t, other))
	}
}

// A save that fails loses nothing.
func TestAFailedSaveLeavesTheFile(t *testing.T) {
	d, path := openDesk(t)
	d.edit()
	folder := filepath.Join(filepath.Dir(path), "folder.toml")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	left := false
	d.saved(d.doc.SaveAs(folder), func() { left = true })
	d.wantAsked("This did not work", "folder.toml")
	if left || d.doc.Path() != path || !d.doc.Modified() {
		t.Errorf("left %v, path %q, modified %v", left, d.doc.Path(), d.doc.Modified())
	}
}

func TestSavingOverAnotherProgramsWorkAsks(t *testing.T) {
	for _, answer := range []string{"Overwrite it", "Keep editing", "Save under another name"} {
		t.Run(answer, func(t *testing.T) {
			d, path := openDesk(t)
			d.edit()
			theirs := read(t, path) + "# theirs\n"
			write(t, path, theirs)
			d.choose("File", "Save")
			d.wantAsked("Changed on disk", path)
			d.answer(answer)
			switch answer {
			case "Overwrite it":
				if read(t, path) == theirs || d.doc.Modified() {
					t.Error("not overwritten")
				}
			case "Keep editing":
				d.wantNoQuestion()
				fallthrough
			default:
				if read(t, path) != theirs || !d.doc.Modified() {
					t.Error("overwritten")
				}
			}
		})
	}
}

func TestDroppedFiles(t *testing.T) {
	d := newDesk(t)
	path, other := carFile(t), carFile(t)
	d.dropped(fyne.NewPos(10, 10), nil)
	d.wantTitle("Saltgrass No. 7 — Bowline")
	d.dropped(fyne.NewPos(10, 10), []fyne.URI{storage.NewFileURI(path), storage.NewFileURI(other)})
	d.settle()
	d.wantTitle("Reference — Bowline")
	if d.doc.Path() != path {
		t.Errorf("path %q, want %q", d.doc.Path(), path)
	}
	d.wantSaid("One car at a time: only the first of the files dropped was opened.")

	d.edit()
	d.dropped(fyne.NewPos(10, 10), []fyne.URI{storage.NewFileURI(other)})
	d.wantAsked("Unsaved changes")
	d.answer("Discard changes")
	if d.doc.Path() != other {
		t.Errorf("path %q, want %q", d.doc.Path(), other)
	}
}

func TestExampleCars(t *testing.T) {
	d, _ := openDesk(t)
	examples := d.item("File", "Example cars").ChildMenu.Items
	if len(examples) != len(assets.CarNames()) || len(examples) == 0 {
		t.Fatalf("%d examples of %d", len(examples), len(assets.CarNames()))
	}
	seen := map[string]bool{}
	for _, i := range examples {
		i.Action()
		d.settle()
		d.wantNoQuestion()
		if d.doc.Path() != "" || d.doc.Modified() || seen[d.window.Title()] {
			t.Errorf("%s: path %q, modified %v, title %q", i.Label, d.doc.Path(), d.doc.Modified(), d.window.Title())
		}
		seen[d.window.Title()] = true
	}
}

func TestRecentFiles(t *testing.T) {
	app, folder := test.NewTempApp(t), t.TempDir()
	d := sitDown(t, app, Options{Folder: folder})
	if !d.item("File", "Open recent").Disabled {
		t.Error("recent files before any was opened")
	}
	first, second, gone := carFile(t), carFile(t), carFile(t)
	for _, path := range []string{first, gone, second, first} {
		d.open(path)
	}
	if err := os.Remove(gone); err != nil {
		t.Fatal(err)
	}
	// They are there at the next start.
	d = sitDown(t, app, Options{Folder: folder})
	var labels []string
	for _, i := range d.item("File", "Open recent").ChildMenu.Items {
		labels = append(labels, i.Label)
	}
	if want := []string{first, second}; !slices.Equal(labels, want) {
		t.Fatalf("recent files %q, want %q", labels, want)
	}
	d.item("File", "Open recent").ChildMenu.Items[1].Action()
	if d.doc.Path() != second {
		t.Errorf("path %q, want %q", d.doc.Path(), second)
	}
}

// A car's name makes the name of its files.
func TestFileNames(t *testing.T) {
	d := newDesk(t)
	if got := d.fileName(); got != "saltgrass-no-7" {
		t.Errorf("the demo car's files are called %q", got)
	}
	d, _ = openDesk(t)
	if got := d.fileName(); got != "number7" {
		t.Errorf("the opened car's files are called %q", got)
	}
}

// Quitting keeps sizes and forgets what was kept for a crash.
func TestQuit(t *testing.T) {
	d, path := openDesk(t)
	d.edit()
	if err := d.doc.Autosave(); err != nil {
		t.Fatal(err)
	}
	if missing(path + ".recover") {
		t.Fatal("nothing was kept")
	}
	closed := false
	d.window.SetOnClosed(func() { closed = true })
	d.choose("File", "Quit")
	d.wantAsked("Unsaved changes")
	d.answer("Keep editing")
	if closed || missing(path+".recover") {
		t.Fatal("the window closed")
	}
	d.choose("File", "Quit")
	d.answer("Discard changes")
	if !closed || !missing(path+".recover") {
		t.Errorf("closed %v, a recovery file is left %v", closed, !missing(path+".recover"))
	}
}

func TestASavedCarIsTheSameWhenOpenedAgain(t *testing.T) {
	d, path := openDesk(t)
	d.edit()
	d.choose("File", "Save")
	d.wantSaid("Saved " + path)
	want := d.doc.Car()
	again := sitDown(t, test.NewTempApp(t), Options{Path: path})
	if !reflect.DeepEqual(again.doc.Car(), want) {
		t.Error("another car was read back")
	}
}

func TestOpenAsksForAFile(t *testing.T) {
	d, path := openDesk(t)
	d.edit()
	d.choose("File", "Open…")
	d.wantAsked("Unsaved changes")
	d.answer("Discard changes")
	if d.question() == nil {
		t.Fatal("no file is asked for")
	}
	d.answer("Cancel")
	d.wantNoQuestion()
	if d.doc.Path() != path || !d.doc.Modified() {
		t.Error("canceled, the car has changed")
	}
}
