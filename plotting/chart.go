// Package plotting makes the charts of a result: each is a pure function from
// an analysis, a launch with it or a car's run log to a [Chart], and drawing it to the screen
// ([Renderer]), to PDF, SVG or PNG ([Export]) and to CSV ([Table]) are separate
// steps.
//
// A chart holds SI values; the unit system and the colors come in with the
// [Style] when it is drawn. The axes of a plot.Plot made here are in SI too,
// with ticks at round numbers of the unit shown.
package plotting

import (
	"image/color"

	"bowline/model/analysis"
	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

// Chart is one chart, of one setup, of two or of a run log. It never changes; share it freely.
type Chart struct {
	Key      string // file stem, as in "bar-force"
	Title    string // of two setups as in "Tire loads: baseline vs more bite"
	Subtitle string // car and setup

	setups  []string // names of the one or two setups drawn; empty for a chart of no certain one
	heading string   // the title without setups
	aside   words    // behind the title: what is counted, in which unit
	x, y    axis
	right   *axis // for the lines and marks that belong to it; nil for none
	regions []region
	rules   []rule
	lines   []line
	marks   []mark
	notes   []remark
	subject subject
}

// Style says how a chart is drawn.
type Style struct {
	Palette palette.Palette
	Units   units.System
	// Size scales text and lines; 1, or 0 for short, is 11 px text at 96 dpi.
	Size float64
	// Width and Height are those of the whole drawing, so that legend and
	// remarks break into rows, and remarks leave the data its room; 0 means
	// without end. Renderer and Export set them.
	Width, Height vg.Length
	// Frame is the previous drawing's Layout.Frame while the user drags, so
	// that the axes hold still; the zero value fits the axes to the data.
	Frame Frame
}

// size returns the scale of text and lines.
func (s *Style) size() vg.Length {
	if s.Size == 0 {
		return 1
	}
	return vg.Length(s.Size)
}

// Charts returns all charts of a result, in the order they are shown. With
// another result, that of a second setup, each shows both; nil is none.
func Charts(r, other *analysis.Result) []*Chart {
	if other == nil {
		return []*Chart{Forces(r), AntiSquat(r), CenterPath(r), Bow(r)}
	}
	return []*Chart{
		compare(forcesBeside(r, other), forcesBeside(other, r)),
		compare(AntiSquat(r), AntiSquat(other)),
		compare(CenterPath(r), CenterPath(other)),
		compare(Bow(r), Bow(other)),
	}
}

// Table returns the chart's data in the unit system.
func (c *Chart) Table(s units.System) Table { return c.subject.table(s, "") }

// Readout writes the values at a position, one line each, the position first:
// "lower hit 4,310 lb push — 71 %". It is a rear travel [m], or for a chart of
// LaunchCharts a time [s]. Of two setups it gives both values: "lower hit 4,310
// lb push — 71 % vs 4,120 lb push — 68 %".
func (c *Chart) Readout(at float64, s units.System) []string {
	return written(c.subject.readout(at, s))
}

// subject is what a chart is about: the values behind the drawn shapes. Its
// position is a rear travel [m] or a time [s].
type subject interface {
	// table lists the values, under the name of the setup where it is not empty.
	table(s units.System, setup string) Table
	// readout writes the values at a position, which comes first.
	readout(at float64, s units.System) []reading
	// place tells where the chart stands at a position.
	place(at float64) place
	// positionAt returns the position that a point of the data area stands
	// for, and how far off that is drawn [px].
	positionAt(l *Layout, px, py float64) (at, off float64, ok bool)
	// readoutAt writes the values at a point of the data area, for a chart
	// whose points stand for no position.
	readoutAt(l *Layout, px, py float64, s units.System) []reading
}

// place is where a chart stands at one position.
type place struct {
	line bool    // a line across the chart at x
	x    float64 // [SI]
	dots []dot
}

// dot is one value at that position.
type dot struct {
	at     plotter.XY
	ink    ink
	right  bool
	second bool // of the second setup
}

// The parts of a chart. Positions are in SI.
type (
	// words are text that depends on the unit system.
	words func(units.System) string

	// remark is a sentence under the legend that depends on what is in sight;
	// an empty one takes no room.
	remark func(Frame) string

	// ink is a color of the palette in use.
	ink func(*palette.Palette) color.RGBA

	// line is a curve, broken where values are missing.
	line struct {
		name string // in the legend
		most words  // behind it, how far the curve goes; nil for nothing
		// brief is the same where two setups stand together.
		brief words
		ink   ink
		dash  dash
		runs  []plotter.XYs
		// right tells that y is a value of the right axis.
		right  bool
		second bool // of the second setup
	}

	// rule is a straight line across the whole chart.
	rule struct {
		caption
		ink     ink
		dash    dash
		upright bool // at an x instead of a y
		at      float64
		edge    bool // out of sight, the label stands at the edge
		second  bool // of the second setup
	}

	// region is a filled rectangle: a target, or a shade behind a part of the
	// chart.
	region struct {
		name  words // in the legend; nil for none
		x, y  Span  // infinite ends run to the edges
		shade bool
	}

	// mark is a point of its own.
	mark struct {
		caption        // beside it
		name    string // in the legend
		ink     ink
		shape   shape
		size    float64 // over the usual one; 0 is 1
		at      plotter.XY
		colored bool // its color is part of its meaning in the legend
		drop    bool // a thin line runs down to the x axis
		apart   bool // the label names it well enough to stand away from it
		right   bool // at is a point of the right axis
	}
)

// dash is a line style.
type dash int

const (
	solid  dash = iota
	dashed      // the hooked case
	long        // limits
	fine        // what to compare with
)

// shape is the form of a mark.
type shape int

const (
	disc shape = iota
	ring
	cross
	square
	diamond
	triangle
	none // only its label
)

func always(text string) words { return func(units.System) string { return text } }

func mutedInk(p *palette.Palette) color.RGBA  { return p.Muted }
func plainInk(p *palette.Palette) color.RGBA  { return p.Ink }
func upperInk(p *palette.Palette) color.RGBA  { return p.Upper }
func lowerInk(p *palette.Palette) color.RGBA  { return p.Lower }
func centerInk(p *palette.Palette) color.RGBA { return p.Center }
func pushInk(p *palette.Palette) color.RGBA   { return p.Push }
func pullInk(p *palette.Palette) color.RGBA   { return p.Pull }
func goodInk(p *palette.Palette) color.RGBA   { return p.Good }
func rearInk(p *palette.Palette) color.RGBA   { return p.Center }
func frontInk(p *palette.Palette) color.RGBA  { return p.Whole }
func wholeInk(p *palette.Palette) color.RGBA  { return p.Whole }

// newChart starts a chart of a result.
func newChart(r *analysis.Result, key, title string, about subject) *Chart {
	setup := r.Car.Setups[r.Options.Setup].Name
	return &Chart{
		Key: key, Title: title, heading: title, subject: about,
		Subtitle: r.Car.Body.Name + " — " + setup, setups: []string{setup},
	}
}

// note adds a remark.
func (c *Chart) note(r remark) { c.notes = append(c.notes, r) }

// sentence puts a sentence together unless its middle is empty.
func sentence(before, middle, after string) string {
	if middle == "" {
		return ""
	}
	return before + middle + after
}
