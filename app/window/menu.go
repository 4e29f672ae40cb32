package window

import (
	"path/filepath"
	"strconv"

	"bowline/app/form"
	"bowline/app/look"
	"bowline/app/scene/side"
	"bowline/assets"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// menu keeps the items whose words change.
type menu struct {
	main       *fyne.MainMenu
	undo, redo *fyne.MenuItem
	us, si     *fyne.MenuItem
	forces     *fyne.MenuItem
	colors     map[look.Mode]*fyne.MenuItem
}

// key is a shortcut with the platform's main modifier.
func key(name fyne.KeyName, more ...fyne.KeyModifier) fyne.Shortcut {
	modifier := fyne.KeyModifierShortcutDefault
	for _, m := range more {
		modifier |= m
	}
	return &desktop.CustomShortcut{KeyName: name, Modifier: modifier}
}

// digit is the shortcut of a digit; nil beyond 9.
func digit(n int) fyne.Shortcut {
	if n > 9 {
		return nil
	}
	return key(fyne.KeyName(strconv.Itoa(n)))
}

// item is a menu item with a shortcut. Neither does anything to the car while a
// question waits for its answer. Where text is typed that is none of the car's
// inputs, inText is what they do to it instead.
func (w *Window) item(label string, s fyne.Shortcut, do func(), inText ...func(form.Textual)) *fyne.MenuItem {
	i := fyne.NewMenuItem(label, func() {
		if f := form.UndoesText(w.window.Canvas().Focused()); f != nil && len(inText) > 0 {
			inText[0](f)
			return
		}
		if !w.asking() {
			do()
		}
	})
	i.Shortcut = s
	return i
}

// remake builds the menu anew, with the recent files of the moment.
func (w *Window) remake() {
	m := menu{
		undo:   w.item("Undo", &fyne.ShortcutUndo{}, w.undo, form.Textual.Undo),
		redo:   w.item("Redo", &fyne.ShortcutRedo{}, w.redo, form.Textual.Redo),
		us:     fyne.NewMenuItem("Inches and pounds", func() { w.setUnits(units.US) }),
		si:     fyne.NewMenuItem("Millimeters and newtons", func() { w.setUnits(units.SI) }),
		forces: fyne.NewMenuItem("Forces on the axle", func() { w.study.SetForces(!w.study.Forces()) }),
		colors: map[look.Mode]*fyne.MenuItem{
			look.Follow: fyne.NewMenuItem("Colors as the desktop", func() { w.setMode(look.Follow) }),
			look.Light:  fyne.NewMenuItem("Light colors", func() { w.setMode(look.Light) }),
			look.Dark:   fyne.NewMenuItem("Dark colors", func() { w.setMode(look.Dark) }),
		},
	}
	recent := fyne.NewMenuItem("Open recent", nil)
	recent.ChildMenu = fyne.NewMenu("")
	for _, p := range w.recent.Paths() {
		recent.ChildMenu.Items = append(recent.ChildMenu.Items, fyne.NewMenuItem(p, func() { w.leave(func() { w.open(p) }) }))
	}
	recent.Disabled = len(recent.ChildMenu.Items) == 0
	examples := fyne.NewMenuItem("Example cars", nil)
	examples.ChildMenu = fyne.NewMenu("")
	for _, name := range assets.CarNames() {
		examples.ChildMenu.Items = append(examples.ChildMenu.Items, fyne.NewMenuItem(filepath.Base(name), func() { w.leave(func() { w.openExample(name) }) }))
	}
	quit := w.item("Quit", key(fyne.KeyQ), w.quit)
	quit.IsQuit = true
	file := fyne.NewMenu("File",
		w.item("Open…", key(fyne.KeyO), func() { w.leave(w.askOpen) }), recent, examples,
		fyne.NewMenuItemSeparator(),
		w.item("Save", key(fyne.KeyS), func() { w.save(nil) }),
		w.item("Save as…", key(fyne.KeyS, fyne.KeyModifierShift), func() { w.saveAs(nil) }),
		fyne.NewMenuItemSeparator(),
		w.item("Report as PDF…", key(fyne.KeyP), w.printReport),
		w.item("Export charts…", key(fyne.KeyE), w.exportAll),
		w.item("Picture of the stage…", nil, w.savePicture),
		w.item("Movie of the launch…", nil, w.saveMovie),
		fyne.NewMenuItemSeparator(), quit)
	edit := fyne.NewMenu("Edit", m.undo, m.redo)
	view := fyne.NewMenu("View")
	for i := range w.panels.list {
		view.Items = append(view.Items, w.item(w.panels.label(i), digit(i+1), func() { w.show(i) }))
	}
	view.Items = append(view.Items,
		fyne.NewMenuItemSeparator(),
		w.item("Inputs", key(fyne.KeyI), func() { w.split.inputs.Fold(!w.split.inputs.Folded()) }),
		w.item("Fit bars", key(fyne.KeyB), func() { w.view.SetFit(side.FitBars) }),
		w.item("Fit car", key(fyne.KeyG), func() { w.view.SetFit(side.FitCar) }),
		w.item("Fit all instant centers", key(fyne.KeyH), func() { w.show(w.panels.named("Holes")); w.view.SetFit(side.FitCenters) }),
		w.item("Zoom in", key(fyne.KeyEqual), func() { w.view.Zoom(1.25) }),
		w.item("Zoom out", key(fyne.KeyMinus), func() { w.view.Zoom(1 / 1.25) }),
		w.item("Ride height", key(fyne.Key0), func() { w.study.SetTravel(0); w.study.SetFront(0) }),
		m.forces,
		fyne.NewMenuItemSeparator(), m.us, m.si,
		fyne.NewMenuItemSeparator(),
		m.colors[look.Follow], m.colors[look.Light], m.colors[look.Dark])
	help := fyne.NewMenu("Help", w.item("Keys and mouse", nil, w.showKeys))
	m.main = fyne.NewMainMenu(file, edit, view, help)
	w.menu = m
	w.menu.refresh(w)
	w.window.SetMainMenu(m.main)
}

// refresh names what undo and redo would do and marks units and colors.
func (m *menu) refresh(w *Window) {
	if m.main == nil {
		return
	}
	name := func(i *fyne.MenuItem, word, label string) {
		i.Label, i.Disabled = word, label == ""
		if label != "" {
			i.Label += ": " + label
		}
	}
	name(m.undo, "Undo", w.doc.UndoLabel())
	name(m.redo, "Redo", w.doc.RedoLabel())
	m.us.Checked = w.doc.Units() == units.US
	m.si.Checked = w.doc.Units() == units.SI
	m.forces.Checked = w.study.Forces()
	for mode, i := range m.colors {
		i.Checked = w.app.Preferences().String(prefMode) == string(mode)
	}
	m.main.Refresh()
}

// refreshForces marks whether the forces on the axle are shown, and keeps that for the
// next start.
func (m *menu) refreshForces(w *Window) {
	if on := w.study.Forces(); m.main != nil && m.forces.Checked != on {
		m.forces.Checked = on
		m.main.Refresh()
		w.app.Preferences().SetBool(prefForces, on)
	}
}

// undo takes the car's last step back; a value being typed is taken first. One that
// is refused is itself what is taken back.
func (w *Window) undo() {
	if !w.settled() {
		w.inputs.RestorePending()
		w.panels.restorePending()
		w.say("")
		return
	}
	w.doc.Undo()
}

// redo does the car's last step again.
func (w *Window) redo() {
	if w.settled() {
		w.doc.Redo()
	}
}

// setUnits shows other units; a value being typed is taken in those it was
// typed in.
func (w *Window) setUnits(u units.System) {
	if w.settled() {
		w.doc.SetUnits(u)
	}
}

// setMode chooses light or dark.
func (w *Window) setMode(m look.Mode) {
	w.app.Preferences().SetString(prefMode, string(m))
	w.app.Settings().SetTheme(look.New(m))
	w.menu.refresh(w)
}

// keys explains mouse and keyboard.
const keys = `Side view
Drag a bar's end: it goes from hole to hole. Click a free hole to use it.
With Shift, or with "Move holes" ticked, the hole itself moves.
Drag a bracket's plate: all its holes move. Drag elsewhere: pan.
Click a tire, a bar, a spring, the instant center: its inputs open. The field under the pointer or typed in lights its thing up.
Mouse wheel, + and −: zoom. F: fit bars. C: fit car. H: fit all instant centers. M: "Move holes". O: the forces on the axle, for hit and hooked.
On the page Holes: point at a dot to see its holes, click to look closer, double click or Enter to use them;
drag the target's box, its edges and corners.
1, 2, 3, 4: select the upper chassis, lower chassis, upper housing, lower housing pivot.
Arrow keys: move the selected hole by 1/16 in or 1 mm; with Shift ten times that.
In Top and Rear: drag a hole, and the left and right bars go apart or together.
Esc while dragging: take the drag back.

All views
Side, Top, Rear and 3-D show the same car; drag in 3-D to turn it, with Shift to move it, a double click beside the car turns it back; arrows turn it too, except in the launch.
A bar is filled to its share of what it may carry; the tick is the most that is asked of it anywhere.
Frame, cage, body, engine, rims and the widths of tires are drawn for orientation only: the car file does not give them.
Drag a divider between the panes; a double click on it gives back its usual place. Ctrl+I: fold the inputs away.

Charts and launch
Point at a chart: the car moves there; click to stay.
Launch: choosing it plays it once. Space: play, pause. Left, right: one step of 1 ms; with Shift ten.
Up, down: faster, slower. Home, End: to its ends. [ and ], or Page up and Page down: from mark to mark.
Click or drag the time line; click a mark to jump to it.

List of holes
Click a heading to sort, again to turn around, again for ranks. Arrow keys select; Enter or a double click uses the holes.

Fields
Enter or Tab takes a value, Esc brings the old one back. Type 22.5, 22 1/2, 5/8, or any unit: 571 mm.
Undo and redo in a field of the filter, the log or a name are of its text, elsewhere of the car.

Ctrl with 1 to 6: the pages of Tune, Check, the launch.
Ctrl with O, S, Z, Y, E, P, Q: open, save, undo, redo, export, report, quit.`

// showKeys shows the help on keys.
func (w *Window) showKeys() { w.tell("Keys and mouse", widget.NewLabel(keys)) }
