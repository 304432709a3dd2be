package endtoend

import "golang.org/x/sys/unix"

// smallDisk puts a disk of 64 KiB in memory over a folder.
func smallDisk(dir string) error {
	return unix.Mount("none", dir, "tmpfs", 0, "size=64k")
}

func unmount(dir string) { unix.Unmount(dir, unix.MNT_DETACH) }
