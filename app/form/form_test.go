package form_test

import (
	"slices"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

func TestRefusedValueStays(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.length, "500")
	if got := w.why("length"); got != "too long or short" {
		t.Errorf("the reason is %q", got)
	}
	test.FocusNext(w.window.Canvas())
	wantText(t, w.length.Text, "500")
	if !w.length.Refused() || !framed(w.length) || !screen.Writes(w.scroll, "1 refused") {
		t.Error("a refused text is not marked")
	}
	w.window.Canvas().Focus(w.length)
	wantText(t, w.length.Text, "500")
	w.set(w.length, "110")
	if w.length.Refused() || framed(w.length) || w.why("length") != "" || screen.Writes(w.scroll, "1 refused") || w.ladder.changes != 1 {
		t.Errorf("a corrected text is still marked, or its reason %q stands", w.why("length"))
	}
}

// A reason makes room for itself, in sight, and gives it back.
func TestReasonMakesRoomForItself(t *testing.T) {
	w := newWorkshop(t)
	row, below := w.form.Row("length"), w.form.Row("lean")
	height, y := row.Size().Height, below.Position().Y
	w.set(w.length, "500")
	if grown := row.Size().Height - height; grown <= 0 || below.Position().Y != y+grown {
		t.Errorf("the row grew by %v, the one below moved by %v", grown, below.Position().Y-y)
	}
	press(w.window, fyne.KeyEscape)
	if row.Size().Height != height || below.Position().Y != y {
		t.Error("the room stays when the reason goes")
	}
	w.window.Resize(fyne.NewSize(290, 60))
	for _, path := range []string{"rungs", "length"} {
		e := map[string]*form.Entry{"rungs": w.rungs, "length": w.length}[path]
		w.set(e, "many")
		at, ok := where(w.scroll, w.form.Row(path).Why())
		if !ok || at.top < 0 || at.foot > 60.5 {
			t.Errorf("the reason of %s is at %v to %v of 60", path, at.top, at.foot)
		}
	}
}

// What a value breaks elsewhere is said in both places, until either is put right.
func TestFaultsElsewhere(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.length, "10")
	const message = "leans farther than it is long"
	if here, there := w.why("length"), w.why("lean"); there != message || here != "Lean: "+message {
		t.Errorf("it says %q, and at the lean %q", here, there)
	}
	if w.lean.Refused() {
		t.Error("the lean is marked although nothing was typed there")
	}
	w.set(w.lean, "5")
	if w.why("lean") != "" || !w.length.Refused() {
		t.Errorf("at the new lean stands %q; the length is refused: %v", w.why("lean"), w.length.Refused())
	}
	w.window.Canvas().Focus(w.length)
	press(w.window, fyne.KeyReturn)
	if w.ladder.length != 10*inch || w.why("length") != "" {
		t.Errorf("the length is %v, refused with %q", w.ladder.length, w.why("length"))
	}
}

// What a text breaks elsewhere is said there no longer than it is refused for it.
func TestReasonsElsewhereGoWithTheirCause(t *testing.T) {
	for _, next := range []string{"", "long", "100", "100 in", "110", "Escape"} {
		w := newWorkshop(t)
		w.set(w.length, "10")
		if w.why("lean") == "" {
			t.Fatal("a length of 10 in breaks nothing elsewhere")
		}
		if next == "Escape" {
			press(w.window, fyne.KeyEscape)
		} else {
			w.set(w.length, next)
		}
		if got := w.why("lean"); got != "" {
			t.Errorf("after %q in its place, at the lean still stands %q", next, got)
		}
		if accepted := !w.length.Pending(); accepted == w.length.Refused() || accepted != (w.why("length") == "") {
			t.Errorf("after %q, marked: %v, the reason is %q", next, w.length.Refused(), w.why("length"))
		}
	}
}

// Of many faults the first are written out.
func TestManyFaults(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.rungs, "26")
	lines := strings.Split(w.why("rungs"), "\n")
	if want := "a rung too many"; len(lines) != 4 || lines[0] != want || lines[2] != want || lines[3] != "And more of that kind." {
		t.Errorf("the reasons are %q", lines)
	}
}

