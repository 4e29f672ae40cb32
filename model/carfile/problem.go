package carfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// MaxSize is the greatest size of a file that is read [bytes].
const MaxSize = 1 << 20

// Problem is one thing wrong with a file.
type Problem struct {
	File    string
	Line    int    // The first is 1; 0 when the problem has no line.
	Key     string // Dotted, elements counted from 1, such as "setup.2.name"; empty for the file as a whole.
	Message string // What is wrong and what would be right.
}

// Error returns "file:line: key: message", without the parts that are missing.
func (p Problem) Error() string {
	place := p.File
	if p.Line > 0 {
		place = fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	if p.Key != "" {
		place += ": " + p.Key
	}
	return place + ": " + p.Message
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

// shownPath counts the elements of a path from 1, as people do.
func shownPath(path string) string {
	parts := strings.Split(path, ".")
	for i, part := range parts {
		if index, err := strconv.Atoi(part); err == nil {
			parts[i] = strconv.Itoa(index + 1)
		}
	}
	return strings.Join(parts, ".")
}
