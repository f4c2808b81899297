package main

import "testing"

func TestCount(t *testing.T) {
	got, err := count("mode: set\n" +
		"example.com/m/a/x.go:1.1,2.2 3 1\n" +
		"example.com/m/a/y.go:1.1,2.2 1 0\n" +
		"example.com/m/b/x.go:1.1,2.2 2 7\n")
	if err != nil {
		t.Fatal(err)
	}
	if a, b := got["example.com/m/a"], got["example.com/m/b"]; len(got) != 2 ||
		a != (statements{3, 4}) || a.percent() != 75 || b != (statements{2, 2}) {
		t.Errorf("got %v", got)
	}
	for _, bad := range []string{"x", "x.go:1.1,2.2 3", "x.go:1.1,2.2 many 1"} {
		if _, err := count(bad); err == nil {
			t.Errorf("%q was taken", bad)
		}
	}
}
