// Package paper draws on the pages of a PDF document by the drawing interface
// of gonum's plots, with text that can be searched and copied: fonts are
// embedded by what is used of them and cover more than Western letters.
package paper

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/vg"
)

// Canvas is a document of pages of one size. It implements vg.Canvas for the
// current page, with the origin at the page's lower left corner.
type Canvas struct {
	doc    *fpdf.Fpdf
	width  vg.Length
	height vg.Length
	fonts  map[*sfnt.Font]string // Name of each font in the document.
	glyphs sfnt.Buffer
	images int

	state
	stack []state
}

// state is what Push saves.
type state struct {
	m     affine
	line  vg.Length
	dash  []vg.Length
	phase vg.Length
	color color.Color
}

// New returns a document without pages; call NextPage before drawing. Its
// date of creation and its title are those given.
func New(width, height vg.Length, title string, date time.Time) *Canvas {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: width.Points(), Ht: height.Points()}})
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	// The same drawing makes the same file.
	doc.SetCatalogSort(true)
	doc.SetCreationDate(date)
	doc.SetModificationDate(date)
	doc.SetTitle(title, true)
	return &Canvas{doc: doc, width: width, height: height, fonts: map[*sfnt.Font]string{}}
}

// NextPage begins a page. Colors, widths and transforms start anew.
func (c *Canvas) NextPage() {
	c.doc.AddPage()
	c.doc.SetLineJoinStyle("round")
	c.stack = nil
	c.state = state{m: affine{1, 0, 0, -1, 0, c.height.Points()}}
	vg.Initialize(c)
}

// Size returns the size of a page.
func (c *Canvas) Size() (width, height vg.Length) { return c.width, c.height }

// SetLineWidth implements vg.Canvas.
func (c *Canvas) SetLineWidth(w vg.Length) { c.line = w }

// SetLineDash implements vg.Canvas.
func (c *Canvas) SetLineDash(pattern []vg.Length, offset vg.Length) {
	c.dash, c.phase = append([]vg.Length(nil), pattern...), offset
}

// SetColor implements vg.Canvas.
func (c *Canvas) SetColor(col color.Color) { c.color = col }

// Rotate implements vg.Canvas.
func (c *Canvas) Rotate(angle float64) {
	sin, cos := math.Sincos(angle)
	c.m = c.m.after(affine{cos, sin, -sin, cos, 0, 0})
}

// Translate implements vg.Canvas.
func (c *Canvas) Translate(p vg.Point) {
	c.m = c.m.after(affine{1, 0, 0, 1, p.X.Points(), p.Y.Points()})
}

// Scale implements vg.Canvas.
func (c *Canvas) Scale(x, y float64) { c.m = c.m.after(affine{x, 0, 0, y, 0, 0}) }

// Push implements vg.Canvas.
func (c *Canvas) Push() { c.stack = append(c.stack, c.state) }

// Pop implements vg.Canvas. It panics without a Push.
func (c *Canvas) Pop() {
	c.state = c.stack[len(c.stack)-1]
	c.stack = c.stack[:len(c.stack)-1]
}

// Clip keeps what follows within an upright rectangle until EndClip.
func (c *Canvas) Clip(r vg.Rectangle) {
	x0, y0 := c.m.apply(r.Min)
	x1, y1 := c.m.apply(r.Max)
	c.doc.ClipRect(math.Min(x0, x1), math.Min(y0, y1), math.Abs(x1-x0), math.Abs(y1-y0), false)
}

// EndClip ends a Clip.
func (c *Canvas) EndClip() { c.doc.ClipEnd() }

// Stroke implements vg.Canvas.
func (c *Canvas) Stroke(p vg.Path) {
	if !(c.line > 0) {
		return
	}
	scale := c.m.scale()
	dash := make([]float64, len(c.dash))
	for i, d := range c.dash {
		dash[i] = d.Points() * scale
	}
	c.doc.SetLineWidth(c.line.Points() * scale)
	c.doc.SetDashPattern(dash, c.phase.Points()*scale)
	c.paint(p, "D")
}

// Fill implements vg.Canvas.
func (c *Canvas) Fill(p vg.Path) { c.paint(p, "F") }

// paint sets the color and draws a path in one of the document's styles.
func (c *Canvas) paint(p vg.Path, style string) {
	c.setColor()
	c.trace(p)
	c.doc.DrawPath(style)
}

// setColor hands the color on; nil is black.
func (c *Canvas) setColor() {
	col := color.NRGBA{A: 0xff}
	if c.color != nil {
		col = color.NRGBAModel.Convert(c.color).(color.NRGBA)
	}
	r, g, b := int(col.R), int(col.G), int(col.B)
	c.doc.SetDrawColor(r, g, b)
	c.doc.SetFillColor(r, g, b)
	c.doc.SetTextColor(r, g, b)
	c.doc.SetAlpha(float64(col.A)/0xff, "Normal")
}

// DrawImage implements vg.Canvas. Rotation is not supported.
func (c *Canvas) DrawImage(rect vg.Rectangle, img image.Image) {
	var data bytes.Buffer
	if err := png.Encode(&data, img); err != nil {
		c.doc.SetError(err)
		return
	}
	c.images++
	name := fmt.Sprintf("image%d", c.images)
	options := fpdf.ImageOptions{ImageType: "png"}
	c.doc.RegisterImageOptionsReader(name, options, &data)
	x0, y0 := c.m.apply(rect.Min)
	x1, y1 := c.m.apply(rect.Max)
	c.doc.ImageOptions(name, math.Min(x0, x1), math.Min(y0, y1), math.Abs(x1-x0), math.Abs(y1-y0), false, options, 0, "")
}

// WriteTo writes the document, which cannot be drawn on afterward.
func (c *Canvas) WriteTo(w io.Writer) (int64, error) {
	var data bytes.Buffer
	if err := c.doc.Output(&data); err != nil {
		return 0, err
	}
	return data.WriteTo(w)
}
