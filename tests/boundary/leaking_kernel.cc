// What a kernel file must not do, for kernels_test.cc: an inline function that stays a function.
namespace flatwise::boundary {

__attribute__((noinline)) inline double shared_with_others(double x) { return x * x + 1; }
double leaking(double x) { return shared_with_others(x); }

}  // namespace flatwise::boundary
