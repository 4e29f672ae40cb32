package chart

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
	// LabelRoom is the part of the axis kept free for a limit's label at an
	// edge.
	LabelRoom = 0.1
	// secondSize is the size of the second setup's marks over the first one's.
	secondSize = 0.72
)

// Compare lays the chart of a second setup over that of the first. The second
// one's lines are thin and dotted, its marks small; what both have in common is
// drawn once.
func Compare(a, b *Chart) *Chart {
	// Two results of one setup are numbered.
	names := [2]string(ShortNames([]string{a.Setups[0], b.Setups[0]}, math.MaxInt))
	about := pair{a: a.Subject, b: b.Subject, names: names, shorts: [2]string(ShortNames(names[:], NameLength))}
	c := *a
	c.Setups = names[:]
	c.Title = versus(a.Title, about.shorts[:])
	c.Subtitle += " vs " + names[1]
	c.Subject = about
	c.X.Sight, c.Y.Sight = joint(a.X.Sight, b.X.Sight), joint(a.Y.Sight, b.Y.Sight)
	if a.Right != nil && b.Right != nil {
		right := *a.Right
		right.Sight = joint(a.Right.Sight, b.Right.Sight)
		c.Right, c.Y.Sight = &right, Shared(c.Y.Wide(), right.Wide())
	}
	c.Regions = slices.Clone(a.Regions)
	for i := range b.Regions {
		if r := b.Regions[i]; !r.Shade && !slices.ContainsFunc(a.Regions, func(o Region) bool { return o.X == r.X && o.Y == r.Y }) {
			c.Regions = append(c.Regions, r)
		}
	}
	c.Notes = about.remarks(a.Notes, b.Notes)
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
func joint(a, b Span) Span { return a.With(b.Min, b.Max) }

// addLines adds the second setup's lines but those that the first has too.
func (c *Chart) addLines(a, b *Chart) {
	c.Lines = slices.Clone(a.Lines)
	for _, l := range b.Lines {
		if !slices.ContainsFunc(a.Lines, func(o Line) bool { return o.Name == l.Name && sameRuns(o.Runs, l.Runs) }) {
			l.Setup = 1
			c.Lines = append(c.Lines, l)
		}
	}
	if len(c.Lines) == len(a.Lines) && len(a.Lines) > 0 {
		c.AddNote(func(Frame) string { return "Both setups draw the same lines here." })
	}
}

func sameRuns(a, b []plotter.XYs) bool {
	return slices.EqualFunc(a, b, func(a, b plotter.XYs) bool { return slices.Equal(a, b) })
}

// addRules adds the second setup's rules. One at the place of a rule of the
// first, or as good as there, only adds its amount to the label.
func (c *Chart) addRules(a, b *Chart, setup string) {
	c.Rules = slices.Clone(a.Rules)
	for _, r := range b.Rules {
		at := slices.IndexFunc(a.Rules, func(o Rule) bool {
			return o.Upright == r.Upright && o.Of == r.Of && math.Abs(o.At-r.At) <= limitsApart*math.Abs(o.At)
		})
		if at >= 0 {
			if first := a.Rules[at]; math.Abs(first.At-r.At) > limitsAlike*math.Abs(first.At) {
				c.Rules[at].Caption = first.versus(r.Caption)
			}
			continue
		}
		r.Setup, r.Caption = 1, r.by(setup)
		c.Rules = append(c.Rules, r)
	}
	// Twice the curves leave less room for the limits' labels inside.
	beyond := LabelRoom * c.Y.Sight.Length()
	for i := range c.Rules {
		switch r := &c.Rules[i]; {
		case !r.Edge || !c.Y.Sight.Contains(r.At):
		case r.At < 0:
			c.Y.Sight = c.Y.Sight.With(r.At - beyond)
		default:
			c.Y.Sight = c.Y.Sight.With(r.At + beyond)
		}
	}
}

// addMarks adds the second setup's marks. A label that tells of the same as one
// of the first setup's goes there.
func (c *Chart) addMarks(a, b *Chart, setup string) {
	c.Points = slices.Clone(a.Points)
	for _, m := range b.Points {
		m.Size = secondSize
		at := slices.IndexFunc(a.Points, func(o Point) bool { return o.Of != "" && o.Of == m.Of })
		if at >= 0 {
			c.Points[at].Caption, m.Caption = c.Points[at].versus(m.Caption), Caption{}
		} else {
			m.Caption = m.by(setup)
		}
		c.Points = append(c.Points, m)
	}
	for i := range c.Points {
		if c.Points[i].Alone {
			c.Points[i].Caption = Caption{}
		}
	}
}
