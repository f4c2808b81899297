package main

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// risky is what a spreadsheet takes for the start of a formula. A minus sign
// before a digit is a number, and stays.
func risky(cell string) bool {
	if cell == "" || !strings.ContainsRune("=+-@\t\r＝＋－＠", []rune(cell)[0]) {
		return false
	}
	_, err := units.ParseLength(cell)
	return err != nil
}

// safe gives cells that might be taken for formulas an apostrophe.
func safe(cells []string) []string {
	for i, c := range cells {
		if risky(c) {
			cells[i] = "'" + c
		}
	}
	return cells
}

// plain takes that apostrophe off again.
func plain(cell string) string {
	if rest, ok := strings.CutPrefix(cell, "'"); ok && risky(rest) {
		return rest
	}
	return cell
}
