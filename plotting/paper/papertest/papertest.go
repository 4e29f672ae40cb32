// Package papertest reads back what a PDF document of package paper holds, for
// tests. It knows the form of such documents only.
package papertest

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf16"
)

var (
	contents = regexp.MustCompile(`/Contents (\d+) 0 R`)
	shown    = regexp.MustCompile(`(?s)\(((?:[^\\()]|\\.)*)\) Tj`)
	escaped  = regexp.MustCompile(`(?s)\\(.)`)
)

// Pages returns the drawing operators of each page.
func Pages(document []byte) ([]string, error) {
	var pages []string
	for _, m := range contents.FindAllSubmatch(document, -1) {
		object := regexp.MustCompile(fmt.Sprintf(`(?s)\n%s 0 obj\n<<[^>]*>>\nstream\n(.*?)\nendstream`, m[1])).FindSubmatch(document)
		if object == nil {
			return nil, fmt.Errorf("there is no object %s", m[1])
		}
		r, err := zlib.NewReader(bytes.NewReader(object[1]))
		if err != nil {
			return nil, err
		}
		operators, err := io.ReadAll(r)
		if err != nil {
			return nil, err
		}
		pages = append(pages, string(operators))
	}
	return pages, nil
}

// Text returns the text that a page's operators show, one piece after the
// other.
func Text(page string) string {
	var text strings.Builder
	for _, m := range shown.FindAllStringSubmatch(page, -1) {
		b := []byte(escaped.ReplaceAllStringFunc(m[1], func(s string) string {
			if s[1] == 'r' {
				return "\r"
			}
			return s[1:]
		}))
		var units []uint16
		for i := 0; i+1 < len(b); i += 2 {
			units = append(units, uint16(b[i])<<8|uint16(b[i+1]))
		}
		text.WriteString(string(utf16.Decode(units)))
	}
	return text.String()
}
