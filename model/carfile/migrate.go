package carfile

import "fmt"

// migration turns the values of a file of one schema version into those of the
// next. What it does not find, or finds in an unexpected form, it leaves as it
// is: reading the result says what is wrong with it.
type migration func(root map[string]any)

// migrations holds the step from each older version to the one after it.
var migrations = map[int]migration{}

var giveSchema = fmt.Sprintf("give schema = %d", Schema)

// migrate brings the values of a file to the version Schema and returns the
// version it had. A version that cannot be read is refused alone; a file that
// gives none is taken as current.
func (r *reader) migrate(root map[string]any, steps map[int]migration) (int, error) {
	raw, ok := root["schema"]
	if !ok {
		return Schema, nil
	}
	given, ok := raw.(int64)
	if !ok {
		r.note("schema", "is "+kindOf(raw)+" but no whole number", giveSchema)
		return Schema, nil
	}
	if given > Schema {
		r.note("schema", fmt.Sprintf("is %d, a newer form than this program knows", given),
			fmt.Sprintf("open the file with a newer version of the program; this one reads up to %d", Schema))
		return 0, r.err()
	}
	for version := int(given); version < Schema; version++ {
		step, ok := steps[version]
		if !ok {
			r.note("schema", fmt.Sprintf("is %d, which never was a form of the car file", given), giveSchema)
			return 0, r.err()
		}
		step(root)
	}
	return int(given), nil
}
