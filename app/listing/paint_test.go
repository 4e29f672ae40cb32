package listing

import (
	"image"
	"image/color"
	"math"
	"testing"

	"bowline/app/look"
	"bowline/app/sheet"
	"bowline/plotting/palette"
	"bowline/plotting/palette/contrast"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
)

// cell returns the pixels of a cell as it is scrolled.
func (h *hand) cell(row, column int) image.Rectangle {
	f := h.table.frame()
	left, width := f.column(column, float32(h.table.view.x))
	middle := h.rowY(row)
	return image.Rect(int(left)+1, int(middle-f.pitch/2), int(left+width)-1, int(middle+f.pitch/2))
}

// band returns the pixels of a row across the table.
func (h *hand) band(row int) image.Rectangle {
	r := h.cell(row, 0)
	r.Min.X, r.Max.X = 0, int(math.Round(float64(h.table.frame().width)))
	return r
}

func TestCellsAreWrittenInTheirColors(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	img := h.picture()
	for _, c := range []struct {
		row, column int
		ink         color.Color
	}{{1, 0, palette.Light.Ink}, {5, 1, palette.Light.Bad}, {6, 1, palette.Light.Good}, {8, 3, palette.Light.Warn}, {5, 3, palette.Light.Ink}} {
		if count(img, h.cell(c.row, c.column), c.ink) == 0 {
			t.Errorf("row %d, column %d is not written in %v", c.row, c.column, c.ink)
		}
	}
	if n := count(img, h.cell(5, 1), palette.Light.Ink); n != 0 {
		t.Errorf("%d pixels of ink in a red cell", n)
	}
}

// Numbers end, words begin on the same line.
func TestTextsKeepToTheirSide(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	img := h.picture()
	inked := func(r image.Rectangle) (first, last int) {
		first, last = r.Max.X, r.Min.X
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				if img.RGBAAt(x, y).G < 0x60 {
					first, last = min(first, x), max(last, x)
				}
			}
		}
		return first, last
	}
	// Columns 0 and 2 of rows whose texts have different widths.
	from, _ := inked(h.cell(2, 0))
	_, to := inked(h.cell(2, 2))
	for row := 3; row < 12; row++ {
		if first, _ := inked(h.cell(row, 0)); first < from-2 || first > from+2 {
			t.Errorf("row %d begins at %d, row 2 at %d", row, first, from)
		}
		if _, last := inked(h.cell(row, 2)); last < to-2 || last > to+2 {
			t.Errorf("row %d ends at %d, row 2 at %d", row, last, to)
		}
	}
}

// The heading is the same wherever rows are scrolled to, and rows are below it.
func TestHeadingStays(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	top := image.Rect(0, 0, 470, int(h.table.frame().heading))
	before := h.picture()
	h.wheel(0, -1234.5)
	after := h.picture()
	if !same(before, after, top) {
		t.Error("the heading has changed")
	}
	if same(before, after, image.Rect(0, top.Max.Y, 470, 390)) {
		t.Error("the rows have not moved")
	}
	// Sideways, the heading of the frozen column stays and the others go along.
	h.wheel(-61, 0)
	sideways := h.picture()
	edge := int(h.table.frame().fixed) - 1
	if !same(after, sideways, image.Rect(0, 0, edge, 390)) {
		t.Error("the frozen column has changed")
	}
	moved := true
	for y := range top.Max.Y {
		for x := edge + 5; x < 400; x++ {
			moved = moved && sideways.RGBAAt(x, y) == after.RGBAAt(x+61, y)
		}
	}
	if !moved {
		t.Error("the headings did not scroll with their columns")
	}
	// Half a column below the frozen one does not shine through.
	h.wheel(36, 0)
	if half := h.picture(); !same(after, half, image.Rect(0, 0, edge, 390)) || same(sideways, half, top) {
		t.Error("what is below the frozen column shows")
	}
}

// same reports whether a part of two pictures is alike.
func same(a, b *image.RGBA, part image.Rectangle) bool {
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if a.RGBAAt(x, y) != b.RGBAAt(x, y) {
				return false
			}
		}
	}
	return true
}

// Rows are scrolled by whole device pixels, so that texts stay as crisp as they
// are at rest.
func TestScrolledRowsAreTheSamePixels(t *testing.T) {
	for _, scale := range []float32{1, 1.25, 2} {
		h := newHand(t, 2304, 480, 400)
		before := h.pictureAt(scale)
		h.wheel(0, -7.3)
		after := h.pictureAt(scale)
		by := int(math.Round(7.3 * float64(scale)))
		top := int(math.Ceil(float64(h.table.frame().heading * scale)))
		for y := top; y < int(380*scale)-by; y++ {
			for x := range int(469 * scale) {
				if before.RGBAAt(x, y+by) != after.RGBAAt(x, y) {
					t.Fatalf("at scale %v the pixel (%d, %d) has changed", scale, x, y)
				}
			}
		}
	}
}

