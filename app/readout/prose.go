package readout

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"gonum.org/v1/plot/font"
)

// Prose is text that wraps at words to the width it is given.
type Prose struct {
	widget.BaseWidget
	text  string
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	style fyne.TextStyle
	sheet *sheet

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
	p.sheet = newSheet(p.Size, background, p.paint)
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
	p.sheet.raster.Refresh()
	return true
}

// Text returns the text.
func (p *Prose) Text() string { return p.text }

// CreateRenderer implements fyne.Widget.
func (p *Prose) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.sheet.raster) }

// MinSize is as high as the text wrapped to the present width.
func (p *Prose) MinSize() fyne.Size {
	p.wrap()
	if len(p.rows) == 0 {
		return fyne.Size{}
	}
	return fyne.NewSize(0, float32(len(p.rows))*theme.Size(p.size)*proseRow+2*theme.Padding())
}

// paint writes the rows.
func (p *Prose) paint(on *pen) {
	p.wrap()
	size := theme.Size(p.size)
	f, color := face(p.style, size), theme.Color(p.color)
	for i, row := range p.rows {
		on.words(theme.Padding(), theme.Padding()+size*proseRow*(float32(i)+proseBaseline), row, f, color)
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
	p.rows = lines(p.text, face(p.style, now.size), now.width-2*theme.Padding())
}

// lines breaks text at spaces so that no line is wider than width, unless a
// single word is.
func lines(text string, f font.Face, width float32) []string {
	if text == "" || f.Face == nil {
		return nil
	}
	measure := func(s string) float32 { return float32(f.Width(s)) }
	space := measure(" ")
	var rows []string
	for paragraph := range strings.SplitSeq(text, "\n") {
		var row strings.Builder
		used := float32(0)
		for word := range strings.FieldsSeq(paragraph) {
			w := measure(word)
			if row.Len() > 0 && used+space+w > width {
				rows = append(rows, row.String())
				row.Reset()
				used = 0
			}
			if row.Len() > 0 {
				row.WriteByte(' ')
				used += space
			}
			row.WriteString(word)
			used += w
		}
		rows = append(rows, row.String())
	}
	return rows
}
