// http_writer.h: a reply as the bytes that go out. Only http_*.cc use it.
#pragma once

#include <string>

#include "server/http.h"

namespace flatwise::server {

/// Puts status line and header lines of a reply with a body of `length` into `out`, in place of what was there.
void write_head(std::string& out, const Reply& reply, std::size_t length, bool close);

}  // namespace flatwise::server
