#pragma once

#include <unistd.h>

namespace stillground {

/// An open file that closes itself; a negative number is one that could not be opened.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;

  int number() const { return number_; }
  bool open() const { return number_ >= 0; }

 private:
  int number_;
};

}  // namespace stillground
