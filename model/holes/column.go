package holes

import (
	"fmt"
	"math"
	"slices"

	"bowline/model/analysis"
	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/units"
)

// Use says where a column appears.
type Use uint8

// The uses.
const (
	OnScreen Use = 1 << iota
	InFilter
	InFile // as a column of a CSV table
)

const everywhere = OnScreen | InFilter | InFile

// Column is one column of the table of places. Forces are magnitudes; the title
// says whether they push or pull.
type Column struct {
	Key      string // its name in a CSV table
	Title    string // one line or two
	Help     string // a sentence on what it shows
	Quantity units.Quantity
	Uses     Use

	OfLaunch bool // it is of the launch

	value    func(*Place) (float64, bool)
	decimals int                 // of a plain number
	text     func(*Place) string // nil: the value with its unit
}

// Value returns the place's value in SI, and false where it has none.
func (c *Column) Value(p *Place) (float64, bool) {
	x, ok := c.value(p)
	if !ok {
		return 0, false
	}
	return x, true
}

// Text returns the value as it is shown, a dash where there is none, "not
// yet" where it is of a launch that is still to come.
func (c *Column) Text(p *Place, s units.System) string {
	x, ok := c.Value(p)
	switch {
	case !ok && c.OfLaunch && p.Awaited():
		return "not yet"
	case !ok:
		return "–"
	case c.text != nil:
		return c.text(p)
	case c.Quantity == units.Number:
		return units.Decimal(x, c.decimals)
	}
	return s.Format(c.Quantity, x)
}

// Figure writes a value in SI as it is shown, without its unit.
func (c *Column) Figure(si float64, s units.System) string {
	return units.Decimal(s.FromSI(c.Quantity, si), c.Decimals(s))
}

// rounded rounds to decimals and turns a negative zero into zero.
func rounded(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(x*p)/p + 0
}

// Decimals returns the decimals that values are shown with in a unit system.
func (c *Column) Decimals(s units.System) int {
	if c.Quantity == units.Number {
		return c.decimals
	}
	return s.Decimals(c.Quantity)
}

// Parse reads a condition for the column as ParseCondition does, for values as
// the column shows them.
func (c *Column) Parse(text string, s units.System) (Condition, error) {
	return ParseCondition(text, c.Quantity, s, c.Decimals)
}

// ColumnOf returns the column with a key.
func ColumnOf(key string) (*Column, bool) {
	i := slices.IndexFunc(Columns, func(c *Column) bool { return c.Key == key })
	if i < 0 {
		return nil, false
	}
	return Columns[i], true
}

// Columns lists the columns in their order on screen, in filters and in files.
var Columns = slices.Concat(holeColumns(), rideColumns(), travelColumns(), loadColumns(), barColumns(), placeColumns(), launchColumns())

// known makes the value of a column from one that every usable combination has.
func known(of func(*Combination) float64) func(*Place) (float64, bool) {
	return func(p *Place) (float64, bool) {
		c := p.Combination()
		return of(c), c.Usable()
	}
}

// holeColumns say which holes they are: on screen all four in one.
func holeColumns() []*Column {
	list := []*Column{{
		Key: "holes", Title: "Holes", Help: "Upper and lower chassis hole (UC, LC), upper and lower housing hole (UH, LH), counted from 1.", Quantity: units.Number, Uses: OnScreen,
		value: func(p *Place) (float64, bool) { return float64(p.Index), true },
		text:  func(p *Place) string { return p.Holes().String() },
	}}
	for _, row := range car.Rows {
		list = append(list, &Column{
			Key: row.SetupKey(), Title: [...]string{"Upper\nchassis hole", "Lower\nchassis hole", "Upper\nhousing hole", "Lower\nhousing hole"}[row],
			Help: "Hole of the " + row.String() + " row, counted from 1.", Quantity: units.Number, Uses: InFilter | InFile,
			value: func(p *Place) (float64, bool) {
				h := p.Holes()
				return float64(*row.Of(&h) + 1), true
			},
		})
	}
	return list
}

// rideColumns are what is known at ride height.
func rideColumns() []*Column {
	center := func(of func(*Combination) float64) func(*Place) (float64, bool) {
		return func(p *Place) (float64, bool) {
			c := p.Combination()
			return of(c), c.Usable() && c.HasInstantCenter
		}
	}
	return []*Column{
		{
			Key: "instant_center_x", Title: "IC ahead", Help: "Instant center ahead of the rear contact at ride height: the swing arm's length.", Quantity: units.Length, Uses: everywhere,
			value: center(func(c *Combination) float64 { return c.InstantCenter.X }),
		},
		{
			Key: "instant_center_z", Title: "IC up", Help: "Instant center above the ground at ride height.", Quantity: units.Length, Uses: everywhere,
			value: center(func(c *Combination) float64 { return c.InstantCenter.Y }),
		},
		{
			Key: "anti_squat", Title: "Anti-squat", Help: "Anti-squat at ride height.", Quantity: units.Percent, Uses: everywhere,
			value: func(p *Place) (float64, bool) {
				c := p.Combination()
				return c.AntiSquat, c.Usable() && c.HasAntiSquat
			},
		},
	}
}

