package report

// section is a part of the report as people read it: a title, paragraphs, and
// a table under them. Text and PDF lay the same sections out.
type section struct {
	title string
	lines []string // Paragraphs.
	list  bool     // The paragraphs are points of a list.
	table table
}

// table has columns of cells. Groups stand over the titles, each over as many
// columns as it spans; a column without a title belongs to the labels.
type table struct {
	groups  []group
	columns []heading
	rows    [][]cell
}

// group is a heading over several columns.
type group struct {
	title string
	span  int
}

// heading is a column's title with the unit of its figures under it.
type heading struct{ title, unit string }

// cell is a figure, aligned right, and words behind it, aligned left.
type cell struct{ figure, words string }

// said is a cell without a figure.
func said(s string) cell { return cell{words: s} }
