package car

import (
	"fmt"
	"strconv"
)

// runs checks the runs logged with the setup at path.
func (v *validator) runs(path string, runs []Run) {
	if n := len(runs); n > MaxRuns {
		v.add(path+".run", fmt.Sprintf("there are %d runs", n), fmt.Sprintf("give at most %d", MaxRuns))
		return
	}
	for i := range runs {
		r, at := &runs[i], fmt.Sprintf("%s.run.%d.", path, i)
		if !IsDate(r.Date) {
			v.add(at+"date", strconv.Quote(r.Date)+" is no day of the calendar", GiveDate)
		}
		for _, n := range RunNumbers {
			x := *n.Of(r)
			if p, ok := n.Check(x, v.units); !ok && x != 0 {
				v.add(at+p.Path, p.Wrong, p.Right)
			}
		}
	}
}
