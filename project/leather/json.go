package leather

import (
	"encoding/json"
	"math"
)

// JSON is the placing for other programs: lengths in mm, areas in mm², angles in
// degrees counter-clockwise. Its keys are in the comment of the package.
func (l Laid) JSON() ([]byte, error) {
	type placed struct {
		Part    string       `json:"part"`
		Project string       `json:"project"`
		Kind    string       `json:"kind"`
		Copy    int          `json:"copy"`
		Leather string       `json:"leather"`
		X       float64      `json:"x"`
		Y       float64      `json:"y"`
		Angle   float64      `json:"angle"`
		Turned  bool         `json:"grain_down"`
		Outline [][2]float64 `json:"outline"`
	}
	type missing struct {
		Part      string `json:"part"`
		Project   string `json:"project"`
		Count     int    `json:"count"`
		Thickness bool   `json:"no_thickness"`
	}
	type used struct {
		Leather string  `json:"leather"`
		Width   float64 `json:"width"`
		Height  float64 `json:"height"`
		Parts   float64 `json:"parts"`
		Area    float64 `json:"leather_area"`
		Yield   float64 `json:"yield"`
	}
	out := struct {
		Fits       bool      `json:"fits"`
		Yield      float64   `json:"yield"`
		Rectangle  float64   `json:"rectangle"`
		Gap        float64   `json:"gap"`
		Stopped    bool      `json:"stopped"`
		Placements []placed  `json:"placements"`
		Missing    []missing `json:"missing"`
		Pieces     []used    `json:"pieces"`
	}{l.Result.Fits(), l.Result.Yield(), l.Result.Rectangle(), l.Task.Gap, l.Result.Stopped, []placed{}, []missing{}, []used{}}
	for _, p := range l.Result.Placements {
		part := l.Task.Parts[p.Part]
		o := placed{Part: part.Name, Project: l.Whose[p.Part], Kind: part.Kind.String(), Copy: p.Copy + 1, Leather: l.Task.Pieces[p.Piece].Name,
			X: p.At.X, Y: p.At.Y, Angle: p.Angle * 180 / math.Pi, Turned: p.Turned}
		for _, v := range p.Put(part.Outline) {
			o.Outline = append(o.Outline, [2]float64{round(v.X), round(v.Y)})
		}
		out.Placements = append(out.Placements, o)
	}
	for _, m := range l.Result.Missing {
		out.Missing = append(out.Missing, missing{l.Task.Parts[m.Part].Name, l.Whose[m.Part], m.Count, m.Thickness})
	}
	for _, u := range l.Result.Uses {
		out.Pieces = append(out.Pieces, used{l.Task.Pieces[u.Piece].Name, u.Hi.X - u.Lo.X, u.Hi.Y - u.Lo.Y, u.Parts, u.Leather, u.Yield()})
	}
	data, err := json.MarshalIndent(out, "", "  ")
	return append(data, '\n'), err
}

// round is a figure to a thousandth of a millimetre.
func round(v float64) float64 { return math.Round(v*1000) / 1000 }
