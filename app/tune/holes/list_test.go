package holes

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bowline/app/panel/paneltest"
	"bowline/app/study"
	"bowline/app/words"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

func TestTheListHasRanksColumnsAndReasons(t *testing.T) {
	d := searching(t).all()
	for _, u := range []units.System{units.US, units.SI} {
		d.Doc.SetUnits(u)
		d.Settle()
		l := d.p.list
		if n := len(l.headings()); n != len(l.columns)+2 {
			t.Fatalf("%d headings", n)
		}
		presents := 0
		for row := range l.places {
			p := &l.places[row]
			want := []string{fmt.Sprint(row + 1)}
			for _, c := range l.columns {
				text := c.Text(p, u)
				if symbol := u.Symbol(c.Quantity); symbol != "" {
					text = strings.TrimRight(strings.ReplaceAll(text, symbol, ""), " ")
				}
				want = append(want, text)
			}
			want = append(want, words.Reason(p, u))
			if p.Index == d.Study.Present() {
				want[1] += " •"
				presents++
			}
			for column := range want {
				if got, _ := l.Cell(row, column); got != want[column] {
					t.Errorf("row %d, column %d: %q, want %q", row, column, got, want[column])
				}
			}
		}
		if presents != 1 {
			t.Errorf("%d rows are the holes in use", presents)
		}
	}
}

// Nearly parallel bars send the instant center farther off than a number tells.
func TestFarInstantCentersInWords(t *testing.T) {
	d := demo(t).all()
	l := d.p.list
	found := map[string]int{}
	for at, c := range l.columns {
		for row := range l.places {
			p := &l.places[row]
			text, _ := l.Cell(row, at+1)
			want := map[string][2]string{"instant_center_x": {"far", "far back"}, "instant_center_z": {"far", "far down"}}[c.Key]
			x, ok := c.Value(p)
			switch far := ok && math.Abs(x) > 9.99 && want[0] != ""; {
			case far && x > 0 && text != want[0], far && x < 0 && text != want[1], !far && strings.HasPrefix(text, "far"):
				t.Errorf("%s of %v m reads %q", c.Key, x, text)
			case far:
				found[text]++
			}
		}
	}
	if len(found) < 2 {
		t.Errorf("only %v are far off: the test proves little", found)
	}
}

// Rows that do not fulfil the wishes, and holes that cannot be used, stay and
// are told apart.
func TestUnmetAndRefusedRowsAreToldApart(t *testing.T) {
	d := searching(t).all()
	d.Study.SetWishes(holes.Wishes{OneBar: true})
	d.Settle()
	l := d.p.list
	muted := 0
	for row := range l.places {
		p := &l.places[row]
		_, color := l.Cell(row, 3)
		if (color == theme.ColorNamePlaceHolder) != (p.Unmet != 0) {
			t.Errorf("%v: color %q, unmet %d", p.Holes(), color, p.Unmet)
		}
		if p.Unmet != 0 {
			muted++
			if why, _ := l.Cell(row, len(l.columns)+1); !strings.Contains(why, "both pairs would be moved") {
				t.Errorf("%v: %q", p.Holes(), why)
			}
		}
	}
	if muted == 0 || muted == 36 {
		t.Errorf("%d rows are muted", muted)
	}

	// A bar so steep that the travel cannot be closed.
	d.Study.SetWishes(holes.Wishes{})
	d.Doc.Apply("Short bar", func(c *car.Car) { c.Chassis.Upper[0].X = 5 * paneltest.Inch })
	d.Settle()
	refused := 0
	for row := range l.places {
		p := &l.places[row]
		if p.Combination().Usable() {
			continue
		}
		refused++
		_, color := l.Cell(row, 0)
		text, _ := l.Cell(row, 2)
		why, _ := l.Cell(row, len(l.columns)+1)
		if color != theme.ColorNamePlaceHolder || text != "–" || why == "" {
			t.Errorf("%v: color %q, %q, %q", p.Holes(), color, text, why)
		}
		d.Study.Pick(p.Index)
		d.Settle()
		if !d.p.chosen.use.Disabled() || !d.p.chosen.keep.Disabled() || d.p.chosen.reason.Text() == "" {
			t.Error("holes that cannot be used can be")
		}
	}
	if refused == 0 || len(l.places) != 36 {
		t.Errorf("%d of %d rows are refused", refused, len(l.places))
	}
	wantRankingSaid(t, d)
}

func TestTheListIsSortedByItsHeadings(t *testing.T) {
	d := searching(t).all()
	l := d.p.list
	values := func(column int) []float64 {
		var list []float64
		for i := range l.places {
			x, _ := l.columns[column-1].Value(&l.places[i])
			list = append(list, x)
		}
		return list
	}
	byRank := func() bool {
		for i := range l.places {
			if l.places[i].Rank != i+1 {
				return false
			}
		}
		return true
	}
	for column := 1; column <= len(l.columns); column++ {
		l.table.OnSort(column)
		if !slices.IsSorted(values(column)) || l.sorted() != column {
			t.Errorf("column %d is not rising at first", column)
		}
		l.table.OnSort(column)
		falling := values(column)
		slices.Reverse(falling)
		if !slices.IsSorted(falling) || !l.falling {
			t.Errorf("column %d is not falling then", column)
		}
		// It stays so for the next list.
		d.Study.SetWishes(holes.Wishes{OneBar: column%2 == 0})
		d.Settle()
		falling = values(column)
		slices.Reverse(falling)
		if !slices.IsSorted(falling) {
			t.Errorf("column %d is in another order after a new ranking", column)
		}
		l.table.OnSort(column)
		if !byRank() || l.sorted() != listRank || l.falling {
			t.Errorf("column %d: not by rank at last", column)
		}
	}
	l.table.OnSort(listRank)
	if l.places[0].Rank != 36 || l.places[35].Rank != 1 {
		t.Error("a click on the ranks does not turn them around")
	}
	l.table.OnSort(len(l.columns) + 1)
	if l.places[0].Rank != 36 {
		t.Error("reasons are an order")
	}
	if d.Study.Ranking()[0].Rank != 1 {
		t.Error("the study's ranking is sorted too")
	}
}

