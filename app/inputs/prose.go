package inputs

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// prose is small text that wraps to the width it is given.
type prose struct {
	widget.BaseWidget
	text  string
	color fyne.ThemeColorName
}

func newProse(text string, color fyne.ThemeColorName) *prose {
	p := &prose{text: text, color: color}
	p.ExtendBaseWidget(p)
	return p
}

// set changes the text and tells whether it differs from before.
func (p *prose) set(text string) bool {
	if text == p.text {
		return false
	}
	p.text = text
	p.Refresh()
	return true
}

func (p *prose) CreateRenderer() fyne.WidgetRenderer {
	return &proseRenderer{prose: p}
}

// firstWidth is what text is wrapped to before it has been given a width.
const firstWidth = 260

type proseRenderer struct {
	prose *prose
	text  string
	width float32
	size  float32
	lines []*canvas.Text
}

func (r *proseRenderer) Destroy() {}

func (r *proseRenderer) Objects() []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, len(r.lines))
	for i, line := range r.lines {
		objects[i] = line
	}
	return objects
}

func (r *proseRenderer) Layout(fyne.Size) {
	r.wrap()
	for i, line := range r.lines {
		height := line.MinSize().Height
		line.Move(fyne.NewPos(0, float32(i)*height))
		line.Resize(fyne.NewSize(r.width, height))
	}
}

func (r *proseRenderer) MinSize() fyne.Size {
	r.wrap()
	if len(r.lines) == 0 {
		return fyne.Size{}
	}
	return fyne.NewSize(0, float32(len(r.lines))*r.lines[0].MinSize().Height)
}

func (r *proseRenderer) Refresh() {
	r.Layout(r.prose.Size())
	color := r.prose.Theme().Color(r.prose.color, fyne.CurrentApp().Settings().ThemeVariant())
	for _, line := range r.lines {
		line.Color = color
		line.Refresh()
	}
}

// wrap breaks the text into lines, if it or its width has changed.
func (r *proseRenderer) wrap() {
	width, size := r.prose.Size().Width, r.prose.Theme().Size(theme.SizeNameCaptionText)
	if width == 0 {
		width = firstWidth
	}
	if r.text == r.prose.text && r.width == width && r.size == size {
		return
	}
	r.text, r.width, r.size = r.prose.text, width, size
	color := r.prose.Theme().Color(r.prose.color, fyne.CurrentApp().Settings().ThemeVariant())
	r.lines = nil
	for _, line := range wrapped(r.text, width, size) {
		text := canvas.NewText(line, color)
		text.TextSize = size
		r.lines = append(r.lines, text)
	}
}

// wrapped breaks text at spaces so that no line is wider than width, unless a
// single word is.
func wrapped(text string, width, size float32) []string {
	if text == "" {
		return nil
	}
	var lines []string
	for paragraph := range strings.SplitSeq(text, "\n") {
		line := ""
		for word := range strings.FieldsSeq(paragraph) {
			longer := strings.TrimSpace(line + " " + word)
			if line != "" && fyne.MeasureText(longer, size, fyne.TextStyle{}).Width > width {
				lines = append(lines, line)
				longer = word
			}
			line = longer
		}
		lines = append(lines, line)
	}
	return lines
}
