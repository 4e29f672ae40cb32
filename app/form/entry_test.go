package form_test

import (
	"testing"

	"bowline/app/form"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

func TestEnterAndLeavingTakeAValue(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.length, "110 1/4")
	if got := w.ladder.length / inch; got != 110.25 || w.window.Canvas().Focused() != w.length {
		t.Errorf("the length is %v in; the focus is on %T", got, w.window.Canvas().Focused())
	}
	wantText(t, w.length.Text, "110.25")
	wantText(t, w.length.SelectedText(), "110.25")
	typed(w.window, w.length, "9 ft")
	if w.ladder.changes != 1 {
		t.Error("what is being typed is taken")
	}
	test.FocusNext(w.window.Canvas())
	wantText(t, w.length.Text, "108")
	if w.ladder.changes != 2 {
		t.Errorf("%d changes", w.ladder.changes)
	}
}

func TestPassingThroughTakesNothing(t *testing.T) {
	w := newWorkshop(t)
	w.ladder.length = 1.0 / 3 // not a short number in any units
	for range 30 {
		test.FocusNext(w.window.Canvas())
	}
	if w.ladder.changes != 0 || w.ladder.length != 1.0/3 {
		t.Errorf("passing through made %d changes", w.ladder.changes)
	}
}

func TestEscapeTakesBack(t *testing.T) {
	w := newWorkshop(t)
	for _, text := range []string{"7", "0"} {
		typed(w.window, w.length, text)
		if text == "0" {
			press(w.window, fyne.KeyReturn)
		}
		press(w.window, fyne.KeyEscape)
		wantText(t, w.length.Text, "100")
		if w.length.Refused() || w.why("length") != "" || w.ladder.changes != 0 {
			t.Errorf("after Escape it is still refused: %q", w.why("length"))
		}
	}
}

func TestEmptyTextOfAnOptionalNumber(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.rungs, "")
	if w.ladder.rungs != 7 {
		t.Errorf("left empty, there are %v rungs", w.ladder.rungs)
	}
	wantText(t, w.rungs.Text, "7")
	w.set(w.length, "")
	if !w.length.Refused() {
		t.Error("an empty length is taken")
	}
}

func TestMoreDigitsWhileEditing(t *testing.T) {
	w := newWorkshop(t)
	w.set(w.length, "105.12345678")
	wantText(t, w.length.Text, "105.12346")
	test.FocusNext(w.window.Canvas())
	wantText(t, w.length.Text, "105.123")
	w.window.Canvas().Focus(w.length)
	wantText(t, w.length.Text, "105.12346")
	wantText(t, w.length.SelectedText(), w.length.Text)
}

// Of a text with more letters than there is room for, the first are in sight.
func TestStartIsInSight(t *testing.T) {
	w := newWorkshop(t)
	start := func(e *form.Entry) {
		t.Helper()
		at, _ := where(w.scroll, e)
		for _, p := range seen(w.scroll) {
			if text, ok := p.object.(*canvas.Text); ok && text.Text == e.Text && p.top >= at.top && p.foot <= at.foot {
				if p.left < at.left {
					t.Errorf("%q begins at %v, left of its entry at %v", e.Text, p.left, at.left)
				}
				return
			}
		}
		t.Errorf("%q is not drawn", e.Text)
	}
	for e, text := range map[*form.Entry]string{w.length: "2700.0001 mm", w.name: "The longest ladder of all that stand behind the hedge"} {
		w.set(e, text)
		start(e)
		w.window.Canvas().Unfocus()
		w.window.Canvas().Focus(e)
		start(e)
		press(w.window, fyne.KeyUp)
		start(e)
		e.SelectAll()
		w.change(func(l *ladder) { l.name, l.length = "b", 9*inch }) // to a shorter text than is selected
		start(e)
		wantText(t, e.SelectedText(), e.Text)
	}
}

