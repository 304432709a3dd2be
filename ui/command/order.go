package command

import (
	"path/filepath"
	"strings"

	"chape/project/file"
	"chape/project/print"
	"chape/project/print/folder"
	"chape/project/print/order"
	"chape/project/store"
	"chape/ui/command/call"
	"chape/ui/command/settings"
)

// printOrder prints the quote of a project that counts, for the customer.
func printOrder(w call.World, set settings.Chosen, path, dir string, o print.Options, force bool) error {
	word := path
	path, err := locate(set, word)
	if err != nil {
		return err
	}
	data, _, err := store.Read(store.OS(), path)
	if err != nil {
		return call.Missing(path, err)
	}
	p, _, err := file.Decode(path, data)
	if err != nil {
		return err
	}
	if dir == "" {
		dir = sheetsFolder(set, word, path)
	}
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	f, err := order.File(p, p.Standing(), base, order.Options{Paper: o.Paper, Correction: o.Correction, Maker: o.Maker})
	if err != nil {
		return err
	}
	return writeSheets(w, dir, []folder.File{f}, force)
}
