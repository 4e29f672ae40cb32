package sideview

import (
	"bowline/app/scene"

	"fyne.io/fyne/v2/driver/desktop"
)

// targetCursor shows which way a part of the target can be dragged.
func targetCursor(id scene.ID) desktop.Cursor {
	switch scene.Edges(id.Index) {
	case scene.RearEdge, scene.FrontEdge:
		return desktop.HResizeCursor
	case scene.LowerEdge, scene.UpperEdge:
		return desktop.VResizeCursor
	case 0: // it cannot be dragged
		return desktop.DefaultCursor
	}
	return desktop.CrosshairCursor
}
