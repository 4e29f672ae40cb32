package inputs

import (
	"bowline/model/car"
	"bowline/model/stock"
	"bowline/model/units"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// NewTarget returns a panel of what the combinations of holes are held against,
// the target and the limit of the pinion's change, for standing among other
// things in host: it has no header, no help and no bars of its own and is as high
// as its rows. What a row means goes to help, empty when it is on none; grown is
// called when the height has changed.
func NewTarget(doc Document, library stock.Library, host *container.Scroll, help func(text string), grown func()) *Panel {
	p := &Panel{doc: doc, library: library, Later: later, scroll: host, host: &guest{tell: help, grown: grown}}
	p.ExtendBaseWidget(p)
	p.section("Target", func(s *section) {
		fillTarget(s)
		for _, t := range car.Sections {
			for _, f := range t.Fields {
				if f.Path == "check.pinion_limit" {
					s.field(f)
				}
			}
		}
	})
	s := p.sections[0]
	s.body.Layout = stack{gap: rowGap, inset: guestInset}
	p.list = container.New(stack{}, s.body)
	s.setOpen(true)
	doc.Listen(p.hear)
	return p
}

// guestInset is around the rows, as words of other panels have it.
const guestInset = 3

// guest is a panel that stands in a scroll of others.
type guest struct {
	tell   func(help string)
	grown  func()
	help   string  // told last
	height float32 // last
}

// show tells what a row means.
func (g *guest) show(help string) {
	if help != g.help {
		g.help = help
		g.tell(help)
	}
}

// relayout makes room for what has changed its height.
func (g *guest) relayout(p *Panel) {
	p.list.Layout.Layout(p.list.Objects, p.list.Size())
	if height := p.list.MinSize().Height; height != g.height {
		g.height = height
		g.grown()
	}
}

// guestRenderer shows the rows alone.
type guestRenderer struct{ panel *Panel }

func (r *guestRenderer) Destroy()                     {}
func (r *guestRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.panel.list} }

func (r *guestRenderer) MinSize() fyne.Size {
	return fyne.NewSize(leastSize.Width, r.panel.list.MinSize().Height)
}

func (r *guestRenderer) Layout(size fyne.Size) {
	r.panel.list.Resize(size)
	r.panel.relayout() // A new width may have changed heights.
}

func (r *guestRenderer) Refresh() {
	r.Layout(r.panel.Size())
	r.panel.list.Refresh()
}

// fillTarget adds the rows of the target.
func fillTarget(s *section) {
	target := func(path, label, help string, q units.Quantity, ends func(*car.Car) *[2]float64) {
		least := &number{quantity: q, in: func(c *car.Car) *float64 { return &ends(c)[0] }}
		greatest := &number{quantity: q, in: func(c *car.Car) *float64 { return &ends(c)[1] }}
		s.row(about{path: path, label: label + ", from and to", help: help, action: "Set target " + lower(label)}, newEntry(least), newEntry(greatest)).quantity = q
	}
	target("check.target_anti_squat", "Anti-squat", "Where this car wants its anti-squat.", units.Percent, func(c *car.Car) *[2]float64 { return &c.Check.TargetAntiSquat })
	target("check.target_ic.x", "IC ahead", "Where this car wants its instant center, ahead of the rear tire contact.", units.Length, func(c *car.Car) *[2]float64 { return &c.Check.TargetICX })
	target("check.target_ic.z", "IC height", "Where this car wants its instant center, above the ground.", units.Length, func(c *car.Car) *[2]float64 { return &c.Check.TargetICZ })
}
