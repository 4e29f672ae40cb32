package report

import (
	"fmt"
	"slices"
	"strings"

	"bowline/app/words"
	"bowline/model/adjuster"
	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
)

// cardBar names a bar of a card by its pair and side, left first.
func cardBar(pair, side int) string { return words.BarInitials()[2*pair+side] }

// ends lists where each bar end goes; bold are the ones that move.
func (k *Card) ends() (t table, bold []bool) {
	t.columns = make([]heading, 2)
	for i := range k.change.Pairs {
		p := &k.change.Pairs[i]
		for _, end := range []struct {
			at string
			adjuster.Move
		}{{"chassis", p.Chassis}, {"housing", p.Housing}} {
			what := fmt.Sprintf("stays in %d", end.From+1)
			if end.Moved() {
				what = fmt.Sprintf("hole %d → %d", end.From+1, end.To+1)
			}
			t.rows = append(t.rows, []cell{said([...]string{"Upper bar, ", "Lower bar, "}[p.Pair] + end.at + ":"), said(what)})
			bold = append(bold, end.Moved())
		}
	}
	return t, bold
}

// bars lists how to turn each bar.
func (k *Card) bars() table {
	t := table{columns: []heading{{"bar", ""}, {"turn", ""}, {"pin to pin", ""}, {"thread engaged", ""}}}
	for i := range k.change.Pairs {
		for side, b := range k.sides(i) {
			turn := words.Turn(b.Turn())
			if b.After.Recut() {
				turn = "new tube"
			}
			t.rows = append(t.rows, []cell{said(cardBar(i, side)), said(turn), said(k.units.FormatFine(units.Length, b.After.Length)), said(engaged(k.units, &b.After))})
		}
	}
	return t
}

// sides returns the left and the right bar of a pair.
func (k *Card) sides(pair int) [2]*adjuster.BarChange {
	p := &k.change.Pairs[pair]
	return [2]*adjuster.BarChange{&p.Left, &p.Right}
}

// engaged writes how much thread is in a bar's tube.
func engaged(s units.System, b *adjuster.State) string {
	if b.Engaged <= 0 {
		return "old tube: none"
	}
	diameters := words.Diameters(b)
	switch b.Status {
	case adjuster.TooShort:
		return "old tube: " + diameters
	case adjuster.TooLong:
		return "old tube: used up"
	case adjuster.Shallow:
		diameters += " (!)"
	}
	return s.Format(units.Length, b.Engaged) + ", " + diameters
}

// barWords are words about bars, each with the bars they hold for.
type barWords struct {
	texts []string
	bars  map[string][]string
}

func (w *barWords) say(bar, text string) {
	if w.bars == nil {
		w.bars = map[string][]string{}
	}
	if w.bars[text] == nil {
		w.texts = append(w.texts, text)
	}
	w.bars[text] = append(w.bars[text], bar)
}

// lines returns a line for each text, as in "UL, UR: tube too long".
func (w *barWords) lines() []string {
	var list []string
	for _, text := range w.texts {
		list = append(list, strings.Join(w.bars[text], ", ")+": "+text)
	}
	return list
}

// alerts lists what is wrong with the bars in the new holes.
func (k *Card) alerts() []string {
	var list barWords
	for i := range k.change.Pairs {
		p := &k.change.Pairs[i]
		for side, b := range k.sides(i) {
			bar := cardBar(i, side)
			switch {
			case !p.Bar.Usable():
				list.say(bar, "rod end's "+words.ShortThread(p.Bar, k.units))
			case b.After.Recut():
				list.say(bar, words.Tube(&b.After, k.units))
			case b.After.Status == adjuster.Shallow:
				list.say(bar, fmt.Sprintf("(!) under %v D engaged, a longer tube is better", adjuster.WellEngaged))
			}
		}
	}
	said := list.lines()
	var over [2]analysis.Warning // The worst of each pair.
	for _, w := range k.after.Warnings(k.after.launch) {
		switch w.Kind {
		case analysis.OverCapacity:
			if worst := &over[w.Demand.Bar.Pair()]; w.Demand.Share > worst.Demand.Share {
				*worst = w
			}
		case analysis.NotBalanced:
			said = append(said, words.Warning(w, k.units))
		}
	}
	for _, w := range over {
		if w.Demand.Share > 0 {
			said = append(said, words.Warning(w, k.units))
		}
	}
	return said
}

