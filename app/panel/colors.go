package panel

import (
	"bowline/model/analysis"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// ShareColor is the color of a share of the allowable load: within or beyond.
func ShareColor(share float64) fyne.ThemeColorName {
	if share > 1 {
		return theme.ColorNameError
	}
	return theme.ColorNameSuccess
}

// StandingColor is the color of words about how the bars stand against their limits.
func StandingColor(s analysis.Standing) fyne.ThemeColorName {
	if s == analysis.FactorShort || s == analysis.Failing {
		return theme.ColorNameError
	}
	return theme.ColorNameForeground
}

// TargetColor is the color of an anti-squat: within the car's target or beyond.
func TargetColor(r *analysis.Result, squat float64) fyne.ThemeColorName {
	target := r.Car.Check.TargetAntiSquat
	if squat < target[0] || squat > target[1] {
		return theme.ColorNameError
	}
	return theme.ColorNameSuccess
}
