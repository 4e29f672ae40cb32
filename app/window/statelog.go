package window

import (
	"encoding/json"
	"os"

	"bowline/app/scene"
	"bowline/model/car"

	"fyne.io/fyne/v2"
)

// frameState is one line of the state log: what a frame of the side view shows.
type frameState struct {
	Revision      uint64                `json:"revision"`       // counts changes of the car
	Event         string                `json:"event"`          // always "frame"
	InstantCenter *[2]float64           `json:"instant_center"` // ahead of the contact and up [m]; null for parallel bars
	AntiSquat     float64               `json:"anti_squat"`     // [%]; 0 where it has no value
	UpperPush     float64               `json:"upper_push"`     // in one upper bar in the hit case, below zero for pull [N]
	View          map[string][2]float64 `json:"view"`           // pivots in pixels of the window, from its upper left corner
}

// logStates adds a line to a file whenever the side view has drawn something
// new.
func (w *Window) logStates(path string) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		w.say("The state log cannot be written: " + err.Error())
		return
	}
	last := ""
	w.view.Drawn = func(p *scene.Picture) {
		line, err := json.Marshal(w.frameState(p))
		if err != nil || string(line) == last {
			return
		}
		last = string(line)
		if _, err := f.Write(append(line, '\n')); err != nil {
			w.view.Drawn = nil
		}
	}
}

// frameState describes what was drawn.
func (w *Window) frameState(p *scene.Picture) frameState {
	s := w.study.Station()
	state := frameState{
		Revision: w.doc.Revision(), Event: "frame",
		AntiSquat: 100 * s.AntiSquat, UpperPush: -s.Loads.Hit.Upper.Tension,
		View: map[string][2]float64{},
	}
	if s.HasInstantCenter {
		state.InstantCenter = &[2]float64{s.InstantCenter.X, s.InstantCenter.Y}
	}
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(w.view)
	scale := float64(w.window.Canvas().Scale())
	names := map[car.Row]string{car.ChassisUpper: "upper_chassis", car.ChassisLower: "lower_chassis", car.HousingUpper: "upper_housing", car.HousingLower: "lower_housing"}
	for row, name := range names {
		if at, ok := p.Pivot(row); ok {
			state.View[name] = [2]float64{(float64(corner.X) + at.X) * scale, (float64(corner.Y) + at.Y) * scale}
		}
	}
	return state
}
