package listing

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// A place belongs to the row that is drawn there, also when rows are scrolled
// by a part of one.
func TestPlacesBelongToRows(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	f := h.table.frame()
	for _, c := range []struct {
		scrolled float64
		y        float32 // below the heading
		row      int
	}{
		{0, 0, 0}, {0, 19.9, 0}, {0, 20, 1}, {7.5, 0, 0}, {7.5, 12.4, 0}, {7.5, 12.6, 1}, {19.99, 0.1, 1}, {20, 0, 1},
		{1000.25, 0, 50}, {1000.25, 19.7, 50}, {1000.25, 19.8, 51},
	} {
		h.table.scroll(0, c.scrolled)
		if at := h.table.spot(point{50, f.heading + c.y}); at.part != body || at.row != c.row {
			t.Errorf("scrolled by %v, %v below the heading is row %d, want %d", c.scrolled, c.y, at.row, c.row)
		}
	}
	for _, c := range []struct {
		x, y float32
		want part
	}{
		{50, 5, heading}, {475, 5, heading}, {475, 200, barDown}, {200, 395, barAcross}, {475, 395, nothing}, {-1, 200, nothing}, {50, 400, nothing}, {50, 391, barAcross}, {469, 389, body},
	} {
		if at := h.table.spot(point{c.x, c.y}); at.part != c.want {
			t.Errorf("(%v, %v) is part %v, want %v", c.x, c.y, at.part, c.want)
		}
	}
	few := newHand(t, 3, 480, 400)
	if at := few.table.spot(point{50, 300}); at.part != nothing || at.row != None {
		t.Errorf("below the last row is %+v", at)
	}
}

// Frozen columns are in front of those that scroll below them.
func TestPlacesBelongToColumns(t *testing.T) {
	h := newHand(t, 100, 480, 400)
	first, y := h.columnX(0), h.rowY(2)
	h.wheel(-100, 0)
	if at := h.table.spot(point{first, y}); at.column != 0 {
		t.Errorf("on the frozen column is column %d", at.column)
	}
	for _, column := range []int{3, 5, 7} {
		if at := h.table.spot(point{h.columnX(column), y}); at.column != column {
			t.Errorf("on column %d is column %d", column, at.column)
		}
	}
}

// Frozen columns that leave no room for others scroll along.
func TestFrozenColumnsLeaveRoom(t *testing.T) {
	h := newHand(t, 100, 480, 400)
	if f := h.table.frame(); f.frozen != 1 || f.fixed == 0 {
		t.Errorf("%d columns stay in a wide table", f.frozen)
	}
	h.window.Resize(fyne.NewSize(h.table.frame().fixed*1.2, 400))
	if f := h.table.frame(); f.frozen != 0 || f.fixed != 0 {
		t.Errorf("%d columns stay in a narrow table", f.frozen)
	}
	h.wheel(-1e6, 0)
	if at := h.table.spot(point{10, h.rowY(1)}); at.column != 11 {
		t.Errorf("scrolled to the last column, column %d is there", at.column)
	}
}

func TestPressingARowSelectsIt(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.move(50, h.rowY(3))
	h.table.MouseDown(h.mouse(50, h.rowY(3), desktop.MouseButtonPrimary))
	// At once: a widget that knows double clicks would hear of a single one late.
	h.wantLog("pressed", &h.selected, 3)
	if h.table.Selected() != 3 || h.window.Canvas().Focused() != fyne.Focusable(h.table) {
		t.Error("the row is not selected, or the table has no focus")
	}
	h.table.MouseUp(h.mouse(50, h.rowY(3), desktop.MouseButtonPrimary))
	h.click(50, h.rowY(3))
	h.wantLog("pressed again", &h.selected)
	h.table.MouseDown(h.mouse(50, h.rowY(5), desktop.MouseButtonSecondary))
	h.table.MouseUp(h.mouse(50, h.rowY(5), desktop.MouseButtonSecondary))
	h.wantLog("the other button", &h.selected)
	h.click(200, 399)
	h.wantLog("the bar", &h.selected)
}

func TestDoubleClickActivatesTheRow(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.double(50, h.rowY(4))
	h.wantLog("selected", &h.selected, 4)
	h.wantLog("activated", &h.activated, 4)
	// The second click on another row, or on the heading.
	h.click(50, h.rowY(6))
	h.click(50, h.rowY(7))
	h.table.DoubleTapped(&fyne.PointEvent{})
	h.double(50, 10)
	h.click(50, h.rowY(7))
	h.table.DoubleTapped(&fyne.PointEvent{})
	h.wantLog("clicked apart", &h.activated)
	// A row that is gone by then.
	h.click(50, h.rowY(9))
	h.click(50, h.rowY(9))
	h.source.keys = h.source.keys[:5]
	h.table.DoubleTapped(&fyne.PointEvent{})
	h.wantLog("gone", &h.activated)
}

