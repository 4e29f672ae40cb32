package readout

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Prose is text that wraps at words to the width it is given. Unlike a label
// it measures each word once, so sentences can follow a drag.
type Prose struct {
	widget.BaseWidget
	text  string
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	style fyne.TextStyle
}

// NewProse returns text in a size, color and style of the theme.
func NewProse(text string, size fyne.ThemeSizeName, color fyne.ThemeColorName, style fyne.TextStyle) *Prose {
	p := &Prose{text: text, size: size, color: color, style: style}
	p.ExtendBaseWidget(p)
	return p
}

// Set changes the text and tells whether it differs from before. Without text
// the widget takes no room.
func (p *Prose) Set(text string) bool {
	if text == p.text {
		return false
	}
	p.text = text
	p.Refresh()
	return true
}

// Text returns the text.
func (p *Prose) Text() string { return p.text }

// CreateRenderer implements fyne.Widget.
func (p *Prose) CreateRenderer() fyne.WidgetRenderer {
	return &proseRenderer{prose: p, words: map[string]float32{}}
}

const (
	// firstWidth is what text is wrapped to before it has been given a width.
	firstWidth = 260
	// proseMargin is free at both sides, in paddings.
	proseMargin = 1
	// proseRow is the distance of two lines over the text size.
	proseRow = 1.36
	// mostWords bounds the memory for word widths.
	mostWords = 4000
)

type proseRenderer struct {
	prose *Prose
	text  string
	width float32
	size  float32
	rows  []*canvas.Text
	words map[string]float32 // widths at size
}

func (r *proseRenderer) Destroy() {}

func (r *proseRenderer) Objects() []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, len(r.rows))
	for i, row := range r.rows {
		objects[i] = row
	}
	return objects
}

// MinSize is as high as the text wrapped to the present width.
func (r *proseRenderer) MinSize() fyne.Size {
	r.wrap()
	if len(r.rows) == 0 {
		return fyne.Size{}
	}
	return fyne.NewSize(0, float32(len(r.rows))*r.size*proseRow+2*theme.Padding())
}

// Layout wraps to a new width.
func (r *proseRenderer) Layout(fyne.Size) { r.wrap() }

// Refresh takes up text and theme.
func (r *proseRenderer) Refresh() {
	r.wrap()
	color := theme.Color(r.prose.color)
	for _, row := range r.rows {
		if row.Color != color {
			row.Color = color
			row.Refresh()
		}
	}
}

// wrap breaks the text into rows, if it or its width has changed. Rows that
// stay the same are not drawn anew.
func (r *proseRenderer) wrap() {
	width, size := r.prose.Size().Width, theme.Size(r.prose.size)
	if width == 0 {
		width = firstWidth
	}
	if r.text == r.prose.text && r.width == width && r.size == size {
		return
	}
	if r.size != size || len(r.words) > mostWords {
		clear(r.words)
	}
	r.text, r.width, r.size = r.prose.text, width, size
	lines := r.lines(width - 2*proseMargin*theme.Padding())
	for len(r.rows) < len(lines) {
		text := canvas.NewText("", theme.Color(r.prose.color))
		text.TextStyle = r.prose.style
		r.rows = append(r.rows, text)
	}
	r.rows = r.rows[:len(lines)]
	for i, line := range lines {
		row := r.rows[i]
		row.Move(fyne.NewPos(proseMargin*theme.Padding(), theme.Padding()+float32(i)*size*proseRow))
		if row.Text != line || row.TextSize != size {
			row.Text, row.TextSize = line, size
			row.Resize(fyne.NewSize(width, size*proseRow))
			row.Refresh()
		}
	}
}

// lines breaks the text at spaces so that no line is wider than width, unless
// a single word is.
func (r *proseRenderer) lines(width float32) []string {
	if r.text == "" {
		return nil
	}
	var lines []string
	space := r.measure(" ")
	for paragraph := range strings.SplitSeq(r.text, "\n") {
		var line strings.Builder
		used := float32(0)
		for word := range strings.FieldsSeq(paragraph) {
			w := r.measure(word)
			if line.Len() > 0 && used+space+w > width {
				lines = append(lines, line.String())
				line.Reset()
				used = 0
			}
			if line.Len() > 0 {
				line.WriteByte(' ')
				used += space
			}
			line.WriteString(word)
			used += w
		}
		lines = append(lines, line.String())
	}
	return lines
}

// measure returns a word's width.
func (r *proseRenderer) measure(word string) float32 {
	w, ok := r.words[word]
	if !ok {
		w = fyne.MeasureText(word, r.size, r.prose.style).Width
		r.words[word] = w
	}
	return w
}
