package form_test

import (
	"testing"

	"bowline/app/form"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// draft is one of several texts, in a page.
type draft struct {
	*form.Draft
	page                       *form.Page
	window                     fyne.Window
	typed, submitted, canceled int
}

func newDraft(t *testing.T) *draft {
	t.Helper()
	newWorkshop(t) // for its app
	d := &draft{page: form.NewPage()}
	d.Draft = form.NewDraft(d.page.Host())
	d.Get = func(bool) string { return "given" }
	d.Check = func(typed string) string {
		if typed == "bad" {
			return "is bad"
		}
		return ""
	}
	d.Typed, d.Submit, d.Cancel = func() { d.typed++ }, func() { d.submitted++ }, func() { d.canceled++ }
	d.page.Add(tall(500), d.Draft, d.Why(), tall(500))
	d.window = test.NewTempWindow(t, d.page.Scroll)
	d.window.SetPadded(false)
	d.window.Resize(fyne.NewSize(300, 200))
	d.Update()
	return d
}

// What is typed stays until all of it is handed over.
func TestADraftStays(t *testing.T) {
	d := newDraft(t)
	wantText(t, d.Text, "given")
	if d.Pending() {
		t.Error("what is given counts as typed")
	}
	typed(d.window, d.Draft, " half ")
	for range 2 {
		d.Update()
		d.window.Canvas().Unfocus()
	}
	wantText(t, d.Text, " half ")
	if !d.Pending() || d.Typing() != "half" || d.submitted != 0 || d.typed == 0 {
		t.Errorf("pending %v, typing %q, submitted %d, heard %d", d.Pending(), d.Typing(), d.submitted, d.typed)
	}
	d.window.Canvas().Focus(d.Draft)
	press(d.window, fyne.KeyReturn)
	press(d.window, fyne.KeyEscape)
	if d.submitted != 1 || d.canceled != 1 {
		t.Errorf("submitted %d, canceled %d", d.submitted, d.canceled)
	}
	wantText(t, d.Text, " half ")
	d.Restore()
	wantText(t, d.Text, "given")
}

// A bad text is refused when it is left, and looked at again with each letter.
func TestADraftLooksAtItsText(t *testing.T) {
	d := newDraft(t)
	typed(d.window, d.Draft, "bad")
	if d.Refused() {
		t.Error("a text is refused while it is typed")
	}
	d.window.Canvas().Unfocus()
	if !d.Refused() || !framed(d.Draft) || d.Why().Text() != "is bad" {
		t.Errorf("left, the reason is %q", d.Why().Text())
	}
	d.window.Canvas().Focus(d.Draft)
	d.TypedRune('s')
	if d.Refused() || framed(d.Draft) || d.Why().Visible() {
		t.Errorf("corrected, the reason is %q", d.Why().Text())
	}
	d.Refuse("is too good")
	if !d.Refused() || d.Why().Text() != "is too good" {
		t.Errorf("the reason is %q", d.Why().Text())
	}
	d.TypedRune('s')
	if d.Refused() {
		t.Error("what was refused by others is refused after it has changed")
	}
}

// Asked to, a draft comes into sight with the focus, and gives it back.
func TestADraftTakesTheFocus(t *testing.T) {
	d := newDraft(t)
	d.Focus()
	top := d.Position().Y - d.page.Scroll.Offset.Y
	if d.window.Canvas().Focused() != fyne.Focusable(d.Draft) || top < 0 || top+d.Size().Height > 200 {
		t.Errorf("the focus is on %T, the draft at %v of 200", d.window.Canvas().Focused(), top)
	}
	d.Unfocus()
	if d.window.Canvas().Focused() != nil {
		t.Error("it keeps the focus")
	}
	other := form.NewDraft(d.page.Host())
	d.page.Add(other)
	other.Focus()
	d.Unfocus()
	if d.window.Canvas().Focused() != fyne.Focusable(other) {
		t.Error("it takes the focus from another one")
	}
}
