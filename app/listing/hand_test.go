package listing

import (
	"fmt"
	"image"
	"image/color"
	"testing"

	"bowline/app/look"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// holes is a source of rows in some order, whose key is their place in the
// list of all combinations; it counts which cells it was asked for.
type holes struct {
	keys  []int
	asked map[[2]int]int
}

// combinations returns rows 0 to n−1 in order.
func combinations(n int) *holes {
	h := &holes{asked: map[[2]int]int{}}
	for key := range n {
		h.keys = append(h.keys, key)
	}
	return h
}

func (h *holes) Len() int        { return len(h.keys) }
func (h *holes) Key(row int) int { return h.keys[row] }

// text is what a cell of a row with a key says.
func text(key, column int) string {
	switch column {
	case 0:
		return fmt.Sprintf("%d-%d-%d-%d", key/384%6+1, key/64%6+1, key/8%8+1, key%8+1)
	case 11:
		return []string{"all targets met", "bars in the way of the housing", "over the limit"}[key%3]
	}
	return fmt.Sprintf("%.1f", float64((key*7919+column*104729)%20000)/100-20)
}

func (h *holes) Cell(row, column int) (string, fyne.ThemeColorName) {
	h.asked[[2]int{row, column}]++
	name := fyne.ThemeColorName("")
	switch key := h.keys[row]; {
	case column == 1 && key%5 == 0:
		name = theme.ColorNameError
	case column == 1 || column == 11 && key%3 == 0:
		name = theme.ColorNameSuccess
	case column == 3 && key%4 == 0:
		name = theme.ColorNameWarning
	}
	return text(h.keys[row], column), name
}

// columns are those of the list of hole combinations.
var columns = []Column{
	{Title: "Holes", Width: 7}, {Title: "Anti-\nsquat", Unit: "%", Width: 5, Align: Right}, {Title: "IC\nlength", Unit: "in", Width: 5, Align: Right},
	{Title: "IC\nheight", Unit: "in", Width: 5, Align: Right}, {Title: "Slope", Unit: "°", Width: 5, Align: Right}, {Title: "Pinion\nchange", Unit: "°", Width: 5, Align: Right},
	{Title: "Upper\nbar", Unit: "lb", Width: 6, Align: Right}, {Title: "Lower\nbar", Unit: "lb", Width: 6, Align: Right}, {Title: "Rise", Unit: "%/in", Width: 5, Align: Right},
	{Title: "Use", Unit: "%", Width: 5, Align: Right}, {Title: "Turns", Width: 5, Align: Right}, {Title: "Verdict", Width: 18},
}

// hand works mouse and keyboard over a table in a window, as the toolkit would
// pass their events on.
type hand struct {
	t        testing.TB
	table    *Table
	source   *holes
	window   fyne.Window
	modifier fyne.KeyModifier
	inside   bool
	drawings int // how often the table asked to be drawn

	selected, activated, hovered, sorted, pointed []int // what was told
}

// newHand returns a hand over a table of n rows in a light window.
func newHand(t testing.TB, n int, width, height float32) *hand {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	h := &hand{t: t, source: combinations(n), table: New(columns, 1)}
	h.window = test.NewTempWindow(t, h.table)
	h.window.SetPadded(false)
	h.window.Resize(fyne.NewSize(width, height))
	h.table.SetSource(h.source)
	h.table.held = func() fyne.KeyModifier { return h.modifier }
	refresh := h.table.redraw
	h.table.redraw = func() {
		h.drawings++
		refresh()
	}
	hear := func(log *[]int) func(int) { return func(n int) { *log = append(*log, n) } }
	h.table.OnSelected, h.table.OnActivated, h.table.OnHovered = hear(&h.selected), hear(&h.activated), hear(&h.hovered)
	h.table.OnSort, h.table.OnPointed = hear(&h.sorted), hear(&h.pointed)
	h.picture()
	return h
}

// pictureAt draws the table at a scale of the screen, and returns a copy.
func (h *hand) pictureAt(scale float32) *image.RGBA {
	size := h.table.Size()
	img := h.table.sheet.Draw(int(size.Width*scale), int(size.Height*scale)).(*image.RGBA)
	return &image.RGBA{Pix: append([]byte(nil), img.Pix...), Stride: img.Stride, Rect: img.Rect}
}

func (h *hand) picture() *image.RGBA { return h.pictureAt(1) }

// mouse is a mouse event at a place.
func (h *hand) mouse(x, y float32, button desktop.MouseButton) *desktop.MouseEvent {
	e := &desktop.MouseEvent{Button: button, Modifier: h.modifier}
	e.Position = fyne.NewPos(x, y)
	return e
}

// move brings the pointer to a place with no button down.
func (h *hand) move(x, y float32) {
	if h.inside {
		h.table.MouseMoved(h.mouse(x, y, 0))
	} else {
		h.table.MouseIn(h.mouse(x, y, 0))
	}
	h.inside = true
}

// leave takes the pointer away.
func (h *hand) leave() {
	h.table.MouseOut()
	h.inside = false
}

// click presses and releases the button at a place. The toolkit would tell a
// widget that knows no single taps nothing else.
func (h *hand) click(x, y float32) {
	h.move(x, y)
	h.table.MouseDown(h.mouse(x, y, desktop.MouseButtonPrimary))
	h.table.MouseUp(h.mouse(x, y, desktop.MouseButtonPrimary))
}

// double clicks twice.
func (h *hand) double(x, y float32) {
	h.click(x, y)
	h.click(x, y)
	h.table.DoubleTapped(&fyne.PointEvent{Position: fyne.NewPos(x, y)})
}

// drag presses the button at a place and moves it to another in several steps.
// The toolkit tells of the button first, then of the end of the drag.
func (h *hand) drag(fromX, fromY, toX, toY float32) {
	h.move(fromX, fromY)
	h.table.MouseDown(h.mouse(fromX, fromY, desktop.MouseButtonPrimary))
	const steps = 5
	dx, dy := (toX-fromX)/steps, (toY-fromY)/steps
	for i := range steps {
		at := fyne.NewPos(fromX+float32(i+1)*dx, fromY+float32(i+1)*dy)
		h.table.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at}, Dragged: fyne.NewDelta(dx, dy)})
	}
	h.table.MouseUp(h.mouse(toX, toY, desktop.MouseButtonPrimary))
	h.table.DragEnd()
}

