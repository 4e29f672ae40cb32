package listing

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"pgregory.net/rapid"
)

func (h *hand) wantScrolled(what string, x, y float64) {
	h.t.Helper()
	if v := h.table.view; math.Abs(v.x-x) > 1e-3 || math.Abs(v.y-y) > 1e-3 {
		h.t.Errorf("%s: scrolled by (%v, %v), want (%v, %v)", what, v.x, v.y, x, y)
	}
}

func TestWheelScrollsByPixels(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.wheel(0, -7.25)
	h.wantScrolled("down", 0, 7.25)
	h.wheel(0, 3)
	h.wantScrolled("up", 0, 4.25)
	h.wheel(-30.5, 0)
	h.wantScrolled("sideways", 30.5, 4.25)
	h.modifier = fyne.KeyModifierShift
	h.wheel(0, -10)
	h.wantScrolled("with Shift", 40.5, 4.25)
	h.wheel(5, 0) // The toolkit has turned the wheel's direction itself.
	h.wantScrolled("with Shift, sideways", 35.5, 4.25)
	h.modifier = 0
	h.wheel(1e6, 1e6)
	h.wantScrolled("to the first", 0, 0)
	h.wheel(-1e6, -1e6)
	x, y := h.ends()
	h.wantScrolled("to the last", x, y)
	if f := h.table.frame(); y != 2304*20-float64(f.height) || x <= 0 {
		t.Errorf("the last row is at %v", y)
	}
}

// ends returns how far the table can be scrolled.
func (h *hand) ends() (x, y float64) {
	f := h.table.frame()
	return f.most()
}

// A table with room for all rows and columns has no bars and does not scroll.
func TestNothingToScroll(t *testing.T) {
	h := newHand(t, 5, 1200, 400)
	f := h.table.frame()
	if f.down || f.across {
		t.Errorf("bars down %v, across %v", f.down, f.across)
	}
	h.wheel(-50, -50)
	h.wantScrolled("a table with room", 0, 0)
	if left, width := f.column(11, 0); math.Abs(float64(left+width-1200)) > 0.01 {
		t.Errorf("the last column ends at %v of 1200", left+width)
	}
	// A bar that is needed only because of the other one, either way round.
	h.window.Resize(fyne.NewSize(f.total-1, f.heading+5*f.pitch+BarWidth-1))
	if g := h.table.frame(); !g.down || !g.across {
		t.Error("the bar across takes room of the rows, and none down shows")
	}
	h.window.Resize(fyne.NewSize(f.total-1, f.heading+5*f.pitch+BarWidth))
	if g := h.table.frame(); g.down || !g.across {
		t.Error("rows that fit above the bar across have a bar")
	}
	rows := 5
	h.window.Resize(fyne.NewSize(f.total+4, f.heading+float32(rows)*f.pitch))
	if g := h.table.frame(); g.down || g.across {
		t.Error("a table that just fits has bars")
	}
	h.window.Resize(fyne.NewSize(f.total+4, f.heading+float32(rows)*f.pitch-1))
	if g := h.table.frame(); !g.down || !g.across {
		t.Error("a bar takes room that there is not, and no other one shows")
	}
}

func TestThumbFollowsTheDrag(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	f := h.table.frame()
	_, most := h.ends()
	b := f.bar(barDown, h.table.view)
	if b.size < 20 || b.size > 40 || b.at != f.heading {
		t.Fatalf("thumb of %v at %v", b.size, b.at)
	}
	x := f.width + BarWidth/2
	// From a place within the thumb to half of its way: it does not jump.
	h.drag(x, b.at+3, x-50, b.at+3+(b.length-b.size)/2)
	h.wantScrolled("half way", 0, most/2)
	b = f.bar(barDown, h.table.view)
	h.drag(x, b.at+5, x, 10000)
	h.wantScrolled("beyond the end", 0, most)
	h.wantLog("rows below", &h.selected)
	// A move after the end of the drag changes nothing.
	h.move(x, 100)
	h.table.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 120)}})
	h.wantScrolled("after the drag", 0, most)
}

