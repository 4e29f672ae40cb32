package report

import (
	"fmt"
	"strings"

	"bowline/model/car"
	"bowline/model/units"
)

// mostRuns is how many runs of a setup are listed, the ones logged last.
const mostRuns = 12

// runs lists the runs logged with the setup, and false when there are none.
func (w writer) runs() (section, bool) {
	runs := w.setup().Runs
	if len(runs) == 0 {
		return section{}, false
	}
	s := section{title: "Runs logged", table: table{columns: []heading{{"date", ""}, {"60 ft", w.units.Symbol(units.Time)}, {"anti-squat", "%"}, {"track", ""}, {"what it did", ""}}}}
	if n := len(runs); n > mostRuns {
		s.lines = []string{fmt.Sprintf("The last %d of %d; the car file has all.", mostRuns, n)}
		runs = runs[n-mostRuns:]
	}
	for i := range runs {
		r := &runs[i]
		s.table.rows = append(s.table.rows, []cell{
			said(r.Date), w.given(units.Time, r.SixtyFoot), w.given(units.Percent, r.AntiSquat),
			said(plainText(r.Track)), said(whatItDid(r)),
		})
	}
	return s, true
}

// given is a number that 0 stands for when there is none.
func (w writer) given(q units.Quantity, si float64) cell {
	if si == 0 {
		return cell{}
	}
	return w.number(q, si)
}

// whatItDid puts the words of a run in one.
func whatItDid(r *car.Run) string {
	var list []string
	for _, part := range []struct{ label, text string }{{"rear ", r.Rear}, {"front ", r.Front}, {"", r.Note}} {
		if text := strings.TrimRight(strings.TrimSpace(plainText(part.text)), "."); text != "" {
			list = append(list, part.label+text)
		}
	}
	return strings.Join(list, "; ")
}
