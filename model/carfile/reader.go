package carfile

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"bowline/model/car"

	"github.com/BurntSushi/toml"
)

// What to give, in the words of a Problem.
const (
	giveText   = "give a text in quotes"
	giveNumber = "give a number"
)

// document is a parsed file, read table by table. Reading never stops at a
// problem: what is missing or wrong reads as zero and is noted.
type document struct {
	file     string
	at       positions
	problems Problems
	wrong    map[string]bool // Paths that have a problem already.
}

// table is one table of a document. Keys match exactly, case included.
type table struct {
	doc    *document
	path   string // As in positions; empty at the root.
	prefix string // What stands before its keys for people: "", "car." or "setup 2: ".
	values map[string]any
	known  []string // Keys asked for so far.
}

// parse reads a file into its root table. It refuses files over MaxSize, with
// bytes that are not UTF-8, syntax errors, duplicate keys or redefined tables: the
// error is a Problems.
func parse(file string, data []byte) (*table, error) {
	if len(data) > MaxSize {
		return nil, Problems{{File: file, Wrong: fmt.Sprintf("has %d bytes", len(data)), Right: fmt.Sprintf("at most %d are read", MaxSize)}}
	}
	if line := badEncoding(string(data)); line > 0 {
		return nil, Problems{{File: file, Line: line, Wrong: "holds bytes that are not UTF-8", Right: "save the file as UTF-8 text"}}
	}
	at, err := keyLines(data)
	if err != nil {
		return nil, Problems{syntaxProblem(file, err)}
	}
	var values map[string]any
	if _, err := toml.Decode(possibleDates(data, at), &values); err != nil {
		return nil, Problems{syntaxProblem(file, err)}
	}
	doc := &document{file: file, at: at, wrong: map[string]bool{}}
	return &table{doc: doc, values: values}, nil
}

// possibleDates returns the text with another date in place of each that is none
// of the calendar, which the decoder takes for a fault of the text as a whole.
// What reads dates looks at the text itself.
func possibleDates(data []byte, at positions) string {
	const length, possible = len(car.DateForm), "2000-01-01"
	copied := false
	for _, here := range at {
		v := here.Value
		if v.End-v.Start < length || !bareDate.Match(data[v.Start:v.End]) || car.IsDate(string(data[v.Start:v.Start+length])) {
			continue
		}
		if !copied {
			data, copied = bytes.Clone(data), true
		}
		copy(data[v.Start:], possible)
	}
	return string(data)
}

// bareDate is how a date begins that stands without quotes.
var bareDate = regexp.MustCompile(`^\d{4}-\d\d-\d\d`)

// badEncoding returns the first line with bytes that are not UTF-8, or 0.
func badEncoding(text string) int {
	for i, c := range text {
		if c != utf8.RuneError {
			continue
		}
		if _, width := utf8.DecodeRuneInString(text[i:]); width == 1 {
			return 1 + strings.Count(text[:i], "\n")
		}
	}
	return 0
}

func syntaxProblem(file string, err error) Problem {
	line, message := 0, err.Error()
	var syntax *syntaxError
	var parse toml.ParseError
	switch {
	case errors.As(err, &syntax):
		line, message = syntax.line, syntax.message
	case errors.As(err, &parse):
		line, message = parse.Position.Line, parse.Message
	}
	return Problem{File: file, Line: line, Wrong: "is no valid TOML", Right: message}
}

// err returns everything wrong with the document, or nil.
func (d *document) err() error {
	if len(d.problems) == 0 {
		return nil
	}
	d.problems.sort()
	return d.problems
}

// note records what is wrong with the entry at path, named key for people; the
// first problem of each entry counts.
func (d *document) note(path, key, wrong, right string) {
	if d.wrong[path] {
		return
	}
	d.wrong[path] = true
	d.problems = append(d.problems, Problem{File: d.file, Line: d.at.line(path), Key: key, Wrong: wrong, Right: right})
}

// problem records what is wrong with one key of the table.
func (t *table) problem(key, wrong, right string) {
	t.doc.note(joinPath(t.path, key), t.prefix+quoteKey(key), wrong, right)
}

