// faulty_files.h: SQLite's file layer with one call in so many that fails: opening, writing, cutting short, bringing to the
// disk, deleting. Registered under the name "faulty"; passes everything on while nothing is armed.
#pragma once

namespace flatwise::fault {

struct Faults {
  int fail_at = 0;      ///< The call with this number fails, counted from 1; 0: none.
  int code = 0;         ///< What it fails with; an SQLite result code.
  int seen = 0;         ///< Calls counted since it was armed.
  bool failed = false;  ///< It came to it.
};
/// The one set of counters; a test arms it by writing to it.
[[nodiscard]] Faults& faults();
/// Makes the file layer known to SQLite. Its name.
[[nodiscard]] const char* faulty_files();

}  // namespace flatwise::fault
