package chart

import (
	"strconv"
	"unicode/utf8"
)

// NameLength is how many letters of a setup's name a chart shows.
const NameLength = 20

// ShortNames returns names of at most a length, cut ones with an ellipsis.
// Names that differ stay different: where their beginnings are alike they are
// cut in the middle, and numbered if that is not enough.
func ShortNames(names []string, length int) []string {
	list := make([]string, len(names))
	for i, name := range names {
		list[i] = cutEnd(name, length)
	}
	again(list, func(i int) string { return cutMiddle(names[i], length) })
	again(list, func(i int) string {
		number := strconv.Itoa(i+1) + " "
		return number + cutEnd(names[i], length-len(number))
	})
	return list
}

// again replaces what occurs more than once.
func again(list []string, with func(i int) string) {
	count := map[string]int{}
	for _, text := range list {
		count[text]++
	}
	for i, text := range list {
		if count[text] > 1 {
			list[i] = with(i)
		}
	}
}

// cutEnd cuts a text to a number of letters, the last of them an ellipsis.
func cutEnd(text string, length int) string {
	if utf8.RuneCountInString(text) <= length {
		return text
	}
	return string([]rune(text)[:max(0, length-1)]) + "…"
}

// cutMiddle cuts a text in its middle.
func cutMiddle(text string, length int) string {
	letters := []rune(text)
	if len(letters) <= length {
		return text
	}
	tail := max(0, length-1) / 2
	return string(letters[:max(0, length-1-tail)]) + "…" + string(letters[len(letters)-tail:])
}
