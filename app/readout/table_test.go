package readout

import (
	"image"
	"image/color"
	"testing"

	"bowline/app/look"
	"bowline/plotting/palette"

	"fyne.io/fyne/v2"
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

// picture draws a table and copies what it shows.
func picture(t *Table) *image.RGBA {
	size := t.Size()
	img := t.sheet.Draw(int(size.Width), int(size.Height)).(*image.RGBA)
	return &image.RGBA{Pix: append([]byte(nil), img.Pix...), Stride: img.Stride, Rect: img.Rect}
}

// count returns how many pixels of a part of a picture have just a color.
func count(img *image.RGBA, part image.Rectangle, c color.RGBA) int {
	n := 0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if img.RGBAAt(x, y) == c {
				n++
			}
		}
	}
	return n
}

// place returns the pixels of a cell.
func place(t *Table, row, column int) image.Rectangle {
	top := float32(row+1) * pitch()
	return image.Rect(int(t.column(column)), int(top), int(t.column(column+1)), int(top+pitch()))
}

func TestSetWritesTheCell(t *testing.T) {
	table := shown(t)
	table.Set(1, 0, "9,475 lb", "")
	table.Set(0, 1, "22.50 in", theme.ColorNameError)
	if table.Text(1, 0) != "9,475 lb" || table.Text(0, 0) != "" {
		t.Errorf("cells %q and %q", table.Text(1, 0), table.Text(0, 0))
	}
	img := picture(table)
	for _, c := range []struct {
		row, column int
		color       color.RGBA
		inked       bool
	}{
		{1, 0, palette.Light.Ink, true}, {0, 1, palette.Light.Bad, true},
		{0, 0, palette.Light.Ink, false}, {1, 1, palette.Light.Ink, false},
	} {
		if n := count(img, place(table, c.row, c.column), c.color); n > 0 != c.inked {
			t.Errorf("row %d, column %d: %d pixels of its color", c.row, c.column, n)
		}
	}
}

func TestHeadingsAndNamesAreWritten(t *testing.T) {
	table := shown(t)
	before := picture(table)
	table.SetHeading(1, "Here: 2.00 in droop")
	after := picture(table)
	if n := count(before, place(table, -1, 0), palette.Light.Ink); n == 0 {
		t.Error("no heading")
	}
	if a, b := count(before, place(table, -1, 1), palette.Light.Ink), count(after, place(table, -1, 1), palette.Light.Ink); b <= a {
		t.Errorf("%d pixels of ink in a short heading, %d in a long one", a, b)
	}
	if n := count(before, image.Rect(0, int(pitch()), 100, int(2*pitch())), palette.Light.Muted); n == 0 {
		t.Error("no name")
	}
}

// What is the same is not drawn anew.
func TestSetLeavesWhatIsTheSame(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	want := picture(table)
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	if got := picture(table); string(got.Pix) != string(want.Pix) {
		t.Error("the same words look different")
	}
	table.Set(0, 0, "22.50 in", theme.ColorNameError)
	if got := picture(table); string(got.Pix) == string(want.Pix) {
		t.Error("another color looks the same")
	}
}

func TestAnotherThemeRecolorsTheTable(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", theme.ColorNameSuccess)
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Dark))
	img := picture(table)
	if count(img, place(table, 0, 0), palette.Dark.Good) == 0 || count(img, img.Rect, palette.Dark.Background) == 0 || count(img, img.Rect, palette.Dark.Raised) == 0 {
		t.Error("the dark theme did not reach value, background and stripe")
	}
}

func TestColumnsStandBesideEachOther(t *testing.T) {
	table := shown(t)
	if a, b := table.column(0), table.column(1); !(a > 130 && b-a > 130 && 420-b > 130) {
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

func TestPictureIsSharpOnAScaledScreen(t *testing.T) {
	table := shown(t)
	table.Set(0, 0, "22.50 in", "")
	single := count(picture(table), place(table, 0, 0), palette.Light.Ink)
	img := table.sheet.Draw(840, 200).(*image.RGBA)
	p := place(table, 0, 0)
	double := count(img, image.Rect(2*p.Min.X, 2*p.Min.Y, 2*p.Max.X, 2*p.Max.Y), palette.Light.Ink)
	if double < 3*single {
		t.Errorf("%d pixels of full ink at double scale, %d at single", double, single)
	}
}

func BenchmarkTable(b *testing.B) {
	test.NewTempApp(b)
	names := make([]string, 12)
	table := New([]string{"Before", "After"}, names)
	table.Resize(fyne.NewSize(420, 260))
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		for row := range names {
			table.Set(row, i%2, "push 10,825 lb", "")
		}
		table.sheet.Draw(420, 260)
	}
}

// Columns begin where their shares of the width add up to.
func TestSharesOfTheWidth(t *testing.T) {
	table := shown(t)
	table.SetShares(0.1, 0.6, 0.3)
	for i, want := range []float32{42, 294} {
		if got := table.column(i); got < want-0.01 || got > want+0.01 {
			t.Errorf("column %d begins at %v of 420, want %v", i, got, want)
		}
	}
}
