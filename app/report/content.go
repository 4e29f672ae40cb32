package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"bowline/app/words"
	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/statics"
	"bowline/model/units"
)

// writer puts a result into words.
type writer struct {
	*analysis.Result
	launch *launch.Result      // nil for none
	worth  []assumptions.Worth // of the launch's assumptions; nil where nobody has found it
	units  units.System
}

// title names the car and the setup.
func (w writer) title() string {
	return fmt.Sprintf("%s, setup %q", plainText(w.Car.Body.Name), w.setup().Name)
}

func (w writer) setup() *car.Setup { return &w.Car.Setups[w.Options.Setup] }

// sections lists the whole report but for its title and the caution.
func (w writer) sections() []section {
	list := []section{{title: "Verdict", lines: words.Verdicts(w.Result, w.launch, w.units)}}
	if said := words.Warnings(w.Warnings(w.launch), w.units); len(said) > 0 {
		list = append(list, section{title: "Warnings", list: true, lines: said})
	}
	list = append(list, w.holes())
	if runs, logged := w.runs(); logged {
		list = append(list, runs)
	}
	list = append(list, w.car(), w.bars(), w.rideHeight(), w.rideLoads(), w.holeForces(), w.geometry(), w.loads())
	list = append(list, w.roll()...)
	return append(list, w.launchSections()...)
}

// holes lists what the setup is made of.
func (w writer) holes() section {
	length := w.units.Symbol(units.Length)
	s := section{title: "Holes of the setup", table: table{columns: []heading{{"bar end", ""}, {"hole", ""}, {"ahead", length}, {"up", length}, {"measured from", ""}}}}
	if note := w.setup().Note; note != "" {
		s.lines = []string{"Note: " + plainText(note)}
	}
	for _, row := range car.Rows {
		at := row.Hole(w.Car, w.Options.Setup)
		from := "axle centerline"
		if row.OnChassis() {
			from = "ground under the axle, at ride height"
		}
		s.table.rows = append(s.table.rows, []cell{
			said(row.String()),
			said(fmt.Sprintf("%d of %d", *row.Of(&w.setup().Holes)+1, len(*row.In(w.Car)))),
			w.signed(units.Length, at.X, "", "behind"),
			w.signed(units.Length, at.Y, "", "below"),
			said(from),
		})
	}
	return s
}

// car lists the inputs that the numbers hang on most.
func (w writer) car() section {
	c, d := w.Car, w.Car.Drive
	length := func(x float64) string { return w.units.Format(units.Length, x) }
	mass := func(x float64) string { return w.units.Format(units.Mass, x) }
	plain := func(x float64) string { return w.typed(units.Number, x) }
	curve, err := column.ParseCurve(c.Check.Column)
	if err != nil {
		curve = column.JohnsonEuler
	}
	s := section{title: "Car"}
	s.table.fact("wheelbase", length(c.Body.Wheelbase))
	s.table.fact("weight", fmt.Sprintf("%s, %s of it on the rear tires", mass(c.Body.Mass), mass(c.Body.RearMass)))
	s.table.fact("center of gravity", fmt.Sprintf("%s ahead of the rear axle, %s up", length(c.CGAhead()), length(c.Body.CGHeight)))
	s.table.fact("rear tires", fmt.Sprintf("radius %s loaded, grip %s", length(c.Tires.RearRadius), plain(c.Tires.Grip)))
	s.table.fact("engine", fmt.Sprintf("%s at %s", w.units.Format(units.Torque, d.Torque), w.units.Format(units.Speed, d.Speed)))
	s.table.fact("axle torque", fmt.Sprintf("%s: converter %s, gear %s, axle %s, efficiency %s", w.units.Format(units.Torque, c.AxleTorque()),
		plain(d.Converter), plain(d.Gear), plain(d.Axle), plain(d.Efficiency)))
	s.table.fact("bars are held against", fmt.Sprintf("%s, a bow of %s of the length, a factor of %s", curve.Title(), plain(c.Check.Crookedness), plain(c.Check.Factor)))
	return s
}

// fact adds a labeled line.
func (t *table) fact(label, text string) {
	if t.columns == nil {
		t.columns = make([]heading, 2)
	}
	t.rows = append(t.rows, []cell{said(label), said(text)})
}

