/*
 * Writes a model as the lines that model_loader.h takes.
 *   model-lines model/model.bin > model_lines.txt
 * Exit status: 0, or 2 when the file cannot be read.
 */
#include <stdio.h>
#include <string.h>

#include "model_loader.h"

static void put_line(const char *text) {
  unsigned long crc = 0xffffffffu;
  for (const char *at = text; *at != '\0'; at++) {
    crc ^= (unsigned char)*at;
    for (int bit = 0; bit < 8; bit++) crc = crc >> 1 ^ (crc & 1u ? 0xedb88320u : 0u);
  }
  printf("%s*%08lx\n", text, ~crc & 0xffffffffu);
}

int main(int count, char **paths) {
  char line[LOADER_LINE];
  unsigned char bytes[LOADER_CHUNK];
  unsigned long offset = 0;
  size_t got;
  FILE *file = count == 2 ? fopen(paths[1], "rb") : NULL;
  if (file == NULL || fseek(file, 0, SEEK_END) != 0) {
    fprintf(stderr, "usage: model-lines model/model.bin\n");
    return 2;
  }
  sprintf(line, "model %ld", ftell(file));
  put_line(line);
  rewind(file);
  while ((got = fread(bytes, 1, sizeof bytes, file)) > 0) {
    int at = sprintf(line, "at %lu ", offset);
    for (size_t i = 0; i < got; i++) at += sprintf(line + at, "%02x", bytes[i]);
    put_line(line);
    offset += (unsigned long)got;
  }
  put_line("end");
  fclose(file);
  return 0;
}
