package chart

import (
	"math"
	"slices"
	"strings"

	"bowline/model/units"

	"gonum.org/v1/plot/plotter"
)

const (
	// limitsApart is the difference between the limits of two setups, over the
	// first one, from which on each has its line; below, their labels would
	// stand on each other, and one label names both.
	limitsApart = 0.02
	// limitsAlike is the difference up to which two limits read the same.
	limitsAlike = 0.002
	// LabelRoom is the part of an axis to keep free for the label of a rule at
	// the chart's edge.
	LabelRoom = 0.1
	// furtherSize is the size of the points of further setups over the first
	// one's.
	furtherSize = 0.72
)

// Compare lays the charts of several setups over each other. Axes, title, areas and
// shades are the first one's; the lines and points of each further one have a
// look of their own, and what several have in common is drawn once. A chart
// alone is returned as it is.
func Compare(charts ...*Chart) *Chart {
	if len(charts) == 1 {
		return charts[0]
	}
	var about several
	for _, c := range charts {
		about.list = append(about.list, c.Subject)
		about.names = append(about.names, c.Setups[0])
	}
	// Results of one setup are numbered.
	about.names = ShortNames(about.names, math.MaxInt)
	about.shorts = ShortNames(about.names, NameLength)
	c := *charts[0]
	c.Setups = about.names
	c.Subtitle = strings.Join(append([]string{c.Subtitle}, about.names[1:]...), " vs ")
	c.Subject = about
	c.joinAxes(charts)
	c.joinRegions(charts)
	c.joinEvents(charts)
	c.Notes = about.notes(charts)
	c.joinLines(charts)
	c.joinRules(charts, about.shorts)
	c.joinPoints(charts, about.shorts)
	return &c
}

// joinAxes brings into sight what each chart has in sight alone.
func (c *Chart) joinAxes(charts []*Chart) {
	for _, o := range charts[1:] {
		c.X.Sight, c.Y.Sight = c.X.Sight.With(o.X.Sight.Min, o.X.Sight.Max), c.Y.Sight.With(o.Y.Sight.Min, o.Y.Sight.Max)
	}
	if c.Right == nil {
		return
	}
	right := *c.Right
	for _, o := range charts[1:] {
		right.Sight = right.Sight.With(o.Right.Sight.Min, o.Right.Sight.Max)
	}
	c.Right, c.Y.Sight = &right, ShareZero(c.Y.Need(), right.Need())
}

// joinRegions adds the targets of further setups that are others.
func (c *Chart) joinRegions(charts []*Chart) {
	c.Regions = slices.Clone(c.Regions)
	for _, o := range charts[1:] {
		for _, r := range o.Regions {
			if !r.Shade && !slices.ContainsFunc(c.Regions, func(known Region) bool { return known.X == r.X && known.Y == r.Y }) {
				c.Regions = append(c.Regions, r)
			}
		}
	}
}

// joinEvents adds the events of further setups, which have no label.
func (c *Chart) joinEvents(charts []*Chart) {
	c.Events = slices.Clone(c.Events)
	for i, o := range charts[1:] {
		for _, e := range o.Events {
			e.Caption, e.Setup = Caption{}, i+1
			c.Events = append(c.Events, e)
		}
	}
}

// joinLines adds the lines of further setups. One that is the same as an earlier
// setup's stays without points.
func (c *Chart) joinLines(charts []*Chart) {
	own := len(c.Lines)
	c.Lines = slices.Clone(c.Lines)
	differ := false
	for i, o := range charts[1:] {
		for _, l := range o.Lines {
			l.Setup = i + 1
			if slices.ContainsFunc(c.Lines, func(known Line) bool { return known.Name == l.Name && sameRuns(known.Runs, l.Runs) }) {
				l.Runs = nil
			}
			differ = differ || l.Runs != nil
			c.Lines = append(c.Lines, l)
		}
	}
	if own > 0 && !differ {
		all := "Both"
		if len(charts) > 2 {
			all = "All"
		}
		c.AddNote(func(Frame) string { return all + " setups draw the same lines here." })
	}
}

