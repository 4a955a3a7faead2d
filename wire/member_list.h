// member_list.h: the members of a JSON object in the order they were put in. The JSON library's own ordered map holds its keys as
// const, so that each time one grows everything below it is copied; this one moves it.
#pragma once

#include <concepts>
#include <functional>
#include <iterator>
#include <stdexcept>
#include <string_view>
#include <utility>
#include <vector>

#include "core/units/problem.h"

namespace flatwise::wire {

/// What nlohmann::basic_json asks of the type of its objects. Found by looking at each: objects here have a handful of members.
template <class Key, class T, class /*Less*/, class /*Allocator*/>
struct MemberList : std::vector<std::pair<Key, T>> {
  using key_type = Key;
  using mapped_type = T;
  using key_compare = std::equal_to<>;
  using Container = std::vector<std::pair<Key, T>>;
  using iterator = typename Container::iterator;
  using const_iterator = typename Container::const_iterator;
  using size_type = typename Container::size_type;
  using value_type = typename Container::value_type;

  MemberList() noexcept = default;
  template <class It>
  MemberList(It first, It last) {
    insert(first, last);
  }

  template <class K>
  std::pair<iterator, bool> emplace(K&& key, T&& value) {
    if (const iterator it = find(key); it != this->end()) return {it, false};
    if (this->empty()) this->reserve(kUsual);
    Container::emplace_back(Key(std::forward<K>(key)), std::move(value));
    return {std::prev(this->end()), true};
  }
  std::pair<iterator, bool> insert(const value_type& member) { return emplace(member.first, T(member.second)); }
  std::pair<iterator, bool> insert(value_type&& member) {
    return emplace(std::move(member.first), std::move(member.second));
  }
  template <class It>
  void insert(It first, It last) {
    for (; first != last; ++first) emplace(first->first, T(first->second));
  }

  template <class K>
  T& operator[](K&& key) {
    return emplace(std::forward<K>(key), T{}).first->second;
  }
  template <class K>
  const T& operator[](const K& key) const {
    return at(key);
  }
  template <class K>
  T& at(const K& key) {
    const iterator it = find(key);
    if (it == this->end()) no_such_key();
    return it->second;
  }
  template <class K>
  const T& at(const K& key) const {
    const const_iterator it = find(key);
    if (it == this->end()) no_such_key();
    return it->second;
  }

  template <class K>
  iterator find(const K& key) {
    iterator it = this->begin();
    while (it != this->end() && std::string_view{it->first} != std::string_view{key}) ++it;
    return it;
  }
  template <class K>
  const_iterator find(const K& key) const {
    const_iterator it = this->begin();
    while (it != this->end() && std::string_view{it->first} != std::string_view{key}) ++it;
    return it;
  }
  template <class K>
  size_type count(const K& key) const {
    return find(key) == this->end() ? 0 : 1;
  }

  using Container::erase;
  template <class K>
    requires std::convertible_to<const K&, std::string_view>
  size_type erase(const K& key) {
    const iterator it = find(key);
    if (it == this->end()) return 0;
    Container::erase(it);
    return 1;
  }

 private:
  static constexpr size_type kUsual = 8;

  /// The JSON library turns it into its own error; where there are no exceptions it is a bug of ours.
  [[noreturn]] static void no_such_key() {
#if defined(__cpp_exceptions)
    throw std::out_of_range("key not found");
#else
    core_check_failed("the object has the key", __FILE__, __LINE__);
#endif
  }
};

}  // namespace flatwise::wire
