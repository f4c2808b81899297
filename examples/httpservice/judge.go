package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
)

// mostBytes is the largest request.
const mostBytes = 64 << 10

// question is what a request holds.
type question struct {
	Measure  string              `json:"measure"`
	Where    string              `json:"where"`
	New      tolerance.Printed   `json:"new,omitzero"`
	Wear     tolerance.Printed   `json:"wear,omitzero"`
	Readings []tolerance.Bracket `json:"readings"`
}

// answer is the finding, and what it comes to in a sentence.
type answer struct {
	tolerance.Finding
	Says string `json:"says"`
}

// refusal says what was wrong with a request.
type refusal struct {
	Error string `json:"error"`
	Line  int    `json:"line,omitempty"` // in the request, where one is to blame
	Path  string `json:"path,omitempty"`
}

// handler serves the one check. It keeps nothing between requests, so that
// any number of them may run side by side.
func handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /judge", func(w http.ResponseWriter, r *http.Request) {
		body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, mostBytes))
		if long := (*http.MaxBytesError)(nil); errors.As(err, &long) {
			reply(w, http.StatusRequestEntityTooLarge, refusal{Error: fmt.Sprintf("a request is %d bytes at most", mostBytes)})
			return
		}
		if err != nil {
			reply(w, http.StatusBadRequest, refusal{Error: "the request was cut short"})
			return
		}
		found, err := judge(body)
		if err != nil {
			refused := refusal{Error: err.Error()}
			if where := (*document.Error)(nil); errors.As(err, &where) {
				refused.Line, refused.Path = where.Line, where.Path
			}
			reply(w, http.StatusUnprocessableEntity, refused)
			return
		}
		reply(w, http.StatusOK, found)
	})
	return mux
}

// judge reads a request and answers it, whole or not at all.
func judge(body []byte) (a answer, err error) {
	var q question
	if err := document.DecodeNamed("request", body, &q); err != nil {
		return a, err
	}
	spec := tolerance.Spec{New: q.New.BandOf, Wear: q.Wear.BandOf}
	if err := spec.Validate(); err != nil {
		return a, err
	}
	a.Finding, err = tolerance.Assess(q.Measure, q.Where, spec, q.Readings...)
	a.Says = a.Explain()
	return a, err
}

func reply(w http.ResponseWriter, status int, what any) {
	text, err := json.MarshalIndent(what, "", "  ")
	if err != nil { // a finding out of range, which Assess refuses
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	fmt.Fprintf(w, "%s\n", text) // a client that left is no matter of ours
}
