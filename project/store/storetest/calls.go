package storetest

import (
	"errors"
	"io/fs"

	"chape/project/store"
)

var _ store.FS = (*Disk)(nil)

func (d *Disk) Open(name string) (store.File, error) {
	return d.file("open", name, func() (store.File, error) { return d.Under.Open(name) })
}

func (d *Disk) Create(name string, perm fs.FileMode) (store.File, error) {
	return d.file("create", name, func() (store.File, error) { return d.Under.Create(name, perm) })
}

func (d *Disk) file(call, name string, open func() (store.File, error)) (store.File, error) {
	if err := d.step(call, name); err != nil {
		return nil, err
	}
	f, err := open()
	if err != nil {
		return nil, err
	}
	return &file{File: f, disk: d, name: name}, nil
}

func (d *Disk) CanWrite(name string) error {
	return d.do(d.step("canwrite", name), func() error { return d.Under.CanWrite(name) })
}

func (d *Disk) Stat(name string) (info fs.FileInfo, err error) {
	err = d.do(d.step("stat", name), func() error { info, err = d.Under.Stat(name); return err })
	return info, err
}

func (d *Disk) Lstat(name string) (info fs.FileInfo, err error) {
	err = d.do(d.step("lstat", name), func() error { info, err = d.Under.Lstat(name); return err })
	return info, err
}

func (d *Disk) Resolve(name string) (path string, err error) {
	err = d.do(d.step("resolve", name), func() error { path, err = d.Under.Resolve(name); return err })
	return path, err
}

func (d *Disk) Names(dir string) (names []string, err error) {
	err = d.do(d.step("names", dir), func() error { names, err = d.Under.Names(dir); return err })
	return names, err
}

func (d *Disk) Rename(from, to string) error {
	return d.do(d.step("rename", from, to), func() error { return d.Under.Rename(from, to) })
}

func (d *Disk) RenameNew(from, to string) error {
	return d.offered("renamenew", d.NoRenameNew, from, to, d.Under.RenameNew)
}

func (d *Disk) Swap(a, b string) error {
	return d.offered("swap", d.NoSwap, a, b, d.Under.Swap)
}

func (d *Disk) Link(from, to string) error {
	return d.offered("link", d.NoLink, from, to, d.Under.Link)
}

func (d *Disk) Remove(name string) error {
	return d.do(d.step("remove", name), func() error { return d.Under.Remove(name) })
}

func (d *Disk) SyncDir(dir string) error {
	return d.do(d.step("syncdir", dir), func() error { return d.Under.SyncDir(dir) })
}

func (d *Disk) TryLock(name, purpose string) (func(), bool, error) {
	if d.NoLocks {
		return nil, false, errors.ErrUnsupported
	}
	if err := d.step("trylock", name); err != nil {
		return nil, false, err
	}
	return d.Under.TryLock(name, purpose)
}

func (d *Disk) do(err error, call func() error) error {
	if err != nil {
		return err
	}
	return call()
}

func (d *Disk) offered(name string, missing bool, a, b string, call func(a, b string) error) error {
	if err := d.step(name, a, b); err != nil {
		return err
	}
	if missing {
		return errors.ErrUnsupported
	}
	return call(a, b)
}

// file is an open file of a Disk.
type file struct {
	store.File
	disk *Disk
	name string
}

func (f *file) Read(p []byte) (int, error) {
	if err := f.disk.step("read", f.name); err != nil {
		return 0, err
	}
	return f.File.Read(p)
}

// Write writes half when it fails: the worst a system does.
func (f *file) Write(p []byte) (int, error) {
	if f.disk.Crashed() {
		return 0, ErrCrashed
	}
	if err := f.disk.step("write", f.name); err != nil {
		n, _ := f.File.Write(p[:len(p)/2])
		return n, err
	}
	fits, full := f.disk.take(len(p))
	n, err := f.File.Write(p[:fits])
	if err == nil {
		err = full
	}
	return n, err
}

func (f *file) Chmod(mode fs.FileMode) error {
	return f.disk.do(f.disk.step("chmod", f.name), func() error { return f.File.Chmod(mode) })
}

func (f *file) Stat() (info fs.FileInfo, err error) {
	err = f.disk.do(f.disk.step("fstat", f.name), func() error { info, err = f.File.Stat(); return err })
	return info, err
}

func (f *file) Sync() error { return f.disk.do(f.disk.step("sync", f.name), f.File.Sync) }

// Close always lets go of the file below; its error is still the fault.
func (f *file) Close() error {
	err := f.disk.step("close", f.name)
	if closeErr := f.File.Close(); err == nil {
		err = closeErr
	}
	return err
}
