package carfile

import "fmt"

// migration turns the values of a file of one schema version into those of the
// next. What it does not find, or finds in an unexpected form, it leaves as it
// is: reading the result says what is wrong with it.
type migration func(root map[string]any)

// migrations holds the step from each older version to the one after it.
var migrations = map[int]migration{}

// schema brings the values of a file to the version Schema and returns the
// version it had. A missing or wrong one is noted, and the file read as if it
// were current; a version that cannot be read is refused alone.
func (r *reader) schema(root map[string]any, steps map[int]migration) (int, error) {
	raw, ok := root["schema"]
	if !ok {
		r.note("schema", "is missing", fmt.Sprintf("add schema = %d", Schema))
		return Schema, nil
	}
	given, ok := raw.(int64)
	if !ok {
		r.note("schema", "is "+kindOf(raw)+" but no whole number", fmt.Sprintf("give schema = %d", Schema))
		return Schema, nil
	}
	if given > Schema {
		r.note("schema", fmt.Sprintf("is %d, a newer form than this program knows", given),
			fmt.Sprintf("open the file with a newer version of the program; this one reads up to %d", Schema))
		return 0, r.doc.err()
	}
	for version := int(given); version < Schema; version++ {
		step, ok := steps[version]
		if !ok {
			r.note("schema", fmt.Sprintf("is %d, which never was a form of the car file", given), fmt.Sprintf("give schema = %d", Schema))
			return 0, r.doc.err()
		}
		step(root)
	}
	return int(given), nil
}
