package report

import (
	"io"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/launch"
	"bowline/model/preload"
	"bowline/model/units"
	"bowline/plotting/chart"
)

// WritePreload writes, for a terminal or a printed page, the turns of the bars that a
// search has found to make the rear tires most even: what to turn, what that does to
// bars and car, and other ways.
func WritePreload(out io.Writer, r *preload.Result, s units.System) error {
	w := writer{Result: &analysis.Result{Car: r.Car, Options: analysis.Options{Setup: r.Setup}}, units: s}
	var text textWriter
	for _, line := range textRuler.wrap(w.title(), textRuler.limit) {
		text.line("", line)
	}
	for _, part := range preloadSections(r, s) {
		text.section(part)
	}
	text.line("", "")
	text.paragraph(chart.Caution, false)
	_, err := io.WriteString(out, text.String())
	return err
}

// preloadSections are the parts of what WritePreload writes.
func preloadSections(r *preload.Result, s units.System) []section {
	head := section{title: "Turns that even the rear tires", lines: []string{words.RearApart(r.Before.Launch, s)}}
	way := r.Chosen()
	if way == nil {
		head.lines = append(head.lines, words.NoTurns(r))
		return []section{head}
	}
	head.lines = append(head.lines, words.EvenTurns(r, way))
	if then := words.TurnsThen(r, way); then != "" {
		head.lines = append(head.lines, then)
	}
	head.table = evenBars(r, way)
	list := []section{head, {title: "What the car does", table: evenCar(r, way, s)}}
	others := section{title: "Other ways", list: true}
	for i := range r.Ways {
		if i != r.Best {
			others.lines = append(others.lines, words.EvenTurns(r, &r.Ways[i]))
		}
	}
	if len(others.lines) > 0 {
		list = append(list, others)
	}
	return list
}

// evenBars says what a way does to each bar.
func evenBars(r *preload.Result, way *preload.Way) table {
	t := table{
		groups:  []group{{"", 2}, {"of its limit", 2}, {"", 1}},
		columns: []heading{{}, {}, {"before", "%"}, {"after", "%"}, {}},
	}
	for i, name := range words.BarNames() {
		bar := launch.RodID(i)
		left := words.ThreadLeft(r, way, bar)
		if r.Turn(way, bar) != 0 {
			left += " of thread left"
		}
		t.rows = append(t.rows, []cell{
			said(name), said(words.TurnOf(r, way, bar)),
			{figure: units.ShareFigure(r.Before.Envelope.Of(bar).Share)}, {figure: units.ShareFigure(way.Envelope.Of(bar).Share)},
			said(left),
		})
	}
	return t
}

// evenCar says what the car does as it is and with a way.
func evenCar(r *preload.Result, way *preload.Way, s units.System) table {
	t := table{columns: []heading{{}, {"before", ""}, {"after", ""}}}
	before, after := words.EvenCar(&r.Before, nil, s), words.EvenCar(&way.State, &way.Effect, s)
	for row, name := range words.EvenCarNames {
		t.rows = append(t.rows, []cell{said(name), said(before[row]), said(after[row])})
	}
	return t
}
