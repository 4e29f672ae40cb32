package controls

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// NewMiddle puts the toolbar over the side view and what moves the car below.
func NewMiddle(bar *Toolbar, view, below fyne.CanvasObject) *fyne.Container {
	m := container.New(&middleLayout{bar, view, below}, bar.setup, bar.load, bar.view, bar.moving, bar.fits, view, below)
	bar.turned = m.Refresh
	return m
}

// middleLayout has the toolbar wrap into as many rows as its width asks for.
type middleLayout struct {
	bar         *Toolbar
	view, below fyne.CanvasObject
}

// Widths of the box of setups: names that are longer are cut.
const (
	leastSetup    = 92
	greatestSetup = 200
)

// widths returns how wide the parts of the bar are at least.
func (b *Toolbar) widths() [5]float32 {
	return [5]float32{leastSetup, b.load.MinSize().Width, b.view.MinSize().Width, b.moving.MinSize().Width, b.fits.MinSize().Width}
}

// arrange puts the parts of the bar in rows of a width, the fits at the right
// and the box of setups as wide as there is room, and returns the rows' height.
func (b *Toolbar) arrange(width float32, put func(o fyne.CanvasObject, at fyne.Position, size fyne.Size)) float32 {
	parts, widths := [5]fyne.CanvasObject{b.setup, b.load, b.view, b.moving, b.fits}, b.widths()
	height, pad := b.load.MinSize().Height, theme.Padding()
	y, first := float32(0), 0
	if whole := widths[0] + widths[1] + widths[2] + widths[3] + widths[4] + 4*pad; whole > width {
		// The setup is chosen among the inputs too.
		first = 1
		put(parts[0], fyne.Position{}, fyne.Size{})
	}
	for first < len(parts) {
		used, next := widths[first], first+1
		for next < len(parts) && used+pad+widths[next] <= width {
			used += pad + widths[next]
			next++
		}
		x := float32(0)
		for i := first; i < next; i++ {
			w := widths[i]
			if i == 0 {
				w = min(greatestSetup, w+max(0, width-used))
			}
			if i == len(parts)-1 {
				x = max(0, width-w)
			}
			put(parts[i], fyne.NewPos(x, y), fyne.NewSize(w, height))
			x += w + pad
		}
		y += height + pad
		first = next
	}
	return y - pad
}

// MinSize implements fyne.Layout.
func (l *middleLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	view, below := l.view.MinSize(), l.below.MinSize()
	width := max(view.Width, below.Width)
	for _, w := range l.bar.widths() {
		width = max(width, w)
	}
	bar := l.bar.arrange(width, func(fyne.CanvasObject, fyne.Position, fyne.Size) {})
	return fyne.NewSize(width, bar+view.Height+below.Height+2*theme.Padding())
}

// Layout implements fyne.Layout.
func (l *middleLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	top := theme.Padding() + l.bar.arrange(size.Width, func(o fyne.CanvasObject, at fyne.Position, s fyne.Size) {
		o.Move(at)
		o.Resize(s)
	})
	bottom := l.below.MinSize().Height
	l.below.Move(fyne.NewPos(0, size.Height-bottom))
	l.below.Resize(fyne.NewSize(size.Width, bottom))
	l.view.Move(fyne.NewPos(0, top))
	l.view.Resize(fyne.NewSize(size.Width, max(0, size.Height-bottom-theme.Padding()-top)))
}
