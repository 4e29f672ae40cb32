package linkage_test

import (
	"errors"
	"math"
	"testing"

	"bowline/model/linkage"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// Level parallel bars, both longer by as much, push the axle straight back.
func TestAdjustedRigidShift(t *testing.T) {
	g := demo()
	g.ChassisUpper.Y = g.RearRadius + g.HousingUpper.Y
	g.ChassisLower.Y = g.RearRadius + g.HousingLower.Y
	l := mustNew(t, g)
	for _, d := range []float64{-3 * inch, -1e-6, 0.25 * inch, 4 * inch} {
		shift, turn, err := l.Adjusted(l.UpperLength()+d, l.LowerLength()+d)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "shift", shift, -d, 1e-11)
		near(t, "turn", turn, 0, 1e-11)
	}
	upper, lower := l.PerLength()
	// By hand: the housing turns about the other bar's hole, 11.5 in away. A
	// longer upper bar pushes the housing's top back, nose up, and the axle 5 in
	// above the lower hole back by 5/11.5.
	near(t, "turn per upper length", upper.Turn, 1/(11.5*inch), 1e-9)
	near(t, "shift per upper length", upper.Shift, -5/11.5, 1e-12)
	near(t, "turn per lower length", lower.Turn, -1/(11.5*inch), 1e-9)
	near(t, "shift per lower length", lower.Shift, -6.5/11.5, 1e-12)
}

func TestAdjustedToItsOwnLengths(t *testing.T) {
	l := mustNew(t, demo())
	shift, turn, err := l.Adjusted(l.UpperLength(), l.LowerLength())
	if shift != 0 || turn != 0 || err != nil {
		t.Errorf("shift %v, turn %v, %v", shift, turn, err)
	}
}

