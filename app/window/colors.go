package window

import (
	"bowline/model/analysis"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// shareColor tells within capacity from beyond.
func shareColor(share float64) fyne.ThemeColorName {
	if share > 1 {
		return theme.ColorNameError
	}
	return theme.ColorNameSuccess
}

// targetColor tells an anti-squat within the target from one beyond.
func targetColor(r *analysis.Result, squat float64) fyne.ThemeColorName {
	target := r.Car.Check.TargetAntiSquat
	if squat < target[0] || squat > target[1] {
		return theme.ColorNameError
	}
	return theme.ColorNameSuccess
}
