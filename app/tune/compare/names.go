package compare

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// shortened cuts two names to the room over a column. Names that would be cut
// alike tell which is which by a letter.
func shortened(names [2]string) [2]string {
	short := [2]string{cutTo(names[0]), cutTo(names[1])}
	if short[0] == short[1] {
		return [2]string{cutTo("A " + names[0]), cutTo("B " + names[1])}
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