func TestCommitPending(t *testing.T) {
	w := newWorkshop(t)
	if !w.form.CommitPending() {
		t.Error("nothing is pending, and it is refused")
	}
	typed(w.window, w.length, "110")
	if !w.form.CommitPending() || w.ladder.length != 110*inch {
		t.Errorf("110 in is refused: %q", w.why("length"))
	}
	typed(w.window, w.rungs, "none")
	if w.form.CommitPending() {
		t.Error("rungs without a number are taken")
	}
	w.window.Canvas().Unfocus()
	w.form.SetOpenSections(nil)
	if w.form.CommitPending() {
		t.Error("what is refused is not pending once the focus is elsewhere")
	}
	if got := w.form.OpenSections(); !slices.Equal(got, []string{"Kind"}) || w.window.Canvas().Focused() != w.rungs {
		t.Errorf("what is refused is not shown: open are %q", got)
	}
	w.form.RestorePending()
	wantText(t, w.rungs.Text, "9")
	if !w.form.CommitPending() || w.rungs.Refused() {
		t.Error("a value taken back is still refused")
	}
}

// A choice that is refused goes back, with the reason below it until the next.
func TestRefusedChoice(t *testing.T) {
	w := newWorkshop(t)
	w.wood.SetSelected("balsa")
	if w.wood.Selected != "ash" || w.why("wood") != "not of balsa" || w.ladder.changes != 0 {
		t.Errorf("chosen is %q; the reason is %q", w.wood.Selected, w.why("wood"))
	}
	w.wood.SetSelected("oak")
	if w.wood.Selected != "oak" || w.ladder.wood != "oak" || w.why("wood") != "" {
		t.Errorf("chosen is %q; the reason is %q", w.wood.Selected, w.why("wood"))
	}
	w.wood.SetSelected("oak")
	if w.ladder.changes != 1 {
		t.Error("the same choice is another change")
	}
}

// A row that is not wanted goes, with what was typed in it.
func TestRowsComeAndGo(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.rungs, "none")
	height := w.form.MinSize().Height
	test.Tap(w.folding)
	if !w.ladder.folding || w.gone.Visible() || w.form.MinSize().Height >= height {
		t.Error("the row stays")
	}
	if !w.form.CommitPending() {
		t.Error("what was refused where nobody can see it is still pending")
	}
	test.Tap(w.folding)
	wantText(t, w.rungs.Text, "9")
	if w.ladder.folding || !w.gone.Visible() {
		t.Error("the row does not come back")
	}
}

// A row may end while it has the focus.
func TestRetiredRow(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.rungs, "none")
	w.gone.Retire()
	typed(w.window, w.rungs, "5")
	for _, key := range []fyne.KeyName{fyne.KeyUp, fyne.KeyEscape, fyne.KeyReturn} {
		press(w.window, key)
	}
	test.FocusNext(w.window.Canvas())
	if w.ladder.changes != 0 || !w.form.CommitPending() || w.rungs.Text != "" {
		t.Errorf("%d changes, the text is %q", w.ladder.changes, w.rungs.Text)
	}
}

func TestClosedSectionsCatchUp(t *testing.T) {
	w := newWorkshop(t)
	w.form.SetOpenSections(nil)
	w.change(func(l *ladder) { l.length = 110 * inch })
	wantText(t, w.length.Text, "100")
	w.form.SetOpenSections([]string{"Size", "Attic"})
	wantText(t, w.length.Text, "110")
	w.change(func(l *ladder) { l.rungs = 5 })
	w.form.UpdateAll()
	wantText(t, w.rungs.Text, "5")
}

// The unit stands behind the number, in the units of the moment.
func TestUnits(t *testing.T) {
	w := newWorkshop(t)
	if !screen.Writes(w.form.Row("length"), "in") || screen.Writes(w.form.Row("rungs"), "in") {
		t.Error("the length has no unit, or the rungs have one")
	}
	w.ladder.units = units.SI
	w.form.Update()
	wantText(t, w.length.Text, "2540")
	if !screen.Writes(w.form.Row("length"), "mm") {
		t.Error("the unit has not changed")
	}
}