// assumptions lists what the rod ends' names do not say.
func (k *Card) assumptions() []string {
	var list barWords
	for i := range k.change.Pairs {
		for side := range launch.Sides {
			bar := cardBar(i, side)
			switch assumed := k.change.Pairs[i].Assumed; {
			case assumed.Diameter:
				list.say(bar, "thread assumed to be 3/4 in, 16 per inch")
			case assumed.Pitch:
				list.say(bar, "thread assumed to have 16 per inch")
			}
		}
	}
	return list.lines()
}

// pinion says where the pinion ends up and where it is on the way.
func (k *Card) pinion() table {
	t := table{columns: make([]heading, 2)}
	add := func(label, text string) { t.rows = append(t.rows, []cell{said(label), said(text)}) }
	turn := k.change.Turned.Pinion
	was, is := k.car.Driveline.PinionAngle, k.car.Driveline.PinionAngle+turn
	stays := k.units.ReadsZero(units.Angle, turn)
	end := "turns " + k.units.Nose(turn)
	switch {
	case stays && k.car.Driveline.Given:
		end = "stays at " + k.units.Nose(was)
	case stays:
		end = "stays as it is"
	case k.car.Driveline.Given:
		end = k.units.Nose(was) + " → " + k.units.Nose(is)
	}
	if !k.change.Pairs[car.Upper].Turned() && !k.change.Pairs[car.Lower].Turned() {
		add("in these holes", end)
		return t
	}
	add("all bars turned", end)
	if text := words.Effect(k.change.InFlats, k.units); text != words.Effect(adjuster.Effect{}, k.units) {
		add("to the nearest flat", text)
	}
	effect := func(e adjuster.Effect) string {
		switch {
		case e.Cannot != nil:
			return "cannot be put together"
		case k.units.ReadsZero(units.Angle, e.Pinion):
			return "unchanged"
		}
		return "goes " + k.units.Nose(e.Pinion)
	}
	if k.change.Pairs[car.Upper].Turned() && k.change.Pairs[car.Lower].Turned() {
		add("only uppers turned", effect(k.change.Pairs[car.Upper].Alone))
		add("only lowers turned", effect(k.change.Pairs[car.Lower].Alone))
	} else if slices.ContainsFunc(k.change.Pairs[:], func(p adjuster.PairChange) bool { return p.Moved() }) {
		add("moved, not yet turned", effect(k.change.Unturned))
	}
	return t
}

// compared sets what the holes do before and after side by side.
func (k *Card) compared() table {
	t := table{columns: []heading{{}, {"before", ""}, {"after", ""}}}
	add := func(label string, of func(writer) string) {
		t.rows = append(t.rows, []cell{said(label), said(of(k.before)), said(of(k.after))})
	}
	figure := func(w writer, q units.Quantity, si float64) string {
		return w.number(q, si).figure + " " + w.units.Symbol(q)
	}
	add("Anti-squat", func(w writer) string {
		if !w.Ride.HasAntiSquat {
			return "no value"
		}
		return figure(w, units.Percent, w.Ride.AntiSquat)
	})
	center := func(what string, of func(r2.Vec) float64, below string) {
		add(what, func(w writer) string {
			x := of(w.Ride.InstantCenter)
			switch {
			case !w.Ride.HasInstantCenter:
				return "bars parallel"
			case x < 0:
				return figure(w, units.Length, -x) + " " + below
			}
			return figure(w, units.Length, x)
		})
	}
	center("IC ahead", func(p r2.Vec) float64 { return p.X }, "behind")
	center("IC up", func(p r2.Vec) float64 { return p.Y }, "under")
	add("Bottom-bar push", func(w writer) string {
		d := w.bottomPush()
		if d.Force == 0 {
			return "never"
		}
		return figure(w, units.Force, d.Force) + ", " + d.Source.String()
	})
	add("  of its limit", func(w writer) string { return units.Share(w.bottomPush().Share) })
	add("60 ft, computed", func(w writer) string { return words.SixtyFeet(w.launch, w.units) })
	return t
}

// bottomPush returns the most that the side view and the launch push a bottom bar.
func (w writer) bottomPush() analysis.Demand {
	e := w.Envelope(w.launch)
	return e.OfPair(car.Lower, column.Push)
}

// boxes lists what is to be ticked before the round.
func (k *Card) boxes() []string {
	turned := "turned equal left/right"
	for i := range k.change.Pairs {
		if sides := k.sides(i); sides[0].Turn() != sides[1].Turn() {
			turned = "turned as written, left/right"
		}
	}
	return []string{"jam nuts tight", turned, "pinion angle checked", "ride height checked"}
}
