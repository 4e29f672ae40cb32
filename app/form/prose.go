package form

import (
	"bowline/app/sheet"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Prose is text that wraps at words to the width it is given, drawn on a sheet.
type Prose struct {
	widget.BaseWidget
	text  string
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	style fyne.TextStyle
	flush bool // without a margin
	least int  // rows that room is kept for
	most  bool // least grows with the rows at one width
	sheet *sheet.Sheet

	rows    []string
	wrapped wrapping // what rows were made for
}

// wrapping is what the line breaks depend on.
type wrapping struct {
	text        string
	width, size float32
}

const (
	// firstWidth is what text is wrapped to before it has been given a width.
	firstWidth = 260
	// proseRow is the line pitch over the text size.
	proseRow = 1.36
	// proseBaseline is where letters stand in a line, from its top.
	proseBaseline = 0.72
	// flushBaseline is that of flush text, as of the toolkit's labels beside it.
	flushBaseline = 0.785
)

// NewProse returns text in a size, color and style of the theme. Without text
// the widget takes no room.
func NewProse(text string, size fyne.ThemeSizeName, color fyne.ThemeColorName, style fyne.TextStyle) *Prose {
	p := &Prose{text: text, size: size, color: color, style: style}
	p.sheet = sheet.New(p.paint)
	p.ExtendBaseWidget(p)
	return p
}

// Words returns a place for sentences in the size of text.
func Words(color fyne.ThemeColorName) *Prose {
	return NewProse("", theme.SizeNameText, color, fyne.TextStyle{})
}

// Heading returns a bold line.
func Heading(text string) *Prose {
	return NewProse(text, theme.SizeNameText, theme.ColorNameForeground, fyne.TextStyle{Bold: true})
}

// Caption returns small text.
func Caption(text string, color fyne.ThemeColorName) *Prose {
	return NewProse(text, theme.SizeNameCaptionText, color, fyne.TextStyle{})
}

// Flush leaves out the margin around the text and the background behind it, and
// returns p.
func (p *Prose) Flush() *Prose {
	p.flush = true
	p.sheet.Bare()
	return p
}

// margin is the room around the text.
func (p *Prose) margin() float32 {
	if p.flush {
		return 0
	}
	return theme.Padding()
}

// Set changes the text and reports whether it differs from before.
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

// Tell is Set for prose that is there only while it has text.
func (p *Prose) Tell(text string) bool {
	p.Hidden = text == ""
	return p.Set(text)
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

// KeepRows keeps room for n rows while there is text, so that what stands below
// does not move with its length.
func (p *Prose) KeepRows(n int) { p.least = n }

// KeepMost keeps room for as many rows as the text has ever had at the present width,
// for text that changes as the pointer moves. It returns p.
func (p *Prose) KeepMost() *Prose {
	p.most = true
	return p
}

// Text returns the text.
func (p *Prose) Text() string { return p.text }

// CreateRenderer implements fyne.Widget.
func (p *Prose) CreateRenderer() fyne.WidgetRenderer { return p.sheet.Renderer() }

// MinSize is as high as the text wrapped to the present width.
func (p *Prose) MinSize() fyne.Size {
	p.wrap()
	if len(p.rows) == 0 {
		return fyne.Size{}
	}
	return fyne.NewSize(0, float32(max(len(p.rows), p.least))*theme.Size(p.size)*proseRow+2*p.margin())
}

// paint writes the rows.
func (p *Prose) paint(on *sheet.Pen) {
	p.wrap()
	size := theme.Size(p.size)
	f, color := sheet.Face(p.style, size), theme.Color(p.color)
	baseline := float32(proseBaseline)
	if p.flush {
		baseline = flushBaseline
	}
	for i, row := range p.rows {
		on.Words(p.margin(), p.margin()+size*proseRow*(float32(i)+baseline), row, f, color)
	}
}

// wrap breaks the text into rows if it or its width has changed.
func (p *Prose) wrap() {
	now := wrapping{p.text, p.Size().Width, theme.Size(p.size)}
	if now.width == 0 {
		now.width = firstWidth
	}
	if now == p.wrapped {
		return
	}
	if p.most && (now.width != p.wrapped.width || now.size != p.wrapped.size) {
		p.least = 0
	}
	p.wrapped = now
	p.rows = sheet.Lines(p.text, sheet.Face(p.style, now.size), now.width-2*p.margin())
	if p.most {
		p.least = max(p.least, len(p.rows))
	}
}
