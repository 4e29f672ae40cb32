package analysis

import (
	"bowline/model/column"
	"bowline/model/launch"
)

// InLaunch returns the largest push or pull of a bar in a launch of the same car
// and setup, held against what the bar may carry. It has neither travel nor load
// case.
func (r *Result) InLaunch(l *launch.Result, bar launch.RodID, way column.Direction) Use {
	force := l.Peaks[bar].Push
	if way == column.Pull {
		force = l.Peaks[bar].Pull
	}
	return Use{Force: force, Share: force / r.Limit(bar.Pair(), way).Allowable}
}

// NearestInLaunch returns which bar comes nearest to its limit in a launch and
// which way. A share of 0 means that none is loaded.
func (r *Result) NearestInLaunch(l *launch.Result) (bar launch.RodID, way column.Direction, most Use) {
	for _, b := range launch.Bars {
		for _, w := range column.Directions {
			if u := r.InLaunch(l, b, w); u.Share > most.Share {
				bar, way, most = b, w, u
			}
		}
	}
	return bar, way, most
}