func TestThumbAcross(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	f := h.table.frame()
	most, _ := h.ends()
	b := f.bar(barAcross, h.table.view)
	y := f.heading + f.height + BarWidth/2
	h.drag(20, y, 20+(b.length-b.size)/4, y+100)
	h.wantScrolled("a quarter", most/4, 0)
}

// A press on the track brings the thumb there, to be dragged on.
func TestTrackCanBeClicked(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	f := h.table.frame()
	_, most := h.ends()
	x, middle := f.width+BarWidth/2, f.heading+f.height/2
	h.click(x, middle)
	h.wantScrolled("the middle", 0, most/2)
	h.click(x, f.heading+f.height-1)
	h.wantScrolled("the end", 0, most)
	// Taken by its middle, which is where the pointer is.
	size := f.bar(barDown, h.table.view).size
	h.drag(x, f.heading+size, x, middle+(f.height-size)/4)
	h.wantScrolled("dragged on", 0, 0.75*most)
}

// The button may go up where the table does not hear of it.
func TestForgottenDragEnds(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	f := h.table.frame()
	x := f.width + BarWidth/2
	h.table.MouseDown(h.mouse(x, f.heading+5, desktop.MouseButtonPrimary))
	h.move(50, h.rowY(3))
	h.wantLog("moved with no button down", &h.hovered, 3)
	h.table.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 300)}})
	h.wantScrolled("dragged with nothing held", 0, 0)
}

func TestSelectBringsTheRowIntoSight(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.table.Select(5)
	h.wantScrolled("a row in sight", 0, 0)
	h.table.Select(1000)
	f := h.table.frame()
	h.wantScrolled("a hidden row", 0, 1000*20-float64(f.height-f.pitch)/2)
	h.wantLog("from outside", &h.selected)
	// Partly hidden: no farther than needed.
	h.table.scroll(0, 505)
	h.table.Select(25)
	h.wantScrolled("a row half hidden", 0, 500)
	// A row that is scrolled away by hand stays away, until it is selected again.
	h.wheel(0, -5000)
	h.table.Refresh()
	h.picture()
	h.wantScrolled("scrolled away", 0, 5500)
	h.table.Select(25)
	if f := h.table.frame(); !f.touches(25, h.table.view.y) {
		t.Error("a row selected again is hidden")
	}
	// Nor does it come back when rows are sorted anew.
	h.source.keys[0], h.source.keys[25] = 25, 0
	h.wheel(0, -5000)
	y := h.table.view.y
	h.table.Select(1500)
	h.source.keys[1500], h.source.keys[3] = 3, 1500
	seen := h.table.view.y
	h.table.Refresh()
	h.wantScrolled("sorted anew", 0, seen)
	if seen == y {
		t.Error("the selected row was not brought into sight")
	}
	h.table.Select(None)
	if h.table.Selected() != None {
		t.Error("something is selected")
	}
}

// The owner may select what it has just heard to be selected: a row half in
// sight stays where it is, for the second click.
func TestSelectingWhatWasToldMovesNothing(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.table.OnSelected = h.table.Select
	h.wheel(0, -15)
	h.double(50, h.rowY(0)+8)
	h.wantScrolled("a row half hidden", 0, 15)
	h.wantLog("activated", &h.activated, 0)
}

// A row selected before the source or the window has it is shown when it is
// there.
func TestSelectAheadOfTheRows(t *testing.T) {
	h := newHand(t, 0, 480, 400)
	h.table.Select(2000)
	h.table.SetSource(combinations(2304))
	h.picture()
	if f := h.table.frame(); !f.touches(2000, h.table.view.y) {
		t.Errorf("scrolled by %v the row is hidden", h.table.view.y)
	}
	// Not if something else was asked for meanwhile.
	h.table.Select(2500)
	h.table.ScrollToTop()
	h.table.SetSource(combinations(3000))
	h.picture()
	h.wantScrolled("at the top", 0, 0)
}

