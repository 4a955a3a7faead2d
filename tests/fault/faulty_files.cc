#include "tests/fault/faulty_files.h"

#include <sqlite3.h>

#include <new>

namespace flatwise::fault {

Faults& faults() {
  static Faults all;
  return all;
}

namespace {
sqlite3_vfs* real_vfs() { return static_cast<sqlite3_vfs*>(sqlite3_vfs_find("unix")); }

/// 0, or what this call is to fail with.
int counted() {
  Faults& f = faults();
  if (++f.seen != f.fail_at) return SQLITE_OK;
  f.failed = true;
  return f.code;
}

struct File {
  sqlite3_file base;
  sqlite3_file* real;
};
sqlite3_file* real(sqlite3_file* file) { return reinterpret_cast<File*>(file)->real; }
const sqlite3_io_methods& calls(sqlite3_file* file) { return *real(file)->pMethods; }

int close(sqlite3_file* f) { return calls(f).xClose(real(f)); }
int read(sqlite3_file* f, void* to, int n, sqlite3_int64 at) { return calls(f).xRead(real(f), to, n, at); }
int write(sqlite3_file* f, const void* from, int n, sqlite3_int64 at) {
  if (const int code = counted()) {
    if (n > 1) calls(f).xWrite(real(f), from, n / 2, at);  // Half of it came through: a torn write.
    return code;
  }
  return calls(f).xWrite(real(f), from, n, at);
}
int truncate(sqlite3_file* f, sqlite3_int64 n) {
  const int code = counted();
  return code ? code : calls(f).xTruncate(real(f), n);
}
int sync(sqlite3_file* f, int flags) {
  const int code = counted();
  return code ? code : calls(f).xSync(real(f), flags);
}
int size(sqlite3_file* f, sqlite3_int64* n) { return calls(f).xFileSize(real(f), n); }
int lock(sqlite3_file* f, int level) { return calls(f).xLock(real(f), level); }
int unlock(sqlite3_file* f, int level) { return calls(f).xUnlock(real(f), level); }
int check_reserved(sqlite3_file* f, int* out) { return calls(f).xCheckReservedLock(real(f), out); }
int control(sqlite3_file* f, int op, void* arg) { return calls(f).xFileControl(real(f), op, arg); }
int sector(sqlite3_file* f) { return calls(f).xSectorSize(real(f)); }
int device(sqlite3_file* f) { return calls(f).xDeviceCharacteristics(real(f)); }
int shm_map(sqlite3_file* f, int page, int n, int extend, void volatile** to) {
  return calls(f).xShmMap(real(f), page, n, extend, to);
}
int shm_lock(sqlite3_file* f, int at, int n, int flags) { return calls(f).xShmLock(real(f), at, n, flags); }
void shm_barrier(sqlite3_file* f) { calls(f).xShmBarrier(real(f)); }
int shm_unmap(sqlite3_file* f, int remove) { return calls(f).xShmUnmap(real(f), remove); }

const sqlite3_io_methods kCalls{2,        close,       read,           write,   truncate, sync,   size,
                                lock,     unlock,      check_reserved, control, sector,   device, shm_map,
                                shm_lock, shm_barrier, shm_unmap,      nullptr, nullptr};

int open(sqlite3_vfs* /*vfs*/, const char* name, sqlite3_file* to, int flags, int* out) {
  to->pMethods = nullptr;
  if (const int code = counted()) return code == SQLITE_FULL ? SQLITE_CANTOPEN : code;
  File* file = reinterpret_cast<File*>(to);
  file->real = reinterpret_cast<sqlite3_file*>(file + 1);
  file->real->pMethods = nullptr;
  const int code = real_vfs()->xOpen(real_vfs(), name, file->real, flags, out);
  if (file->real->pMethods) to->pMethods = &kCalls;
  return code;
}
int remove(sqlite3_vfs* /*vfs*/, const char* name, int sync_folder) {
  const int code = counted();
  return code ? code : real_vfs()->xDelete(real_vfs(), name, sync_folder);
}
}  // namespace

const char* faulty_files() {
  static sqlite3_vfs vfs = [] {
    sqlite3_initialize();
    sqlite3_vfs own = *real_vfs();
    own.szOsFile = static_cast<int>(sizeof(File)) + real_vfs()->szOsFile;
    own.zName = "faulty";
    own.pNext = nullptr;
    own.xOpen = open;
    own.xDelete = remove;
    return own;
  }();
  static const int registered = sqlite3_vfs_register(&vfs, 0);
  return registered == SQLITE_OK ? vfs.zName : nullptr;
}

}  // namespace flatwise::fault
