package analysis

import (
	"fmt"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/launch"
)

// Source is what asks a load of a bar.
type Source int

// The sources: the two load cases of the side view, over the whole travel and both
// sides alike, and the launch, each bar by itself.
const (
	FromHooked Source = iota
	FromHit
	FromLaunch
)

// String returns the source's name, as in "hit".
func (s Source) String() string {
	if s < FromHooked || s > FromLaunch {
		return fmt.Sprintf("Source(%d)", int(s))
	}
	return [...]string{Hooked.String(), Hit.String(), "launch"}[s]
}

// Basis is what a verdict on the loads rests on besides the side view.
type Basis int

// The bases.
const (
	OnSideView     Basis = iota // nothing: there is no launch yet
	OnLaunch                    // the launch of the same car and setup
	OnLaunchBefore              // the launch of the car or setup before the last change
	OnLaunchBehind              // the same while a hand is changing the car, at most a step behind
	OnNoLaunch                  // nothing: the car cannot be launched
)

// Demand is the most that is asked of a bar.
type Demand struct {
	Bar    launch.RodID
	Way    column.Direction
	Source Source
	Force  float64 // magnitude [N]; 0 for a bar that nothing loads
	Share  float64 // of the allowable load [1]
	Travel float64 // where, FromHooked and FromHit [m]
	Time   float64 // when, FromLaunch, from the brake's first give [s]
}

// Envelope is the most that is asked of each bar, by RodID and Direction: hooked and
// hit over the travel of the side view and, where there is one, the launch.
type Envelope [len(launch.Bars)][len(column.Directions)]Demand

// Envelope returns the most that the side view and a launch of the same car and setup
// ask of each bar; the side view alone with nil. Of equal demands that of the side
// view counts.
func (r *Result) Envelope(l *launch.Result) Envelope {
	var e Envelope
	for _, bar := range launch.Bars {
		for _, way := range column.Directions {
			use := r.Worst[bar.Pair()][way]
			d := Demand{Bar: bar, Way: way, Source: FromHooked, Force: use.Force, Share: use.Share, Travel: use.Travel}
			if use.Case == Hit {
				d.Source = FromHit
			}
			if l != nil {
				if in := r.InLaunch(l, bar, way); in.Share > d.Share {
					peak := l.Peaks[bar]
					d = Demand{Bar: bar, Way: way, Source: FromLaunch, Force: in.Force, Share: in.Share, Time: peak.PushTime}
					if way == column.Pull {
						d.Time = peak.PullTime
					}
				}
			}
			e[bar][way] = d
		}
	}
	return e
}

// Of returns the demand on a bar that comes nearest to what it may carry.
func (e *Envelope) Of(bar launch.RodID) Demand {
	most := e[bar][column.Push]
	if pull := e[bar][column.Pull]; pull.Share > most.Share {
		most = pull
	}
	return most
}

// OfPair returns the demand in a direction on the bar of a pair that comes nearer to what
// it may carry that way; of equal ones that on the left.
func (e *Envelope) OfPair(p car.Pair, way column.Direction) Demand {
	left := launch.RodID(2 * p)
	if right := e[left.Opposite()][way]; right.Share > e[left][way].Share {
		return right
	}
	return e[left][way]
}

// Worst returns the demand on any bar that comes nearest to what that may carry; of
// equal ones that of the first bar.
func (e *Envelope) Worst() Demand {
	most := e.Of(launch.Bars[0])
	for _, bar := range launch.Bars[1:] {
		if d := e.Of(bar); d.Share > most.Share {
			most = d
		}
	}
	return most
}
