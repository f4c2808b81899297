package wearrate

import (
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Profile is a table of rules with its source. It is plain data, as JSON:
//
//	{
//	  "schema": 1,
//	  "name": "our shop",
//	  "source": "records of ten years",
//	  "rules": [
//	    {"item": "cylinder bore wear", "kind": "at most", "rate": "0.001", "of": "bore diameter"},
//	    {"item": "crankshaft end float", "kind": "above the greatest new", "plus": "0.1 mm"}
//	  ]
//	}
type Profile struct {
	Schema int    `json:"schema"` // 1
	Name   string `json:"name"`   // to choose it by
	Source string `json:"source"` // where the numbers come from
	Rules  []Rule `json:"rules"`  // one for each item
}

// Schema is the number of the document's form that this package reads.
const Schema = 1

// MostRules is how many rules a profile may have.
const MostRules = 1000

// ParseProfile reads a profile of the user's own from JSON. name is that of the
// document, for errors. A misspelt field, a number without its unit and a rule
// that is not valid are refused, with an [InputError].
func ParseProfile(name string, data []byte) (Profile, error) {
	fail := func(err error) (Profile, error) {
		return Profile{}, &InputError{Item: clip(name), Field: "document", Kind: ErrDocument, Err: err}
	}
	if _, err := document.SchemaNamed(name, data, Schema); err != nil {
		return fail(err)
	}
	var p Profile
	if err := document.DecodeNamed(name, data, &p); err != nil {
		return fail(err)
	}
	if err := p.Validate(); err != nil {
		return fail(err)
	}
	return p, nil
}

// Validate refuses, with an [InputError], a profile without a name, a source or
// rules, an item that stands twice, and a rule that is not valid.
func (p Profile) Validate() error {
	switch {
	case p.Schema != Schema:
		return refuse(p.Name, "schema", "", ErrDocument, "1")
	case p.Name == "":
		return refuse("", "name", "", ErrName, "a name to choose the profile by")
	case p.Source == "":
		return refuse(p.Name, "source", "", ErrName, "where the numbers come from")
	case len(p.Rules) == 0:
		return refuse(p.Name, "rules", "", ErrEmpty, "at least one rule")
	case len(p.Rules) > MostRules:
		return refuse(p.Name, "rules", "", ErrRange, "at most 1000 rules")
	}
	seen := make(map[string]bool, len(p.Rules))
	for _, r := range p.Rules {
		if err := r.Validate(); err != nil {
			return err
		}
		if seen[r.Item] {
			return refuse(r.Item, "item", "", ErrName, "one rule for an item")
		}
		seen[r.Item] = true
	}
	return nil
}

// Rule is the rule for an item; ok is false where there is none.
func (p Profile) Rule(item string) (r Rule, ok bool) {
	for _, r := range p.Rules {
		if r.Item == item {
			return r, true
		}
	}
	return Rule{}, false
}

// Spec makes the limits for an item on a part of the given size; see
// [Rule.Spec]. It fails, too, where the profile has no rule for the item: there
// is no default.
func (p Profile) Spec(item string, size units.Length, fresh tolerance.Band) (tolerance.Spec, error) {
	r, ok := p.Rule(item)
	if !ok {
		return tolerance.Spec{}, refuse(item, "profile", p.Name, ErrUnknown, "an item that the profile has a rule for")
	}
	return r.Spec(size, fresh)
}
