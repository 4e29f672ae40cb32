package form

import (
	"slices"

	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Radio chooses one of a few that are all in sight, side by side, the chosen one filled.
// Only a person's choice is reported.
type Radio struct {
	widget.BaseWidget
	Options  []string
	Selected string
	current  func() string
	choose   func(option string)
	focused  bool
	sheet    *sheet.Sheet
}

// Room in a Radio [px].
const (
	radioPad  = 7 // beside the words of an option
	radioEdge = 2 // around it
)

// NewRadio returns a choice of one option.
func NewRadio(options []string, current func() string, choose func(option string)) *Radio {
	r := &Radio{Options: options, current: current, choose: choose}
	r.sheet = sheet.New(r.paint)
	r.ExtendBaseWidget(r)
	r.Update()
	return r
}

// Update shows the choice as it is now.
func (r *Radio) Update() {
	if current := r.current(); current != r.Selected {
		r.Selected = current
		r.sheet.Refresh()
	}
}

// SetSelected chooses an option as a person does.
func (r *Radio) SetSelected(option string) {
	if option == r.current() || !slices.Contains(r.Options, option) {
		return
	}
	r.choose(option)
	r.Update()
}

// CreateRenderer implements fyne.Widget.
func (r *Radio) CreateRenderer() fyne.WidgetRenderer { return r.sheet.Renderer() }

// widths returns how wide each option is.
func (r *Radio) widths() []float32 {
	f := sheet.Face(fyne.TextStyle{}, theme.TextSize())
	list := make([]float32, len(r.Options))
	for i, option := range r.Options {
		list[i] = float32(f.Width(option)) + 2*radioPad
	}
	return list
}

// MinSize implements fyne.CanvasObject.
func (r *Radio) MinSize() fyne.Size {
	width := float32(2 * radioEdge)
	for _, w := range r.widths() {
		width += w
	}
	return fyne.NewSize(width, widget.NewLabel("").MinSize().Height)
}

// paint draws the options.
func (r *Radio) paint(on *sheet.Pen) {
	size := r.Size()
	f := sheet.Face(fyne.TextStyle{}, theme.TextSize())
	on.Box(0, 0, size.Width, size.Height, theme.Color(theme.ColorNameButton))
	x := float32(radioEdge)
	for i, w := range r.widths() {
		color := theme.Color(theme.ColorNameForeground)
		if r.Options[i] == r.Selected {
			on.Box(x, radioEdge, w, size.Height-2*radioEdge, theme.Color(theme.ColorNamePrimary))
			color = theme.Color(theme.ColorNameForegroundOnPrimary)
		}
		on.Words(x+radioPad, size.Height/2+0.36*theme.TextSize(), r.Options[i], f, color)
		x += w
	}
	if r.focused {
		on.Frame(0, 0, size.Width, size.Height, 1.5, theme.Color(theme.ColorNamePrimary))
	}
}

// Tapped implements fyne.Tappable.
func (r *Radio) Tapped(e *fyne.PointEvent) {
	x := float32(radioEdge)
	for i, w := range r.widths() {
		if e.Position.X >= x && e.Position.X < x+w {
			r.SetSelected(r.Options[i])
			return
		}
		x += w
	}
}

// FocusGained implements fyne.Focusable.
func (r *Radio) FocusGained() { r.focus(true) }

// FocusLost implements fyne.Focusable.
func (r *Radio) FocusLost() { r.focus(false) }

func (r *Radio) focus(on bool) {
	r.focused = on
	r.sheet.Refresh()
}

// TypedRune implements fyne.Focusable.
func (r *Radio) TypedRune(rune) {}

// TypedKey implements fyne.Focusable: arrows choose the next option.
func (r *Radio) TypedKey(e *fyne.KeyEvent) {
	at := slices.Index(r.Options, r.Selected)
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyUp:
		at--
	case fyne.KeyRight, fyne.KeyDown:
		at++
	default:
		return
	}
	if at >= 0 && at < len(r.Options) {
		r.SetSelected(r.Options[at])
	}
}
