package sheet

import (
	"strings"

	"fyne.io/fyne/v2"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// faceKey names a font of a theme at a size.
type faceKey struct {
	font string
	size float32
}

// faces are the fonts in use. They belong to the goroutine of the window.
var faces = map[faceKey]font.Face{}

// Face returns the theme's font of a style at a size [px]. A font that cannot
// be read is one without letters: the theme's own are built in and tested.
func Face(style fyne.TextStyle, size float32) font.Face {
	resource := fyne.CurrentApp().Settings().Theme().Font(style)
	key := faceKey{resource.Name(), size}
	f, ok := faces[key]
	if !ok {
		f.Font = font.Font{Size: vg.Length(size)}
		if parsed, err := opentype.Parse(resource.Content()); err == nil {
			f.Face = parsed
		}
		faces[key] = f
	}
	return f
}

// Lines breaks text at spaces so that no line is wider than width, unless a
// single word is.
func Lines(text string, f font.Face, width float32) []string {
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
