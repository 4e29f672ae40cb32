package launch

import "bowline/model/car"

// ride sets what each part carries at ride height, and the lengths and radii without
// load that follow.
func (b *builder) ride() {
	c := b.car
	for k := range b.p.Rods {
		rod := &b.p.Rods[k]
		rod.Ride = b.stand.Tension[k]
		rod.Free = rod.Length - rod.Ride/rod.Rate
		if bar := RodID(k); bar != Locator {
			rod.Free += rod.Lead * *car.BarTurns[bar].Of(&c.Setups[b.setup].Turns)
		}
	}
	for k := range Sides {
		b.p.Coils[k].Ride = b.stand.RearSpring[k]
		rear, front := &b.p.RearTires[k], &b.p.Corners[k]
		rear.Radius = c.Tires.RearRadius + b.stand.Rear[k]/rear.Rate
		front.Radius = c.Tires.FrontRadius + b.stand.Front[k]/front.TireRate
		front.Ride = b.stand.FrontSpring[k]
	}
}
