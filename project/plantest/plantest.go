// Package plantest plans projects for tests.
package plantest

import (
	"testing"

	"chape/calc"
	"chape/project"
)

// Of is the plan of a project by the limits of always; one that cannot be planned ends the
// test.
func Of(t testing.TB, p project.Project) *calc.Plan {
	t.Helper()
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	return plan
}
