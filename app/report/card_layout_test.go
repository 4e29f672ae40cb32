package report

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"time"

	"bowline/assets"
	"bowline/model/car"
	"bowline/model/carfile"
	"bowline/model/units"
	"bowline/plotting/chart"
	"bowline/plotting/paper/papertest"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

var cardDate = time.Date(2031, 5, 17, 8, 9, 10, 0, time.UTC)

func demo(t rapid.TB) *car.Car {
	t.Helper()
	data, err := assets.Cars.ReadFile(assets.DemoCar)
	if err != nil {
		t.Fatal(err)
	}
	f, err := carfile.Decode("demo.toml", data, carfile.Stock())
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

// anyCar draws a car like the demo car with brackets, bars, threads, words and
// a driveline of its own, and holes to go to.
func anyCar(t *rapid.T, base *car.Car) (*car.Car, car.Holes) {
	c := base.Clone()
	number := func(label string, least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, label) }
	words := rapid.OneOf(rapid.StringN(1, 300, -1), rapid.StringMatching(`[A-Z][a-zÄgW ]{1,200}`))
	for _, row := range car.Rows {
		list := row.In(c)
		one := (*list)[0]
		*list = nil
		for range rapid.IntRange(1, 24).Draw(t, row.String()) {
			*list = append(*list, r2.Add(one, r2.Vec{X: number("x", -3, 3) * units.Inch, Y: number("z", -6, 2) * units.Inch}))
		}
	}
	for _, p := range car.Pairs {
		bar := p.Bar(c)
		bar.RodEnd = rapid.SampledFrom([]string{"", "3/4-16", "1 1/4-12", "M20x1.5", "5/8 bore"}).Draw(t, "rod end")
		bar.Threads = car.Threads{Shown: number("shown", 0, 30)}
		if rapid.Bool().Draw(t, "short thread") {
			bar.Threads.Length, bar.Threads.JamNut = number("thread", 0.5, 3)*units.Inch, number("nut", 0.2, 0.6)*units.Inch
		}
	}
	c.Driveline.Given = rapid.Bool().Draw(t, "driveline")
	c.Driveline.PinionAngle = number("pinion", -0.2, 0.2)
	c.Drive.Torque *= number("torque", 0.01, 40)
	c.Body.Name = words.Draw(t, "name") + "x"
	c.Setups = c.Setups[:1]
	setup := &c.Setups[0]
	setup.Name, setup.Runs = words.Draw(t, "setup")+"x", nil
	var to car.Holes
	for _, row := range car.Rows {
		last := len(*row.In(c)) - 1
		*row.Of(&setup.Holes), *row.Of(&to) = rapid.IntRange(0, last).Draw(t, "from"), rapid.IntRange(0, last).Draw(t, "to")
	}
	if rapid.Bool().Draw(t, "preload") {
		for _, turns := range car.BarTurns {
			*turns.Of(&setup.Turns) = number(turns.Key, -3, 3)
		}
	}
	return c, to
}

// box is where a text's letters are: capitals and descenders of common size,
// without descenders where there are digits only.
func (c *cardText) box() vg.Rectangle {
	size, under := c.face.Font.Size, vg.Length(0.21)
	if strings.Trim(c.text, "0123456789") == "" {
		under = 0.01
	}
	return vg.Rectangle{Min: vg.Point{X: c.at.X, Y: c.at.Y - under*size}, Max: vg.Point{X: c.at.X + c.face.Width(c.text), Y: c.at.Y + 0.71*size}}
}

// Whatever the car: everything is on the card, within its margin, and nothing
// covers anything else, in letters that can be read.
func TestAnyCard(t *testing.T) {
	base := demo(t)
	cards := 0
	rapid.Check(t, func(t *rapid.T) {
		c, to := anyCar(t, base)
		s := rapid.SampledFrom([]units.System{units.US, units.SI}).Draw(t, "units")
		if len(c.Validate(carfile.Stock(), s)) > 0 {
			// Keep all but the brackets, whose holes do not go together.
			c.Chassis, c.Housing, c.Setups[0].Holes = base.Chassis, base.Housing, base.Setups[0].Holes
			to = base.Setups[2].Holes
		}
		k, err := NewCard(t.Context(), c, 0, to, carfile.Stock(), s)
		if err != nil {
			if len(c.CheckHoles(to, c.Capacity(carfile.Stock()), s)) == 0 && !strings.Contains(err.Error(), "put together") {
				t.Fatalf("holes that can be used are refused: %v", err)
			}
			return
		}
		cards++
		l := k.layout(cardDate)
		checkCard(t, l)
		var out bytes.Buffer
		if err := k.Write(&out, cardDate); err != nil {
			t.Fatal(err)
		}
		pages, err := papertest.Pages(out.Bytes())
		if err != nil || len(pages) != 1 {
			t.Fatalf("%d pages, %v", len(pages), err)
		}
		if bad := regexp.MustCompile(`NaN|[+-]Inf`).FindString(pages[0]); bad != "" {
			t.Errorf("the page is drawn with %s", bad)
		}
	})
	if cards < 10 {
		t.Errorf("only %d cards were set", cards)
	}
}

