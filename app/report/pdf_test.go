package report_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"bowline/app/report"
	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/paper/papertest"
)

var date = time.Date(2031, 5, 17, 8, 9, 10, 0, time.UTC)

// pdf returns a report's document and the text of its pages, without spaces:
// where a line ends, none is written.
func pdf(t *testing.T, r *analysis.Result, l *launch.Result, s units.System) (document []byte, pages []string) {
	t.Helper()
	var out bytes.Buffer
	if err := report.WritePDF(&out, r, l, worthOf(l), s, date); err != nil {
		t.Fatal(err)
	}
	list, err := papertest.Pages(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range list {
		pages = append(pages, squeezed(papertest.Text(page)))
	}
	return out.Bytes(), pages
}

func squeezed(s string) string { return strings.Join(strings.Fields(s), "") }

// Every page has the caution, the date and its number.
func TestPDFPages(t *testing.T) {
	r, s := load(t, reference)
	_, pages := pdf(t, r, nil, s)
	if len(pages) != 5 {
		t.Errorf("%d pages, want 3 of text with the stage and 2 of charts", len(pages))
	}
	// The stage stands on the first page.
	for _, want := range []string{"Upper bars pull", "Lower bars push", "Anti-squat 155 %"} {
		if !strings.Contains(pages[0], squeezed(want)) {
			t.Errorf("the first page lacks %q", want)
		}
	}
	for i, page := range pages {
		for _, want := range []string{chart.Caution, "2031-05-17 · Reference, setup \"baseline\"", fmt.Sprintf("%d / %d", i+1, len(pages))} {
			if !strings.Contains(page, squeezed(want)) {
				t.Errorf("page %d lacks %q", i+1, want)
			}
		}
	}
}

// Each word of the text report stands in the document, on the pages before
// the charts.
func TestPDFSaysWhatTheTextSays(t *testing.T) {
	for _, car := range []string{reference, referenceSI} {
		r, s := load(t, car)
		_, pages := pdf(t, r, nil, s)
		all := strings.ToUpper(strings.Join(pages, ""))
		for _, word := range strings.Fields(text(t, r, s)) {
			if strings.Trim(word, "-") != "" && !strings.Contains(all, strings.ToUpper(word)) {
				t.Errorf("%s: %q is missing", car, word)
			}
		}
		for _, c := range plotting.All(plotting.Of(r, nil)) {
			if c.Blank {
				continue
			}
			if !strings.Contains(strings.Join(pages[2:], ""), squeezed(c.Title)) {
				t.Errorf("%s: the chart %q is missing", car, c.Title)
			}
		}
	}
}

// Letter paper for US units, A4 for SI, in points.
func TestPDFPaper(t *testing.T) {
	for car, want := range map[string]string{reference: "612.00 792.00", referenceSI: "595.28 841.89"} {
		r, s := load(t, car)
		document, _ := pdf(t, r, nil, s)
		if m := regexp.MustCompile(`/MediaBox \[0 0 ([\d. ]+)\]`).FindSubmatch(document); m == nil || string(m[1]) != want {
			t.Errorf("%s: paper %q, want %q", car, m, want)
		}
	}
}

func TestPDFIsTheSameEachTime(t *testing.T) {
	r, s := load(t, reference)
	first, _ := pdf(t, r, nil, s)
	if second, _ := pdf(t, r, nil, s); !bytes.Equal(first, second) {
		t.Error("two documents differ")
	}
}

// Long words of the user break lines and pages; nothing is lost.
func TestPDFOfLongWords(t *testing.T) {
	c, s := read(t, reference)
	c.Body.Name = strings.Repeat("Langername", 40)
	c.Setups[0].Note = strings.Repeat("Ж", 20000)
	_, pages := pdf(t, analyze(t, c), nil, s)
	if len(pages) < 6 {
		t.Errorf("%d pages", len(pages))
	}
	body := strings.Join(pages, "")
	if n := strings.Count(body, "Ж"); n != 20000 {
		t.Errorf("%d letters of the note, want 20000", n)
	}
	for i, page := range pages {
		if !strings.Contains(page, squeezed(chart.Caution)) {
			t.Errorf("page %d lacks the caution", i+1)
		}
	}
}
