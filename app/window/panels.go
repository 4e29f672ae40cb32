package window

import (
	"slices"
	"strings"

	"bowline/app/check/launch"
	"bowline/app/check/travel"
	"bowline/app/form"
	"bowline/app/panel"
	"bowline/app/tune/here"
	"bowline/app/tune/holes"
	"bowline/app/tune/preload"
	"bowline/app/tune/setups"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// registry lists the panels by tab, in the order of tabs, pages and menu. Several
// that can be on show at any time are pages of their tab. Where a tab has one for
// a travel and one for the launch, these take turns.
var registry = []entry{
	{"Tune", always, here.New},
	{"Tune", always, holes.New},
	{"Tune", always, setups.New},
	{"Tune", always, preload.New},
	{"Check", atTravel, travel.New},
	{"Check", inLaunch, launch.New},
}

// firstPanel is the title of the panel that is on show first.
const firstPanel = "Check"

// entry is one line of the registry.
type entry struct {
	tab  string
	when when
	make func(panel.Host) panel.Panel
}

// when says while what is looked at a panel can be on show.
type when int

const (
	always when = iota
	atTravel
	inLaunch
)

// met reports whether a panel can be on show while the launch is looked at, or a
// travel.
func (w when) met(launching bool) bool {
	return w == always || (w == inLaunch) == launching
}

// onShow returns the index in the registry of the panel that is on show in a tab
// with a page chosen.
func onShow(tab string, page int, launching bool) int {
	for i, e := range registry {
		if e.tab == tab && e.when.met(launching) {
			if page == 0 {
				return i
			}
			page--
		}
	}
	panic("window: the tab " + tab + " has no such page")
}

// paged reports whether a tab has pages.
func paged(tab string) bool {
	pages := 0
	for _, e := range registry {
		if e.tab == tab && e.when == always {
			pages++
		}
	}
	return pages > 1
}

// panels are the panels in their tabs.
type panels struct {
	list    []panel.Panel       // as in the registry
	objects []fyne.CanvasObject // the words of each
	tabs    *container.AppTabs
	pages   map[string]*container.AppTabs // of a tab that has some, by its title
	turns   map[string]*fyne.Container    // what another tab shows, by its title
	shown   int                           // index of the panel on show
}

// newPanels makes the panels; host is what they are handed. turned is called
// when another tab or page is chosen.
func newPanels(host panel.Host, turned func()) *panels {
	p := &panels{tabs: container.NewAppTabs(), pages: map[string]*container.AppTabs{}, turns: map[string]*fyne.Container{}}
	for _, e := range registry {
		page := form.NewPage()
		host.Page = page
		made := e.make(host)
		page.Add(made.Words())
		object := page.Object()
		p.list, p.objects = append(p.list, made), append(p.objects, object)
		p.place(e.tab, made.Title(), object)
	}
	chosen := func(*container.TabItem) { turned() }
	p.tabs.OnSelected = chosen
	for _, pages := range p.pages {
		pages.OnSelected = chosen
	}
	return p
}

// place gives the words of a panel their place in its tab.
func (p *panels) place(tab, title string, object fyne.CanvasObject) {
	switch {
	case paged(tab):
		if p.pages[tab] == nil {
			p.pages[tab] = container.NewAppTabs()
			p.tabs.Append(container.NewTabItem(tab, p.pages[tab]))
		}
		p.pages[tab].Append(container.NewTabItem(title, steady(object)))
	case p.turns[tab] == nil:
		p.turns[tab] = container.NewStack(object)
		p.tabs.Append(container.NewTabItem(tab, steady(p.turns[tab])))
	}
}

// choose puts on show what belongs to the tab and page chosen and to travel or
// launch.
func (p *panels) choose(launching bool) {
	tab, page := p.tabs.Selected().Text, 0
	if pages := p.pages[tab]; pages != nil {
		page = pages.SelectedIndex()
	}
	p.shown = onShow(tab, page, launching)
	for tab, turn := range p.turns {
		swap(turn, p.objects[onShow(tab, 0, launching)])
	}
}

// current returns the panel on show.
func (p *panels) current() panel.Panel { return p.list[p.shown] }

// open chooses the tab and the page of a panel.
func (p *panels) open(index int) {
	e := registry[index]
	p.tabs.SelectIndex(slices.IndexFunc(p.tabs.Items, func(t *container.TabItem) bool { return t.Text == e.tab }))
	if pages := p.pages[e.tab]; pages != nil {
		title := p.list[index].Title()
		pages.SelectIndex(slices.IndexFunc(pages.Items, func(t *container.TabItem) bool { return t.Text == title }))
	}
}

// named returns the index of the panel with a title.
func (p *panels) named(title string) int {
	return slices.IndexFunc(p.list, func(one panel.Panel) bool { return one.Title() == title })
}

// label names a panel in the menu: a page by its tab too.
func (p *panels) label(index int) string {
	title := p.list[index].Title()
	if tab := registry[index].tab; p.pages[tab] != nil {
		return tab + ": " + strings.ToLower(title)
	}
	return title
}

// commitPending takes what has been typed in any panel, and reports whether all
// of it could be.
func (p *panels) commitPending() bool {
	for _, one := range p.list {
		if t, ok := one.(panel.Typing); ok && !t.CommitPending() {
			return false
		}
	}
	return true
}

// restorePending takes back what has been typed in any panel and is refused.
func (p *panels) restorePending() {
	for _, one := range p.list {
		if t, ok := one.(panel.Typing); ok {
			t.RestorePending()
		}
	}
}

// leave has each panel ask about what it holds and the car does not, before it
// goes on.
func (p *panels) leave(then func()) {
	for _, one := range slices.Backward(p.list) {
		if k, ok := one.(panel.Keeper); ok {
			next := then
			then = func() { k.Leave(next) }
		}
	}
	then()
}

// swap puts an object in place of what a stack holds.
func swap(stack *fyne.Container, o fyne.CanvasObject) {
	if len(stack.Objects) == 1 && stack.Objects[0] == o {
		return
	}
	stack.Objects = []fyne.CanvasObject{o}
	stack.Refresh()
}
