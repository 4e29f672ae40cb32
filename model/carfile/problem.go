package carfile

import (
	"fmt"
	"slices"
	"strings"
)

// MaxSize is the greatest size of a file that is read [bytes].
const MaxSize = 1 << 20

// Problem is one thing wrong with a file.
type Problem struct {
	File  string
	Line  int    // The first is 1; 0 when the problem has no line.
	Key   string // For people, list items counted from 1, as in "setup 2: name"; empty for the file as a whole.
	Wrong string // What is wrong.
	Right string // What would be right.
}

// Error returns "file:line: key: wrong; right", without the parts that are missing.
func (p Problem) Error() string {
	place := p.File
	if p.Line > 0 {
		place = fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	if p.Key != "" {
		place += ": " + p.Key
	}
	return fmt.Sprintf("%s: %s; %s", place, p.Wrong, p.Right)
}

// Problems is everything wrong with a file, in file order.
type Problems []Problem

// Error returns the problems, one a line.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, problem := range p {
		lines[i] = problem.Error()
	}
	return strings.Join(lines, "\n")
}

// sort brings the problems into file order.
func (p Problems) sort() {
	slices.SortStableFunc(p, func(a, b Problem) int { return a.Line - b.Line })
}