// wheel turns the wheel by a distance.
func (h *hand) wheel(dx, dy float32) {
	h.table.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(dx, dy)})
}

// keys presses keys where the focus is.
func (h *hand) keys(names ...fyne.KeyName) {
	h.t.Helper()
	for _, name := range names {
		f := h.window.Canvas().Focused()
		if f == nil {
			h.t.Fatal("nothing has the focus")
		}
		f.TypedKey(&fyne.KeyEvent{Name: name})
	}
}

// rowY returns the middle of a row as it is scrolled.
func (h *hand) rowY(row int) float32 {
	f := h.table.frame()
	return f.heading + float32((float64(row)+0.5)*float64(f.pitch)-h.table.view.y)
}

// columnX returns the middle of a column as it is scrolled.
func (h *hand) columnX(column int) float32 {
	f := h.table.frame()
	left, width := f.column(column, float32(h.table.view.x))
	return left + width/2
}

// wantLog compares what was told, and forgets it.
func (h *hand) wantLog(what string, log *[]int, want ...int) {
	h.t.Helper()
	if fmt.Sprint(*log) != fmt.Sprint(want) {
		h.t.Errorf("%s: told %v, want %v", what, *log, want)
	}
	*log = nil
}

// count returns how many pixels of a part of a picture have just a color.
func count(img *image.RGBA, part image.Rectangle, c color.Color) int {
	want := color.RGBAModel.Convert(c).(color.RGBA)
	n := 0
	part = part.Intersect(img.Rect)
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if img.RGBAAt(x, y) == want {
				n++
			}
		}
	}
	return n
}
