package window

import (
	"errors"
	"os"
	"reflect"
	"testing"

	"bowline/model/car"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// crash leaves a changed and kept car behind without closing it.
func (d *desk) crash() *car.Car {
	d.t.Helper()
	d.edit()
	if err := d.doc.Autosave(); err != nil {
		d.t.Fatal(err)
	}
	return d.doc.Car()
}

func TestWorkIsOfferedBackAfterACrash(t *testing.T) {
	crashed, path := openDesk(t)
	want := crashed.crash()

	d := sitDown(t, test.NewTempApp(t), Options{Path: path})
	d.wantAsked("Unsaved work found", path)
	d.wantTitle("Reference — Bowline")
	d.answer("Take it up")
	d.wantTitle("Reference • — Bowline")
	if !reflect.DeepEqual(d.doc.Car(), want) || d.doc.Path() != path {
		t.Errorf("another car than the one left, path %q", d.doc.Path())
	}
	d.choose("File", "Save")
	if !missing(path + ".recover") {
		t.Error("saved, the recovery file is still there")
	}
	sitDown(t, test.NewTempApp(t), Options{Path: path}).wantNoQuestion()
}

func TestWorkThatIsNotWanted(t *testing.T) {
	crashed, path := openDesk(t)
	crashed.crash()
	d := sitDown(t, test.NewTempApp(t), Options{Path: path})
	d.answer("Delete it")
	d.wantTitle("Reference — Bowline")
	if d.doc.Modified() || !missing(path+".recover") {
		t.Errorf("modified %v, recovery file gone %v", d.doc.Modified(), missing(path+".recover"))
	}
}

func TestACarThatWasNeverSavedIsOfferedBack(t *testing.T) {
	folder := t.TempDir()
	want := sitDown(t, test.NewTempApp(t), Options{Folder: folder}).crash()
	d := sitDown(t, test.NewTempApp(t), Options{Folder: folder})
	d.wantAsked("Unsaved work found", "A car that was never saved")
	d.answer("Take it up")
	if !reflect.DeepEqual(d.doc.Car(), want) || d.doc.Path() != "" {
		t.Errorf("another car than the one left, path %q", d.doc.Path())
	}
	d.wantTitle("Saltgrass No. 7 • — Bowline")
}

// What is left of a car whose own file is gone is worth most.
func TestWorkIsOfferedBackWithoutItsFile(t *testing.T) {
	crashed, path := openDesk(t)
	want := crashed.crash()
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t)
	d.open(path)
	d.wantAsked("Unsaved work found", path)
	d.answer("Take it up")
	if !reflect.DeepEqual(d.doc.Car(), want) || d.doc.Path() != path {
		t.Errorf("another car than the one left, path %q", d.doc.Path())
	}
	// The error is told behind the question.
	d.wantAsked("This did not work", path)
}

// A car opened later offers its work as well.
func TestOpeningOffersWorkBack(t *testing.T) {
	crashed, path := openDesk(t)
	crashed.crash()
	d := newDesk(t)
	d.open(path)
	d.wantAsked("Unsaved work found")
}

// Without a file named at the start, what was left of the file that was open
// last is offered too.
func TestWorkOnTheLastFileIsOfferedAtAPlainStart(t *testing.T) {
	folder, path := t.TempDir(), carFile(t)
	want := sitDown(t, test.NewTempApp(t), Options{Folder: folder, Path: path}).crash()
	d := sitDown(t, test.NewTempApp(t), Options{Folder: folder})
	d.wantAsked("Unsaved work found", path)
	d.answer("Take it up")
	if !reflect.DeepEqual(d.doc.Car(), want) || d.doc.Path() != path {
		t.Errorf("another car than the one left, path %q", d.doc.Path())
	}
}

func TestEscapeGivesTheMildAnswer(t *testing.T) {
	d := newDesk(t)
	d.edit()
	d.leave(func() { t.Error("the car was left") })
	d.wantAsked("Unsaved changes")
	escape := &fyne.KeyEvent{Name: fyne.KeyEscape}
	d.typedKey(escape)
	d.wantNoQuestion()
	d.fail(errors.New("no such thing"))
	d.wantAsked("no such thing")
	d.typedKey(escape)
	d.wantNoQuestion()
	// Without a question it does nothing.
	d.typedKey(escape)
	if !d.doc.Modified() {
		t.Error("Escape changed the car")
	}
}
