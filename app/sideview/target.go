package sideview

import (
	"bowline/app/scene"
	"bowline/app/scene/side"

	"fyne.io/fyne/v2/driver/desktop"
)

// targetCursor shows which way a part of the target can be dragged.
func targetCursor(id scene.ID) desktop.Cursor {
	switch side.Edges(id.Index) {
	case side.RearEdge, side.FrontEdge:
		return desktop.HResizeCursor
	case side.LowerEdge, side.UpperEdge:
		return desktop.VResizeCursor
	case 0: // it cannot be dragged
		return desktop.DefaultCursor
	}
	return desktop.CrosshairCursor
}
