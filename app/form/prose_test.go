package form_test

import (
	"image"
	"image/color"
	"testing"

	"bowline/app/form"
	"bowline/app/internal/screen"
	"bowline/app/look"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

const sentence = "Lower bars reach 91 % of what they may carry, in push at 4.00 in droop in the hit case."

func prose(t *testing.T, width float32) *form.Prose {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	p := form.Words(theme.ColorNameForeground)
	test.NewTempWindow(t, p)
	p.Set(sentence)
	p.Resize(fyne.NewSize(width, 200))
	return p
}

func TestProseIsAsHighAsItsRows(t *testing.T) {
	p := prose(t, 230)
	tall := p.MinSize().Height
	p.Resize(fyne.NewSize(900, 200))
	low := p.MinSize().Height
	if !(low < tall && low > theme.TextSize()) {
		t.Errorf("height %v in one row, %v in several", low, tall)
	}
	p.Set("")
	if p.MinSize() != (fyne.Size{}) {
		t.Errorf("without text the size is %v", p.MinSize())
	}
	p.Set("one")
	one := p.MinSize().Height
	p.Set("one\ntwo")
	if two := p.MinSize().Height; one != low || two <= one {
		t.Errorf("one paragraph is %v high, two are %v", one, two)
	}
	// Without its margin it is lower by that.
	if flush := form.Words(theme.ColorNameForeground).Flush(); flush.Set("one") && flush.MinSize().Height != one-2*theme.Padding() {
		t.Errorf("flush it is %v high, with a margin %v", flush.MinSize().Height, one)
	}
}

// Room is kept for rows that are not there, though not for no text.
func TestProseKeepsRoom(t *testing.T) {
	p := prose(t, 230)
	p.Set("one\ntwo\nthree")
	three := p.MinSize().Height
	p.Set("Two words")
	p.KeepRows(3)
	if got := p.MinSize().Height; got != three {
		t.Errorf("three rows are %v high, one that has room for three %v", three, got)
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

// Text that comes and goes keeps the room that it has had, until its width changes.
func TestProseKeepsTheMostRoom(t *testing.T) {
	p := prose(t, 230)
	p.KeepMost()
	p.Set("one\ntwo\nthree")
	three := p.MinSize().Height
	p.Set("one")
	if got := p.MinSize().Height; got != three {
		t.Errorf("%v high, having had room for three rows, %v", got, three)
	}
	p.Set("one\ntwo\nthree\nfour")
	if p.MinSize().Height <= three {
		t.Error("more rows get no more room")
	}
	p.Resize(fyne.NewSize(900, 200))
	p.Set("one")
	if got := p.MinSize().Height; got >= three {
		t.Errorf("%v high in one row at another width", got)
	}
}

func TestProseIsThereOnlyWithText(t *testing.T) {
	p := prose(t, 230)
	if p.Tell(sentence) || !p.Visible() {
		t.Error("the same text counts as changed, or is hidden")
	}
	if !p.Tell("") || p.Visible() {
		t.Error("no text does not count as changed, or can be seen")
	}
	if !p.Tell(sentence) || !p.Visible() || p.Text() != sentence {
		t.Errorf("told %q, it can be seen: %v", p.Text(), p.Visible())
	}
}

// The same words are not drawn anew.
func TestProseLeavesWhatIsTheSame(t *testing.T) {
	p := prose(t, 230)
	if n := screen.Redraws(func() { p.Set(sentence); p.Tell(sentence); p.SetColor(theme.ColorNameForeground) }); n != 0 {
		t.Errorf("the same words in the same color are drawn anew %d times", n)
	}
	for what, change := range map[string]func(){"other words": func() { p.Set("Upper bars.") }, "another color": func() { p.SetColor(theme.ColorNameError) }} {
		if screen.Redraws(change) == 0 {
			t.Errorf("%s are not drawn", what)
		}
	}
}

func TestProseIsDrawn(t *testing.T) {
	p := prose(t, 230)
	img := screen.Draw(p, 230, 120)
	first, last := image.Rect(0, 0, 230, 20), image.Rect(0, 100, 230, 120)
	if screen.Inked(img, first, palette.Light.Ink) == 0 || screen.Inked(img, last, palette.Light.Ink) != 0 {
		t.Error("the words are not where they belong")
	}
	flush := form.Words(theme.ColorNameForeground).Flush()
	flush.Set(sentence)
	flush.Resize(p.Size())
	if img := screen.Draw(flush, 230, 120); screen.Inked(img, first, palette.Light.Ink) == 0 || screen.Inked(img, last, color.RGBA{}) != last.Dx()*last.Dy() {
		t.Error("flush words are not written, or hide what is behind them")
	}
	p.SetColor(theme.ColorNameError)
	if img := screen.Draw(p, 230, 120); screen.Inked(img, first, palette.Light.Bad) == 0 || screen.Inked(img, first, palette.Light.Ink) != 0 {
		t.Error("the words are not in another color")
	}
}