// The selected row differs by its fill, a bar beside it and lines along it; the
// row pointed at by a frame.
func TestSelectedAndHoveredRowsAreMarked(t *testing.T) {
	for mode, p := range map[look.Mode]*palette.Palette{look.Light: &palette.Light, look.Dark: &palette.Dark} {
		h := newHand(t, 2304, 480, 400)
		fyne.CurrentApp().Settings().SetTheme(look.New(mode))
		plain := h.picture()
		h.table.Select(4)
		h.move(100, h.rowY(7))
		img := h.picture()
		selected, hovered := h.band(4), h.band(7)
		bar := image.Rect(0, selected.Min.Y, marker, selected.Max.Y)
		if n := count(img, bar, p.Accent); n != marker*20 {
			t.Errorf("%v: %d pixels of the bar beside the selected row", mode, n)
		}
		if n := count(img, selected, p.Accent); n != 2*470+(marker*18) {
			t.Errorf("%v: %d pixels of lines and bar of the selected row", mode, n)
		}
		if n := count(img, hovered, p.Muted); n < 2*470+2*18 {
			t.Errorf("%v: %d pixels of the frame of the row pointed at", mode, n)
		}
		if n := count(img, hovered, p.Accent); n != 0 {
			t.Errorf("%v: the row pointed at looks selected", mode)
		}
		if !same(plain, img, h.band(5)) || !same(plain, img, h.band(10)) {
			t.Errorf("%v: other rows have changed", mode)
		}
		// Both at once show as both.
		h.move(100, h.rowY(4))
		both := h.picture()
		if count(both, bar, p.Accent) != marker*20 || count(both, image.Rect(469, selected.Min.Y, 470, selected.Max.Y), p.Muted) < 18 {
			t.Errorf("%v: a row selected and pointed at does not look so", mode)
		}
		// A row that is gone leaves no mark.
		h.leave()
		h.table.Select(2000)
		h.source.keys = h.source.keys[:100]
		h.table.Refresh()
		if n := count(h.picture(), image.Rect(0, 70, 470, 380), p.Accent); n != 0 {
			t.Errorf("%v: %d pixels of a selection that is gone", mode, n)
		}
	}
}

// Texts can be read on every kind of row: 4.5 to 1 at least (guideline above,
// success criterion 1.4.3).
func TestMarkedRowsCanBeRead(t *testing.T) {
	for _, mode := range []look.Mode{look.Light, look.Dark} {
		newHand(t, 1, 100, 100)
		fyne.CurrentApp().Settings().SetTheme(look.New(mode))
		var i inks
		i.dip()
		for _, name := range []fyne.ThemeColorName{"", theme.ColorNameError, theme.ColorNameSuccess, theme.ColorNameWarning, theme.ColorNamePlaceHolder, theme.ColorNamePrimary} {
			for on, back := range map[string]color.Color{"plain": i.plain, "stripe": i.stripe, "selected": i.selected, "hovered": i.hovered} {
				deep := on == "selected" || on == "hovered"
				if got := contrast.Ratio(i.cell(name, deep), back); got < 4.5 {
					t.Errorf("%v: %q on a %s row has a contrast of %.2f", mode, name, on, got)
				}
			}
		}
	}
}

func TestSortedColumnIsMarked(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	shape := func(column int, descending bool) (upper, lower, elsewhere int) {
		h.table.SetSorted(column, descending)
		img, f := h.picture(), h.table.frame()
		left, width := f.column(column, 0)
		// The triangle is on the last line, above the line along the heading.
		area := image.Rect(int(left), int(f.heading)-22, int(left+width), int(f.heading)-4)
		var found image.Rectangle
		for y := area.Min.Y; y < area.Max.Y; y++ {
			if count(img, image.Rect(area.Min.X, y, area.Max.X, y+1), palette.Light.Accent) > 0 {
				found = found.Union(image.Rect(area.Min.X, y, area.Max.X, y+1))
			}
		}
		middle := (found.Min.Y + found.Max.Y) / 2
		upper = count(img, image.Rect(area.Min.X, found.Min.Y, area.Max.X, middle), palette.Light.Accent)
		lower = count(img, image.Rect(area.Min.X, middle, area.Max.X, found.Max.Y), palette.Light.Accent)
		return upper, lower, count(img, img.Rect, palette.Light.Accent) - upper - lower - 2*int(width)
	}
	for _, column := range []int{0, 1, 4} {
		if up, down, other := shape(column, false); !(up < down && up > 0) || other != 0 {
			t.Errorf("column %d ascending: %d pixels above, %d below, %d elsewhere", column, up, down, other)
		}
		if up, down, other := shape(column, true); !(up > down && down > 0) || other != 0 {
			t.Errorf("column %d descending: %d pixels above, %d below, %d elsewhere", column, up, down, other)
		}
	}
	h.table.SetSorted(None, false)
	if n := count(h.picture(), image.Rect(0, 0, 480, 400), palette.Light.Accent); n != 0 {
		t.Errorf("%d pixels mark a column with none sorted", n)
	}
}

