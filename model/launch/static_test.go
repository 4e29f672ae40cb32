package launch

import (
	"math"
	"testing"

	"bowline/model/car"

	"gonum.org/v1/gonum/mat"
)

// preloaded is a car with turns on every bar.
func preloaded(t *testing.T) Parameters {
	c := reference(t)
	c.Setups[0].Turns = car.Turns{UpperLeft: 0.75, UpperRight: -1.5, LowerLeft: 0.25, LowerRight: 0.5}
	return parameters(t, c)
}

// Without preload the car stands at ride height with the loads of its scales:
// 1,325 lb on the rear tires, as much on the front ones, and bars that carry
// nothing, since the reference car's springs stand over its axle.
func TestRestAtRideHeight(t *testing.T) {
	r := run(t, reference(t), Options{Limit: 0.001})
	for _, side := range Sides {
		within(t, "rear load", r.Static.RearLoad[side], 1325./2*lbf, 1e-9)
		within(t, "front load", r.Static.FrontLoad[side], 1325./2*lbf, 1e-9)
		within(t, "spring", r.Static.Push[side], (1325.-390)/2*lbf, 1e-9)
	}
	for k, tension := range r.Static.Tension {
		if math.Abs(tension) > 1e-6 {
			t.Errorf("%v carries %v N", RodID(k), tension)
		}
	}
	f := r.Frames[0]
	for _, side := range Sides {
		within(t, "rear wheel", f.RearWheels[side].Z, 16*inch, 1e-9)
		within(t, "front wheel", f.FrontWheels[side].Z, 12.5*inch, 1e-9)
	}
}

// gradient is that of the potential energy over the ways a resting car can
// move, by central differences.
func gradient(p *Parameters, s *state) move {
	const h = 1e-5
	var g move
	for k := range g {
		var by move
		by[k] = h
		ahead := s.moved(&by)
		by[k] = -h
		back := s.moved(&by)
		g[k] = (pieces{p, &ahead}.potential() - pieces{p, &back}.potential()) / (2 * h)
	}
	return g
}

// hessian is the second derivative, by differences of the gradient.
func hessian(p *Parameters, s *state) *mat.SymDense {
	const h = 1e-4
	k := mat.NewSymDense(degrees, nil)
	for row := range degrees {
		var by move
		by[row] = h
		ahead := s.moved(&by)
		more := gradient(p, &ahead)
		by[row] = -h
		back := s.moved(&by)
		less := gradient(p, &back)
		for column := range row + 1 {
			k.SetSym(row, column, (more[column]-less[column])/(2*h))
		}
	}
	return k
}

