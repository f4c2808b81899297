// Logsandflags answers: how do lengths and limits go through flags, structured
// logs and JSON without losing a digit?
//
// Method: every quantity has AppendText, MarshalText and UnmarshalText, and that
// is all that packages flag, log/slog and encoding/json ask for. Text is exact:
// what was written as thousandths of an inch comes back as the same length.
//
// Source: the Go standard library's own documentation of these packages.
//
// For: shop software, hobbyists.
//
// Caution: what is logged is what was read, not what is true. Undecided is not
// a pass, and the engine maker's manual governs.
package main

import (
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// record is what a shop's program might keep of one measurement.
type record struct {
	Where   string            `json:"where"`
	Read    units.Length      `json:"read"`
	Error   units.Length      `json:"error"`
	Limits  tolerance.Band    `json:"limits"`
	Bracket tolerance.Bracket `json:"bracket"`
	Verdict tolerance.Verdict `json:"verdict"`
	Temp    units.Temperature `json:"temperature"`
}

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("logsandflags", "How do lengths and limits go through flags, structured logs and JSON without losing a digit?\n\n"+
		"One reading is judged; it is logged as a line of JSON on standard error, kept as JSON,\nand read back.", errs)
	r := record{Where: "main 3, front", Read: units.MustParseLength("2.3612 in"), Error: units.MustParseLength("0.0001 in"),
		Limits: tolerance.MustParseBand("2.3602–2.3622 in"), Temp: units.MustParseTemperature("20 °C")}
	flags.StringVar(&r.Where, "where", r.Where, "the `PLACE` that was measured")
	flags.TextVar(&r.Read, "read", r.Read, "the `READING`")
	flags.TextVar(&r.Error, "error", r.Error, "the instrument's `ERROR`, ±")
	flags.TextVar(&r.Limits, "limits", r.Limits, "the `LIMITS` as printed")
	flags.TextVar(&r.Temp, "temperature", r.Temp, "the part's `TEMPERATURE`")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if r.Error < 0 {
		return flags.Fail(fmt.Errorf("-error: %v is below zero: write it without its sign", r.Error))
	}
	var err error
	if r.Bracket, err = tolerance.PlusMinus(r.Read, r.Error); err != nil {
		return flags.Fail(err)
	}
	r.Verdict = r.Limits.Judge(r.Bracket)

	log := slog.New(slog.NewJSONHandler(errs, &slog.HandlerOptions{ReplaceAttr: undated}))
	log.Info("judged", "where", r.Where, "bracket", r.Bracket, "limits", r.Limits, "verdict", r.Verdict)

	kept, err := json.MarshalIndent(r, "", "  ")
	if err != nil {
		return flags.Fail(err)
	}
	var back record
	if err := json.Unmarshal(kept, &back); err != nil {
		return flags.Fail(err)
	}
	fmt.Fprintf(out, "%s\n\nread back: the same length, %v; the same bracket, %v; the same limits, %v\n",
		kept, back.Read == r.Read, back.Bracket == r.Bracket, back.Limits == r.Limits)
	fmt.Fprintf(out, "in whole picometres, for a database: %d\n", int64(back.Read))
	return recipe.Answered
}

// undated leaves the time out, so that this recipe prints the same each time.
func undated(groups []string, a slog.Attr) slog.Attr {
	if a.Key == slog.TimeKey && len(groups) == 0 {
		return slog.Attr{}
	}
	return a
}