func TestSourceThatShrinks(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.wheel(0, -1e6)
	h.table.Select(2300)
	h.source.keys = h.source.keys[:100]
	// Without a word: nothing of what comes next may fail.
	h.move(50, 200)
	h.click(50, 210)
	h.window.Canvas().Focus(h.table)
	h.keys(fyne.KeyUp)
	h.picture()
	_, y := h.ends()
	if h.table.view.y > y {
		t.Errorf("scrolled by %v of %v", h.table.view.y, y)
	}
	h.source.keys = nil
	h.table.Refresh()
	h.wantScrolled("emptied", 0, 0)
	h.picture()
	h.click(50, 200)
	h.table.DoubleTapped(&fyne.PointEvent{})
}

// Whatever is done, the table is scrolled to where there are rows and columns,
// and only cells in sight are asked for.
func TestScrollStaysInBounds(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	rapid.Check(t, func(r *rapid.T) {
		h.table, h.source = New(columns, 1), combinations(2304)
		h.table.Resize(fyne.NewSize(480, 400))
		h.table.SetSource(h.source)
		for range rapid.IntRange(1, 12).Draw(r, "steps") {
			x, y := rapid.Float32Range(-10, 700).Draw(r, "x"), rapid.Float32Range(-10, 700).Draw(r, "y")
			switch rapid.IntRange(0, 8).Draw(r, "step") {
			case 0:
				h.wheel(rapid.Float32Range(-900, 900).Draw(r, "dx"), rapid.Float32Range(-60000, 60000).Draw(r, "dy"))
			case 1:
				h.table.Resize(fyne.NewSize(x+10, y+10))
			case 2:
				h.source.keys = combinations(rapid.IntRange(0, 3000).Draw(r, "rows")).keys
			case 3:
				h.table.Refresh()
			case 4:
				h.drag(x, y, rapid.Float32Range(-10, 700).Draw(r, "to x"), rapid.Float32Range(-10, 700).Draw(r, "to y"))
			case 5:
				h.double(x, y)
			case 6:
				h.table.Select(rapid.IntRange(-1, 3000).Draw(r, "key"))
			case 7:
				h.table.TypedKey(&fyne.KeyEvent{Name: rapid.SampledFrom([]fyne.KeyName{fyne.KeyUp, fyne.KeyDown, fyne.KeyPageDown, fyne.KeyEnd, fyne.KeyRight}).Draw(r, "key")})
			case 8:
				h.table.SetColumns(columns[:rapid.IntRange(0, len(columns)).Draw(r, "columns")], rapid.IntRange(-1, 14).Draw(r, "frozen"))
			}
		}
		clear(h.source.asked)
		size := h.table.Size()
		h.table.sheet.Draw(int(size.Width), int(size.Height))
		f := h.table.frame()
		v := h.table.view
		wide, tall := 0.0, math.Max(float64(f.rows)*float64(f.pitch)-float64(f.height), 0)
		if f.across {
			wide = float64(f.total - f.width)
		}
		if !(v.x >= 0 && v.x <= wide && v.y >= 0 && v.y <= tall) {
			r.Fatalf("scrolled by (%v, %v) of (%v, %v)", v.x, v.y, wide, tall)
		}
		if most := (int(f.height/f.pitch) + 2) * len(h.table.columns); len(h.source.asked) > most {
			r.Fatalf("%d cells were asked for, at most %d are in sight", len(h.source.asked), most)
		}
		for cell, n := range h.source.asked {
			left, width := f.column(cell[1], float32(v.x))
			// Columns are drawn scrolled by whole pixels, up to half of one off.
			if hidden := left >= f.width+1 || cell[1] >= f.frozen && left+width < f.fixed-1; hidden {
				r.Fatalf("cell %v was asked for, at %v to %v of %v", cell, left, left+width, f.width)
			}
			if top := float64(cell[0])*20 - v.y; n != 1 || top <= -20 || top > float64(f.height)+1 {
				r.Fatalf("cell %v was asked for %d times, %v below the heading", cell, n, top)
			}
		}
	})
}
