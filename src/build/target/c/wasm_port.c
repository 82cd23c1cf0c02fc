/*
 * Port of the self-test for WebAssembly: the host gives the vectors as text, one character at a
 * time, and takes the log the same way.
 */
#include "board.h"

__attribute__((import_module("host"), import_name("put"))) void host_put(int character);
__attribute__((import_module("host"), import_name("get"))) int host_get(void);

void port_put(char character) { host_put(character); }

char port_get(void) { return (char)host_get(); }

void port_alive(void) {}

__attribute__((export_name("run"))) void run(void) { selftest_serial(); }