func TestPointingTellsOfRows(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.move(50, h.rowY(2))
	h.move(90, h.rowY(2)+3)
	h.move(90, h.rowY(3))
	h.wantLog("moved", &h.hovered, 2, 3)
	h.wheel(0, -40) // Rows pass below the pointer.
	h.wantLog("scrolled", &h.hovered, 5)
	h.source.keys[5] = 9000
	h.table.Refresh()
	h.wantLog("replaced", &h.hovered, 9000)
	h.move(90, 10)
	h.wantLog("on the heading", &h.hovered, None)
	h.move(90, h.rowY(8))
	h.leave()
	h.wantLog("left", &h.hovered, 8, None)
	h.move(90, h.rowY(8))
	h.table.SetSource(nil)
	h.wantLog("emptied", &h.hovered, 8, None)
}

// What is highlighted from outside is not told, and stays until the pointer is
// on another row.
func TestHoverFromOutside(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.table.Hover(7)
	if h.table.view.hovered != 7 {
		t.Error("the row is not highlighted")
	}
	h.table.Hover(None)
	h.move(50, h.rowY(2))
	h.table.Hover(2)
	h.leave()
	h.wantLog("hovered", &h.hovered, 2, None)
	if h.table.view.hovered != None {
		t.Error("the row is still highlighted")
	}
}

func TestPointingTellsOfHeadings(t *testing.T) {
	h := newHand(t, 100, 480, 400)
	h.move(h.columnX(1), 10)
	if h.table.Cursor() != desktop.PointerCursor {
		t.Error("the cursor does not show that a heading can be clicked")
	}
	h.move(h.columnX(1)+2, 20)
	h.move(h.columnX(3), 20)
	h.move(50, h.rowY(1))
	h.wantLog("pointed", &h.pointed, 1, 3, None)
	if h.table.Cursor() != desktop.DefaultCursor {
		t.Error("the cursor shows that a row is a heading")
	}
	h.move(h.columnX(0), 20)
	h.leave()
	h.wantLog("left", &h.pointed, 0, None)
}

func TestClickOnAHeadingSorts(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.wheel(0, -500)
	h.click(h.columnX(2), 10)
	h.wantLog("clicked", &h.sorted, 2)
	if h.table.view.y != 0 {
		t.Error("what comes first is not in sight")
	}
	// Released on another heading, or on a row.
	for _, to := range []point{{h.columnX(3), 10}, {h.columnX(2), h.rowY(2)}} {
		h.move(h.columnX(2), 10)
		h.table.MouseDown(h.mouse(h.columnX(2), 10, desktop.MouseButtonPrimary))
		h.table.MouseUp(h.mouse(to.x, to.y, desktop.MouseButtonPrimary))
	}
	h.wantLog("released elsewhere", &h.sorted)
	h.wantLog("on headings", &h.selected)
}

// The owner sorts; the row selected stays so wherever it goes.
func TestSelectionFollowsItsRow(t *testing.T) {
	h := newHand(t, 50, 480, 400)
	h.table.OnSort = func(column int) {
		for i := range 25 {
			h.source.keys[i], h.source.keys[49-i] = h.source.keys[49-i], h.source.keys[i]
		}
		h.table.SetSorted(column, true)
		h.table.Refresh()
	}
	h.click(50, h.rowY(2))
	h.click(h.columnX(1), 10)
	if h.table.Selected() != 2 || h.table.find(2) != 47 {
		t.Errorf("key %d is selected, at row %d", h.table.Selected(), h.table.find(2))
	}
	h.keys(fyne.KeyDown)
	h.wantLog("next", &h.selected, 2, 1)
}

// Each event has the table drawn at most once, and only if it looks different.
func TestEventsDrawOnce(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	want := func(what string, n int) {
		t.Helper()
		if h.drawings != n {
			t.Errorf("%s: %d drawings, want %d", what, h.drawings, n)
		}
		h.drawings = 0
	}
	h.move(50, h.rowY(2))
	want("on another row", 1)
	h.move(60, h.rowY(2)+2)
	want("on the same row", 0)
	h.wheel(0, -33)
	want("scrolled", 1)
	h.wheel(-20, 0)
	want("scrolled sideways", 1)
	h.table.Refresh()
	want("refreshed", 1)
	h.table.Select(1000)
	want("selected", 1)
	h.table.Select(1000)
	want("selected again", 0)
	h.table.Hover(1001)
	want("hovered", 1)
	h.table.ScrollToTop()
	want("at the top", 1)
	h.wheel(0, 33)
	want("scrolled beyond the top", 0)
	h.window.Canvas().Focus(h.table)
	want("focused", 1)
	h.keys(fyne.KeyDown)
	want("key", 1)
	h.table.SetSorted(1, false)
	want("sorted", 1)
	h.table.SetSorted(1, false)
	want("sorted again", 0)
}
