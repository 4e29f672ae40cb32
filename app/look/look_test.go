package look

import (
	"image/color"
	"testing"

	"bowline/plotting/palette"
	"bowline/plotting/palette/contrast"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

func TestModeChoosesThePalette(t *testing.T) {
	for _, c := range []struct {
		mode    Mode
		desktop fyne.ThemeVariant
		want    *palette.Palette
	}{
		{Follow, theme.VariantLight, &palette.Light}, {Follow, theme.VariantDark, &palette.Dark},
		{Light, theme.VariantLight, &palette.Light}, {Light, theme.VariantDark, &palette.Light},
		{Dark, theme.VariantLight, &palette.Dark}, {Dark, theme.VariantDark, &palette.Dark},
	} {
		th := New(c.mode)
		if th.Palette(c.desktop) != c.want {
			t.Errorf("mode %q on a desktop of variant %d has the other palette", c.mode, c.desktop)
		}
		for name, want := range map[fyne.ThemeColorName]color.RGBA{
			theme.ColorNameBackground: c.want.Background, theme.ColorNameForeground: c.want.Ink,
			theme.ColorNamePrimary: c.want.Accent, theme.ColorNameError: c.want.Bad, ColorNamePush: c.want.Push, ColorNamePull: c.want.Pull, theme.ColorNameSuccess: c.want.Good,
		} {
			if got := th.Color(name, c.desktop); got != color.Color(want) {
				t.Errorf("mode %q, variant %d: %s is %v, want %v", c.mode, c.desktop, name, got, want)
			}
		}
		// What is Fyne's own comes in the same variant.
		variant := theme.VariantLight
		if c.want == &palette.Dark {
			variant = theme.VariantDark
		}
		if got, want := th.Color(theme.ColorNameShadow, c.desktop), theme.DefaultTheme().Color(theme.ColorNameShadow, variant); got != want {
			t.Errorf("mode %q, variant %d: shadows are %v, want %v", c.mode, c.desktop, got, want)
		}
	}
}

func TestCurrentIsThePaletteOfTheApp(t *testing.T) {
	settings := test.NewTempApp(t).Settings()
	for _, c := range []struct {
		theme fyne.Theme
		want  *palette.Palette
	}{{New(Dark), &palette.Dark}, {New(Light), &palette.Light}, {theme.DefaultTheme(), &palette.Light}} {
		settings.SetTheme(c.theme)
		if Current() != c.want {
			t.Errorf("with %T the palette is another one", c.theme)
		}
	}
}

func TestSizes(t *testing.T) {
	th := New(Follow)
	if got := th.Size(theme.SizeNameText); got != 13 {
		t.Errorf("text is %v high", got)
	}
	if got, want := th.Size(theme.SizeNameSeparatorThickness), theme.DefaultTheme().Size(theme.SizeNameSeparatorThickness); got != want {
		t.Errorf("separators are %v thick, want Fyne's own %v", got, want)
	}
}

// Text can be read: 4.5 to 1 at least (W3C, Web Content Accessibility
// Guidelines 2.1, success criterion 1.4.3).
func TestTextCanBeRead(t *testing.T) {
	const least = 4.5
	for name, p := range map[string]*palette.Palette{"light": &palette.Light, "dark": &palette.Dark} {
		for on, back := range map[string]color.RGBA{"background": p.Background, "raised": p.Raised} {
			for what, ink := range map[string]color.RGBA{
				"ink": p.Ink, "muted": p.Muted, "push": p.Push, "pull": p.Pull,
				"accent": p.Accent, "good": p.Good, "bad": p.Bad, "warn": p.Warn, "slack": p.Slack, "center": p.Center, "whole": p.Whole,
			} {
				if got := contrast.Ratio(ink, back); got < least {
					t.Errorf("%s: %s on %s has a contrast of %.2f, want %.1f", name, what, on, got, least)
				}
			}
		}
	}
}

// So can the window's own texts on what they stand on.
func TestThemeTextCanBeRead(t *testing.T) {
	const least = 4.5
	for _, mode := range []Mode{Light, Dark} {
		th := New(mode)
		of := func(name fyne.ThemeColorName) color.Color { return th.Color(name, theme.VariantLight) }
		for _, c := range []struct{ ink, back fyne.ThemeColorName }{
			{theme.ColorNameForegroundOnPrimary, theme.ColorNamePrimary},
			{theme.ColorNameForegroundOnError, theme.ColorNameError},
			{theme.ColorNameForegroundOnSuccess, theme.ColorNameSuccess},
			{theme.ColorNameForegroundOnWarning, theme.ColorNameWarning},
			{theme.ColorNameForeground, theme.ColorNameButton},
			{theme.ColorNameForeground, theme.ColorNameInputBackground},
			{theme.ColorNameForeground, theme.ColorNameMenuBackground},
			{theme.ColorNamePlaceHolder, theme.ColorNameInputBackground},
			{theme.ColorNameHyperlink, theme.ColorNameBackground},
			{theme.ColorNameWarning, theme.ColorNameBackground},
			{theme.ColorNameError, theme.ColorNameInputBackground},
		} {
			if got := contrast.Ratio(of(c.ink), of(c.back)); got < least {
				t.Errorf("%s: %s on %s has a contrast of %.2f, want %.1f", mode, c.ink, c.back, got, least)
			}
		}
	}
}
