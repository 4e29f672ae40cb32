package sideview

import (
	"bowline/app/scene"
	"bowline/app/scene/side"
	"bowline/app/study"

	"fyne.io/fyne/v2"
)

// gather takes up the study's combinations of holes, while they are looked at,
// and which of them are marked.
func (v *SideView) gather(c study.Change) {
	s := v.study
	if on := s.Searching(); on != v.search {
		v.search = on
		v.refit = v.refit || v.fit != FitCar // which shows the same all the time
	}
	if !s.Searching() {
		return
	}
	if c.Has(study.Ranking | study.Wanted) {
		v.refit = v.refit || v.fit == FitCloud && v.cloud.Empty() // dots to fit may be there
		v.cloud.Fill(s.Ranking(), s.IsListed, s.Document().Car().Check.TargetAntiSquat, s.TableOutdated())
	}
	v.cloud.Present, v.cloud.Pointed, v.cloud.Picked = s.Present(), s.Pointed(), s.Picked()
}

// shownCloud returns the combinations while they are looked at, or nil.
func (v *SideView) shownCloud() *side.Cloud {
	if !v.study.Searching() {
		return nil
	}
	return &v.cloud
}

// setHot takes note of what is under the pointer, and has the study told of the
// combination there, or that there is none any more.
func (v *SideView) setHot(id scene.ID) {
	was := v.hot
	v.hot = id
	if id != was && (id.Kind == scene.Combination || was.Kind == scene.Combination) {
		v.telling.Ask()
	}
}

// point tells the study which combination is under the pointer.
func (v *SideView) point() {
	if v.hot.Kind == scene.Combination {
		v.study.Point(v.hot.Index)
	} else {
		v.study.Point(study.None)
	}
}

// clicked takes the dot under the pointer, if it was that, for a closer look.
func (v *SideView) clicked(dot bool) {
	index := study.None
	if dot && v.hot.Kind == scene.Combination {
		index = v.hot.Index
	}
	v.clicks = [2]int{index, v.clicks[0]}
	if index != study.None {
		v.study.Pick(index)
	}
}

// DoubleTapped implements fyne.DoubleTappable: it puts the bars into the holes
// of the dot that was clicked twice.
func (v *SideView) DoubleTapped(*fyne.PointEvent) {
	if v.clicks[0] == v.clicks[1] {
		v.use(v.clicks[0])
	}
	v.clicks = [2]int{study.None, study.None}
}

// usePicked puts the bars into the holes of the combination that is looked at
// closely.
func (v *SideView) usePicked() { v.use(v.study.Picked()) }

// use puts the bars into the holes of a combination, while they are looked at.
func (v *SideView) use(index int) {
	if p := v.study.Place(index); p != nil && v.study.Searching() {
		v.report(v.study.UseHoles(p.Holes()))
	}
}
