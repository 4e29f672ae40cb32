package inputs_test

import (
	"fmt"
	"testing"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/app/internal/screen"
	"bowline/app/look"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
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
	screen.Walk(d.window.Canvas().Content(), func(o fyne.CanvasObject, at fyne.Position) {
		found[o] = box{at.X, at.Y, at.X + o.Size().Width, at.Y + o.Size().Height}
	})
	return found
}

// parts lists what can be seen of a row, without the reasons below it.
func parts(r *form.Row) []fyne.CanvasObject {
	var all []fyne.CanvasObject
	for _, o := range test.WidgetRenderer(r).Objects() {
		if text, ok := o.(*canvas.Text); o.Visible() && (!ok || text.Text != "") && o != fyne.CanvasObject(r.Why()) {
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
		test.Tap(as[*form.Check](t, d.labeled(inputs.TitleDriveline, "").Editors[0]))
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
	at, scroll := d.boxes(), d.scroll()
	if got, want := scroll.Content.Size(), scroll.Content.MinSize().Max(scroll.Size()); got != want {
		d.t.Errorf("at %v in %v: the list has %v, it needs %v", width, d.doc.Units(), got, want)
	}
	last := box{right: width, bottom: at[scroll.Content].top}
	follows := func(what string, b box) {
		if b.top < last.bottom-slack || b.left < 0 || b.right > width+slack {
			d.t.Errorf("at %v in %v: %s at %v does not follow %v", width, d.doc.Units(), what, b, last)
		}
		last = b
	}
	// Headers, and below them rows.
	list := as[*fyne.Container](d.t, test.WidgetRenderer(as[fyne.Widget](d.t, scroll.Content)).Objects()[0])
	for _, o := range list.Objects {
		if o.Visible() {
			follows(fmt.Sprintf("a %T", o), at[o])
		}
	}
	rows := 0
	last = box{right: width, bottom: at[scroll.Content].top}
	for r := range d.panel.Rows() {
		if b, seen := at[r]; seen {
			rows++
			follows("row "+r.Label+" of "+r.Section().Title, b)
			d.checkRow(r, at)
		}
	}
	if rows < 100 {
		d.t.Errorf("only %d rows are to be seen", rows)
	}
}

// checkRow checks the parts of a row against the row and each other.
func (d *desk) checkRow(r *form.Row, at map[fyne.CanvasObject]box) {
	d.t.Helper()
	where := fmt.Sprintf("in %v, row %q of %s, %v wide: ", d.doc.Units(), r.Label, r.Section().Title, r.Size().Width)
	parts := parts(r)
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
		if e, ok := o.(*form.Entry); ok && !r.Wide {
			if text := fyne.MeasureText(e.Text, 13, fyne.TextStyle{}).Width; text > e.Size().Width-10 {
				d.t.Errorf("%s%q needs %v of %v", where, e.Text, text, e.Size().Width)
			}
		}
	}
	if b := at[r.Why()]; why(r) != "" && (!b.within(at[r]) || b.bottom-b.top < r.Why().MinSize().Height-slack) {
		d.t.Errorf("%sa reason at %v leaves the row at %v", where, b, at[r])
	}
}

// The help of every row fits its room at the foot.
func TestHelpFits(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.window.Resize(fyne.NewSize(280, 900))
	help := d.help()
	check := func(of desktop.Hoverable) {
		for _, s := range systems {
			d.doc.SetUnits(s)
			of.MouseIn(&desktop.MouseEvent{})
			if room := help.Size().Height; help.MinSize().Height > room+slack {
				t.Errorf("the help needs %v of %v: %q", help.MinSize().Height, room, help.Text())
			}
			of.MouseOut()
		}
	}
	for r := range d.panel.Rows() {
		check(r)
		for _, e := range append(r.Editors, r.End) {
			if b, ok := e.(*form.Button); ok {
				check(b)
			}
		}
	}
	if idle := help.MinSize().Height; idle > help.Size().Height+slack {
		t.Errorf("with nothing at hand the help needs %v of %v", idle, help.Size().Height)
	}
}

func TestClosingComesBackFromTheEnd(t *testing.T) {
	d := newDesk(t)
	d.openAll()
	d.scroll().ScrollToBottom()
	d.panel.SetOpenSections([]string{inputs.TitleSetup})
	if got := d.scroll().Offset.Y; got != 0 {
		t.Errorf("with little to show it is scrolled by %v", got)
	}
}
