package window

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"bowline/app/panel"
	"bowline/app/report"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
)

// export asks for a file and writes one chart; the ending of the name chooses
// the format.
func (w *Window) export(key chart.Key) {
	if !w.settled() {
		return
	}
	drawn := w.charts.Chart(key)
	if drawn == nil {
		w.say("The launch of this car is still being computed.")
		return
	}
	w.askFile("Export the chart as .pdf, .svg, .png or .csv", "", w.fileName()+"-"+string(key)+".pdf", func(path string) {
		if err := w.writeChart(path, drawn); err != nil {
			w.fail(err)
			return
		}
		w.say("Exported " + path)
	})
}

// writeChart exports a chart to a file.
func (w *Window) writeChart(path string, drawn *chart.Chart) error {
	format := chart.Format(strings.TrimPrefix(strings.ToLower(filepath.Ext(path)), "."))
	var data bytes.Buffer
	if err := chart.Export(&data, format, drawn, chart.Style{Units: w.study.Units()}, chart.Sheet{}); err != nil {
		return err
	}
	return carfile.Write(path, data.Bytes())
}

// exportAll asks for a folder and writes every chart in every format.
func (w *Window) exportAll() {
	if !w.settled() {
		return
	}
	d := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err != nil || folder == nil {
			w.fail(err)
			return
		}
		w.exportTo(folder.Path())
	}, w.window)
	d.SetTitleText("Export all charts into a folder")
	d.SetConfirmText("Export here")
	w.place(d)
}

// exportTo writes every chart in every format, asking before files are
// replaced.
func (w *Window) exportTo(folder string) {
	files := map[string]*chart.Chart{}
	taken := 0
	for _, drawn := range w.charts.All() {
		if drawn.Blank {
			continue
		}
		for _, format := range chart.Formats {
			path := filepath.Join(folder, w.fileName()+"-"+string(drawn.Key)+"."+string(format))
			files[path] = drawn
			if _, err := os.Stat(path); err == nil {
				taken++
			}
		}
	}
	write := func() {
		for path, drawn := range files {
			if err := w.writeChart(path, drawn); err != nil {
				w.fail(err)
				return
			}
		}
		w.say(fmt.Sprintf("Exported %d files to %s", len(files), folder))
	}
	if taken == 0 {
		write()
		return
	}
	w.ask("Replace files", fmt.Sprintf("%s has %d of these %d files already.", folder, taken, len(files)),
		panel.Answer{Name: "Replace them", Do: write}, panel.Answer{Name: "Cancel"})
}

// printReport asks for a file and writes the report's pages.
func (w *Window) printReport() {
	if !w.settled() {
		return
	}
	w.askFile("Report as PDF", ".pdf", w.fileName()+".pdf", func(path string) {
		launched := w.study.Launch()
		if w.study.LaunchOutdated() {
			launched = nil
		}
		worth, current, err := w.study.Worth()
		if launched == nil || !current || err != nil {
			worth = nil // it is listed without
		}
		if err := report.SavePDF(path, w.study.Result(), launched, worth, w.study.Units(), time.Now()); err != nil {
			w.fail(err)
			return
		}
		w.say("Report written to " + path)
	})
}

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
