package golist

import (
	"slices"
	"testing"
)

func TestLibrary(t *testing.T) {
	var all []Package
	for _, p := range []struct{ path, name string }{
		{"example.com/shop", "shop"},
		{"example.com/shop/tolerance/feeler", "feeler"},
		{"example.com/shop/internal/x", "x"},
		{"example.com/shop/units/internal", "internal"},
		{"example.com/shop/examples/helper", "helper"},
		{"example.com/shop/cmd", "main"},
		{"example.com/shop/internals", "internals"},
		{"example.com/shop/crank", "crank"},
	} {
		q := Package{ImportPath: p.path, Name: p.name}
		q.Module.Path = "example.com/shop"
		all = append(all, q)
	}
	var got []string
	for _, p := range Library(all, "crank,valvetrain") {
		got = append(got, p.Below())
	}
	if want := []string{".", "tolerance/feeler", "internals"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestLoad(t *testing.T) {
	pkgs, err := Load(".")
	if err != nil {
		t.Fatal(err)
	}
	if len(pkgs) != 1 || pkgs[0].Below() != "internal/golist" || len(pkgs[0].Sources()) != 1 || len(pkgs[0].Tests()) != 1 {
		t.Errorf("got %+v", pkgs)
	}
	if _, err := Load("./nowhere"); err == nil {
		t.Error("a package that isn't there was listed")
	}
}
