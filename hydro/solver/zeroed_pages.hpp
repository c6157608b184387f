// zeroed_pages.hpp: large tables of numbers that cost nothing where they are not used. Not installed.
#pragma once

#include <cstddef>
#include <cstdlib>
#include <limits>
#include <memory>
#include <new>
#include <utility>

namespace hydro {

/// An allocator for numbers. What comes from calloc() is 0, and the operating system gives large
/// pieces page by page when they are touched; to write zeros first would touch them all.
template <class T>
struct ZeroedPages {
  using value_type = T;

  ZeroedPages() = default;
  template <class U>
  explicit ZeroedPages(const ZeroedPages<U>&) {}

  T* allocate(std::size_t count) {
    constexpr std::size_t most = std::numeric_limits<std::ptrdiff_t>::max() / sizeof(T) - 2;
    void* whole = count < most ? std::calloc(count + 2, sizeof(T)) : nullptr;
    if (!whole) throw std::bad_alloc();
    // There is room before the first for where the piece begins.
    void* first = static_cast<char*>(whole) + sizeof(void*);
    std::size_t room = (count + 2) * sizeof(T) - sizeof(void*);
    std::align(alignof(T), count * sizeof(T), first, room);
    static_cast<void**>(first)[-1] = whole;
    return static_cast<T*>(first);
  }
  void deallocate(T* first, std::size_t) { std::free(reinterpret_cast<void**>(first)[-1]); }

  /// All is 0 already.
  template <class U>
  void construct(U*) {}
  template <class U, class... Arguments>
  void construct(U* where, Arguments&&... arguments) {
    std::construct_at(where, std::forward<Arguments>(arguments)...);
  }
  bool operator==(const ZeroedPages&) const { return true; }
};

}  // namespace hydro
