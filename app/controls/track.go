package controls

import (
	"image/color"
	"math"
	"strings"

	"bowline/app/look"
	"bowline/app/sheet"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"gonum.org/v1/plot/font"
)

// track is the line of time itself, as one picture: what has been played, the marker,
// the marks with their captions, and at the right time and distance.
type track struct {
	widget.BaseWidget
	bar   *TimeBar
	study *study.Study
	sheet *sheet.Sheet

	of      *launch.Result // that the marks are of
	marks   []mark
	hot     int // the mark under the pointer, −1 for none
	focused bool
}

// Measures of the track [px].
const (
	trackHeight = 40
	trackLine   = 27 // from the top to the line
	lineBreadth = 4
	knob        = 6.5 // radius of the marker
	markRise    = 11  // of a mark above the line, up to its caption
	markFall    = 5   // below it
	bandBreadth = 3
	bandRise    = 6
	usualMargin = 10
	captionBase = 10 // baseline of captions
	readoutBase = 12
	leaderLine  = 15 // from the top to the line from a caption to its mark
	leaderEnd   = 12 // how far that line runs below its caption
	readoutEdge = 5  // at the right of the readout
	leastPart   = 3  // of the track that the time line takes at least
	markReach   = 4  // how near a pointer is at a mark
)

func newTrack(b *TimeBar) *track {
	t := &track{bar: b, study: b.study, hot: -1}
	t.sheet = sheet.New(t.paint)
	t.ExtendBaseWidget(t)
	return t
}

// CreateRenderer implements fyne.Widget.
func (t *track) CreateRenderer() fyne.WidgetRenderer { return t.sheet.Renderer() }

// MinSize implements fyne.CanvasObject.
func (t *track) MinSize() fyne.Size { return fyne.NewSize(240, trackHeight) }

// Resize implements fyne.CanvasObject.
func (t *track) Resize(size fyne.Size) {
	t.BaseWidget.Resize(size)
	t.sheet.Refresh()
}

// update takes up the launch and the time.
func (t *track) update() {
	if r := t.study.Launch(); r != t.of {
		t.of, t.marks, t.hot = r, nil, -1
		if r != nil {
			t.marks = marksOf(r)
		}
	}
	t.sheet.Refresh()
}

// axis says what time is where along the track. Finding the chart's place takes a
// while: it is made once for a picture.
type axis struct {
	from, to float64 // where the launch starts and ends [px]
	end      float64 // when it ends [s]
}

// axis returns that of the chart over time, if it is on show and the track has room for
// that, or else a usual one.
func (t *track) axis() axis {
	width := float64(t.Size().Width)
	a := axis{usualMargin, width - usualMargin, max(t.study.LaunchEnd(), 1e-3)}
	if t.bar.Axis == nil {
		return a
	}
	left, right, ok := t.bar.Axis()
	corner := float64(fyne.CurrentApp().Driver().AbsolutePositionForObject(t).X)
	if from, to := left-corner, right-corner; ok && from >= knob && to <= width-knob && to-from > width/leastPart {
		a.from, a.to = from, to
	}
	return a
}

// place returns where a time is.
func (a axis) place(t float64) float64 { return a.from + t/a.end*(a.to-a.from) }

// time returns the time at a place, within the launch.
func (a axis) time(x float64) float64 {
	return min(max((x-a.from)/(a.to-a.from), 0), 1) * a.end
}

// current returns the index of the mark at the time looked at, −1 for none and while
// time runs, in which captions stay as they are.
func (t *track) current() int {
	if t.of == nil || t.bar.player.Playing() {
		return -1
	}
	return nearest(t.marks, func(at float64) float64 { return at }, t.study.Time(), t.of.Options.Output/2)
}

// named returns the mark whose caption is written before all others.
func (t *track) named() int {
	if t.hot >= 0 {
		return t.hot
	}
	return t.current()
}

// readout returns time and distance; nothing before the first launch.
func (t *track) readout() (time, distance string) {
	u := t.study.Units()
	i, ok := t.study.Instant()
	if !ok {
		return "", ""
	}
	return u.Format(units.Time, t.study.Time()), words.Come(t.study.Launch().Distance[i], u)
}

// rooms returns how much room time and distance have [px]: always the same, so that
// they keep still while they run.
func rooms(f font.Face) (time, distance float32) {
	return float32(f.Width("0.000 s")), float32(max(f.Width("00.0 ft"), f.Width("00.00 m")))
}

// readoutRoom returns how wide the readout is, with the room around it [px].
func (t *track) readoutRoom() float32 {
	time, distance := rooms(big())
	return time + distance + readoutEdge + 2*captionGap
}

// String returns time, distance and the captions written.
func (t *track) String() string {
	time, distance := t.readout()
	said := []string{time + ", " + distance}
	for _, c := range t.captions(t.axis()) {
		said = append(said, t.marks[c.mark].caption)
	}
	return strings.Join(said, "\n")
}

// captions places the captions at the left of the buttons over the line.
func (t *track) captions(a axis) []caption {
	f := small()
	to := t.Size().Width - t.readoutRoom() - loopWidth - speedWidth - captionGap
	return placeCaptions(t.marks, t.named(), a.place, func(s string) float64 { return float64(f.Width(s)) }, 0, float64(to))
}

// big is the font of time and distance.
func big() font.Face { return sheet.Face(fyne.TextStyle{}, theme.TextSize()) }

// small is the font of captions.
func small() font.Face { return sheet.Face(fyne.TextStyle{}, theme.CaptionTextSize()) }

