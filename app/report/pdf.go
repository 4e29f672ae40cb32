package report

import (
	"io"
	"time"

	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/paper"
)

// WritePDF writes the report as a PDF document, on letter paper for US units
// and A4 for SI: what WriteText writes, with a picture of the stage, then the charts. Each page has its
// number, the date and the caution. l is the launch of the same car and setup,
// nil for none.
func WritePDF(out io.Writer, r *analysis.Result, l *launch.Result, worth []assumptions.Worth, s units.System, date time.Time) error {
	w := writer{r, l, worth, s}
	on := newSheets(s)
	on.title(w.title())
	for i, part := range w.sections() {
		on.section(&part)
		if i == 0 { // the verdict
			on.stage(w)
		}
	}
	on.charts(charts(r, l), s)
	doc := paper.New(on.width, on.height, w.title(), date)
	for i, page := range on.pages {
		doc.NextPage()
		for _, draw := range page {
			draw(doc)
		}
		on.foot(doc, w.title(), date, i+1)
	}
	_, err := doc.WriteTo(out)
	return err
}
