package roll

import (
	"math"

	"bowline/model/launch"
)

// system is an overdetermined system of linear equations, one for each rod: the
// columns of the freedoms and the right side. It is of fixed size, so that solving
// allocates nothing.
type system [launch.RodCount][free + 1]float64

// dependent is how much of a column's length must be left beside the columns before
// it, so that it counts as independent of them [1]: well above rounding, and well
// below any lever arm that a car has.
const dependent = 1e-10

// solve returns the freedoms x with the least squares of A x − b, and the sum of
// these squares. A freedom that no rod answers to stays zero. It overwrites s.
// Source: Golub & Van Loan, Matrix Computations, Householder QR (from memory).
func (s *system) solve() (x [free]float64, squares float64) {
	var pivots [free]int // the row of each column's pivot, −1 for none
	row := 0
	for c := range free {
		whole, below := 0.0, 0.0
		for r := range s {
			whole += s[r][c] * s[r][c]
			if r >= row {
				below += s[r][c] * s[r][c]
			}
		}
		if pivots[c] = -1; below <= dependent*dependent*whole {
			continue
		}
		// Reflect the rows from row on, so that only the first of them keeps the column.
		head := -math.Copysign(math.Sqrt(below), s[row][c])
		first := s[row][c] - head
		over := -1 / (head * first)
		for k := c + 1; k <= free; k++ {
			dot := first * s[row][k]
			for r := row + 1; r < len(s); r++ {
				dot += s[r][c] * s[r][k]
			}
			dot *= over
			s[row][k] -= dot * first
			for r := row + 1; r < len(s); r++ {
				s[r][k] -= dot * s[r][c]
			}
		}
		s[row][c] = head
		pivots[c] = row
		row++
	}
	for c := free - 1; c >= 0; c-- {
		p := pivots[c]
		if p < 0 {
			continue
		}
		sum := s[p][free]
		for k := c + 1; k < free; k++ {
			sum -= s[p][k] * x[k]
		}
		x[c] = sum / s[p][c]
	}
	for ; row < len(s); row++ {
		squares += s[row][free] * s[row][free]
	}
	return x, squares
}
