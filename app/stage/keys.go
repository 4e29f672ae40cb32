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
	key := scene.Key(strings.ToLower(string(r)))
	switch fit := slices.IndexFunc(v.viewpoint.Fits(), func(f scene.Fit) bool { return f.Key == key }); {
	case r == '+' || r == '=':
		v.Zoom(keyZoom)
	case r == '-':
		v.Zoom(1 / keyZoom)
	case fit >= 0:
		v.SetFit(fit)
	default:
		v.refuse(v.hands.Press(key, false))
	}
}

// keys are the keys without a letter that a viewpoint takes.
var keys = map[fyne.KeyName]scene.Key{
	fyne.KeyLeft: scene.LeftKey, fyne.KeyRight: scene.RightKey, fyne.KeyUp: scene.UpKey, fyne.KeyDown: scene.DownKey,
	fyne.KeyReturn: scene.EnterKey, fyne.KeyEnter: scene.EnterKey,
}

// TypedKey implements fyne.Focusable: Escape takes a drag back, and the other keys
// are the viewpoint's own.
func (v *Stage) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		v.cancelDrag()
	} else if key, ok := keys[e.Name]; ok {
		v.refuse(v.hands.Press(key, modifiers()&fyne.KeyModifierShift != 0))
	}
}

// modifiers returns the modifier keys held down, where the driver tells.
func modifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}
