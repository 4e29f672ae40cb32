// Package words says in sentences what the model has found: the model returns
// kinds and numbers, and here each is worded once, for screen and paper alike.
// A sentence is a function of the values and of the unit system that it is read
// in. Phrases that are a number and its word, as in "2.00 in droop" or "71 %",
// are those of package units.
package words

import "strings"

// Capital writes the first letter of a phrase large.
func Capital(phrase string) string { return strings.ToUpper(phrase[:1]) + phrase[1:] }

// List writes sentences or phrases as points, each on a line.
func List(points []string) string {
	if len(points) == 0 {
		return ""
	}
	return "• " + strings.Join(points, "\n• ")
}

// Sentence makes one of a phrase.
func Sentence(phrase string) string {
	if phrase == "" {
		return ""
	}
	return Capital(phrase) + "."
}

// Phrase makes part of a sentence of one.
func Phrase(sentence string) string {
	if sentence == "" {
		return ""
	}
	return strings.ToLower(sentence[:1]) + strings.TrimSuffix(sentence[1:], ".")
}
