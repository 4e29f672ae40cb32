package carfile

import (
	"slices"
	"strconv"
	"strings"
)

// longestName bounds the names that are compared, so that junk costs nothing.
const longestName = 64

// didYouMean suggests the name that was probably meant.
func didYouMean(name string) string { return "did you mean " + strconv.Quote(name) + "?" }

// closest returns the known name that a mistyped one differs from in case only
// or in a third of its letters, rounded.
func closest(name string, known []string) (string, bool) {
	best, least := "", (len(name)+1)/3+1
	if len(name) > longestName {
		return "", false
	}
	for _, k := range known {
		if d := distance(strings.ToLower(name), strings.ToLower(k)); d < least {
			best, least = k, d
		}
	}
	return best, best != ""
}

// distance counts the letters to insert, drop or replace to turn a into b
// (Levenshtein).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			replace := diagonal
			if a[i] != b[j] {
				replace++
			}
			diagonal = row[j+1]
			row[j+1] = slices.Min([]int{replace, row[j] + 1, diagonal + 1})
		}
	}
	return row[len(b)]
}
