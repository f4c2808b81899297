package document_test

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
)

func ExampleDecode() {
	var t trial
	err := document.Decode([]byte(`{"blade": "0.070 mm", "enters": true}`), &t)
	fmt.Println(int(t.Blade), "µm", t.Enters, err)
	// Output: 70 µm true <nil>
}

func ExampleDecodeNamed() {
	var e engine
	err := document.DecodeNamed("engine.json", []byte(`{
  "schema": 1,
  "job": "demo",
  "grooves": [
    {"cylinder": 1, "groove": 1, "ring": "top", "trials": [
      {"blade": "0.060 mm", "enters": true},
      {"blade": 0.07, "enters": false}
    ]}
  ]
}`), &e)
	fmt.Println(err)
	fmt.Println(errors.Is(err, document.ErrType))
	// Output:
	// engine.json:7: grooves[0].trials[1].blade: wrong type: found the bare number 0.07, want a text in quotes, a quantity with its unit, such as "0.07 mm"
	// true
}

func ExampleSchema() {
	n, err := document.Schema([]byte(`{"schema": 2, "job": "demo"}`), 1, 2)
	fmt.Println(n, err)
	_, err = document.Schema([]byte(`{"schema": 3, "job": "demo"}`), 1, 2)
	fmt.Println(err)
	// Output:
	// 2 <nil>
	// document: line 1: schema: unknown schema number: found 3, want 1 or 2
}

func ExampleAt() {
	data := []byte(`{
  "cylinders": [
    {"cylinder": 1},
    {"cylinder": 1}
  ]
}`)
	fmt.Println(document.At("engine.json", data, "cylinders[1].cylinder", errors.New("cylinder 1 is there twice")))
	// Output: engine.json:4: cylinders[1].cylinder: cylinder 1 is there twice
}
