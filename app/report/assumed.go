package report

import (
	"bowline/app/words"
	"bowline/model/assumptions"
	"bowline/model/launch"
	"bowline/model/units"
)

// AssumedData is an entry of the car file that the car leaves out and the launch
// needs. Value and those of the changes are in shop units.
type AssumedData struct {
	Path    string       `json:"path"` // In the car file.
	Name    string       `json:"name"`
	Value   *float64     `json:"value"` // null for a choice.
	Unit    string       `json:"unit"`  // Empty without one.
	Choice  string       `json:"choice,omitempty"`
	Changes []ChangeData `json:"changes"` // Empty where they were not tried out.
}

// ChangeData is another value of an assumption and what it adds to the run.
type ChangeData struct {
	Kind        string   `json:"kind"`         // "doubled", "halved", or what else was put in its place.
	Value       *float64 `json:"value"`        // null for a choice.
	Said        string   `json:"said"`         // What was put in its place, for people.
	WorstShare  float64  `json:"worst_share"`  // Change of limits.worst.all.share.
	LaunchShare float64  `json:"launch_share"` // Change of the worst share in the launch alone.
	SixtyFeet   *float64 `json:"sixty_ft"`     // Change of sixty_ft; null unless both runs come so far.
	Outcome     string   `json:"outcome"`      // As launch.Outcome names it.
}

// assumedIn lists the assumptions of a launch, without what they are worth where nobody
// has found that.
func assumedIn(l *launch.Result, worth []assumptions.Worth) []assumptions.Worth {
	if worth != nil {
		return worth
	}
	var list []assumptions.Worth
	for _, a := range assumptions.Of(l) {
		list = append(list, assumptions.Worth{Assumption: a})
	}
	return list
}

// assumed lists what the car does not say.
func (w writer) assumed(list []assumptions.Worth) section {
	s := section{title: "Launch: " + words.Phrase(words.AssumedTitle), lines: []string{words.AssumedHelp}}
	if w.worth == nil {
		s.lines[0] = words.AssumedUnknown
	}
	s.table.groups = []group{{"", 2}, {"worst share", 2}, {"60 ft", 2}}
	s.table.columns = []heading{{"assumption", ""}, {"value", ""}, {"doubled", "%"}, {"halved", "%"}, {"doubled", w.units.Symbol(units.Time)}, {"halved", w.units.Symbol(units.Time)}}
	var otherwise []assumptions.Assumption
	for i := range list {
		worth := &list[i]
		row := []cell{said(worth.Name), said(words.Assumed(worth.Assumption, w.units)), {}, {}, {}, {}}
		for k, e := range worth.Effects {
			row[2+k].figure = words.WorthOfShare(e)
			if row[4+k].figure = words.WorthOfTime(e); !e.Timed {
				row[4+k] = said(words.WorthOfTime(e))
			}
		}
		s.table.rows = append(s.table.rows, row)
		otherwise = append(otherwise, worth.Assumption)
	}
	if text := words.TriedOtherwise(otherwise, w.units); text != "" && w.worth != nil {
		s.lines = append(s.lines, text)
	}
	return s
}

// assumed describes assumptions.
func (b builder) assumed(list []assumptions.Worth) []AssumedData {
	data := []AssumedData{}
	for _, w := range list {
		d := AssumedData{Path: w.Path, Name: w.Name, Unit: b.units.Symbol(w.Quantity), Choice: w.Choice, Changes: []ChangeData{}}
		value := func(si float64) *float64 {
			if w.Choice != "" {
				return nil
			}
			x := b.shop(w.Quantity, si)
			return &x
		}
		d.Value = value(w.Value)
		for k, e := range w.Effects {
			change := ChangeData{
				Kind: w.Changes[k].Kind.String(), Value: value(w.Changes[k].Value), Said: words.Tried(w.Assumption, w.Changes[k], b.units),
				WorstShare: e.Share, LaunchShare: e.Launch, Outcome: e.Outcome.String(),
			}
			if e.Timed {
				change.SixtyFeet = &e.Time
			}
			d.Changes = append(d.Changes, change)
		}
		data = append(data, d)
	}
	return data
}
