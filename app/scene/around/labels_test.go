package around_test

import (
	"fmt"
	"testing"

	"bowline/app/scene"
	"bowline/app/scene/around"
	"bowline/app/scene/scenetest"
)

func TestLabelsKeepClearOverALaunch(t *testing.T) {
	r := open(t, "cars/saltgrass-7.toml")
	r.launch(0)
	for what, from := range views {
		t.Run(what, func(t *testing.T) { scenetest.PlayLabels(t, r.Study, around.New(r.Study, from)) })
	}
}

// They do so too while the view is turned around the car.
func TestLabelsKeepClearWhileTheViewTurns(t *testing.T) {
	r := open(t, "cars/saltgrass-7.toml")
	r.launch(0.3)
	v := around.New(r.Study, around.Around)
	view := v.Fits()[around.FitBars].Framing(1000, 700).View
	var p scene.Picture
	for i := range 72 {
		v.Hands().Press(scene.RightKey, false)
		view.Plane = v.Plane()
		v.Fill(&r.list, scene.Pointer{})
		p.Project(r.list.Items, view)
		scenetest.CheckLabels(t, &p, fmt.Sprintf("turned %d°", 5*(i+1)))
		if len(p.Labels) < 4 {
			t.Errorf("turned %d°: %d labels, left out are %v", 5*(i+1), len(p.Labels), p.LeftOut)
		}
	}
}
