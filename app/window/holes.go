package window

import (
	"bowline/app/readout"
	"bowline/app/study"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// holesPanel answers the racer which holes to use: every combination, ranked by
// the target.
type holesPanel struct {
	study   *study.Study
	verdict *readout.Prose
	object  fyne.CanvasObject
}

func newHolesPanel(w *Window) *holesPanel {
	p := &holesPanel{study: w.study, verdict: words(theme.ColorNameForeground)}
	p.object = scrolled(p.verdict)
	return p
}

func (p *holesPanel) charts() []string { return nil }

func (p *holesPanel) refresh() {}
