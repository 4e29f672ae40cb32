package plotting

import (
	"math"
	"slices"

	"gonum.org/v1/plot/plotter"
)

const (
	// limitsApart is the difference between the limits of two setups, over the
	// first one, from which on each has its line; below, their labels would
	// stand on each other, and one label tells both.
	limitsApart = 0.02
	// limitsAlike is the difference up to which two limits read the same.
	limitsAlike = 0.002
	// secondSize is the size of the second setup's marks over the first one's.
	secondSize = 0.72
)

// compare lays the chart of a second setup over that of the first. The second
// one's lines are thin and dotted, its marks small; what both have in common is
// drawn once.
func compare(a, b *Chart) *Chart {
	// Two results of one setup are numbered.
	names := [2]string(shortNames([]string{a.setups[0], b.setups[0]}, math.MaxInt))
	about := pair{a: a.subject, b: b.subject, names: names, shorts: [2]string(shortNames(names[:], nameLength))}
	c := *a
	c.setups = names[:]
	c.Title = versus(a.Title, about.shorts[:])
	c.Subtitle += " vs " + names[1]
	c.subject = about
	c.x.sight, c.y.sight = joint(a.x.sight, b.x.sight), joint(a.y.sight, b.y.sight)
	if a.right != nil && b.right != nil {
		right := *a.right
		right.sight = joint(a.right.sight, b.right.sight)
		c.right, c.y.sight = &right, shared(c.y.wide(), right.wide())
	}
	c.regions = slices.Clone(a.regions)
	for i := range b.regions {
		if r := b.regions[i]; !r.shade && !slices.ContainsFunc(a.regions, func(o region) bool { return o.x == r.x && o.y == r.y }) {
			c.regions = append(c.regions, r)
		}
	}
	c.notes = about.remarks(a.notes, b.notes)
	c.addLines(a, b)
	c.addRules(a, b, about.shorts[1])
	c.addMarks(a, b, about.shorts[1])
	return &c
}

// versus is the title of two setups: "Tire loads: baseline vs more bite".
func versus(heading string, names []string) string {
	return heading + ": " + names[0] + " vs " + names[1]
}

// joint returns the span that contains both.
func joint(a, b Span) Span { return a.with(b.Min, b.Max) }

// addLines adds the second setup's lines but those that the first has too.
func (c *Chart) addLines(a, b *Chart) {
	c.lines = slices.Clone(a.lines)
	for _, l := range b.lines {
		if !slices.ContainsFunc(a.lines, func(o line) bool { return o.name == l.name && sameRuns(o.runs, l.runs) }) {
			l.second = true
			c.lines = append(c.lines, l)
		}
	}
	if len(c.lines) == len(a.lines) && len(a.lines) > 0 {
		c.note(func(Frame) string { return "Both setups draw the same lines here." })
	}
}

func sameRuns(a, b []plotter.XYs) bool {
	return slices.EqualFunc(a, b, func(a, b plotter.XYs) bool { return slices.Equal(a, b) })
}

// addRules adds the second setup's rules. One at the place of a rule of the
// first, or as good as there, only adds its amount to the label.
func (c *Chart) addRules(a, b *Chart, setup string) {
	c.rules = slices.Clone(a.rules)
	for _, r := range b.rules {
		at := slices.IndexFunc(a.rules, func(o rule) bool {
			return o.upright == r.upright && o.of == r.of && math.Abs(o.at-r.at) <= limitsApart*math.Abs(o.at)
		})
		if at >= 0 {
			if first := a.rules[at]; math.Abs(first.at-r.at) > limitsAlike*math.Abs(first.at) {
				c.rules[at].caption = first.versus(r.caption)
			}
			continue
		}
		r.second, r.caption = true, r.by(setup)
		c.rules = append(c.rules, r)
	}
	// Twice the curves leave less room for the limits' labels inside.
	beyond := labelRoom * c.y.sight.length()
	for i := range c.rules {
		switch r := &c.rules[i]; {
		case !r.edge || !c.y.sight.Contains(r.at):
		case r.at < 0:
			c.y.sight = c.y.sight.with(r.at - beyond)
		default:
			c.y.sight = c.y.sight.with(r.at + beyond)
		}
	}
}

// addMarks adds the second setup's marks. A label that tells of the same as one
// of the first setup's goes there.
func (c *Chart) addMarks(a, b *Chart, setup string) {
	c.marks = slices.Clone(a.marks)
	for _, m := range b.marks {
		m.size = secondSize
		at := slices.IndexFunc(a.marks, func(o mark) bool { return o.of != "" && o.of == m.of })
		if at >= 0 {
			c.marks[at].caption, m.caption = c.marks[at].versus(m.caption), caption{}
		} else {
			m.caption = m.by(setup)
		}
		c.marks = append(c.marks, m)
	}
	for i := range c.marks {
		if c.marks[i].alone {
			c.marks[i].caption = caption{}
		}
	}
}
