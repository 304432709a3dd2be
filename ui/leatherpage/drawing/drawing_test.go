package drawing

import (
	"testing"

	"chape/calc/nest"
	"chape/project/leather"
)

// Two bodies on one hide are told apart by their projects, in as much room as there is.
func TestNamesTellWhoseAPartIs(t *testing.T) {
	l := &leather.Laid{Task: nest.Task{Parts: []nest.Part{{Name: "body"}, {Name: "body"}}}, Whose: []string{"Boning knife", "Field knife"}}
	for _, c := range []struct {
		part, w int
		want    string
	}{
		{0, 30, "Boning knife: body"}, {0, 18, "Boning knife: body"}, {0, 14, "Boning …: body"}, {1, 14, "Field k…: body"},
		{0, 10, "Bon…: body"}, {0, 9, "body"}, {0, 4, "body"}, {0, 3, ""}, {0, -2, ""},
	} {
		if got := called(l, c.part, c.w); got != c.want {
			t.Errorf("part %d on %d cells is %q, want %q", c.part, c.w, got, c.want)
		}
	}
	l.Whose[1] = l.Whose[0]
	if got := called(l, 0, 8); got != "body" {
		t.Errorf("of one project: %q", got)
	}
}
