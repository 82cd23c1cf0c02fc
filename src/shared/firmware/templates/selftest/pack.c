/*
 * Packs vectors for a board's flash (packed.h).
 *   pack-vectors vectors/NN-name.in ... > packed_vectors.c
 * Name fewer of them for a part with little flash; 8-bit AVR holds 32,767 bytes at most.
 * Exit status: 0, or 2 when a file cannot be read.
 */
#include <stdio.h>
#include <string.h>

#include "packed.h"

#define LINE 256

static unsigned long packed_bytes;

static void put_byte(unsigned value) {
  printf("%u,%s", value, ++packed_bytes % 24 == 0 ? "\n" : "");
}

static void put_text(const char *text, size_t length) {
  for (size_t i = 0; i < length; i++) put_byte((unsigned char)text[i]);
  put_byte(0);
}

static void put_difference(int value) {
  unsigned code = value < 0 ? 2u * (unsigned)(-(value + 1)) + 1u : 2u * (unsigned)value;
  while (code >= 128u) {
    put_byte((code & 127u) | 128u);
    code >>= 7;
  }
  put_byte(code);
}

static void put_again(int *count) {
  if (*count > 0) {
    put_byte(PACKED_AGAIN);
    put_byte((unsigned)*count);
  }
  *count = 0;
}

static void pack_lines(FILE *input) {
  int before[MVW_AXES] = {0};
  int first = 1;
  int again = 0;
  char line[LINE];
  while (fgets(line, sizeof line, input) != NULL) {
    int now[MVW_AXES];
    size_t length = strcspn(line, "\r\n");
    if (length == 0 || line[0] == '#') continue;
    if (sscanf(line, "%d %d %d %d %d %d", &now[0], &now[1], &now[2], &now[3], &now[4], &now[5]) !=
        MVW_AXES) {
      put_again(&again);
      put_byte(PACKED_LINE);
      put_text(line, length);
      continue;
    }
    if (!first && memcmp(now, before, sizeof now) == 0) {
      if (++again == 255) put_again(&again);
      continue;
    }
    put_again(&again);
    put_byte(PACKED_SAMPLE);
    for (int axis = 0; axis < MVW_AXES; axis++) put_difference(now[axis] - before[axis]);
    memcpy(before, now, sizeof now);
    first = 0;
  }
  put_again(&again);
}

int main(int count, char **paths) {
  printf("/* Vectors for the self-test on a board, made by selftest/pack.c. */\n"
         "#include \"packed.h\"\n\nconst uint8_t packed_vectors[] MVW_FLASH = {\n");
  for (int i = 1; i < count; i++) {
    const char *slash = strrchr(paths[i], '/');
    const char *name = slash != NULL ? slash + 1 : paths[i];
    FILE *input = fopen(paths[i], "r");
    if (input == NULL) {
      fprintf(stderr, "%s cannot be opened\n", paths[i]);
      return 2;
    }
    put_byte(PACKED_VECTOR);
    put_text(name, strcspn(name, "."));
    pack_lines(input);
    fclose(input);
  }
  put_byte(PACKED_END);
  printf("\n};\n/* %lu bytes */\n", packed_bytes);
  return 0;
}
