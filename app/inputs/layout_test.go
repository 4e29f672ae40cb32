package inputs

import (
	"fmt"
	"testing"

	"bowline/app/look"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// box is where an object is in the window.
type box struct{ left, top, right, bottom float32 }

// slack allows for rounding.
const slack = 0.01

func (b box) within(outer box) bool {
	return b.left >= outer.left-slack && b.top >= outer.top-slack && b.right <= outer.right+slack && b.bottom <= outer.bottom+slack
}

func (b box) overlaps(other box) bool {
	return b.left < other.right-slack && other.left < b.right-slack && b.top < other.bottom-slack && other.top < b.bottom-slack
}

// boxes returns where everything visible is.
func (d *desk) boxes() map[fyne.CanvasObject]box {
	found := map[fyne.CanvasObject]box{}
	var walk func(o fyne.CanvasObject, at fyne.Position)
	walk = func(o fyne.CanvasObject, at fyne.Position) {
		if !o.Visible() {
			return
		}
		at = at.Add(o.Position())
		found[o] = box{at.X, at.Y, at.X + o.Size().Width, at.Y + o.Size().Height}
		switch o := o.(type) {
		case *fyne.Container:
			for _, inner := range o.Objects {
				walk(inner, at)
			}
		case fyne.Widget:
			for _, inner := range test.WidgetRenderer(o).Objects() {
				walk(inner, at)
			}
		}
	}
	walk(d.panel, fyne.Position{})
	return found
}

// parts lists what can be seen of a row.
func (r *row) parts() []fyne.CanvasObject {
	var all []fyne.CanvasObject
	for _, o := range test.WidgetRenderer(r).Objects() {
		if text, ok := o.(*canvas.Text); o.Visible() && (!ok || text.Text != "") && o != fyne.CanvasObject(r.why) {
			all = append(all, o)
		}
	}
	return all
}

// In every width, system of units and look, nothing is cut off, and nothing
// lies on anything else.
func TestNothingIsCutOff(t *testing.T) {
	for _, mode := range []look.Mode{look.Light, look.Dark} {
		d := newDesk(t)
		test.ApplyTheme(t, look.New(mode))
		d.openAll()
		test.Tap(as[*check](t, d.labeled(TitleDriveline, "").editors[0]))
		d.set("car.weight", "1300")
		d.set("upper_bar.wall", "thick")
		for _, width := range []float32{270, 290, 340} {
			d.window.Resize(fyne.NewSize(width, 900))
			for _, s := range systems {
				d.doc.SetUnits(s)
				d.checkLayout(width)
			}
		}
	}
}

func (d *desk) checkLayout(width float32) {
	d.t.Helper()
	at := d.boxes()
	if got, want := d.panel.list.Size(), d.panel.list.MinSize().Max(d.panel.scroll.Size()); got != want {
		d.t.Errorf("at %v in %v: the list has %v, it needs %v", width, d.doc.Units(), got, want)
	}
	last := box{right: width, bottom: at[d.panel.list].top}
	follows := func(what string, b box) {
		if b.top < last.bottom-slack || b.left < 0 || b.right > width+slack {
			d.t.Errorf("at %v in %v: %s at %v does not follow %v", width, d.doc.Units(), what, b, last)
		}
		last = b
	}
	for _, s := range d.panel.sections {
		follows("the header of "+s.title, at[s.header])
		for _, r := range s.rows() {
			if r.Visible() {
				follows("row "+r.label+" of "+s.title, at[r])
				d.checkRow(r, at)
			}
		}
	}
}

// checkRow checks the parts of a row against the row and each other.
func (d *desk) checkRow(r *row, at map[fyne.CanvasObject]box) {
	d.t.Helper()
	where := fmt.Sprintf("in %v, row %q of %s, %v wide: ", d.doc.Units(), r.label, r.section.title, r.Size().Width)
	parts := r.parts()
	for i, o := range parts {
		if !at[o].within(at[r]) {
			d.t.Errorf("%sa %T at %v leaves the row at %v", where, o, at[o], at[r])
		}
		if least := o.MinSize(); o.Size().Width < least.Width-slack || o.Size().Height < least.Height-slack {
			d.t.Errorf("%sa %T has %v of the %v it needs", where, o, o.Size(), least)
		}
		for _, other := range parts[:i] {
			if at[o].overlaps(at[other]) {
				d.t.Errorf("%sa %T lies on a %T", where, o, other)
			}
		}
		if e, ok := o.(*entry); ok && !r.wide {
			if text := fyne.MeasureText(e.Text, 13, fyne.TextStyle{}).Width; text > e.Size().Width-10 {
				d.t.Errorf("%s%q needs %v of %v", where, e.Text, text, e.Size().Width)
			}
		}
	}
	for _, line := range test.WidgetRenderer(r.why).Objects() {
		if b := at[line]; !b.within(at[r]) || line.MinSize().Width > r.Size().Width {
			d.t.Errorf("%sa reason leaves the row", where)
		}
	}
}

// The help of every row fits its room at the foot.
func TestHelpFits(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.window.Resize(fyne.NewSize(280, 900))
	check := func(a *about) {
		for _, s := range systems {
			d.doc.SetUnits(s)
			d.panel.hover(a)
			if room := d.panel.help.Size().Height; d.panel.help.MinSize().Height > room {
				t.Errorf("the help does not fit: %q", d.panel.help.text)
			}
		}
	}
	for r := range d.panel.rows() {
		check(&r.about)
		for _, e := range append(r.editors, r.end) {
			if b, ok := e.(*button); ok {
				check(&b.about)
			}
		}
	}
	check(nil)
}

func TestClosingComesBackFromTheEnd(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.panel.scroll.ScrollToBottom()
	d.panel.SetOpenSections([]string{TitleSetup})
	if got := d.panel.scroll.Offset.Y; got != 0 {
		t.Errorf("with little to show it is scrolled by %v", got)
	}
}

func TestWrapped(t *testing.T) {
	test.NewTempApp(t)
	width := fyne.MeasureText("twelve words", 11, fyne.TextStyle{}).Width
	for text, want := range map[string][]string{
		"":                         nil,
		"twelve words":             {"twelve words"},
		"twelve  words":            {"twelve words"},
		"twelve words x":           {"twelve words", "x"},
		"one\ntwo":                 {"one", "two"},
		"a":                        {"a"},
		"incomprehensibilities as": {"incomprehensibilities", "as"},
	} {
		got := wrapped(text, width, 11)
		if len(got) != len(want) {
			t.Errorf("%q breaks into %q", text, got)
			continue
		}
		for i := range want {
			if got[i] != want[i] {
				t.Errorf("%q breaks into %q", text, got)
			}
		}
	}
}
