package inputs

import (
	"bowline/app/form"
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"
)

// NewTarget returns what the combinations of holes are held against, the target
// and the limits of the pinion's change and of front lift, as rows that stand in host.
func NewTarget(doc Document, library stock.Library, host form.Host) *Fields {
	f := newFields(doc, library, host)
	s := &section{Section: f.Bare(), of: f}
	fillTarget(s)
	for _, t := range car.Sections {
		for _, field := range t.Fields {
			if field.Path == "check.pinion_limit" || field.Path == "check.lift_limit" {
				s.field(field)
			}
		}
	}
	f.Update()
	return f
}

// fillTarget adds the rows of the target.
func fillTarget(s *section) {
	target := func(path, label, help string, q units.Quantity, ends func(*car.Car) *[2]float64) {
		var editors []form.Editor
		for i := range 2 {
			editors = append(editors, s.entry("Set target "+lower(label), form.Number{Quantity: q}, func(c *car.Car) *float64 { return &ends(c)[i] }))
		}
		s.Row(form.About{Path: path, Label: label + ", from and to", Help: help}, editors...).Quantity = q
	}
	target("check.target_anti_squat", "Anti-squat", "Where this car wants its anti-squat.", units.Percent, func(c *car.Car) *[2]float64 { return &c.Check.TargetAntiSquat })
	target("check.target_ic.x", "IC ahead", "Where this car wants its instant center, ahead of the rear tire contact.", units.Length, func(c *car.Car) *[2]float64 { return &c.Check.TargetICX })
	target("check.target_ic.z", "IC height", "Where this car wants its instant center, above the ground.", units.Length, func(c *car.Car) *[2]float64 { return &c.Check.TargetICZ })
}
