// Package store keeps the bytes of one file safe, whatever is in them.
//
// # What can happen, what you keep
//
//   - The program or the machine dies while saving: the file holds the whole
//     old or the whole new version, and every version that Save has called
//     saved is there (TestCrashAtEachCall).
//   - A save fails, at whichever of its calls: the file holds the whole old or
//     the whole new version; the error says in one line why and what would do;
//     the next save works and leaves no litter (TestEachCallFails,
//     TestFullDisk, TestFolderSyncFails, TestReadOnlyFolder,
//     TestLostAnswer).
//   - The version before the last save: one backup beside the file, see
//     BackupName (TestSaveKeepsBackup).
//   - Another program changed the file since it was read: nothing is written
//     to it, ErrChanged (TestSaveChanged).
//   - Another program changes the file in the middle of a save, by replacing
//     it or by writing into it: what it wrote is put back, ErrChanged; if a
//     third version came in, that gets a name of its own, "NAME (found …)"
//     (TestOtherWriterAtEachCall, TestTwoOtherWrites, TestTwoWriters).
//   - A killed save left hidden files: the next save of the file settles them,
//     those of another process after a day; what only they hold gets a name
//     people see; files that are not of this package stay (TestLeftovers,
//     TestNotOurs).
//   - A new name is taken: it is left alone, ErrExists (TestSaveNewTaken).
//   - Something else than a file is there, such as a folder, a pipe or a
//     device, or a file of over 1 MiB: refused at once (TestReadRefuses).
//   - Permissions and links: the mode of a file is kept, new files are 0600, a
//     symbolic link is followed and stays one, a read-only file is left alone
//     (TestSaveKeepsMode, TestSaveThroughLink, TestSaveReadOnly).
//
// # How
//
// A save writes a hidden new file in the folder of the file, syncs it, and
// exchanges the two names in one step (Linux, macOS). What was in the file
// then has a name of its own, is compared with what the caller had seen, and
// only then becomes the backup; if it is anything else, the two are exchanged
// back. So nothing depends on a look before the save, nor on locks.
//
// Where names can't be exchanged (Windows, some network and memory-card file
// systems) the old version first gets a second name, or a copy, is compared,
// and then the new one is renamed over it. The file is never missing. One
// thing can be lost there: a version that another program renames into place
// in the few microseconds between the last look and the rename
// (TestOtherWriterWithoutSwap shows that this is the only one; where a file
// can't have a second name either, what is written into it then is lost too).
// A program that opened the file before a save and writes into it after the
// save has ended writes into the backup.
//
// Locks only warn (TakeLock) and keep two saves of this program from meeting
// (TestTwoWriters shows that they need not). They are files in the user's
// cache folder, named by a hash: it is local where the shelf may not be, and
// nothing litters the shelf or is carried about by a sync program. Two
// machines on a share do not see each other's locks.
//
// On Windows a file that another program holds is waited for, for 2 s
// (TestBusy): do not call Save where that would freeze a screen. Owners other
// than the user, access lists and further hard links of a file are not kept.
package store
