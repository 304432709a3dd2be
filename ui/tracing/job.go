package tracing

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/trace"
	"chape/project/picture"
	"chape/ui/act"
)

// Reader reads the picture in a file; it gives up with ctx's error.
type Reader func(ctx context.Context, path string, o trace.Options) (trace.Reading, error)

// Read is the Reader of every day. The error is one line that says what would do; it does not
// name the file.
func Read(ctx context.Context, path string, o trace.Options) (trace.Reading, error) {
	p, err := picture.Read(ctx, path)
	if err != nil {
		if text, ok := strings.CutPrefix(err.Error(), fmt.Sprintf("%.200q: ", path)); ok {
			err = errors.New(text)
		}
		return trace.Reading{}, err
	}
	return trace.Read(ctx, p, o)
}

// job is a picture being read.
type job struct {
	path  string
	stage string
	nth   int // of the stages, from 1; 0: the file is being opened
	stop  context.CancelFunc
}

// What the commands of a Picker bring.
type (
	stageMsg struct {
		job   *job
		stage trace.Stage
		more  <-chan trace.Stage
	}
	readMsg struct {
		job     *job
		reading trace.Reading
		err     error
	}
	namesMsg struct {
		of           *Picker
		text, longer string
		names        []string
	}
	newestMsg struct {
		of   *Picker
		path string
	}
)

const stages = 4

// start gives the commands that read a picture and tell how far it is.
func start(text string, read Reader, o trace.Options) (*job, []act.Msg) {
	ctx, stop := context.WithCancel(context.Background())
	j := &job{path: Path(text), stage: "opening the picture", stop: stop}
	news := make(chan trace.Stage, stages)
	o.Progress = func(s trace.Stage) {
		select {
		case news <- s:
		default: // nobody has looked since: the next will do
		}
	}
	path := j.path
	work := func() tea.Msg {
		defer close(news)
		defer stop()
		if _, err := os.Lstat(path); err != nil {
			if _, err := os.Lstat(text); err == nil {
				path = text // a name with backslashes of its own
			}
		}
		r, err := read(ctx, path, o)
		return readMsg{j, r, err}
	}
	return j, []act.Msg{act.Do(work), act.Do(j.listen(news))}
}

// listen waits for the next stage.
func (j *job) listen(news <-chan trace.Stage) tea.Cmd {
	return func() tea.Msg {
		if s, ok := <-news; ok {
			return stageMsg{j, s, news}
		}
		return nil
	}
}

// name is the picture's, without its folder.
func (j *job) name() string { return filepath.Base(j.path) }