// A second formulation: a preloaded car at rest is where its potential energy,
// summed up spring by spring, is least. Every slope there is less than a
// hundredth of a newton, and every curvature is upward.
func TestRestIsWhereEnergyIsLeast(t *testing.T) {
	p := preloaded(t)
	m := newModel(p)
	var i instant
	s, ok := m.rest(&i)
	if !ok {
		t.Fatal("the car finds no rest")
	}
	for k, slope := range gradient(&p, &s) {
		if math.Abs(slope) > 0.01 {
			t.Errorf("along coordinate %d energy falls by %v N", k, slope)
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(hessian(&p, &s), false) {
		t.Fatal("no eigenvalues")
	}
	if least := eigen.Values(nil)[0]; least < 100 {
		t.Errorf("least curvature %v N/m", least)
	}
	if moved := s.axle.turn.Imag; math.Abs(moved) < 1e-4 {
		t.Errorf("the preload hardly rolls the axle: %v", moved)
	}
}

// What a turn of a bar does is the answer of the least energy to a change of the
// bar's free length: dq = −K⁻¹ ∂²V/∂q∂l0, the tire loads following from how the
// wheel centers rise.
func TestTurnsByEnergy(t *testing.T) {
	p := preloaded(t)
	r := simulate(t, p, Options{Limit: 0.001})
	m := newModel(p)
	var i instant
	s, _ := m.rest(&i)
	var k mat.LU
	k.Factorize(hessian(&p, &s))
	const h = 1e-4 // of free length [m], and so of the nonlinearity left
	for _, bar := range Bars {
		longer, shorter := p, p
		longer.Rods[bar].Free += h
		shorter.Rods[bar].Free -= h
		more, less := gradient(&longer, &s), gradient(&shorter, &s)
		mixed := mat.NewVecDense(degrees, nil)
		for n := range more {
			mixed.SetVec(n, -(more[n]-less[n])/(2*h))
		}
		var by mat.VecDense
		if err := k.SolveVecTo(&by, false, mixed); err != nil {
			t.Fatal(err)
		}
		var step move
		for n := range step {
			step[n] = by.AtVec(n) * 1e-6
		}
		next := s.moved(&step)
		perTurn := p.Rods[bar].Lead / 1e-6
		for _, side := range Sides {
			before, after := pieces{&p, &s}, pieces{&p, &next}
			rise := after.axle(p.RearTires[side].Center).Z - before.axle(p.RearTires[side].Center).Z
			got, want := r.PerTurn[bar].RearLoad[side], -p.RearTires[side].Rate*rise*perTurn
			if math.Abs(got-want) > 1e-3*math.Abs(want) || math.Abs(want) < 50 {
				t.Errorf("a turn of the %v changes the %v rear load by %v N, by energy %v N", bar, side, got, want)
			}
			rise = after.hub(side, 0).Z - before.hub(side, 0).Z
			got, want = r.PerTurn[bar].FrontLoad[side], -p.Corners[side].TireRate*rise*perTurn
			if math.Abs(got-want) > 1e-3*math.Abs(want) {
				t.Errorf("a turn of the %v changes the %v front load by %v N, by energy %v N", bar, side, got, want)
			}
		}
	}
}

// The same by two cars at rest, a twentieth of a turn apart: loads and bars
// agree to a thousandth of the largest change.
func TestTurnsByTwoCars(t *testing.T) {
	c := reference(t)
	c.Setups[0].Turns.UpperRight = -1
	at := run(t, c, Options{Limit: 0.001})
	for k, turn := range car.BarTurns {
		static := func(by float64) Static {
			d := c.Clone()
			*turn.Of(&d.Setups[0].Turns) += by
			return run(t, d, Options{Limit: 0.001}).Static
		}
		more, less := static(0.025), static(-0.025)
		check := func(what string, got, more, less, scale float64) {
			if want := (more - less) / 0.05; math.Abs(got-want) > 1e-3*scale {
				t.Errorf("a turn of %s changes %s by %v N, two cars by %v N", turn.Key, what, got, want)
			}
		}
		largest := math.Abs(at.PerTurn[k].Tension[k])
		for n := range more.Tension {
			check(RodID(n).String(), at.PerTurn[k].Tension[n], more.Tension[n], less.Tension[n], largest)
		}
		for _, side := range Sides {
			scale := math.Abs(at.PerTurn[k].RearLoad[side])
			check("a rear load", at.PerTurn[k].RearLoad[side], more.RearLoad[side], less.RearLoad[side], scale)
			check("a front load", at.PerTurn[k].FrontLoad[side], more.FrontLoad[side], less.FrontLoad[side], scale)
			check("a spring", at.PerTurn[k].Push[side], more.Push[side], less.Push[side], scale)
		}
	}
}

// Shortening the right upper bar, or lengthening the right lower one, puts load
// on the right rear and the left front tire and takes it off the other two
// (common practice). The car weighs what it weighed.
func TestPreloadLoadsTheRightRear(t *testing.T) {
	r := run(t, reference(t), Options{Limit: 0.001})
	for _, c := range []struct {
		bar   RodID
		turns float64
	}{{UpperRight, -1}, {LowerRight, 1}, {UpperLeft, 1}, {LowerLeft, -1}} {
		by := r.PerTurn[c.bar]
		rear, front := by.RearLoad, by.FrontLoad
		if c.turns*rear[Right] < 50 || c.turns*rear[Left] > -50 || c.turns*front[Left] < 50 || c.turns*front[Right] > -50 {
			t.Errorf("%v turns of the %v change rear loads by %v, front loads by %v N", c.turns, c.bar, rear, front)
		}
		if sum := rear[Left] + rear[Right] + front[Left] + front[Right]; math.Abs(sum) > 1e-3*math.Abs(rear[Right]) {
			t.Errorf("a turn of the %v makes the car heavier by %v N", c.bar, sum)
		}
	}
}
