/* For a desk: says whether the light agrees with the phone. Exit status 0 if so. */
#include <stdio.h>

#include "effect_table.h"
#include "light_vector.h"

int main(void) {
  uint32_t found = light_vector();
  if (found == LIGHT_VECTOR) {
    printf("# light agrees with the phone\n");
    return 0;
  }
  printf("# light differs: expected %08lx, found %08lx\n", (unsigned long)LIGHT_VECTOR,
         (unsigned long)found);
  return 1;
}
