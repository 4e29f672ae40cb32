package chart

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"bowline/plotting/palette"
	"bowline/plotting/paper"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Caution stands on everything that leaves the program.
const Caution = "Arithmetic on the numbers typed in, not a certificate. A bar that fails at launch can hurt someone: the sanctioning body's rules, the maker's instructions and a qualified chassis builder and welder decide."

// Format is a kind of file that a chart can be exported to.
type Format string

// The formats, named by their file extensions.
const (
	PDF Format = "pdf"
	SVG Format = "svg"
	PNG Format = "png"
	CSV Format = "csv"
)

// Formats lists the formats.
var Formats = [...]Format{PDF, SVG, PNG, CSV}

// Sheet is the size of an exported picture. A zero field means that of
// DefaultSheet.
type Sheet struct {
	Width, Height vg.Length
	DPI           int // of a PNG [px/inch]
}

// DefaultSheet fits across a letter or A4 page.
var DefaultSheet = Sheet{Width: 7 * vg.Inch, Height: 4.5 * vg.Inch, DPI: 200}

// filled returns the sheet with defaults for what is zero.
func (s Sheet) filled() Sheet {
	if s.Width == 0 {
		s.Width = DefaultSheet.Width
	}
	if s.Height == 0 {
		s.Height = DefaultSheet.Height
	}
	if s.DPI == 0 {
		s.DPI = DefaultSheet.DPI
	}
	return s
}

// Export writes a chart as a picture on white paper, with car, setup and the
// caution, or its data as CSV. Of the style it takes Units and Size. It refuses
// an unknown format and a sheet that leaves no room for data.
func Export(w io.Writer, f Format, c *Chart, s Style, size Sheet) error {
	size = size.filled()
	switch f {
	case PDF:
		canvas := paper.New(size.Width, size.Height, c.Heading(), time.Now())
		canvas.NextPage()
		if err := DrawSheet(canvas, c, s); err != nil {
			return err
		}
		_, err := canvas.WriteTo(w)
		return err
	case SVG:
		canvas := vgsvg.New(size.Width, size.Height)
		if err := DrawSheet(canvas, c, s); err != nil {
			return err
		}
		return WriteSVG(w, canvas)
	case PNG:
		canvas := vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(size.Width, size.Height), vgimg.UseDPI(size.DPI))}
		if err := DrawSheet(canvas, c, s); err != nil {
			return err
		}
		_, err := canvas.WriteTo(w)
		return err
	case CSV:
		return c.Table(s.Units).WriteCSV(w)
	}
	return fmt.Errorf("charts are not written as %q; use one of %s", string(f), strings.Trim(fmt.Sprint(Formats), "[]"))
}

// onPaper is the light palette on white.
func onPaper() palette.Palette {
	p := palette.Light
	p.Background.R, p.Background.G, p.Background.B = 255, 255, 255
	return p
}

// DrawSheet draws a chart with the caution below it over a whole canvas, as Export
// does.
func DrawSheet(canvas vg.CanvasSizer, c *Chart, s Style) error {
	to, scale, fonts := draw.New(canvas), s.size(), typeset{}
	small := fonts.of(smallSize*scale, false)
	size := to.Size()
	lines := small.wrap(Caution, size.X-2*edge*scale)
	foot := edge*scale + vg.Length(len(lines))*small.row()
	s.Palette, s.Frame = onPaper(), Frame{}
	p := c.picture(s, size.X, size.Y-foot, true, 0, fonts)
	sheet := draw.Crop(to, 0, 0, foot, 0)
	if _, ok := p.area(sheet); !ok {
		return fmt.Errorf("a sheet of %.2f × %.2f in leaves no room for the chart; make it larger or the text smaller", size.X/vg.Inch, size.Y/vg.Inch)
	}
	to.SetColor(s.Palette.Background)
	to.Fill(to.Rectangle.Path())
	p.draw(sheet)
	for i, line := range lines {
		up := to.Min.Y + foot - edge*scale/2 - vg.Length(i+1)*small.row()
		small.draw(to, s.Palette.Muted, vg.Point{X: to.Min.X + edge*scale, Y: up + descent*small.size}, 0, line)
	}
	return nil
}

// WriteSVG writes a drawing and names fonts of the same widths after ours, for readers
// without it.
func WriteSVG(w io.Writer, canvas *vgsvg.Canvas) error {
	var out bytes.Buffer
	if _, err := canvas.WriteTo(&out); err != nil {
		return err
	}
	const ours = "font-family:Liberation Sans"
	_, err := io.WriteString(w, strings.ReplaceAll(out.String(), ours+";", ours+",Arial,Helvetica,sans-serif;"))
	return err
}
