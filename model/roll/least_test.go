package roll

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// draw returns a system of numbers between −10 and 10.
func draw(t *rapid.T) (s system) {
	number := rapid.Float64Range(-10, 10)
	for r := range s {
		for c := range s[r] {
			s[r][c] = number.Draw(t, "entry")
		}
	}
	return s
}

// drawIndependent returns a system whose columns are far from dependent: each has, in a
// row of its own anywhere in the system, an entry that outweighs the other entries.
func drawIndependent(t *rapid.T) (s system) {
	number := rapid.Float64Range(-1, 1)
	for r := range s {
		for c := range s[r] {
			s[r][c] = number.Draw(t, "entry")
		}
	}
	rows := make([]int, len(s))
	for r := range rows {
		rows[r] = r
	}
	for c, r := range rapid.Permutation(rows).Draw(t, "rows")[:free] {
		s[r][c] = rapid.Float64Range(2*free, 4*free).Draw(t, "outweighing")
	}
	for c := range free {
		scale := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		for r := range s {
			s[r][c] *= scale
		}
	}
	return s
}

// residual returns the sum of squares of A x − b.
func residual(s system, x [free]float64) (sum float64) {
	for r := range s {
		left := -s[r][free]
		for c := range x {
			left += s[r][c] * x[c]
		}
		sum += left * left
	}
	return sum
}

// The solution is that of gonum's QR, and the squares are those of the residual.
func TestLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawIndependent(t)
		a, b := mat.NewDense(len(s), free, nil), mat.NewVecDense(len(s), nil)
		for r := range s {
			a.SetRow(r, s[r][:free])
			b.SetVec(r, s[r][free])
		}
		var want mat.VecDense
		if err := want.SolveVec(a, b); err != nil {
			t.Fatalf("gonum: %v", err)
		}
		own := s
		x, squares := own.solve()
		for c := range x {
			if math.Abs(x[c]-want.AtVec(c)) > 1e-8*(1+math.Abs(x[c])) {
				t.Fatalf("x is %v, gonum has %v", x, mat.Formatted(want.T()))
			}
		}
		if sum := residual(s, x); math.Abs(squares-sum) > 1e-8*(1+sum) {
			t.Fatalf("squares %v, of the residual %v", squares, sum)
		}
	})
}

// A column of zeros, or one that depends on those before it, moves nothing and costs
// nothing: the residual is as small as without it.
func TestDependentColumns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		double := rapid.Float64Range(-2, 2).Draw(t, "of another")
		without, dependent := s, s
		for r := range s {
			without[r][2], dependent[r][2] = 0, double*s[r][0]
		}
		a, b := without, dependent
		x, squares := a.solve()
		y, same := b.solve()
		if x[2] != 0 || y[2] != 0 || math.Abs(squares-same) > 1e-7*(1+squares) {
			t.Fatalf("%v leaves %v, %v leaves %v", x, squares, y, same)
		}
		if sum := residual(without, x); math.Abs(squares-sum) > 1e-7*(1+sum) {
			t.Fatalf("squares %v, of the residual %v", squares, sum)
		}
	})
}
