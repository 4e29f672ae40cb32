package window

import (
	"strings"
	"testing"

	"bowline/app/form"
	"bowline/app/look"
	"bowline/model/car"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// A bar that the pointer is on lies beside what a page holds.
func TestBarsLieBesideThePage(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	if bar := theme.ScrollBarSize(); bar > form.BarRoom {
		t.Errorf("a bar is %v wide and has %v", bar, form.BarRoom)
	}
}

// Only the panel on show follows a drag; the other one is right when its turn
// comes.
func TestThePanelOnShowFollows(t *testing.T) {
	d, _ := openDesk(t)
	if first := d.panels.current().Title(); first != "Check" {
		t.Fatalf("%s is on show first", first)
	}
	check := d.says()
	d.show("Here")
	here := d.says()
	d.show("Check")
	d.study.Choose(car.ChassisLower, 0)
	d.settle()
	if d.says() == check {
		t.Error("the panel on show has not followed")
	}
	d.panels.tabs.SelectIndex(0)
	d.settle()
	if now := d.says(); now == here || !strings.Contains(now, "IC ahead") {
		t.Errorf("the panel shown now is out of date: %q", now)
	}
}

// Tabs, pages and travel or launch decide what is on show.
func TestWhatIsOnShow(t *testing.T) {
	for _, c := range []struct {
		tab       string
		page      int
		launching bool
		want      string
	}{
		{"Tune", 0, false, "Here"}, {"Tune", 1, false, "Holes"}, {"Tune", 2, true, "Setups"}, {"Tune", 3, false, "Preload"},
		{"Check", 0, false, "Check"}, {"Check", 0, true, "Launch"},
	} {
		d := newDesk(t)
		if got := d.panels.list[onShow(c.tab, c.page, c.launching)].Title(); got != c.want {
			t.Errorf("in %s, page %d, launching %v, it is %s, want %s", c.tab, c.page, c.launching, got, c.want)
		}
	}
}

// Every panel has its line in the menu and its key, and is there when chosen.
func TestPanelsAreInTheMenu(t *testing.T) {
	d := newDesk(t)
	for _, c := range []struct{ label, want string }{
		{"Tune: here", "Here"}, {"Tune: holes", "Holes"}, {"Tune: setups", "Setups"}, {"Tune: preload", "Preload"}, {"Check", "Check"}, {"Launch", "Launch"}, {"Check", "Check"},
	} {
		d.choose("View", c.label)
		if got := d.panels.current().Title(); got != c.want {
			t.Errorf("%q shows %s", c.label, got)
		}
		if d.item("View", c.label).Shortcut == nil {
			t.Errorf("%q has no key", c.label)
		}
	}
}
