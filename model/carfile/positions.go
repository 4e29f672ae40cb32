package carfile

import (
	"bytes"
	"errors"
	"fmt"
	"sort"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Range is a half-open span of bytes in a file: data[Start:End].
type Range struct{ Start, End int }

// position says where one entry of a file stands.
//
// For a key it holds the key as written and its value, quotes and brackets
// included. For an element of an array Key is empty. For a table Key is the
// bracketed header and Value the body: from the end of the header to the end of
// the last entry, so that a new key goes to Value.End on a line of its own.
type position struct {
	Line  int // Line of the key, or of the element or header; the first is 1.
	Key   Range
	Value Range
}

// positions maps dotted paths to places in a file. Elements of arrays and
// tables of an array of tables count from 0: "car.weight", "setup.1",
// "setup.1.note", "chassis_bracket.upper.0.1". A key that isn't bare is quoted
// as in TOML.
type positions map[string]position

// line returns the line of path or, where the file has no such entry, of the
// nearest table around it; 0 when there is none.
func (p positions) line(path string) int {
	for path != "" {
		if at, ok := p[path]; ok {
			return at.Line
		}
		path = parentPath(path)
	}
	return 0
}

// sorted returns the paths in the order they stand in the file.
func (p positions) sorted() []string {
	paths := make([]string, 0, len(p))
	for path := range p {
		paths = append(paths, path)
	}
	sort.Slice(paths, func(i, j int) bool {
		a, b := p[paths[i]], p[paths[j]]
		if a.start() != b.start() {
			return a.start() < b.start()
		}
		return len(paths[i]) < len(paths[j])
	})
	return paths
}

// start is the first byte of the entry.
func (at position) start() int {
	if at.Key.End > at.Key.Start {
		return at.Key.Start
	}
	return at.Value.Start
}

// maxDepth is how deep a file may nest, ten times what any needs: paths and the
// decoder's work grow with the square of it.
const maxDepth = 50

// maxPaths is how long all paths of a file may be together, a hundred times what
// any needs [bytes]: a long key counts anew for each element below it.
const maxPaths = 16 << 20

// keyLines finds every table, key and array element of a TOML file. It refuses
// what doesn't parse or goes beyond maxDepth or maxPaths, with the line; it does not
// look for duplicate keys or redefined tables, which the decoder refuses.
func keyLines(data []byte) (positions, error) {
	l := locator{data: data, found: positions{}, tables: map[string]int{}, starts: lineStarts(data)}
	l.parser.Reset(data)
	for l.parser.NextExpression() {
		node := l.parser.Expression()
		if depth(node) > maxDepth {
			return nil, &syntaxError{l.lineOf(l.firstKey(node)), fmt.Sprintf("keys, tables and lists are nested more than %d deep", maxDepth)}
		}
		if l.expression(node); l.bytes > maxPaths {
			return nil, &syntaxError{l.lineOf(l.firstKey(node)), "too many entries under long keys"}
		}
	}
	if err := l.parser.Error(); err != nil {
		return nil, l.syntaxError(err)
	}
	return l.found, nil
}

// locator walks a file, expression by expression.
type locator struct {
	data   []byte
	parser unstable.Parser
	found  positions
	tables map[string]int // Tables seen so far of each array of tables.
	starts []int          // First byte of each line.
	bytes  int            // Length of all paths so far.
	table  string         // Path of the table that the walk is in.
}

// record notes where the entry at path stands.
func (l *locator) record(path string, at position) {
	l.bytes += len(path)
	l.found[path] = at
}

func (l *locator) expression(node *unstable.Node) {
	switch node.Kind {
	case unstable.Table, unstable.ArrayTable:
		l.header(node)
	case unstable.KeyValue:
		end := l.keyValue(l.table, node)
		if at, ok := l.found[l.table]; ok {
			at.Value.End = end
			l.found[l.table] = at
		}
	}
}

// depth counts the parts of the longest path that an expression adds.
func depth(node *unstable.Node) int {
	own, below := 0, 0
	for it := node.Children(); it.Next(); {
		switch child := it.Node(); child.Kind {
		case unstable.Key:
			own++
		default:
			below = max(below, depth(child))
		}
	}
	if node.Kind == unstable.Array {
		own++
	}
	return own + below
}

// firstKey is the first byte of an expression's key.
func (l *locator) firstKey(node *unstable.Node) int {
	it := node.Key()
	it.Next()
	return l.span(it.Node()).Start
}

// header enters a table, and the next one of its kind when it is of an array.
func (l *locator) header(node *unstable.Node) {
	path, first, last := "", -1, 0
	for it := node.Key(); it.Next(); {
		key := l.span(it.Node())
		if first < 0 {
			first = key.Start
		}
		last = key.End
		path = joinPath(path, string(it.Node().Data))
		if count := l.tables[path]; count > 0 && !(node.Kind == unstable.ArrayTable && it.IsLast()) {
			path = indexPath(path, count-1)
		}
	}
	if node.Kind == unstable.ArrayTable {
		l.tables[path]++
		path = indexPath(path, l.tables[path]-1)
	}
	header := Range{l.openingBracket(first), l.closingBracket(last)}
	l.table = path
	l.record(path, position{Line: l.lineOf(header.Start), Key: header, Value: Range{header.End, header.End}})
}

// keyValue records one key of the table at path, and all within its value. It
// returns the end of the value.
func (l *locator) keyValue(path string, node *unstable.Node) int {
	var key Range
	for it := node.Key(); it.Next(); {
		part := l.span(it.Node())
		if key.End == 0 {
			key.Start = part.Start
		}
		key.End = part.End
		path = joinPath(path, string(it.Node().Data))
	}
	equals := l.skipBlanks(key.End)
	value := Range{Start: l.skipBlanks(equals + 1)}
	value.End = l.value(path, node.Value(), value.Start)
	l.record(path, position{Line: l.lineOf(key.Start), Key: key, Value: value})
	return value.End
}

// value records what lies within a value that begins at start, and returns the
// value's end.
func (l *locator) value(path string, node *unstable.Node, start int) int {
	switch node.Kind {
	case unstable.Array:
		return l.array(path, node, start)
	case unstable.InlineTable:
		end := start + 1
		for it := node.Children(); it.Next(); {
			if it.Node().Kind == unstable.KeyValue && l.bytes <= maxPaths {
				end = l.keyValue(path, it.Node())
			}
		}
		return l.skipFiller(end) + 1
	default:
		return l.span(node).End
	}
}

func (l *locator) array(path string, node *unstable.Node, start int) int {
	end, index := start+1, 0
	for it := node.Children(); it.Next(); {
		if it.Node().Kind == unstable.Comment {
			continue
		}
		if l.bytes > maxPaths {
			break
		}
		from := l.skipFiller(end)
		element := indexPath(path, index)
		end = l.value(element, it.Node(), from)
		l.record(element, position{Line: l.lineOf(from), Value: Range{from, end}})
		index++
	}
	return l.skipFiller(end) + 1
}

// skipBlanks passes spaces and tabs.
func (l *locator) skipBlanks(at int) int {
	for at < len(l.data) && (l.data[at] == ' ' || l.data[at] == '\t') {
		at++
	}
	return at
}

// skipFiller passes all that may stand between two elements.
func (l *locator) skipFiller(at int) int {
	for at < len(l.data) {
		switch l.data[at] {
		case ' ', '\t', '\r', '\n', ',':
			at++
		case '#':
			at += lineLength(l.data[at:])
		default:
			return at
		}
	}
	return at
}

// openingBracket and closingBracket widen a table's name to its whole header.
func (l *locator) openingBracket(at int) int {
	for at > 0 && strings.IndexByte(" \t[", l.data[at-1]) >= 0 {
		at--
	}
	return l.skipBlanks(at)
}

func (l *locator) closingBracket(at int) int {
	at = l.skipBlanks(at)
	for at < len(l.data) && l.data[at] == ']' {
		at++
	}
	return at
}

func (l *locator) span(node *unstable.Node) Range {
	start := int(node.Raw.Offset)
	return Range{start, start + int(node.Raw.Length)}
}

// lineOf returns the line that holds a byte; the first is 1.
func (l *locator) lineOf(at int) int {
	return sort.SearchInts(l.starts, at+1)
}

func (l *locator) syntaxError(err error) error {
	var parse *unstable.ParserError
	if !errors.As(err, &parse) {
		return err
	}
	at := len(l.data)
	if len(parse.Highlight) > 0 {
		at = int(l.parser.Range(parse.Highlight).Offset)
	}
	return &syntaxError{line: l.lineOf(at), message: parse.Message}
}

// syntaxError is the first thing in a file that doesn't parse.
type syntaxError struct {
	line    int
	message string
}

func (e *syntaxError) Error() string { return fmt.Sprintf("line %d: %s", e.line, e.message) }

// lineStarts returns the first byte of each line.
func lineStarts(data []byte) []int {
	starts := []int{0}
	for at, c := range data {
		if c == '\n' {
			starts = append(starts, at+1)
		}
	}
	return starts
}

// lineLength is the number of bytes before the next newline.
func lineLength(data []byte) int {
	if n := bytes.IndexByte(data, '\n'); n >= 0 {
		return n
	}
	return len(data)
}

// joinPath appends a key to a path.
func joinPath(path, key string) string {
	key = quoteKey(key)
	if path == "" {
		return key
	}
	return path + "." + key
}

// indexPath appends the number of an element to a path.
func indexPath(path string, index int) string {
	return path + "." + strconv.Itoa(index)
}

// parentPath drops the last part of a path; a path of one part has none.
func parentPath(path string) string {
	quoted, cut := false, 0
	for i := 0; i < len(path); i++ {
		switch {
		case path[i] == '"':
			quoted = !quoted
		case quoted && path[i] == '\\':
			i++
		case !quoted && path[i] == '.':
			cut = i
		}
	}
	return path[:cut]
}

// quoteKey leaves a bare key as it is and quotes any other.
func quoteKey(key string) string {
	bare := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '_' || r == '-'
	}
	if key != "" && strings.IndexFunc(key, func(r rune) bool { return !bare(r) }) < 0 {
		return key
	}
	return strconv.Quote(key)
}
