package report

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"time"

	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/carfile"
	"bowline/model/launch"
	"bowline/model/units"
	"bowline/plotting/chart"
)

// SavePDF writes the document of WritePDF to a file, which it replaces as a
// whole or not at all. It fails as carfile.Write does.
func SavePDF(path string, r *analysis.Result, l *launch.Result, worth []assumptions.Worth, s units.System, date time.Time) error {
	return save(path, func(w io.Writer) error { return WritePDF(w, r, l, worth, s, date) })
}

// SaveCSV writes TravelFile and BarsFile, and unless l is nil LaunchFile and
// SummaryFile, into a folder, which it makes if need be. It reports every file that cannot be
// written.
func SaveCSV(folder string, r *analysis.Result, l *launch.Result, s units.System) error {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	failed := []error{
		save(filepath.Join(folder, TravelFile), func(w io.Writer) error { return WriteTravelCSV(w, r, s) }),
		save(filepath.Join(folder, BarsFile), func(w io.Writer) error { return WriteBarsCSV(w, r, s) }),
	}
	if l != nil {
		failed = append(failed,
			save(filepath.Join(folder, LaunchFile), func(w io.Writer) error { return WriteLaunchCSV(w, r, l, s) }),
			save(filepath.Join(folder, SummaryFile), func(w io.Writer) error { return WriteLaunchSummaryCSV(w, r, l, s) }))
	}
	return errors.Join(failed...)
}

// SaveCharts writes every chart, those of the launch unless l is nil, as SVG and
// PNG into a folder, which it makes if need be, under the chart's key. It reports
// every file that cannot be written.
func SaveCharts(folder string, r *analysis.Result, l *launch.Result, s units.System) error {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	var failed []error
	for _, c := range charts(r, l) {
		for _, format := range []chart.Format{chart.SVG, chart.PNG} {
			failed = append(failed, save(filepath.Join(folder, string(c.Key)+"."+string(format)), func(w io.Writer) error {
				return chart.Export(w, format, c, chart.Style{Units: s}, chart.Sheet{})
			}))
		}
	}
	return errors.Join(failed...)
}

// save makes a file's content and, when that went well, writes it.
func save(path string, make func(io.Writer) error) error {
	var data bytes.Buffer
	if err := make(&data); err != nil {
		return err
	}
	return carfile.Write(path, data.Bytes())
}