// The later of focus and pointer decides whose help is shown.
func TestHelpFollowsTheLater(t *testing.T) {
	w := newWorkshop(t)
	const lengthHelp, leanHelp, rungsHelp = "Length: From foot to tip. 1 in and more.", "Lean: Of the foot from the wall.", "Rungs: How many. Left empty: 7."
	wantText(t, w.help, "")
	w.window.Canvas().Focus(w.length)
	wantText(t, w.help, lengthHelp)
	w.form.Row("rungs").MouseIn(&desktop.MouseEvent{})
	wantText(t, w.help, rungsHelp)
	test.FocusNext(w.window.Canvas())
	wantText(t, w.help, leanHelp)
	w.form.Row("rungs").MouseOut()
	wantText(t, w.help, leanHelp)
	w.wood.MouseIn(&desktop.MouseEvent{})
	wantText(t, w.help, "Wood: What it is of.")
	w.window.Canvas().Focus(w.length)
	wantText(t, w.help, lengthHelp)
	w.window.Canvas().Unfocus()
	wantText(t, w.help, "Wood: What it is of.")
	w.wood.MouseOut()
	wantText(t, w.help, "")
}

// Tab goes through everything from top to bottom and brings it into sight.
func TestTabOrder(t *testing.T) {
	w := newWorkshop(t)
	w.window.Resize(fyne.NewSize(290, 100))
	var order []fyne.Focusable
	last := float32(-1)
	for range 20 {
		test.FocusNext(w.window.Canvas())
		f := w.window.Canvas().Focused()
		if len(order) > 0 && f == order[0] {
			break
		}
		order = append(order, f)
		at, _ := where(w.scroll, f.(fyne.CanvasObject))
		if at.top < -0.5 || at.foot > 100.5 {
			t.Errorf("a %T has the focus at %v to %v of 100", f, at.top, at.foot)
		}
		if y := at.top + w.scroll.Offset.Y; y < last {
			t.Errorf("a %T at %v comes after %v", f, y, last)
		} else {
			last = y
		}
	}
	want := []fyne.Focusable{w.length, w.lean, w.name, w.wood, w.folding, w.rungs}
	var editors []fyne.Focusable
	for _, f := range order {
		if slices.Contains(want, f) {
			editors = append(editors, f)
		}
	}
	if !slices.Equal(editors, want) || len(order) != len(want)+2 {
		t.Errorf("tab goes through %d things, %d of them editors", len(order), len(editors))
	}
}

func TestHeaderByKeyboard(t *testing.T) {
	w := newWorkshop(t)
	w.form.SetOpenSections(nil)
	test.FocusNext(w.window.Canvas())
	for _, step := range []struct {
		key  fyne.KeyName
		open bool
	}{{fyne.KeySpace, true}, {fyne.KeyReturn, false}, {fyne.KeyRight, true}, {fyne.KeyRight, true}, {fyne.KeyLeft, false}, {fyne.KeyLeft, false}} {
		press(w.window, step.key)
		if got := w.sections[0].IsOpen(); got != step.open {
			t.Errorf("after %s it is open: %v", step.key, got)
		}
	}
	test.Tap(w.window.Canvas().Focused().(fyne.Tappable))
	if !w.sections[0].IsOpen() {
		t.Error("a tap does not open it")
	}
}

// A tap on a header takes what is being typed below it.
func TestClosingTakesWhatIsTyped(t *testing.T) {
	w := newWorkshop(t)
	test.FocusNext(w.window.Canvas())
	header := w.window.Canvas().Focused().(fyne.Tappable)
	typed(w.window, w.length, "110")
	test.Tap(header)
	if w.ladder.length != 110*inch || w.sections[0].IsOpen() {
		t.Errorf("the length is %v m; open: %v", w.ladder.length, w.sections[0].IsOpen())
	}
}

// An update draws anew what has changed, and nothing else.
func TestUpdateLeavesWhatIsTheSame(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.lean, "wide")
	if n := screen.Redraws(w.form.Update); n != 0 {
		t.Errorf("with nothing changed %d things are drawn anew", n)
	}
	before := w.length.Text
	w.ladder.length = 99 * inch
	if n := screen.Redraws(w.form.Update); n == 0 || w.length.Text == before {
		t.Error("another length is not drawn")
	}
}

// A form tells its host when its height changes, and only then.
func TestTheHostMakesRoom(t *testing.T) {
	w := newWorkshop(t)
	grown := w.grown
	w.change(func(l *ladder) { l.rungs = 5 })
	if w.grown != grown {
		t.Error("room is made for another number")
	}
	w.set(w.length, "500")
	if w.grown == grown {
		t.Error("no room is made for a reason")
	}
	grown = w.grown
	w.sections[1].Open(false)
	if w.grown == grown || w.form.MinSize().Height >= 200 {
		t.Error("the room of a closed section stays")
	}
}
