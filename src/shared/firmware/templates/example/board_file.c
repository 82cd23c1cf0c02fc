/*
 * board.h for a desk: samples come from standard input, six integers a line as in
 * vectors/NN-name.in; "button 1" and "button 0" are heeded, other lines passed over. The light goes
 * to standard output whenever it changes.
 *   build/example/prop < vectors/01-....in
 */
#include <stdio.h>

#include "board.h"

static int button;

int read_sample(int16_t sample[MVW_AXES]) {
  char line[96];
  int v[MVW_AXES];
  while (fgets(line, sizeof line, stdin) != NULL) {
    if (sscanf(line, "button %d", &button) == 1) continue;
    if (sscanf(line, "%d %d %d %d %d %d", &v[0], &v[1], &v[2], &v[3], &v[4], &v[5]) != MVW_AXES)
      continue;
    for (int axis = 0; axis < MVW_AXES; axis++) sample[axis] = (int16_t)v[axis];
    return 1;
  }
  return 0;
}

int button_pressed(void) { return button; }

void show_light(light_colour colour) {
  static light_colour shown;
  if (colour.red == shown.red && colour.green == shown.green && colour.blue == shown.blue) return;
  shown = colour;
  printf("light %u %u %u\n", (unsigned)colour.red, (unsigned)colour.green, (unsigned)colour.blue);
}