// travelColumns are what is known over the travel.
func travelColumns() []*Column {
	antiSquat := func(end int) func(*Place) (float64, bool) {
		return func(p *Place) (float64, bool) {
			c := p.Combination()
			return c.AntiSquatRange[end], c.Usable() && c.AntiSquatRange != [2]float64{}
		}
	}
	return []*Column{
		{
			Key: "anti_squat_least", Title: "Anti-squat\nleast", Help: "The least anti-squat from full droop to full bump.", Quantity: units.Percent, Uses: everywhere,
			value: antiSquat(0),
		},
		{
			Key: "anti_squat_greatest", Title: "Anti-squat\ngreatest", Help: "The greatest anti-squat from full droop to full bump.", Quantity: units.Percent, Uses: everywhere,
			value: antiSquat(1),
		},
		{
			Key: "pinion_change", Title: "Pinion\nchange", Help: "The most that the pinion angle changes from ride height, either way, from full droop to full bump.", Quantity: units.Angle, Uses: everywhere,
			value: known((*Combination).PinionChange),
		},
		{
			Key: "closure_droop", Title: "Free travel\nin droop", Help: "How far the axle can hang below ride height before the bars bind.", Quantity: units.Length, Uses: everywhere,
			value: known(func(c *Combination) float64 { return -c.Closure[0] }),
		},
		{
			Key: "closure_bump", Title: "Free travel\nin bump", Help: "How far the axle can rise above ride height before the bars bind.", Quantity: units.Length, Uses: everywhere,
			value: known(func(c *Combination) float64 { return c.Closure[1] }),
		},
	}
}

// loadColumns are what the bars carry.
func loadColumns() []*Column {
	var list []*Column
	for _, load := range []analysis.Case{analysis.Hit, analysis.Hooked} {
		for _, bar := range []struct {
			key, title string
			car.Pair
			column.Direction
		}{
			{"lower_push", "Lower push", car.Lower, column.Push},
			{"upper_pull", "Upper pull", car.Upper, column.Pull},
		} {
			list = append(list, &Column{
				Key: load.String() + "_" + bar.key, Title: bar.title + "\n" + load.String(), Quantity: units.Force, Uses: everywhere,
				Help:  fmt.Sprintf("The largest %s in one %s in the %s case, from full droop to full bump.", bar.Direction, bar.Pair, load),
				value: known(func(c *Combination) float64 { return c.Peak[bar.Pair][load][bar.Direction] }),
			})
		}
	}
	return append(list, &Column{
		Key: "highest_share", Title: "Share\nof limit", Help: "The largest load in any bar over what it may carry, in push or pull.", Quantity: units.Percent, Uses: everywhere,
		value: known((*Combination).Highest),
	})
}

// barColumns are the bars and how to turn them.
func barColumns() []*Column {
	var list []*Column
	for _, pair := range car.Pairs {
		list = append(list, &Column{
			Key: [...]string{"upper_length", "lower_length"}[pair], Title: [...]string{"Upper bar\nlength", "Lower bar\nlength"}[pair],
			Help: "Length of the " + pair.String() + " from pin to pin, without preload.", Quantity: units.Length, Uses: everywhere,
			value: known(func(c *Combination) float64 { return c.Length[pair] }),
		})
	}
	for _, pair := range car.Pairs {
		list = append(list, &Column{
			Key: [...]string{"upper_turns", "lower_turns"}[pair], Title: [...]string{"Upper bar\nturns", "Lower bar\nturns"}[pair],
			Help: "Turns of either " + pair.String() + " from the present setup, longer with a plus and shorter with a minus.", Quantity: units.Number, Uses: everywhere,
			value:    func(p *Place) (float64, bool) { return p.Turns[pair], p.HasTurns },
			decimals: 2,
			text:     func(p *Place) string { return units.Signed(p.Turns[pair], 2) },
		})
	}
	return list
}

// placeColumns are what the ranking says.
func placeColumns() []*Column {
	return []*Column{
		{
			Key: "moved_ends", Title: "Ends\nmoved", Help: "How many of the four bar ends move to another hole from the present setup.", Quantity: units.Number, Uses: everywhere,
			value: func(p *Place) (float64, bool) { return float64(p.MovedEnds()), true },
		},
		{
			Key: "distance", Title: "Distance\nto target", Help: "How far from the target: 0 inside all of it, 1 as far outside as its middle is from its edge.", Quantity: units.Number, Uses: everywhere,
			value:    func(p *Place) (float64, bool) { return p.Distance, p.Combination().Usable() },
			decimals: 3,
		},
	}
}

// launchColumns are what came of the launch.
func launchColumns() []*Column {
	launched := func(known func(*Launch) bool, of func(*Launch) float64) func(*Place) (float64, bool) {
		return func(p *Place) (float64, bool) {
			if l := p.Launch(); l != nil && known(l) {
				return of(l), true
			}
			return 0, false
		}
	}
	return []*Column{
		{
			Key: "sixty_ft", Title: "60 ft", Help: "Time to 60 ft in the launch, from the rollout.", Quantity: units.Time, Uses: everywhere, OfLaunch: true,
			value: launched((*Launch).Finished, func(l *Launch) float64 { return l.SixtyFeet }),
		},
		{
			Key: "envelope_share", Title: "Share with\nlaunch", Help: "The largest load in any bar over what it may carry, in the side view or in the launch.", Quantity: units.Percent, Uses: everywhere, OfLaunch: true,
			value: launched((*Launch).Whole, func(l *Launch) float64 { return l.Worst.Share }),
		},
		{
			Key: "rear_apart", Title: "Rear tires\napart", Help: "How far the loads of the left and the right rear tire are apart through the launch, over both: 0 % is even.", Quantity: units.Percent, Uses: everywhere, OfLaunch: true,
			value: launched((*Launch).Whole, func(l *Launch) float64 { return l.Unevenness }),
		},
		{
			Key: "front_lift", Title: "Front lift", Help: "The most that a front tire comes off the ground in the launch.", Quantity: units.Length, Uses: everywhere, OfLaunch: true,
			value: launched((*Launch).Whole, func(l *Launch) float64 { return l.Lift }),
		},
	}
}