func sameRuns(a, b []plotter.XYs) bool {
	return slices.EqualFunc(a, b, slices.Equal[plotter.XYs])
}

// common is what several setups share: one rule, or one label.
type common struct {
	of       []int // the setups, in order
	captions []Caption
}

// caption is the label of all: with all amounts, or one where they read alike,
// and the names of the setups unless it is of all of them or of the first alone.
func (g *common) caption(alike bool, names []string) Caption {
	c, between := g.captions[0], ", "
	if !alike {
		c, between = Versus(g.captions...), " vs "
	}
	c.Over = slices.ContainsFunc(g.captions, func(o Caption) bool { return o.Over })
	if len(g.of) == len(names) || len(g.of) == 1 && g.of[0] == 0 {
		return c
	}
	var own []string
	for _, i := range g.of {
		own = append(own, names[i])
	}
	return c.by(strings.Join(own, between))
}

// joinRules adds the rules of further setups. Of those that stand at one place,
// or as good as there, one is drawn, and its label has the amounts of all.
func (c *Chart) joinRules(charts []*Chart, names []string) {
	c.Rules = nil
	var groups []common
	alike := []bool{}
	for i, o := range charts {
		for _, r := range o.Rules {
			k := slices.IndexFunc(c.Rules, func(known Rule) bool {
				return known.Upright == r.Upright && known.Of == r.Of && math.Abs(known.At-r.At) <= limitsApart*math.Abs(known.At)
			})
			if i == 0 || k < 0 {
				r.Setup = i
				c.Rules, groups, alike = append(c.Rules, r), append(groups, common{[]int{i}, []Caption{r.Caption}}), append(alike, true)
				continue
			}
			groups[k].of, groups[k].captions = append(groups[k].of, i), append(groups[k].captions, r.Caption)
			alike[k] = alike[k] && math.Abs(c.Rules[k].At-r.At) <= limitsAlike*math.Abs(c.Rules[k].At)
		}
	}
	// More curves leave less room for the limits' labels inside.
	beyond := LabelRoom * c.Y.Sight.Length()
	for i := range c.Rules {
		r := &c.Rules[i]
		r.Caption = groups[i].caption(alike[i], names)
		switch {
		case !r.Edge || !c.Y.Sight.Contains(r.At):
		case r.At < 0:
			c.Y.Sight = c.Y.Sight.With(r.At - beyond)
		default:
			c.Y.Sight = c.Y.Sight.With(r.At + beyond)
		}
	}
}

// joinPoints adds the points of further setups. Labels of the same stand as one
// at the first of their points.
func (c *Chart) joinPoints(charts []*Chart, names []string) {
	c.Points = nil
	groups := map[string]*common{} // by what they are of
	first := map[string]int{}      // the point with the label
	for i, o := range charts {
		for _, p := range o.Points {
			if p.Setup = i; i > 0 {
				p.Size = furtherSize
			}
			switch g := groups[p.Of]; {
			case p.Alone:
				p.Caption = Caption{}
			case p.Of == "":
			case g == nil || i == 0:
				groups[p.Of], first[p.Of] = &common{[]int{i}, []Caption{p.Caption}}, len(c.Points)
			default:
				g.of, g.captions = append(g.of, i), append(g.captions, p.Caption)
				p.Caption = Caption{}
			}
			c.Points = append(c.Points, p)
		}
	}
	for of, g := range groups {
		c.Points[first[of]].Caption = g.caption(len(g.of) == 1, names)
	}
}

// Versus returns the caption of several amounts, "lower limit 10,257 lb vs 9,980
// lb", or of one where all read the same.
func Versus(list ...Caption) Caption {
	both := list[0]
	both.Amount = func(s units.System) string {
		var parts []string
		same := true
		for _, c := range list {
			text := c.short(s)
			if c.Head != both.Head {
				text = joined(c.Head, text)
			}
			same = same && (len(parts) == 0 || text == parts[0])
			parts = append(parts, text)
		}
		if same {
			return parts[0]
		}
		return strings.Join(parts, " vs ")
	}
	both.Brief = nil
	return both
}