func checkCard(t rapid.TB, l *cardSheet) {
	t.Helper()
	if l.scale < leastScale || l.wide || l.y < cardMargin {
		t.Errorf("scale %.2f, wide %v, %.1f pt above the lower edge", l.scale, l.wide, l.y)
	}
	const slack = 1e-6
	inner := vg.Rectangle{Min: vg.Point{X: cardMargin - slack, Y: cardMargin - slack}, Max: vg.Point{X: l.width - cardMargin + slack, Y: l.height - cardMargin + slack}}
	var boxes []vg.Rectangle
	var names []string
	var all []string
	for i := range l.texts {
		boxes, names = append(boxes, l.texts[i].box()), append(names, l.texts[i].text)
		all = append(all, l.texts[i].text)
	}
	texts := len(boxes)
	for _, s := range l.shapes {
		boxes, names = append(boxes, s.box), append(names, "a shape")
	}
	for i, box := range boxes {
		if !within(box, inner) {
			t.Errorf("%q at %v leaves the card %v", names[i], box, inner)
		}
		for j := range i {
			// A bracket's numbers stand in its drawing.
			inside := i >= texts && j < texts && box.Size().X > 40 && within(boxes[j], box)
			if overlapsAny(box, boxes[j:j+1]) && !inside {
				t.Errorf("%q at %v covers %q at %v", names[i], box, names[j], boxes[j])
			}
		}
	}
	if !strings.Contains(strings.Join(all, " "), chart.Caution) {
		t.Errorf("the caution is not on the card: %q", all)
	}
}

// Names are cut where they would run into what stands behind them.
func TestCardOfLongNames(t *testing.T) {
	c := demo(t)
	c.Body.Name, c.Setups[0].Name = strings.Repeat("Wagon ", 50), strings.Repeat("Ж", 300)
	k, err := NewCard(t.Context(), c, 0, c.Setups[1].Holes, carfile.Stock(), units.US)
	if err != nil {
		t.Fatal(err)
	}
	l := k.layout(cardDate)
	checkCard(t, l)
	cut := 0
	for _, text := range l.texts {
		if strings.HasSuffix(text.text, "…") && (strings.HasPrefix(text.text, "Wagon Wagon ") || strings.HasPrefix(text.text, "setup ЖЖЖЖЖЖЖЖ")) {
			cut++
		}
	}
	if cut != 2 {
		t.Errorf("%d names are cut", cut)
	}
}

// Where many things are wrong letters get smaller, and nothing is left out.
func TestCardOfManyAlerts(t *testing.T) {
	c := demo(t)
	c.Drive.Torque *= 20
	c.Setups[0].Turns = car.Turns{UpperLeft: -1, UpperRight: 1, LowerLeft: -0.5, LowerRight: 0.5}
	for _, p := range car.Pairs {
		p.Bar(c).RodEnd = ""
		p.Bar(c).Threads = car.Threads{Shown: 28}
	}
	k, err := NewCard(t.Context(), c, 0, car.Holes{ChassisUpper: 7, ChassisLower: 0, HousingUpper: 0, HousingLower: 5}, carfile.Stock(), units.US)
	if err != nil {
		t.Fatal(err)
	}
	l := k.layout(cardDate)
	checkCard(t, l)
	var all []string
	for _, text := range l.texts {
		all = append(all, text.text)
	}
	words := strings.Join(all, " ")
	alerts := append(k.alerts(), k.assumptions()...)
	if len(alerts) < 6 {
		t.Errorf("alerts %q", alerts)
	}
	for _, alert := range alerts {
		if !strings.Contains(words, alert) {
			t.Errorf("%q is missing", alert)
		}
	}
	if l.scale >= 1 {
		t.Errorf("scale %v", l.scale)
	}
}
