package panel

import (
	"slices"

	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Exhibit is one thing of a panel's evidence, with its name.
type Exhibit struct {
	Name   string
	Object fyne.CanvasObject
}

// Gallery fills a panel's evidence with one exhibit at a time, chosen by name.
func Gallery(exhibits ...Exhibit) *container.AppTabs {
	tabs := container.NewAppTabs()
	for _, e := range exhibits {
		tabs.Append(container.NewTabItem(e.Name, e.Object))
	}
	return tabs
}

// Charts returns charts as exhibits.
func (h Host) Charts(keys ...chart.Key) []Exhibit {
	var list []Exhibit
	for _, key := range keys {
		kinds := plotting.Kinds()
		i := slices.IndexFunc(kinds, func(k plotting.Kind) bool { return k.Key == key })
		list = append(list, Exhibit{kinds[i].Name, h.Chart(key)})
	}
	return list
}
