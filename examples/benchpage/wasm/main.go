//go:build js && wasm

// Command wasm is the library in the browser: the page's script calls
// tenthouWork with a calculator's name and its fields as JSON, and gets the
// answer as JSON.
package main

import (
	"encoding/json"
	"syscall/js"

	"github.com/tenthou/tenthou/examples/benchpage/calc"
)

func main() {
	js.Global().Set("tenthouWork", js.FuncOf(func(_ js.Value, args []js.Value) any {
		answer := calc.Answer{Error: "the page asked for nothing"}
		values := map[string]string{}
		if len(args) == 2 {
			if err := json.Unmarshal([]byte(args[1].String()), &values); err != nil {
				answer.Error = err.Error()
			} else {
				answer = calc.WorkNamed(args[0].String(), values)
			}
		}
		text, err := json.Marshal(answer)
		if err != nil {
			return `{"says": "", "error": "the answer can't be written"}`
		}
		return string(text)
	}))
	js.Global().Get("document").Call("dispatchEvent", js.Global().Get("Event").New("tenthou"))
	select {} // the page calls for as long as it is open
}
