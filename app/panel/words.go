package panel

import (
	"bowline/app/readout"
	"bowline/model/analysis"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Prose returns a place for sentences in a color of the theme.
func Prose(color fyne.ThemeColorName) *readout.Prose {
	return readout.NewProse("", theme.SizeNameText, color, fyne.TextStyle{})
}

// Small returns a line in small gray letters.
func Small(text string) *readout.Prose {
	return readout.NewProse(text, theme.SizeNameCaptionText, theme.ColorNamePlaceHolder, fyne.TextStyle{})
}

// Bold returns a bold line.
func Bold(text string) *readout.Prose {
	return readout.NewProse(text, theme.SizeNameText, theme.ColorNameForeground, fyne.TextStyle{Bold: true})
}

// Tell writes text into a place for sentences that is there only while there is
// any, and reports whether it differs from before.
func Tell(p *readout.Prose, text string) bool {
	p.Hidden = text == ""
	return p.Set(text)
}

// ShareColor is the color of a share of the allowable load: within or beyond.
func ShareColor(share float64) fyne.ThemeColorName {
	if share > 1 {
		return theme.ColorNameError
	}
	return theme.ColorNameSuccess
}

// TargetColor is the color of an anti-squat: within the car's target or beyond.
func TargetColor(r *analysis.Result, squat float64) fyne.ThemeColorName {
	target := r.Car.Check.TargetAntiSquat
	if squat < target[0] || squat > target[1] {
		return theme.ColorNameError
	}
	return theme.ColorNameSuccess
}
