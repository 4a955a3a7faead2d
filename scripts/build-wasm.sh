#!/usr/bin/env bash
# Builds core, words, job and wire as a WebAssembly module: build/wasm/flatwise.wasm. No exceptions, no threads, no
# files: what does not compile here does not belong in the core.
set -euo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.."
. scripts/lib.sh
out=$build_folder/wasm
mkdir -p "$out/include" "$out/objects"

# By links, so that the system's own C headers stay out of sight.
for headers in eigen3/Eigen boost tl nlohmann; do
  ln -sfn "/usr/include/$headers" "$out/include/$(basename "$headers")"
done

flags=(--target=wasm32-wasi -stdlib=libc++ -std=c++20 -O2 -fno-exceptions -Wall -Wextra
  -I. "-I$build_folder/release" -isystem wasm/without_threads -isystem "$out/include"
  -DJSON_NOEXCEPTION -DEIGEN_NO_CPUID
  -DBOOST_DISABLE_THREADS -DBOOST_NO_EXCEPTIONS -DBOOST_EXCEPTION_DISABLE -DBOOST_MATH_NO_EXCEPTIONS)

# The dictionary and whatever else is made while building natively lies in build/release under the same folders.
mapfile -t sources < <(
  find core words job wire wasm "$build_folder"/release/{core,words,job,wire} -name '*.cc' \
    ! -name '*_test.cc' ! -path '*/CMakeFiles/*' -print0 2>/dev/null | xargs -0 grep -L '^int main(' | sort
)
compile() {
  local object=$out/objects/${1//\//-}.o
  ccache clang++-19 "${flags[@]}" -c "$1" -o "$object"
}
objects=()
running=0
broken=0
for i in "${!sources[@]}"; do
  echo "[$((i + 1))/${#sources[@]}] ${sources[i]}"
  compile "${sources[i]}" &
  objects+=("$out/objects/${sources[i]//\//-}.o")
  running=$((running + 1))
  if [ "$running" -ge "$jobs" ]; then
    wait -n || broken=1
    running=$((running - 1))
  fi
done
while [ "$running" -gt 0 ]; do
  wait -n || broken=1
  running=$((running - 1))
done
[ "$broken" = 0 ] || { echo "error: some files did not compile"; exit 1; }

# The default stack of 64 KiB is too small for Eigen.
clang++-19 --target=wasm32-wasi -stdlib=libc++ -mexec-model=reactor -fno-exceptions "${objects[@]}" \
  -Wl,--gc-sections -Wl,--strip-all -Wl,-z,stack-size=1048576 -o "$out/flatwise.wasm.part"
mv "$out/flatwise.wasm.part" "$out/flatwise.wasm"
echo "flatwise.wasm: $(stat -c %s "$out/flatwise.wasm") bytes, $(gzip -9 -c "$out/flatwise.wasm" | wc -c) compressed"
