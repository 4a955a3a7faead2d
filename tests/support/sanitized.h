// sanitized.h: whether this program carries inspectors, which make it ten times as slow.
#pragma once

namespace flatwise::tests {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool kSanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
inline constexpr bool kSanitized = true;
#else
inline constexpr bool kSanitized = false;
#endif
#else
inline constexpr bool kSanitized = false;
#endif

/// A table that the release build walks whole is walked in strides where an inspector looks at every byte.
inline constexpr int kStride = kSanitized ? 4 : 1;

}  // namespace flatwise::tests
