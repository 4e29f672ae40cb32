package paper

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"bowline/plotting/paper/papertest"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

var date = time.Date(2031, 5, 17, 8, 9, 10, 0, time.UTC)

func sans(size vg.Length, weight xfont.Weight) font.Face {
	return plot.DefaultTextHandler.Cache().Lookup(font.Font{Typeface: "Liberation", Variant: "Sans", Weight: weight}, size)
}

// document draws on the first page of a new document of 300 × 400 pt and
// returns its bytes.
func document(t *testing.T, draw func(*Canvas)) []byte {
	t.Helper()
	c := New(300, 400, "Título", date)
	c.NextPage()
	draw(c)
	var out bytes.Buffer
	n, err := c.WriteTo(&out)
	if err != nil {
		t.Fatal(err)
	}
	if n != int64(out.Len()) {
		t.Errorf("%d bytes counted, %d written", n, out.Len())
	}
	return out.Bytes()
}

// pages returns the operators of each page of a document.
func pages(t *testing.T, data []byte) []string {
	t.Helper()
	list, err := papertest.Pages(data)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// page returns the operators of what is drawn.
func page(t *testing.T, draw func(*Canvas)) string {
	t.Helper()
	return pages(t, document(t, draw))[0]
}

// operands returns the numbers before each use of an operator.
func operands(page, operator string) [][]float64 {
	var list [][]float64
	for _, m := range regexp.MustCompile(`(?m)((?:-?[\d.]+ )+)`+operator+`\b`).FindAllStringSubmatch(page, -1) {
		var numbers []float64
		for _, s := range strings.Fields(m[1]) {
			x, err := strconv.ParseFloat(s, 64)
			if err != nil {
				return nil
			}
			numbers = append(numbers, x)
		}
		list = append(list, numbers)
	}
	return list
}

func near(a, b float64) bool { return math.Abs(a-b) <= 0.011 }

func TestTextIsReadable(t *testing.T) {
	for _, text := range []string{
		"plain (in brackets) \\ back", "5° 3 lb·ft² 10⁴ − 2 — “x”", "Жук и Ω", "AVATAR To We 1111",
	} {
		got := papertest.Text(page(t, func(c *Canvas) { c.FillString(sans(12, xfont.WeightNormal), vg.Point{X: 10, Y: 10}, text) }))
		if got != text {
			t.Errorf("%q reads %q", text, got)
		}
	}
}

func TestMissingLettersShow(t *testing.T) {
	got := papertest.Text(page(t, func(c *Canvas) {
		c.FillString(sans(12, xfont.WeightNormal), vg.Point{}, "a漢b😀c\U00010000d\re")
	}))
	if got != "a?b?c?d?e" {
		t.Errorf("%q", got)
	}
}

func TestNothingToWrite(t *testing.T) {
	got := page(t, func(c *Canvas) {
		c.FillString(font.Face{}, vg.Point{}, "x")
		c.FillString(sans(0, xfont.WeightNormal), vg.Point{}, "x")
		c.FillString(sans(12, xfont.WeightNormal), vg.Point{}, "")
	})
	if strings.Contains(got, "Tj") {
		t.Error(got)
	}
}

// Two fonts in one document keep their own letters.
func TestFontsStayApart(t *testing.T) {
	data := document(t, func(c *Canvas) {
		c.FillString(sans(12, xfont.WeightNormal), vg.Point{}, "regular")
		c.FillString(sans(12, xfont.WeightBold), vg.Point{}, "bold")
		c.FillString(sans(20, xfont.WeightBold), vg.Point{}, "large")
	})
	if n := bytes.Count(data, []byte("/FontFile2")); n != 2 {
		t.Errorf("%d embedded fonts, want 2", n)
	}
	used := regexp.MustCompile(`/(F\w+) [\d.]+ Tf`).FindAllStringSubmatch(pages(t, data)[0], -1)
	if len(used) < 3 || used[0][1] == used[1][1] || used[1][1] != used[2][1] {
		t.Errorf("fonts %v", used)
	}
}

// The last letter of a kerned text, which is kerned itself, stands where the
// font's own measure puts it.
func TestTextIsAsWideAsMeasured(t *testing.T) {
	f := sans(100, xfont.WeightNormal)
	for _, text := range []string{"AV", "1111", "To We, AVAVA"} {
		last := f.Width(text[len(text)-1:]).Points()
		got := operands(page(t, func(c *Canvas) { c.FillString(f, vg.Point{}, text) }), "Td")
		if n := len(got); n < 2 {
			t.Errorf("%q is not kerned: %v", text, got)
			continue
		}
		want := f.Width(text).Points() - last
		at := got[len(got)-1]
		if !near(at[0], want) || !near(at[1], 400) {
			t.Errorf("%q: last letter at %v, want %g", text, at, want)
		}
	}
}

// Expected matrices by hand: a quarter turn takes right to up, up to left.
func TestTextTurnsWithTheCanvas(t *testing.T) {
	got := page(t, func(c *Canvas) {
		c.Translate(vg.Point{X: 50, Y: 70})
		c.Rotate(math.Pi / 2)
		c.Scale(2, 2)
		c.FillString(sans(12, xfont.WeightNormal), vg.Point{X: 10, Y: 5}, "x")
	})
	m := operands(got, "cm")
	td := operands(got, "Td")
	if len(m) != 1 || len(td) != 1 {
		t.Fatal(got)
	}
	a := m[0]
	for i, want := range []float64{0, 2, -2, 0} {
		if !near(a[i], want) {
			t.Errorf("matrix %v", a)
		}
	}
	x, y := a[0]*td[0][0]+a[2]*td[0][1]+a[4], a[1]*td[0][0]+a[3]*td[0][1]+a[5]
	if !near(x, 50-10) || !near(y, 70+20) {
		t.Errorf("text at %g, %g", x, y)
	}
}

func TestPathsFollowTheCanvas(t *testing.T) {
	var p vg.Path
	p.Move(vg.Point{X: 1, Y: 2})
	p.Line(vg.Point{X: 11, Y: 2})
	p.QuadTo(vg.Point{X: 12, Y: 4}, vg.Point{X: 11, Y: 6})
	p.CubeTo(vg.Point{X: 1, Y: 7}, vg.Point{X: 2, Y: 8}, vg.Point{X: 3, Y: 9})
	p.Close()
	got := page(t, func(c *Canvas) {
		c.Push()
		c.Translate(vg.Point{X: 100, Y: 10})
		c.Scale(1, 3)
		c.Fill(p)
		c.Pop()
		c.SetLineWidth(0)
		c.Stroke(p)
		c.SetLineWidth(2)
		c.SetLineDash([]vg.Length{4, 1}, 3)
		c.Scale(4, 1)
		c.Stroke(p)
	})
	if m := operands(got, "m"); len(m) != 2 || !near(m[0][0], 101) || !near(m[0][1], 16) || !near(m[1][0], 4) || !near(m[1][1], 2) {
		t.Errorf("moves %v", m)
	}
	if l := operands(got, "l"); len(l) != 2 || !near(l[0][0], 111) || !near(l[0][1], 16) {
		t.Errorf("lines %v", l)
	}
	// A quadratic curve reads as the cubic through the same points: at half
	// way it is at (p0 + 2·p1 + p2)/4.
	curves := operands(got, "c")
	if len(curves) != 4 {
		t.Fatalf("curves %v", curves)
	}
	q := curves[0]
	if x, y := (111+3*q[0]+3*q[2]+q[4])/8, (16+3*q[1]+3*q[3]+q[5])/8; !near(x, (111+2*112+111)/4.) || !near(y, (16+2*22+28)/4.) {
		t.Errorf("quadratic %v", q)
	}
	if q := curves[1]; !near(q[0], 101) || !near(q[1], 31) || !near(q[4], 103) || !near(q[5], 37) {
		t.Errorf("cubic %v", q)
	}
	// A line as wide as the mean of both scales, dashes too.
	if !strings.Contains(got, "4.00 w") || !strings.Contains(got, "[8.00 2.00] 6.00 d") {
		t.Error(got)
	}
}

// Every arc begins and ends where it should and stays on its circle.
func TestArcs(t *testing.T) {
	for _, c := range []struct{ start, angle float64 }{{0, 2 * math.Pi}, {1, -4}, {0.5, 0.2}, {3, 1.5 * math.Pi}} {
		var p vg.Path
		p.Move(vg.Point{X: 150, Y: 200})
		p.Arc(vg.Point{X: 150, Y: 200}, 100, c.start, c.angle)
		got := page(t, func(c *Canvas) { c.SetLineWidth(1); c.Stroke(p) })
		at := operands(got, "l")[0]
		if !near(at[0], 150+100*math.Cos(c.start)) || !near(at[1], 200+100*math.Sin(c.start)) {
			t.Errorf("%+v begins at %v", c, at)
		}
		for _, k := range operands(got, "c") {
			for _, u := range []float64{0.25, 0.5, 0.75} {
				v := 1 - u
				x := v*v*v*at[0] + 3*v*v*u*k[0] + 3*v*u*u*k[2] + u*u*u*k[4]
				y := v*v*v*at[1] + 3*v*v*u*k[1] + 3*v*u*u*k[3] + u*u*u*k[5]
				if r := math.Hypot(x-150, y-200); math.Abs(r-100) > 0.04 {
					t.Errorf("%+v leaves the circle: %g", c, r)
				}
			}
			at = k[4:]
		}
		if end := c.start + c.angle; !near(at[0], 150+100*math.Cos(end)) || !near(at[1], 200+100*math.Sin(end)) {
			t.Errorf("%+v ends at %v", c, at)
		}
	}
}

func TestArcMayBeginAPath(t *testing.T) {
	var p vg.Path
	p.Arc(vg.Point{X: 50, Y: 60}, 10, math.Pi, 1)
	got := page(t, func(c *Canvas) { c.Fill(p) })
	if m := operands(got, "m"); len(m) != 1 || !near(m[0][0], 40) || !near(m[0][1], 60) || len(operands(got, "l")) > 0 {
		t.Error(got)
	}
}

func TestColors(t *testing.T) {
	square := vg.Rectangle{Max: vg.Point{X: 1, Y: 1}}.Path()
	got := page(t, func(c *Canvas) {
		c.Push()
		// Half covering red, premultiplied.
		c.SetColor(color.RGBA{R: 0x80, A: 0x80})
		c.Fill(square)
		c.Pop()
		c.SetColor(nil)
		c.Fill(square)
	})
	fills := regexp.MustCompile(`([\d. ]+) (rg|g)\n/GS(\d) gs\n0\.00 0\.00 m`).FindAllStringSubmatch(got, -1)
	if len(fills) != 2 || fills[0][1] != "1.000 0.000 0.000" || fills[1][1] != "0.000" || fills[0][3] == fills[1][3] {
		t.Errorf("%q in %s", fills, got)
	}
}

func TestImages(t *testing.T) {
	got := page(t, func(c *Canvas) {
		c.Translate(vg.Point{X: 10, Y: 20})
		c.DrawImage(vg.Rectangle{Min: vg.Point{X: 1, Y: 2}, Max: vg.Point{X: 51, Y: 32}}, image.NewGray(image.Rect(0, 0, 4, 4)))
	})
	m := operands(got, "cm")
	if len(m) != 1 || !near(m[0][0], 50) || !near(m[0][3], 30) || !near(m[0][4], 11) || !near(m[0][5], 22) {
		t.Errorf("%v in %s", m, got)
	}
}

func TestPagesStartAnew(t *testing.T) {
	data := document(t, func(c *Canvas) {
		if w, h := c.Size(); w != 300 || h != 400 {
			t.Errorf("size %v × %v", w, h)
		}
		c.SetColor(color.White)
		c.Push()
		c.Translate(vg.Point{X: 100, Y: 100})
		c.NextPage()
		c.Fill(vg.Rectangle{Max: vg.Point{X: 1, Y: 1}}.Path())
	})
	list := pages(t, data)
	if len(list) != 2 {
		t.Fatalf("%d pages", len(list))
	}
	if m := operands(list[1], "m"); len(m) != 1 || !near(m[0][0], 0) || !near(m[0][1], 0) || !strings.Contains(list[1], "0.000 g\n/GS1 gs\n0.00 0.00 m") {
		t.Error(list[1])
	}
}

// The same drawing makes the same bytes, dated as asked.
func TestSameDrawingSameFile(t *testing.T) {
	draw := func(c *Canvas) {
		c.FillString(sans(12, xfont.WeightNormal), vg.Point{}, "regular AV")
		c.FillString(sans(12, xfont.WeightBold), vg.Point{}, "bold")
	}
	first := document(t, draw)
	if !bytes.Equal(first, document(t, draw)) {
		t.Error("two files differ")
	}
	if !bytes.Contains(first, []byte("/CreationDate (D:20310517080910")) || !bytes.Contains(first, []byte("/ModDate (D:20310517080910")) {
		t.Error("the date is another")
	}
}