// What is typed is held against the value as it is now, not as it was when the
// typing began.
func TestTypedWhileTheValueChanges(t *testing.T) {
	w := newWorkshop(t)
	typed(w.window, w.length, "110")
	w.change(func(l *ladder) { l.length = 120 * inch })
	wantText(t, w.length.Text, "110")
	typed(w.window, w.length, "100")
	press(w.window, fyne.KeyReturn)
	if got := w.ladder.length / inch; got != 100 {
		t.Errorf("the length is %v in", got)
	}
	w.set(w.length, "4000")
	w.change(func(l *ladder) { l.length = 110 * inch })
	typed(w.window, w.length, "300")
	w.change(func(l *ladder) { l.length = 300 * inch })
	if w.length.Refused() || w.why("length") != "" || w.length.Pending() {
		t.Errorf("a value that was taken meanwhile is refused: %q", w.why("length"))
	}
}

// Typing the old value again ends a refusal.
func TestTypingTheOldValueBack(t *testing.T) {
	w := newWorkshop(t)
	for _, key := range []fyne.KeyName{fyne.KeyReturn, ""} {
		w.set(w.length, "0")
		typed(w.window, w.length, "100")
		if key != "" {
			press(w.window, key)
		} else {
			w.window.Canvas().Unfocus()
		}
		if w.length.Refused() || w.why("length") != "" || w.ladder.changes != 0 {
			t.Errorf("the old value is refused: %q", w.why("length"))
		}
	}
}

func TestArrowKeysStep(t *testing.T) {
	w := newWorkshop(t)
	w.window.Canvas().Focus(w.length)
	for _, step := range []struct {
		key  fyne.KeyName
		want string
	}{{fyne.KeyUp, "100.0625"}, {fyne.KeyDown, "100"}, {fyne.KeyPageUp, "100.625"}, {fyne.KeyPageDown, "100"}} {
		press(w.window, step.key)
		wantText(t, w.length.Text, step.want)
	}
	if w.ladder.changes != 4 {
		t.Errorf("%d changes", w.ladder.changes)
	}
	// A step too far is refused as if it had been typed, and may be stepped back.
	w.set(w.length, "400")
	press(w.window, fyne.KeyUp)
	if !w.length.Refused() || w.length.Text != "400.0625" {
		t.Errorf("a step too far to %q is taken", w.length.Text)
	}
	press(w.window, fyne.KeyDown)
	if w.length.Refused() {
		t.Error("a step back is refused")
	}
}

// Undo in an entry is of the document where it says so, elsewhere of the text.
func TestWhatUndoIsOf(t *testing.T) {
	w := newWorkshop(t)
	if form.UndoesText(w.length) != nil || form.UndoesText(nil) != nil || form.UndoesText(w.folding) != nil {
		t.Error("undo is of a text where there is none of its own")
	}
	d := form.NewDraft(form.Host{})
	e := form.NewEntry()
	for _, f := range []fyne.Focusable{d, e} {
		text := form.UndoesText(f)
		if text == nil {
			t.Fatalf("in a %T undo is not of the text", f)
		}
		f.TypedRune('x')
		text.Undo()
	}
	if d.Text != "" || e.Text != "" {
		t.Errorf("undone, the texts are %q and %q", d.Text, e.Text)
	}
}

// alone is an entry without a row, in a page between other things.
func alone(t *testing.T) (w fyne.Window, p *form.Page, e *form.Entry, value, help *string) {
	t.Helper()
	newWorkshop(t) // for its app
	value, help = new(string), new(string)
	p = form.NewPage()
	host := p.Host()
	host.Help = func(text string) { *help = text }
	e = form.NewEntry().In(host)
	e.Help = "Even numbers."
	e.Get = func(bool) string { return *value }
	e.Take = func(typed string) []form.Fault {
		if len(typed)%2 == 1 {
			return form.Wrong(errOdd.Error())
		}
		*value = typed
		return nil
	}
	p.Add(tall(500), e, e.Why(), tall(500))
	w = test.NewTempWindow(t, p.Scroll)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(300, 200))
	return w, p, e, value, help
}

// tall returns a thing of a height.
func tall(height float32) fyne.CanvasObject {
	r := canvas.NewRectangle(nil)
	r.SetMinSize(fyne.NewSize(10, height))
	return r
}

