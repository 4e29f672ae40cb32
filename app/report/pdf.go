package report

import (
	"io"
	"time"

	"bowline/app/report/paper"
	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting"
)

// WritePDF writes the report as a PDF document, on letter paper for US units
// and A4 for SI: what WriteText writes, then the charts. Each page has its
// number, the date and the caution.
func WritePDF(out io.Writer, r *analysis.Result, s units.System, date time.Time) error {
	w := writer{r, s}
	l := newSheets(s)
	l.title(w.title())
	for _, part := range w.sections() {
		l.section(&part)
	}
	l.charts(plotting.Charts(r), s)
	doc := paper.New(l.width, l.height, w.title(), date)
	for i, page := range l.pages {
		doc.NextPage()
		for _, draw := range page {
			draw(doc)
		}
		l.foot(doc, w.title(), date, i+1)
	}
	_, err := doc.WriteTo(out)
	return err
}