// bars lists what the bars can carry and what they come to carry.
func (w writer) bars() section {
	s := section{title: "Bars, each", lines: words.PullLimits(w.Result, w.units), table: table{columns: []heading{{}, {"upper bar", ""}, {"lower bar", ""}}}}
	add := func(label string, of func(car.Pair) cell) {
		s.table.rows = append(s.table.rows, []cell{said(label), of(car.Upper), of(car.Lower)})
	}
	force := func(of func(*column.Result) float64) func(car.Pair) cell {
		return func(p car.Pair) cell { return said(w.units.Format(units.Force, of(&w.Bars[p]))) }
	}
	add("tube", func(p car.Pair) cell {
		tube := p.Bar(w.Car)
		return said(w.withoutUnit(units.Length, w.typed(units.Length, tube.OD)) + " × " + w.typed(units.Length, tube.Wall))
	})
	add("material", func(p car.Pair) cell { return said(plainText(p.Bar(w.Car).Material)) })
	add("length, pin to pin", func(p car.Pair) cell { return said(w.units.Format(units.Length, w.Bars[p].Length)) })
	add("slenderness", func(p car.Pair) cell { return said(fmt.Sprintf("%.1f", w.Bars[p].Slenderness)) })
	add("OD over wall", func(p car.Pair) cell {
		wall := w.Bars[p].Wall
		return said(fmt.Sprintf("%.1f (thin beyond %.1f)", wall.Ratio, wall.Limit))
	})
	add("Euler", force(func(b *column.Result) float64 { return b.Euler }))
	add("Johnson", force(func(b *column.Result) float64 { return b.Johnson }))
	add("first yield, bowed", force(func(b *column.Result) float64 { return b.FirstYield }))
	for _, d := range column.Directions {
		add(fmt.Sprintf("may %s", d), func(p car.Pair) cell { return said(w.units.Format(units.Force, w.Limit(p, d).Allowable)) })
		add("  governed by", func(p car.Pair) cell { return said(w.Limit(p, d).Kind.String()) })
		add("  most in travel", func(p car.Pair) cell { return said(w.use(w.Result.Worst[p][d])) })
	}
	return s
}

// use writes how near a bar comes to its capacity, where and when.
func (w writer) use(u analysis.Use) string {
	if u.Force == 0 {
		return "never"
	}
	return fmt.Sprintf("%s (%s), %s, %s", w.units.Format(units.Force, u.Force), units.Share(u.Share), u.Case, w.units.Travel(u.Travel))
}

// rideHeight lists the geometry at ride height.
func (w writer) rideHeight() section {
	r := &w.Ride
	s := section{title: "At ride height"}
	if r.HasInstantCenter {
		s.table.fact("instant center", words.Center(r.InstantCenter, w.units))
		s.table.fact("swing arm", w.units.Format(units.Length, math.Abs(r.InstantCenter.X)))
	} else {
		s.table.fact("instant center", "none, the bars are parallel")
	}
	antiSquat := "no value, the line of action stands upright"
	if r.HasAntiSquat {
		antiSquat = w.units.Format(units.Percent, r.AntiSquat)
	}
	s.table.fact("anti-squat", antiSquat)
	s.table.fact("targets", w.targets())
	if j := r.Joints; j.Given {
		s.table.fact("pinion joint", w.units.Nose(j.Pinion))
		s.table.fact("transmission joint", w.units.Nose(j.Transmission))
	}
	s.table.fact("bars close from", w.units.Travels(w.Droop, w.Bump))
	s.table.fact("travel allowed", w.units.Travels(-w.Car.Springs.RearDroop, w.Car.Springs.RearBump))
	if q := w.Options.FrontTravel; q != 0 {
		s.table.fact("front wheels", w.units.Travel(q)+", here and below")
	}
	return s
}

// targets writes what ride height is held against.
func (w writer) targets() string {
	k := w.Car.Check
	span := func(q units.Quantity, ends [2]float64) string {
		return w.units.Span(q, ends[0], ends[1])
	}
	return fmt.Sprintf("anti-squat %s, instant center %s ahead and %s up", span(units.Percent, k.TargetAntiSquat), span(units.Length, k.TargetICX), span(units.Length, k.TargetICZ))
}

