package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets the test binary be chape when it is called by that name: the
// scripts and the terminal tests run the real thing.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"chape": main})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			here, err := os.Getwd()
			e.Setenv("REPO", here)
			e.Setenv("HOME", e.WorkDir)
			e.Setenv("XDG_CACHE_HOME", e.WorkDir+"/cache")
			return err
		},
	})
}
