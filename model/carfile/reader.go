package carfile

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
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
	shown  string // The same with elements counted from 1.
	values map[string]any
	known  []string // Keys asked for so far.
}

// parse reads a file into its root table. It refuses files over MaxSize, with
// syntax errors, duplicate keys or redefined tables: the error is a Problems.
func parse(file string, data []byte) (*table, error) {
	if len(data) > MaxSize {
		return nil, Problems{{File: file, Message: fmt.Sprintf("has %d bytes; files over %d bytes are refused", len(data), MaxSize)}}
	}
	at, err := keyLines(data)
	if err != nil {
		return nil, Problems{syntaxProblem(file, err)}
	}
	var values map[string]any
	if _, err := toml.Decode(string(data), &values); err != nil {
		return nil, Problems{syntaxProblem(file, err)}
	}
	doc := &document{file: file, at: at, wrong: map[string]bool{}}
	return &table{doc: doc, values: values}, nil
}

func syntaxProblem(file string, err error) Problem {
	var syntax *syntaxError
	if errors.As(err, &syntax) {
		return Problem{File: file, Line: syntax.line, Message: "is no valid TOML: " + syntax.message}
	}
	var parse toml.ParseError
	if errors.As(err, &parse) {
		return Problem{File: file, Line: parse.Position.Line, Message: "is no valid TOML: " + parse.Message}
	}
	return Problem{File: file, Message: "is no valid TOML: " + err.Error()}
}

// err returns everything wrong with the document, or nil.
func (d *document) err() error {
	if len(d.problems) == 0 {
		return nil
	}
	d.problems.sort()
	return d.problems
}

// note records a problem with the entry at path, shown to people as shown; the
// first of each entry counts.
func (d *document) note(path, shown, message string) {
	if d.wrong[path] {
		return
	}
	d.wrong[path] = true
	d.problems = append(d.problems, Problem{File: d.file, Line: d.at.line(path), Key: shown, Message: message})
}

// problem records what is wrong with one key of the table.
func (t *table) problem(key, format string, values ...any) {
	path, shown := t.paths(key)
	t.doc.note(path, shown, fmt.Sprintf(format, values...))
}

func (t *table) paths(key string) (path, shown string) {
	return joinPath(t.path, key), joinPath(t.shown, key)
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

// required notes a missing key.
func (t *table) required(key, what string) {
	if !t.has(key) {
		t.problem(key, "is missing; give %s", what)
	}
}

// text reads a string that must be there.
func (t *table) text(key string) string {
	t.required(key, "a text in quotes")
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
		t.problem(key, "is %s; give a text in quotes", kindOf(value))
	}
	return text
}

// number reads a finite number that must be there.
func (t *table) number(key string) float64 {
	t.required(key, "a number")
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
		t.problem(key, "is %s; give a number", wrong)
	}
	return number
}

// choice reads one of several names that must be there; the first stands for a
// missing or wrong one.
func (t *table) choice(key string, names ...string) string {
	list := quotedList(names, " or ")
	t.required(key, list)
	text := t.textOr(key, names[0])
	if slices.Contains(names, text) {
		return text
	}
	t.problem(key, "is %q; give %s", text, list)
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
		t.problem(key, "is %s; give a table", kindOf(value))
		return nil, false
	}
	path, shown := t.paths(key)
	return &table{doc: t.doc, path: path, shown: shown, values: values}, true
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
				t.problem(key, "holds %s; give tables only", kindOf(element))
				return nil
			}
			list = append(list, values)
		}
	default:
		t.problem(key, "is %s; give [[%s]] tables", kindOf(value), key)
	}
	path, shown := t.paths(key)
	tables := make([]*table, len(list))
	for i, values := range list {
		tables[i] = &table{doc: t.doc, path: indexPath(path, i), shown: indexPath(shown, i+1), values: values}
	}
	return tables
}

// close notes every key that nothing asked for.
func (t *table) close() {
	for key := range t.values {
		if !slices.Contains(t.known, key) {
			t.problem(key, "is unknown here; known are %s", strings.Join(t.known, ", "))
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
