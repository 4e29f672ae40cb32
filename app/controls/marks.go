package controls

import (
	"cmp"
	"image/color"
	"math"
	"slices"

	"bowline/app/words"
	"bowline/model/column"
	"bowline/model/launch"
	"bowline/plotting/palette"
)

// mark is a time of the launch that can be jumped to.
type mark struct {
	at, to  float64 // when it begins and, of a band, ends [s]
	band    bool
	caption string
	first   bool // the first with its caption, which is written where there is room
	urgency int  // the least urgent captions are left out
	ink     func(*palette.Palette) color.RGBA
}

// Urgency of captions.
const (
	minorPeak = iota // of a bar that is not the one that carries most
	minor            // an event that harms nothing
	major            // an event that costs time or hardware
	strongest        // the greatest force in any bar
)

// urgencies are those of the events.
var urgencies = map[launch.EventKind]int{
	launch.Wheelspin: major, launch.ToppedOut: minor, launch.Bottomed: major, launch.TireUnloaded: minor,
	launch.WheelieBarDown: major, launch.FrontWheelsOff: major, launch.AtRevLimit: minor,
}

// marksOf lists what happens in a launch and the peaks of the bars, by time.
func marksOf(r *launch.Result) []mark {
	var list []mark
	for _, e := range r.Events {
		m := mark{at: e.From, to: e.To, caption: words.EventCaption(e), urgency: urgencies[e.Kind], ink: func(p *palette.Palette) color.RGBA { return p.Muted }}
		if e.Kind == launch.Wheelspin {
			m.band, m.ink = true, func(p *palette.Palette) color.RGBA { return p.Bad }
		}
		list = append(list, m)
	}
	bar, way, _, _ := r.Strongest()
	for _, b := range launch.Bars {
		p := &r.Peaks[b]
		for _, peak := range []struct {
			way       column.Direction
			force, at float64
			ink       func(*palette.Palette) color.RGBA
		}{
			{column.Pull, p.Pull, p.PullTime, func(p *palette.Palette) color.RGBA { return p.Pull }},
			{column.Push, p.Push, p.PushTime, func(p *palette.Palette) color.RGBA { return p.Push }},
		} {
			if peak.force == 0 {
				continue
			}
			m := mark{at: peak.at, caption: words.PeakCaption(b, peak.way), ink: peak.ink}
			if b == bar && peak.way == way {
				m.urgency = strongest
			}
			list = append(list, m)
		}
	}
	slices.SortStableFunc(list, func(a, b mark) int { return cmp.Compare(a.at, b.at) })
	known := map[string]bool{}
	for i := range list {
		list[i].first = !known[list[i].caption]
		known[list[i].caption] = true
	}
	return list
}

// beside returns the index of the mark next after a time or, backward, before it; −1
// for none. Marks nearer than half an output step are where the time is.
func beside(marks []mark, t, output float64, backward bool) int {
	if backward {
		for i, m := range slices.Backward(marks) {
			if m.at < t-output/2 {
				return i
			}
		}
		return -1
	}
	return slices.IndexFunc(marks, func(m mark) bool { return m.at > t+output/2 })
}

// nearest returns the index of the mark nearest to a place that is at most so far
// off it; −1 for none.
func nearest(marks []mark, place func(t float64) float64, x, most float64) int {
	found := -1
	for i, m := range marks {
		if off := math.Abs(place(m.at) - x); off <= most {
			found, most = i, off
		}
	}
	return found
}

// caption is the place of a mark's caption.
type caption struct {
	mark     int
	from, to float64 // [px]
}

const (
	// captionGap is kept free between two captions [px].
	captionGap = 7
	// captionShift is how far from its mark a caption may begin [px].
	captionShift = 48
)

// placeCaptions gives captions room between two places: beside their marks or a little
// off, the most urgent first, and that of the mark chosen, −1 for none, before all
// others. What finds no room is left out.
func placeCaptions(marks []mark, chosen int, place func(t float64) float64, width func(string) float64, from, to float64) []caption {
	order := make([]int, 0, len(marks))
	for i, m := range marks {
		if m.first || i == chosen {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if a == chosen || b == chosen {
			return cmp.Compare(index(b == chosen), index(a == chosen))
		}
		// A band has room all along; what is at one time comes first.
		return cmp.Or(cmp.Compare(marks[b].urgency, marks[a].urgency), cmp.Compare(index(marks[a].band), index(marks[b].band)))
	})
	var placed []caption
	said := map[string]bool{}
	for _, i := range order {
		text := marks[i].caption
		start, end := extent(&marks[i], place)
		if c, ok := roomFor(placed, start, end, width(text), from, to); ok && !said[text] {
			c.mark, said[text] = i, true
			placed = append(placed, c)
		}
	}
	return placed
}

// extent returns where a mark begins and ends.
func extent(m *mark, place func(t float64) float64) (start, end float64) {
	start = place(m.at)
	if m.band {
		return start, place(m.to)
	}
	return start, start
}

// roomFor returns the place of a width between two ends that is nearest to a mark and
// clear of the captions placed; false where there is none near enough.
func roomFor(placed []caption, start, end, width, from, to float64) (caption, bool) {
	starts := []float64{start, start - width, from, to - width}
	for _, o := range placed {
		starts = append(starts, o.to+captionGap, o.from-captionGap-width)
	}
	best, least := caption{}, math.Inf(1)
	for _, x := range starts {
		c := caption{from: x, to: x + width}
		off := max(c.from-end, start-c.to, 0)
		clash := func(o caption) bool { return c.from < o.to+captionGap && o.from < c.to+captionGap }
		if off < least && off <= captionShift && c.from >= from && c.to <= to && !slices.ContainsFunc(placed, clash) {
			best, least = c, off
		}
	}
	return best, !math.IsInf(least, 1)
}

// index counts a condition.
func index(b bool) int {
	if b {
		return 1
	}
	return 0
}
