package feeler

import "encoding/json"

// MarshalJSON writes the set as [ParseSetJSON] reads it. The zero Set is
// written as null.
func (s Set) MarshalJSON() ([]byte, error) {
	d := s.data()
	if len(d.blades) == 0 {
		return []byte("null"), nil
	}
	return json.Marshal(setDocument{Schema: setSchema, Name: d.name, Source: d.source, Blades: d.blades})
}

// UnmarshalJSON reads what [ParseSetJSON] reads; null leaves the set as it is.
func (s *Set) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		return nil
	}
	v, err := ParseSetJSON("", data)
	if err == nil {
		*s = v
	}
	return err
}
