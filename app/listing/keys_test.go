package listing

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestKeysMoveTheSelection(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.window.Canvas().Focus(h.table)
	f := h.table.frame()
	page := int(f.height/f.pitch) - 1
	if page < 10 {
		t.Fatalf("a page of %d rows", page)
	}
	for _, c := range []struct {
		key  fyne.KeyName
		want int
	}{
		{fyne.KeyDown, 0}, {fyne.KeyDown, 1}, {fyne.KeyDown, 2}, {fyne.KeyUp, 1}, {fyne.KeyPageDown, 1 + page}, {fyne.KeyPageDown, 1 + 2*page},
		{fyne.KeyPageUp, 1 + page}, {fyne.KeyEnd, 2303}, {fyne.KeyUp, 2302}, {fyne.KeyHome, 0},
	} {
		h.keys(c.key)
		h.wantLog(string(c.key), &h.selected, c.want)
		f := h.table.frame()
		if top := float64(c.want) * float64(f.pitch); top < h.table.view.y || top+float64(f.pitch) > h.table.view.y+float64(f.height)+1e-3 {
			t.Errorf("%s: row %d is not in sight, scrolled by %v", c.key, c.want, h.table.view.y)
		}
	}
	h.keys(fyne.KeyUp, fyne.KeyHome, fyne.KeyPageUp, fyne.KeyEnd, fyne.KeyDown, fyne.KeyPageDown)
	h.wantLog("at the ends", &h.selected, 2303)
	h.keys(fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace)
	h.wantLog("Enter", &h.activated, 2303, 2303)
}

// With nothing selected, or what was selected gone, the keys begin with the
// first row that is in sight whole.
func TestKeysBeginWhereOneLooks(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.window.Canvas().Focus(h.table)
	h.wheel(0, -205)
	h.keys(fyne.KeyUp)
	h.wantLog("nothing selected", &h.selected, 11)
	h.source.keys = h.source.keys[12:]
	h.wheel(0, 5)
	h.table.Refresh()
	h.keys(fyne.KeyReturn)
	h.wantLog("gone", &h.activated)
	h.keys(fyne.KeyDown)
	h.wantLog("after it is gone", &h.selected, 12+10)
}

func TestKeysScrollSideways(t *testing.T) {
	h := newHand(t, 100, 480, 400)
	h.window.Canvas().Focus(h.table)
	h.keys(fyne.KeyLeft)
	if h.table.view.x != 0 {
		t.Errorf("left of the first column: scrolled by %v", h.table.view.x)
	}
	h.keys(fyne.KeyRight, fyne.KeyRight)
	if h.table.view.x != 2*4*13 {
		t.Errorf("scrolled by %v after two keys", h.table.view.x)
	}
	h.wantLog("sideways", &h.selected)
}

// A pointer that rests on the table does not point at the rows that keys move
// below it.
func TestKeysLeaveAPointerBehind(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.click(50, h.rowY(3))
	h.wantLog("clicked", &h.hovered, 3)
	h.keys(fyne.KeyEnd)
	h.wantLog("moved by key", &h.hovered, None)
	h.move(50, h.rowY(2300))
	h.wantLog("moved", &h.hovered, 2300)
}

func TestKeysWithoutRows(t *testing.T) {
	h := newHand(t, 0, 480, 400)
	h.window.Canvas().Focus(h.table)
	h.keys(fyne.KeyDown, fyne.KeyUp, fyne.KeyHome, fyne.KeyEnd, fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyReturn, fyne.KeyLeft, fyne.KeyRight)
	h.table.TypedRune('x')
	h.wantLog("selected", &h.selected)
	h.wantLog("activated", &h.activated)
}
