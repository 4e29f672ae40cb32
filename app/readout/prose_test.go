package readout

import (
	"image"
	"strings"
	"testing"

	"bowline/app/look"
	"bowline/app/sheet"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

const sentence = "Lower bars reach 91 % of what they may carry, in push at 4.00 in of droop in the hit case."

func prose(t *testing.T, width float32) *Prose {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	p := NewProse(sentence, theme.SizeNameText, theme.ColorNameForeground, fyne.TextStyle{})
	p.Resize(fyne.NewSize(width, 200))
	return p
}

// No line is wider than the widget, none has room for the next word, and no
// word is lost.
func TestProseBreaksWhereItMust(t *testing.T) {
	p := prose(t, 230)
	p.wrap()
	if len(p.rows) < 3 || strings.Join(p.rows, " ") != sentence {
		t.Fatalf("rows %q", p.rows)
	}
	f := sheet.Face(p.style, theme.TextSize())
	for i, row := range p.rows {
		if w := float32(f.Width(row)); w > 230 {
			t.Errorf("row %q is %v wide", row, w)
		}
		if i > 0 {
			word, _, _ := strings.Cut(row, " ")
			if w := float32(f.Width(p.rows[i-1] + " " + word)); w <= 230-2*theme.Padding() {
				t.Errorf("%q had room behind %q", word, p.rows[i-1])
			}
		}
	}
}

func TestProseIsAsHighAsItsRows(t *testing.T) {
	p := prose(t, 230)
	tall := p.MinSize().Height
	p.Resize(fyne.NewSize(900, 200))
	if low := p.MinSize().Height; !(low < tall && low > theme.TextSize()) {
		t.Errorf("height %v in one row, %v in several", low, tall)
	}
	p.Set("")
	if p.MinSize() != (fyne.Size{}) {
		t.Errorf("without text the size is %v", p.MinSize())
	}
	p.Set("one\ntwo")
	if p.wrap(); len(p.rows) != 2 {
		t.Errorf("two paragraphs make rows %q", p.rows)
	}
}

// Room is kept for rows that are not there, though not for no text.
func TestProseKeepsRoom(t *testing.T) {
	p := prose(t, 230)
	p.Set("Two words")
	one := p.MinSize().Height
	p.KeepRows(3)
	three := p.MinSize().Height
	if want := one + 2*theme.TextSize()*proseRow; three < want-0.01 || three > want+0.01 {
		t.Errorf("one row is %v high, three are %v, want %v", one, three, want)
	}
	p.Set(sentence + " " + sentence)
	if p.MinSize().Height <= three {
		t.Error("more rows get no more room")
	}
	p.Set("")
	if p.MinSize().Height != 0 {
		t.Error("no text takes room")
	}
}

func TestProseIsDrawn(t *testing.T) {
	p := prose(t, 230)
	img := p.sheet.Draw(230, 120).(*image.RGBA)
	first, last := image.Rect(0, 0, 230, 20), image.Rect(0, 100, 230, 120)
	if count(img, first, palette.Light.Ink) == 0 || count(img, last, palette.Light.Ink) != 0 {
		t.Error("the words are not where they belong")
	}
	if p.Set(sentence) {
		t.Error("the same text counts as changed")
	}
}
