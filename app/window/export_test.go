package window

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bowline/app/internal/screen"
	"bowline/model/car"
	"bowline/plotting"
	"bowline/plotting/chart"

	"fyne.io/fyne/v2/widget"
)

// checkFormat sees to it that a file holds what its ending promises.
func checkFormat(t *testing.T, path string) {
	t.Helper()
	data := []byte(read(t, path))
	switch ending := strings.ToLower(filepath.Ext(path)); ending {
	case ".pdf":
		if !bytes.HasPrefix(data, []byte("%PDF-")) {
			t.Errorf("%s begins with %q", path, data[:min(len(data), 8)])
		}
	case ".svg":
		if !bytes.Contains(data, []byte("<svg")) {
			t.Errorf("%s holds no <svg", path)
		}
	case ".png":
		if _, err := png.Decode(bytes.NewReader(data)); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	case ".csv":
		rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
		if err != nil || len(rows) < 10 {
			t.Errorf("%s: %d rows, %v", path, len(rows), err)
		}
	default:
		t.Errorf("no format ends in %q", ending)
	}
}

func TestExportOfOneChart(t *testing.T) {
	for _, name := range []string{"loads.pdf", "loads.svg", "loads.png", "loads.csv", "LOADS.PNG"} {
		t.Run(name, func(t *testing.T) {
			d, path := openDesk(t)
			d.export("bar-force")
			d.name(name)
			want := filepath.Join(filepath.Dir(path), name)
			d.wantNoQuestion()
			checkFormat(t, want)
			d.wantSaid("Exported " + want)
		})
	}
}

// The name that is offered ends in .pdf; so does one typed without ending.
func TestExportWithoutAnEnding(t *testing.T) {
	d, path := openDesk(t)
	d.export("bow")
	for _, o := range screen.Seen(d.question()) {
		if e, ok := o.(*widget.Entry); ok && e.Text != "number7-bow.pdf" {
			t.Errorf("%q is offered", e.Text)
		}
	}
	d.name("bow")
	checkFormat(t, filepath.Join(filepath.Dir(path), "bow.pdf"))
}

// An ending that stands for no format is refused, and a file of that name
// stays as it is.
func TestExportWithAnUnknownEnding(t *testing.T) {
	d, path := openDesk(t)
	fresh, mine := filepath.Join(filepath.Dir(path), "loads.docx"), filepath.Join(filepath.Dir(path), "mine.docx")
	write(t, mine, "mine")
	d.export("bar-force")
	d.name("loads.docx")
	d.wantAsked("This did not work", "docx", "pdf", "svg", "png", "csv")
	if !missing(fresh) {
		t.Error("a file was left behind")
	}
	d.answer("Close")
	d.export("bar-force")
	d.name("mine.docx")
	d.answer("Yes")
	d.wantAsked("docx")
	if got := read(t, mine); got != "mine" {
		t.Errorf("the file that was there holds %q", got)
	}
}

func TestExportAllAsksBeforeItReplaces(t *testing.T) {
	d := newDesk(t)
	folder := t.TempDir()
	d.exportTo(folder)
	d.wantNoQuestion()
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	// Every chart that there is something to show of, those of the launch among them, in
	// four formats.
	n := 4 * len(d.charts.All())
	if len(files) != n || n < 32 {
		t.Errorf("%d files of %d", len(files), n)
	}
	for _, f := range files {
		if !strings.HasPrefix(f.Name(), "saltgrass-no-7-") {
			t.Errorf("a file called %s", f.Name())
		}
		checkFormat(t, filepath.Join(folder, f.Name()))
	}
	d.wantSaid(fmt.Sprintf("Exported %d files to %s", n, folder))

	mine := filepath.Join(folder, "saltgrass-no-7-bow.csv")
	write(t, mine, "mine")
	d.exportTo(folder)
	d.wantAsked("Replace files", fmt.Sprintf("%s has %d of these %d files already.", folder, n, n))
	d.answer("Cancel")
	if got := read(t, mine); got != "mine" {
		t.Errorf("canceled, the file holds %q", got)
	}
	d.exportTo(folder)
	d.answer("Replace them")
	d.wantNoQuestion()
	checkFormat(t, mine)
}

// The chart of the run log comes along when there is a 60-ft time in it.
func TestExportOfTheRunLog(t *testing.T) {
	d := newDesk(t)
	d.doc.Apply("Log", func(c *car.Car) {
		c.Setups[0].Runs = []car.Run{{Date: "2031-05-17", Track: "Saltgrass", SixtyFoot: 1.402, AntiSquat: 1.2}}
	})
	folder := t.TempDir()
	d.exportTo(folder)
	d.wantSaid("Exported 20 files to " + folder)
	log := read(t, filepath.Join(folder, "saltgrass-no-7-sixty-foot.csv"))
	if !strings.Contains(log, "\n2031-05-17,Saltgrass,") || !strings.HasSuffix(log, ",120,1.402\n") {
		t.Error(log)
	}
}

func TestExportIntoNoFolder(t *testing.T) {
	d := newDesk(t)
	d.exportTo(filepath.Join(t.TempDir(), "none"))
	d.wantAsked("This did not work", "none")
}

// Data are exported in the units on screen.
func TestExportFollowsTheUnits(t *testing.T) {
	d, path := openDesk(t)
	file := filepath.Join(filepath.Dir(path), "loads.csv")
	heads := map[string]string{}
	for _, units := range []string{"Inches and pounds", "Millimeters and newtons"} {
		d.choose("View", units)
		if err := d.writeChart(file, d.charts.Chart("bar-force")); err != nil {
			t.Fatal(err)
		}
		heads[units], _, _ = strings.Cut(read(t, file), "\n")
	}
	if us, si := heads["Inches and pounds"], heads["Millimeters and newtons"]; !strings.Contains(us, "lb") || !strings.Contains(si, "N") || us == si {
		t.Errorf("heads %q and %q", us, si)
	}
}

func TestReportAsPDF(t *testing.T) {
	d, path := openDesk(t)
	d.choose("File", "Report as PDF…")
	d.name("number7")
	want := filepath.Join(filepath.Dir(path), "number7.pdf")
	checkFormat(t, want)
	d.wantSaid("Report written to " + want)
}

// Every chart that is there has a place in the window.
func TestEveryChartIsShown(t *testing.T) {
	d := newDesk(t)
	shown := map[chart.Key]bool{}
	for _, p := range d.panels.list {
		for _, key := range p.Charts() {
			shown[key] = true
		}
	}
	for _, kind := range plotting.Kinds() {
		if !shown[kind.Key] {
			t.Errorf("no panel shows %q", kind.Key)
		}
	}
}