// rideLoads sets the three load cases at ride height side by side.
func (w writer) rideLoads() section {
	s := section{title: "Loads at ride height", table: table{columns: []heading{{}, {"at rest", ""}, {"hooked", ""}, {"hit", ""}}}}
	if note := words.SpringsPull(w.Result); note != "" {
		s.lines = []string{note}
	}
	loads := []*statics.Load{&w.Ride.Loads.Rest, &w.Ride.Loads.Hooked, &w.Ride.Loads.Hit}
	add := func(label string, of func(*statics.Load) cell) {
		row := []cell{said(label)}
		for _, l := range loads {
			row = append(row, of(l))
		}
		s.table.rows = append(s.table.rows, row)
	}
	// Where bars and springs cannot hold the axle, they have no force.
	held := func(of func(*statics.Load) cell) func(*statics.Load) cell {
		return func(l *statics.Load) cell {
			if !l.Balanced {
				return said("none")
			}
			return of(l)
		}
	}
	force := w.units.Symbol(units.Force)
	add("thrust ["+force+"]", func(l *statics.Load) cell { return w.number(units.Force, l.Thrust) })
	add("axle torque ["+w.units.Symbol(units.Torque)+"]", func(l *statics.Load) cell { return w.number(units.Torque, l.AxleTorque) })
	add("acceleration [g]", func(l *statics.Load) cell { return cell{figure: units.Decimal(l.Accel/units.Gravity, 2)} })
	add("rear tires ["+force+"]", func(l *statics.Load) cell { return w.number(units.Force, l.RearLoad) })
	add("front tires ["+force+"]", func(l *statics.Load) cell { return w.number(units.Force, l.FrontLoad) })
	add("upper bar, each ["+force+"]", held(func(l *statics.Load) cell { return w.pull(l.Upper.Tension) }))
	add("lower bar, each ["+force+"]", held(func(l *statics.Load) cell { return w.pull(l.Lower.Tension) }))
	add("rear springs, both ["+force+"]", held(func(l *statics.Load) cell { return w.pull(-l.Spring) }))
	add("  against rest ["+force+"]", held(func(l *statics.Load) cell { return w.signed(units.Force, w.SpringChange(l), "more", "less") }))
	add("bars' part of the load transfer [%]", held(func(l *statics.Load) cell {
		if l.Governs == statics.AtRest {
			return cell{}
		}
		return cell{figure: units.Decimal(100*l.BarsShare, 0)}
	}))
	add("governed by", func(l *statics.Load) cell {
		if l.Governs == statics.AtRest {
			return cell{}
		}
		return said(l.Governs.String())
	})
	return s
}

const (
	// longest is the largest figure written out in a table, in shop units.
	// Larger ones stand where bars hardly hold the axle.
	longest = 1e6
	// digits is how many digits a figure in a table has, or all before its
	// point when those are more.
	digits = 5
)

// number is a result without its unit.
func (w writer) number(q units.Quantity, si float64) cell {
	x := w.units.FromSI(q, si)
	if math.Abs(x) >= longest {
		return cell{figure: units.Group(strconv.FormatFloat(x, 'e', 1, 64))}
	}
	decimals := w.units.Decimals(q)
	if whole := len(strconv.FormatFloat(math.Abs(x), 'f', 0, 64)); whole+decimals > digits {
		decimals = max(0, digits-whole)
	}
	return cell{figure: units.Decimal(x, decimals)}
}

// typedDigits is how many digits of a typed number are shown: enough for any
// that a person types, few enough to hide the rounding of another unit system.
const typedDigits = 7

// typed is a ratio or a tube's size, with its unit, as it was typed in: it can be
// finer than the unit's usual decimals show.
func (w writer) typed(q units.Quantity, si float64) string {
	text := strconv.FormatFloat(w.units.FromSI(q, si), 'g', typedDigits, 64)
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		si = w.units.ToSI(q, x)
	}
	text = w.units.FormatExact(q, si)
	figures := w.withoutUnit(q, text)
	return units.Group(figures) + strings.TrimPrefix(text, figures)
}

func (w writer) withoutUnit(q units.Quantity, text string) string {
	return strings.TrimSpace(strings.TrimSuffix(text, w.units.Symbol(q)))
}

// signed is a magnitude with the word for its sign; zero takes none.
func (w writer) signed(q units.Quantity, si float64, positive, negative string) cell {
	c := w.number(q, math.Abs(si))
	switch {
	case si > 0:
		c.words = positive
	case si < 0:
		c.words = negative
	}
	return c
}

// pull is a bar's or a spring's force, pull positive.
func (w writer) pull(si float64) cell { return w.signed(units.Force, si, "pull", "push") }

// plainText is text that a person typed, without line breaks and other control
// characters.
func plainText(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}
