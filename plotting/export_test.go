package plotting_test

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bowline/model/units"
	"bowline/plotting"
	"bowline/plotting/chart"
	"bowline/plotting/chart/charttest"
	"bowline/plotting/paper/papertest"

	"gonum.org/v1/plot/vg"
)

func exported(t *testing.T, f chart.Format, c *chart.Chart, s chart.Style, size chart.Sheet) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := chart.Export(&out, f, c, s, size); err != nil {
		t.Fatal(f, err)
	}
	return out.Bytes()
}

// svgText parses an SVG and joins its texts.
func svgText(t *testing.T, data []byte) string {
	t.Helper()
	decoder := xml.NewDecoder(bytes.NewReader(data))
	var all []string
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return strings.Join(all, " ")
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if text, ok := token.(xml.CharData); ok {
			if s := strings.TrimSpace(string(text)); s != "" {
				all = append(all, s)
			}
		}
	}
}

func TestSVG(t *testing.T) {
	for _, c := range everyChart(t, saltgrass()) {
		data := exported(t, chart.SVG, c, chart.Style{}, chart.Sheet{})
		text := svgText(t, data)
		for _, want := range []string{chart.Caution, c.Heading(), "Saltgrass No. 7 — baseline"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing", c.Key, want)
			}
		}
		if !bytes.Contains(data, []byte(`width="504pt" height="324pt"`)) {
			t.Errorf("%s: wrong size", c.Key)
		}
		if !bytes.Contains(data, []byte("font-family:Liberation Sans,Arial")) {
			t.Errorf("%s: no other font named", c.Key)
		}
	}
}

// Names are text, not markup.
func TestSVGEscapesNames(t *testing.T) {
	car := saltgrass()
	car.Body.Name = `<Salt & "grass">`
	if text := svgText(t, exported(t, chart.SVG, plotting.BarForce(plotting.Of(analyze(t, car), nil)), chart.Style{}, chart.Sheet{})); !strings.Contains(text, car.Body.Name+" — baseline") {
		t.Error(text)
	}
}

func TestPDF(t *testing.T) {
	car := saltgrass()
	car.Body.Name = "Солончак № 7, µ 2.6"
	for _, c := range everyChart(t, car) {
		data := exported(t, chart.PDF, c, chart.Style{}, chart.Sheet{})
		if !bytes.HasPrefix(data, []byte("%PDF-")) || !bytes.Contains(data, []byte("%%EOF")) {
			t.Errorf("%s: no PDF", c.Key)
		}
		if pages := len(regexp.MustCompile(`/Type /Page\b[^s]`).FindAll(data, -1)); pages != 1 {
			t.Errorf("%s: %d pages", c.Key, pages)
		}
		if !bytes.Contains(data, []byte("/MediaBox [0 0 504.00 324.00]")) {
			t.Errorf("%s: wrong size", c.Key)
		}
		pages, err := papertest.Pages(data)
		if err != nil {
			t.Fatal(err)
		}
		// All of it is text that can be searched and copied.
		text := papertest.Text(pages[0])
		for _, want := range append([]string{c.Heading(), car.Body.Name + " — baseline", strings.Fields(chart.Caution)[0]}, charttest.Words(c, units.US, 672, 400)...) {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not among the text %q", c.Key, want, text)
			}
		}
	}
}

func TestPNG(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	for _, x := range []struct {
		size chart.Sheet
		w, h int
	}{
		{chart.Sheet{}, 1400, 900},
		{chart.Sheet{Width: 5 * vg.Inch, Height: 3 * vg.Inch, DPI: 100}, 500, 300},
	} {
		img, err := png.Decode(bytes.NewReader(exported(t, chart.PNG, c, chart.Style{}, x.size)))
		if err != nil {
			t.Fatal(err)
		}
		if got := img.Bounds().Size(); got.X != x.w || got.Y != x.h {
			t.Errorf("%v, want %d × %d", got, x.w, x.h)
		}
		if r, g, b, a := img.At(2, 2).RGBA(); r+g+b+a != 4*0xffff {
			t.Error("the paper is not white")
		}
	}
}

// dates are what differs between two PDFs of the same chart.
var dates = regexp.MustCompile(`/(CreationDate|ModDate) \(D:\d+\)`)

func TestExportIsDeterministic(t *testing.T) {
	first, second := everyChart(t, saltgrass()), everyChart(t, saltgrass())
	for _, f := range chart.Formats {
		for i, c := range first {
			a, b := exported(t, f, c, chart.Style{}, chart.Sheet{}), exported(t, f, second[i], chart.Style{}, chart.Sheet{})
			if !bytes.Equal(dates.ReplaceAll(a, nil), dates.ReplaceAll(b, nil)) {
				t.Errorf("%s as %s differs from one time to the next", c.Key, f)
			}
		}
	}
}

