package readout

import (
	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Prose is text that wraps at words to the width it is given.
type Prose struct {
	widget.BaseWidget
	text  string
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	style fyne.TextStyle
	least int // rows that room is kept for
	sheet *sheet.Sheet

	rows    []string
	wrapped wrapping // what rows were made for
}

// wrapping is what the breaks of lines depend on.
type wrapping struct {
	text        string
	width, size float32
}

const (
	// firstWidth is what text is wrapped to before it has been given a width.
	firstWidth = 260
	// proseRow is the distance of two lines over the text size.
	proseRow = 1.36
	// proseBaseline is where letters stand in a line, from its top.
	proseBaseline = 0.72
)

// NewProse returns text in a size, color and style of the theme. Without text
// the widget takes no room.
func NewProse(text string, size fyne.ThemeSizeName, color fyne.ThemeColorName, style fyne.TextStyle) *Prose {
	p := &Prose{text: text, size: size, color: color, style: style}
	p.sheet = sheet.New(p.paint)
	p.ExtendBaseWidget(p)
	return p
}

// Set changes the text and tells whether it differs from before.
func (p *Prose) Set(text string) bool {
	if text == p.text {
		return false
	}
	rows := len(p.rows)
	p.text = text
	if p.wrap(); len(p.rows) != rows {
		// The surroundings have to make room.
		p.Refresh()
	}
	p.sheet.Refresh()
	return true
}

// SetColor writes the text in another color of the theme.
func (p *Prose) SetColor(color fyne.ThemeColorName) {
	if color != p.color {
		p.color = color
		p.sheet.Refresh()
	}
}

// Color returns the theme's name of the text's color.
func (p *Prose) Color() fyne.ThemeColorName { return p.color }

// KeepRows keeps room for a number of rows while there is text, so that what
// stands below does not move with its length.
func (p *Prose) KeepRows(n int) { p.least = n }

// Text returns the text.
func (p *Prose) Text() string { return p.text }

// CreateRenderer implements fyne.Widget.
func (p *Prose) CreateRenderer() fyne.WidgetRenderer {
	return p.sheet.Renderer()
}

// MinSize is as high as the text wrapped to the present width.
func (p *Prose) MinSize() fyne.Size {
	p.wrap()
	if len(p.rows) == 0 {
		return fyne.Size{}
	}
	return fyne.NewSize(0, float32(max(len(p.rows), p.least))*theme.Size(p.size)*proseRow+2*theme.Padding())
}

// paint writes the rows.
func (p *Prose) paint(on *sheet.Pen) {
	p.wrap()
	size := theme.Size(p.size)
	f, color := sheet.Face(p.style, size), theme.Color(p.color)
	for i, row := range p.rows {
		on.Words(theme.Padding(), theme.Padding()+size*proseRow*(float32(i)+proseBaseline), row, f, color)
	}
}

// wrap breaks the text into rows, if it or its width has changed.
func (p *Prose) wrap() {
	now := wrapping{p.text, p.Size().Width, theme.Size(p.size)}
	if now.width == 0 {
		now.width = firstWidth
	}
	if now == p.wrapped {
		return
	}
	p.wrapped = now
	p.rows = sheet.Lines(p.text, sheet.Face(p.style, now.size), now.width-2*theme.Padding())
}
