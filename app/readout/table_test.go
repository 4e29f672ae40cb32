package readout

import (
	"image/color"
	"testing"

	"bowline/app/look"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// shown returns a table of two rows and two columns in a light window.
func shown(t *testing.T) *Table {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	table := New([]string{"Before", "After"}, []string{"Length", "Force"})
	w := test.NewTempWindow(t, table)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(420, 100))
	return table
}

func TestSetWritesTheCell(t *testing.T) {
	table := shown(t)
	table.Set(1, 0, "9,475 lb", "")
	table.Set(0, 1, "22.50 in", theme.ColorNameError)
	for _, c := range []struct {
		row, column int
		text        string
		color       color.Color
	}{
		{0, 0, "", palette.Light.Ink}, {0, 1, "22.50 in", palette.Light.Bad},
		{1, 0, "9,475 lb", palette.Light.Ink}, {1, 1, "", palette.Light.Ink},
	} {
		if table.Text(c.row, c.column) != c.text || table.cells[c.row][c.column].Color != c.color {
			t.Errorf("row %d, column %d: %q in %v, want %q in %v", c.row, c.column,
				table.Text(c.row, c.column), table.cells[c.row][c.column].Color, c.text, c.color)
		}
	}
	table.SetHeading(1, "Here: 2.00 in droop")
	if table.header[1].Text != "Here: 2.00 in droop" || table.header[0].Text != "Before" {
		t.Errorf("headings %q and %q", table.header[0].Text, table.header[1].Text)
	}
}

// A cell is painted anew only when its words or its color differ.
func TestSetLeavesWhatIsTheSame(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	cell, untouched := table.cells[0][0], color.Color(color.White)
	for _, c := range []struct {
		text  string
		color fyne.ThemeColorName
		want  color.Color
	}{
		{"22.50 in", theme.ColorNameSuccess, untouched},
		{"22.51 in", theme.ColorNameSuccess, palette.Light.Good},
		{"22.51 in", theme.ColorNameError, palette.Light.Bad},
		{"22.51 in", "", palette.Light.Ink},
		{"22.51 in", "", untouched},
	} {
		cell.Color = untouched
		if table.Set(0, 0, c.text, c.color); cell.Color != c.want {
			t.Errorf("after %q in %q the cell has the color %v, want %v", c.text, c.color, cell.Color, c.want)
		}
	}
}

func TestAnotherThemeRecolorsTheTable(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Dark))
	for what, c := range map[string]struct{ got, want color.Color }{
		"heading":       {table.header[0].Color, palette.Dark.Ink},
		"name":          {table.names[0].Color, palette.Dark.Muted},
		"colored value": {table.cells[0][0].Color, palette.Dark.Good},
		"plain value":   {table.cells[1][1].Color, palette.Dark.Ink},
		"stripe":        {table.rules[1].FillColor, palette.Dark.Raised},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", what, c.got, c.want)
		}
	}
	table.Set(0, 1, "17.00 in", theme.ColorNameError)
	if got := table.cells[0][1].Color; got != color.Color(palette.Dark.Bad) {
		t.Errorf("written in the dark, a cell is %v", got)
	}
}

// Rows stand below each other and columns beside each other, within the table.
func TestLayout(t *testing.T) {
	table := shown(t)
	left := func(c *canvas.Text) float32 { return c.Position().X }
	if n := table.names[1]; left(n) < 0 || n.Position().Y <= table.names[0].Position().Y || n.Position().Y >= table.MinSize().Height {
		t.Errorf("the second name stands at %v", n.Position())
	}
	for i, row := range table.cells {
		for j, c := range row {
			if left(c) != left(table.header[j]) {
				t.Errorf("row %d, column %d stands at %v, its heading at %v", i, j, left(c), left(table.header[j]))
			}
		}
	}
	if a, b := left(table.header[0]), left(table.header[1]); !(a > 130 && b-a > 130 && 420-b > 130) {
		t.Errorf("columns stand at %v and %v of 420", a, b)
	}
}

// The least size is that of the rows, whatever is written.
func TestMinSizeDoesNotFollowTheWords(t *testing.T) {
	table := shown(t)
	before := table.MinSize()
	table.Set(0, 0, "a value so long that it would need all the width of the table for itself", "")
	if after := table.MinSize(); after != before || before.Width > 420 || before.Width < 380 {
		t.Errorf("least size %v, after a long text %v", before, after)
	}
}
