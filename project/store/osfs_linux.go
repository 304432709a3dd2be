package store

import (
	"os"
	"slices"

	"golang.org/x/sys/unix"
)

func renameFlag(from, to string, flag uint) error {
	err := notOffered(unix.Renameat2(unix.AT_FDCWD, from, unix.AT_FDCWD, to, flag))
	if err != nil {
		return &os.LinkError{Op: "renameat2", Old: from, New: to, Err: err}
	}
	return nil
}

func swap(a, b string) error          { return renameFlag(a, b, unix.RENAME_EXCHANGE) }
func renameNew(from, to string) error { return renameFlag(from, to, unix.RENAME_NOREPLACE) }

// systems are file systems whose files are the kernel's answers: to read one may wait
// for ever, do something, or never end, though it calls itself a plain file.
var systems = []int64{
	unix.PROC_SUPER_MAGIC, unix.SYSFS_MAGIC, unix.DEBUGFS_MAGIC, unix.TRACEFS_MAGIC, unix.SECURITYFS_MAGIC,
	unix.CGROUP_SUPER_MAGIC, unix.CGROUP2_SUPER_MAGIC, unix.BPF_FS_MAGIC, unix.SELINUX_MAGIC, unix.EFIVARFS_MAGIC, unix.PSTOREFS_MAGIC,
}

// madeUp tells whether a file is on no disk, without opening it.
func madeUp(name string) bool {
	var s unix.Statfs_t
	return unix.Statfs(name, &s) == nil && slices.Contains(systems, int64(s.Type))
}
