package file

import (
	"reflect"
	"testing"

	"chape/project"
)

func TestDefaultsSurviveTheFile(t *testing.T) {
	want := project.Defaults()
	if err := want.Validate(); err != nil {
		t.Fatalf("Defaults().Validate() = %v", err)
	}
	data := Encode(want)
	got, n, err := Decode("new.toml", data)
	if err != nil {
		t.Fatalf("Decode(Encode(project.Defaults())) = %v\n%s", err, data)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("Decode(Encode(p)) =\n%+v, want\n%+v", got, want)
	}
	if n != (Notices{}) {
		t.Errorf("Decode of our own file notices %+v, want nothing", n)
	}
}
