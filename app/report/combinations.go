package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"
	"bowline/plotting/chart"
)

// HolesFile is the name of the table that SaveHolesCSV writes.
const HolesFile = "holes.csv"

// shownColumns are the keys of the columns that WriteHoles shows and their
// titles, which are short so that a line holds them all.
var shownColumns = []struct{ key, title string }{
	{"anti_squat", "anti-squat"},
	{"instant_center_x", "IC ahead"},
	{"instant_center_z", "IC up"},
	{"hit_lower_push", "lower push"},
	{"highest_share", "of limit"},
	{"pinion_change", "pinion"},
	{"upper_turns", "upper"},
	{"lower_turns", "lower"},
}

// launchedColumns are those of combinations that have been launched.
var launchedColumns = []struct{ key, title string }{
	{"anti_squat", "anti-squat"},
	{"instant_center_x", "IC ahead"},
	{"instant_center_z", "IC up"},
	{"sixty_ft", "60 ft"},
	{"envelope_share", "of limit"},
	{"rear_apart", "apart"},
	{"front_lift", "lift"},
	{"pinion_change", "pinion"},
	{"upper_turns", "upper"},
	{"lower_turns", "lower"},
}

// WriteHoles writes the first n of ranked combinations of holes for a terminal
// or a printed page: what they are held against, a table, and why each stands
// where it stands. The ranking counts from a setup of c. More than there are
// means all.
func WriteHoles(out io.Writer, c *car.Car, setup int, places []holes.Place, n int, s units.System) error {
	n = min(n, len(places))
	w := writer{Result: &analysis.Result{Car: c, Options: analysis.Options{Setup: setup}}, units: s}
	var text textWriter
	for _, line := range textRuler.wrap(w.title(), textRuler.limit) {
		text.line("", line)
	}
	usable := 0
	for i := range places {
		if places[i].Combination().Usable() {
			usable++
		}
	}
	head := section{title: "Combinations of holes", lines: []string{
		fmt.Sprintf("%s of %s; %s can be used. Holes: upper chassis, lower chassis, upper housing, lower housing.", units.Count(n), units.Count(len(places)), units.Count(usable)),
		"Target: " + w.targets() + w.limits() + ".",
		words.RankedBy(places),
	}}
	head.table = w.places(places[:n])
	text.section(head)
	reasons := section{title: "Why", list: true}
	for i := range places[:n] {
		p := &places[i]
		reasons.lines = append(reasons.lines, fmt.Sprintf("%d, holes %s: %s", p.Rank, p.Holes(), words.Reason(p, s)))
	}
	text.section(reasons)
	text.line("", "")
	text.paragraph(chart.Caution, false)
	_, err := io.WriteString(out, text.String())
	return err
}

// limits say what the pinion and the lift of the front are held against, if anything.
func (w writer) limits() (text string) {
	if limit := w.Car.Check.PinionLimit; limit > 0 {
		text = ", pinion change up to " + w.units.Format(units.Angle, limit)
	}
	if limit := w.Car.Check.LiftLimit; limit > 0 {
		text += ", front lift up to " + w.units.Format(units.Length, limit)
	}
	return text
}

// places lists combinations, each in a row.
func (w writer) places(places []holes.Place) table {
	list := shownColumns
	if len(places) > 0 && places[0].Launches() != nil {
		list = launchedColumns
	}
	t := table{
		groups:  []group{{"", len(list)}, {"turns from here", 2}, {"", 1}},
		columns: []heading{{"rank", ""}, {"holes", ""}},
	}
	var columns []*holes.Column
	for _, shown := range list {
		column, _ := holes.ColumnOf(shown.key)
		columns = append(columns, column)
		t.columns = append(t.columns, heading{shown.title, w.units.Symbol(column.Quantity)})
	}
	t.columns = append(t.columns, heading{})
	for i := range places {
		p := &places[i]
		row := []cell{{figure: strconv.Itoa(p.Rank)}, said(p.Holes().String())}
		for _, column := range columns {
			row = append(row, cell{figure: w.shown(column, p)})
		}
		t.rows = append(t.rows, append(row, said(remark(p))))
	}
	return t
}

// shown writes a place's value without its unit, nothing where there is none.
func (w writer) shown(c *holes.Column, p *holes.Place) string {
	x, ok := c.Value(p)
	switch {
	case !ok:
		return ""
	case c.Quantity == units.Number:
		return c.Text(p, w.units)
	}
	return w.number(c.Quantity, x).figure
}

// remark says in a word or two what sets a place apart.
func remark(p *holes.Place) string {
	switch {
	case !p.Combination().Usable():
		return "refused"
	case p.Present:
		return "in use"
	case p.Recut(car.Upper) || p.Recut(car.Lower):
		return "new tubes"
	}
	return ""
}

// WriteHolesCSV writes ranked combinations as a table: a header of names and
// units, then one line each in the order given. Its columns are the rank and
// those of holes.Columns that are for files, and how the launch ended. A cell is empty
// where there is no value; usable says whether the holes can be used.
func WriteHolesCSV(out io.Writer, places []holes.Place, s units.System) error {
	header := []string{"rank", "usable"}
	var columns []*holes.Column
	for _, c := range holes.Columns {
		if c.Uses&holes.InFile != 0 {
			columns = append(columns, c)
			header = append(header, columnName(c.Key, c.Quantity, s))
		}
	}
	header = append(header, "launch")
	lines := [][]string{header}
	for i := range places {
		p := &places[i]
		line := []string{strconv.Itoa(p.Rank), strconv.FormatBool(p.Combination().Usable())}
		for _, c := range columns {
			var cell string
			if x, ok := c.Value(p); ok {
				x = s.FromSI(c.Quantity, x)
				cell = number(&x)
			}
			line = append(line, cell)
		}
		ended := ""
		if l := p.Launch(); l != nil {
			ended = l.Outcome.String()
		}
		line = append(line, ended)
		lines = append(lines, line)
	}
	return csv.NewWriter(out).WriteAll(lines)
}

// SaveHolesCSV writes HolesFile into a folder, which it makes if need be.
func SaveHolesCSV(folder string, places []holes.Place, s units.System) error {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	return save(filepath.Join(folder, HolesFile), func(w io.Writer) error { return WriteHolesCSV(w, places, s) })
}
