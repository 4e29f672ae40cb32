package plotting

import "bowline/model/units"

// number writes a value with its thousands set apart, as in "11,240".
func number(x float64, decimals int) string { return units.Decimal(x, decimals) }

// value writes an SI value with the usual decimals and the unit.
func value(s units.System, q units.Quantity, si float64) string { return s.Format(q, si) }
