/*
 * Plays the light of an exported effect table and prints what it gives, so that another build can
 * be compared line by line. Lines of standard input: "tick MS", "start EFFECT", "low 0" or "low 1";
 * "levels" prints the luminance of every 64th of a level, "pwm TOP" the compare value of each level.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "effects.h"

static void print_levels(void) {
  for (unsigned level = 0; level <= 65280u; level += 64u)
    printf("%u\n", (unsigned)mvw_luminance((uint16_t)level));
}

static void print_pwm(unsigned top) {
  for (unsigned i = 0; i < 256; i++)
    printf("%u\n", (unsigned)mvw_light_pwm(mvw_luminance((uint16_t)(i << 8)), (uint16_t)top));
}

int main(void) {
  char word[16];
  unsigned value = 0;
  mvw_light *light = malloc(sizeof *light);
  int status = mvw_light_init(light, &light_table);
  printf("init %d\n", status);
  while (status == MVW_OK && scanf("%15s %u", word, &value) == 2) {
    if (strcmp(word, "start") == 0) {
      printf("start %d\n", mvw_light_start(light, (uint8_t)value));
    } else if (strcmp(word, "low") == 0) {
      mvw_light_low(light, (int)value);
    } else if (strcmp(word, "levels") == 0) {
      print_levels();
    } else if (strcmp(word, "pwm") == 0) {
      print_pwm(value);
    } else {
      uint16_t duty[MVW_LIGHT_CHANNELS];
      mvw_light_tick(light, (uint16_t)value, duty);
      printf("%u %u %u %u\n", (unsigned)light->playing, (unsigned)duty[0], (unsigned)duty[1],
             (unsigned)duty[2]);
    }
  }
  free(light);
  return 0;
}
