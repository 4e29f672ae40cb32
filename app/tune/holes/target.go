package holes

import (
	"fmt"
	"slices"
	"strings"

	"bowline/app/form"
	"bowline/app/inputs"
	"bowline/app/panel"
	"bowline/app/study"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// target is where the target and the wishes are set.
type target struct {
	study  *study.Study
	inputs *inputs.Fields
	checks []*form.Check // by place in wishBoxes
	order  *form.Select
	colors *form.Select // what the colors of the dots stand for
	object fyne.CanvasObject
}

// wishBoxes are the wishes that are there or not.
var wishBoxes = []struct {
	words string
	in    func(*holes.Wishes) *bool
}{
	{"All of the target met", func(w *holes.Wishes) *bool { return &w.InTarget }},
	{"One pair of bars moved", func(w *holes.Wishes) *bool { return &w.OneBar }},
	{"Within the adjusters' reach", func(w *holes.Wishes) *bool { return &w.InReach }},
	{withinPinion, func(w *holes.Wishes) *bool { return &w.WithinPinion }},
	{"Within the bars' limits", func(w *holes.Wishes) *bool { return &w.WithinLoad }},
	{withinLift, func(w *holes.Wishes) *bool { return &w.WithinLift }},
}

// What the boxes of limits say.
const (
	withinPinion  = "Within the pinion limit"
	noPinionLimit = "No pinion limit set"
	withinLift    = "Within the front lift limit"
	noLiftLimit   = "No front lift limit set"
)

// newTarget returns the form, which stands on a page.
func newTarget(host panel.Host, on form.Host) *target {
	s := host.Study
	t := &target{study: s, inputs: inputs.NewTarget(s.Document(), s.Library(), on)}
	t.inputs.Later = host.Later
	boxes := container.NewGridWithColumns(2)
	for _, b := range wishBoxes {
		wished := func() bool {
			w := wishes(s)
			return *b.in(&w)
		}
		c := form.NewCheck(b.words, wished, form.Always(func(on bool) { t.wish(func(w *holes.Wishes) { *b.in(w) = on }) }))
		t.checks = append(t.checks, c)
		boxes.Add(c)
	}
	var names []string
	for _, o := range holes.Orders {
		names = append(names, o.String())
	}
	t.order = form.NewSelect(
		func() []string { return names },
		func() string { return wishes(s).Order.String() },
		form.Always(func(i int) { t.wish(func(w *holes.Wishes) { w.Order = holes.Orders[i] }) }),
	)
	t.colors = newColors(s)
	choices := container.New(layout.NewFormLayout(), widget.NewLabel("Order by"), t.order, widget.NewLabel("Color dots by"), t.colors)
	t.object = form.Stacked(choices, t.inputs.Form, boxes)
	t.refresh()
	return t
}

// newColors chooses what the colors of the dots stand for: anti-squat against its target,
// or any column of the list against the holes in use.
func newColors(s *study.Study) *form.Select {
	names, columns := []string{"anti-squat against its target"}, []*holes.Column{nil}
	for _, c := range onScreen(true) {
		if c.Key != "holes" {
			names, columns = append(names, strings.ReplaceAll(c.Title, "\n", " ")), append(columns, c)
		}
	}
	return form.NewSelect(
		func() []string { return names },
		func() string { return names[slices.Index(columns, s.DotColumn())] },
		form.Always(func(i int) { s.ColorDots(columns[i]) }),
	)
}

// wish changes the wishes.
func (t *target) wish(change func(*holes.Wishes)) {
	w := t.study.Wishes()
	change(&w)
	t.study.SetWishes(w)
}

// wishes returns those that the target has something for.
func wishes(s *study.Study) holes.Wishes {
	return s.Wishes().Of(holes.TargetOf(s.Document().Car()))
}

// refresh shows the wishes.
func (t *target) refresh() {
	t.refreshLimits()
	for _, c := range t.checks {
		c.Update()
	}
	t.order.Update()
	t.colors.Update()
}

// refreshLimits has the boxes of limits react only while there are any.
func (t *target) refreshLimits() {
	now := holes.TargetOf(t.study.Document().Car())
	for i, b := range wishBoxes {
		c, text, limited := t.checks[i], b.words, true
		switch b.words {
		case withinPinion:
			if limited = now.PinionLimit != 0; !limited {
				text = noPinionLimit
			}
		case withinLift:
			if limited = now.LiftLimit != 0; !limited {
				text = noLiftLimit
			}
		}
		if c.Text != text {
			c.SetText(text)
		}
		form.Enable(c, limited)
	}
}

// title names the form with what is in it.
func (t *target) title() string {
	target, u := holes.TargetOf(t.study.Document().Car()), t.study.Units()
	text := "Target and wishes: " + u.SpanExact(units.Percent, target.AntiSquat[0], target.AntiSquat[1])
	w := wishes(t.study)
	n := 0
	for _, b := range wishBoxes {
		if *b.in(&w) {
			n++
		}
	}
	switch n {
	case 0:
		return text
	case 1:
		return text + ", 1 wish"
	}
	return fmt.Sprintf("%s, %d wishes", text, n)
}
