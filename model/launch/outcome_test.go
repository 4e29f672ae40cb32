package launch

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"bowline/model/car"
	"bowline/model/column"
	"bowline/model/internal/cartest"
	"bowline/model/units"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// sound refuses results with holes: lists of different length, times out of
// order, numbers that are none.
func sound(t interface {
	Helper()
	Fatalf(string, ...any)
}, r *Result) {
	t.Helper()
	finite := func(what string, x float64) {
		t.Helper()
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s is %v; %v after %d values", what, x, r.Outcome, len(r.Time))
		}
	}
	for k, list := range r.lists() {
		if len(*list) != len(r.Time) {
			t.Fatalf("list %d has %d values, the time %d", k, len(*list), len(r.Time))
		}
		for _, x := range *list {
			finite("a value", x)
		}
	}
	if len(r.Frames) != len(r.Time) {
		t.Fatalf("%d frames, %d times", len(r.Frames), len(r.Time))
	}
	for i, f := range r.Frames {
		if want := float64(i) * r.Options.Output; math.Abs(r.Time[i]-want) > 1e-9 {
			t.Fatalf("time %d is %v, want %v", i, r.Time[i], want)
		}
		for _, side := range Sides {
			finite("a wheel", f.RearWheels[side].Z+f.FrontWheels[side].X)
		}
		finite("the chassis", f.Chassis.At(f.Axle.Origin).X)
		view := r.SideView(i)
		finite("the side view", view.AntiSquat+view.InstantCenter.X+view.CG.Y+view.Pose.Turn)
	}
	for _, e := range r.Events {
		finite(e.Kind.String(), e.From+e.To+e.Time+e.Value)
		if !(e.From <= e.Time && e.Time <= e.To) {
			t.Fatalf("out of order: %+v", e)
		}
	}
	for k, p := range r.Peaks {
		finite(RodID(k).String(), p.Pull+p.Push+p.PullTime+p.PushTime)
		for _, tension := range r.Tension[k] {
			if tension > p.Pull || -tension > p.Push {
				t.Fatalf("%v carries %v N beyond its peaks %+v", RodID(k), tension, p)
			}
		}
	}
	for _, static := range append(r.PerTurn[:], r.Static) {
		for _, x := range static.Tension {
			finite("a static tension", x)
		}
	}
	finite("elapsed", r.Elapsed+r.Lift.Height+r.Lift.Duration)
	bar, way, most, at := r.Strongest()
	finite("when the most is carried", at)
	for _, b := range Bars {
		if p := r.Peaks[b]; p.Pull > most || p.Push > most || b == bar && most != map[column.Direction]float64{column.Push: p.Push, column.Pull: p.Pull}[way] {
			t.Fatalf("the most is a %v of %v N in the %v; the %v carries %+v", way, most, bar, b, p)
		}
	}
}

// antiRoll is what a stiff anti-roll bar gives, 1000 lb-ft a degree [N·m/rad].
const antiRoll = 1000 * lbf * foot * 180 / math.Pi

func TestOutcomes(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*car.Car)
		want  Outcome
	}{
		{"a strong car", func(*car.Car) {}, WentOver},
		{"a wheelie bar", func(c *car.Car) { c.Launch.WheelieBar.Reach = 1.4 }, Finished},
		{"next to no grip", func(c *car.Car) { c.Tires.Grip = 0.05 }, TimeUp},
		{"huge torque", func(c *car.Car) {
			c.Drive.Torque, c.Launch.Engine.ReleaseTime = 20000*lbf*foot, 0
			c.Launch.Suspension.RearAntiRoll = antiRoll
		}, Finished},
		{"a weak engine", func(c *car.Car) { c.Drive.Torque = 10 * lbf * foot }, TimeUp},
		{"24 turns", func(c *car.Car) {
			c.Setups[0].Turns = car.Turns{UpperLeft: 24, UpperRight: -24, LowerLeft: -24, LowerRight: 24}
		}, NoRest},
		{"a spring in line with the bars' center", func(c *car.Car) {
			// Level bars meet nowhere; a level spring is as parallel as they are.
			c.Chassis.Upper = []r2.Vec{{X: 22.5 * inch, Y: 22.5 * inch}}
			c.Chassis.Lower = []r2.Vec{{X: 25.5 * inch, Y: 11 * inch}}
			c.Springs.RearChassisMount = r2.Vec{X: 20 * inch, Y: 16 * inch}
			c.Setups[0].Holes = car.Holes{}
			c.Setups = c.Setups[:1]
		}, NotHeld},
	} {
		d := reference(t)
		c.spoil(d)
		if problems := d.Validate(carLibrary, units.US); len(problems) > 0 {
			t.Errorf("%s: %v", c.name, problems)
			continue
		}
		r := run(t, d, Options{})
		sound(t, r)
		if r.Outcome != c.want {
			t.Errorf("%s: %v, want %v", c.name, r.Outcome, c.want)
		}
	}
}

