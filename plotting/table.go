package plotting

import (
	"encoding/csv"
	"io"
	"strconv"

	"bowline/model/units"
)

// Table is a chart's data as written to CSV, in shop units.
type Table struct {
	Header []string // names with unit and sign, as in "upper hit [lb, pull positive]"
	Rows   [][]Cell
}

// Cell is a number of a table, or the lack of one.
type Cell struct {
	Value float64
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
			if cell.Given {
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

// tableMaker builds a table from SI values.
type tableMaker struct {
	Table
	units   units.System
	factors []float64
}

func newTable(s units.System) *tableMaker { return &tableMaker{units: s} }

// add starts a column.
func (t *tableMaker) add(name, sign string, q units.Quantity) {
	unit := t.units.Symbol(q)
	if sign != "" {
		unit += ", " + sign
	}
	t.Header = append(t.Header, name+" ["+unit+"]")
	t.factors = append(t.factors, t.units.Factor(q))
}

// row starts a row with the first column's value.
func (t *tableMaker) row(si float64) {
	t.Rows = append(t.Rows, make([]Cell, 0, len(t.Header)))
	t.cell(si, true)
}

// cell fills the row's next column.
func (t *tableMaker) cell(si float64, ok bool) {
	row := &t.Rows[len(t.Rows)-1]
	c := Cell{Given: ok}
	if ok {
		c.Value = si / t.factors[len(*row)]
	}
	*row = append(*row, c)
}
