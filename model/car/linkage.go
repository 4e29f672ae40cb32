package car

import "bowline/model/linkage"

// Linkage returns the side-view four-link of a setup. It fails as linkage.New
// does; it panics when the setup or one of its holes does not exist.
func (c *Car) Linkage(setup int) (*linkage.Linkage, error) {
	return linkage.New(linkage.Geometry{
		ChassisUpper: ChassisUpper.Hole(c, setup),
		ChassisLower: ChassisLower.Hole(c, setup),
		HousingUpper: HousingUpper.Hole(c, setup),
		HousingLower: HousingLower.Hole(c, setup),
		Wheelbase:    c.Body.Wheelbase,
		RearRadius:   c.Tires.RearRadius,
		FrontRadius:  c.Tires.FrontRadius,
	})
}