func TestFocusShows(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	if n := count(h.picture(), image.Rect(0, 0, 480, 2), palette.Light.Accent); n != 0 {
		t.Errorf("%d pixels of a ring without the focus", n)
	}
	h.window.Canvas().Focus(h.table)
	img := h.picture()
	for _, side := range []image.Rectangle{image.Rect(0, 0, 480, 2), image.Rect(0, 398, 480, 400), image.Rect(0, 0, 2, 400), image.Rect(478, 0, 480, 400)} {
		if n := count(img, side, palette.Light.Accent); n != side.Dx()*side.Dy() {
			t.Errorf("%d pixels of the ring in %v", n, side)
		}
	}
	h.window.Canvas().Unfocus()
	if n := count(h.picture(), image.Rect(0, 0, 480, 2), palette.Light.Accent); n != 0 {
		t.Error("the ring stays without the focus")
	}
}

// A thumb is slim until it is pointed at, or held.
func TestThumbPointedAtIsWider(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	f := h.table.frame()
	x, y := f.width+BarWidth/2, f.heading+f.height+BarWidth/2
	inked := func(part image.Rectangle) int {
		img := h.picture()
		return part.Dx()*part.Dy() - count(img, part, palette.Light.Background)
	}
	down, across := image.Rect(470, int(f.heading)+5, 480, int(f.heading)+6), image.Rect(20, 390, 21, 400)
	for _, c := range []struct {
		what         string
		at           point
		down, across int
	}{{"beside", point{50, 200}, 5, 5}, {"on the bar down", point{x, f.heading + 5}, 8, 5}, {"on the bar across", point{20, y}, 5, 8}} {
		h.move(c.at.x, c.at.y)
		if d, a := inked(down), inked(across); d != c.down || a != c.across {
			t.Errorf("%s the thumbs are %d and %d wide, want %d and %d", c.what, d, a, c.down, c.across)
		}
	}
	h.move(x, f.heading+5)
	h.table.MouseDown(h.mouse(x, f.heading+5, desktop.MouseButtonPrimary))
	h.table.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(100, f.heading+5)}})
	h.window.Canvas().Unfocus() // Its ring is beside the thumb.
	if d := inked(down); d != 8 {
		t.Errorf("held, the thumb is %d wide", d)
	}
}

// The placeholder shows without rows only, within the table.
func TestPlaceholder(t *testing.T) {
	h := newHand(t, 3, 300, 300)
	h.table.SetPlaceholder("No combination of holes fits these limits. Take one of the limits away.")
	free := image.Rect(0, 150, 290, 290)
	if n := count(h.picture(), free, palette.Light.Muted); n != 0 {
		t.Error("the sentence shows below rows")
	}
	h.table.SetSource(nil)
	img := h.picture()
	inside := image.Rect(20, 60, 280, 290)
	if n := count(img, inside, palette.Light.Muted); n < 50 {
		t.Errorf("%d pixels of the sentence", n)
	}
	for _, beside := range []image.Rectangle{image.Rect(0, 60, 20, 280), image.Rect(280, 60, 300, 280)} {
		if n := count(img, beside, palette.Light.Muted); n != 0 {
			t.Errorf("%d pixels of the sentence in %v", n, beside)
		}
	}
}

// A word is cut short; of a number that has no room nothing is left, since a
// part of it would be another number.
func TestTextsWithoutRoom(t *testing.T) {
	h := newHand(t, 10, 480, 400)
	h.table.sheet.Draw(480, 400)
	var cutWord, cutNumber string
	var fits float32
	probe := sheet.New(func(pen *sheet.Pen) {
		p := painter{Pen: pen, inks: &h.table.ink, table: h.table, frame: h.table.frame(), regular: sheet.Face(fyne.TextStyle{}, theme.TextSize())}
		cutWord = p.cut("bars in the way", 60, Left, p.regular)
		cutNumber = p.cut("10,825", 30, Right, p.regular)
		fits = p.Width(cutWord, p.regular)
	})
	probe.Draw(100, 100)
	if cutNumber != "…" || cutWord != "bars in…" && cutWord != "bars in …" && cutWord != "bars i…" || fits > 60 {
		t.Errorf("cut to %q, %v wide, and %q", cutWord, fits, cutNumber)
	}
}
