package window

import (
	"bowline/app/readout"
	"bowline/app/study"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// setupsPanel answers the racer what the setups differ by and what the car did
// with them.
type setupsPanel struct {
	study   *study.Study
	verdict *readout.Prose
	object  fyne.CanvasObject
}

func newSetupsPanel(w *Window) *setupsPanel {
	p := &setupsPanel{study: w.study, verdict: words(theme.ColorNameForeground)}
	p.object = scrolled(p.verdict)
	return p
}

func (p *setupsPanel) charts() []string { return nil }

func (p *setupsPanel) refresh() {}
