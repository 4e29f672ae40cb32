package window

import (
	"image/color"
	"slices"
	"strings"
	"testing"

	"bowline/app/internal/screen"
	"bowline/app/look"
	"bowline/model/units"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

func TestUndoAndRedoNameTheirStep(t *testing.T) {
	d, _ := openDesk(t)
	want := func(undo, redo string, canUndo, canRedo bool) {
		t.Helper()
		u, r := d.item("Edit", "Undo"), d.item("Edit", "Redo")
		if u.Label != undo || r.Label != redo || u.Disabled == canUndo || r.Disabled == canRedo {
			t.Errorf("%q, disabled %v; %q, disabled %v; want %q and %q", u.Label, u.Disabled, r.Label, r.Disabled, undo, redo)
		}
	}
	want("Undo", "Redo", false, false)
	d.edit()
	want("Undo: CG height", "Redo", true, false)
	d.choose("Edit", "Undo")
	want("Undo", "Redo: CG height", false, true)
	d.choose("Edit", "Redo")
	want("Undo: CG height", "Redo", true, false)
	// The menu made anew, as after a save, says the same.
	d.choose("File", "Save")
	want("Undo: CG height", "Redo", true, false)
	d.open(carFile(t))
	want("Undo", "Redo", false, false)
}

func TestShortcuts(t *testing.T) {
	d := newDesk(t)
	// Undo and redo are the toolkit's own shortcuts: it never tells of others
	// for their keys.
	if _, ok := d.item("Edit", "Undo").Shortcut.(*fyne.ShortcutUndo); !ok {
		t.Errorf("undo has a %T", d.item("Edit", "Undo").Shortcut)
	}
	if _, ok := d.item("Edit", "Redo").Shortcut.(*fyne.ShortcutRedo); !ok {
		t.Errorf("redo has a %T", d.item("Edit", "Redo").Shortcut)
	}
	const main, shift = fyne.KeyModifierShortcutDefault, fyne.KeyModifierShift
	for _, c := range []struct {
		menu, label string
		want        desktop.CustomShortcut
	}{
		{"File", "Open…", desktop.CustomShortcut{KeyName: fyne.KeyO, Modifier: main}},
		{"File", "Save", desktop.CustomShortcut{KeyName: fyne.KeyS, Modifier: main}},
		{"File", "Save as…", desktop.CustomShortcut{KeyName: fyne.KeyS, Modifier: main | shift}},
		{"File", "Report as PDF…", desktop.CustomShortcut{KeyName: fyne.KeyP, Modifier: main}},
		{"File", "Export charts…", desktop.CustomShortcut{KeyName: fyne.KeyE, Modifier: main}},
		{"File", "Quit", desktop.CustomShortcut{KeyName: fyne.KeyQ, Modifier: main}},
	} {
		if s, ok := d.item(c.menu, c.label).Shortcut.(*desktop.CustomShortcut); !ok || *s != c.want {
			t.Errorf("%s has the shortcut %+v, want %+v", c.label, d.item(c.menu, c.label).Shortcut, c.want)
		}
	}
	// No key has two meanings.
	seen := map[string]string{}
	for _, m := range d.window.MainMenu().Items {
		for _, i := range m.Items {
			if i.Shortcut == nil {
				continue
			}
			if other, taken := seen[i.Shortcut.ShortcutName()]; taken {
				t.Errorf("%s and %s have one shortcut", other, i.Label)
			}
			seen[i.Shortcut.ShortcutName()] = i.Label
		}
	}
}

func TestUnitsSwitchTextsAndNothingElse(t *testing.T) {
	d, path := openDesk(t)
	car, before := d.doc.Car(), d.says()
	if !d.item("View", "Inches and pounds").Checked || d.item("View", "Millimeters and newtons").Checked {
		t.Error("the units of the file are not the ones marked")
	}
	d.choose("View", "Millimeters and newtons")
	if d.doc.Car() != car || d.doc.Modified() || d.doc.UndoLabel() != "" {
		t.Error("the car has changed with the units")
	}
	if d.item("View", "Inches and pounds").Checked || !d.item("View", "Millimeters and newtons").Checked {
		t.Error("the units chosen are not the ones marked")
	}
	if after := d.says(); strings.Contains(after, " lb") || !strings.Contains(before, " lb") || !strings.Contains(after, " N") {
		t.Errorf("in other units the panel says\n%s\nbefore\n%s", after, before)
	}
	text := read(t, path)
	d.choose("View", "Inches and pounds")
	d.edit()
	d.choose("View", "Millimeters and newtons")
	d.choose("Edit", "Undo")
	d.choose("File", "Save")
	if d.doc.Units() != units.SI || read(t, path) != text {
		t.Error("the file has changed with the units")
	}
}

func TestColors(t *testing.T) {
	app := test.NewTempApp(t)
	d := sitDown(t, app, Options{})
	for _, c := range []struct {
		item string
		mode look.Mode
		want *palette.Palette
	}{{"Dark colors", look.Dark, &palette.Dark}, {"Light colors", look.Light, &palette.Light}, {"Dark colors", look.Dark, &palette.Dark}} {
		d.choose("View", c.item)
		d.frame()
		if look.Current() != c.want || app.Preferences().String(prefMode) != string(c.mode) {
			t.Errorf("after %q the mode kept is %q", c.item, app.Preferences().String(prefMode))
		}
		for _, label := range []string{"Colors as the desktop", "Light colors", "Dark colors"} {
			if got := d.item("View", label).Checked; got != (label == c.item) {
				t.Errorf("after %q the mark of %q is %v", c.item, label, got)
			}
		}
		// Side view and charts are drawn in them.
		other := &palette.Light
		if c.want == other {
			other = &palette.Dark
		}
		drawn := 0
		for i, r := range rasters(d.window.Content()) {
			w, h := int(r.Size().Width), int(r.Size().Height)
			img := r.Generator(w, h)
			corners := []color.Color{img.At(1, 1), img.At(w-2, 1), img.At(1, h-2), img.At(w-2, h-2)}
			if slices.Contains(corners, color.Color(c.want.Background)) {
				drawn++
			}
			if slices.Contains(corners, color.Color(other.Background)) {
				t.Errorf("after %q picture %d has the background %v", c.item, i, other.Background)
			}
		}
		if drawn < 2 {
			t.Errorf("after %q only %d pictures have a background", c.item, drawn)
		}
	}
	// They are there at the next start.
	sitDown(t, app, Options{})
	if look.Current() != &palette.Dark {
		t.Error("the colors chosen are not kept")
	}
}

// A question is answered before anything else is done.
func TestNothingIsChosenWhileAQuestionWaits(t *testing.T) {
	d := newDesk(t)
	d.edit()
	d.choose("File", "Quit")
	first := d.question()
	for _, label := range []string{"Quit", "Save as…", "Open…", "Export charts…"} {
		d.choose("File", label)
		if d.question() != first {
			t.Fatalf("%q put another question over the first", label)
		}
	}
	d.choose("Edit", d.menu.undo.Label)
	if !d.doc.Modified() {
		t.Error("a step was undone behind the question")
	}
	d.answer("Keep editing")
	d.wantNoQuestion()
}

func TestViewCommands(t *testing.T) {
	d := newDesk(t)
	d.sideView()
	fitted := d.view.Picture().View.Scale
	for _, c := range []struct {
		label string
		want  func(scale float64) bool
	}{
		{"Zoom in", func(s float64) bool { return s > fitted }},
		{"Fit bars", func(s float64) bool { return s == fitted }},
		{"Zoom out", func(s float64) bool { return s < fitted }},
		{"Fit car", func(s float64) bool { return s < fitted }},
		{"Fit bars", func(s float64) bool { return s == fitted }},
	} {
		d.choose("View", c.label)
		d.sideView()
		if got := d.view.Picture().View.Scale; !c.want(got) {
			t.Errorf("after %q the scale is %v, fitted it was %v", c.label, got, fitted)
		}
	}
	d.study.SetTravel(inch)
	d.study.SetFront(-inch)
	d.choose("View", "Ride height")
	if d.study.Travel() != 0 || d.study.Front() != 0 {
		t.Errorf("at ride height the travels are %v and %v", d.study.Travel(), d.study.Front())
	}
}

func TestHelpTellsTheKeys(t *testing.T) {
	d := newDesk(t)
	d.choose("Help", "Keys and mouse")
	d.wantAsked("Keys and mouse", "Shift", "Arrow keys", "1/16 in", "Esc")
}

// What is typed and not taken yet is taken first; what is refused stops what
// would lose it.
func TestTypedValuesComeFirst(t *testing.T) {
	d, path := openDesk(t)
	d.inputs.SetOpenSections([]string{"Car"})
	d.typed("19.5", "21")
	d.choose("View", "Millimeters and newtons")
	if got := d.doc.Car().Body.CGHeight; got != 21*inch {
		t.Errorf("typed as 21 in, the CG height is %v in", got/inch)
	}
	d.choose("View", "Inches and pounds")
	entry := d.typed("21", "nothing")
	for _, do := range []func(){
		func() { d.choose("View", "Millimeters and newtons") },
		func() { d.choose("File", "Save") },
		func() { d.choose("File", "Report as PDF…") },
		func() { d.choose("File", "Export charts…") },
		func() { d.export("bow") },
		func() { d.leave(func() { t.Error("the window was left") }) },
	} {
		d.say("")
		do()
		d.wantNoQuestion()
		d.wantSaid(pendingWords)
	}
	if d.doc.Units() != units.US || !d.doc.Modified() || d.doc.Path() != path || held(entry) != "nothing" {
		t.Errorf("units %v, modified %v, the entry holds %q", d.doc.Units(), d.doc.Modified(), held(entry))
	}
	// To undo is to take back what was refused, and nothing before it.
	d.choose("Edit", "Undo")
	if got := d.doc.Car().Body.CGHeight; got != 21*inch || held(entry) != "21" {
		t.Errorf("undone, the CG height is %v in and the entry holds %q", got/inch, held(entry))
	}
}

// typing is an entry of the inputs, as far as it can be seen from here.
type typing interface {
	fyne.Focusable
	fyne.Shortcutable
	SelectedText() string
}

// held returns all that an entry holds and leaves it selected.
func held(e typing) string {
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
	return e.SelectedText()
}

// typed puts a text in the place of another in the entry that holds it.
func (d *desk) typed(old, text string) typing {
	d.t.Helper()
	for _, o := range screen.Seen(d.inputs) {
		e, ok := o.(typing)
		if !ok || held(e) != old {
			continue
		}
		d.window.Canvas().Focus(e)
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
		for _, r := range text {
			e.TypedRune(r)
		}
		return e
	}
	d.t.Fatalf("no entry holds %q", old)
	return nil
}

// The forces on the axle are switched in the menu and by a key, and stay as they were at
// the next start.
func TestForcesAreKept(t *testing.T) {
	app := test.NewTempApp(t)
	d := sitDown(t, app, Options{})
	const label = "Forces on the axle"
	if d.study.Forces() || d.item("View", label).Checked {
		t.Error("the forces are shown at first")
	}
	d.choose("View", label)
	if !d.study.Forces() || !d.item("View", label).Checked {
		t.Error("the menu does not show the forces")
	}
	d.view.TypedRune('o')
	if d.study.Forces() || d.item("View", label).Checked {
		t.Error("the key does not hide the forces")
	}
	d.view.TypedRune('o')
	if next := sitDown(t, app, Options{}); !next.study.Forces() || !next.item("View", label).Checked {
		t.Error("the next start does not show the forces")
	}
}
