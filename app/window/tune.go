package window

import (
	"slices"

	"fyne.io/fyne/v2/container"
)

// tunePages are the pages of the tab Tune: the holes in use, all combinations
// of holes, and the setups.
type tunePages struct {
	tabs   *container.AppTabs
	panels []int // index of the window's panel, by page
}

// newTunePages returns the pages; turned is called when another one is chosen.
func newTunePages(here *herePanel, holes *holesPanel, setups *setupsPanel, turned func()) *tunePages {
	p := &tunePages{
		tabs: container.NewAppTabs(
			container.NewTabItem("Here", steady(here.object)),
			container.NewTabItem("Holes", steady(holes.object)),
			container.NewTabItem("Setups", steady(setups.object)),
		),
		panels: []int{panelHere, panelHoles, panelSetups},
	}
	p.tabs.OnSelected = func(*container.TabItem) { turned() }
	return p
}

// shown returns the index of the panel on show.
func (p *tunePages) shown() int { return p.panels[p.tabs.SelectedIndex()] }

// show puts a panel on show.
func (w *Window) show(panel int) {
	if page := slices.Index(w.tune.panels, panel); page >= 0 {
		w.tabs.SelectIndex(0)
		w.tune.tabs.SelectIndex(page)
		return
	}
	w.tabs.SelectIndex(1)
	w.study.SetLaunching(panel == panelLaunch)
}
