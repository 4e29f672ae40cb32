package stage

import (
	"slices"
	"strings"

	"bowline/app/scene"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// keyZoom is the magnification of the plus key.
const keyZoom = 1.2

// FocusGained implements fyne.Focusable.
func (v *Stage) FocusGained() {}

// FocusLost implements fyne.Focusable.
func (v *Stage) FocusLost() {}

// TypedRune implements fyne.Focusable: plus and minus zoom, the letters of the
// viewpoint's fits fit, and the others are the viewpoint's own.
func (v *Stage) TypedRune(r rune) {
	key := Letter(r)
	switch fit := slices.IndexFunc(v.viewpoint.Fits(), func(f scene.Fit) bool { return f.Key == key }); {
	case r == '+' || r == '=':
		v.Zoom(keyZoom)
	case r == '-':
		v.Zoom(1 / keyZoom)
	case fit >= 0:
		v.SetFit(fit)
	default:
		v.pressKey(key, false)
	}
}

// Letter returns the key that types a letter.
func Letter(r rune) scene.Key { return scene.Key(strings.ToLower(string(r))) }

// pressKey passes a key on to who takes it.
func (v *Stage) pressKey(key scene.Key, shift bool) {
	if v.Keys == nil || !v.Keys(key, shift) {
		v.refuse(v.hands.Press(key, shift))
	}
}

// keys are the keys without a letter that a viewpoint may take.
var keys = map[fyne.KeyName]scene.Key{
	fyne.KeyLeft: scene.LeftKey, fyne.KeyRight: scene.RightKey, fyne.KeyUp: scene.UpKey, fyne.KeyDown: scene.DownKey,
	fyne.KeyReturn: scene.EnterKey, fyne.KeyEnter: scene.EnterKey, fyne.KeySpace: scene.SpaceKey,
	fyne.KeyHome: scene.HomeKey, fyne.KeyEnd: scene.EndKey, fyne.KeyPageUp: scene.PageUpKey, fyne.KeyPageDown: scene.PageDownKey,
}

// KeyOf returns the key of an event; false for one that no view takes.
func KeyOf(e *fyne.KeyEvent) (scene.Key, bool) {
	key, ok := keys[e.Name]
	return key, ok
}

// Shift reports whether a Shift key is held down, where the driver knows.
func Shift() bool { return modifiers()&fyne.KeyModifierShift != 0 }

// TypedKey implements fyne.Focusable: Escape takes a drag back, and the other keys
// are the viewpoint's own.
func (v *Stage) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		v.cancelDrag()
	} else if key, ok := KeyOf(e); ok {
		v.pressKey(key, Shift())
	}
}

// modifiers returns the modifier keys held down, where the driver tells.
func modifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}
