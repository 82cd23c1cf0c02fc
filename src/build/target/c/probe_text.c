#include "probe_text.h"

#include "board.h"

void put_text(const char *text) {
  while (*text != '\0') port_put(*text++);
}

static void put_number(uint32_t value) {
  char digits[10];
  uint8_t count = 0;
  do {
    digits[count++] = (char)('0' + value % 10u);
    value /= 10u;
  } while (value != 0);
  while (count > 0) port_put(digits[--count]);
}

void put_numbers(const char *name, uint32_t first, uint32_t second) {
  put_text(name);
  put_number(first);
  put_text(" ");
  put_number(second);
  put_text("\n");
}
