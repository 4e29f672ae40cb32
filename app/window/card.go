package window

import (
	"context"
	"strings"
	"time"

	"bowline/app/report"
	"bowline/model/car"
)

// printCard asks for a file and writes the card that says how to get from the
// current setup to other holes.
func (w *Window) printCard(to car.Holes) {
	if !w.settled() {
		return
	}
	card, err := report.NewCard(context.Background(), w.doc.Car(), w.doc.Setup(), to, w.study.Library(), w.study.Units())
	if err != nil {
		w.fail(err)
		return
	}
	name := w.fileName() + "-holes-" + strings.ReplaceAll(to.String(), "·", "-") + ".pdf"
	w.askFile("Card as PDF", ".pdf", name, func(path string) {
		if err := card.Save(path, time.Now()); err != nil {
			w.fail(err)
			return
		}
		w.say("Card written to " + path)
	})
}
