#include "engine/program/signals.hpp"

#include <csignal>

namespace stillground::program {

namespace {

std::atomic<bool> stop_asked{false};
static_assert(std::atomic<bool>::is_always_lock_free, "a signal handler may only touch lock-free atomics");

extern "C" void on_signal(int number) {
  stop_asked.store(true, std::memory_order_relaxed);
  // The default action is back for the next one: a second Ctrl-C kills.
  if (number == SIGINT) std::signal(SIGINT, SIG_DFL);
}

void listen(int number) {
  struct sigaction action {};
  action.sa_handler = on_signal;
  sigemptyset(&action.sa_mask);
  action.sa_flags = SA_RESTART;  // a write to disk goes on as if nothing had happened
  sigaction(number, &action, nullptr);
}

bool is_ignored(int number) {
  struct sigaction action {};
  sigaction(number, nullptr, &action);
  return action.sa_handler == SIG_IGN;
}

}  // namespace

const std::atomic<bool>& stop_on_signals() {
  // A shell script starts `stillground run &` with SIGINT ignored; a run that can save answers it all the same.
  listen(SIGINT);
  listen(SIGTERM);
  if (!is_ignored(SIGHUP)) listen(SIGHUP);
  return stop_asked;
}

}  // namespace stillground::program