// Without any damping a launch runs as well, and without a trace of friction the
// car stays where it is.
func TestNoDampingAndNoGrip(t *testing.T) {
	p := parameters(t, reference(t))
	undamped(&p)
	sound(t, simulate(t, p, Options{Limit: 1}))
	for k := range Sides {
		p.RearTires[k].Grip, p.Corners[k].Grip = 0, 0
	}
	r := simulate(t, p, Options{Limit: 1})
	sound(t, r)
	if far := math.Abs(last(r.Distance)); r.Outcome != TimeUp || far > 0.1 || last(r.WheelSpeed) < 5 {
		t.Errorf("%v, %v m, wheels %v m/s", r.Outcome, far, last(r.WheelSpeed))
	}
}

// A housing of a hundred milligrams on stiff bars vibrates faster than the
// shortest step can follow.
func TestDivergence(t *testing.T) {
	p := parameters(t, reference(t))
	p.Axle.Inertia.Y, p.Axle.Spin = 1e-13, 1e-13
	r := simulate(t, p, Options{Substeps: 50})
	sound(t, r)
	if r.Outcome != Diverged || last(r.Time) >= 0.1 {
		t.Errorf("%v after %v s", r.Outcome, last(r.Time))
	}
}

// A car with a part that is too stiff or too hard damped is not launched, and the part
// that asks for the smallest step is named.
func TestTooStiff(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Parameters)
		part  Part
	}{
		{func(p *Parameters) { p.Rods[LowerLeft].Rate = 1e13 }, BarsAndLocator},
		{func(p *Parameters) { p.Coils[Left].Stop = 1e13 }, RearSprings},
		{func(p *Parameters) { p.RearTires[Right].Relaxation = 1e-9 }, RearTires},
		{func(p *Parameters) { p.Corners[Left].TireDamping = 1e9 }, FrontCorners},
		{func(p *Parameters) { p.RearAntiRoll = 1e13 }, AntiRollBars},
		{func(p *Parameters) { p.WheelieBar = WheelieBar{Wheel: r3.Vec{X: -1}, Rate: 1e13} }, WheelieBarWheel},
		{func(p *Parameters) { p.Drive.Inertia = 1e-7 }, EngineAndConverter},
	} {
		p := parameters(t, reference(t))
		c.spoil(&p)
		r := simulate(t, p, Options{})
		sound(t, r)
		if r.Outcome != TooStiff || r.Fastest != c.part || r.Static.RearLoad[Left] < 600*lbf {
			t.Errorf("%v: %v because of %v", c.part, r.Outcome, r.Fastest)
		}
	}
}

// extreme draws a car that Validate has nothing against, some of whose numbers are
// the least or the greatest that it takes, or anything between.
func extreme(t *rapid.T) *car.Car {
	var fields []*car.Field
	for _, section := range car.Sections {
		fields = append(fields, section.Fields...)
	}
	spoiled := rapid.Custom(func(t *rapid.T) *car.Car {
		c := cartest.Random(t, carLibrary)
		for range rapid.IntRange(1, 6).Draw(t, "fields") {
			f := rapid.SampledFrom(fields).Draw(t, "field")
			part := rapid.SampledFrom([]float64{0, 1e-6, 1e-3, 0.03, 0.3, 1}).Draw(t, "part")
			*f.In(c) = f.Min + part*(f.Max-f.Min)
		}
		return c
	})
	return spoiled.Filter(func(c *car.Car) bool { return len(c.Validate(carLibrary, units.US)) == 0 }).Draw(t, "extreme car")
}