func TestExportRefuses(t *testing.T) {
	c := plotting.BarForce(plotting.Of(analyze(t, saltgrass()), nil))
	if err := chart.Export(io.Discard, "gif", c, chart.Style{}, chart.Sheet{}); err == nil || !strings.Contains(err.Error(), `"gif"`) || !strings.Contains(err.Error(), "pdf svg png csv") {
		t.Errorf("%v", err)
	}
	for _, f := range []chart.Format{chart.PDF, chart.SVG, chart.PNG} {
		if err := chart.Export(io.Discard, f, c, chart.Style{}, chart.Sheet{Width: vg.Inch, Height: vg.Inch}); err == nil || !strings.Contains(err.Error(), "1.00 × 1.00 in leaves no room") {
			t.Errorf("%s: %v", f, err)
		}
		if err := chart.Export(broken{}, f, c, chart.Style{}, chart.Sheet{}); !errors.Is(err, errBroken) {
			t.Errorf("%s: %v", f, err)
		}
	}
	if err := chart.Export(broken{}, chart.CSV, c, chart.Style{}, chart.Sheet{}); !errors.Is(err, errBroken) {
		t.Errorf("csv: %v", err)
	}
}

var errBroken = errors.New("broken")

// broken is a writer that fails.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errBroken }

// read parses a CSV and returns its columns by name.
func read(t *testing.T, data []byte) map[string][]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	columns := map[string][]string{}
	for i, name := range rows[0] {
		for _, row := range rows[1:] {
			columns[name] = append(columns[name], row[i])
		}
	}
	return columns
}

func parse(t *testing.T, text string) float64 {
	t.Helper()
	if strings.ContainsAny(text, "eE,") {
		t.Errorf("%q is not a plain number", text)
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func TestCSVOfForces(t *testing.T) {
	q := copied(analyze(t, saltgrass()))
	q.Travel[4].Loads.Hooked.Balanced = false
	for s, unit := range map[units.System]struct {
		length, force string
		perM, perN    float64
	}{
		units.US: {"in", "lb", 1 / 0.0254, 1 / 4.4482216152605},
		units.SI: {"mm", "N", 1000, 1},
	} {
		columns := read(t, exported(t, chart.CSV, plotting.BarForce(plotting.Of(q, nil)), chart.Style{Units: s}, chart.Sheet{}))
		travel := columns["travel ["+unit.length+", bump positive]"]
		if len(columns) != 9 || len(travel) != len(q.Travel) {
			t.Fatalf("%v: %d columns of %d rows", s, len(columns), len(travel))
		}
		for i := range q.Travel {
			st := &q.Travel[i]
			for name, want := range map[string]float64{
				"upper hit": st.Loads.Hit.Upper.Tension, "lower hit": st.Loads.Hit.Lower.Tension,
				"upper hooked": st.Loads.Hooked.Upper.Tension, "lower hooked": st.Loads.Hooked.Lower.Tension,
				"lower push limit": -q.Bars[1].Push.Allowable, "upper pull limit": q.Bars[0].Pull.Allowable,
			} {
				cell := columns[name+" ["+unit.force+", pull positive]"][i]
				if strings.HasSuffix(name, "hooked") && i == 4 {
					if cell != "" {
						t.Errorf("%s without value is %q", name, cell)
					}
					continue
				}
				if got := parse(t, cell); math.Abs(got-want*unit.perN) > 1e-9*math.Abs(got) {
					t.Fatalf("%s at row %d: %s, want %g", name, i, cell, want*unit.perN)
				}
			}
			if got, want := parse(t, travel[i]), st.Pose.Travel*unit.perM; math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Fatalf("travel at row %d: %g, want %g", i, got, want)
			}
		}
	}
}

func TestCSVHeaders(t *testing.T) {
	want := map[chart.Key][]string{
		"anti-squat":     {"travel [in, bump positive]", "anti-squat [%]"},
		"instant-center": {"travel [in, bump positive]", "instant center ahead of rear contact [in]", "instant center above ground [in]"},
		"bow":            {"upper push [lb]", "upper bow [in]", "lower push [lb]", "lower bow [in]"},
	}
	r := analyze(t, saltgrass())
	for _, c := range overTravels(plotting.Of(r, nil)) {
		if header, ok := want[c.Key]; ok && !slices.Equal(c.Table(units.US).Header, header) {
			t.Errorf("%s: %q", c.Key, c.Table(units.US).Header)
		}
	}
	// At ride height: 154.6 %, (41.25, 11.84) in.
	zero := slices.IndexFunc(plotting.AntiSquat(plotting.Of(r, nil)).Table(units.US).Rows, func(row []chart.Cell) bool { return row[0].Value == 0 })
	squat, center := plotting.AntiSquat(plotting.Of(r, nil)).Table(units.US).Rows[zero], plotting.CenterPath(plotting.Of(r, nil)).Table(units.US).Rows[zero]
	if math.Abs(squat[1].Value-154.6) > 0.05 || math.Abs(center[1].Value-41.25) > 0.005 || math.Abs(center[2].Value-11.84) > 0.005 {
		t.Errorf("%v %v", squat, center)
	}
}
