// Package picture reads a photograph from a file into samples: a JPEG or a PNG of 1 to 64
// megapixels. What is larger, or no such picture, is refused before it is decoded. Which way up the
// picture lies does not matter.
package picture

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"io"
	"io/fs"
	"os"

	_ "image/jpeg" // the two formats that are read
	_ "image/png"

	"chape/calc/trace"
)

// What a picture may measure.
const (
	leastDots = 1e6
	mostDots  = 64e6
	mostSide  = 1 << 15
	mostBytes = 256 << 20
)

// Read reads a picture's file. The error is one line that names the file and says what would do, or
// ctx's error.
func Read(ctx context.Context, path string) (*trace.Picture, error) {
	p, err := read(ctx, path)
	if err != nil && ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, fmt.Errorf("%.200q: %w", path, err)
	}
	return p, nil
}

func read(ctx context.Context, path string) (*trace.Picture, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("there is no such picture: look at its name and folder")
	case err != nil:
		return nil, bare(err)
	case info.IsDir():
		return nil, errors.New("that is a folder: name a picture in it")
	case !info.Mode().IsRegular():
		return nil, errors.New("that is no file: name a JPEG or PNG picture")
	case info.Size() > mostBytes:
		return nil, fmt.Errorf("the file has over %d MB: export the picture as a JPEG of up to 64 megapixels", mostBytes>>20)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, bare(err)
	}
	defer f.Close()
	return Decode(ctx, f)
}

// bare takes the call and the path off a system error.
func bare(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return fmt.Errorf("it can't be read: %w", err)
}

// Decode reads a picture from a stream: its head first, and the rest only where the head will do.
func Decode(ctx context.Context, r io.Reader) (*trace.Picture, error) {
	const head = 64
	b := bufio.NewReaderSize(&watched{ctx, r}, 1<<16)
	begin, err := b.Peek(head)
	if len(begin) == 0 && err != nil && !errors.Is(err, io.EOF) {
		return nil, bare(err)
	}
	if err := known(begin); err != nil {
		return nil, err
	}
	var seen bytes.Buffer // what the head's reading took
	cfg, _, err := image.DecodeConfig(io.TeeReader(b, &seen))
	if err != nil {
		return nil, broken(err)
	}
	if err := bearable(cfg); err != nil {
		return nil, err
	}
	m, _, err := image.Decode(io.MultiReader(&seen, b))
	if err != nil {
		return nil, broken(err)
	}
	return samples(ctx, m)
}

// bearable refuses a picture by its size.
func bearable(cfg image.Config) error {
	dots := float64(cfg.Width) * float64(cfg.Height)
	switch {
	case dots < leastDots:
		return fmt.Errorf("the picture is too small, %d × %d dots: take it with 1 megapixel or more, 8 to 12 are best", cfg.Width, cfg.Height)
	case dots > mostDots || cfg.Width > mostSide || cfg.Height > mostSide:
		return fmt.Errorf("the picture is too large, %d × %d dots: export it with up to 64 megapixels, 12 do", cfg.Width, cfg.Height)
	}
	return nil
}

func broken(err error) error {
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return errors.New("the picture's file is damaged or cut short: copy it from the camera again, or export it as JPEG")
}

// known tells by its first bytes what a file is.
func known(b []byte) error {
	has := func(s string) bool { return bytes.HasPrefix(b, []byte(s)) }
	switch {
	case has("\xff\xd8\xff"), has("\x89PNG\r\n\x1a\n"):
		return nil
	case len(b) == 0:
		return errors.New("the file is empty: copy the picture from the camera again")
	case len(b) > 12 && string(b[4:8]) == "ftyp":
		switch string(b[8:12]) {
		case "heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "heif":
			return errors.New("that is an HEIC picture: export it as JPEG, or set the telephone's camera to take JPEG")
		case "avif", "avis":
			return errors.New("that is an AVIF picture: export it as JPEG")
		}
		return errors.New("that is a film, or a picture of a kind that can't be read: export a picture as JPEG")
	case has("RIFF"), has("GIF8"), has("II*\x00"), has("MM\x00*"), has("BM"):
		return errors.New("that is a picture of a kind that can't be read: export it as JPEG")
	case has("%PDF"):
		return errors.New("that is a PDF, not a picture: photograph the sheet, or export it as JPEG")
	}
	return errors.New("that is not a picture: give a JPEG or PNG photograph of the tracing sheet")
}

// watched gives up reading when nobody waits any more.
type watched struct {
	ctx context.Context
	r   io.Reader
}

func (w *watched) Read(p []byte) (int, error) {
	if err := w.ctx.Err(); err != nil {
		return 0, err
	}
	return w.r.Read(p)
}
