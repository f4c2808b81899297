// Package document reads the JSON documents of this module: an engine's
// readings, a maker's limits, a tool kit. It is strict, because a document that
// is read half right costs an engine: a misspelt field, a field written twice,
// a number without its unit and a file cut short are all refused, each with the
// file, the line and the path to the place.
//
//	engine.json:12: grooves[2].trials[4].blade: wrong type: found the number 0.07, want …
//
// # What is read
//
// [Decode] fills structs, embedded structs, slices, arrays, maps whose keys are
// texts, pointers, strings, bools, integers, floats and every type that has
// encoding.TextUnmarshaler. Names come from the json tags. A field must be
// present unless its tag says omitempty or omitzero or its type is a pointer.
// Names match to the letter. An array must have its exact number of elements.
// The value null is taken where the Go type has a nil that encoding/json writes
// as null: pointers, slices and maps. What encoding/json writes from such a
// type, Decode reads back.
//
// Not read, and refused by name before the input is looked at: interfaces,
// byte slices (written as base 64), the tag option "string", embedded pointers,
// pointers to pointers, maps with numbers for keys, types whose only decoder is UnmarshalJSON (where
// a type has both, its UnmarshalText is used), and structs in which two fields
// of the same depth share a name.
//
// # Whole or not at all
//
// The document is decoded into a fresh value, which replaces the target at the
// end. On an error the target is untouched; on success nothing of its old
// content remains.
//
// # Limits
//
// [MaxSize] bytes of input, [MaxDepth] levels of nesting, [MaxMemory] bytes of
// decoded elements. All three are checked before the memory is spent.
//
// # Errors
//
// Every error is an [*Error] with the file's name, line, column and path, what
// was found and what was wanted. Its Kind is one of the sentinels ([ErrMissing],
// [ErrType], …) and is what errors.Is compares; Unwrap gives the error of the
// type's own UnmarshalText. Reading stops at the first error. Each piece of the
// input that an error quotes is cut at 64 bytes. [At] gives the place of an error
// that only the decoded values tell.
//
// # Sources
//
// The grammar is RFC 8259 (JSON), with I-JSON's (RFC 7493) demands that names
// are unique and that text is valid Unicode. The tests compare every accepted
// document with encoding/json.
package document
