package holes

import (
	"strings"
	"testing"

	"bowline/assets"
	"bowline/model/car"

	"fyne.io/fyne/v2/test"
)

// grow gives each of the four brackets so many holes.
func (d *desk) grow(n int) {
	d.T.Helper()
	if p := d.Doc.Apply("More holes", func(c *car.Car) {
		for _, row := range car.Rows {
			list := row.In(c)
			for last := (*list)[len(*list)-1]; len(*list) < n; {
				last.Y += 0.0005
				*list = append(*list, last)
			}
		}
	}); p != nil {
		d.T.Fatal(p)
	}
}

func TestProgressAndStop(t *testing.T) {
	d := searching(t)
	p := d.p
	if p.status.Visible() || p.progress.Text() != "" {
		t.Errorf("after the search it says %q", p.progress.Text())
	}
	// A run that takes long.
	d.grow(20)
	for p.Refresh(); !p.status.Visible(); p.Refresh() {
		d.Wait()
	}
	if got := p.progress.Text(); !strings.HasSuffix(got, " of 160,000 combinations searched") || p.button.Text != "Stop" || !p.button.Visible() {
		t.Errorf("after a while it says %q beside %q", got, p.button.Text)
	}
	test.Tap(p.button)
	d.Settle()
	if p.progress.Text() != "The search was stopped." || p.button.Text != "Search" || d.Study.Table() != nil {
		t.Errorf("after the stop it says %q beside %q", p.progress.Text(), p.button.Text)
	}
	// Another car is searched even after a stop.
	d.Example(assets.CarNames()[0])
	d.Settle()
	if d.Study.TableOutdated() {
		t.Error("another car is not searched")
	}
}

func TestTheListStaysWhenTheSearchIsStopped(t *testing.T) {
	d := searching(t)
	p, found := d.p, d.Study.Table()
	d.Study.StopSearch()
	d.Edit()
	if d.Study.Table() != found || p.list.Len() != len(found.Combinations) {
		t.Error("the list does not stay")
	}
	if p.progress.Text() != "The search was stopped; the list is of the car as it was before." || p.button.Text != "Search" {
		t.Errorf("after the stop it says %q beside %q", p.progress.Text(), p.button.Text)
	}
	test.Tap(p.button)
	d.Settle()
	if d.Study.TableOutdated() || p.status.Visible() {
		t.Errorf("after the search it says %q", p.progress.Text())
	}
}

func TestASearchThatCannotBe(t *testing.T) {
	d := searching(t)
	d.grow(23)
	d.Settle()
	p := d.p
	want := "Not searched: the brackets offer 279841 choices of holes, and a search takes 250000; take holes out of the longest rows."
	if got := p.progress.Text(); got != want || !p.status.Visible() || p.button.Visible() {
		t.Errorf("it says\n%q, want\n%q", got, want)
	}
}
