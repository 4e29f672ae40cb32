package readout_test

import (
	"image"
	"slices"
	"testing"

	"bowline/app/internal/screen"
	"bowline/app/look"
	"bowline/app/readout"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

const width, height = 420, 100

// shown returns a table of two rows and two columns in a light window.
func shown(t testing.TB) *readout.Table {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	table := readout.New([]string{"Before", "After"}, []string{"Length", "Force"})
	w := test.NewTempWindow(t, table)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(width, height))
	return table
}

// draw draws a table at a scale of the screen and copies what it shows.
func draw(t *readout.Table, scale int) *image.RGBA {
	img := screen.Draw(t, scale*width, scale*height)
	return &image.RGBA{Pix: slices.Clone(img.Pix), Stride: img.Stride, Rect: img.Rect}
}

// picture is what a table shows on an unscaled screen.
func picture(t *readout.Table) *image.RGBA { return draw(t, 1) }

// differs returns the rectangle in which two pictures differ.
func differs(a, b *image.RGBA) image.Rectangle {
	var r image.Rectangle
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			if a.RGBAAt(x, y) != b.RGBAAt(x, y) {
				r = r.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return r
}

// wrote returns where a text comes to stand.
func wrote(t *readout.Table, row, column int, text string) image.Rectangle {
	before, was := picture(t), t.Text(row, column)
	t.Set(row, column, text, "")
	r := differs(before, picture(t))
	t.Set(row, column, was, "")
	return r
}

func TestSetWritesTheCell(t *testing.T) {
	table := shown(t)
	blank := picture(table)
	table.Set(1, 0, "9,475 lb", "")
	force := differs(blank, picture(table))
	table.Set(0, 1, "22.50 in", theme.ColorNameError)
	if table.Text(1, 0) != "9,475 lb" || table.Text(0, 0) != "" {
		t.Errorf("cells %q and %q", table.Text(1, 0), table.Text(0, 0))
	}
	img := picture(table)
	length := image.Rect(force.Max.X+1, 0, width, force.Min.Y)
	if screen.Inked(img, force, palette.Light.Ink) == 0 || screen.Inked(img, length, palette.Light.Bad) == 0 || screen.Inked(img, img.Rect, palette.Light.Bad) != screen.Inked(img, length, palette.Light.Bad) {
		t.Errorf("the force is written in %v; right and above of it there are %d pixels of the other value, in all %d",
			force, screen.Inked(img, length, palette.Light.Bad), screen.Inked(img, img.Rect, palette.Light.Bad))
	}
}

// Rows stand below the headings and each other, columns beside each other, with
// room for values with their units.
func TestCellsStandApart(t *testing.T) {
	table := shown(t)
	const value = "push 10,825 lb"
	at := func(row, column int) image.Rectangle { return wrote(table, row, column, value) }
	if a, b, c := at(0, 0), at(0, 1), at(1, 0); a.Max.X >= b.Min.X || a.Min.Y != b.Min.Y || a.Max.Y >= c.Min.Y || a.Min.X != c.Min.X || b.Max.X > width || c.Max.Y > height {
		t.Errorf("values are written in %v, %v and %v", a, b, c)
	}
	names := image.Rect(0, 0, at(0, 0).Min.X, height)
	if n := screen.Inked(picture(table), names, palette.Light.Muted); n == 0 {
		t.Error("no names beside the values")
	}
}

func TestHeadingsAreWritten(t *testing.T) {
	table := shown(t)
	before := picture(table)
	table.SetHeading(1, "Here: 2.00 in droop")
	if table.Heading(1) != "Here: 2.00 in droop" || table.Heading(0) != "Before" {
		t.Errorf("the headings are %q and %q", table.Heading(0), table.Heading(1))
	}
	changed, cell := differs(before, picture(table)), wrote(table, 0, 1, "22.50 in")
	if changed.Max.Y > cell.Min.Y || changed.Max.X <= cell.Max.X {
		t.Errorf("a longer heading changes %v over a value in %v", changed, cell)
	}
}

// What is the same is not drawn anew.
func TestSetLeavesWhatIsTheSame(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	table.SetHeading(1, "After")
	for _, c := range []struct {
		what string
		set  func()
		anew bool
	}{
		{"the same words", func() { table.Set(0, 0, "22.50 in", theme.ColorNameSuccess) }, false},
		{"the same heading", func() { table.SetHeading(1, "After") }, false},
		{"another color", func() { table.Set(0, 0, "22.50 in", theme.ColorNameError) }, true},
		{"other words", func() { table.Set(0, 0, "22.75 in", theme.ColorNameError) }, true},
		{"another heading", func() { table.SetHeading(1, "Behind") }, true},
	} {
		before := picture(table)
		anew := screen.Redraws(c.set) > 0
		if looks := !differs(before, picture(table)).Empty(); anew != c.anew || looks != c.anew {
			t.Errorf("%s: drawn anew %v, looks other %v", c.what, anew, looks)
		}
	}
}

func TestAnotherThemeRecolorsTheTable(t *testing.T) {
	table := shown(t)
	cell := wrote(table, 0, 0, "22.50 in")
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Dark))
	img := picture(table)
	if screen.Inked(img, cell, palette.Dark.Good) == 0 || screen.Inked(img, img.Rect, palette.Dark.Background) == 0 || screen.Inked(img, img.Rect, palette.Dark.Raised) == 0 {
		t.Error("the dark theme did not reach value, background and stripe")
	}
}

// The least size is that of the rows, whatever is written.
func TestMinSizeDoesNotFollowTheWords(t *testing.T) {
	table := shown(t)
	before := table.MinSize()
	table.Set(0, 0, "a value so long that it would need all the width of the table for itself", "")
	if after := table.MinSize(); after != before || before.Width > width || before.Height > height {
		t.Errorf("least size %v, after a long text %v", before, after)
	}
}

func TestPictureIsSharpOnAScaledScreen(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", "")
	single, double := draw(table, 1), draw(table, 2)
	if a, b := screen.Inked(single, single.Rect, palette.Light.Ink), screen.Inked(double, double.Rect, palette.Light.Ink); b < 3*a {
		t.Errorf("%d pixels of full ink at double scale, %d at single", b, a)
	}
}

// Columns begin where their shares of the width add up to.
func TestSharesOfTheWidth(t *testing.T) {
	table := shown(t)
	table.SetShares(0.1, 0.6, 0.3)
	const bearing = 2 // of a letter that is a stem
	for i, want := range []int{width / 10, width * 7 / 10} {
		if got := wrote(table, 0, i, "l").Min.X; got < want-bearing || got > want+bearing {
			t.Errorf("column %d begins at %v of %v, want %v", i, got, width, want)
		}
	}
}

func BenchmarkTable(b *testing.B) {
	test.NewTempApp(b)
	names := make([]string, 12)
	table := readout.New([]string{"Before", "After"}, names)
	table.Resize(fyne.NewSize(width, 260))
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		for row := range names {
			table.Set(row, i%2, "push 10,825 lb", "")
		}
		screen.Draw(table, width, 260)
	}
}
