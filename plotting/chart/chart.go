// Package chart is the engine under the charts: what a chart consists of, its
// axes, labels and header, drawing it live ([Renderer]), exporting it to PDF,
// SVG or PNG ([Export]) and to CSV ([Table]), reading it under the pointer
// ([Layout]) and laying several setups over each other ([Compare]). It knows
// nothing of cars; package plotting makes the charts.
//
// A chart holds SI values; the unit system and the colors come in with the
// [Style] when it is drawn. The axes of a plot.Plot made here are in SI too,
// with ticks at round numbers of the unit shown.
package chart

import (
	"image/color"
	"strings"

	"bowline/model/units"
	"bowline/plotting/palette"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

// Key names a chart, and its files: "bar-force". Only package plotting has
// values of it.
type Key string

// Chart is one chart, of one setup, of several or of a run log. Once made it never
// changes; share it freely.
type Chart struct {
	Key      Key
	Title    string // without setups: "Tire loads"
	Subtitle string // car and setups
	// Blank says that there is nothing to draw yet but a note that says so; where
	// all charts are printed or exported it is left out.
	Blank bool

	Setups  []string // names of the setups drawn; empty for a chart of no certain one
	Aside   Words    // behind the title: what is counted, in which unit; nil for nothing
	X, Y    Axis
	Right   *Axis // for the lines and points that belong to it; nil for none
	Regions []Region
	Areas   []Area
	Events  []Event
	Rules   []Rule
	Lines   []Line
	Points  []Point
	Notes   []Note
	Subject Subject
}

// Style says how a chart is drawn.
type Style struct {
	Palette palette.Palette
	Units   units.System
	// Size scales text and lines; 1, or 0 for short, is 11 px text at 96 dpi.
	Size float64
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

// Heading returns the title with the setups compared: "Tire loads: baseline vs
// more bite".
func (c *Chart) Heading() string { return c.heading(NameLength) }

// heading returns it with names of at most a length.
func (c *Chart) heading(length int) string {
	if len(c.Setups) < 2 {
		return c.Title
	}
	return c.Title + ": " + strings.Join(ShortNames(c.Setups, length), " vs ")
}

// Table returns the chart's data in the unit system.
func (c *Chart) Table(s units.System) Table { return c.Subject.Table(s, "") }

// Readout writes the values at a position, one line each, the position first:
// "lower hit 4,310 lb push — 71 %". It is a rear travel [m], or for a chart over
// the launch a time [s]. Of several setups it gives all values: "lower hit 4,310
// lb push — 71 % vs 4,120 lb push — 68 %".
func (c *Chart) Readout(at float64, s units.System) []string {
	return written(c.Subject.Readout(at, s))
}

// Subject is what a chart is about: the values behind the drawn shapes. Its
// position is a rear travel [m] or a time [s].
type Subject interface {
	// Table lists the values, under the name of the setup where it is not empty.
	Table(s units.System, setup string) Table
	// Readout writes the values at a position, which comes first.
	Readout(at float64, s units.System) []Reading
	// Place returns where the chart stands at a position.
	Place(at float64) Place
	// PositionAt returns the position that a point of the data area stands
	// for, and how far off that is drawn [px].
	PositionAt(l *Layout, px, py float64) (at, off float64, ok bool)
	// ReadoutAt writes the values at a point of the data area, for a chart
	// whose points stand for no position.
	ReadoutAt(l *Layout, px, py float64, s units.System) []Reading
}

// Place is where a chart stands at one position.
type Place struct {
	Line bool    // a line across the chart at X
	X    float64 // [SI]
	Dots []Dot
}

// Dot is one value at that position.
type Dot struct {
	At    plotter.XY
	Ink   Ink
	Right bool // At is a point of the right axis
	Setup int  // whose it is, as in Line
}

// The parts of a chart. Positions are in SI.
type (
	// Words are text that depends on the unit system.
	Words func(units.System) string

	// Note is a sentence under the legend that depends on what is in sight; an
	// empty one takes no room.
	Note func(Frame) string

	// Ink is a color of the palette in use.
	Ink func(*palette.Palette) color.RGBA

	// Line is a curve, broken where values are missing.
	Line struct {
		Name  string // in the legend
		Most  Words  // behind it, how far the curve goes; nil for nothing
		Brief Words  // the same where several setups stand together, or room is scarce
		Over  bool   // that is more than allowed, and looks it
		Ink   Ink
		Below Ink // where the line is below zero; nil for Ink. The legend shows such a line in the color of text.
		Dash  Dash
		Width float64 // over the usual one; 0 is 1
		Runs  []plotter.XYs
		Right bool // its y are values of the right axis
		// Setup counts whose line it is, from the first; Compare sets it.
		Setup int
	}

	// Rule is a straight line across the whole chart.
	Rule struct {
		Caption
		Ink     Ink
		Dash    Dash
		Width   float64 // over the usual one; 0 is 1
		Upright bool    // at an x instead of a y
		At      float64
		Edge    bool // out of sight, the label stands at the edge
		Setup   int  // whose it is, as in Line
	}

	// Region is a filled rectangle: a target, or a shade behind a part of the
	// chart.
	Region struct {
		Name  Words // in the legend; nil for none
		X, Y  Span  // infinite ends run to the edges
		Shade bool
	}

	// Area is filled between curves.
	Area struct {
		Name   string // in the legend
		Ink    Ink    // mixed into the background
		Strong bool   // with more of the ink
		// Rings are closed outlines, their y values of the left axis.
		Rings []plotter.XYs
	}

	// Event is something that happened along the x axis, marked at the upper edge: by
	// a band for as long as it lasted, or by a stroke where it began.
	Event struct {
		Caption  // beside it where there is room to spare
		Ink      Ink
		From, To float64
		Band     bool
		Setup    int // whose it is, as in Line
	}

	// Point is a point of its own.
	Point struct {
		Caption        // beside it
		Name    string // in the legend
		Ink     Ink
		Shape   Shape
		Size    float64 // over the usual one; 0 is 1
		At      plotter.XY
		Colored bool // its color is part of its meaning in the legend
		Drop    bool // a thin line runs down to the x axis
		Apart   bool // the label names it well enough to stand away from it
		Right   bool // At is a point of the right axis
		Setup   int  // whose it is, as in Line
	}
)

// Dash is the pattern of a line.
type Dash int

// The patterns.
const (
	Solid  Dash = iota
	Dashed      // a second curve of the same color
	Long        // a limit
	Fine        // what to compare with
)

// Shape is the form of a point.
type Shape int

// The shapes.
const (
	Disc Shape = iota
	Ring
	Cross
	Square
	Diamond
	Triangle
	None // only the label
)

// Always returns words that are the same in every unit system.
func Always(text string) Words { return func(units.System) string { return text } }

// PlainInk is the color of text.
func PlainInk(p *palette.Palette) color.RGBA { return p.Ink }

// MutedInk is the color of what stands back.
func MutedInk(p *palette.Palette) color.RGBA { return p.Muted }

func goodInk(p *palette.Palette) color.RGBA { return p.Good }

// AddNote adds a note.
func (c *Chart) AddNote(n Note) { c.Notes = append(c.Notes, n) }
