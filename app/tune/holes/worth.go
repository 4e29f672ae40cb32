package holes

import (
	"bowline/app/form"
	"bowline/app/readout"
	"bowline/app/study"
	"bowline/model/car"
	"bowline/model/holes"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// worth shows for each row what its hole in use is worth: the
// next hole up and down, and moving the hole itself.
type worth struct {
	study     *study.Study
	steps     *readout.Table
	rates     *readout.Table
	rateTitle *form.Prose
	object    fyne.CanvasObject
}

// rateStep is the rise that the rates are given for, in shop units of length.
var rateStep = map[units.System]struct {
	length float64
	words  string
}{units.US: {units.Inch / 16, "1/16 in"}, units.SI: {0.001, "1 mm"}}

// rowNames are short names of the rows of holes, by car.Row.
var rowNames = [len(car.Rows)]string{
	car.ChassisUpper: "Upper chassis", car.ChassisLower: "Lower chassis", car.HousingUpper: "Upper housing", car.HousingLower: "Lower housing",
}

func newWorth(s *study.Study) *worth {
	var steps []string
	for _, name := range rowNames {
		steps = append(steps, name+", up", name+", down")
	}
	w := &worth{
		study: s,
		steps: readout.New([]string{"Anti-squat", "Lower push, hit"}, steps),
		rates: readout.New([]string{"Anti-squat", "IC ahead"}, rowNames[:]),
	}
	w.rateTitle = form.Caption("", theme.ColorNamePlaceHolder)
	w.object = form.Stacked(
		form.Caption("One hole up or down, bars turned to keep wheelbase and pinion angle", theme.ColorNamePlaceHolder), w.steps,
		w.rateTitle, w.rates)
	return w
}

// refresh writes the tables.
func (w *worth) refresh() {
	doc, u := w.study.Document(), w.study.Units()
	for _, worth := range holes.Sensitivity(doc.Car(), doc.Setup(), w.study.Table()) {
		w.step(2*int(worth.Row), &worth.Up, u)
		w.step(2*int(worth.Row)+1, &worth.Down, u)
		w.rate(&worth, u)
	}
	w.rateTitle.Set("The hole itself " + rateStep[u].words + " higher, likewise")
}

// step writes what the next hole does.
func (w *worth) step(row int, s *holes.Step, u units.System) {
	squat, push := "–", "–"
	switch {
	case !s.HasHole:
		squat = "no hole"
	case w.study.Table() == nil:
	case !s.Known:
		squat = "cannot be used"
	default:
		push = u.Signed(units.Force, s.LowerPush)
		if s.HasAntiSquat {
			squat = u.Signed(units.Percent, s.AntiSquat)
		}
	}
	w.steps.Set(row, 0, squat, "")
	w.steps.Set(row, 1, push, "")
}

// rate writes what moving the hole by a little does.
func (w *worth) rate(worth *holes.Worth, u units.System) {
	squat, ahead := "–", "–"
	by := rateStep[u].length
	if worth.HasAntiSquat {
		squat = u.Signed(units.Percent, worth.AntiSquat.Y*by)
	}
	if worth.HasInstantCenter {
		ahead = u.Signed(units.Length, worth.Ahead.Y*by)
	}
	w.rates.Set(int(worth.Row), 0, squat, "")
	w.rates.Set(int(worth.Row), 1, ahead, "")
}
