package panel

import (
	"bowline/app/look"
	"bowline/model/analysis"
	"bowline/model/column"

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

// LoadColor is the color of a bar's load, which is a share of what it may carry that way:
// that of push or pull, and of what is beyond a limit.
func LoadColor(way column.Direction, share float64) fyne.ThemeColorName {
	switch {
	case share > 1:
		return theme.ColorNameError
	case share == 0:
		return theme.ColorNameForeground
	case way == column.Push:
		return look.ColorNamePush
	}
	return look.ColorNamePull
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
