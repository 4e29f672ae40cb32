package report_test

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bowline/app/report"
	"bowline/model/car"
	"bowline/plotting"
)

// names lists a folder.
func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}

func TestSaveCSV(t *testing.T) {
	r, s := load(t, reference)
	folder := filepath.Join(t.TempDir(), "new", "tables")
	if err := report.SaveCSV(folder, r, nil, s); err != nil {
		t.Fatal(err)
	}
	if got := names(t, folder); !slices.Equal(got, []string{"bars.csv", "travel.csv"}) {
		t.Errorf("files %q", got)
	}
	var want bytes.Buffer
	if err := report.WriteTravelCSV(&want, r, s); err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(filepath.Join(folder, report.TravelFile)); err != nil || !bytes.Equal(got, want.Bytes()) {
		t.Errorf("%v: %.80q", err, got)
	}
}

func TestSaveCharts(t *testing.T) {
	r, s := load(t, reference)
	folder := filepath.Join(t.TempDir(), "charts")
	if err := report.SaveCharts(folder, r, nil, s); err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, c := range plotting.All(plotting.Of(r, nil)) {
		if c.Blank {
			continue
		}
		want = append(want, string(c.Key)+".png", string(c.Key)+".svg")
		picture, err := os.Open(filepath.Join(folder, string(c.Key)+".png"))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := png.Decode(picture); err != nil {
			t.Errorf("%s: %v", c.Key, err)
		}
		picture.Close()
		drawing, err := os.ReadFile(filepath.Join(folder, string(c.Key)+".svg"))
		if err != nil || !bytes.Contains(drawing, []byte("<svg")) {
			t.Errorf("%s: %v, %.80q", c.Key, err, drawing)
		}
	}
	slices.Sort(want)
	if got := names(t, folder); !slices.Equal(got, want) {
		t.Errorf("files %q, want %q", got, want)
	}
}

// The run log has a chart when there is a 60-ft time in it.
func TestChartOfTheRunLog(t *testing.T) {
	r, s := load(t, reference)
	logged := *r
	logged.Car = r.Car.Clone()
	for _, timed := range []bool{false, true} {
		run := car.Run{Date: "2031-05-17", AntiSquat: 1.2}
		if timed {
			run.SixtyFoot = 1.402
		}
		logged.Car.Setups[0].Runs = []car.Run{run}
		folder := t.TempDir()
		if err := report.SaveCharts(folder, &logged, nil, s); err != nil {
			t.Fatal(err)
		}
		if got := slices.Contains(names(t, folder), "sixty-foot.svg"); got != timed {
			t.Errorf("60-ft time %v, chart %v", timed, got)
		}
		_, pages := pdf(t, &logged, nil, s)
		if got := strings.Contains(strings.Join(pages, ""), squeezed("60-ft time over anti-squat")); got != timed {
			t.Errorf("60-ft time %v, on paper %v", timed, got)
		}
	}
}

func TestSavePDFReplacesAsAWhole(t *testing.T) {
	r, s := load(t, reference)
	path := filepath.Join(t.TempDir(), "report.pdf")
	if err := os.WriteFile(path, []byte(strings.Repeat("old", 1e6)), 0o640); err != nil {
		t.Fatal(err)
	}
	if err := report.SavePDF(path, r, nil, nil, s, date); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if want, _ := pdf(t, r, nil, s); !bytes.Equal(got, want) {
		t.Error("the file holds another document")
	}
	if got := names(t, filepath.Dir(path)); !slices.Equal(got, []string{"report.pdf"}) {
		t.Errorf("left behind: %q", got)
	}
}

// Every file that cannot be written is reported.
func TestSaveReportsEveryFailure(t *testing.T) {
	r, s := load(t, reference)
	folder := t.TempDir()
	for _, name := range []string{report.TravelFile, report.BarsFile, "bar-force.svg"} {
		if err := os.Mkdir(filepath.Join(folder, name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	err := report.SaveCSV(folder, r, nil, s)
	if err == nil || !strings.Contains(err.Error(), report.TravelFile) || !strings.Contains(err.Error(), report.BarsFile) {
		t.Errorf("tables: %v", err)
	}
	if err := report.SaveCharts(folder, r, nil, s); err == nil || !strings.Contains(err.Error(), "bar-force.svg") {
		t.Errorf("charts: %v", err)
	}
	if _, err := os.Stat(filepath.Join(folder, "bar-force.png")); err != nil {
		t.Errorf("the other charts: %v", err)
	}
	if err := report.SavePDF(filepath.Join(folder, "none", "report.pdf"), r, nil, nil, s, date); err == nil {
		t.Error("a PDF was written into a folder that does not exist")
	}
	file := filepath.Join(folder, "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, save := range []func() error{
		func() error { return report.SaveCSV(file, r, nil, s) },
		func() error { return report.SaveCharts(file, r, nil, s) },
	} {
		if err := save(); err == nil || !strings.Contains(err.Error(), file) {
			t.Errorf("into a file: %v", err)
		}
	}
}
