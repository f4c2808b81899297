// Sqlite answers: how are readings kept in a database, so that it can sort them,
// sum them and compare them without rounding?
//
// Method: through database/sql a length is stored as the whole number of
// picometres that it is (driver.Valuer) and comes back as a length (sql.Scanner).
// The database then sorts and sums whole numbers, and nothing is rounded.
//
// Source: the Go standard library's documentation of database/sql. The driver
// is pure Go, so that the recipe needs no C compiler; it stands in a module of
// its own, so that the library doesn't require it.
//
// For: shop software.
//
// Caution: a reading kept is no better than the reading taken. Undecided is not
// a pass, and the engine maker's manual governs.
package main

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"

	_ "modernc.org/sqlite" // the driver named "sqlite"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// A reading as a shop might take it down.
type reading struct {
	cylinder int
	place    string
	size     units.Length
}

var demo = []reading{
	{1, "top, across", units.MustParseLength("3.3866 in")},
	{1, "bottom, across", units.MustParseLength("3.3858 in")},
	{2, "top, across", units.MustParseLength("86.061 mm")},
	{2, "bottom, across", units.MustParseLength("86.0003 mm")},
	{3, "top, across", units.MustParseLength("86.02 mm")},
	{3, "bottom, across", units.MustParseLength("3.3858 in")},
}

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("sqlite", "How are readings kept in a database, so that it can sort and sum them without rounding?\n\n"+
		"Bores read in inches and millimetres are stored, and the database finds each cylinder's\n"+
		"taper and those past the limit.", errs)
	path := flags.String("database", ":memory:", "the `FILE` of the database")
	limit := units.MustParseLength("0.05 mm")
	flags.TextVar(&limit, "limit", limit, "the greatest `TAPER` allowed")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	page, err := keep(context.Background(), *path, limit)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

// keep stores the readings in one transaction, all or none, and asks for the
// tapers.
func keep(ctx context.Context, path string, limit units.Length) (page string, err error) {
	db, err := sql.Open("sqlite", path)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	db.SetMaxOpenConns(1) // each connection to :memory: is a database of its own
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return "", err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, tx.Rollback())
		}
	}()
	if _, err = tx.ExecContext(ctx, `CREATE TABLE bore (cylinder INTEGER, place TEXT, size INTEGER, UNIQUE (cylinder, place))`); err != nil {
		return "", err
	}
	for _, r := range demo {
		if _, err = tx.ExecContext(ctx, `INSERT INTO bore VALUES (?, ?, ?)`, r.cylinder, r.place, r.size); err != nil {
			return "", err
		}
	}
	if page, err = tapers(ctx, tx, limit); err != nil {
		return "", err
	}
	return page, tx.Commit()
}

// tapers lets the database take the differences, the worst first.
func tapers(ctx context.Context, tx *sql.Tx, limit units.Length) (page string, err error) {
	rows, err := tx.QueryContext(ctx, `SELECT cylinder, max(size), min(size), max(size) - min(size) AS taper FROM bore GROUP BY cylinder ORDER BY taper DESC`)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	page = fmt.Sprintf("taper, at most %v:\n", limit)
	band := tolerance.AtMost(limit)
	for rows.Next() {
		var cylinder int
		var greatest, least, taper units.Length
		if err := rows.Scan(&cylinder, &greatest, &least, &taper); err != nil {
			return "", err
		}
		page += fmt.Sprintf("  cylinder %d: %v less %v is %v: %v\n", cylinder, greatest, least, taper, band.Judge(tolerance.Exactly(taper)))
	}
	return page, rows.Err()
}