// firstSeen returns the first row in sight whole, by where a key that asks for it
// leads to.
func (d *desk) firstSeen() int {
	d.T.Helper()
	table, l := d.p.list.table, d.p.list
	table.Select(study.None)
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	return slices.IndexFunc(l.places, func(p holes.Place) bool { return p.Index == table.Selected() })
}

// What is asked for anew begins at the top, whatever row is selected; a row
// picked in the side view comes into sight once.
func TestTheListBeginsAtItsTop(t *testing.T) {
	d := demo(t).all()
	l := d.p.list
	deep := func() {
		l.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
		d.Settle()
	}
	for what, do := range map[string]func(){
		"the order":  func() { l.table.OnSort(4) },
		"the filter": func() { d.condition("anti_squat", ">20") },
		"the wishes": func() { d.Study.SetWishes(holes.Wishes{OneBar: !d.Study.Wishes().OneBar}) },
		"the target": func() { d.Doc.Apply("Target", func(c *car.Car) { c.Check.TargetAntiSquat[1] += 0.1 }) },
	} {
		deep()
		do()
		d.Settle()
		d.p.Refresh() // as when the pointer moves
		if got := d.firstSeen(); got != 0 {
			t.Errorf("after a change of %s the list begins at row %d", what, got)
		}
	}
	// Other cars and other holes in use leave it where it is.
	deep()
	d.Edit()
	if d.firstSeen() == 0 {
		t.Error("an edit leads to the top")
	}
	// Picked elsewhere, a row comes into sight; scrolled away it stays so.
	l.table.ScrollToTop()
	last := l.places[len(l.places)-1].Index
	d.Study.Pick(last)
	d.Settle()
	if l.table.Selected() != last || d.firstSeen() == 0 {
		t.Error("a row picked in the side view stays out of sight")
	}
	l.table.ScrollToTop()
	d.Study.Point(l.places[0].Index)
	d.Settle()
	if got := d.firstSeen(); got != 0 {
		t.Errorf("when the pointer moves the list goes back to row %d", got)
	}
}

// The column of the holes has room for the highest numbers that there are.
func TestHolesHaveRoom(t *testing.T) {
	d := searching(t).all()
	l := d.p.list
	few := l.headings()[listHoles]
	if few.Unit != "UC·LC·UH·LH" {
		t.Errorf("the heading tells the order %q", few.Unit)
	}
	for _, row := range car.Rows {
		d.Doc.Apply("Holes", func(c *car.Car) {
			if list := row.In(c); len(*list) < 12 && row.String() != car.HousingUpper.String() {
				for at := (*list)[0]; len(*list) < 12; {
					at.Y += 0.2 * paneltest.Inch
					*list = append(*list, at)
				}
			}
		})
	}
	d.Settle()
	counts := 0
	for _, row := range car.Rows {
		if len(*row.In(d.Doc.Car())) == 12 {
			counts++
		}
	}
	many := l.headings()[listHoles]
	if counts == 0 || many.Width != few.Width+counts {
		t.Fatalf("with %d rows of 12 holes the width is %d, before %d", counts, many.Width, few.Width)
	}
	digit := fyne.MeasureText("0", theme.TextSize(), fyne.TextStyle{}).Width
	for row := range l.places {
		text, _ := l.Cell(row, listHoles)
		if w := fyne.MeasureText(text, theme.TextSize(), fyne.TextStyle{}).Width; w > float32(many.Width)*digit {
			t.Errorf("%q is %.0f wide and has %.0f", text, w, float32(many.Width)*digit)
		}
	}
}

// The list and the side view point at the same combination, and pick the same.
func TestListAndStudyPointAlike(t *testing.T) {
	d := searching(t).all()
	l := d.p.list
	l.table.OnHovered(7)
	d.Settle()
	p := d.Study.Place(7)
	if want := p.Holes().String() + ": " + words.Reason(p, units.US) + "."; d.Study.Pointed() != 7 || d.Said != want {
		t.Errorf("pointed at %d, the window says %q, want %q", d.Study.Pointed(), d.Said, want)
	}
	l.table.OnHovered(study.None)
	if d.Study.Pointed() != study.None || d.Said != "" {
		t.Errorf("pointed at %d, the window says %q", d.Study.Pointed(), d.Said)
	}
	l.table.OnSelected(9)
	d.Settle()
	if d.Study.Picked() != 9 || !strings.HasPrefix(d.p.chosen.title.Text(), "Holes "+d.Study.Place(9).Holes().String()+", rank ") {
		t.Errorf("picked %d, the card is %q", d.Study.Picked(), d.p.chosen.title.Text())
	}
	d.Study.Pick(20)
	d.Settle()
	if l.table.Selected() != 20 {
		t.Errorf("%d is selected", l.table.Selected())
	}
	l.table.OnPointed(3)
	if d.Said != l.columns[2].Help {
		t.Errorf("of a heading the window says %q", d.Said)
	}
	l.table.OnActivated(20)
	d.Settle()
	if d.Study.Present() != 20 || d.Doc.UndoLabel() != "Use holes "+d.Study.Place(20).Holes().String() {
		t.Errorf("in use is %d, undo says %q", d.Study.Present(), d.Doc.UndoLabel())
	}
}