// paint draws the track.
func (t *track) paint(pen *sheet.Pen) {
	p, width := look.Current(), t.Size().Width
	a := t.axis()
	left, right, now := float32(a.from), float32(a.to), float32(a.place(t.study.Time()))
	if time, distance := t.readout(); time != "" {
		f, end := big(), width-readoutEdge
		_, room := rooms(f)
		pen.Words(end-pen.Width(distance, f), readoutBase, distance, f, p.Ink)
		pen.Words(end-room-captionGap-pen.Width(time, f), readoutBase, time, f, p.Ink)
	} else if t.study.Launch() == nil {
		pen.Words(left, captionBase, "computing…", small(), p.Muted)
	}

	top := float32(trackLine - lineBreadth/2)
	pen.Box(left, top, right-left, lineBreadth, p.Hole)
	pen.Box(left, top, max(now-left, 0), lineBreadth, p.Accent)
	for i := range t.marks {
		t.paintMark(pen, p, a, i)
	}
	for _, c := range t.captions(a) {
		ink := p.Muted
		if c.mark == t.named() {
			ink = p.Ink
		}
		t.paintLeader(pen, p, a, c)
		pen.Words(float32(c.from), captionBase, t.marks[c.mark].caption, small(), ink)
	}
	disk(pen, now, trackLine, knob+1.5, p.Background)
	disk(pen, now, trackLine, knob, p.Ink)
	if t.focused {
		pen.Frame(0, 0, width, t.Size().Height, 1, p.Accent)
	}
}

// paintMark draws a mark, and the band of one that lasts.
func (t *track) paintMark(pen *sheet.Pen, p *palette.Palette, a axis, i int) {
	m := &t.marks[i]
	x, ink := float32(a.place(m.at)), color.Color(m.ink(p))
	if m.band {
		pen.Box(x, trackLine-bandRise, max(float32(a.place(m.to))-x, 2), bandBreadth, ink)
	}
	rise, breadth := float32(markRise), 2*pen.Hairline()
	if i == t.named() {
		breadth *= 2
	}
	pen.Box(pen.Snap(x-breadth/2), trackLine-rise, breadth, rise+markFall, ink)
}

// paintLeader draws a line to its mark from a caption that is off it.
func (t *track) paintLeader(pen *sheet.Pen, p *palette.Palette, a axis, c caption) {
	m := &t.marks[c.mark]
	start, end := extent(m, a.place)
	at, under := end, c.from+leaderEnd
	switch {
	case start > c.to:
		at, under = start, c.to-leaderEnd
	case end >= c.from:
		return
	}
	thin, foot := pen.Hairline(), float32(trackLine-bandRise)
	pen.Box(float32(min(at, under)), leaderLine, float32(math.Abs(at-under)), thin, m.ink(p))
	pen.Box(pen.Snap(float32(at)-thin/2), leaderLine, thin, foot-leaderLine, m.ink(p))
}

// disk fills a circle.
func disk(pen *sheet.Pen, x, y, radius float32, c color.Color) {
	const corners = 32
	var ring [corners]fyne.Position
	for i := range ring {
		s, c := math.Sincos(2 * math.Pi * float64(i) / corners)
		ring[i] = fyne.NewPos(x+radius*float32(c), y+radius*float32(s))
	}
	pen.Shape(c, ring[:]...)
}

// at returns the mark at a position, by its caption or by its stroke; −1 for none.
func (t *track) at(p fyne.Position) int {
	x, a := float64(p.X), t.axis()
	if p.Y < trackLine-markRise {
		for _, c := range t.captions(a) {
			if x >= c.from && x <= c.to {
				return c.mark
			}
		}
	}
	return nearest(t.marks, a.place, x, markReach)
}

// MouseIn implements desktop.Hoverable.
func (t *track) MouseIn(e *desktop.MouseEvent) { t.point(t.at(e.Position)) }

// MouseMoved implements desktop.Hoverable: the mark under the pointer says its name.
func (t *track) MouseMoved(e *desktop.MouseEvent) { t.point(t.at(e.Position)) }

// MouseOut implements desktop.Hoverable.
func (t *track) MouseOut() { t.point(-1) }

func (t *track) point(mark int) {
	if mark != t.hot {
		t.hot = mark
		t.sheet.Refresh()
	}
}

// Cursor implements desktop.Cursorable.
func (t *track) Cursor() desktop.Cursor {
	if t.hot >= 0 {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Tapped implements fyne.Tappable: it jumps to the mark or the time there.
func (t *track) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	to := t.axis().time(float64(e.Position.X))
	if i := t.at(e.Position); i >= 0 {
		to = t.marks[i].at
	}
	t.bar.jump(to)
}

// Dragged implements fyne.Draggable: the marker follows.
func (t *track) Dragged(e *fyne.DragEvent) { t.bar.jump(t.axis().time(float64(e.Position.X))) }

// DragEnd implements fyne.Draggable.
func (t *track) DragEnd() {}

// FocusGained implements fyne.Focusable.
func (t *track) FocusGained() { t.focus(true) }

// FocusLost implements fyne.Focusable.
func (t *track) FocusLost() { t.focus(false) }

func (t *track) focus(on bool) {
	t.focused = on
	t.sheet.Refresh()
}

// TypedKey implements fyne.Focusable.
func (t *track) TypedKey(e *fyne.KeyEvent) { t.bar.TypedKey(e) }

// TypedRune implements fyne.Focusable.
func (t *track) TypedRune(r rune) { t.bar.TypedRune(r) }
