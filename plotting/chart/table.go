package chart

import (
	"encoding/csv"
	"io"
	"slices"
	"strconv"

	"bowline/model/units"
)

// Table is a chart's data as written to CSV, in shop units.
type Table struct {
	Header []string // names with unit and sign, as in "upper hit [lb, pull positive]"
	Rows   [][]Cell

	keyed bool // the first column is the position, in ascending order
}

// Cell is a number or a text of a table, or the lack of either.
type Cell struct {
	Value float64
	Text  string // where it is no number
	Given bool
}

// digits is how many significant digits a number is written with: more than
// anything in a shop is known to, few enough to hide rounding.
const digits = 10

// WriteCSV writes the table with a header line, decimal points and empty
// fields where there is no value.
func (t Table) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write(t.Header); err != nil {
		return err
	}
	fields := make([]string, len(t.Header))
	for _, row := range t.Rows {
		for i, cell := range row {
			fields[i] = ""
			switch {
			case cell.Text != "":
				fields[i] = cell.Text
			case cell.Given:
				fields[i] = plain(cell.Value)
			}
		}
		if err := out.Write(fields); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// plain writes a number without exponent.
func plain(x float64) string {
	text := strconv.FormatFloat(x, 'e', digits-1, 64)
	rounded, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return text
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// aligned returns a table with the columns of two of the same position, the
// rows of one position in one row. Positions that are written alike are one.
func (t Table) aligned(other Table) Table {
	both := Table{Header: append(slices.Clone(t.Header), other.Header[1:]...), keyed: true}
	a, b := t.Rows, other.Rows
	for len(a) > 0 || len(b) > 0 {
		same := len(a) > 0 && len(b) > 0 && plain(a[0][0].Value) == plain(b[0][0].Value)
		first := len(b) == 0 || len(a) > 0 && a[0][0].Value < b[0][0].Value
		row := make([]Cell, len(both.Header))
		if same || first {
			copy(row, a[0])
			a = a[1:]
		}
		if same || !first {
			row[0] = b[0][0]
			copy(row[len(t.Header):], b[0][1:])
			b = b[1:]
		}
		both.Rows = append(both.Rows, row)
	}
	return both
}

// beside returns a table with the columns of two side by side.
func (t Table) beside(other Table) Table {
	both := Table{Header: append(slices.Clone(t.Header), other.Header...)}
	for i := range max(len(t.Rows), len(other.Rows)) {
		row := make([]Cell, len(both.Header))
		if i < len(t.Rows) {
			copy(row, t.Rows[i])
		}
		if i < len(other.Rows) {
			copy(row[len(t.Header):], other.Rows[i])
		}
		both.Rows = append(both.Rows, row)
	}
	return both
}

// TableBuilder builds a table from SI values.
type TableBuilder struct {
	Table
	units   units.System
	setup   string
	factors []float64
}

// NewTable starts a table; where it is one of two, its columns have the name of
// the setup.
func NewTable(s units.System, setup string) *TableBuilder {
	return &TableBuilder{units: s, setup: setup}
}

// Key starts the first column, the position.
func (t *TableBuilder) Key(name, sign string, q units.Quantity) {
	t.keyed = true
	t.column(name, sign, q)
}

// Add starts another column.
func (t *TableBuilder) Add(name, sign string, q units.Quantity) {
	if t.setup != "" {
		name += ", " + t.setup
	}
	t.column(name, sign, q)
}

func (t *TableBuilder) column(name, sign string, q units.Quantity) {
	unit := t.units.Symbol(q)
	if sign != "" {
		unit += ", " + sign
	}
	t.Header = append(t.Header, name+" ["+unit+"]")
	t.factors = append(t.factors, t.units.Factor(q))
}

// Texts starts a column of text.
func (t *TableBuilder) Texts(name string) {
	t.Header = append(t.Header, name)
	t.factors = append(t.factors, 1)
}

// Start starts a row.
func (t *TableBuilder) Start() { t.Rows = append(t.Rows, make([]Cell, 0, len(t.Header))) }

// Row starts a row with the first column's value.
func (t *TableBuilder) Row(si float64) {
	t.Start()
	t.Cell(si, true)
}

// Text fills the row's next column; empty text is none.
func (t *TableBuilder) Text(text string) {
	row := &t.Rows[len(t.Rows)-1]
	*row = append(*row, Cell{Text: text, Given: text != ""})
}

// Cell fills the row's next column.
func (t *TableBuilder) Cell(si float64, ok bool) {
	row := &t.Rows[len(t.Rows)-1]
	c := Cell{Given: ok}
	if ok {
		c.Value = si / t.factors[len(*row)]
	}
	*row = append(*row, c)
}
