package paneltest

import (
	"regexp"
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/listing"
	"bowline/app/look"
	"bowline/app/panel"
	"bowline/app/study"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
)

// PanelWidth is what a panel has at least: its tables ask for it [px].
const PanelWidth = 416

// FirstWidth is what a panel has in a window of the first size [px].
const FirstWidth = 430

// PageWidth is what a page has at least: a panel and the bar beside it [px].
const PageWidth = PanelWidth + form.BarRoom

// Parts of a table's width, without the room that one text leaves before the
// next [px].
const (
	TextGap   = 4
	NameRoom  = PanelWidth*0.34 - TextGap
	ValueRoom = PanelWidth*0.66/2 - TextGap
	ShortRoom = PanelWidth*0.2 - TextGap // of names before more than two columns
)

// WantRoom sees to it that a text is no wider than its room.
func WantRoom(t testing.TB, what, text string, bold bool, room float32) {
	t.Helper()
	if w := fyne.MeasureText(text, theme.TextSize(), fyne.TextStyle{Bold: bold}).Width; w > room {
		t.Errorf("%s: %q is %.1f wide and has %.1f", what, text, w, room)
	}
}

// DigitRoom is the room of a list's column for so many digits.
func DigitRoom(digits int) float32 {
	return float32(digits) * fyne.MeasureText("0", look.New(look.Light).Size("text"), fyne.TextStyle{}).Width
}

// Cells writes a row of a list.
func Cells(s listing.Source, row, columns int) string {
	var list []string
	for i := range columns {
		text, _ := s.Cell(row, i)
		list = append(list, text)
	}
	return strings.Join(list, " | ")
}

// hyphened is a number with a keyboard's hyphen before it. Thread sizes and dates
// have theirs behind a figure.
var hyphened = regexp.MustCompile(`(^|[^\pL\d/])-[.\d]`)

// Lettering returns a check that every letter of a text is in the window's font,
// and that its minus signs are true ones, and how many letters it has looked at.
// One that is not in the font shows as an empty box.
func Lettering(t testing.TB) (check func(text string), letters *int) {
	t.Helper()
	font, err := opentype.Parse(look.New(look.Light).Font(fyne.TextStyle{}).Content())
	if err != nil {
		t.Fatal(err)
	}
	var buffer sfnt.Buffer
	letters = new(int)
	return func(text string) {
		if hyphened.MatchString(text) {
			t.Errorf("%q has a hyphen for a minus", text)
		}
		for _, r := range text {
			*letters++
			if r == '\n' {
				continue
			}
			if glyph, err := font.GlyphIndex(&buffer, r); err != nil || glyph == 0 {
				t.Errorf("%q in %q is not in the font", r, text)
			}
		}
	}, letters
}

// part is a part of a panel, as a panel of its own.
type part struct {
	panel.Face
	refresh func()
}

// Part has a part of a panel stand alone.
func Part(object fyne.CanvasObject, refresh func(), wants study.Wants) panel.Panel {
	return &part{panel.Face{Name: "Part", Said: object, Shown: form.Stacked(), Computed: wants}, refresh}
}

// Refresh implements panel.Panel.
func (p *part) Refresh() { p.refresh() }