// With the housing turned by an angle, each bar alone says where the axle is:
// a circle about its chassis hole meets the level line of its housing hole.
// The angle at which both say the same is bracketed and bisected.
func bisected(g linkage.Geometry, upper, lower, low, high float64) (shift, turn float64, ok bool) {
	axle := func(turn float64, chassis, arm r2.Vec, length float64) float64 {
		sin, cos := math.Sincos(turn)
		rise := g.RearRadius + sin*arm.X + cos*arm.Y - chassis.Y
		return chassis.X - math.Sqrt(length*length-rise*rise) - (cos*arm.X - sin*arm.Y)
	}
	miss := func(turn float64) float64 {
		return axle(turn, g.ChassisUpper, g.HousingUpper, upper) - axle(turn, g.ChassisLower, g.HousingLower, lower)
	}
	if !(miss(low)*miss(high) < 0) {
		return 0, 0, false
	}
	for range 200 {
		middle := (low + high) / 2
		if miss(middle)*miss(low) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return axle(low, g.ChassisLower, g.HousingLower, lower), low, true
}

func TestAdjustedAgainstCircles(t *testing.T) {
	g := demo()
	l := mustNew(t, g)
	for _, u := range []float64{-1, -0.25, 0, 0.125, 2} {
		for _, w := range []float64{-1.5, -0.125, 0, 0.5, 1} {
			upper, lower := l.UpperLength()+u*inch, l.LowerLength()+w*inch
			shift, turn, err := l.Adjusted(upper, lower)
			if err != nil {
				t.Fatal(err)
			}
			wantShift, wantTurn, ok := bisected(g, upper, lower, -0.6, 0.6)
			if !ok {
				t.Fatalf("%v, %v: no circles meet", u, w)
			}
			near(t, "shift", shift, wantShift, 1e-11)
			near(t, "turn", turn, wantTurn, 1e-11)
		}
	}
}

// Of any four-link: bars keep their new lengths to 1e-11 m, the branch is that
// of ride height, and from the adjusted place, taken as a four-link of its own,
// the old lengths lead back.
func TestAdjustedThereAndBack(t *testing.T) {
	assembled := 0
	rapid.Check(t, func(t *rapid.T) {
		g := geometries(t)
		l, err := linkage.New(g)
		if err != nil {
			return
		}
		change := func(name string) float64 { return rapid.Float64Range(-0.4, 0.4).Draw(t, name) }
		upper, lower := l.UpperLength()+change("upper"), l.LowerLength()+change("lower")
		shift, turn, err := l.Adjusted(upper, lower)
		if err != nil {
			refused(t, l, upper, lower, err)
			return
		}
		assembled++
		there, ride := assemble(g, shift, 0, turn), assemble(g, 0, 0, 0)
		near(t, "upper length", there.upper, upper, 1e-11)
		near(t, "lower length", there.lower, lower, 1e-11)
		if there.sine*ride.sine <= 0 {
			t.Fatal("on the other branch")
		}
		moved := g
		moved.ChassisUpper.X -= shift
		moved.ChassisLower.X -= shift
		moved.HousingUpper = r2.Rotate(g.HousingUpper, turn, r2.Vec{})
		moved.HousingLower = r2.Rotate(g.HousingLower, turn, r2.Vec{})
		m, err := linkage.New(moved)
		if err != nil {
			return
		}
		back, turned, err := m.Adjusted(l.UpperLength(), l.LowerLength())
		if err != nil {
			t.Fatalf("there, but not back: %v", err)
		}
		// A position is as sharp as its bars cross.
		sharp := 1e-11 / min(math.Abs(there.sine), math.Abs(ride.sine))
		near(t, "shift back", back, -shift, sharp)
		near(t, "turn back", turned, -turn, sharp/ride.scale)
	})
	if assembled < 25 {
		t.Errorf("only %d four-links could be assembled", assembled)
	}
}

// refused checks a refusal: lengths reached are on the way to those asked for.
func refused(t *rapid.T, l *linkage.Linkage, upper, lower float64, err error) {
	var stuck *linkage.AdjustmentError
	if !errors.As(err, &stuck) {
		if !errors.Is(err, linkage.ErrShortBar) || upper >= linkage.MinLength && lower >= linkage.MinLength {
			t.Fatal(err)
		}
		return
	}
	between := func(a, x, b float64) bool { return x >= min(a, b)-1e-12 && x <= max(a, b)+1e-12 }
	if !between(l.UpperLength(), stuck.ReachedUpper, upper) || !between(l.LowerLength(), stuck.ReachedLower, lower) {
		t.Fatalf("%+v is not between %v, %v and %v, %v", stuck, l.UpperLength(), l.LowerLength(), upper, lower)
	}
	if _, _, err := l.Adjusted(stuck.ReachedUpper, stuck.ReachedLower); err != nil {
		again := new(linkage.AdjustmentError)
		if !errors.As(err, &again) || math.Abs(again.ReachedUpper-stuck.ReachedUpper)+math.Abs(again.ReachedLower-stuck.ReachedLower) > 1e-6 {
			t.Fatalf("said to be reached, yet: %v", err)
		}
	}
}

// The closed form against central differences of Adjusted.
func TestPerLengthAgainstDifferences(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		g := geometries(t)
		l, err := linkage.New(g)
		if err != nil || math.Abs(assemble(g, 0, 0, 0).sine) < 0.05 {
			return
		}
		const h = 1e-5
		upper, lower := l.PerLength()
		for _, c := range []struct {
			name string
			du   float64
			dw   float64
			want linkage.Sensitivity
		}{{"upper", h, 0, upper}, {"lower", 0, h, lower}} {
			x1, t1, err1 := l.Adjusted(l.UpperLength()+c.du, l.LowerLength()+c.dw)
			x0, t0, err0 := l.Adjusted(l.UpperLength()-c.du, l.LowerLength()-c.dw)
			if err1 != nil || err0 != nil {
				t.Fatalf("%s bar by %v: %v, %v", c.name, h, err1, err0)
			}
			size := 1 + math.Abs(c.want.Shift) + math.Abs(c.want.Turn)
			near(t, "shift by "+c.name, c.want.Shift, (x1-x0)/(2*h), 1e-6*size*size*size)
			near(t, "turn by "+c.name, c.want.Turn, (t1-t0)/(2*h), 1e-6*size*size*size)
		}
		if upper.Turn == 0 || lower.Turn == 0 {
			t.Fatal("a bar's length does not turn the housing")
		}
		compared++
	})
	if compared < 50 {
		t.Errorf("only %d four-links compared", compared)
	}
}

// Bars that cannot reach their holes are refused with the lengths that can.
func TestAdjustedRefusals(t *testing.T) {
	l := mustNew(t, demo())
	for _, length := range []float64{0, 0.005, -1, math.NaN(), math.Inf(-1)} {
		if _, _, err := l.Adjusted(length, l.LowerLength()); !errors.Is(err, linkage.ErrShortBar) {
			t.Errorf("%v m: %v", length, err)
		}
		if _, _, err := l.Adjusted(l.UpperLength(), length); !errors.Is(err, linkage.ErrShortBar) {
			t.Errorf("%v m: %v", length, err)
		}
	}
	// Twelve inches between the housing's holes bridge no forty.
	for _, upper := range []float64{l.UpperLength() + 40*inch, 1e300, math.Inf(1)} {
		_, _, err := l.Adjusted(upper, l.LowerLength())
		var stuck *linkage.AdjustmentError
		if !errors.As(err, &stuck) {
			t.Errorf("upper bar of %v m: %v", upper, err)
			continue
		}
		if math.IsNaN(stuck.ReachedUpper) || math.IsInf(stuck.ReachedUpper, 0) || stuck.ReachedLower != l.LowerLength() {
			t.Errorf("upper bar of %v m: %+v", upper, stuck)
		}
	}
}

func BenchmarkAdjusted(b *testing.B) {
	l := mustNew(b, demo())
	for i := 0; b.Loop(); i++ {
		if _, _, err := l.Adjusted(l.UpperLength()+0.02*math.Sin(float64(i)), l.LowerLength()); err != nil {
			b.Fatal(err)
		}
	}
}
