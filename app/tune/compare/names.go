package compare

import (
	"slices"
	"strings"

	"bowline/app/words"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// shortened cuts the names of setups to the room over a column. Where some would
// be cut alike a letter tells which is which.
func shortened(list []words.Setup) []string {
	short := make([]string, len(list))
	for i := range list {
		short[i] = cutTo(list[i].Name)
		if slices.Contains(short[:i], short[i]) {
			return lettered(list)
		}
	}
	return short
}

// lettered cuts the names with a letter before each.
func lettered(list []words.Setup) []string {
	short := make([]string, len(list))
	for i := range list {
		short[i] = cutTo(string(rune('A'+i)) + " " + list[i].Name)
	}
	return short
}

// cutTo cuts a heading to its room.
func cutTo(text string) string {
	wide := func(s string) bool {
		return fyne.MeasureText(s, theme.TextSize(), fyne.TextStyle{Bold: true}).Width > headingRoom
	}
	if !wide(text) {
		return text
	}
	letters := []rune(text)
	for len(letters) > 1 && wide(string(letters)+"…") {
		letters = letters[:len(letters)-1]
	}
	return strings.TrimSpace(string(letters)) + "…"
}
