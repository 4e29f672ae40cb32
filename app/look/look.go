// Package look gives the window Bowline's colors and its compact spacing.
package look

import (
	"image/color"

	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Mode is the person's choice between light and dark.
type Mode string

// The modes, as the preferences keep them.
const (
	Follow Mode = ""      // as the desktop has it
	Light  Mode = "light" // always light
	Dark   Mode = "dark"  // always dark
)

// The colors of the words and numbers of a load, as on the stage.
const (
	ColorNamePush fyne.ThemeColorName = "push"
	ColorNamePull fyne.ThemeColorName = "pull"
)

// Theme is Fyne's own theme in Bowline's colors.
type Theme struct {
	fyne.Theme
	mode Mode
}

// New returns the theme of a mode.
func New(mode Mode) *Theme { return &Theme{Theme: theme.DefaultTheme(), mode: mode} }

// Palette returns the colors for a variant of the desktop.
func (t *Theme) Palette(variant fyne.ThemeVariant) *palette.Palette {
	if t.mode == Dark || t.mode == Follow && variant == theme.VariantDark {
		return &palette.Dark
	}
	return &palette.Light
}

// Color implements fyne.Theme.
func (t *Theme) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	p := t.Palette(variant)
	if p == &palette.Dark {
		variant = theme.VariantDark
	} else {
		variant = theme.VariantLight
	}
	switch name {
	case theme.ColorNameBackground, theme.ColorNameOverlayBackground, theme.ColorNameMenuBackground:
		return p.Background
	case theme.ColorNameForeground:
		return p.Ink
	case theme.ColorNamePlaceHolder, theme.ColorNameDisabled:
		return p.Muted
	case theme.ColorNamePrimary, theme.ColorNameHyperlink:
		return p.Accent
	case theme.ColorNameFocus, theme.ColorNameSelection:
		return color.NRGBA{R: p.Accent.R, G: p.Accent.G, B: p.Accent.B, A: 0x60}
	case theme.ColorNameForegroundOnPrimary:
		return p.Background
	case theme.ColorNameButton, theme.ColorNameInputBackground, theme.ColorNameHeaderBackground, theme.ColorNameDisabledButton:
		return p.Raised
	case theme.ColorNameInputBorder:
		return p.Muted
	case theme.ColorNameSeparator:
		return p.Grid
	case theme.ColorNameError:
		return p.Bad
	case theme.ColorNameSuccess:
		return p.Good
	case theme.ColorNameWarning:
		return p.Warn
	case ColorNamePush:
		return p.Push
	case ColorNamePull:
		return p.Pull
	}
	return t.Theme.Color(name, variant)
}

// sizes are the compact measures; others are Fyne's.
var sizes = map[fyne.ThemeSizeName]float32{
	theme.SizeNameText:            13,
	theme.SizeNameCaptionText:     11,
	theme.SizeNameSubHeadingText:  15,
	theme.SizeNameHeadingText:     19,
	theme.SizeNamePadding:         3,
	theme.SizeNameInnerPadding:    5,
	theme.SizeNameInlineIcon:      17,
	theme.SizeNameInputRadius:     0,
	theme.SizeNameSelectionRadius: 0,
	theme.SizeNameLineSpacing:     3,
	theme.SizeNameScrollBar:       6,
	theme.SizeNameScrollBarSmall:  4,
}

// Size implements fyne.Theme.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := sizes[name]; ok {
		return s
	}
	return t.Theme.Size(name)
}

// Current returns the palette of the running app's theme.
func Current() *palette.Palette {
	settings := fyne.CurrentApp().Settings()
	if t, ok := settings.Theme().(*Theme); ok {
		return t.Palette(settings.ThemeVariant())
	}
	return &palette.Light
}
