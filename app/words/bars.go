package words

import (
	"strings"

	"bowline/model/launch"
)

// BarNames names the four bars in the rows of a table, by launch.RodID: "Upper
// left" first.
func BarNames() []string {
	return ofBars(func(b launch.RodID) string { return Capital(strings.TrimSuffix(b.String(), " bar")) })
}

// BarInitials names the four bars where there is little room, by launch.RodID: "UL"
// first.
func BarInitials() []string {
	return ofBars(func(b launch.RodID) string { return Initials(b.String()) })
}

// Initials shortens the name of a bar, as in "UL" for "upper left bar".
func Initials(bar string) string {
	parts := strings.Fields(strings.ToUpper(bar))
	return parts[0][:1] + parts[1][:1]
}

// ofBars returns a text for each of the four bars.
func ofBars(text func(launch.RodID) string) []string {
	var list []string
	for _, b := range launch.Bars {
		list = append(list, text(b))
	}
	return list
}