// Whatever valid numbers are typed, a launch takes no more steps than take half a
// second, or says that it would; all of it is over within two.
func TestNoCarTakesLong(t *testing.T) {
	seen := map[Outcome]int{}
	var longest time.Duration
	rapid.Check(t, func(t *rapid.T) {
		c := extreme(t)
		start := time.Now()
		r, err := Run(context.Background(), c, 0, carLibrary, Options{Hold: true})
		took := time.Since(start)
		if err != nil {
			t.Fatal(err)
		}
		sound(t, r)
		seen[r.Outcome]++
		longest = max(longest, took)
		if steps := float64(len(r.Time)) * r.Options.Output / r.Step; len(r.Time) > 0 && steps > 1.01*maxSteps {
			t.Fatalf("%v: %v steps", r.Outcome, steps)
		}
	})
	t.Log(seen, longest)
}

func TestCanceledRunHandsBackWhatItHas(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	r, err := Run(ctx, reference(t), 0, carLibrary, Options{})
	if !errors.Is(err, context.Canceled) || r == nil || r.Outcome != Stopped || r.Car == nil {
		t.Fatalf("%+v, %v", r, err)
	}
	sound(t, r)
	if len(r.Time) == 0 || last(r.Time) >= 0.005 {
		t.Errorf("stopped at %v", r.Time)
	}
}

func TestRefusals(t *testing.T) {
	c := reference(t)
	for _, f := range []struct {
		setup   int
		options Options
		want    string
	}{
		{2, Options{}, "the car has no setup 3; it has 2"},
		{-1, Options{}, "the car has no setup 0; it has 2"},
		{0, Options{Distance: -1}, "the distance is -1; give a number that is not below zero"},
		{0, Options{Limit: math.NaN()}, "the time limit is NaN; give a number that is not below zero"},
		{0, Options{Output: math.Inf(1)}, "the output step is +Inf; give a number that is not below zero"},
		{0, Options{Rollout: -0.1}, "the rollout is -0.1; give a number that is not below zero"},
		{0, Options{Rollout: 20}, "the rollout of 20 m is no shorter than the distance of 18.288 m"},
		{0, Options{Substeps: -1}, "there are -1 steps in an output step; give 1 or more, or 0 to have them chosen"},
		{0, Options{Limit: 1e6}, "1e+06 s in steps of 0.001 s are more than 200000 values; give a longer output step"},
	} {
		r, err := Run(context.Background(), c, f.setup, carLibrary, f.options)
		if err == nil || err.Error() != f.want || r != nil {
			t.Errorf("got %v, want %s", err, f.want)
		}
	}
}

// Any car that Validate has nothing against launches to a named outcome, with
// no number that is none.
func TestAnyCarLaunches(t *testing.T) {
	seen := map[Outcome]int{}
	rapid.Check(t, func(t *rapid.T) {
		c := cartest.Random(t, carLibrary)
		setup := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "setup")
		r, err := Run(context.Background(), c, setup, carLibrary, Options{Limit: 1})
		if err != nil {
			t.Fatal(err)
		}
		sound(t, r)
		seen[r.Outcome]++
		if r.Outcome == Diverged || strings.HasPrefix(r.Outcome.String(), "Outcome") {
			t.Fatalf("%v, step %v s", r.Outcome, r.Step)
		}
	})
	t.Log(seen)
}

func TestNames(t *testing.T) {
	names := map[string]bool{}
	for _, o := range Outcomes {
		names[o.String()] = true
	}
	if len(names) != len(Outcomes) || Outcome(99).String() != "Outcome(99)" {
		t.Error(names)
	}
	if LowerRight.String() != "lower right bar" || Locator.String() != "locator" || RodID(-1).String() != "RodID(-1)" || Left.String() != "left" {
		t.Error("names of members and sides")
	}
	for _, b := range Bars {
		want := b.Side().String() + " "
		if name := b.String(); !strings.HasPrefix(name, strings.Fields(b.Pair().String())[0]) || !strings.Contains(name, want) {
			t.Errorf("%q is of the %s on the %s side", name, b.Pair(), b.Side())
		}
	}
}