// get looks a key up and remembers that it is a known one.
func (t *table) get(key string) (value any, ok bool) {
	t.known = append(t.known, key)
	value, ok = t.values[key]
	return value, ok
}

// has reports whether the file gives a key.
func (t *table) has(key string) bool {
	_, ok := t.values[key]
	return ok
}

// required notes a missing key, and what to give.
func (t *table) required(key, give string) {
	if !t.has(key) {
		t.problem(key, "is missing", give)
	}
}

// text reads a string that must be there.
func (t *table) text(key string) string {
	t.required(key, giveText)
	return t.textOr(key, "")
}

// textOr reads a string that may be left out.
func (t *table) textOr(key, otherwise string) string {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	text, ok := value.(string)
	if !ok {
		t.problem(key, "is "+kindOf(value), giveText)
	}
	return text
}

// number reads a finite number that must be there.
func (t *table) number(key string) float64 {
	t.required(key, giveNumber)
	return t.numberOr(key, 0)
}

// numberOr reads a finite number that may be left out.
func (t *table) numberOr(key string, otherwise float64) float64 {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	number, wrong := asNumber(value)
	if wrong != "" {
		t.problem(key, "is "+wrong, giveNumber)
	}
	return number
}

// choice reads one of several names that must be there; the first stands for a
// missing or wrong one.
func (t *table) choice(key string, names ...string) string {
	give := "give " + quotedList(names, " or ")
	t.required(key, give)
	text := t.textOr(key, names[0])
	if slices.Contains(names, text) {
		return text
	}
	t.problem(key, "is "+strconv.Quote(text), give)
	return names[0]
}

// table reads a sub-table that may be left out.
func (t *table) table(key string) (*table, bool) {
	value, ok := t.get(key)
	if !ok {
		return nil, false
	}
	values, ok := value.(map[string]any)
	if !ok {
		t.problem(key, "is "+kindOf(value), "give a table")
		return nil, false
	}
	return &table{doc: t.doc, path: joinPath(t.path, key), prefix: t.prefix + quoteKey(key) + ".", values: values}, true
}

// tables reads an array of tables that may be left out.
func (t *table) tables(key string) []*table {
	value, ok := t.get(key)
	if !ok {
		return nil
	}
	var list []map[string]any
	switch v := value.(type) {
	case []map[string]any:
		list = v
	case []any:
		for _, element := range v {
			values, ok := element.(map[string]any)
			if !ok {
				t.problem(key, "holds "+kindOf(element), "give tables only")
				return nil
			}
			list = append(list, values)
		}
	default:
		t.problem(key, "is "+kindOf(value), "give [["+key+"]] tables")
	}
	tables := make([]*table, len(list))
	for i, values := range list {
		path := indexPath(joinPath(t.path, key), i)
		prefix := fmt.Sprintf("%s%s %d: ", t.prefix, quoteKey(key), i+1)
		tables[i] = &table{doc: t.doc, path: path, prefix: prefix, values: values}
	}
	return tables
}

// close notes every key that nothing asked for.
func (t *table) close() {
	for key := range t.values {
		if !slices.Contains(t.known, key) {
			t.problem(key, "is unknown here", "known are "+strings.Join(t.known, ", "))
		}
	}
}

// asNumber returns a finite number, or what else the value is.
func asNumber(value any) (number float64, wrong string) {
	switch v := value.(type) {
	case int64:
		return float64(v), ""
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return 0, "not finite"
		}
		return v, ""
	}
	return 0, kindOf(value)
}

// kindOf names a value's kind for a message.
func kindOf(value any) string {
	switch value.(type) {
	case string:
		return "a text"
	case bool:
		return "true or false"
	case int64, float64:
		return "a number"
	case time.Time:
		return "a date or time"
	case map[string]any:
		return "a table"
	}
	return "a list"
}

func quotedList(names []string, separator string) string {
	quoted := make([]string, len(names))
	for i, name := range names {
		quoted[i] = strconv.Quote(name)
	}
	return strings.Join(quoted, separator)
}