func TestAnEntryAlone(t *testing.T) {
	w, p, e, value, help := alone(t)
	w.Canvas().Focus(e)
	top := e.Position().Y - p.Scroll.Offset.Y
	if *help != "Even numbers." || top < 0 || top+e.Size().Height > 200 {
		t.Errorf("the help is %q, the entry is at %v of 200", *help, top)
	}
	below := p.Scroll.Content.MinSize().Height
	typed(w, e, "abc")
	press(w, fyne.KeyReturn)
	if *value != "" || e.Text != "abc" || !framed(e) || e.Why().Text() != "odd" || !e.Why().Visible() {
		t.Errorf("taken is %q; the reason is %q", *value, e.Why().Text())
	}
	if got := p.Scroll.Content.MinSize().Height; got <= below || e.Why().Position().Y < e.Position().Y+e.Size().Height {
		t.Errorf("the page is %v high with a reason, %v without", got, below)
	}
	press(w, fyne.KeyEscape)
	if e.Text != "" || framed(e) || e.Why().Visible() || p.Scroll.Content.MinSize().Height != below {
		t.Errorf("after Escape there is %q, with the reason %q", e.Text, e.Why().Text())
	}
	// Its text is not replaced by what is typed, as a value of the document is.
	typed(w, e, "ab")
	w.Canvas().Unfocus()
	if *value != "ab" || *help != "" {
		t.Errorf("left, taken is %q and the help %q", *value, *help)
	}
	w.Canvas().Focus(e)
	wantText(t, e.SelectedText(), "")
}

// The wheel scrolls the page even over an entry whose text has room to scroll.
func TestWheelOverAnEntry(t *testing.T) {
	w, p, e, _, _ := alone(t)
	typed(w, e, "a text that is longer than its entry, so that it could be scrolled to and fro itself")
	at, _ := where(p.Scroll, e)
	before := p.Scroll.Offset.Y
	test.Scroll(w.Canvas(), fyne.NewPos((at.left+at.right)/2, (at.top+at.foot)/2), 0, -40)
	if got := p.Scroll.Offset.Y - before; got != 40 {
		t.Errorf("the page is scrolled by %v", got)
	}
}

// What the program writes is reported to nobody, and never as typed.
func TestUpdatesReportNothing(t *testing.T) {
	w := newWorkshop(t)
	heard := 0
	d := form.NewDraft(form.Host{})
	d.Typed = func() { heard++ }
	text := "a"
	d.Get = func(bool) string { return text }
	s := form.NewSlider(0.01, func() (low, high, at float64) { return -w.ladder.lean, w.ladder.lean, w.ladder.rungs / 100 }, func(float64) { heard++ })
	r := form.NewRadio(woods, func() string { return w.ladder.wood }, func(string) { heard++ })
	box := container.NewVBox(d, s, r)
	test.NewTempWindow(t, box)
	update := func() {
		d.Update()
		s.Update()
		r.Update()
	}
	update()
	text, w.ladder = "b", ladder{name: "other", length: 2, lean: 1, rungs: 12, folding: true, wood: "oak", units: units.SI}
	w.form.Update()
	update()
	d.Put("c")
	if heard != 0 || w.ladder.changes != 0 {
		t.Errorf("%d changes, and %d more were reported", w.ladder.changes, heard)
	}
	if w.length.Text != "2000" || w.name.Text != "other" || w.wood.Selected != "oak" || !w.folding.Checked || d.Text != "c" || s.Max != 1 || s.Value != 0.12 || r.Selected != "oak" {
		t.Errorf("shown are %q, %q, %q, %v, %q, %v of %v, %q", w.length.Text, w.name.Text, w.wood.Selected, w.folding.Checked, d.Text, s.Value, s.Max, r.Selected)
	}
	// What a person does is reported.
	d.TypedRune('x')
	s.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	r.SetSelected("ash")
	if heard != 3 {
		t.Errorf("of 3 things done %d are reported", heard)
	}
	if r.Selected != "oak" {
		t.Errorf("a choice that came to nothing is shown: %q", r.Selected)
	}
}
