package term

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"time"
)

const (
	patience   = time.Minute // for the user's own command
	afterwards = time.Second // for what it left running to let go of its output
)

// Call runs the user's own command for what is due: words, without a shell, the text in
// the environment as CHAPE_DUE. The error is one line that ends with the first the
// command wrote to its standard error.
func Call(words []string, due string) error { return call(words, due, patience) }

func call(words []string, due string, most time.Duration) error {
	ctx, stop := context.WithTimeout(context.Background(), most)
	defer stop()
	var heard firstLine
	c := exec.CommandContext(ctx, words[0], words[1:]...)
	c.Env = append(os.Environ(), "CHAPE_DUE="+due)
	c.Stderr, c.WaitDelay = &heard, afterwards
	err := c.Run()
	switch {
	case err == nil || errors.Is(err, exec.ErrWaitDelay):
		return nil
	case ctx.Err() != nil:
		err = fmt.Errorf("stopped after %v: let it end sooner", most)
	case errors.Is(err, exec.ErrNotFound):
		err = errors.New("there is no such command: give its full path")
	}
	if line := heard.text(); line != "" {
		return fmt.Errorf("on_due %q: %w: %s", words[0], err, line)
	}
	return fmt.Errorf("on_due %q: %w", words[0], err)
}

// firstLine keeps the beginning of what is written to it.
type firstLine struct{ kept []byte }

func (f *firstLine) Write(p []byte) (int, error) {
	const most = 1000
	f.kept = append(f.kept, p[:min(len(p), most-len(f.kept))]...)
	return len(p), nil
}

// text is the first line that says something.
func (f *firstLine) text() string {
	line, _, _ := bytes.Cut(bytes.TrimSpace(f.kept), []byte("\n"))
	return Short(string(bytes.TrimSpace(line)), noticeMost)
}
