package words_test

import (
	"testing"

	"bowline/app/words"
)

func TestSentencesAndPhrases(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{words.Sentence("no turns"), "No turns."},
		{words.Sentence(""), ""},
		{words.Phrase("The bars do not reach."), "the bars do not reach"},
		{words.Phrase(""), ""},
		{words.List([]string{"one", "two"}), "• one\n• two"},
		{words.List(nil), ""},
	} {
		check(t, "text", c.got, c.want)
	}
}
