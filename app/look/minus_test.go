package look_test

import (
	"testing"

	"bowline/app/look"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The window's fonts have a minus that is as wide as a plus and as high, and are
// otherwise Fyne's.
func TestFontsHaveAMinus(t *testing.T) {
	minus := []rune(units.Minus)[0]
	for _, style := range []fyne.TextStyle{{}, {Bold: true}, {Italic: true}, {Bold: true, Italic: true}, {Monospace: true}} {
		ours, fynes := look.New(look.Light).Font(style), theme.DefaultTheme().Font(style)
		if again := look.New(look.Dark).Font(style); again != ours {
			t.Errorf("%+v: the font is made twice", style)
		}
		f, err := opentype.Parse(ours.Content())
		if err != nil {
			t.Fatalf("%+v: %v", style, err)
		}
		g, err := opentype.Parse(fynes.Content())
		if err != nil {
			t.Fatal(err)
		}
		var buffer sfnt.Buffer
		at := func(f *opentype.Font, r rune) (sfnt.GlyphIndex, fixed.Rectangle26_6, fixed.Int26_6) {
			glyph, err := f.GlyphIndex(&buffer, r)
			if err != nil {
				t.Fatal(err)
			}
			bounds, advance, err := f.GlyphBounds(&buffer, glyph, fixed.I(1000), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			return glyph, bounds, advance
		}
		letters := 0
		for r := range rune(0x20000) {
			was, err := g.GlyphIndex(&buffer, r)
			if err != nil {
				t.Fatal(err)
			}
			if was != 0 {
				letters++
			}
			if is, err := f.GlyphIndex(&buffer, r); err != nil || is != was && (r != minus || was != 0) {
				t.Fatalf("%+v: %q is glyph %d, in Fyne's font %d (%v)", style, r, is, was, err)
			}
		}
		if letters < 500 {
			t.Errorf("%+v: only %d letters", style, letters)
		}
		sign, bar, wide := at(f, minus)
		_, cross, room := at(f, '+')
		// Within 3 % of the font's size: the widths, the ends and the middles.
		near := func(a, b fixed.Int26_6) bool { return (a-b).Round() <= 30 && (b-a).Round() <= 30 }
		if sign == 0 || !near(wide, room) || !near(bar.Min.X, cross.Min.X) || !near(bar.Max.X, cross.Max.X) || !near((bar.Min.Y+bar.Max.Y)/2, (cross.Min.Y+cross.Max.Y)/2) {
			t.Errorf("%+v: the minus is %v, %v wide, the plus %v, %v wide", style, bar, wide, cross, room)
		}
	}
}

// Whoever asks for a font, from whatever goroutine, has the same one.
func TestFontsAreMadeOnce(t *testing.T) {
	style := fyne.TextStyle{Bold: true}
	got := make(chan fyne.Resource)
	for range 4 {
		go func() { got <- look.New(look.Light).Font(style) }()
	}
	first := <-got
	for range 3 {
		if again := <-got; again != first {
			t.Errorf("%s is made twice", again.Name())
		}
	}
}
