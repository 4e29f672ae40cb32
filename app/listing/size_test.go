package listing

import (
	"image"
	"math"
	"testing"

	"bowline/app/sheet"

	"fyne.io/fyne/v2"
)

// No size is too small, and none gives a picture of another size.
func TestTinySizes(t *testing.T) {
	h := newHand(t, 2304, 480, 400)
	h.table.Select(1000)
	for _, size := range []fyne.Size{{}, {Width: 1, Height: 1}, {Width: 9, Height: 9}, {Width: 1, Height: 400}, {Width: 480, Height: 1}, {Width: 30, Height: 70}} {
		h.table.Resize(size)
		w, hi := max(int(size.Width), 1), max(int(size.Height), 1)
		if got := h.table.sheet.Draw(int(size.Width), int(size.Height)).Bounds().Size(); got != image.Pt(w, hi) {
			t.Errorf("at %v the picture has %v", size, got)
		}
		h.wheel(-20, -20)
		h.double(size.Width/2, size.Height/2)
		h.drag(size.Width/2, size.Height/2, 500, 500)
		h.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
		f := h.table.frame()
		for _, v := range []float64{float64(f.width), float64(f.height), float64(f.stretch), float64(f.fixed), h.table.view.x, h.table.view.y} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Errorf("at %v a length is %v", size, v)
			}
		}
	}
}

// Without columns there is nothing to fail on.
func TestNoColumns(t *testing.T) {
	h := newHand(t, 10, 480, 400)
	h.table.SetColumns(nil, 1)
	h.picture()
	h.click(100, 100)
	h.move(100, 1)
}

func TestMinSizeIsRoomForTheHeadingAndSomeRows(t *testing.T) {
	h := newHand(t, 10, 480, 400)
	size := h.table.MinSize()
	f := h.table.frame()
	if size.Height != f.heading+3*f.pitch+BarWidth || size.Width < f.widths[0]+f.widths[1] || size.Width > 200 {
		t.Errorf("least size %v", size)
	}
}

// Headings have room, whatever width their columns ask for.
func TestColumnsAreAsWideAsTheirHeadings(t *testing.T) {
	h := newHand(t, 10, 480, 400)
	h.table.SetColumns([]Column{{Title: "A", Width: 20}, {Title: "Circumstances\nof", Width: 1}, {Title: "x", Unit: "circumstances", Width: 1}, {}}, 0)
	c := h.table.natural()
	bold, regular := sheet.Face(fyne.TextStyle{Bold: true}, 13), sheet.Face(fyne.TextStyle{}, 13)
	digit := float32(regular.Width("0000000000")) / 10
	if c.widths[0] < 20*digit || c.widths[1] < float32(bold.Width("Circumstances")) || c.widths[2] < 60 || c.widths[3] <= 0 {
		t.Errorf("widths %v", c.widths)
	}
}

// Columns that ask for the room left share it; the others stay as they are. There
// is none while the table scrolls sideways.
func TestColumnsGrowByTheirParts(t *testing.T) {
	h := newHand(t, 2, 600, 200)
	h.table.SetColumns([]Column{{Title: "Date", Width: 10}, {Title: "Rear", Width: 8, Grow: 1}, {Title: "Note", Width: 9, Grow: 3}}, 1)
	f := h.table.frame()
	spare := 600 - f.total
	for i, part := range []float32{0, 0.25, 0.75} {
		_, got := f.column(i, 0)
		if want := h.table.ColumnWidth(i) + part*spare; spare < 100 || math.Abs(float64(got-want)) > 0.01 {
			t.Errorf("column %d is %v wide, want %v of %v spare", i, got, want, spare)
		}
	}
	if left, width := f.column(2, 0); math.Abs(float64(left+width-600)) > 0.01 {
		t.Errorf("the last column ends at %v", left+width)
	}
	h.table.Resize(fyne.NewSize(f.total-20, 200))
	if narrow := h.table.frame(); !narrow.across || narrow.spare != 0 || narrow.wide(2) != narrow.widths[2] {
		t.Errorf("in too little room columns share %v", narrow.spare)
	}
}

// Only lists that are sorted leave room for the mark of it.
func TestHeadingsOfAListThatIsNotSorted(t *testing.T) {
	h := newHand(t, 2, 600, 200)
	h.table.SetColumns([]Column{{Title: "Setup", Width: 1}}, 1)
	h.table.OnSort = nil
	narrow := h.table.ColumnWidth(0)
	h.table.OnSort = func(int) {}
	if wide := h.table.ColumnWidth(0); wide-narrow < triangle*13 || wide-narrow > triangle*13*1.5+1 {
		t.Errorf("sorted, a heading takes %v, else %v", wide, narrow)
	}
}

// quiet is a source whose cells cost nothing.
type quiet int

func (q quiet) Len() int                                    { return int(q) }
func (q quiet) Key(row int) int                             { return row }
func (q quiet) Cell(_, _ int) (string, fyne.ThemeColorName) { return "1234.5", "" }

// What a picture costs does not depend on how many rows there are.
func TestDrawingDoesNotGrowWithRows(t *testing.T) {
	h := newHand(t, 0, 480, 400)
	allocations := func(rows int) float64 {
		h.table.SetSource(quiet(rows))
		h.table.Select(rows / 2)
		return testing.AllocsPerRun(20, func() {
			h.wheel(0, -7.3)
			h.table.sheet.Draw(480, 400)
		})
	}
	few, many := allocations(1000), allocations(1_000_000)
	if many > few+5 {
		t.Errorf("%v allocations with a thousand rows, %v with a million", few, many)
	}
}

func benchmark(b *testing.B, scale int) {
	h := newHand(b, 2304, 480, 400)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if i%1000 == 0 {
			h.table.ScrollToTop()
		}
		h.wheel(0, -7.3)
		h.table.sheet.Draw(scale*480, scale*400)
	}
}

// One event of the wheel over 2,304 rows of 12 columns, all of it.
func BenchmarkScroll(b *testing.B)       { benchmark(b, 1) }
func BenchmarkScrollDouble(b *testing.B) { benchmark(b, 2) }
