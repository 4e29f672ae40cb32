package form_test

import (
	"errors"
	"fmt"
	"image/color"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/look"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

const inch = 0.0254

// ladder is something to be typed: it may not lean farther than it is long.
type ladder struct {
	name         string
	length, lean float64 // [m]
	rungs        float64
	folding      bool
	wood         string

	units   units.System
	changes int
}

// valid returns what speaks against a ladder.
func (l *ladder) valid() []form.Fault {
	var wrong []form.Fault
	bad := func(path, format string, values ...any) {
		wrong = append(wrong, form.Fault{Path: path, Text: fmt.Sprintf(format, values...)})
	}
	if l.length < inch || l.length > 400*inch {
		bad("length", "too long or short")
	}
	if l.lean > l.length {
		bad("lean", "leans farther than it is long")
	}
	if l.rungs > 20 {
		for range int(l.rungs) - 20 {
			bad("", "a rung too many")
		}
	}
	if l.wood == "balsa" {
		bad("wood", "not of balsa")
	}
	return wrong
}

// workshop is a window in which a ladder is typed.
type workshop struct {
	t      testing.TB
	ladder ladder
	form   *form.Form
	scroll *container.Scroll
	window fyne.Window
	help   string
	grown  int

	length, lean, rungs, name *form.Entry
	wood                      *form.Select
	folding                   *form.Check
	sections                  []*form.Section
	gone                      *form.Row
}

// change makes a change unless something speaks against it.
func (w *workshop) change(change func(*ladder)) []form.Fault {
	next := w.ladder
	change(&next)
	if wrong := next.valid(); len(wrong) > 0 {
		return wrong
	}
	next.changes++
	w.ladder = next
	w.form.Update()
	return nil
}

func (w *workshop) number(q units.Quantity, in func(*ladder) *float64) *form.Entry {
	return form.NewNumber(form.Number{
		Quantity: q, Units: func() units.System { return w.ladder.units }, Get: func() float64 { return *in(&w.ladder) },
		Set: func(x float64) []form.Fault { return w.change(func(l *ladder) { *in(l) = x }) },
	})
}

var woods = []string{"ash", "balsa", "oak"}

func newWorkshop(t testing.TB) *workshop {
	t.Helper()
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Light))
	w := &workshop{t: t, ladder: ladder{name: "long one", length: 100 * inch, lean: 20 * inch, rungs: 9, wood: "ash"}, scroll: container.NewVScroll(nil)}
	host := form.Host{Scroll: w.scroll, Help: func(text string) { w.help = text }, Grown: func() {
		w.grown++
		w.form.Resize(w.form.MinSize().Max(w.scroll.Size()))
	}}
	f := form.New(host, form.Columns{Label: "Length", Number: "0000.000", Unit: "mm"}, func() units.System { return w.ladder.units })
	w.form, w.scroll.Content = f, f
	w.length = w.number(units.Length, func(l *ladder) *float64 { return &l.length })
	w.lean = w.number(units.Length, func(l *ladder) *float64 { return &l.lean })
	w.rungs = form.NewNumber(form.Number{
		Units: func() units.System { return w.ladder.units }, Optional: true, Default: 7,
		Get: func() float64 { return w.ladder.rungs }, Set: func(x float64) []form.Fault { return w.change(func(l *ladder) { l.rungs = x }) },
	})
	w.name = form.NewText(func() string { return w.ladder.name }, func(text string) []form.Fault { return w.change(func(l *ladder) { l.name = text }) })
	w.wood = form.NewSelect(func() []string { return woods }, func() string { return w.ladder.wood },
		func(i int) []form.Fault { return w.change(func(l *ladder) { l.wood = woods[i] }) })
	w.folding = form.NewCheck("Folds", func() bool { return w.ladder.folding }, func(on bool) []form.Fault { return w.change(func(l *ladder) { l.folding = on }) })
	size := f.Section("Size")
	size.Row(form.About{Path: "length", Label: "Length", Help: "From foot to tip.", Allowed: func(u units.System) string {
		return u.FormatExact(units.Length, inch) + " and more"
	}}, w.length).Quantity = units.Length
	size.Row(form.About{Path: "lean", Label: "Lean", Help: "Of the foot from the wall."}, w.lean).Quantity = units.Length
	kind := f.Section("Kind")
	kind.Row(form.About{Path: "name", Label: "Name", Help: "Any."}, w.name).Wide = true
	kind.Row(form.About{Path: "wood", Label: "Wood", Help: "What it is of."}, w.wood).Wide = true
	kind.Row(form.About{Path: "folding", Help: "Whether it folds."}, w.folding).Wide = true
	w.gone = kind.Row(form.About{Path: "rungs", Label: "Rungs", Help: "How many.", Default: func(units.System) string { return "7" }}, w.rungs)
	w.gone.Wanted = func() bool { return !w.ladder.folding }
	w.sections = []*form.Section{size, kind}
	f.SetOpenSections([]string{"Size", "Kind"})
	w.window = test.NewTempWindow(t, w.scroll)
	w.window.SetPadded(false)
	w.window.Resize(fyne.NewSize(290, 400))
	return w
}

// press types a key that is no text where the focus is.
func press(w fyne.Window, key fyne.KeyName) {
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
}

// written is where a person types.
type written interface {
	fyne.Focusable
	SelectAll()
}

// typed moves the focus and types in place of the text there.
func typed(w fyne.Window, e written, text string) {
	w.Canvas().Focus(e)
	e.SelectAll()
	for _, r := range text {
		e.TypedRune(r)
	}
	if text == "" {
		press(w, fyne.KeyDelete)
	}
}

// set types a text and Enter.
func (w *workshop) set(e *form.Entry, text string) {
	typed(w.window, e, text)
	press(w.window, fyne.KeyReturn)
}

// why returns the reason under a row.
func (w *workshop) why(path string) string { return w.form.Row(path).Why().Text() }

func wantText(t testing.TB, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("the text is %q, want %q", got, want)
	}
}

// placed is something to be seen.
type placed struct {
	object      fyne.CanvasObject
	left, top   float32
	right, foot float32
}

// seen lists what can be seen of an object, with its place in it.
func seen(o fyne.CanvasObject) []placed {
	var list []placed
	screen.Walk(o, func(o fyne.CanvasObject, at fyne.Position) {
		list = append(list, placed{o, at.X, at.Y, at.X + o.Size().Width, at.Y + o.Size().Height})
	})
	return list
}

// where returns the place of an object within another, and whether it is to be seen.
func where(within, o fyne.CanvasObject) (placed, bool) {
	for _, p := range seen(within) {
		if p.object == o {
			return p, true
		}
	}
	return placed{}, false
}

// framed reports whether a frame in the color of errors is drawn around an object.
func framed(o fyne.CanvasObject) bool {
	for _, p := range seen(o) {
		if r, ok := p.object.(*canvas.Rectangle); ok && r.StrokeWidth > 0 && r.StrokeColor == color.Color(look.Current().Bad) && r.Size() == o.Size() {
			return true
		}
	}
	return false
}

var errOdd = errors.New("odd")
